"""What in a plan calls for a caution beside those that stand on every sheet.

Comes in: a plan, fitted to an athlete or not. Goes out: plain data; the words are found when sheets are made.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.check.figures.effort import stated_effort
from setwright.plan import Line, Plan, Session
from setwright.record import record

OF_AGE: Final = 18  # years

# One repetition left, or none. Common practice, no source.
HIGH_EFFORT: Final = Fraction(9)


@record
class HardDays:
    """Two days in a row that both ask high effort of the same muscles: the muscles' titles, the slots of the days."""

    muscles: tuple[str, ...]
    first: str
    second: str


@record
class _Day:
    """The sessions of one day: in which week it lies, how it is written, the muscles that it asks high effort of."""

    week: int
    slot: str
    hard: frozenset[str]


def may_be_minor(plan: Plan) -> bool:
    """True where the athlete's year of birth lets them be under 18 on the first day; unknown without either year."""
    if plan.athlete_born is None or plan.start is None:
        return False
    return plan.start.year - plan.athlete_born <= OF_AGE  # in the year of the birthday itself one is 17 at first


def has_test(session: Session) -> bool:
    """True where a line of the session is a test."""
    return any(line.is_test for line in session.lines)


def hard_days(plan: Plan) -> dict[int, tuple[HardDays, ...]]:
    """For each week, the pairs of days in a row whose second lies in it; weeks without any are left out.

    Effort is what sets state (a range at its top; `max` and `5+` are all out), for prime movers (weight 1).
    """
    days: dict[int, _Day] = {}
    found: dict[int, tuple[HardDays, ...]] = {}
    for position, day in _days(plan):
        before = days.get(position)
        days[position] = _together(before, day) if before else day
    for position in sorted(days):
        first, second = days.get(position - 1), days[position]
        shared = first.hard & second.hard if first else frozenset()
        if first and shared:
            muscles = tuple(muscle.title for muscle in plan.muscles if muscle.word in shared)
            pair = HardDays(muscles, first.slot, second.slot)
            found[second.week] = (*found.get(second.week, ()), pair)
    return found


def _days(plan: Plan) -> Iterator[tuple[int, _Day]]:
    """Every session as a day, with its place counted from the plan's first day."""
    for week in plan.weeks:
        for session in week.sessions:
            hard = frozenset(word for line in session.lines if _is_hard(line) for word in _prime_movers(line))
            yield (week.number - 1) * plan.microcycle + session.offset, _Day(week.number, session.slot, hard)


def _together(one: _Day, other: _Day) -> _Day:
    return _Day(one.week, one.slot, one.hard | other.hard)


def _is_hard(line: Line) -> bool:
    efforts = (stated_effort(segment) for segment in line.work)
    return any(effort is not None and effort >= HIGH_EFFORT for effort in efforts)


def _prime_movers(line: Line) -> Iterator[str]:
    return (word for word, weight in line.movement.works if weight >= 1)
