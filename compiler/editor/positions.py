"""Where things stand, as editors count: lines from 0, and columns in code units of the encoding agreed on.

Comes in: spans, whose lines count from 1 and columns in characters, and an editor's positions. Goes out: the other.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from lsprotocol import types as lsp

from setwright.record import record
from setwright.source import Source, Span

# How many units a character takes. UTF-8 and UTF-16: RFC 3629, section 3, and RFC 2781, section 2.
_UNITS: Final[dict[str, Callable[[str], int]]] = {
    "utf-8": lambda text: len(text.encode("utf-8", "surrogatepass")),
    "utf-16": lambda text: len(text.encode("utf-16-le", "surrogatepass")) // 2,
    "utf-32": len,
}


def units_before(line: str, column: int, encoding: str = "utf-16") -> int:
    """How many code units stand before a column of characters; a column past the end is the end."""
    return _UNITS[encoding](line[:column])


def column_at(line: str, units: int, encoding: str = "utf-16") -> int:
    """The column of the character at so many code units; within a character it is that character's."""
    if line.isascii():
        return max(0, min(units, len(line)))
    before = 0
    for column, character in enumerate(line):
        before += _UNITS[encoding](character)
        if before > units:
            return column
    return len(line)


@record
class Positions:
    """Positions in the encoding that editor and server have agreed on."""

    encoding: str = "utf-16"

    def position(self, source: Source, line: int, column: int) -> lsp.Position:
        """The editor's position of a column (from 0, in characters) of a line (from 1)."""
        return lsp.Position(line - 1, units_before(source.line(line), column, self.encoding))

    def range(self, span: Span) -> lsp.Range:
        """The editor's range of a span."""
        return lsp.Range(
            self.position(span.source, span.line, span.start), self.position(span.source, span.line, span.end)
        )

    def lines(self, source: Source, first: int, last: int) -> lsp.Range:
        """The range of whole lines, from the first's text to the last's end."""
        line = source.line(first)
        start = len(line) - len(line.lstrip())
        return lsp.Range(self.position(source, first, start), self.position(source, last, len(source.line(last))))

    def place(self, source: Source, position: lsp.Position) -> tuple[int, int]:
        """The line, from 1, and the column, in characters, of an editor's position."""
        line = position.line + 1
        return line, column_at(source.line(line), position.character, self.encoding)
