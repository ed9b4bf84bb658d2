"""Where a name is declared: the linker's look-ups, as places.

Comes in: a mention and the library of its file. Goes out: the span of the declaration.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from setwright.editor.mentions import Kind, Mention
from setwright.link.library import EQUIPMENT, Declared, Library
from setwright.source import Span
from setwright.syntax import nodes as n


def declaration(mention: Mention, library: Library) -> Span | None:
    """Where what is mentioned was declared; None where that is nowhere, or no file's business."""
    name = mention.name
    found: Declared | None = None
    match mention.kind:
        case Kind.MOVEMENT:
            key = library.movement_key(name)
            return library.movements[key].span if key is not None else _word(library, name, "")
        case Kind.MUSCLE:
            return _word(library, name, "")
        case Kind.EQUIPMENT:
            return _word(library, name, EQUIPMENT)
        case Kind.RULES:
            found = library.declared(library.rulesets, name)
        case Kind.TEMPLATE:
            found = library.declared(library.templates, name)
        case Kind.PROGRESSION:
            found = library.progression(name)
        case Kind.ATHLETE:
            found = next((each for each in library.athletes if each.name.casefold() == name.text.casefold()), None)
        case Kind.PLAN:
            return name.span
        case Kind.BLOCK:
            return _block(mention, library)
        case Kind.DAY:
            return _day(mention)
        case Kind.PARAMETER:
            return _parameter(mention, library)
        case Kind.MEASURE | Kind.PATTERN | Kind.FILE:
            pass
    return found.span if found is not None else None


def _word(library: Library, name: n.Name, before: str) -> Span | None:
    for text, files in library.scopes.meanings(name):
        span = library.words.get(before + text)
        if span is not None and (files is None or span.source in files):
            return span
    return None


def _block(mention: Mention, library: Library) -> Span | None:
    """The block of the template that the plan is made from, else the plan's own."""
    wanted = mention.name.text.casefold()
    homes = [*_template_of(mention.top, library), mention.top]
    found = (span for home in homes for name, span in _blocks(home) if name.casefold() == wanted)
    return next(found, None)


def _template_of(top: n.Statement, library: Library) -> Iterator[n.Statement]:
    if isinstance(top.node, n.Head) and top.node.source is not None:
        declared = library.declared(library.templates, top.node.source)
        if declared is not None:
            yield library.statement(declared)


def _blocks(top: n.Statement) -> Iterator[tuple[str, Span]]:
    heads = (line.node for line in top.body)
    return ((head.name.text, head.name.span) for head in heads if isinstance(head, n.BlockHead))


def _day(mention: Mention) -> Span | None:
    """The first day so called in the block around it."""
    line = mention.name.span.line
    around = [block for block in mention.top.body if block.node.span.line <= line]
    heads = (day.node for day in (around[-1].body if around else ()))
    days = (head for head in heads if isinstance(head, n.DayHead))
    return next((day.slot.span for day in days if day.slot.text.casefold() == mention.name.text.casefold()), None)


def _parameter(mention: Mention, library: Library) -> Span | None:
    """The parameter of the template or progression that is called, or of the one around."""
    if mention.call is None:
        return _named(mention.name, _arguments(mention.top))
    for called in (library.declared(library.templates, mention.call), library.progression(mention.call)):
        if called is not None and (found := _named(mention.name, _arguments(library.statement(called)))):
            return found
    return None


def _arguments(statement: n.Statement) -> tuple[n.Argument, ...]:
    node = statement.node
    return node.arguments if isinstance(node, n.Head) and node.source is None else ()


def _named(name: n.Name, arguments: Iterable[n.Argument]) -> Span | None:
    return next((each.name.span for each in arguments if each.name.text == name.text), None)
