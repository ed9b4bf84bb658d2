"""Where things stand in the overview's figure: percent across, so that it fits any screen, and pixels down.

Comes in: a plan's blocks and weekly summaries. Goes out: `Figure`, which `overview.html.j2` draws.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from math import ceil, floor
from typing import Final

from setwright.plan import Plan, WeekKind
from setwright.quantities import plain
from setwright.record import record
from setwright.render import words
from setwright.render.effort import telling
from setwright.report.overview import WeekSummary

# More numbers than this run into each other on the narrowest screens.
MOST_LABELS: Final = 14
# Letters in boxes of so many weeks stay clear of the numbers beside them on A4.
MOST_BOXES: Final = 30

POINT_HEIGHT: Final = 26  # pixels from one point of the effort scale to the next
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
    height: int
    dense: bool  # too many weeks to number them all
    tight: bool  # too many even for a box around a letter, on paper
    untold: bool  # some weeks have no dots
    said: str


def figure(plan: Plan, overview: Sequence[WeekSummary]) -> Figure:
    """The time line with the effort plot under it."""
    count = len(plan.weeks)
    overview = telling(plan, overview)
    levels, height = scale([effort for week in overview for effort in (week.mean_effort, week.highest_effort)])
    return Figure(
        bands=tuple(_bands(plan)),
        marks=tuple(_mark(at, week.number, week.kind, count) for at, week in enumerate(plan.weeks)),
        highest=curve([week.highest_effort for week in overview], labelled=True),
        mean=curve([week.mean_effort for week in overview], labelled=False),
        levels=levels,
        height=height,
        dense=count > MOST_LABELS,
        tight=count > MOST_BOXES,
        untold=any(week.highest_effort is None for week in overview),
        said=_said(overview),
    )


def scale(efforts: Sequence[Fraction | None]) -> tuple[tuple[Level, ...], int]:
    """The levels from the lowest effort, at least two, to RPE 10, and the height of a plot that has them."""
    known = [effort for effort in efforts if effort is not None]
    if not known:
        return (), 0
    lowest = min(floor(min(known)), 9)
    levels = tuple(Level(str(rpe), _y(Fraction(rpe))) for rpe in range(lowest, 11))
    return levels, TOP + (10 - lowest) * POINT_HEIGHT + BOTTOM


def curve(efforts: Sequence[Fraction | None], *, labelled: bool) -> Curve:
    """Dots and lines; a figure stands over its dot, or under it where the line falls to the dot and rises again."""
    count = len(efforts)
    dots = [
        None if effort is None else _dot(at, count, effort, BELOW if _is_valley(efforts, at) else ABOVE, labelled)
        for at, effort in enumerate(efforts)
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


def _mark(at: int, number: int, kind: WeekKind, count: int) -> Mark:
    shown = at % ceil(count / MOST_LABELS) == 0
    letter = words.WEEK_LETTERS[kind]
    return Mark(_percent(at, count), _percent(1, count), _middle(at, count), number, shown, letter, kind.value)


def _is_valley(efforts: Sequence[Fraction | None], at: int) -> bool:
    effort = efforts[at]
    beside = [other for other in (*efforts[max(at - 1, 0) : at], *efforts[at + 1 : at + 2]) if other is not None]
    return effort is not None and bool(beside) and all(other > effort for other in beside)


def _dot(at: int, count: int, effort: Fraction, shift: int, labelled: bool) -> Dot:
    label = plain(effort, 1) if labelled and at % ceil(count / MOST_LABELS) == 0 else None
    return Dot(_middle(at, count), _y(effort), label, plain(Fraction(_y(effort)) + shift, 1))


def _y(rpe: Fraction) -> str:
    return plain(TOP + (10 - rpe) * POINT_HEIGHT, 1)


def _middle(at: int, count: int) -> str:
    return _percent(Fraction(2 * at + 1, 2), count)


def _percent(part: Fraction | int, whole: int) -> str:
    return f"{plain(Fraction(part) * 100 / whole)}%"


def _said(overview: Sequence[WeekSummary]) -> str:
    told = tuple(
        f"week {week.number}{_aside(week.kind)} hardest {plain(week.highest_effort, 1)}, "
        f"mean {plain(week.mean_effort, 1)}"
        for week in overview
        if week.highest_effort is not None and week.mean_effort is not None
    )
    if not told:
        return "No week says how hard it is."
    return "RPE by week, of the sets that state one: " + "; ".join(told) + "."


def _aside(kind: WeekKind) -> str:
    return "" if kind is WeekKind.WORKING else f" ({words.WEEK_NAMES[kind].lower()})"
