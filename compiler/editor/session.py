"""One editor's session: the files that are open in it, and what the compiler says of each.

Comes in: texts with their versions. Goes out: analyses, made when they are asked for and kept until something changes
that they rest on. The compiler does the work; nothing is analysed here.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from setwright.diagnostics import Diagnostic
from setwright.editor.kept import EditorFiles, KeptReader, KeptSources
from setwright.editor.mentions import Mention, mentions
from setwright.editor.positions import Positions
from setwright.files import LIBRARY, find_root, library_folder
from setwright.link.library import Library
from setwright.pipeline import EVERY_ATHLETE, Compilation, Compiled, compiled, declared
from setwright.record import record
from setwright.report.derivation import Derivation, of_written_line
from setwright.source import Source, Span
from setwright.syntax import Parsed
from setwright.syntax.formatter import Formatter
from setwright.syntax.tokens import TokenReader

_NOT_SEARCHED: Final = frozenset({"node_modules", "site-packages", "venv", "__pycache__"})
MOST_FILES: Final = 1000  # of a workspace that are searched for names


@record
class Document:
    """A file that is open: as the editor calls it, where it lies, and its text in a version."""

    uri: str
    path: str
    text: str
    version: int | None


@record
class Analysis:
    """What the compiler made of a file, and the file's own lines; `library` is None where it could not be read."""

    source: Source
    parsed: Parsed
    made: Compiled

    @property
    def library(self) -> Library | None:
        """What the file and its imports declare."""
        return self.made.library

    def compilation(self, line: int, athlete: str | None) -> Compilation | None:
        """The plan around a line, for the athlete that was chosen, or else for the first that the files declare."""
        heads = [each for each in self.made.compilations if each.plan.span.line <= line]
        last = max((each.plan.span.line for each in heads), default=0)
        around = [each for each in heads if each.plan.span.line == last]
        return next((each for each in around if athlete and each.plan.athlete == athlete), next(iter(around), None))

    def reads(self, path: str) -> bool:
        """True where the file, or one that it uses, is the one at the path or was looked for there."""
        return any(read == path for read, _ in self.made.dependencies) or any(
            os.path.realpath(unit.parsed.source.path) == path for unit in self.made.units if not unit.shipped
        )


@dataclass
class EditorSession:
    """The state of one session. Files are known by their absolute paths."""

    athlete: str | None = None  # a name, or the path of a file that declares one
    positions: Positions = field(default_factory=Positions)
    reader: KeptReader = field(default_factory=KeptReader)
    tokens: TokenReader = field(default_factory=TokenReader)
    formatter: Formatter = field(default_factory=Formatter)
    _documents: dict[str, Document] = field(default_factory=dict)
    _unsaved: dict[str, str] = field(default_factory=dict)
    _sources: KeptSources = field(default_factory=KeptSources)
    _latest: dict[str, Analysis] = field(default_factory=dict)
    _fitted: dict[str, Analysis] = field(default_factory=dict)
    _good: dict[str, Analysis] = field(default_factory=dict)
    _libraries: dict[str, tuple[Source, Library]] = field(default_factory=dict)

    # ---- what the editor does --------------------------------------------------------------------

    def put(self, document: Document) -> None:
        """A file was opened, or its text changed."""
        self._documents[document.path] = document
        self._unsaved[document.path] = document.text
        self.touched(document.path)

    def close(self, path: str) -> None:
        """A file was closed: from here on it is what lies on the disk."""
        self._documents.pop(path, None)
        self._unsaved.pop(path, None)
        for kept in (self._good, self._fitted, self._latest):
            kept.pop(path, None)
        self.touched(path)

    def touched(self, path: str) -> None:
        """The file at the path may have changed: what rests on it is to be made again."""
        self._libraries.clear()
        for kept in (self._latest, self._fitted):
            for root, analysis in list(kept.items()):
                if root == path or analysis.reads(path):
                    del kept[root]

    def forget(self) -> None:
        """A setting changed: everything is to be made again."""
        for kept in (self._good, self._fitted, self._latest):
            kept.clear()

    # ---- what is asked of it ---------------------------------------------------------------------

    @property
    def documents(self) -> tuple[Document, ...]:
        """All files that are open."""
        return tuple(self._documents.values())

    def document(self, path: str) -> Document | None:
        """The file at the path, where it is open."""
        return self._documents.get(path)

    def stale(self) -> tuple[str, ...]:
        """The open files that were not looked at since something changed for them."""
        return tuple(path for path in self._documents if path not in self._latest)

    def analysis(self, path: str) -> Analysis:
        """What `check` says of the file as it is now."""
        kept = self._latest.get(path)
        if kept is None:
            kept = self._latest[path] = self._made(path, (EVERY_ATHLETE,))
            if kept.made.compilations:
                self._good[path] = kept
        return kept

    def fitted(self, path: str) -> Analysis:
        """The same with the athlete that was chosen. One of another file takes no part in the findings of this one,
        so nobody waits for their loads at each key."""
        if self.athlete is None or not self.athlete.endswith(".plan"):
            return self.analysis(path)
        kept = self._fitted.get(path)
        if kept is None:
            kept = self._fitted[path] = self._made(path, (EVERY_ATHLETE, self._athlete_path(path)))
        return kept

    def good(self, path: str) -> Analysis:
        """The last analysis of the file that came to a plan; the present one where there was none."""
        latest = self.fitted(path)
        return latest if latest.made.compilations else self._good.get(path, latest)

    def compilation(self, path: str, line: int) -> tuple[Compilation, int] | None:
        """The plan around a line of the file, and the line in the text that it was made from."""
        good, source = self.good(path), self.source(path)
        moved = line if source is good.source or source is None else line_before(good.source, source, line)
        if moved is None:
            return None
        found = good.compilation(moved, self._athlete_name(good))
        return (found, moved) if found is not None else None

    def written_at(self, path: str, line: int) -> tuple[Compilation, tuple[Derivation, ...]] | None:
        """Everything that a line of a day became, week by week; None where it is no such line."""
        found = self.compilation(path, line)
        if found is None:
            return None
        made, at = found
        lines = of_written_line(made.plan, path, at)
        return (made, lines) if lines else None

    def path_of(self, source: Source) -> str:
        """Where the file lies that messages call by another name: the shipped library's, or a pack's."""
        if os.path.isabs(source.path):
            return source.path
        first, _, rest = source.path.partition("/")
        if first == LIBRARY:
            return str(library_folder() / rest)
        from setwright.packs import pack_folder

        folder = pack_folder(first)
        return str(folder / rest) if folder else source.path

    # ---- names over all files --------------------------------------------------------------------

    def source(self, path: str) -> Source | None:
        """A file's text, from the editor where it is open there."""
        found = self._files(path).read(Path(path), path)
        return None if isinstance(found, Diagnostic) else found

    def library(self, path: str) -> Library | None:
        """What a file and its imports declare; the present text's, be it half typed."""
        source = self.source(path)
        if source is None:
            return None
        latest = self._latest.get(path)
        if latest is not None and latest.source is source and latest.library is not None:
            return latest.library
        kept = self._libraries.get(path)
        if kept is None or kept[0] is not source:
            kept = self._libraries[path] = (source, declared(source, self._files(path), self.reader))
        return kept[1]

    def mentions(self, path: str) -> tuple[Mention, ...]:
        """Every name in a file."""
        source = self.source(path)
        return tuple(mentions(self.reader.read(source).statements)) if source is not None else ()

    def mention(self, path: str, line: int, column: int) -> Mention | None:
        """The name at a place, the narrowest where they overlap."""
        found = (each for each in self.mentions(path) if covers(each.name.span, line, column))
        return min(found, key=lambda each: each.name.span.end - each.name.span.start, default=None)

    def workspace(self, path: str) -> Iterator[str]:
        """The plans of the workspace that a file belongs to, the open ones first."""
        root = find_root(Path(path))
        known = {each for each in self._documents if Path(each).is_relative_to(root)}
        yield from sorted(known)
        for number, other in enumerate(_plans(root)):
            if other not in known and number < MOST_FILES:
                yield other

    # ---- helpers ---------------------------------------------------------------------------------

    def _files(self, path: str) -> EditorFiles:
        return EditorFiles(find_root(Path(path)), self._unsaved, self._sources)

    def _made(self, path: str, athletes: tuple[str, ...]) -> Analysis:
        files = self._files(path)
        made = compiled(path, files, self.reader, athletes=athletes)
        source = files.read(Path(path), path)
        if isinstance(source, Diagnostic):
            source = Source(path, self._unsaved.get(path, ""))
        return Analysis(source, self.reader.read(source), made)

    def _athlete_path(self, path: str) -> str:
        return str(find_root(Path(path)) / (self.athlete or ""))

    def _athlete_name(self, analysis: Analysis) -> str | None:
        if self.athlete is None or not self.athlete.endswith(".plan") or analysis.library is None:
            return self.athlete
        file = self._athlete_path(analysis.source.path)
        return next((each.name for each in analysis.library.athletes if each.span.source.path == file), None)


def _plans(root: Path) -> Iterator[str]:
    """The plans under a folder; hidden folders are not looked into, nor are those that hold installed packages."""
    for folder, within, files in os.walk(root):
        within[:] = sorted(name for name in within if not name.startswith(".") and name not in _NOT_SEARCHED)
        yield from (os.path.realpath(os.path.join(folder, file)) for file in sorted(files) if file.endswith(".plan"))


def covers(span: Span, line: int, column: int) -> bool:
    """True where the place is in the span, or right behind it."""
    return span.line == line and span.start <= column <= span.end


def line_before(old: Source, new: Source, line: int) -> int | None:
    """The line of the older text that a line of the newer one was; None where it is new or was changed.

    Lines above the first change and below the last one are the same.
    """
    before, after = old.lines, new.lines
    same = next((at for at, pair in enumerate(zip(before, after, strict=False)) if pair[0] != pair[1]), None)
    if same is None or line <= same:
        return line if line <= len(before) else None
    behind = len(after) - line
    tail = zip(reversed(before), reversed(after), strict=False)
    below = next((at for at, pair in enumerate(tail) if pair[0] != pair[1]), min(len(before), len(after)))
    if behind < below:
        return len(before) - behind
    # The line that was changed, where no line came or went: what the plan said of it is the best there is.
    return line if len(before) == len(after) else None
