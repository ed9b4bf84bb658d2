"""The lifts that a plan is built around, and how hard and how heavy they are from week to week.

Comes in: a plan. Goes out: `MainLift`s, plain data.

A main lift is a movement that is tested, or one that opens a session in a third of the working weeks or more: as often
as a block of a plan of three blocks lasts. What opens a session is its first line outside any superset or circuit, and
its first line where all of them are in some. (Common practice, no source: the lift that matters comes first.)
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from typing import Final

from setwright.check.figures.effort import known_effort
from setwright.check.figures.percents import shares_of_best
from setwright.plan import Line, Plan, Session, Week, WeekKind
from setwright.prescription import Bodyweight, ChangeByMass, ChangeByPercent
from setwright.quantities import Mass, Unit
from setwright.record import record

MOST_LIFTS: Final = 6
LEAST_SHARE: Final = Fraction(1, 3)  # of the working weeks


@record
class LiftWeek:
    """The hardest effort (RPE) of the work sets of a week that state one, and their highest percent of the best.

    A percent is as written (`80%`, and what follows from it), else the load over the athlete's best, where both are
    known. None: not known, or the lift is not done.
    """

    week: int
    kind: WeekKind
    effort: Fraction | None
    percent: Fraction | None


@record
class MainLift:
    """A movement by name, its work sets in the whole plan, and every week of the plan in order."""

    name: str
    sets: int
    weeks: tuple[LiftWeek, ...]


def main_lifts(plan: Plan) -> tuple[MainLift, ...]:
    """At most `MOST_LIFTS`, those with the most work sets first; of as many, the one that comes up first."""
    names = _names(plan)
    bests = dict(plan.athlete_bests)
    lines = {name: [(week, _lines(week, name)) for week in plan.weeks] for name in names}
    made = [
        MainLift(
            name,
            sum(line.sets for _, found in weeks for line in found),
            tuple(_week(week, found, bests.get(name)) for week, found in weeks),
        )
        for name, weeks in lines.items()
    ]
    return tuple(sorted(made, key=lambda lift: -lift.sets)[:MOST_LIFTS])


def _names(plan: Plan) -> tuple[str, ...]:
    """The main lifts in the order in which they come up."""
    working = [week for week in plan.weeks if week.kind is WeekKind.WORKING] or list(plan.weeks)
    opened: dict[str, set[int]] = {}
    for week in working:
        for session in week.sessions:
            for name in _opening(session):
                opened.setdefault(name, set()).add(week.number)
    often = {name for name, weeks in opened.items() if len(weeks) >= LEAST_SHARE * len(working)}
    lines = [line for week in plan.weeks for session in week.sessions for line in session.lines if line.work]
    tested = {line.movement.name for line in lines if line.is_test}
    return tuple(dict.fromkeys(line.movement.name for line in lines if line.movement.name in often | tested))


def _opening(session: Session) -> Iterator[str]:
    """The movement that the session begins with, if it has any work."""
    lines = [line for line in session.lines if line.work]
    alone = [line for line in lines if line.group is None]
    yield from (line.movement.name for line in (alone or lines)[:1])


def _lines(week: Week, name: str) -> tuple[Line, ...]:
    return tuple(line for session in week.sessions for line in session.lines if line.movement.name == name)


def _week(week: Week, lines: Iterable[Line], best: Mass | None) -> LiftWeek:
    found = tuple(lines)
    efforts = [effort for line in found for each in line.work if (effort := known_effort(each)) is not None]
    percents = [percent for line in found for percent in _percents(line, best)]
    return LiftWeek(week.number, week.kind, max(efforts, default=None), max(percents, default=None))


def _percents(line: Line, best: Mass | None) -> Iterator[Fraction]:
    """A percent of another movement's best says nothing of this one's; its load may."""
    stated = {
        id(share.segment): share.percent for share in shares_of_best(line) if share.of in (None, line.movement.name)
    }
    yield from stated.values()
    if best is not None and best.amount > 0:
        yield from _from_loads(line, best, stated)


def _from_loads(line: Line, best: Mass, stated: Mapping[int, Fraction]) -> Iterator[Fraction]:
    """The loads over the best, in percent; beside the body's own weight a load is no share of anything."""
    on_body = False
    for segment in line.work:
        if not isinstance(segment.intensity, ChangeByPercent | ChangeByMass):
            on_body = isinstance(segment.intensity, Bodyweight)
        if segment.load is not None and not on_body and id(segment) not in stated:
            yield segment.load.mass.to(Unit.KG).amount / best.to(Unit.KG).amount * 100
