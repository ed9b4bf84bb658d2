"""What stands at the foot of each printed page: plan, athlete, week, number.

Comes in: a sheet and a language. Goes out: style for the margins of pages; browsers that know none leave them empty.
"""

from __future__ import annotations

from setwright.render.language import Language
from setwright.render.sheet import Sheet


def foot(sheet: Sheet, language: Language) -> str:
    """A week's pages carry its name, so that a second page that goes astray finds back."""
    whose = " – ".join(part for part in (sheet.name, sheet.athlete) if part)
    start, end = ("right", "left") if language.direction == "rtl" else ("left", "right")
    font = "font:7.5pt sans-serif;color:#444"
    pages = f"@page{{@bottom-{start}{{content:{_quoted(whose)};{font}}}@bottom-{end}{{content:counter(page);{font}}}}}"
    return pages + "".join(
        f"@page w{week.number}{{@bottom-center{{content:{_quoted(_week(week.number, language))};{font}}}}}"
        f"@media print{{#week-{week.number}{{page:w{week.number}}}}}"
        for week in sheet.weeks
    )


def _week(number: int, language: Language) -> str:
    return language.text("Week {number}").format(number=number)


def _quoted(text: str) -> str:
    """A string of CSS in which nothing but letters, digits and spaces stands as itself."""
    return '"' + "".join(one if one == " " or one.isalnum() else f"\\{ord(one):x} " for one in text) + '"'
