"""Work that is saved between keystrokes: sources and what they say, for as long as their text stays the same.

Comes in: files, some of them as the editor has them. Goes out: the same as the compiler's own window and reader give.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Final

from setwright.diagnostics import Diagnostic
from setwright.files import Files
from setwright.record import record
from setwright.source import Source, Span
from setwright.syntax import LineReader, Parsed
from setwright.syntax.nodes import Node, Statement
from setwright.syntax.outline import Postponed

REREAD: Final = 256  # versions of a file after which all of it is read again, so that old texts are let go


class EditorSource(Source):
    """A version of a file's text. All versions are one file, so a line that is the same in two of them is one line."""

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Source) and other.path == self.path

    def __hash__(self) -> int:
        return hash(self.path)


@record
class _Line:
    """What a line says, and what is wrong with it by itself."""

    text: str
    node: Node
    found: tuple[Diagnostic, ...]


class KeptSources:
    """The last source of each file; unchanged text is the same object again, so that what was made of it is found."""

    def __init__(self) -> None:
        self._sources: dict[str, Source] = {}

    def same(self, source: Source) -> Source:
        """The source, or the one that was read before and is equal to it."""
        kept = self._sources.get(source.path)
        if kept is not None and kept.text == source.text:
            return kept
        made = self._sources[source.path] = EditorSource(source.path, source.text)
        return made


class EditorFiles(Files):
    """Files as an editor sees them: what is open there comes from there."""

    def __init__(self, root: Path, unsaved: Mapping[str, str], kept: KeptSources) -> None:
        super().__init__(root, unsaved)
        self._kept = kept

    def read(self, path: Path, shown: str, asked: Span | None = None) -> Source | Diagnostic:
        """The source at `path`."""
        found = super().read(path, shown, asked)
        return found if isinstance(found, Diagnostic) else self._kept.same(found)


class KeptReader(LineReader):
    """A reader that reads each text once, and of a text that changed only the lines that did.

    A line is kept with its number, which its spans hold: below a new line everything is read again.
    """

    def __init__(self) -> None:
        super().__init__()
        self._whole: dict[str, Parsed] = {}
        self._lines: dict[str, dict[int, _Line]] = defaultdict(dict)
        self._versions: Counter[str] = Counter()
        self._libraries: dict[str, Parsed] = {}
        self._postponed: dict[tuple[str, int], tuple[Postponed, Statement]] = {}

    def read(self, source: Source, numbers: Iterable[int] | None = None, *, is_log: bool = False) -> Parsed:
        """A whole file, kept, or only the lines of some numbers. A log is read by the grammar, too."""
        if numbers is not None:
            return super().read(source, numbers)
        kept = self._whole.get(source.path)
        if kept is None or kept.source is not source:
            self._versions[source.path] += 1
            if self._versions[source.path] % REREAD == 0:
                del self._lines[source.path]
            kept = self._whole[source.path] = super().read(source)
        return kept

    def _line(self, source: Source, number: int, indent: str, content: str, diagnostics: list[Diagnostic]) -> Node:
        lines, text = self._lines[source.path], indent + content
        kept = lines.get(number)
        if kept is None or kept.text != text:
            found: list[Diagnostic] = []
            node = super()._line(source, number, indent, content, found)
            kept = lines[number] = _Line(text, node, (*found, *self._builder.taken_problems()))
        diagnostics.extend(kept.found)
        return kept.node

    def read_library(self, source: Source) -> Parsed:
        """A file of the shipped library, kept."""
        kept = self._libraries.get(source.path)
        if kept is None or kept.source is not source:
            kept = self._libraries[source.path] = super().read_library(source)
        return kept

    def read_postponed(self, postponed: Postponed) -> Statement:
        """An exercise of the shipped library, kept."""
        place = (postponed.span.source.path, postponed.span.line)
        kept = self._postponed.get(place)
        if kept is None or kept[0] is not postponed:
            kept = self._postponed[place] = (postponed, super().read_postponed(postponed))
        return kept[1]
