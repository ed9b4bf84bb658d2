"""Sessions on the days an athlete has: in order, where the plan's own days do not fit."""

from __future__ import annotations

from datetime import timedelta
from itertools import pairwise

from setwright.athlete import Athlete
from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import athletes as codes
from setwright.plan import Plan, Session, Week
from setwright.record import replace
from setwright.suggest import either

WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


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
    return replace(plan, weeks=tuple(_moved(week, available, first) for week in plan.weeks))


def _too_few(athlete: Athlete, week: Week) -> Diagnostic:
    count = len(athlete.available)
    slots = [session.slot for session in week.sessions]
    merge = either([f"{a} with {b}" for a, b in pairwise(slots)])
    return codes.TOO_FEW_DAYS.at(
        athlete.available_span or athlete.span,
        athlete=athlete.name,
        available=f"{count} available day" + ("" if count == 1 else "s"),
        week=week.number,
        sessions=len(week.sessions),
        help=f"Merge {merge}, or free another day.",
        related=(Related(week.span, "the block whose sessions do not fit"),),
    )


def _moved(week: Week, available: list[str], first: int) -> Week:
    if all(session.slot in available for session in week.sessions):
        return week
    moved = (_on(session, day, week, first) for session, day in zip(week.sessions, available, strict=False))
    return replace(week, sessions=tuple(moved))


def _on(session: Session, day: str, week: Week, first: int) -> Session:
    offset = (WEEKDAYS.index(day) - first) % 7
    date = week.start + timedelta(days=offset) if week.start else None
    return replace(session, slot=day, offset=offset, date=date)
