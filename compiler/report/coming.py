"""The session that comes next.

Comes in: a plan, its log, and the day that counts as today. Goes out: `Coming`, or None where the plan is over.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from setwright.log.matching import Place, matched
from setwright.log.model import Log
from setwright.plan import Plan, Session, Week
from setwright.record import record


@record
class Coming:
    """A session of the plan; `number` counts through all `of` them from 1, `place` is its week and its place there."""

    week: Week
    session: Session
    place: Place
    number: int
    of: int


class NoSuchSessionError(Exception):
    """A session past the plan's last; the text says how many there are."""


def coming(plan: Plan, log: Log, on: date) -> Coming | None:
    """The session after the last one that was done; where none was, the first that is not before the day.

    Sessions that are left out on days away are passed over. Without dates and a log it is the first.
    """
    sessions = tuple(_sessions(plan))
    done = matched(plan, log).placed
    last = max(done, default=None)
    for one in sessions:
        day = one.session.date
        if one.place in done or (last is not None and one.place < last) or one.session.left_out:
            continue
        if last is None and day is not None and day < on:
            continue
        return one
    return None


def session_at(plan: Plan, number: int) -> Coming:
    """A session by its number through the plan, from 1. Raises `NoSuchSessionError`."""
    sessions = tuple(_sessions(plan))
    if number > len(sessions):
        count = f"{len(sessions)} session{'' if len(sessions) == 1 else 's'}"
        raise NoSuchSessionError(f"there is no session {number}: {plan.name} has {count}")
    return sessions[number - 1]


def _sessions(plan: Plan) -> Iterator[Coming]:
    of = sum(len(week.sessions) for week in plan.weeks)
    number = 0
    for week in plan.weeks:
        for position, session in enumerate(week.sessions, 1):
            number += 1
            yield Coming(week, session, (week.number, position), number, of)
