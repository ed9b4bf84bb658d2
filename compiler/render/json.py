"""The whole plan for programs, as `plan.schema.json` (beside this file) describes it.

Comes in: a plan, its volume and overview. Goes out: JSON text.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from fractions import Fraction
from pathlib import PurePath
from typing import Final, assert_never

from setwright.plan import Cause, Group, Line, Load, Movement, Plan, Segment, Session, Step, Week
from setwright.prescription import (
    Bodyweight,
    ChangeByMass,
    ChangeByPercent,
    Effort,
    Intensity,
    PercentOfBest,
    Reps,
    RepsKind,
    Rest,
    Weight,
)
from setwright.quantities import Mass
from setwright.render.json_values import Object, number
from setwright.render.log_objects import log_object
from setwright.render.material import Look, Material
from setwright.render.words import known_mass
from setwright.report.outcomes import Outcomes
from setwright.report.overview import SessionSummary, WeekSummary
from setwright.report.volume import MuscleWeek, Volume
from setwright.source import Span

SCHEMA_VERSION: Final = 1


def rendered(material: Material, look: Look) -> bytes:
    """The document as a file: data, so that no look changes it."""
    return document(material.plan, material.volume, material.overview, material.outcomes).encode()


def document(plan: Plan, volume: Volume, overview: Sequence[WeekSummary], outcomes: Outcomes | None = None) -> str:
    """The plan as JSON text, two spaces deep, with a line end; names stay in their own script."""
    whole: Object = {
        "schema": SCHEMA_VERSION,
        "plan": _plan(plan),
        **({"log": log_object(plan, outcomes)} if outcomes is not None else {}),
        "movements": [_movement(movement) for movement in _movements(plan)],
        "volume": [muscle_week(row) for row in volume.rows],
        "overview": [_summary(week) for week in overview],
    }
    return json.dumps(whole, ensure_ascii=False, indent=2, allow_nan=False) + "\n"


def _plan(plan: Plan) -> Object:
    return {
        "name": plan.name,
        "author": plan.author,
        "athlete": plan.athlete,
        "athlete_facts": [{"name": name, "value": value} for name, value in plan.athlete_facts],
        "unit": plan.unit.value,
        "start": plan.start.isoformat() if plan.start else None,
        "microcycle_days": plan.microcycle,
        "notes": list(plan.notes),
        "blocks": [
            {"name": block.name, "first_week": block.first_week, "last_week": block.last_week} for block in plan.blocks
        ],
        "weeks": [_week(week) for week in plan.weeks],
    }


def _week(week: Week) -> Object:
    return {
        "number": week.number,
        "block": week.block,
        "number_in_block": week.number_in_block,
        "kind": week.kind.value,
        "start": week.start.isoformat() if week.start else None,
        "notes": list(week.notes),
        "sessions": [_session(session) for session in week.sessions],
    }


def _session(session: Session) -> Object:
    return {
        "day": session.slot,
        "offset": session.offset,
        "label": session.label,
        "date": session.date.isoformat() if session.date else None,
        "at": f"{session.at:%H:%M}" if session.at else None,
        "notes": list(session.notes),
        "lines": [_line(order, line) for order, line in enumerate(session.lines, 1)],
    }


def _line(order: int, line: Line) -> Object:
    return {
        "order": order,
        "exercise": line.movement.name,
        "instead_of": line.instead_of,
        "label": line.label,
        "optional": line.optional,
        "group": _group(line.group) if line.group else None,
        "rest_s": _rest(line.rest),
        "tempo": [("X" if phase is None else phase) for phase in line.tempo.phases] if line.tempo else None,
        "every_s": _optional(line.every),
        "pause_s": _optional(line.pause),
        "advance": line.advance,
        "advance_words": line.advance_words,
        "projected": line.projected,
        "notes": list(line.notes),
        "swaps": list(line.swaps),
        "written": _place(line.span),
        "segments": [_segment(segment) for segment in line.segments],
    }


def _segment(segment: Segment) -> Object:
    mass = known_mass(segment)
    return {
        "kind": segment.kind.value,
        "sets": segment.sets,
        "reps": _reps(segment.reps),
        "intensity": _intensity(segment.intensity) if segment.intensity else None,
        "load": _load(mass, segment.load) if mass else None,
        "written": _place(segment.span),
        "steps": [_step(step) for step in segment.steps if step.cause is not Cause.WRITTEN],
    }


def _reps(reps: Reps) -> Object:
    open_ended = reps.kind in (RepsKind.MAX, RepsKind.AT_LEAST)
    cluster = reps.kind is RepsKind.CLUSTER
    return {
        "text": str(reps),
        "kind": reps.kind.value.replace(" ", "-"),
        "low": sum(reps.parts) if cluster else None if reps.kind is RepsKind.MAX else number(reps.low),
        "high": sum(reps.parts) if cluster else None if open_ended else number(reps.high),
        "parts": list(reps.parts),
        "per_side": reps.per_side,
    }


def _intensity(intensity: Intensity) -> Object:
    text = str(intensity)
    match intensity:
        case Effort(low, high, as_reserve):
            scale = "RIR" if as_reserve else "RPE"
            return {"kind": "effort", "text": text, "rpe_low": number(low), "rpe_high": number(high), "scale": scale}
        case PercentOfBest(percent, of):
            return {"kind": "percent", "text": text, "percent": number(percent), "of": of}
        case Weight(mass):
            return {"kind": "weight", "text": text, **_mass(mass)}
        case Bodyweight(added):
            return {"kind": "bodyweight", "text": text, "added": _mass(added) if added else None}
        case ChangeByPercent(percent):
            return {"kind": "change-percent", "text": text, "percent": number(percent)}
        case ChangeByMass(mass):
            return {"kind": "change-mass", "text": text, **_mass(mass)}
        case _:
            assert_never(intensity)


def _load(mass: Mass, made: Load | None) -> Object:
    return {
        **_mass(mass),
        "handling": made.handling.value if made and made.handling else None,
        "per_side": [number(disc) for disc in made.per_side] if made and made.per_side is not None else None,
        "bar": _mass(made.bar) if made and made.bar else None,
        "model": made.model if made else None,
        "spread": _spread(*made.spread) if made and made.spread else None,
    }


def _spread(least: Mass, greatest: Mass) -> Object:
    return {"least": number(least.amount), "greatest": number(greatest.amount)}


def _group(group: Group) -> Object:
    return {
        "kind": group.kind.value,
        "letter": group.letter,
        "rest_s": _rest(group.rest),
        "rounds": group.rounds,
    }


def _movements(plan: Plan) -> tuple[Movement, ...]:
    """Each movement once, in the order in which the plan first uses it."""
    used = {
        line.movement.name: line.movement for week in plan.weeks for session in week.sessions for line in session.lines
    }
    return tuple(used.values())


def _movement(movement: Movement) -> Object:
    return {
        "name": movement.name,
        "pattern": movement.pattern,
        "needs": list(movement.needs),
        "works": [{"muscle": muscle, "share": number(share)} for muscle, share in movement.works],
        "swaps": list(movement.swaps),
        "cue": movement.cue,
    }


def muscle_week(row: MuscleWeek) -> Object:
    """One muscle in one week, as the schema has it."""
    return {
        "week": row.week,
        "muscle": row.muscle.word,
        "title": row.muscle.title,
        "direct_sets": number(row.direct_sets),
        "fractional_sets": number(row.fractional_sets),
        "total_sets": number(row.total_sets),
        "sessions": row.sessions,
        "max_session_sets": number(row.max_session_sets),
        "rest_h_min": row.rest_h_min,
    }


def _summary(week: WeekSummary) -> Object:
    return {
        "week": week.number,
        "sets": week.sets,
        "mean_effort": _optional(week.mean_effort),
        "highest_effort": _optional(week.highest_effort),
        "minutes": number(week.minutes),
        "sessions": [_session_summary(session) for session in week.sessions],
    }


def _session_summary(session: SessionSummary) -> Object:
    return {
        "day": session.slot,
        "label": session.label,
        "date": session.date.isoformat() if session.date else None,
        "minutes": number(session.minutes),
        "sets": session.sets,
    }


def _step(step: Step) -> Object:
    return {
        "quantity": step.quantity.value,
        "what": step.cause.value,
        "before": step.told_before,
        "after": step.told_after,
        "written": _place(step.span),
    }


def _place(span: Span) -> Object:
    # The file's name alone: a folder says more about the author's machine than about the plan.
    return {"file": PurePath(span.source.path).name, "line": span.line}


def _rest(rest: Rest | None) -> Object | None:
    return {"low": number(rest.low), "high": number(rest.high)} if rest else None


def _mass(mass: Mass) -> Object:
    return {"amount": number(mass.amount), "unit": mass.unit.value}


def _optional(value: Fraction | None) -> int | float | None:
    return None if value is None else number(value)
