"""Where things stand in the charts of the main lifts: percent of the best above, effort below, weeks under both.

Comes in: main lifts. Goes out: `LiftCharts`, which `overview.html.j2` draws; lengths are units of a drawing that is
scaled as a whole, for all charts are about as wide on paper, on a phone and on a desk.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from math import ceil, floor
from typing import Final

from setwright.plan import WeekKind
from setwright.quantities import plain
from setwright.record import record
from setwright.render import words
from setwright.render.html.figures import MOST_LABELS, Tick
from setwright.render.language import Language
from setwright.report.main_lifts import LiftWeek, MainLift

WIDTH: Final = 300
MARGIN: Final = 24  # before the weeks: what a strip shows
END: Final = 6  # after them: the last number may be wider than its week
LABEL: Final = 14  # from a strip's upper edge to its highest dot: room for a number
LIFT: Final = 6  # from a dot to the foot of its number
UNDER: Final = 8  # from the lowest dot to the strip's lower edge
PERCENT_RISE, EFFORT_RISE = 34, 18  # from the lowest dot to the highest
AXIS: Final = 17  # the weeks under the strips
BEST: Final = Fraction(100)
TENS: Final = 10


@record
class Strip:
    """One reading of one lift: a line and its dots as paths, the numbers at them; none where nothing is known."""

    kind: str  # "percent" or "effort"
    line: str
    dots: str
    numbers: tuple[tuple[str, str, str], ...]  # across, down, text
    unit: str
    middle: int  # down, for the unit and what is said in place of a line


@record
class Chart:
    """One lift; `said` tells it in words."""

    name: str
    strips: tuple[Strip, ...]
    said: str


@record
class Back:
    """The ground of a week that is not a working one."""

    x: str
    width: str
    kind: str


@record
class LiftCharts:
    """The charts, and what all of them have in common."""

    charts: tuple[Chart, ...]
    ticks: tuple[Tick, ...]
    backs: tuple[Back, ...]
    best: str | None  # where 100% is
    parts: tuple[str, ...]  # the strips that there are
    foot: int  # of the strips
    height: int
    dense: bool  # too many weeks to number them all
    width: int = WIDTH  # of the weeks
    margin: int = MARGIN
    end: int = END


@record
class _Reading:
    """What a strip shows of a week, and where on it."""

    kind: str
    of: Callable[[LiftWeek], Fraction | None]
    low: Fraction
    high: Fraction
    top: int
    rise: int

    def y(self, value: Fraction) -> Fraction:
        return self.top + LABEL + (self.high - value) * self.rise / (self.high - self.low)

    @property
    def foot(self) -> int:
        return self.top + LABEL + self.rise + UNDER


def lift_charts(lifts: Sequence[MainLift], language: Language) -> LiftCharts | None:
    """Charts on one scale for the lifts of which something is known; None where there are none, or but one week."""
    told = [lift for lift in lifts if any(week.percent or week.effort for week in lift.weeks)]
    if not told or len(told[0].weeks) < 2:
        return None
    readings = tuple(_readings([week for lift in told for week in lift.weeks]))
    foot = readings[-1].foot
    percent = next((reading for reading in readings if reading.kind == "percent"), None)
    return LiftCharts(
        charts=tuple(_chart(lift, readings, language) for lift in told),
        ticks=tuple(_ticks(told[0].weeks, language)),
        backs=tuple(_backs(told[0].weeks)),
        best=plain(percent.y(BEST), 1) if percent else None,
        parts=tuple(reading.kind for reading in readings),
        foot=foot,
        height=foot + AXIS,
        dense=len(told[0].weeks) > MOST_LABELS,
    )


def _readings(weeks: Sequence[LiftWeek]) -> Iterator[_Reading]:
    """The strips that some lift has something to show in, one under the other."""
    percents = [week.percent for week in weeks if week.percent is not None]
    efforts = [week.effort for week in weeks if week.effort is not None]
    top = 0
    if percents:
        low = Fraction(floor(min(percents) / TENS) * TENS)
        yield _Reading("percent", lambda week: week.percent, low, max(*percents, BEST, low + TENS), top, PERCENT_RISE)
        top += LABEL + PERCENT_RISE + UNDER
    if efforts:
        low = Fraction(min(floor(min(efforts)), 9))
        yield _Reading("effort", lambda week: week.effort, low, Fraction(10), top, EFFORT_RISE)


def _chart(lift: MainLift, readings: Sequence[_Reading], language: Language) -> Chart:
    return Chart(
        name=lift.name,
        strips=tuple(_strip(reading, lift.weeks, language) for reading in readings),
        said=" ".join(_said(reading, lift.weeks, language) for reading in readings),
    )


def _strip(reading: _Reading, weeks: Sequence[LiftWeek], language: Language) -> Strip:
    every = ceil(len(weeks) / MOST_LABELS)
    line: list[str] = []
    dots: list[str] = []
    numbers: list[tuple[str, str, str]] = []
    follows = False
    for at, week in enumerate(weeks):
        value = reading.of(week)
        if value is not None:
            height = reading.y(value)
            x, y = _x(at, len(weeks)), plain(height, 1)
            line.append(f"{'L' if follows else 'M'}{x} {y}")
            dots.append(f"M{x} {y}h.01")
            if at % every == 0:
                numbers.append((x, plain(height - LIFT, 1), _number(value, language)))
        follows = value is not None
    unit = "%" if reading.kind == "percent" else "RPE"
    middle = (reading.top + LABEL + reading.foot) // 2
    return Strip(reading.kind, "".join(line), "".join(dots), tuple(numbers), unit, middle)


def _number(value: Fraction, language: Language) -> str:
    """Halves are written so; what a load comes to is no more exact than a whole number."""
    return language.number(value, 1 if (2 * value).denominator == 1 else 0)


def _ticks(weeks: Sequence[LiftWeek], language: Language) -> Iterator[Tick]:
    every = ceil(len(weeks) / MOST_LABELS)
    for at, week in enumerate(weeks):
        letter = words.week_letter(week.kind, language) if every == 1 else ""
        if at % every == 0:
            yield Tick(_x(at, len(weeks)), letter or str(week.week), bool(letter))


def _backs(weeks: Sequence[LiftWeek]) -> Iterator[Back]:
    width = plain(Fraction(WIDTH, len(weeks)), 1)
    for at, week in enumerate(weeks):
        if week.kind is not WeekKind.WORKING:
            yield Back(plain(Fraction(WIDTH * at, len(weeks)), 1), width, week.kind.value)


def _x(at: int, count: int) -> str:
    return plain(Fraction(WIDTH * (2 * at + 1), 2 * count), 1)


def _said(reading: _Reading, weeks: Sequence[LiftWeek], language: Language) -> str:
    told = [
        language.text("week {number}: {value}").format(number=week.week, value=_number(value, language))
        for week in weeks
        if (value := reading.of(week)) is not None
    ]
    listed = words.clauses(told, language)
    if reading.kind == "percent":
        if not told:
            return language.text("No percent of the best is known.")
        return language.text("Highest percent of the best, {weeks}.").format(weeks=listed)
    if not told:
        return language.text("No effort is stated.")
    return language.text("Hardest stated effort (RPE), {weeks}.").format(weeks=listed)
