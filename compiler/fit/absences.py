"""Days away put into a plan: it goes on later, or the sessions of those days are left out.

Comes in: a plan with its sessions on the athlete's days, and the days away. Goes out: the plan with other dates, or
with sessions emptied, each saying why; every session keeps its week and its place in it.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import weeks as codes
from setwright.log.matching import Place
from setwright.log.model import Away, Missed
from setwright.message import Phrase, message
from setwright.plan import Cause, Plan, Quantity, Session, Step, Week
from setwright.record import replace

GOES_ON = Phrase(message("The plan waited for days away and goes on here."))


def with_absences(
    plan: Plan, aways: Iterable[Away], done: frozenset[date], problems: list[Diagnostic]
) -> tuple[Plan, frozenset[Place]]:
    """The plan with its new dates, and the places of sessions that are left out.

    What was trained on a day away all the same, by the days that were `done`, is not left out.
    """
    left_out: set[Place] = set()
    for away in aways:
        if plan.start is None:
            problems.append(codes.AWAY_WITHOUT_DATES.at(away.span, plan=plan.name))
            break
        if away.missed is Missed.SHIFT:
            plan = _shifted(plan, away, problems)
        else:
            left_out.update(_missed(plan, away, done))
    return plan, frozenset(left_out)


def without_missed(plan: Plan, left_out: frozenset[Place], aways: Iterable[Away]) -> Plan:
    """The plan with the sessions that are left out emptied; they stay as places, so that nothing else moves."""
    if not left_out:
        return plan
    spans = tuple(aways)

    def session(made: Session, place: Place) -> Session:
        return replace(made, lines=(), notes=(_why(made.date, spans),), left_out=True) if place in left_out else made

    def week(made: Week) -> Week:
        kept = tuple(session(each, (made.number, at)) for at, each in enumerate(made.sessions, 1))
        return replace(made, sessions=kept)

    return replace(plan, weeks=tuple(week(each) for each in plan.weeks))


# ---- helpers -------------------------------------------------------------------------------------


def _missed(plan: Plan, away: Away, done: frozenset[date]) -> Iterable[Place]:
    for week in plan.weeks:
        for position, session in enumerate(week.sessions, 1):
            if session.date is not None and away.first <= session.date <= away.last and session.date not in done:
                yield week.number, position


def _why(day: date | None, aways: tuple[Away, ...]) -> Phrase:
    reason = next((one.reason for one in aways if day and one.reason and one.first <= day <= one.last), None)
    if reason is None:
        return Phrase(message("Away. This session is left out."))
    return Phrase(message("Away ({reason}). This session is left out."), reason=reason)


def _shifted(plan: Plan, away: Away, problems: list[Diagnostic]) -> Plan:
    """From the first session planned on a day away on, everything goes on after it, on its own weekday."""
    first = _first_inside(plan, away)
    if first is None:
        problems.append(codes.AWAY_MOVES_NOTHING.at(away.span, plan=plan.name))
        return plan
    days = _wait(first, away.last, plan.microcycle)
    try:
        weeks = tuple(_later(week, first, days, away) for week in plan.weeks)
    except OverflowError:  # the calendar ends with the year 9999
        return plan
    return replace(plan, weeks=weeks)


def _first_inside(plan: Plan, away: Away) -> date | None:
    days = (session.date for week in plan.weeks for session in week.sessions if session.date is not None)
    return min((day for day in days if away.first <= day <= away.last), default=None)


def _wait(first: date, last: date, microcycle: int) -> timedelta:
    """Whole weeks, so that every session keeps its weekday; a microcycle of another length goes on the next day."""
    missed = (last - first).days + 1
    return timedelta(days=-(-missed // 7) * 7 if microcycle == 7 else missed)


def _later(week: Week, first: date, days: timedelta, away: Away) -> Week:
    if all(session.date is None or session.date < first for session in week.sessions):
        return week if week.start is None or week.start < first else replace(week, start=week.start + days)
    sessions = tuple(_moved(session, first, days, away) for session in week.sessions)
    whole = all(session.date is None or session.date >= first for session in week.sessions)
    start = week.start + days if whole and week.start is not None else week.start
    is_first = any(session.date == first for session in week.sessions)
    return replace(week, sessions=sessions, start=start, notes=(*week.notes, *((GOES_ON,) if is_first else ())))


def _moved(session: Session, first: date, days: timedelta, away: Away) -> Session:
    if session.date is None or session.date < first:
        return session
    later = session.date + days
    step = Step(Quantity.DATE, Cause.AWAY, session.date.isoformat(), later.isoformat(), away.span)
    return replace(session, date=later, steps=(*session.steps, step))
