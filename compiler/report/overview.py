"""The plan week by week: sets, effort, minutes.

Comes in: a plan. Goes out: a summary of each week and each of its sessions, for time lines and tables.
"""

from __future__ import annotations

from datetime import date
from fractions import Fraction

from setwright.check.figures.effort import known_effort
from setwright.check.figures.session_time import session_minutes
from setwright.plan import Plan, Session, Week, WeekKind
from setwright.record import record
from setwright.report.cautions import HardDays, hard_days


@record
class SessionSummary:
    """One session: its minutes and its work sets, warm-ups left out."""

    slot: str
    label: str | None
    date: date | None
    minutes: Fraction
    sets: int


@record
class WeekSummary:
    """One week. Efforts are RPE, over the sets that state one (a range at its top); None where none does."""

    number: int
    block: str
    kind: WeekKind
    sets: int
    mean_effort: Fraction | None  # weighted by sets
    highest_effort: Fraction | None
    minutes: Fraction
    sessions: tuple[SessionSummary, ...]
    hard_days: tuple[HardDays, ...] = ()


def overview(plan: Plan) -> tuple[WeekSummary, ...]:
    """Every week of the plan in order; optional lines are included."""
    hard = hard_days(plan)
    return tuple(_week(week, hard.get(week.number, ())) for week in plan.weeks)


def _week(week: Week, hard: tuple[HardDays, ...]) -> WeekSummary:
    sessions = tuple(_session(session) for session in week.sessions)
    efforts = _efforts(week)
    sets = sum(number for number, _ in efforts)
    return WeekSummary(
        number=week.number,
        block=week.block,
        kind=week.kind,
        sets=sum(session.sets for session in sessions),
        mean_effort=sum((number * rpe for number, rpe in efforts), Fraction(0)) / sets if sets else None,
        highest_effort=max((rpe for _, rpe in efforts), default=None),
        minutes=sum((session.minutes for session in sessions), Fraction(0)),
        sessions=sessions,
        hard_days=hard,
    )


def _session(session: Session) -> SessionSummary:
    sets = sum(line.sets for line in session.lines)
    return SessionSummary(session.slot, session.label, session.date, session_minutes(session), sets)


def _efforts(week: Week) -> list[tuple[int, Fraction]]:
    """The sets and RPE of each work segment that states an effort."""
    segments = (segment for session in week.sessions for line in session.lines for segment in line.work)
    stated = ((segment.sets, known_effort(segment)) for segment in segments)
    return [(sets, effort) for sets, effort in stated if effort is not None]
