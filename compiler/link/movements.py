"""A movement's declaration, with what it takes over by `like`, as a `Movement`."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import names, structure
from setwright.link.models import known_model
from setwright.link.values import percent
from setwright.plan import Movement
from setwright.syntax.nodes import BestFromLine, Head, Name, Setting, Statement, SwapForLine, WorksLine
from setwright.syntax.structure import kind_of

if TYPE_CHECKING:
    from setwright.link.library import Library


def linked_movement(library: Library, key: str, problems: list[Diagnostic]) -> Movement | None:
    """The movement declared under a folded name; None where it is like itself."""
    chain = _chain(library, key, problems)
    if not chain:
        return None
    movement = None
    for declared in reversed(chain):
        movement = _overridden(library, declared, movement, problems)
    return movement


def check_bests(library: Library, movement: Movement, problems: list[Diagnostic]) -> None:
    """Report a best that is taken from itself, however many movements lie between."""
    seen = [movement.name]
    found: Movement | None = movement
    while found is not None and found.best_from is not None:
        source = found.best_from[0]
        found = library.movement(Name(source, movement.span), [])
        if found is not None and found.name in seen:
            chain = " -> ".join([*seen, found.name])
            problems.append(names.LIKE_CYCLE.at(movement.span, what="bests", chain=chain))
            return
        seen.append(found.name if found is not None else source)


def _chain(library: Library, key: str, problems: list[Diagnostic]) -> list[Statement]:
    """The declaration and those it is like, nearest first; empty after a circle was reported."""
    chain: list[Statement] = []
    seen: dict[str, str] = {}
    while True:
        declared = library.movements[key]
        seen[key] = declared.name
        statement = library.statement(declared)
        chain.append(statement)
        head = statement.node
        assert isinstance(head, Head)
        if head.like is None:
            return chain
        model = _known_key(library, head.like, problems)
        if model is None:
            return chain
        key = model
        if key in seen:
            circle = " -> ".join([*seen.values(), library.movements[key].name])
            problems.append(names.LIKE_CYCLE.at(head.like.span, what="movements", chain=circle))
            return []


def _overridden(library: Library, statement: Statement, base: Movement | None, problems: list[Diagnostic]) -> Movement:
    head = statement.node
    assert isinstance(head, Head)
    facts: dict[str, object] = {}
    for line in statement.body:
        word = kind_of(line.node)
        if word in facts:
            problems.append(structure.SETTING_TWICE.at(line.node.span, word=word))
        facts[word] = _fact(library, line, problems)
    needs = facts.get("needs", base.needs if base else ())
    assert isinstance(needs, tuple)
    return Movement(
        name=library.scopes.kept(head.name.text, head.name.span.source),
        span=head.name.span,
        pattern=facts.get("pattern", base.pattern if base else None),  # type: ignore[arg-type]
        needs=needs,
        works=facts.get("works", base.works if base else ()),  # type: ignore[arg-type]
        swaps=facts.get("swap for", base.swaps if base else ()),  # type: ignore[arg-type]
        cue=facts.get("cue", base.cue if base else None),  # type: ignore[arg-type]
        best_from=facts.get("best from", base.best_from if base else None),  # type: ignore[arg-type]
        model=facts.get("model", base.model if base else None),  # type: ignore[arg-type]
        handling=next((handling for need in needs if (handling := library.equipment[need][1])), None),
    )


def _fact(library: Library, line: Statement, problems: list[Diagnostic]) -> object:
    match line.node:
        case Setting(word="needs", values=values):
            needs = (library.known_equipment(value, problems) for value in values if isinstance(value, Name))
            return tuple(need for need in needs if need is not None)
        case Setting(word="model", values=(Name() as name,)):
            return known_model(name, problems)
        case Setting(word="also", values=values):
            return values
        case Setting(values=(Name() as name,)):
            return name.text
        case WorksLine(credits=credits):
            works = ((_credited(library, name, share, problems), share) for name, share in credits)
            return tuple((muscle, share) for muscle, share in works if muscle is not None)
        case SwapForLine(names=swaps):
            keys = (_known_key(library, swap, problems) for swap in swaps)
            return tuple(library.movements[key].name for key in keys if key is not None)
        case BestFromLine(source=source, percent=item):
            share = percent(item, problems, "a best from another movement", 200)
            key = _known_key(library, source, problems)
            return (library.movements[key].name, share) if key is not None and share else None
        case _:
            return None


def _credited(library: Library, name: Name, share: Fraction, problems: list[Diagnostic]) -> str | None:
    muscle = library.known_muscle(name, problems)
    if muscle is not None and not 0 < share <= 1:
        problems.append(names.CREDIT_OUT_OF_RANGE.at(name.span, muscle=name.text))
        return None
    return muscle


def _known_key(library: Library, name: Name, problems: list[Diagnostic]) -> str | None:
    """The name under which the library keeps the movement, which is not linked here: it may not be asked for."""
    key = library.movement_key(name)
    if key is None:
        help_ = library.near_movements(name)
        problems.append(names.UNKNOWN_MOVEMENT.at(name.span, name=name.text, help=help_))
    return key
