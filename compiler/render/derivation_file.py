"""Derivations for programs, as `derivation.schema.json` (beside this file) describes them.

Comes in: plans with derivations of their lines. Goes out: JSON text.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from json import dumps

from setwright.plan import Plan, Step, told
from setwright.render.json_values import Object, Value
from setwright.report.derivation import Derivation, Number
from setwright.source import Span


def json_text(found: Iterable[tuple[Plan, Sequence[Derivation]]]) -> str:
    """An array with an object a plan and athlete; names stay in their own script."""
    plans = [
        {"plan": plan.name, "athlete": plan.athlete, "lines": [_line(one) for one in lines]} for plan, lines in found
    ]
    return dumps(plans, ensure_ascii=False, indent=2, allow_nan=False) + "\n"


def _line(one: Derivation) -> Object:
    line, session = one.line, one.session
    return {
        "week": one.week.number,
        "block": one.week.block,
        "day": session.slot,
        "date": session.date.isoformat() if session.date else None,
        "order": one.order,
        "exercise": line.movement.name,
        "label": line.label,
        "instead_of": line.instead_of,
        "written": _place(line.span),
        "inherited": [{"text": str(came.text), **_place(came.span)} for came in line.inherited],
        "numbers": [_number(number) for number in one.numbers],
        "segments": [
            {
                "kind": part.segment.kind.value,
                "written": _place(part.segment.span),
                "numbers": [_number(number) for number in part.numbers],
            }
            for part in one.parts
        ],
    }


def _number(number: Number) -> Object:
    return {
        "quantity": number.quantity.value,
        "value": told(number.value),
        "steps": [_step(step) for step in number.steps],
    }


def _step(step: Step) -> Object:
    facts: dict[str, Value] = {name: told(value) for name, value in step.facts if value is not None}
    return {
        "what": step.cause.value,
        "before": step.told_before,
        "after": step.told_after,
        "written": _place(step.span),
        "facts": facts,
        "related": [{"text": str(place.text), **_place(place.span)} for place in step.related],
    }


def _place(span: Span) -> dict[str, Value]:
    return {"file": span.source.path, "line": span.line}
