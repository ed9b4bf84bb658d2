"""The week-by-week tables of the overview: sets a muscle gets and what the rules ask, minutes a session takes.

Comes in: a plan and its reports, a language. Goes out: `Grid`s of text, split so that they fit a page.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from math import ceil
from typing import Final

from setwright.plan import Plan
from setwright.quantities import round_half_up
from setwright.record import record
from setwright.render import aims, words
from setwright.render.aims import Mark
from setwright.render.language import Language
from setwright.report.overview import WeekSummary
from setwright.report.targets import SubjectTargets, Targets
from setwright.report.volume import Volume
from setwright.science.counting import Counting

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
    """One figure, its shade from 0 to `SHADES` by its share of the table's highest, a mark where it is out of range."""

    text: str
    shade: int
    mark: Mark | None = None


@record
class Record:
    """A row: what it is about, its figures, and in `aside` a range that goes with all of them, a line each."""

    title: str
    cells: tuple[Cell, ...]
    aside: tuple[str, ...] = ()


@record
class Grid:
    """A table with weeks for columns; `foot` sums up. `aside` heads the column of ranges, None where there is none."""

    weeks: tuple[Head, ...]
    records: tuple[Record, ...]
    foot: Record | None = None
    aside: str | None = None


@record
class _Row:
    """A row before it is cut into grids: its figures and marks by week."""

    title: str
    figures: Mapping[int, Fraction]
    marks: Mapping[int, Mark]
    aside: tuple[str, ...]
    is_whole: bool = True  # else some weeks have no figure, and all are of another size, so that none is shaded


def sets_grids(
    plan: Plan,
    volume: Volume,
    overview: Sequence[WeekSummary],
    language: Language,
    targets: Targets = Targets(),  # noqa: B008 (frozen)
    counting: Counting = Counting.FRACTIONAL,
) -> tuple[Grid, ...]:
    """Sets per muscle per week as the plan's rules count them, the muscles in the plan's order; all work sets below.

    Groups that rules hold by themselves, and the whole plan where one does, have rows of their own.
    """
    rows = _muscles(plan, volume, targets, counting, language)
    others = [found for found in targets.subjects if not found.is_muscle]
    rows += [_Row(_title(found, language), _held(found), *_aims(found, plan, language), False) for found in others]
    total = {week.number: Fraction(week.sets) for week in overview}
    foot = _Row(language.text("All work sets"), total, {}, ())
    aside = language.text("Asked for") if targets.subjects else None
    return tuple(_grid(plan, run, rows, foot, aside, language) for run in _chunks(len(plan.weeks)))


def minutes_grids(plan: Plan, overview: Sequence[WeekSummary], language: Language) -> tuple[Grid, ...]:
    """Estimated minutes a session, a row a day of the week, with the least and the most of each."""
    figures: dict[str, dict[int, Fraction]] = {}
    for week in overview:
        for session in week.sessions:
            of_day = figures.setdefault(session.slot, {})
            of_day[week.number] = of_day.get(week.number, Fraction(0)) + session.minutes
    offsets = {session.slot: session.offset for week in plan.weeks for session in week.sessions}
    order = sorted(figures, key=lambda slot: offsets.get(slot, 0))
    rows = [_Row(words.slot(slot, language), figures[slot], {}, _range(figures[slot], language)) for slot in order]
    total = {week.number: week.minutes for week in overview}
    foot = _Row(language.text("The week"), total, {}, _range(total, language))
    aside = language.text("Range")
    return tuple(_grid(plan, run, rows, foot, aside, language, 0) for run in _chunks(len(plan.weeks)))


def counted(counting: Counting, language: Language) -> str:
    """How a set counts for a muscle, in a sentence."""
    match counting:
        case Counting.DIRECT:
            return language.text("A set counts for the muscles a movement trains first, and for no others.")
        case Counting.FRACTIONAL:
            return language.text(
                "A set counts in full for the muscles a movement trains first, in part for those that help."
            )
        case Counting.TOTAL:
            return language.text("A set counts in full for every muscle that a movement trains at all.")


def in_all(overview: Sequence[WeekSummary], language: Language) -> str:
    """What all the weeks come to: `About 37 hours in all.`; nothing for one week, whose minutes say it."""
    hours = round_half_up(sum((week.minutes for week in overview), Fraction(0)) / 60)
    if len(overview) < 2:
        return ""
    return language.count("About {hours} hour in all.", "About {hours} hours in all.", int(hours)).format(hours=hours)


# ---- what a row is about -------------------------------------------------------------------------


def _muscles(plan: Plan, volume: Volume, targets: Targets, counting: Counting, language: Language) -> list[_Row]:
    """The muscles that the plan trains, and those that a rule asks for and it does not."""
    figures: dict[str, dict[int, Fraction]] = {}
    for row in volume.rows:
        figures.setdefault(row.muscle.word, {})[row.week] = row.sets(counting)
    asked = {found.subject.word: found for found in targets.subjects if found.is_muscle}
    titles = {muscle.word: muscle.title for muscle in (*(row.muscle for row in volume.rows), *plan.muscles)}
    order = [muscle.word for muscle in plan.muscles if muscle.word in figures or muscle.word in asked]
    order += [word for word in figures if word not in order]
    return [
        _Row(language.text(titles[word]), figures.get(word, {}), *_aims(asked.get(word), plan, language))
        for word in order
    ]


def _aims(found: SubjectTargets | None, plan: Plan, language: Language) -> tuple[dict[int, Mark], tuple[str, ...]]:
    return (aims.marks(found, language), aims.ranges(found, plan, language)) if found is not None else ({}, ())


def _title(found: SubjectTargets, language: Language) -> str:
    title = found.subject.title.replace("-", " ")
    return title[:1].upper() + title[1:] if title else language.text("All counted sets")


def _held(found: SubjectTargets) -> dict[int, Fraction]:
    return {target.week: target.value for target in found.weeks}


def _range(figures: Mapping[int, Fraction], language: Language) -> tuple[str, ...]:
    ends = [language.number(end(figures.values()), 0) for end in (min, max)] if figures else []
    return (words.EN_DASH.join(dict.fromkeys(ends)),) if ends else ()


# ---- grids ---------------------------------------------------------------------------------------


def _chunks(weeks: int) -> tuple[range, ...]:
    """Positions of weeks, in as few even runs as fit."""
    count = max(1, ceil(weeks / MOST_COLUMNS))
    size = ceil(weeks / count)
    return tuple(range(start, min(start + size, weeks)) for start in range(0, weeks, max(1, size)))


def _grid(
    plan: Plan,
    positions: range,
    rows: Sequence[_Row],
    foot: _Row,
    aside: str | None,
    language: Language,
    places: int = 1,
) -> Grid:
    weeks = tuple(plan.weeks[at] for at in positions)
    numbers = tuple(week.number for week in weeks)
    most = max((value for row in rows if row.is_whole for value in row.figures.values()), default=Fraction(0))
    return Grid(
        weeks=tuple(
            Head(week.number, words.week_letter(week.kind, language), words.week_aside(week.kind, language))
            for week in weeks
        ),
        records=tuple(_record(row, numbers, most, places, language) for row in rows),
        foot=_record(foot, numbers, Fraction(0), places, language),
        aside=aside,
    )


def _record(row: _Row, numbers: tuple[int, ...], most: Fraction, places: int, language: Language) -> Record:
    return Record(row.title, tuple(_cells(row, numbers, most, places, language)), row.aside)


def _cells(row: _Row, numbers: tuple[int, ...], most: Fraction, places: int, language: Language) -> Iterator[Cell]:
    for number in numbers:
        value = row.figures.get(number)
        nothing = words.EN_DASH if row.is_whole or value is not None else ""
        text = language.number(value, places) if value else nothing
        shade = ceil(value / most * SHADES) if value and most and row.is_whole else 0
        yield Cell(text, shade, row.marks.get(number))
