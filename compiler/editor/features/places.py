"""Addresses and places, from the editor's words to the session's and back."""

from __future__ import annotations

from pathlib import Path

from lsprotocol import types as lsp
from pygls import uris

from setwright.editor.session import EditorSession
from setwright.source import Source, Span


def path_of(uri: str) -> str:
    """The absolute path that an editor's address names, as the compiler resolves it."""
    return str(Path(uris.to_fs_path(uri) or uri).resolve())


def uri_of(session: EditorSession, path: str) -> str:
    """The address of a file: as the editor wrote it where it is open there."""
    document = session.document(path)
    return document.uri if document is not None else uris.from_fs_path(path) or path


def location(session: EditorSession, span: Span) -> lsp.Location:
    """A span as a place that the editor can open."""
    return lsp.Location(uri_of(session, session.path_of(span.source)), session.positions.range(span))


def asked(
    session: EditorSession, document: lsp.TextDocumentIdentifier, position: lsp.Position
) -> tuple[str, Source, int, int] | None:
    """The path, text, line (from 1) and column (characters) that a request is about; None for no such file."""
    path = path_of(document.uri)
    source = session.source(path)
    return None if source is None else (path, source, *session.positions.place(source, position))
