"""Where things stand in the overview's figure: percent across, so that it fits any screen, and pixels down.

Comes in: a plan's blocks and weekly summaries. Goes out: `Figure`, which `overview.html.j2` draws.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from math import ceil, floor
from typing import Final

from setwright.plan import Plan
from setwright.quantities import plain
from setwright.record import record
from setwright.render import words
from setwright.render.effort import telling
from setwright.render.language import Language
from setwright.report.overview import WeekSummary

# More numbers than this run into each other on the narrowest screens.
MOST_LABELS: Final = 14
# Letters in boxes of so many weeks stay clear of the numbers beside them on A4.
MOST_BOXES: Final = 30

POINT_HEIGHT: Final = 26  # pixels from one point of the effort scale to the next
FLAT: Final = 16  # the same where other charts stand around it
LINE_HEIGHT: Final = 62  # pixels of blocks and weeks
DATES_HEIGHT: Final = 32
TOP: Final = 24  # room for the figure over the highest dot
BOTTOM: Final = 22  # and for the one under the lowest
ABOVE, BELOW = -9, 18  # from a dot to its figure's foot
BAND_WIDTH: Final = 72  # characters that a band as wide as the figure holds, on paper and on the narrowest table


@record
class Band:
    """A block on the time line; `name` only where it surely fits."""

    x: str
    width: str
    middle: str
    ordinal: int
    name: str | None


@record
class Mark:
    """A week on the time line."""

    x: str
    width: str
    middle: str
    number: int
    shown: bool
    letter: str
    kind: str
    month: str | None  # over the day, where a month begins
    day: int | None  # on which the week begins, where there is room to say so


@record
class Tick:
    """A week under a plot: its number, or the letter of what it is for, which a box stands around."""

    x: str
    text: str
    is_letter: bool


@record
class Dot:
    """An effort in the plot; `label` where there is room for a figure."""

    x: str
    y: str
    label: str | None
    label_y: str


@record
class Stroke:
    """A line from one week's dot to the next one's."""

    x1: str
    y1: str
    x2: str
    y2: str


@record
class Curve:
    """Efforts over the weeks; a week without any breaks the line."""

    dots: tuple[Dot, ...]
    strokes: tuple[Stroke, ...]


@record
class Level:
    """A point of the effort scale, as a line across the plot."""

    rpe: str
    y: str


@record
class Figure:
    """The whole figure; `said` tells the plot in words."""

    bands: tuple[Band, ...]
    marks: tuple[Mark, ...]
    highest: Curve
    mean: Curve
    levels: tuple[Level, ...]
    top: int  # from the time line's upper edge to the plot's
    height: int
    dated: bool
    dense: bool  # too many weeks to number them all
    tight: bool  # too many even for a box around a letter, on paper
    untold: bool  # some weeks have no dots
    said: str


def figure(plan: Plan, overview: Sequence[WeekSummary], language: Language) -> Figure:
    """The time line with the effort plot under it."""
    count = len(plan.weeks)
    overview = telling(plan, overview)
    efforts = [effort for week in overview for effort in (week.mean_effort, week.highest_effort)]
    levels, height = scale(efforts, FLAT)
    dated = any(week.start is not None for week in plan.weeks)
    return Figure(
        bands=tuple(_bands(plan)),
        marks=tuple(_marks(plan, language)),
        highest=curve([week.highest_effort for week in overview], labelled=True, language=language, point=FLAT),
        mean=curve([week.mean_effort for week in overview], labelled=False, language=language, point=FLAT),
        levels=levels,
        top=LINE_HEIGHT + (DATES_HEIGHT if dated else 0),
        height=height,
        dated=dated,
        dense=count > MOST_LABELS,
        tight=count > MOST_BOXES,
        untold=any(week.highest_effort is None for week in overview),
        said=_said(overview, language),
    )


def scale(efforts: Sequence[Fraction | None], point: int = POINT_HEIGHT) -> tuple[tuple[Level, ...], int]:
    """The levels from the lowest effort, at least two, to RPE 10, and the height of a plot that has them."""
    known = [effort for effort in efforts if effort is not None]
    if not known:
        return (), 0
    lowest = min(floor(min(known)), 9)
    levels = tuple(Level(str(rpe), _y(Fraction(rpe), point)) for rpe in range(lowest, 11))
    return levels, TOP + (10 - lowest) * point + BOTTOM


def curve(
    efforts: Sequence[Fraction | None], *, labelled: bool, language: Language, point: int = POINT_HEIGHT
) -> Curve:
    """Dots and lines; a figure stands over its dot, or under it where the line falls to the dot and rises again."""
    count = len(efforts)
    every = ceil(count / MOST_LABELS)
    labels = [
        language.number(effort, 1) if labelled and effort is not None and at % every == 0 else None
        for at, effort in enumerate(efforts)
    ]
    shifts = [BELOW if _is_valley(efforts, at) else ABOVE for at in range(count)]
    dots = [
        None if effort is None else Dot(_middle(at, count), _y(effort, point), label, _y(effort, point, shifts[at]))
        for at, (effort, label) in enumerate(zip(efforts, labels, strict=True))
    ]
    strokes = tuple(
        Stroke(one.x, one.y, next_one.x, next_one.y) for one, next_one in pairwise(dots) if one and next_one
    )
    return Curve(tuple(dot for dot in dots if dot), strokes)


def _bands(plan: Plan) -> Iterator[Band]:
    """Blocks where their weeks stand; a sheet may hold some of a plan's weeks only."""
    count = len(plan.weeks)
    places = {week.number: at for at, week in enumerate(plan.weeks)}
    for ordinal, block in enumerate(plan.blocks, 1):
        held = [places[number] for number in range(block.first_week, block.last_week + 1) if number in places]
        if held:
            fits = len(block.name) + 4 <= BAND_WIDTH * len(held) / count
            yield Band(
                _percent(held[0], count),
                _percent(len(held), count),
                _percent(Fraction(2 * held[0] + len(held), 2), count),
                ordinal,
                block.name if fits else None,
            )


def _marks(plan: Plan, language: Language) -> Iterator[Mark]:
    """Every week; where all cannot be numbered, a week says when it begins only with its number."""
    count = len(plan.weeks)
    every = ceil(count / MOST_LABELS)
    said: tuple[int, int] | None = None
    for at, week in enumerate(plan.weeks):
        begins = week.start if at % every == 0 else None
        month = language.month(begins) if begins and said != (begins.year, begins.month) else None
        said = (begins.year, begins.month) if begins else said
        yield Mark(
            x=_percent(at, count),
            width=_percent(1, count),
            middle=_middle(at, count),
            number=week.number,
            shown=at % every == 0,
            letter=words.week_letter(week.kind, language),
            kind=week.kind.value,
            month=month,
            day=begins.day if begins else None,
        )


def _is_valley(efforts: Sequence[Fraction | None], at: int) -> bool:
    effort = efforts[at]
    beside = [other for other in (*efforts[max(at - 1, 0) : at], *efforts[at + 1 : at + 2]) if other is not None]
    return effort is not None and bool(beside) and all(other > effort for other in beside)


def _y(rpe: Fraction, point: int, shift: int = 0) -> str:
    return plain(TOP + (10 - rpe) * point + shift, 1)


def _middle(at: int, count: int) -> str:
    return _percent(Fraction(2 * at + 1, 2), count)


def _percent(part: Fraction | int, whole: int) -> str:
    return f"{plain(Fraction(part) * 100 / whole)}%"


def _said(overview: Sequence[WeekSummary], language: Language) -> str:
    told = [said for week in overview if (said := _week_said(week, language))]
    if not told:
        return language.text("No week says how hard it is.")
    return language.text("RPE by week, of the sets that state one: {weeks}.").format(
        weeks=words.clauses(told, language)
    )


def _week_said(week: WeekSummary, language: Language) -> str | None:
    if week.highest_effort is None or week.mean_effort is None:
        return None
    kind = words.week_aside(week.kind, language)
    return language.text("week {number}{kind} hardest {highest}, mean {mean}").format(
        number=week.number,
        kind=f" ({kind})" if kind else "",
        highest=language.number(week.highest_effort, 1),
        mean=language.number(week.mean_effort, 1),
    )
