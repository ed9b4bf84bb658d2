"""The one style, as `setwright fmt` writes it."""

from __future__ import annotations

from lsprotocol import types as lsp

from setwright.editor.features.feature import Feature
from setwright.editor.features.places import path_of
from setwright.editor.session import EditorSession
from setwright.source import Source


def _answer(session: EditorSession, params: lsp.DocumentFormattingParams) -> list[lsp.TextEdit] | None:
    """The whole text as one edit; nothing for a file in the style, or with a line that cannot be read."""
    source = session.source(path_of(params.text_document.uri))
    made = session.formatter.formatted(source) if source is not None else None
    if source is None or not isinstance(made, str):
        return None
    return [lsp.TextEdit(_whole(session, source), made)] if made != source.text else []


def _whole(session: EditorSession, source: Source) -> lsp.Range:
    last = len(source.lines)
    return lsp.Range(lsp.Position(0, 0), session.positions.position(source, last, len(source.line(last))))


FEATURE = Feature(lsp.TEXT_DOCUMENT_FORMATTING, _answer)
