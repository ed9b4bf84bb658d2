"""Bests for one repetition as a log tells them: tested singles, and estimates from sets with their trend.

Comes in: a `Log` and the model for each movement. Goes out: `Estimates`, by movement. Linear in the log, and at most
`WINDOW` days of it go into a trend.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from datetime import date, timedelta
from fractions import Fraction
from typing import Final

from setwright.log.matching import lines_done, matched
from setwright.log.model import LineDone, Log, SetDone
from setwright.plan import Movement, Plan
from setwright.prescription import RepsKind, Weight
from setwright.quantities import Mass, Unit
from setwright.record import record
from setwright.science.effort import LOWEST_RPE, reps_in_reserve
from setwright.science.repetitions import RELIABLE_REPS, Model, estimated_best
from setwright.science.trend import Trend, robust_trend
from setwright.source import Span

# Before this a trend says more of good and bad days than of strength (common practice, no source).
FEWEST_DAYS: Final = 5
SHORTEST: Final = timedelta(weeks=3)

# Days before the last one that a trend looks at: old strength says little of today's, and pairs of days stay few enough
# (common practice, no source).
WINDOW: Final = timedelta(weeks=26)

ModelOf = Callable[[Movement], Model]


@record
class DayBest:
    """The highest estimate of one day, and the set that it is from: `mass` for `reps` with `reserve` left."""

    day: date
    best: Mass
    mass: Mass
    reps: Fraction
    reserve: Fraction
    span: Span


@record
class BestTested:
    """A best as a test found it: the heaviest single of a day."""

    day: date
    best: Mass
    span: Span


@record
class LeftOut:
    """Sets that no estimate can be made from, by the reason."""

    without_load: int = 0  # or beside the body's weight
    without_effort: int = 0  # such a set says only that the best is not lower
    too_easy: int = 0  # under the scale that counts repetitions in reserve
    too_many: int = 0  # more than ten repetitions to failure
    others: int = 0  # missed, timed, over a distance, clusters

    @property
    def total(self) -> int:
        """All of them."""
        return self.without_load + self.without_effort + self.too_easy + self.too_many + self.others


@record
class MovementBests:
    """All that a log says of the best in one movement. Days are in order; `trend` counts days by their ordinal.

    `trend` is over the days of the `WINDOW` before the last one, in the unit of `days`; None where they are too few.
    """

    movement: Movement
    model: Model
    days: tuple[DayBest, ...]
    tested: tuple[BestTested, ...]
    trend: Trend | None
    left_out: LeftOut

    @property
    def unit(self) -> Unit:
        """The unit of the latest estimate."""
        return self.days[-1].best.unit

    @property
    def on_trend(self) -> Mass | None:
        """The trend's value on the last day with an estimate; None where there is no trend."""
        return Mass(self.trend.at(self.days[-1].day.toordinal()), self.unit) if self.trend else None

    @property
    def in_window(self) -> tuple[DayBest, ...]:
        """The days that a trend is over."""
        return _in_window(self.days)

    def known(self, before: date | None) -> BestTested | DayBest | None:
        """What a best is taken from on a day: the latest test of the window, else the trend's value on its last day.

        Only days before it count (None: all of them). A tested best outranks an estimate, a newer one an older.
        """
        tests = [one for one in self.tested if before is None or one.day < before]
        days = tuple(one for one in self.days if before is None or one.day < before)
        latest = before or max([*(one.day for one in tests[-1:]), *(one.day for one in days[-1:])], default=None)
        if latest is None:
            return None
        if tests and tests[-1].day >= latest - WINDOW:
            return tests[-1]
        if not days or days[-1].day < latest - WINDOW:
            return None
        trend = self.trend if len(days) == len(self.days) else trend_of(days)
        return None if trend is None else _with_best(days[-1], trend)


def estimates(log: Log, model_of: ModelOf, tests: Iterable[LineDone] = ()) -> dict[str, MovementBests]:
    """By the movement's name, in the order in which the log first has them; those without any estimate are left out.

    `tests` are entries that a plan calls a test, besides those that say so themselves.
    """
    said = {entry.span for entry in tests}
    found: dict[str, list[tuple[date, LineDone]]] = {}
    for session in log.sessions:
        for entry in session.lines:
            found.setdefault(entry.movement.name, []).append((session.day, entry))
    made = (_movement(entries, model_of, said) for entries in found.values())
    return {one.movement.name: one for one in made if one.days or one.tested}


def tests_done(plan: Plan, log: Log) -> tuple[LineDone, ...]:
    """The entries of a log that a plan's lines call a test."""
    if not any(line.is_test for week in plan.weeks for session in week.sessions for line in session.lines):
        return ()
    matching = matched(plan, log)
    found: list[LineDone] = []
    for week in plan.weeks:
        for position, session in enumerate(week.sessions, 1):
            done = matching.done(week.number, position)
            for line in session.lines:
                if line.is_test and lines_done(line, done, session.lines):
                    name = line.movement.name
                    found += [entry for one in done for entry in one.lines if entry.movement.name == name]
    return tuple(found)


def trend_of(days: tuple[DayBest, ...]) -> Trend | None:
    """The trend of the days in the window before the last; None for fewer than `FEWEST_DAYS`, or over less time."""
    kept = _in_window(days)
    if len(kept) < FEWEST_DAYS or kept[-1].day - kept[0].day < SHORTEST:
        return None
    unit = days[-1].best.unit
    return robust_trend([(one.day.toordinal(), _hundredths(one.best.to(unit).amount)) for one in kept])


def _movement(entries: list[tuple[date, LineDone]], model_of: ModelOf, said: set[Span]) -> MovementBests:
    movement = entries[-1][1].movement
    model = model_of(movement)
    best: dict[date, DayBest] = {}
    tested: dict[date, BestTested] = {}
    reasons: dict[str, int] = {}
    for day, entry in entries:
        if entry.is_test or entry.span in said:
            _keep_single(tested, day, entry)
        for one in entry.sets:
            reason = _reason(one)
            if reason is not None:
                reasons[reason] = reasons.get(reason, 0) + 1
            else:
                _keep_higher(best, _estimated(day, one, model, entry.span))
    days = tuple(best[day] for day in sorted(best))
    tests = tuple(tested[day] for day in sorted(tested))
    return MovementBests(movement, model, days, tests, trend_of(days) if days else None, LeftOut(**reasons))


def _reason(one: SetDone) -> str | None:
    """Why a set makes no estimate; the name of the count in `LeftOut`."""
    if one.reps.kind is not RepsKind.COUNT or one.reps.low < 1:
        return "others"
    if not isinstance(one.load, Weight):
        return "without_load"
    if one.effort is None:
        return "without_effort"
    if one.effort.high < LOWEST_RPE:
        return "too_easy"
    return "too_many" if one.reps.low + reps_in_reserve(one.effort.high) > RELIABLE_REPS else None


def _estimated(day: date, one: SetDone, model: Model, span: Span) -> DayBest:
    assert isinstance(one.load, Weight)
    assert one.effort is not None
    reps, reserve = one.reps.low, reps_in_reserve(one.effort.high)
    return DayBest(day, estimated_best(model, one.load.mass, reps + reserve), one.load.mass, reps, reserve, span)


def _keep_higher(best: dict[date, DayBest], one: DayBest) -> None:
    known = best.get(one.day)
    if known is None or one.best.to(Unit.KG).amount > known.best.to(Unit.KG).amount:
        best[one.day] = one


def _keep_single(tested: dict[date, BestTested], day: date, entry: LineDone) -> None:
    """The heaviest single that was lifted."""
    for mass in _singles(entry):
        known = tested.get(day)
        if known is None or mass.to(Unit.KG).amount > known.best.to(Unit.KG).amount:
            tested[day] = BestTested(day, mass, entry.span)


def _singles(entry: LineDone) -> Iterator[Mass]:
    for one in entry.sets:
        if isinstance(one.load, Weight) and one.reps.kind is RepsKind.COUNT and one.reps.low == 1:
            yield one.load.mass


def _in_window(days: tuple[DayBest, ...]) -> tuple[DayBest, ...]:
    return tuple(one for one in days if one.day > days[-1].day - WINDOW) if days else ()


def _with_best(last: DayBest, trend: Trend) -> DayBest:
    value = Mass(trend.at(last.day.toordinal()), last.best.unit)
    return DayBest(last.day, value, last.mass, last.reps, last.reserve, last.span)


def _hundredths(amount: Fraction) -> Fraction:
    """Short fractions, which are quick; formulas with powers give long ones."""
    return Fraction(round(amount * 100), 100)
