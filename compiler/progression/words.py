"""A progression as a lifter reads it on the sheet, with the numbers of the line that it stands under.

Comes in: a progression and what the line asks first. Goes out: a sentence a rule.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from setwright.message import Phrase, Share, counted, message, sentences
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
from setwright.quantities import Mass

_WHO: Final = {
    Subject.ALL: message("every set has {what}"),
    Subject.ANY: message("a set has {what}"),
    Subject.LAST: message("the last set has {what}"),
}
_COUNTS: Final = {
    Compare.LESS: message("fewer than {count}"),
    Compare.AT_MOST: message("at most {count}"),
    Compare.EQUAL: message("exactly {count}"),
    Compare.AT_LEAST: message("at least {count}"),
    Compare.MORE: message("more than {count}"),
}
_EFFORTS: Final = {
    # For translators: {effort} is "RPE 8", "the one asked for" or "1 above the one asked for".
    Compare.LESS: message("the effort is below {effort}"),
    Compare.AT_MOST: message("the effort is at most {effort}"),
    Compare.EQUAL: message("the effort is exactly {effort}"),
    Compare.AT_LEAST: message("the effort is at least {effort}"),
    Compare.MORE: message("the effort is above {effort}"),
}


def in_words(progression: Progression, asked: Asked) -> Phrase:
    """All its rules in their order."""
    said = [_rule(rule, asked) for rule in progression.rules]
    if all(rule.condition is not None for rule in progression.rules):
        said.append(Phrase(message("Otherwise: {does}."), does=_no_change()))
    return sentences(said)


def _rule(rule: Rule, asked: Asked) -> Phrase:
    does = tuple(_action(action, asked) for action in rule.actions) or _no_change()
    if rule.condition is None:
        return Phrase(message("Otherwise: {does}."), does=does)
    condition = _condition(rule.condition, asked)
    match rule.times:
        case 1:
            return Phrase(message("When {condition}: {does}."), condition=condition, does=does)
        case 2:
            return Phrase(message("When {condition}, twice running: {does}."), condition=condition, does=does)
        case times:
            return Phrase(
                message("When {condition}, {times} times running: {does}."),
                condition=condition,
                times=Fraction(times),
                does=does,
            )


def _no_change() -> Phrase:
    return Phrase(message("no change"))


def _condition(condition: Condition, asked: Asked) -> Phrase:
    if condition.subject is Subject.EFFORT:
        return Phrase(_EFFORTS[condition.compare], effort=_effort(condition))
    return Phrase(_WHO[condition.subject], what=_repetitions_done(condition, asked))


def _repetitions_done(condition: Condition, asked: Asked) -> Phrase:
    if condition.mark is not Mark.TARGET:
        ends = {None: Fraction(0), Mark.TOP: asked.top, Mark.BOTTOM: asked.bottom}
        return Phrase(_COUNTS[condition.compare], count=_repetitions(ends[condition.mark] + condition.number))
    if condition.number:
        return Phrase(_COUNTS[condition.compare], count=_beside_asked(condition.number))
    match condition.compare:
        case Compare.AT_LEAST:
            return _as_asked()
        case Compare.LESS:
            return Phrase(message("fewer repetitions than asked for"))
        case Compare.MORE:
            return Phrase(message("more repetitions than asked for"))
        case _:
            return Phrase(_COUNTS[condition.compare], count=_as_asked())


def _as_asked() -> Phrase:
    return Phrase(message("the repetitions asked for"))


def _beside_asked(number: Fraction) -> Phrase:
    if number > 0:
        return counted(
            "{number} repetition more than asked for", "{number} repetitions more than asked for", number=number
        )
    return counted(
        "{number} repetition fewer than asked for", "{number} repetitions fewer than asked for", number=-number
    )


def _effort(condition: Condition) -> Phrase:
    if condition.mark is None:
        return Phrase("RPE {number}", number=condition.number)
    if not condition.number:
        return Phrase(message("the one asked for"))
    if condition.number > 0:
        return Phrase(message("{number} above the one asked for"), number=condition.number)
    return Phrase(message("{number} below the one asked for"), number=-condition.number)


def _action(action: Action, asked: Asked) -> Phrase:
    match action.amount:
        case Mark.TOP:
            return _repetitions(asked.top)
        case Mark.BOTTOM | Mark.TARGET:
            return _repetitions(asked.bottom)
        case Percent(value=percent):
            return _percent(action.how, percent, isinstance(asked.intensity, PercentOfBest))
        case Fraction() as number:
            return _numbered(action, number)
        case mass:
            return _mass(action.how, mass)


def _percent(how: How, percent: Fraction, of_best: bool) -> Phrase:
    match how:
        case How.TO:
            return Phrase("{share}", share=Share(percent))
        case How.MORE if of_best:
            return Phrase(message("{number} percentage points more"), number=percent)
        case How.MORE:
            return Phrase(message("{amount} more"), amount=Share(percent))
        case _ if of_best:
            return Phrase(message("{number} percentage points less"), number=percent)
        case _:
            return Phrase(message("{amount} less"), amount=Share(percent))


def _mass(how: How, mass: Mass) -> Phrase:
    match how:
        case How.TO:
            return Phrase("{mass}", mass=mass)
        case How.MORE:
            return Phrase(message("{amount} more"), amount=mass)
        case _:
            return Phrase(message("{amount} less"), amount=mass)


def _numbered(action: Action, number: Fraction) -> Phrase:
    match action.moved, action.how:
        case Moved.EFFORT, How.TO:
            return Phrase("RPE {number}", number=number)
        case Moved.EFFORT, How.MORE:
            return Phrase(message("effort {number} higher"), number=number)
        case Moved.EFFORT, _:
            return Phrase(message("effort {number} lower"), number=number)
        case Moved.SETS, How.TO:
            return counted("{number} set", "{number} sets", number=number)
        case Moved.SETS, How.MORE:
            return counted("{number} set more", "{number} sets more", number=number)
        case Moved.SETS, _:
            return counted("{number} set fewer", "{number} sets fewer", number=number)
        case _, How.TO:
            return _repetitions(number)
        case _, How.MORE:
            return counted("{number} repetition more", "{number} repetitions more", number=number)
        case _:
            return counted("{number} repetition fewer", "{number} repetitions fewer", number=number)


def _repetitions(count: Fraction) -> Phrase:
    return counted("{number} repetition", "{number} repetitions", number=count)
