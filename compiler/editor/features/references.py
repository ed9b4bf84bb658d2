"""Everywhere that a thing is named, over all files of the workspace."""

from __future__ import annotations

from collections.abc import Iterator

from lsprotocol import types as lsp

from setwright.editor.features.feature import Feature
from setwright.editor.features.places import asked, location
from setwright.editor.meanings import declaration
from setwright.editor.mentions import Mention
from setwright.editor.session import EditorSession
from setwright.source import Span


def mentions_of(session: EditorSession, path: str, target: Span) -> Iterator[Mention]:
    """Every mention of what is declared at `target`, the open files' first."""
    wanted = _place(session, target)
    for file in session.workspace(path):
        library = session.library(file)
        if library is not None:
            for each in session.mentions(file):
                span = declaration(each, library)
                if span is not None and _place(session, span) == wanted:
                    yield each


def _place(session: EditorSession, span: Span) -> tuple[str, int, int]:
    """Where a span stands, whatever its file is called by who reads it."""
    return session.path_of(span.source), span.line, span.start


def meant(session: EditorSession, path: str, line: int, column: int) -> tuple[Mention, Span] | None:
    """The name at a place, and where what it names is declared."""
    mention, library = session.mention(path, line, column), session.library(path)
    span = declaration(mention, library) if mention is not None and library is not None else None
    return (mention, span) if mention is not None and span is not None else None


def _answer(session: EditorSession, params: lsp.ReferenceParams) -> list[lsp.Location]:
    place = asked(session, params.text_document, params.position)
    found = meant(session, place[0], *place[2:]) if place is not None else None
    if place is None or found is None:
        return []
    target = found[1]
    with_declaration = params.context.include_declaration
    spans = [
        each.name.span
        for each in mentions_of(session, place[0], target)
        if with_declaration or each.name.span != target
    ]
    return [location(session, span) for span in dict.fromkeys(spans)]


FEATURE = Feature(lsp.TEXT_DOCUMENT_REFERENCES, _answer)
