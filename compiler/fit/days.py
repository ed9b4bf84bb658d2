"""Sessions on the days an athlete has: in order, where the plan's own days do not fit."""

from __future__ import annotations

from datetime import timedelta
from itertools import pairwise

from setwright.athlete import Athlete
from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import athletes as codes
from setwright.plan import WEEKDAYS, Cause, Plan, Quantity, Session, Step, Week
from setwright.record import replace


def on_available_days(plan: Plan, athlete: Athlete, problems: list[Diagnostic]) -> Plan:
    """The plan with its sessions moved; unchanged where every session's day is available."""
    if not athlete.available:
        return plan
    if any(session.slot not in WEEKDAYS for week in plan.weeks for session in week.sessions):
        span = athlete.available_span or athlete.span
        problems.append(codes.AVAILABLE_WITH_MICROCYCLE.at(span, athlete=athlete.name))
        return plan
    first = plan.start.weekday() if plan.start else 0
    available = sorted(athlete.available, key=lambda day: (WEEKDAYS.index(day) - first) % 7)
    crowded = next((week for week in plan.weeks if len(week.sessions) > len(available)), None)
    if crowded is not None:
        problems.append(_too_few(athlete, crowded))
        return plan
    return replace(plan, weeks=tuple(_moved(week, available, first, athlete) for week in plan.weeks))


def _too_few(athlete: Athlete, week: Week) -> Diagnostic:
    count = len(athlete.available)
    spare = len(week.sessions) - count
    free = "another day" if spare == 1 else f"{spare} more days"
    return codes.TOO_FEW_DAYS.at(
        athlete.available_span or athlete.span,
        athlete=athlete.name,
        available=f"{count} available day" + ("" if count == 1 else "s"),
        week=week.number,
        sessions=len(week.sessions),
        help=f"{_merger(week, spare)}, or free {free}.",
        related=(Related(week.span, "the block whose sessions do not fit"),),
    )


def _merger(week: Week, spare: int) -> str:
    """Which two sessions to make one of: neighbours, so that the order stays, with the fewest sets."""
    pairs = [(_sets(one) + _sets(other), one.slot, other.slot) for one, other in pairwise(week.sessions)]
    sets, first, second = min(pairs, key=lambda pair: pair[0])
    why = f"together they have {sets} set" + ("" if sets == 1 else "s")
    if len(pairs) == 1:
        return f"Merge {first} with {second} ({why})"
    start = "Merge" if spare == 1 else f"{spare} sessions have to go: first merge"
    return f"{start} {first} with {second} ({why}, the fewest of two neighbours)"


def _sets(session: Session) -> int:
    return sum(line.sets for line in session.lines)


def _moved(week: Week, available: list[str], first: int, athlete: Athlete) -> Week:
    if all(session.slot in available for session in week.sessions):
        return week
    moved = (_on(session, day, week, first, athlete) for session, day in zip(week.sessions, available, strict=False))
    return replace(week, sessions=tuple(moved))


def _on(session: Session, day: str, week: Week, first: int, athlete: Athlete) -> Session:
    if session.slot == day:
        return session
    offset = (WEEKDAYS.index(day) - first) % 7
    date = week.start + timedelta(days=offset) if week.start else None
    step = Step(Quantity.DAY, Cause.AVAILABLE, session.slot, day, athlete.available_span or athlete.span)
    return replace(session, slot=day, offset=offset, date=date, steps=(*session.steps, step))
