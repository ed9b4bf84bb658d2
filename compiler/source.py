"""Where text stands: files, spans, and the line table that turns an offset into line and column.

Comes in: the bytes of a file. Goes out: `Source` and `Span`, which every later phase points with.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from setwright.record import record


@dataclass(frozen=True)
class Source:
    """One file's text as read (LF line ends), under the name that messages print.

    `path` is what a person typed or what the import resolved to; it is never opened here.
    """

    path: str
    text: str

    @cached_property
    def lines(self) -> tuple[str, ...]:
        """The text line by line, without line ends."""
        return tuple(self.text.split("\n"))

    def line(self, number: int) -> str:
        """Line `number`, counted from 1; empty past the end."""
        return self.lines[number - 1] if 0 < number <= len(self.lines) else ""

    def line_start(self, number: int) -> int:
        """The offset in characters at which line `number` (from 1) begins."""
        return self._starts[min(number, len(self._starts)) - 1]

    @cached_property
    def _starts(self) -> tuple[int, ...]:
        starts = [0]
        for line in self.lines[:-1]:
            starts.append(starts[-1] + len(line) + 1)
        return tuple(starts)


@record
class Span:
    """A stretch of one line, or from there to a later line's end: 1-based lines, 0-based columns in characters."""

    source: Source
    line: int
    start: int
    end: int

    def __str__(self) -> str:
        return f"{self.source.path}:{self.line}:{self.start + 1}"

    @property
    def text(self) -> str:
        """The characters under the span."""
        return self.source.line(self.line)[self.start : self.end]
