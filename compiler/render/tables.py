"""The week-by-week tables of the overview: sets a muscle gets, minutes a session takes.

Comes in: a plan, its volume and overview. Goes out: `Grid`s of text, split so that they fit a page.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import ceil
from typing import Final

from setwright.plan import Plan, WeekKind
from setwright.quantities import plain
from setwright.record import record
from setwright.render import words
from setwright.report.overview import WeekSummary
from setwright.report.volume import Volume

# So many weeks stand beside each other on A4 portrait and stay legible at arm's length.
MOST_COLUMNS: Final = 14

# Shades of the heat table, beside none at all.
SHADES: Final = 5


@record
class Head:
    """A week as a column's head."""

    number: int
    letter: str
    name: str


@record
class Cell:
    """One figure, and its shade from 0 to `SHADES` by its share of the table's highest."""

    text: str
    shade: int


@record
class Record:
    """A row: what it is about, and its figures."""

    title: str
    cells: tuple[Cell, ...]


@record
class Grid:
    """A table with weeks for columns; `foot` sums up."""

    weeks: tuple[Head, ...]
    records: tuple[Record, ...]
    foot: Record | None = None


def sets_grids(plan: Plan, volume: Volume, overview: Sequence[WeekSummary]) -> tuple[Grid, ...]:
    """Fractional sets per muscle per week, the muscles in the plan's order; below them all work sets."""
    figures: dict[str, dict[int, Fraction]] = {}
    titles: dict[str, str] = {}
    for row in volume.rows:
        figures.setdefault(row.muscle.word, {})[row.week] = row.fractional_sets
        titles[row.muscle.word] = row.muscle.title
    order = [muscle.word for muscle in plan.muscles if muscle.word in figures]
    order += [word for word in figures if word not in order]
    named = tuple((titles[word], figures[word]) for word in order)
    total = {week.number: Fraction(week.sets) for week in overview}
    return tuple(_grid(plan, numbers, named, ("All work sets", total)) for numbers in _chunks(len(plan.weeks)))


def minutes_grids(plan: Plan, overview: Sequence[WeekSummary]) -> tuple[Grid, ...]:
    """Estimated minutes a session, a row a day of the week."""
    figures: dict[str, dict[int, Fraction]] = {}
    for week in overview:
        for session in week.sessions:
            of_day = figures.setdefault(session.slot, {})
            of_day[week.number] = of_day.get(week.number, Fraction(0)) + session.minutes
    offsets = {session.slot: session.offset for week in plan.weeks for session in week.sessions}
    order = sorted(figures, key=lambda slot: offsets.get(slot, 0))
    named = tuple((words.slot(slot), figures[slot]) for slot in order)
    total = {week.number: week.minutes for week in overview}
    return tuple(_grid(plan, numbers, named, ("The week", total), 0) for numbers in _chunks(len(plan.weeks)))


def _chunks(weeks: int) -> tuple[range, ...]:
    """Positions of weeks, in as few even runs as fit."""
    count = max(1, ceil(weeks / MOST_COLUMNS))
    size = ceil(weeks / count)
    return tuple(range(start, min(start + size, weeks)) for start in range(0, weeks, max(1, size)))


def _grid(
    plan: Plan,
    positions: range,
    named: tuple[tuple[str, Mapping[int, Fraction]], ...],
    total: tuple[str, Mapping[int, Fraction]],
    places: int = 1,
) -> Grid:
    weeks = tuple(plan.weeks[at] for at in positions)
    numbers = tuple(week.number for week in weeks)
    most = max((value for _, figures in named for value in figures.values()), default=Fraction(0))
    return Grid(
        weeks=tuple(Head(week.number, words.WEEK_LETTERS[week.kind], _aside(week.kind)) for week in weeks),
        records=tuple(_record(title, figures, numbers, most, places) for title, figures in named),
        foot=_record(total[0], total[1], numbers, Fraction(0), places),
    )


def _aside(kind: WeekKind) -> str:
    return "" if kind is WeekKind.WORKING else words.WEEK_NAMES[kind].lower()


def _record(
    title: str, figures: Mapping[int, Fraction], numbers: tuple[int, ...], most: Fraction, places: int
) -> Record:
    return Record(title, tuple(_cell(figures.get(number, Fraction(0)), most, places) for number in numbers))


def _cell(value: Fraction, most: Fraction, places: int) -> Cell:
    if value == 0:
        return Cell(words.EN_DASH, 0)
    return Cell(plain(value, places), ceil(value / most * SHADES) if most else 0)
