"""A week as a sheet: a row for each segment, with cells for what was done, and what the volume is computed from.

Comes in: a week, as it is arranged and as it counts. Goes out: where its rows stand.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import IntEnum
from fractions import Fraction
from typing import Final

from setwright.plan import SegmentKind, Session, Week
from setwright.record import record
from setwright.render import words
from setwright.render.done import sets_words
from setwright.render.language import Language
from setwright.render.sheet import Row, SessionSheet, Station, WeekSheet
from setwright.render.xlsx import cells
from setwright.render.xlsx.book import ASIDE, FAINT, LINE, OWN, STRONG, TITLE, TOP, WRAPPED, Book, Page, Style, lines_of
from setwright.render.xlsx.filled import Filled, filled_in
from setwright.render.xlsx.rows import Counted
from setwright.report.outcomes import LineOutcome, Outcomes, SessionOutcome


class Column(IntEnum):
    """The columns; those from ASKED on are for the workbook's own sums and are not printed."""

    ORDER = 0
    MOVEMENT = 1
    PART = 2
    SETS = 3
    REPS = 4
    EFFORT = 5
    LOAD = 6
    MADE_OF = 7
    SETS_DONE = 8
    REPS_DONE = 9
    LOAD_DONE = 10
    EFFORT_DONE = 11
    WORDS = 12
    ASKED = 13
    DONE = 14
    WORK = 15
    COUNTS = 16


WIDTHS: Final = (4, 25, 11, 5, 11, 10, 10, 20, 6, 6, 9, 6, 16, 9, 9, 6, 6)
ACROSS: Final = 155  # letters of small type from MOVEMENT to WORDS
HEAD_ROW: Final = 2
FIRST_ROW: Final = 3
LAST_PRINTED: Final = Column.WORDS

CENTRED: Final[Style] = {"align": "center", "valign": "top"}
TO_FILL: Final[Style] = {"bg_color": OWN, "border": 1, "border_color": LINE, **CENTRED}
WORKED_OUT: Final[Style] = {"num_format": "#,##0;-#,##0;", "font_color": FAINT, "valign": "top"}
DAY: Final[Style] = {"bold": True, "font_size": 13, "top": 2, "top_color": LINE, "valign": "vcenter"}


@record
class WrittenWeek:
    """The sheet of a week: its rows from `first` to `last`, and what they count."""

    page: Page
    week: Week
    first: int
    last: int
    rows: tuple[Counted, ...]

    def column(self, column: Column) -> str:
        """All rows of a column, as formulas name them."""
        letter = chr(ord("A") + column)
        return f"{self.page.reference}${letter}${self.first + 1}:${letter}${self.last + 1}"


def write_week(
    book: Book,
    page: Page,
    week: Week,
    paper: WeekSheet,
    counted: Sequence[Sequence[Counted]],
    outcomes: Outcomes | None = None,
) -> WrittenWeek:
    """Title, column heads, and the sessions one below the other."""
    language = book.language
    writer = _Writer(book, page)
    page.widths(WIDTHS)
    title = f"{page.name} \u00b7 {paper.block}, {paper.place}"
    page.put(0, 0, title if week.kind.value == "working" else f"{title} \u00b7 {paper.name}", TITLE)
    page.put(1, 0, ", ".join(filter(None, (book.plan.name, book.plan.athlete, paper.dates))), {"font_color": FAINT})
    for column, head in zip(Column, _heads(language, book), strict=True):
        page.put(HEAD_ROW, column, head, TOP)
    page.height(HEAD_ROW, 2)
    for head, said in paper.cautions:
        writer.aside(words.headed(head, said, language))
    for note in (paper.banner, *paper.notes):
        if note:
            writer.aside(note)
    for at, (session, arranged, rows) in enumerate(zip(week.sessions, paper.sessions, counted, strict=True), 1):
        writer.session(session, arranged, rows, outcomes.of(week.number, at) if outcomes is not None else None)
    for extra in paper.extras:
        writer.aside(extra)
    last = max(writer.row - 1, FIRST_ROW)
    page.freeze(HEAD_ROW + 1, Column.PART)
    page.paper(LAST_PRINTED, last, head=HEAD_ROW)
    writer.guard(last)
    return WrittenWeek(page, week, FIRST_ROW, last, tuple(row for rows in counted for row in rows))


def _heads(language: Language, book: Book) -> Iterator[str]:
    _ = language.text
    unit = book.plan.unit.value
    yield from ("", _("Movement"), _("Part"), _("Sets"), _("Repetitions"), _("Effort"), _("Load"))
    yield _("Each side of the bar")
    yield from (_("Sets done"), _("Reps in all"), _("Load lifted"), _("Last RPE"), _("In words"))
    yield _("Lifted, as asked, {unit}").format(unit=unit)
    yield _("Lifted, as done, {unit}").format(unit=unit)
    yield from (_("Work set: 1"), _("Counts: 1"))


class _Writer:
    """Goes down a sheet row by row."""

    def __init__(self, book: Book, page: Page) -> None:
        self._book = book
        self._page = page
        self._language = book.language
        self.row = FIRST_ROW

    def aside(self, text: str) -> None:
        """A line of small type under what stands above it."""
        self._page.across(self.row, Column.MOVEMENT, LAST_PRINTED, text, ASIDE, ACROSS)
        self.row += 1

    def session(
        self,
        session: Session,
        arranged: SessionSheet,
        rows: Sequence[Counted],
        outcome: SessionOutcome | None = None,
    ) -> None:
        """The day's head, its cautions and notes, then its movements."""
        self._head(session, arranged)
        for said in arranged.did:
            self.aside(said)
        for head, said in arranged.cautions:
            self.aside(words.headed(head, said, self._language))
        for note in arranged.notes:
            self.aside(note)
        todo = list(rows)
        for part in arranged.parts:
            if part.heading:
                self._page.put(self.row, Column.MOVEMENT, part.heading, STRONG)
                self.row += 1
            for station in part.stations:
                own = [row for row in todo if row.line is session.lines[station.order - 1]]
                of = outcome.lines[station.order - 1] if outcome is not None and outcome.lines else None
                self._station(station, own, of)

    def _head(self, session: Session, arranged: SessionSheet) -> None:
        for column in range(LAST_PRINTED + 1):
            self._page.put(self.row, column, None, DAY)
        label = f" \u00b7 {arranged.label}" if arranged.label else ""
        self._page.put(self.row, Column.ORDER, f"{arranged.day}{label}", DAY)
        small: Style = {**DAY, "bold": False, "font_size": 10}
        self._page.put(self.row, Column.MADE_OF, session.date, small)
        self._page.put(self.row, Column.WORDS, arranged.minutes, small)
        self._page.height(self.row, 1, {"font_size": 16})
        self.row += 1

    def _station(self, station: Station, rows: Sequence[Counted], of: LineOutcome | None) -> None:
        work, done = iter(station.rows), iter(of.segments if of is not None else ())
        spreads: list[str] = []
        for place, row in enumerate(rows):
            shown = next(work) if row.is_work else None
            if shown is not None and shown.spread:
                spreads.append(shown.spread)
            sets = next(done, ()) if row.is_work else ()
            self._segment(station if place == 0 else None, row, shown, filled_in(sets, row, self._book.plan.unit))
        remarks = [
            *filter(None, (station.label, station.instead)),
            *([self._language.text("optional")] if station.optional else []),
            *([self._language.text("projected")] if station.projected else []),
            *station.did,
            *station.manner,
            *(self._language.text("other formulas give {loads}").format(loads=spread) for spread in spreads),
            *(
                words.headed(each.head, each.text, self._language) if each.head else each.text
                for each in station.remarks
            ),
        ]
        if remarks:
            self.aside(" \u00b7 ".join(remarks))

    def _segment(self, station: Station | None, row: Counted, shown: Row | None, filled: Filled) -> None:
        page, at, language = self._page, self.row, self._language
        tint: Style = {} if row.is_work else {"font_color": FAINT}
        page.put(at, Column.ORDER, station.order if station else None, {**STRONG, "align": "center"})
        name: Style = STRONG if station else {"font_color": FAINT}
        page.put(at, Column.MOVEMENT, row.line.movement.name, {**WRAPPED, **name})
        part = _part(row, shown, language)
        page.put(at, Column.PART, part, {**WRAPPED, **tint})
        page.put(at, Column.SETS, row.segment.sets, {**CENTRED, **tint})
        typed: tuple[tuple[Column, cells.Cell], ...] = (
            (Column.REPS, cells.repetitions(row.segment.reps, language)),
            (Column.EFFORT, cells.effort(row.segment, language)),
            (Column.LOAD, cells.load(row.segment, self._book.plan.unit, language)),
            (Column.MADE_OF, (cells.made_of(row.segment, language), {})),
        )
        for column, (value, style) in typed:
            blank = column is Column.LOAD and value is None and row.repetitions is not None
            page.put(at, column, value, {**(TO_FILL if blank else CENTRED), "text_wrap": True, **tint, **style})
        named = ((Column.MOVEMENT, row.line.movement.name), (Column.PART, part))
        texts = (*named, *((column, value) for column, (value, _) in typed))
        page.height(at, max(lines_of(text, WIDTHS[column] - 1) for column, text in texts if isinstance(text, str)))
        if row.is_work:
            self._to_fill(row, filled)
            self._sums(row, filled)
        page.put(at, Column.WORK, int(row.is_work), {**CENTRED, "font_color": FAINT})
        page.put(at, Column.COUNTS, int(row.counts), {**CENTRED, "font_color": FAINT})
        self.row += 1

    def _to_fill(self, row: Counted, filled: Filled) -> None:
        said = {
            Column.SETS_DONE: filled.sets,
            Column.REPS_DONE: filled.reps,
            Column.LOAD_DONE: filled.load,
            Column.EFFORT_DONE: filled.effort,
            Column.WORDS: sets_words(filled.all, self._language) if filled.in_words else None,
        }
        unit = cells.load(row.segment, self._book.plan.unit, self._language)[1]
        for column, value in said.items():
            own: Style = unit if column is Column.LOAD_DONE else {"text_wrap": True} if filled.in_words else {}
            self._page.put(self.row, column, value, {**TO_FILL, **own})
        if filled.in_words:
            self._page.height(self.row, lines_of(str(said[Column.WORDS]), WIDTHS[Column.WORDS] - 1))

    def _sums(self, row: Counted, filled: Filled) -> None:
        """What is lifted as asked, and as done; a load that was not written down is the one asked for."""
        if row.volume_load is None or row.repetitions is None:
            return
        line = self.row + 1
        sides = 2 if row.segment.reps.per_side else 1
        each = f"IF(ISNUMBER(E{line}),E{line}*{sides},{_plain(row.repetitions)})"
        factor = "" if row.factor == 1 else f"*{_plain(row.factor)}"
        self._page.formula(
            self.row, Column.ASKED, f"=N(D{line})*{each}*N(G{line}){factor}", row.volume_load, WORKED_OUT
        )
        lifted = f"IF(ISNUMBER(K{line}),K{line},N(G{line}))"
        self._page.formula(self.row, Column.DONE, f"=N(J{line})*{lifted}{factor}", filled.lifted(row), WORKED_OUT)

    def guard(self, last: int) -> None:
        """The cells for sets, repetitions, load and effort take numbers alone, or the sums would pass them over."""
        said = self._language.text("A number, please: without it the sums would leave this set out.")
        limits = {Column.SETS: 100, Column.SETS_DONE: 100, Column.REPS_DONE: 100_000, Column.EFFORT_DONE: 10}
        for column, most in {**limits, Column.LOAD_DONE: 2205}.items():
            least = -2205 if column is Column.LOAD_DONE else 0
            self._page.numbers_only((FIRST_ROW, column, last, column), least, most, said)


def _part(row: Counted, shown: Row | None, language: Language) -> str | None:
    if row.segment.kind is SegmentKind.WARM_UP:
        return language.text("warm-up")
    return shown.lead if shown is not None else None


def _plain(value: Fraction) -> str:
    """A number in a formula, exact as far as the spreadsheet's own numbers are."""
    return str(value.numerator) if value.denominator == 1 else repr(float(value))
