"""What changes for the athlete as one HTML file that needs nothing else, in the style of the sheets.

Comes in: a `FileDifference`. Goes out: the text of the page: a list for each block and day, and what it comes to.
"""

from __future__ import annotations

from typing import Final

from setwright.render import keys
from setwright.render.difference import NO_CHANGE, parts
from setwright.render.difference.rows import Sign
from setwright.render.html import environment, policy, style
from setwright.report.difference.model import FileDifference

STYLES: Final = ("style.css", "comparison.css", "difference.css", "print.css")

# The sign in words, for whoever hears the page; the mark itself is drawn by the style.
_SAID: Final = {Sign.MORE: "More", Sign.LESS: "Less", Sign.OTHER: "Changed", Sign.BROKEN: "Rule broken"}


def page(of: FileDifference) -> str:
    """The whole page."""
    sheet = style(STYLES)
    return (
        environment()
        .get_template("difference.html.j2")
        .render(
            parts=parts(of),
            said=_SAID,
            no_change=NO_CHANGE,
            cautions=keys.CAUTIONS,
            style=sheet,
            policy=policy(sheet),
        )
    )
