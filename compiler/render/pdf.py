"""The sheets as a PDF: the page's own markup with a style for paper, bookmarks, page numbers, tags for screen readers.

Comes in: a plan, its reports and a look. Goes out: the bytes of the file, the same for the same plan. Nothing is
fetched: what is not inside the page is refused, from the network and from the disk alike.
"""

from __future__ import annotations

import re
from typing import Any, Final

from setwright.record import replace
from setwright.render.html import dressed, given, policy, recording, style
from setwright.render.material import Look, Material
from setwright.render.outputs import UnprintableError

STYLES: Final = ("paper.css",)
VARIANT: Final = "pdf/ua-1"

# A style sheet of the page does not reach into its drawings there, and a drawing knows no other; so each gets both.
DRAWN: Final = """<style>
svg{font:11px "Liberation Sans",Arial,sans-serif;fill:#171614}
.scale text,.unit,.none{fill:#5d5952}
.plot text,.lift text{text-anchor:middle}.plot text,.percent text,.effort text{font-weight:600}
.plot .band{fill:none;stroke:#171614}.plot .narrow{display:none}.week{fill:none;stroke:#d9d5ce}
.letter{fill:#fff;stroke:#171614}.mark,.month{font-weight:bold;fill:#171614;stroke:none}.date{font-weight:400}
.hatch{stroke:#5d5952;stroke-width:1;opacity:.55}.dots{fill:#5d5952;opacity:.6}.level{stroke:#d9d5ce}
.highest line{stroke:#171614;stroke-width:2}.mean line{stroke:#171614;stroke-width:1.5;stroke-dasharray:4 3}
.mean circle{fill:#fff;stroke:#171614;stroke-width:1.5}
path{fill:none;stroke-linecap:round;stroke-linejoin:round}
.axis{stroke:#171614}.best{stroke:#d9d5ce}.tick{font-size:10px;text-anchor:middle}.tick.letter{fill:#171614;stroke:none}
.unit,.none{font-size:10px}.percent text,.effort text,.none{text-anchor:middle}
.unit,.percent .unit,.effort .unit{text-anchor:start}
.percent .line{stroke:#171614;stroke-width:1.75}.percent .dot{stroke:#171614;stroke-width:6}
.effort .line{stroke:#171614;stroke-width:1.5;stroke-dasharray:4 3}.effort .dot{stroke:#171614;stroke-width:6.5}
.effort .hole{stroke:#fff;stroke-width:3.5}
</style>"""
_DRAWING: Final = re.compile(r"<svg\b[^>]*>")
_WEEKS: Final = re.compile(r'<g id="lift-weeks">(.*?)</g>', re.DOTALL)
_PATTERNS: Final = re.compile(r"<defs>\s*<pattern.*?</defs>", re.DOTALL)


def rendered(material: Material, look: Look) -> bytes:
    """The file. Raises `UnprintableError` where the system lacks the library that sets text."""
    try:
        from weasyprint import HTML
        from weasyprint.urls import URLFetcher
    except OSError as error:  # Pango is no part of the package
        said = "the library Pango is missing, which comes with the system (Debian: `apt install libpangoft2-1.0-0`)"
        raise UnprintableError(said) from error

    page = HTML(string=drawn(_page(material, look)), url_fetcher=URLFetcher(allowed_protocols=("data",)))
    document = page.render(pdf_variant=VARIANT)
    plan = material.plan
    document.metadata.authors = [plan.author] if plan.author else []
    document.metadata.generator = "Setwright"
    made: Any = document.write_pdf(pdf_variant=VARIANT)
    return bytes(made)


def drawn(page: str) -> str:
    """The page with its drawings each whole in itself: style, patterns, and what one takes over from another."""
    patterns, weeks = _PATTERNS.search(page), _WEEKS.search(page)
    shared = DRAWN + (patterns[0] if patterns else "")
    alone = page.replace('<use href="#lift-weeks"/>', f"<g>{weeks[1]}</g>" if weeks else "")
    return _DRAWING.sub(lambda found: found[0] + shared, alone)


def _page(material: Material, look: Look) -> str:
    """The page as a template makes it; its script is not run."""
    own = style(STYLES if material.outcomes is None else (*STYLES, "paper-log.css"))
    values = given(material, replace(look, why=False))  # nothing unfolds on paper
    return dressed(look, {**values, "style": own, "policy": policy(own, recording.script())})
