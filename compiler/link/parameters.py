"""Parameters of templates: their types, what a call gives for them, and the lines with the values put in.

A parameter has the type of its default. One without a default takes anything and must be given.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from fractions import Fraction
from typing import Any

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import names
from setwright.record import field_names, replace
from setwright.suggest import did_you_mean, either
from setwright.syntax import nodes as n
from setwright.syntax.habits import spelled

Problems = list[Diagnostic]
Value = n.Item | n.Name
Bindings = Mapping[str, Value]

_TIMES = ("s", "min", "h")
_MASSES = ("kg", "lb")


def bound_parameters(
    template: n.Head, call: n.Name, arguments: tuple[n.Argument, ...], reserved: Collection[str], problems: Problems
) -> dict[str, Value] | None:
    """Each parameter's value, the call's or its default; None after saying what is wrong with the call."""
    before = len(problems)
    declared = _declared(template, reserved, problems)
    given: dict[str, n.Argument] = {}
    for argument in arguments:
        name = argument.name
        if name.text not in declared:
            help_ = did_you_mean(name.text, declared) or _listed(template, declared)
            place = (Related(template.name.span, f"the {template.word} is declared here"),)
            problems.append(
                names.UNKNOWN_PARAMETER.at(
                    name.span, template=template.name.text, name=name.text, help=help_, related=place
                )
            )
        elif name.text in given:
            place = (Related(given[name.text].span, "it is given here"),)
            problems.append(names.PARAMETER_TWICE.at(name.span, name=name.text, related=place))
        else:
            given[name.text] = argument
    bindings = {name: _value(one, given.get(name), call, problems) for name, one in declared.items()}
    if len(problems) > before:
        return None
    return {name: value for name, value in bindings.items() if value is not None}


def substituted(statement: n.Statement, bindings: Bindings, problems: Problems) -> n.Statement:
    """A template's line and those under it, with each parameter replaced by its value."""
    return _put_in(statement, bindings, problems)  # type: ignore[no-any-return]


# ---- parameters and arguments --------------------------------------------------------------------


def _declared(template: n.Head, reserved: Collection[str], problems: Problems) -> dict[str, n.Argument]:
    declared: dict[str, n.Argument] = {}
    for parameter in template.arguments:
        name = parameter.name
        if name.text in reserved:
            problems.append(names.RESERVED_PARAMETER.at(name.span, name=name.text))
        if name.text in declared:
            place = (Related(declared[name.text].span, "it is declared here"),)
            problems.append(names.PARAMETER_TWICE.at(name.span, name=name.text, related=place))
        declared[name.text] = parameter
    return declared


def _value(parameter: n.Argument, given: n.Argument | None, call: n.Name, problems: Problems) -> Value | None:
    if given is None:
        if parameter.value is None:
            place = (Related(parameter.span, "it has no default"),)
            problems.append(names.MISSING_PARAMETER.at(call.span, name=parameter.name.text, related=place))
        return parameter.value
    assert given.value is not None
    if parameter.value is None:
        return given.value
    wanted, found = type_of(parameter.value), type_of(given.value)
    if found != wanted and (wanted, found) != ("a range", "a count"):
        place = (Related(parameter.span, f"its default makes it {wanted}"),)
        problems.append(
            names.PARAMETER_TYPE.at(
                given.value.span,
                name=parameter.name.text,
                wanted=wanted,
                given=given.value.span.text,
                found=found,
                related=place,
            )
        )
    return _on_scale_of(parameter.value, given.value)


def _on_scale_of(default: Value, given: Value) -> Value:
    """An effort on the scale that the template's lines use: RPE or repetitions in reserve."""
    if not isinstance(default, n.Item) or not isinstance(given, n.Item) or given.low is None or given.high is None:
        return given
    if default.rpe and given.unit == "RIR":
        return replace(given, rpe=True, unit=None, low=10 - given.high, high=10 - given.low)
    if default.unit == "RIR" and given.rpe:
        return replace(given, rpe=False, unit="RIR", low=10 - given.high, high=10 - given.low)
    return given


def type_of(value: Value) -> str:
    """What kind of value it is, in the words of a message."""
    if isinstance(value, n.Name):
        return "a movement"
    if value.rpe or value.unit == "RIR":
        return "an effort"
    if value.unit == "%":
        return "a percent"
    if value.unit in _MASSES:
        return "a load"
    if value.unit in _TIMES:
        return "a time"
    if value.unit == "m":
        return "a distance"
    if value.is_max or value.cluster or value.at_least:
        return "repetitions"
    if value.word is not None:
        return "a word"
    return "a count" if value.low == value.high else "a range"


def _listed(template: n.Head, declared: Collection[str]) -> str:
    if not declared:
        return f"{template.name.text} has no parameters."
    return f"The parameters are {either([f'`{name}`' for name in declared], 'and')}."


# ---- substitution --------------------------------------------------------------------------------


def _put_in(value: Any, bindings: Bindings, problems: Problems) -> Any:
    """A part of the tree with parameters replaced; the very same object where it holds none."""
    if isinstance(value, n.Item):
        return value if value.word is None else _item(value, bindings, problems)
    if isinstance(value, n.MovementName):
        return value if not value.is_word else _movement(value, bindings, problems)
    if isinstance(value, tuple):
        made = tuple(_put_in(each, bindings, problems) for each in value)
        return value if all(new is old for new, old in zip(made, value, strict=True)) else made
    if not type(value).__module__.startswith("setwright.syntax.nodes") or isinstance(
        value, n.Name | n.Tail | n.TrackKind
    ):
        return value
    changes = {}
    for name in field_names(type(value)):
        old = getattr(value, name)
        new = _put_in(old, bindings, problems)
        if new is not old:
            changes[name] = new
    return replace(value, **changes) if changes else value


def _item(use: n.Item, bindings: Bindings, problems: Problems) -> n.Item:
    assert use.word is not None
    given = bindings.get(use.word)
    if isinstance(given, n.Item):
        return replace(
            given,
            span=use.span,
            rpe=given.rpe or use.rpe,
            unit=given.unit or use.unit,
            per_side=given.per_side or use.per_side,
            given=n.Given(given.span, _in_words(use, use.word, given)),
        )
    if given is None and spelled(use.word):
        return use  # `RPE8` is no parameter; it is told of as anywhere else
    _complain(use.word, use, "a value", given, bindings, problems)
    return replace(use, word=None, low=Fraction(1), high=Fraction(1))


def _in_words(use: n.Item, word: str, given: n.Item) -> str:
    """The value as it reads in the word's place: with the unit that stands there, where it bears none itself."""
    if not given.unit and not given.rpe:
        return use.span.text.replace(word, given.span.text)
    return given.span.text + ("/side" if use.per_side and not given.per_side else "")


def _movement(use: n.MovementName, bindings: Bindings, problems: Problems) -> n.MovementName:
    given = bindings.get(use.name.text)
    if isinstance(given, n.Name):
        name = replace(given, span=use.name.span, home=given.span.source, given=given.span)
        return replace(use, name=name, is_word=False)
    _complain(use.name.text, use.name, "a movement", given, bindings, problems)
    return use


def _complain(
    word: str, use: n.Item | n.Name, needed: str, given: Value | None, bindings: Bindings, problems: Problems
) -> None:
    help_ = f"The parameter `{word}` is {type_of(given)}." if given is not None else did_you_mean(word, bindings)
    problems.append(names.PARAMETER_OUTSIDE_TEMPLATE.at(use.span, word=word, needed=needed, help=help_))
