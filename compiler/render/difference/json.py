"""What changes for the athlete for programs, as `difference.schema.json` (in the folder above) describes it.

Comes in: a `FileDifference`. Goes out: JSON text; values of a prescription are written as in a plan.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from setwright.plan import Segment
from setwright.render.difference.rules import rule_text
from setwright.render.difference.words import value, work
from setwright.render.json_values import Object, Value, number
from setwright.report.difference import model
from setwright.report.difference.model import Aspect, Easing

SCHEMA_VERSION: Final = 1


def json_text(of: model.FileDifference) -> str:
    """The difference as JSON text, two spaces deep, with a line end."""
    whole: Object = {
        "schema": SCHEMA_VERSION,
        "changed": not of.is_empty,
        "plans": [_pair(pair) for pair in of.pairs],
        "added": [_whole(whole) for whole in of.added],
        "dropped": [_whole(whole) for whole in of.dropped],
    }
    return json.dumps(whole, ensure_ascii=False, indent=2, allow_nan=False) + "\n"


def _pair(of: model.Difference) -> Object:
    return {
        "changed": not of.is_empty,
        "old": _heading(of.old),
        "new": _heading(of.new),
        "facts": [_fact(fact) for fact in of.facts],
        "rules": [
            {"old": rule_text(rule.old) if rule.old else None, "new": rule_text(rule.new) if rule.new else None}
            for rule in of.rules
        ],
        "movements": [
            {"name": movement.name, "facts": [_fact(fact) for fact in movement.facts]} for movement in of.movements
        ],
        "blocks": [_block(block) for block in of.blocks],
        "shifted_weeks": _weeks(of.shifted),
        "muscles": [_muscle(muscle) for muscle in of.consequence.muscles],
        "figures": [_figure(figure) for figure in of.consequence.figures],
        "breaches": [_breach(breach) for breach in of.consequence.breaches],
    }


def _heading(of: model.Heading) -> Object:
    return {"plan": of.plan, "athlete": of.athlete}


def _whole(of: model.Whole) -> Object:
    blocks = [_stretched(block) for block in of.blocks]
    return {**_heading(of.heading), "blocks": blocks, "sessions": of.sessions, "sets": of.sets}


def _fact(of: model.Fact) -> Object:
    before, after = _value(of.aspect, of.before), _value(of.aspect, of.after)
    return {"what": of.aspect.value, "before": before, "after": after}


def _block(of: model.BlockChange) -> Object:
    return {
        "fate": of.fate.value,
        "old": _stretched(of.old) if of.old else None,
        "new": _stretched(of.new) if of.new else None,
        "added_weeks": list(of.added),
        "dropped_weeks": list(of.dropped),
        "changes": [_change(change) for change in of.changes],
        "days": [_day(session) for session in of.sessions],
    }


def _stretched(of: model.Stretched) -> Object:
    return {"name": of.name, "first_week": of.first_week, "last_week": of.last_week}


def _day(of: model.SessionChange) -> Object:
    return {
        "fate": of.fate.value,
        "old": {"day": of.old.slot, "label": of.old.label} if of.old else None,
        "new": {"day": of.new.slot, "label": of.new.label} if of.new else None,
        "weeks": _weeks(of.weeks),
        "work": [
            {"week": work.week, "lines": [{"exercise": name, "sets": sets} for name, sets in work.lines]}
            for work in of.work
        ],
        "changes": [_change(change) for change in of.changes],
        "lines": [_line(line) for line in of.lines],
    }


def _line(of: model.LineChange) -> Object:
    return {
        "fate": of.fate.value,
        "old": of.old,
        "new": of.new,
        "label": of.label,
        "weeks": _weeks(of.weeks),
        "work": [{"week": written.week, "work": work(written.segments)} for written in of.written],
        "changes": [_change(change) for change in of.changes],
    }


def _change(of: model.Change) -> Object:
    return {
        "what": of.aspect.value,
        "part": None if of.part is None else of.part + 1,
        "stretches": [
            {
                "kind": stretch.kind.value,
                "weeks": _weeks(stretch.weeks),
                "before": [_value(of.aspect, each) for each in stretch.before],
                "after": [_value(of.aspect, each) for each in stretch.after],
            }
            for stretch in of.stretches
        ],
    }


def _value(aspect: Aspect, of: model.Value) -> Value:
    match of:
        case None | bool() | int():
            return of
        case Fraction() if aspect is not Aspect.COUNT_FROM:
            return number(of)
        case Easing(sets, factor, effort):
            return {
                "sets": sets,
                "load_factor": None if factor is None else number(factor),
                "highest_effort": None if effort is None else number(effort),
            }
        case tuple() if aspect is Aspect.WORKS:
            return [str(value(aspect, (each,))) for each in of]  # type: ignore[arg-type]
        case tuple():
            return _texts(of)
        case _:
            return value(aspect, of)


def _texts(of: Sequence[object]) -> Value:
    segments = [each for each in of if isinstance(each, Segment)]
    return [work([segment]) for segment in segments] if segments else [str(each) for each in of]


def _weeks(of: model.Weeks) -> Value:
    return [{"old": old, "new": new} for old, new in of]


def _muscle(of: model.MuscleChange) -> Object:
    return {
        "muscle": of.muscle,
        "title": of.title,
        "kind": of.kind.value,
        "weeks": _weeks(of.weeks),
        "sets_before": _range(of.before),
        "sets_after": _range(of.after),
        "more": _range(of.more),
    }


def _figure(of: model.FigureChange) -> Object:
    return {
        "figure": of.figure.value,
        "old_day": of.old,
        "new_day": of.new,
        "weeks": _weeks(of.weeks),
        "before": _range(of.before) if of.before else None,
        "after": _range(of.after) if of.after else None,
    }


def _breach(of: model.BreachChange) -> Object:
    return {
        "code": of.code,
        "measure": of.measure,
        "subject": of.subject,
        "day": of.slot,
        "old": _broken(of.old) if of.old else None,
        "new": _broken(of.new) if of.new else None,
    }


def _broken(of: model.Broken) -> Object:
    return {"rule": rule_text(of.rule), "weeks": list(of.weeks), "figures": _range(of.figures)}


def _range(of: model.Range) -> Object:
    return {"low": number(of.low), "high": number(of.high)}
