"""The outline of a file: plans with their blocks, days and movements, and whatever else is declared."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from lsprotocol import types as lsp

from setwright.editor.features.feature import Feature
from setwright.editor.features.places import path_of
from setwright.editor.session import EditorSession
from setwright.source import Span
from setwright.syntax import nodes as n

_HEADS: Final = {
    "plan": lsp.SymbolKind.Module,
    "template": lsp.SymbolKind.Class,
    "athlete": lsp.SymbolKind.Object,
    "rules": lsp.SymbolKind.Interface,
    "muscle": lsp.SymbolKind.EnumMember,
    "equipment": lsp.SymbolKind.Constant,
    "exercise": lsp.SymbolKind.Struct,
    "progression": lsp.SymbolKind.Function,
}


def last_line(statement: n.Statement) -> int:
    """The last line of a statement and all that stands under it."""
    return last_line(statement.body[-1]) if statement.body else statement.node.span.line


def _answer(session: EditorSession, params: lsp.DocumentSymbolParams) -> list[lsp.DocumentSymbol]:
    path = path_of(params.text_document.uri)
    source = session.source(path)
    return list(_symbols(session, session.reader.read(source).statements)) if source is not None else []


def _symbols(session: EditorSession, statements: Iterable[n.Statement]) -> Iterator[lsp.DocumentSymbol]:
    for statement in statements:
        found = _symbol(statement.node)
        if found is None:
            continue
        kind, name, span, detail = found
        here = statement.node.span
        yield lsp.DocumentSymbol(
            name=name or " ",  # the protocol wants a name; an empty one is an error that is told elsewhere
            kind=kind,
            range=session.positions.lines(here.source, here.line, last_line(statement)),
            selection_range=session.positions.range(span),
            detail=detail,
            children=list(_symbols(session, statement.body)),
        )


def _symbol(node: n.Node) -> tuple[lsp.SymbolKind, str, Span, str | None] | None:
    """Kind, name, the name's place and what else to say of a line that belongs into the outline."""
    match node:
        case n.Head(word=word, name=name):
            return _HEADS[word], name.text, name.span, word
        case n.MuscleGroupLine(name=name):
            return lsp.SymbolKind.Enum, name.text, name.span, "group"
        case n.BlockHead(name=name, weeks=weeks):
            return lsp.SymbolKind.Namespace, name.text, name.span, f"{weeks.span.text} weeks" if weeks else None
        case n.DayHead(slot=slot, label=label):
            return lsp.SymbolKind.Event, f"day {slot.text}", slot.span, label
        case n.GroupHead(word=word, span=span):
            return lsp.SymbolKind.Array, word, span, None
        case n.Entry(movement=movement, prescription=prescription):
            said = prescription.segments[0].span.text if prescription.segments else None
            return lsp.SymbolKind.Field, movement.span.text, movement.span, said
        case n.SessionHead(day=day, span=span):
            return lsp.SymbolKind.Event, f"session {day}" if day else "session", span, None
        case _:
            return None


FEATURE = Feature(lsp.TEXT_DOCUMENT_DOCUMENT_SYMBOL, _answer)
