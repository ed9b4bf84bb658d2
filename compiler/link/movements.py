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

MOST_TOLD = 8  # names of a circle

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from setwright.link.library import Library


def link_movement(library: Library, key: str, linked: dict[str, Movement | None], problems: list[Diagnostic]) -> None:
    """Put the movement declared under a folded name among the linked, with those it is like; None in a circle."""
    chain = _chain(library, key, linked, problems)
    movement: Movement | None = None
    for link, declared in reversed(chain.items()):
        if declared is None:
            movement = linked.setdefault(link, None)
        else:
            movement = linked[link] = _overridden(library, declared, movement, problems)


def check_bests(library: Library, movements: Sequence[Movement], problems: list[Diagnostic]) -> None:
    """Report bests that are taken from themselves, however many movements lie between: each circle once."""
    checked: set[str] = set()
    for movement in movements:
        seen: dict[str, None] = {}
        found: Movement | None = movement
        while found is not None and found.best_from is not None and found.name not in checked:
            if found.name in seen:
                problems.append(names.LIKE_CYCLE.at(movement.span, what="bests", chain=_circle(seen, found.name)))
                break
            seen[found.name] = None
            found = library.movement(Name(found.best_from[0], movement.span), problems)
        checked.update(seen)


def _chain(
    library: Library, key: str, linked: dict[str, Movement | None], problems: list[Diagnostic]
) -> dict[str, Statement | None]:
    """The declaration and those it is like, nearest first, up to one that is linked already.

    None stands for what has no lines of its own to read: it is linked, or in a circle, which is reported.
    """
    chain: dict[str, Statement | None] = {}
    while key not in linked:
        statement = chain[key] = library.statement(library.movements[key])
        head = statement.node
        assert isinstance(head, Head)
        model = _known_key(library, head.like, problems) if head.like is not None else None
        if model is None:
            return chain
        if model in chain:
            circle = _circle([library.movements[link].name for link in chain], library.movements[model].name)
            problems.append(names.LIKE_CYCLE.at(_like(chain[model]).span, what="movements", chain=circle))
            return dict.fromkeys(chain)
        key = model
    chain[key] = None
    return chain


def _like(statement: Statement | None) -> Name:
    """What a declaration in a circle is like."""
    assert statement is not None
    assert isinstance(statement.node, Head)
    assert statement.node.like is not None
    return statement.node.like


def _circle(seen: Iterable[str], again: str) -> str:
    """`A -> B -> A`, from the one that comes again; a long one without its middle."""
    circle = list(seen)
    circle = circle[circle.index(again) :]
    if len(circle) > MOST_TOLD:
        circle = [*circle[: MOST_TOLD - 1], "...", circle[-1]]
    return " -> ".join([*circle, again])


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
