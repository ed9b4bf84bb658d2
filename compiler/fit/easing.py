"""Easing in after a gap: which sessions are lightened, and what becomes of them.

Comes in: a plan with its dates, and a `Log`. Goes out: places, and the plan with those sessions lightened. How long a
gap has to be and how much lighter it goes on is what the plan or the athlete says; nothing is done unasked.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from fractions import Fraction
from itertools import pairwise

from setwright.expand.deloads import eased
from setwright.log.matching import Place
from setwright.log.model import Log
from setwright.message import Phrase, message
from setwright.plan import EaseIn, Plan, Session, Week, WeekKind
from setwright.record import replace

LASTS = timedelta(days=7)  # from the first session after the gap


def eased_places(
    plan: Plan, log: Log, rule: EaseIn | None, on: date | None, left_out: frozenset[Place]
) -> dict[Place, int]:
    """The sessions of the seven days from each return on, with the days without a session before it.

    Trained is on the days of the log; from the day `on`, or from the day after the last of the log, as planned.
    """
    if rule is None:
        return {}
    planned = [*_planned(plan, left_out)]
    done = sorted({session.day for session in log.sessions if session.lines})
    now = max(filter(None, (on, done[-1] + timedelta(days=1) if done else None)), default=date.min)
    trained = sorted({*done, *(day for day, _ in planned if day >= now)})
    gaps = {day: (day - before).days - 1 for before, day in pairwise(trained)}
    returns = {day: days for day, days in gaps.items() if days >= rule.days}
    return {
        place: days
        for first, days in returns.items()
        for day, place in planned
        if first <= day < first + LASTS and place not in left_out
    }


def with_easing(plan: Plan, rule: EaseIn | None, places: dict[Place, int]) -> Plan:
    """The plan with those sessions lightened. A deload week is light already, and stays as it is."""
    if rule is None or not places:
        return plan
    return replace(plan, weeks=tuple(_week(week, rule, places) for week in plan.weeks))


def _planned(plan: Plan, left_out: frozenset[Place]) -> Iterator[tuple[date, Place]]:
    for week in plan.weeks:
        for position, session in enumerate(week.sessions, 1):
            if session.date is not None and (week.number, position) not in left_out:
                yield session.date, (week.number, position)


def _week(week: Week, rule: EaseIn, places: dict[Place, int]) -> Week:
    if week.kind is WeekKind.DELOAD:
        return week
    sessions = tuple(_session(each, rule, places.get((week.number, at))) for at, each in enumerate(week.sessions, 1))
    return replace(week, sessions=sessions)


def _session(session: Session, rule: EaseIn, days: int | None) -> Session:
    if days is None:
        return session
    said = Phrase(
        message(
            "Easing in after {days} days without a session. Stop short of what is asked if it does not feel right, and "
            "after an illness or injury ask a doctor before you train."
        ),
        days=Fraction(days),
    )
    return replace(session, lines=tuple(eased(line, rule) for line in session.lines), notes=(said, *session.notes))
