"""The workbook's first sheet: whose plan it is, its weeks with what they hold, how to fill it in, the cautions.

Comes in: the plan as it is arranged, and the written weeks. Goes out: one sheet.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from setwright.render import words
from setwright.render.language import Language
from setwright.render.material import Material
from setwright.render.sheet import Sheet, WeekSheet
from setwright.render.xlsx.book import ASIDE, STRONG, TITLE, TOP, WRAPPED, Book, Page, Style
from setwright.render.xlsx.week import Column, WrittenWeek
from setwright.report.overview import WeekSummary

WIDTHS: Final = (20, 26, 9, 14, 12, 12, 9, 9, 11)
LAST: Final = len(WIDTHS) - 1
ACROSS: Final = 120

CENTRED: Final[Style] = {"align": "center", "valign": "top"}
DATED: Final[Style] = {**CENTRED}
EFFORT: Final[Style] = {**CENTRED, "num_format": '"RPE "0.0'}
TEXT: Final[Style] = {"text_wrap": True, "valign": "top", "font_size": 10}


def write_overview(book: Book, page: Page, material: Material, arranged: Sheet, written: Sequence[WrittenWeek]) -> None:
    """The whole sheet."""
    language = book.language
    page.widths(WIDTHS)
    page.put(0, 0, arranged.name, TITLE)
    row = 1
    for name, value in _about(arranged, language, book.look.club):
        page.put(row, 0, name, {**WRAPPED, **ASIDE})
        page.put(row, 1, value, {"valign": "top"})
        row += 1
    for note in arranged.notes:
        page.across(row, 0, LAST, note, TEXT, ACROSS)
        row += 1
    row = _weeks(page, material, arranged, written, language, row + 1)
    row = _texts(page, language.text("How to fill it in"), _help(language), row + 1)
    cautions = (words.headed(head, said, language) for head, said in arranged.cautions)
    row = _texts(page, language.text("Cautions"), cautions, row + 1)
    page.paper(LAST, row)


def _about(arranged: Sheet, language: Language, club: str | None) -> Iterator[tuple[str, str]]:
    facts = (
        (language.text("Club"), club),
        (language.text("Athlete"), arranged.athlete),
        (language.text("Written by"), arranged.author),
        (language.text("Dates"), arranged.dates),
        (language.text("Length"), arranged.length),
        *arranged.facts,
    )
    return ((name, value) for name, value in facts if value)


def _weeks(
    page: Page,
    material: Material,
    arranged: Sheet,
    written: Sequence[WrittenWeek],
    language: Language,
    row: int,
) -> int:
    for column, head in enumerate(_heads(language)):
        page.put(row, column, head, TOP)
    summaries = {week.number: week for week in material.overview}
    for week, paper in zip(written, arranged.weeks, strict=True):
        row += 1
        _week(page, row, week, paper, summaries.get(week.week.number))
    return row + 1


def _heads(language: Language) -> tuple[str, ...]:
    _ = language.text
    return (
        *(_("Week"), _("Block"), _("Place"), _("Kind"), _("First day"), _("Hardest set")),
        *(_("Minutes"), _("Work sets"), _("Sets done")),
    )


def _week(page: Page, row: int, week: WrittenWeek, paper: WeekSheet, summary: WeekSummary | None) -> None:
    page.link(row, 0, week.page, {"valign": "top"})
    page.put(row, 1, paper.block, WRAPPED)
    page.put(row, 2, week.week.number_in_block, CENTRED)
    page.put(row, 3, paper.name if paper.letter else None, WRAPPED)
    page.put(row, 4, week.week.start, DATED)
    if summary is not None:
        page.put(row, 5, summary.highest_effort, EFFORT)
        page.put(row, 6, summary.minutes, {**CENTRED, "num_format": "0"})
    work = f"{week.column(Column.SETS)},{week.column(Column.WORK)}"
    sets = sum(each.segment.sets for each in week.rows if each.is_work)
    page.formula(row, 7, f"=SUMPRODUCT({work})", sets, CENTRED)
    page.formula(row, 8, f"=SUM({week.column(Column.SETS_DONE)})", Fraction(0), {**CENTRED, "num_format": "0;-0;"})


def _help(language: Language) -> Iterator[str]:
    _ = language.text
    yield _(
        "Write into the tinted cells of a week: the sets done, the repetitions of all of them together, both sides."
    )
    yield _("A load only where it was another than the one asked for; how hard the last set was, as RPE.")
    yield _("Change the sets or loads that are asked for, and the volume and what is lifted follow.")


def _texts(page: Page, title: str, texts: Iterator[str], row: int) -> int:
    page.put(row, 0, title, STRONG)
    for text in texts:
        row += 1
        page.across(row, 0, LAST, text, TEXT, ACROSS)
    return row + 1
