"""An athlete whose bests come from a log, week by week: what was known when a week began.

Comes in: an athlete, a plan, a `Log`. Goes out: the athlete with those bests; written ones stay where the log has none.
"""

from __future__ import annotations

from datetime import date

from setwright.athlete import Athlete, Best
from setwright.fit.bests import Bests
from setwright.log.estimates import BestTested, DayBest, MovementBests, estimates, tests_done
from setwright.log.model import Log
from setwright.plan import Plan
from setwright.record import replace


class LoggedBests:
    """The bests of one athlete by the day. A week's loads do not change for what is lifted in it or later."""

    def __init__(self, athlete: Athlete, plan: Plan, log: Log, bests: Bests) -> None:
        self._athlete = athlete
        self._bests = bests
        self._known = estimates(log, bests.model, tests_done(plan, log))

    def before(self, day: date | None) -> Bests:
        """By what was done before the day; by the whole log for None, as in plans without dates."""
        written = {best.movement: best for best in self._athlete.bests}
        told = {name: best for name, of in self._known.items() if (best := _best(of, day)) is not None}
        return replace(
            self._bests, athlete=replace(self._athlete, bests=tuple({**written, **told}.values())), asks_log=True
        )


def _best(of: MovementBests, day: date | None) -> Best | None:
    name = of.movement.name
    match of.known(day):
        case BestTested() as test:
            return Best(name, test.best, test.span, on=test.day)
        case DayBest() as last:
            return Best(name, last.best, last.span, on=last.day, trend_by=of.model.value)
        case None:
            return None
