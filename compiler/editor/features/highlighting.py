"""Semantic tokens: what each word of a line is, by the grammar and by what it names."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from lsprotocol import types as lsp

from setwright.editor.features.feature import Feature
from setwright.editor.features.places import path_of
from setwright.editor.mentions import Kind
from setwright.editor.positions import units_before
from setwright.editor.session import EditorSession
from setwright.source import Source

TYPES: Final = (
    "comment",
    "string",
    "number",
    "operator",
    "keyword",
    "class",
    "namespace",
    "event",
    "enumMember",
    "parameter",
    "property",
    "function",
    "interface",
    "variable",
)
_TERMINALS: Final = {
    "COMMENT": "comment",
    "STRING": "string",
    "NAME": "class",
    "PREFIXED_NAME": "class",
    "WORD": "variable",
    "PREFIXED_WORD": "variable",
    **dict.fromkeys(("DATE", "CLOCK", "TEMPO", "DECIMAL", "AT_LEAST", "INT"), "number"),
    **dict.fromkeys(("X", "COMPARE", "ARROW", "PLUS", "MINUS", "_AT", "PER_SIDE", "PER_WEEK", "ELLIPSIS"), "operator"),
    "WEEKDAY": "event",
}
_KINDS: Final = {
    Kind.MOVEMENT: "class",
    Kind.BLOCK: "namespace",
    Kind.DAY: "event",
    Kind.MUSCLE: "enumMember",
    Kind.EQUIPMENT: "enumMember",
    Kind.PATTERN: "enumMember",
    Kind.PARAMETER: "parameter",
    Kind.MEASURE: "property",
    Kind.PROGRESSION: "function",
    Kind.TEMPLATE: "function",
    Kind.RULES: "interface",
}


def _answer(session: EditorSession, params: lsp.SemanticTokensParams) -> lsp.SemanticTokens:
    path = path_of(params.text_document.uri)
    source = session.source(path)
    return lsp.SemanticTokens(data=list(_data(session, path, source)) if source is not None else [])


def _data(session: EditorSession, path: str, source: Source) -> Iterator[int]:
    """Five numbers a token, lines and columns counted from the token before it, as the protocol wants them."""
    last_line, last_start = 1, 0
    for line, start, end, kind in _tokens(session, path, source):
        text, encoding = source.line(line), session.positions.encoding
        first, after = units_before(text, start, encoding), units_before(text, end, encoding)
        yield from (line - last_line, first - (last_start if line == last_line else 0), after - first)
        yield from (TYPES.index(kind), 0)
        last_line, last_start = line, first


def _tokens(session: EditorSession, path: str, source: Source) -> Iterator[tuple[int, int, int, str]]:
    named = {(each.name.span.line, each.name.span.start): each.kind for each in session.mentions(path)}
    words = session.tokens.words
    for line, text in enumerate(source.lines, start=1):
        for token in session.tokens.tokens(text):
            kind = "keyword" if token.terminal in words else _TERMINALS.get(token.terminal)
            mentioned = named.get((line, token.start))
            if kind in ("class", "variable", "event", "number") and mentioned is not None:
                kind = _KINDS.get(mentioned, kind)
            if kind is not None and token.end > token.start:
                yield line, token.start, token.end, kind


FEATURE = Feature(
    lsp.TEXT_DOCUMENT_SEMANTIC_TOKENS_FULL,
    _answer,
    lsp.SemanticTokensLegend(token_types=list(TYPES), token_modifiers=[]),
)
