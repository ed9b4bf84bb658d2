"""One athlete in the morning: today's session, sessions missed, effort of late, rules that were not kept.

Comes in: a plan with its promise and log, and a day. Goes out: `Morning`.
"""

from __future__ import annotations

from datetime import date, timedelta
from fractions import Fraction
from typing import Final

from setwright.check import breaches
from setwright.check.measures import MEASURES
from setwright.log.matching import Matching, matched
from setwright.log.model import LineDone, Log, SessionDone
from setwright.plan import Line, Movement, Plan, Segment, SegmentKind, Session, Week
from setwright.prescription import Effort
from setwright.record import record, replace
from setwright.report.adherence import Drift, State, adherence, differences
from setwright.report.coming import Coming
from setwright.rules import Promise

LATELY: Final = timedelta(days=14)


@record
class Morning:
    """What a coach looks up before training. `today` is planned for the day; `done_today` was written down already.

    `not_kept` are the rules that the last whole week `checked` is outside of, as it was done; they are held against
    what the athlete did, not against the plan.
    """

    athlete: str
    plan: str
    today: tuple[Session, ...]
    done_today: bool
    missed: int
    next: Coming | None
    drift: Drift
    checked: int | None
    not_kept: tuple[str, ...]


def morning(plan: Plan, promise: Promise, log: Log, on: date) -> Morning:
    """The figures of one athlete on a day."""
    of = adherence(plan, promise, log, on)
    matching = matched(plan, Log(tuple(one for one in log.sessions if one.day <= on), log.aways))
    checked = _last_whole_week(plan, on)
    return Morning(
        athlete=plan.athlete or "",
        plan=plan.name,
        today=tuple(one for week in plan.weeks for one in week.sessions if one.date == on and not one.left_out),
        done_today=any(one.day == on for one in log.sessions),
        missed=of.sessions(State.MISSED),
        next=of.next,
        drift=_drift(plan, matching, on),
        checked=None if checked is None else checked.number,
        not_kept=() if checked is None else tuple(_not_kept(plan, promise, matching, checked)),
    )


def _drift(plan: Plan, matching: Matching, on: date) -> Drift:
    found: list[Fraction] = []
    for week in plan.weeks:
        for position, session in enumerate(week.sessions, 1):
            done = tuple(one for one in matching.done(week.number, position) if on - LATELY < one.day <= on)
            found += differences(session, done)
    return Drift(len(found), sum(found, Fraction(0)) / len(found) if found else None)


def _last_whole_week(plan: Plan, on: date) -> Week | None:
    """The last week that is over."""
    length = timedelta(days=plan.microcycle)
    over = [week for week in plan.weeks if week.start is not None and week.start + length <= on]
    return over[-1] if over else None


def _not_kept(plan: Plan, promise: Promise, matching: Matching, week: Week) -> list[str]:
    """What `check` would say of the week, planned as it was done; what the plan itself breaks is left out."""
    codes = {measure.code.number for measure in MEASURES}
    planned = {(one.code.number, one.message) for one in breaches(replace(plan, weeks=(week,)), promise)}
    done = replace(plan, weeks=(_as_done(week, matching),))
    found = (one for one in breaches(done, promise) if one.code.number in codes)
    return [one.message for one in found if (one.code.number, one.message) not in planned]


def _as_done(week: Week, matching: Matching) -> Week:
    sessions = [
        replace(session, lines=_lines(matching.done(week.number, position)))
        for position, session in enumerate(week.sessions, 1)
    ]
    for one in matching.extra_in(week.number):
        offset = (one.day - week.start).days if week.start else 0
        sessions.append(Session(one.day.isoformat(), offset, _lines((one,)), one.span, date=one.day))
    return replace(week, sessions=tuple(sorted(sessions, key=lambda session: session.offset)))


def _lines(done: tuple[SessionDone, ...]) -> tuple[Line, ...]:
    return tuple(_line(entry.movement, entry) for one in done for entry in one.lines)


def _line(movement: Movement, entry: LineDone) -> Line:
    segments = tuple(
        Segment(SegmentKind.WORK, 1, one.reps, _intensity(one.effort), entry.span)
        for one in entry.sets
        if one.reps.high > 0
    )
    return Line(movement, segments, entry.span, label=entry.label)


def _intensity(effort: Effort | None) -> Effort | None:
    return effort
