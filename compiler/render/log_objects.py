"""What was done, for programs: the `log` of `plan.schema.json`.

Comes in: a plan and its outcomes. Goes out: an object of JSON.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.log.model import LineDone, SessionDone, SetDone
from setwright.plan import Plan, Session
from setwright.prescription import Bodyweight, RepsKind, Weight
from setwright.quantities import Mass
from setwright.render.json_values import Object, Value, number
from setwright.report.outcomes import Outcomes, SessionOutcome, State


def log_object(plan: Plan, outcomes: Outcomes) -> Object:
    """The plan's sessions that have passed, by week and place, and those that were none of its own."""
    return {
        "on": outcomes.on.isoformat(),
        "done": outcomes.done,
        "due": outcomes.due,
        "sessions": list(_sessions(plan, outcomes)),
        "extra": [{"week": week, **_extra(one)} for week, one in outcomes.matching.extras],
    }


def _sessions(plan: Plan, outcomes: Outcomes) -> Iterator[Value]:
    for week in plan.weeks:
        for position, session in enumerate(week.sessions, 1):
            outcome = outcomes.of(week.number, position)
            if outcome.state is not State.AHEAD:
                yield {"week": week.number, "session": position, "day": session.slot, **_session(session, outcome)}


def _session(session: Session, outcome: SessionOutcome) -> Object:
    lines: list[Value] = [
        {
            "order": order,
            "exercise": of.instead or line.movement.name,
            "instead": of.instead is not None,
            "sets_more": of.more,
            "segments": [[_set(one) for one in sets] for sets in of.segments],
        }
        for order, (line, of) in enumerate(zip(session.lines, outcome.lines, strict=False), 1)
    ]
    return {
        "state": outcome.state.value,
        "on": [day.isoformat() for day in outcome.days],
        "lines": lines,
        "beside": [_entry(entry) for entry in outcome.beside],
        "notes": list(outcome.notes),
        "efforts": [number(each) for each in outcome.efforts],
        "minutes": number(outcome.minutes) if outcome.minutes is not None else None,
    }


def _extra(session: SessionDone) -> Object:
    return {
        "on": session.day.isoformat(),
        "entries": [_entry(entry) for entry in session.lines],
        "notes": list(session.notes),
    }


def _entry(entry: LineDone) -> Object:
    return {"exercise": entry.movement.name, "label": entry.label, "sets": [_set(one) for one in entry.sets]}


def _set(one: SetDone) -> Object:
    reps = one.reps
    return {
        "load": _load(one),
        "bodyweight": isinstance(one.load, Bodyweight),
        "amount": number(reps.low),
        "kind": reps.kind.value,
        "parts": list(reps.parts) if reps.kind is RepsKind.CLUSTER else [],
        "per_side": reps.per_side,
        "rpe": number(one.effort.high) if one.effort else None,
        "scale": ("RIR" if one.effort.as_reserve else "RPE") if one.effort else None,
    }


def _load(one: SetDone) -> Object | None:
    """The mass on the bar or in the hand; of a set with the body what is added to it, or taken off."""
    match one.load:
        case Weight(mass) | Bodyweight(Mass() as mass):
            return {"amount": number(mass.amount), "unit": mass.unit.value}
        case _:
            return None
