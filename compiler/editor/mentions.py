"""Every name in a file's lines, and what kind of thing it names.

Comes in: statements. Goes out: `Mention`s in reading order. What they mean is the linker's answer (`meanings`).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from enum import Enum
from typing import Any, Final

from setwright.record import field_names, record
from setwright.source import Span
from setwright.syntax import nodes as n


class Kind(Enum):
    """What a name may name."""

    MOVEMENT = "movement"
    MUSCLE = "muscle"  # or a group of muscles, or a movement pattern after `for`
    EQUIPMENT = "equipment"
    RULES = "rule set"
    TEMPLATE = "template"
    PROGRESSION = "progression"
    ATHLETE = "athlete"
    PLAN = "plan"
    BLOCK = "block"
    DAY = "day"
    PARAMETER = "parameter"
    MEASURE = "measure"
    PATTERN = "pattern"
    FILE = "file"


@record
class Mention:
    """A name where it stands. `top` is the outermost statement around it, `call` what its parameter belongs to."""

    kind: Kind
    name: n.Name
    declares: bool
    top: n.Statement
    call: n.Name | None = None


# What the names in a field are. Heads, settings, arguments and items are looked at one by one below.
_FIELDS: Final[dict[tuple[type, str], Kind]] = {
    (n.Head, "like"): Kind.MOVEMENT,
    (n.Head, "source"): Kind.TEMPLATE,
    (n.BlockHead, "like"): Kind.BLOCK,
    (n.DayHead, "like"): Kind.DAY,
    (n.DropLine, "slot"): Kind.DAY,
    (n.RawIntensity, "of"): Kind.MOVEMENT,
    (n.SwapLine, "old"): Kind.MOVEMENT,
    (n.SwapLine, "new"): Kind.MOVEMENT,
    (n.SwapForLine, "names"): Kind.MOVEMENT,
    (n.BestFromLine, "source"): Kind.MOVEMENT,
    (n.BestLine, "movement"): Kind.MOVEMENT,
    (n.AvoidLine, "what"): Kind.MOVEMENT,
    (n.EmphasisLine, "muscle"): Kind.MUSCLE,
    (n.MuscleGroupLine, "members"): Kind.MUSCLE,
    (n.WorksLine, "credits"): Kind.MUSCLE,
    (n.SubjectPart, "names"): Kind.MUSCLE,
    (n.FollowLine, "names"): Kind.RULES,
    (n.AdvancePart, "rule"): Kind.PROGRESSION,
    (n.WherePart, "block"): Kind.BLOCK,
    (n.RuleLine, "measure"): Kind.MEASURE,
    (n.WaiveLine, "measure"): Kind.MEASURE,
    (n.UseLine, "file"): Kind.FILE,
}
_DECLARES: Final[dict[tuple[type, str], Kind]] = {
    (n.BlockHead, "name"): Kind.BLOCK,
    (n.DayHead, "slot"): Kind.DAY,
    (n.MuscleGroupLine, "name"): Kind.MUSCLE,
}
_HEADS: Final = {
    "plan": Kind.PLAN,
    "template": Kind.TEMPLATE,
    "athlete": Kind.ATHLETE,
    "rules": Kind.RULES,
    "muscle": Kind.MUSCLE,
    "equipment": Kind.EQUIPMENT,
    "exercise": Kind.MOVEMENT,
    "progression": Kind.PROGRESSION,
}
_SETTINGS: Final = {"has": Kind.EQUIPMENT, "needs": Kind.EQUIPMENT, "also": Kind.MOVEMENT, "pattern": Kind.PATTERN}


def mentions(statements: Iterable[n.Statement]) -> Iterator[Mention]:
    """All names of the lines."""
    for top in statements:
        yield from _of_lines(top, top)


def _of_lines(statement: n.Statement, top: n.Statement) -> Iterator[Mention]:
    yield from _within(statement.node, top, None)
    for line in statement.body:
        yield from _of_lines(line, top)


def _within(value: Any, top: n.Statement, call: n.Name | None) -> Iterator[Mention]:
    """The mentions in a node, a part of one, or several."""
    match value:
        case tuple():
            for one in value:
                yield from _within(one, top, call)
        case n.Name() | Span():
            return
        case n.Head():
            declares = value.word in ("template", "progression")
            yield Mention(_HEADS[value.word], value.name, True, top)
            for argument in value.arguments:
                yield Mention(Kind.PARAMETER, argument.name, declares, top, None if declares else value.source)
                yield from _value(argument.value, top)
            yield from _fields(value, top, value.source)
        case n.Setting():
            kind = _SETTINGS.get(value.word)
            for name in value.values:
                if isinstance(name, n.Name) and kind is not None:
                    yield Mention(kind, name, value.word == "also", top)
                elif isinstance(name, n.Item):
                    yield from _within(name, top, call)
        case n.MovementName():
            yield Mention(Kind.PARAMETER if value.is_word else Kind.MOVEMENT, value.name, False, top)
        case n.Argument():
            yield Mention(Kind.PARAMETER, value.name, False, top, call)
            yield from _value(value.value, top)
        case n.AdvancePart():
            yield from _fields(value, top, value.rule)
        case n.Item():
            if value.word is not None:
                yield Mention(Kind.PARAMETER, _word_of(value), False, top)
        case _ if hasattr(value, "__match_args__") and type(value).__module__.startswith(n.__name__):
            yield from _fields(value, top, call)
        case _:
            return


def _fields(node: Any, top: n.Statement, call: n.Name | None) -> Iterator[Mention]:
    for field in field_names(type(node)):
        value, place = getattr(node, field), (type(node), field)
        kind = _FIELDS.get(place) or _DECLARES.get(place)
        if kind is not None:
            for name in _names(value):
                yield Mention(kind, name, place in _DECLARES, top)
        elif not (isinstance(node, n.Head) and field in ("name", "arguments")):
            yield from _within(value, top, call)


def _value(value: n.Item | n.Name | None, top: n.Statement) -> Iterator[Mention]:
    """What is given for a parameter: a movement's name, or a word that may be a parameter around it."""
    if isinstance(value, n.Name):
        yield Mention(Kind.MOVEMENT, value, False, top)
    elif value is not None:
        yield from _within(value, top, None)


def _names(value: Any) -> Iterator[n.Name]:
    if isinstance(value, n.Name):
        yield value
    elif isinstance(value, tuple):
        for one in value:
            yield from _names(one)


def _word_of(item: n.Item) -> n.Name:
    """The word of an item as a name, without what stands beside it."""
    word, span = item.word or "", item.span
    at = span.text.find(word)
    start = span.start + max(at, 0)
    return n.Name(word, Span(span.source, span.line, start, start + len(word) if at >= 0 else span.end))
