"""The sheets as one HTML file that needs nothing else: no network, no script, styles and drawings inside.

Comes in: a plan, its volume and overview. Goes out: the text of the page.
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Sequence
from functools import cache
from hashlib import sha256
from typing import Final

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from setwright.render import front, keys, sheet, tables
from setwright.render.html.figures import figure
from setwright.render.language import ENGLISH, Language
from setwright.render.material import PLAIN, Look, Material
from setwright.science.effort import EFFORT_KEY

STYLES: Final = ("style.css", "print.css")


def rendered(material: Material, look: Look) -> bytes:
    """The page as a file."""
    return page(material, look).encode()


def page(material: Material, look: Look = PLAIN) -> str:
    """The whole page: overview, cautions, keys, a section a week."""
    plan, volume, overview = material.plan, material.volume, material.overview
    sheet_style = style(STYLES)
    arranged = sheet.sheet(plan, overview)
    return (
        environment(look.language)
        .get_template("page.html.j2")
        .render(
            sheet=arranged,
            facts=front.facts(plan),
            movements=front.movements(plan),
            figure=figure(plan, overview),
            sets=tables.sets_grids(plan, volume, overview),
            minutes=tables.minutes_grids(plan, overview),
            cautions=arranged.cautions,
            notation=keys.NOTATION,
            effort_key=EFFORT_KEY,
            effort_line=keys.EFFORT_LINE,
            style=sheet_style,
            policy=policy(sheet_style),
        )
    )


@cache
def environment(language: Language = ENGLISH) -> Environment:
    """The templates of this folder, in a language (`_` is its `text`); what they are given is escaped."""
    made = Environment(
        loader=PackageLoader(__name__, "."),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.globals["_"] = language.text
    return made


def style(names: Sequence[str]) -> Markup:
    """Style sheets of this folder as one: files of ours, never a person's text, so that they may stand as they are."""
    loader = environment().loader
    assert loader is not None
    return Markup("".join(loader.get_source(environment(), name)[0] for name in names))


def policy(style: str) -> str:
    """A content security policy that lets this one style through and nothing else in or out."""
    digest = b64encode(sha256(style.encode()).digest()).decode()
    return f"default-src 'none'; style-src 'sha256-{digest}'; img-src data:; base-uri 'none'; form-action 'none'"
