"""What can be folded away: the lines under a line, comments of several lines, and the `use` lines."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import groupby

from lsprotocol import types as lsp

from setwright.editor.features.feature import Feature
from setwright.editor.features.places import path_of
from setwright.editor.features.symbols import last_line
from setwright.editor.session import EditorSession
from setwright.source import Source
from setwright.syntax import nodes as n


def _answer(session: EditorSession, params: lsp.FoldingRangeParams) -> list[lsp.FoldingRange]:
    source = session.source(path_of(params.text_document.uri))
    if source is None:
        return []
    return [*_blocks(session.reader.read(source).statements), *_runs(source)]


def _blocks(statements: Iterable[n.Statement]) -> Iterator[lsp.FoldingRange]:
    for statement in statements:
        if statement.body:
            yield lsp.FoldingRange(statement.node.span.line - 1, last_line(statement) - 1)
            yield from _blocks(statement.body)


def _runs(source: Source) -> Iterator[lsp.FoldingRange]:
    """Lines that follow each other and are comments, or use files."""
    for kind, run in groupby(enumerate(source.lines), lambda pair: _kind(pair[1])):
        numbers = [number for number, _ in run]
        if kind is not None and len(numbers) > 1:
            yield lsp.FoldingRange(numbers[0], numbers[-1], kind=kind)


def _kind(line: str) -> lsp.FoldingRangeKind | None:
    content = line.lstrip()
    if content.startswith("#"):
        return lsp.FoldingRangeKind.Comment
    return lsp.FoldingRangeKind.Imports if content.startswith("use ") else None


FEATURE = Feature(lsp.TEXT_DOCUMENT_FOLDING_RANGE, _answer)
