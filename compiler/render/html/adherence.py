"""What was done beside what was asked as one HTML file that needs nothing else, in the style of the sheets.

Comes in: `Adherence` of each plan and athlete. Goes out: the text of the page: figures first, tables, drawings.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.log.estimates import MovementBests
from setwright.quantities import plain
from setwright.record import record
from setwright.render import adherence as said
from setwright.render import keys, words
from setwright.render.html import environment, policy, style
from setwright.report.adherence import Adherence, WeekDone

STYLES: Final = ("style.css", "comparison.css", "adherence.css", "print.css")
HEIGHT: Final = 120  # pixels of a drawing of bests
EDGE: Final = 14


@record
class Bar:
    """A week's sets, in percent of the plan's longest: done, due, planned."""

    week: str
    done: str
    due: str
    planned: str
    told: str


@record
class Point:
    """A day's estimate, or a test."""

    x: str
    y: str
    is_test: bool = False


@record
class Lift:
    """The estimates of one movement over time, with the trend as a line; `told` says it in words."""

    name: str
    points: tuple[Point, ...]
    trend: tuple[Point, Point] | None
    high: str
    low: str
    first: str
    last: str
    told: str


@record
class Person:
    """The report of one plan and athlete."""

    title: str
    summary: tuple[tuple[str, str], ...]
    tables: tuple[said.Table, ...]
    bars: tuple[Bar, ...]
    lifts: tuple[Lift, ...]


def page(figures: tuple[Adherence, ...]) -> str:
    """The whole page."""
    sheet = style(STYLES)
    return (
        environment()
        .get_template("adherence.html.j2")
        .render(
            people=[_person(one) for one in figures],
            height=HEIGHT,
            cautions=keys.CAUTIONS,
            style=sheet,
            policy=policy(sheet),
        )
    )


def _person(of: Adherence) -> Person:
    return Person(
        title=said.title(of),
        summary=said.summary(of),
        tables=tuple(_typeset(table) for table in said.tables(of)),
        bars=tuple(_bars(of)),
        lifts=tuple(_lift(one) for one in of.bests if len(one.in_window) > 1),
    )


def _typeset(table: said.Table) -> said.Table:
    """Signs of text as signs of print; letters for the states stay."""
    rows = tuple(tuple(_cell(cell) for cell in row) for row in table.rows)
    return said.Table(table.title, table.note, table.head, rows, table.left)


def _cell(cell: str) -> str:
    return words.MINUS + cell[1:] if len(cell) > 1 and cell[0] == "-" and cell[1].isdigit() else cell


def _bars(of: Adherence) -> Iterator[Bar]:
    most = max((week.sets_planned for week in of.begun), default=0)
    for week in of.begun if most else ():
        yield _bar(week, most)


def _bar(week: WeekDone, most: int) -> Bar:
    done, due, planned = (
        f"{plain(Fraction(100 * sets, most))}%" for sets in (week.sets_done, week.sets_due, week.sets_planned)
    )
    told = f"{week.sets_done} of {week.sets_due} sets due, {week.sets_planned} planned"
    return Bar(said.week_name(week), done, due, planned, told)


def _lift(one: MovementBests) -> Lift:
    days, unit = one.in_window, one.unit
    tests = [test for test in one.tested if days[0].day <= test.day <= days[-1].day]
    first, last = days[0].day.toordinal(), days[-1].day.toordinal()
    values = [*(each.best.to(unit).amount for each in days), *(test.best.to(unit).amount for test in tests)]
    ends = () if one.trend is None else (one.trend.at(first), one.trend.at(last))
    low, high = min((*values, *ends)), max((*values, *ends))

    def point(day: int, value: Fraction, *, is_test: bool = False) -> Point:
        down = EDGE + (high - value) * (HEIGHT - 2 * EDGE) / (high - low) if high > low else Fraction(HEIGHT, 2)
        # Two percent at each side keep the first and the last dot whole.
        return Point(f"{plain(2 + Fraction(96 * (day - first), max(1, last - first)))}%", plain(down, 1), is_test)

    return Lift(
        name=one.movement.name,
        points=(
            *(point(each.day.toordinal(), each.best.to(unit).amount) for each in days),
            *(point(test.day.toordinal(), test.best.to(unit).amount, is_test=True) for test in tests),
        ),
        trend=None if not ends else (point(first, ends[0]), point(last, ends[1])),
        high=f"{plain(high, 1)} {unit.value}",
        low=f"{plain(low, 1)} {unit.value}",
        first=days[0].day.isoformat(),
        last=days[-1].day.isoformat(),
        told=_told(one),
    )


def _told(one: MovementBests) -> str:
    told = "; ".join(
        f"{each.day.isoformat()} {plain(each.best.to(one.unit).amount, 1)} {one.unit.value}" for each in one.in_window
    )
    return f"Estimated best by {one.model.value}: {told}."
