"""A progression as a lifter reads it on the sheet, with the numbers of the line that it stands under.

Comes in: a progression and what the line asks first. Goes out: a sentence a rule.
"""

from __future__ import annotations

from fractions import Fraction

from setwright.prescription import PercentOfBest
from setwright.progression.engine import Asked
from setwright.progression.model import (
    Action,
    Compare,
    Condition,
    How,
    Mark,
    Moved,
    Percent,
    Progression,
    Rule,
    Subject,
)
from setwright.quantities import plain
from setwright.suggest import either

_WHO = {Subject.ALL: "every set has", Subject.ANY: "a set has", Subject.LAST: "the last set has"}
_COUNTS = {
    Compare.LESS: "fewer than",
    Compare.AT_MOST: "at most",
    Compare.EQUAL: "exactly",
    Compare.AT_LEAST: "at least",
    Compare.MORE: "more than",
}
_EFFORTS = {**_COUNTS, Compare.LESS: "below", Compare.MORE: "above"}


def in_words(progression: Progression, asked: Asked) -> str:
    """All its rules in their order."""
    said = [_rule(rule, asked) for rule in progression.rules]
    if all(rule.condition is not None for rule in progression.rules):
        said.append("Otherwise: no change.")
    return " ".join(said)


def _rule(rule: Rule, asked: Asked) -> str:
    does = either([_action(action, asked) for action in rule.actions], "and") or "no change"
    if rule.condition is None:
        return f"Otherwise: {does}."
    running = {1: "", 2: ", twice running"}.get(rule.times, f", {rule.times} times running")
    return f"When {_condition(rule.condition, asked)}{running}: {does}."


def _condition(condition: Condition, asked: Asked) -> str:
    if condition.subject is Subject.EFFORT:
        return f"the effort is {_EFFORTS[condition.compare]} {_effort(condition)}"
    who = _WHO[condition.subject]
    if condition.mark is not Mark.TARGET:
        ends = {None: Fraction(0), Mark.TOP: asked.top, Mark.BOTTOM: asked.bottom}
        return f"{who} {_COUNTS[condition.compare]} {_repetitions(ends[condition.mark] + condition.number)}"
    if condition.number:
        side = "more" if condition.number > 0 else "fewer"
        return f"{who} {_COUNTS[condition.compare]} {_repetitions(abs(condition.number))} {side} than asked for"
    if condition.compare is Compare.AT_LEAST:
        return f"{who} the repetitions asked for"
    if condition.compare in (Compare.LESS, Compare.MORE):
        return f"{who} {_COUNTS[condition.compare].removesuffix(' than')} repetitions than asked for"
    return f"{who} {_COUNTS[condition.compare]} the repetitions asked for"


def _effort(condition: Condition) -> str:
    if condition.mark is None:
        return f"RPE {plain(condition.number)}"
    if not condition.number:
        return "the one asked for"
    return f"{plain(abs(condition.number))} {'above' if condition.number > 0 else 'below'} the one asked for"


def _action(action: Action, asked: Asked) -> str:
    match action.amount:
        case Mark.TOP:
            return _repetitions(asked.top)
        case Mark.BOTTOM | Mark.TARGET:
            return _repetitions(asked.bottom)
        case Percent(value=percent):
            if action.how is How.TO:
                return f"{plain(percent)}%"
            share = " percentage points" if isinstance(asked.intensity, PercentOfBest) else "%"
            return f"{plain(percent)}{share} {_side(action.how)}"
        case Fraction() as number:
            return _numbered(action, number)
        case mass:
            return str(mass) if action.how is How.TO else f"{mass} {_side(action.how)}"


def _numbered(action: Action, number: Fraction) -> str:
    if action.moved is Moved.EFFORT:
        if action.how is How.TO:
            return f"RPE {plain(number)}"
        return f"effort {plain(number)} {'higher' if action.how is How.MORE else 'lower'}"
    noun = "set" if action.moved is Moved.SETS else "repetition"
    text = f"{plain(number)} {noun}{'' if number == 1 else 's'}"
    if action.how is How.TO:
        return text
    return f"{text} {'more' if action.how is How.MORE else 'fewer'}"


def _side(how: How) -> str:
    return "more" if how is How.MORE else "less"


def _repetitions(count: Fraction) -> str:
    return f"{plain(count)} repetition{'' if count == 1 else 's'}"
