"""The sheets as one HTML file that needs nothing else: no network; styles, script and drawings inside.

Comes in: a plan, its volume and overview. Goes out: the text of the page.
"""

from __future__ import annotations

from base64 import b64encode
from functools import cache
from hashlib import sha256
from typing import Final

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from setwright.render import aims, done, front, keys, tables
from setwright.render.html import recording
from setwright.render.html.accent import accent
from setwright.render.html.figures import figure
from setwright.render.html.foot import foot
from setwright.render.html.lift_charts import lift_charts
from setwright.render.language import ENGLISH, Language
from setwright.render.material import PLAIN, Look, Material
from setwright.report.main_lifts import main_lifts

STYLES: Final = ("style.css", "print.css", "overview.css", "record.css")


def rendered(material: Material, look: Look) -> bytes:
    """The page as a file."""
    return page(material, look).encode()


def page(material: Material, look: Look = PLAIN) -> str:
    """The whole page: overview, cautions, keys, a section a week; by the club's template where it has one.

    Raises `FaultyTemplateError` where that fails.
    """
    return dressed(look, given(material, look))


def dressed(look: Look, values: dict[str, object]) -> str:
    """The page with these values, by the club's template where it has one."""
    shipped = environment(look.language)
    if look.template is None:
        return shipped.get_template("page.html.j2").render(values)
    from setwright.render.html.club import club_page

    return club_page(look.template, shipped, values)


def session_page(material: Material, look: Look = PLAIN) -> str:
    """A plan of one session (`gathered.only_session`) as a page: the sheet's own card, the cautions, the keys."""
    values = given(material, look, ("alone.css",))
    return environment(look.language).get_template("alone.html.j2").render(values)


def given(material: Material, look: Look, styles: tuple[str, ...] = ()) -> dict[str, object]:
    """What a template is given; chapter 22 of the reference describes it. `styles` come after the shipped ones."""
    plan, volume, overview = material.plan, material.volume, material.overview
    language = look.language
    asked = aims.targets_of(material)
    arranged = done.arranged(material, language)
    if look.why:
        from setwright.render.html.reasons import with_reasons

        arranged = with_reasons(arranged, plan, language)
    sheet_style = _style_of(material, look, styles) + Markup(foot(arranged, language))
    return {
        "look": look,
        "sheet": arranged,
        "facts": front.facts(plan, language),
        "movements": front.movements(plan),
        "figure": figure(plan, overview, language),
        "lifts": lift_charts(main_lifts(plan), language),
        "sets": tables.sets_grids(plan, volume, overview, language, asked, material.promise.counting),
        "counted": tables.counted(material.promise.counting, language),
        "marked": aims.key(asked, language),
        "minutes": tables.minutes_grids(plan, overview, language),
        "in_all": tables.in_all(overview, language),
        "cautions": arranged.cautions,
        "notation": keys.translated(keys.NOTATION, language),
        "effort_key": keys.effort_key(language),
        "effort_line": language.text(keys.EFFORT_LINE),
        "recording": {"data": recording.block(plan, language), "script": recording.script()},
        "style": sheet_style,
        "policy": policy(sheet_style, recording.script()),
    }


def _style_of(material: Material, look: Look, more: tuple[str, ...]) -> Markup:
    """The shipped style, and what a club's look and a log add to it."""
    asked = (
        ("club.css", bool(look.club or look.logo)),
        ("why.css", look.why),
        ("log.css", material.outcomes is not None),
    )
    names = (*STYLES, *(name for name, is_wanted in asked if is_wanted), *more)
    return style(names) + Markup(accent(look.colour) if look.colour else "")


@cache
def environment(language: Language = ENGLISH) -> Environment:
    """The templates of this folder, in a language (`_` is its `text`, `language` itself); what they get is escaped."""
    made = Environment(
        loader=PackageLoader(__name__, "."),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    made.globals["_"] = language.text
    made.globals["language"] = language
    return made


@cache
def style(names: tuple[str, ...]) -> Markup:
    """Style sheets of this folder as one: files of ours, never a person's text, so that they may stand as they are."""
    loader = environment().loader
    assert loader is not None
    return Markup("".join(loader.get_source(environment(), name)[0] for name in names))


def policy(style: str, script: str | None = None) -> str:
    """A content security policy that lets this one style and this one script through, and nothing else in or out."""
    scripts = f" script-src {_hash(script)};" if script is not None else ""
    return f"default-src 'none';{scripts} style-src {_hash(style)}; img-src data:; base-uri 'none'; form-action 'none'"


def _hash(text: str) -> str:
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"
