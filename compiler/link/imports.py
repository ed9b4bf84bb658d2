"""Follows `use` lines from one file to all it needs.

Comes in: a source and the window to the files. Goes out: every file, imports before importers, each once.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import later, reading
from setwright.files import LIBRARY, Files
from setwright.record import record
from setwright.source import Source, Span
from setwright.suggest import did_you_mean
from setwright.syntax.nodes import LanguageLine, Name, UseLine
from setwright.syntax.parser import LineReader, Parsed

MOST_FILES = 1000
DEEPEST = 100
LANGUAGE = 1


@record
class Unit:
    """A file of the compilation. `shipped` marks the library's own, whose lines are taken as sound."""

    parsed: Parsed
    shipped: bool


class Imports:
    """One walk over the files."""

    def __init__(self, files: Files, reader: LineReader, problems: list[Diagnostic]) -> None:
        self._files = files
        self._reader = reader
        self._problems = problems
        self._done: dict[Path, Unit | None] = {}
        self._chain: list[tuple[Path, str]] = []

    def closure(self, path: Path, source: Source) -> tuple[Unit, ...]:
        """The root file and everything it uses, imports first."""
        self._visit(path.resolve(), path, source)
        return tuple(unit for unit in self._done.values() if unit is not None)

    def _visit(self, key: Path, path: Path, source: Source) -> None:
        shipped = key.is_relative_to(self._files.library)
        parsed = self._reader.read_library(source) if shipped else self._reader.read(source)
        self._problems.extend(parsed.diagnostics)
        self._check_language(parsed)
        self._chain.append((key, source.path))
        for statement in parsed.statements:
            if isinstance(statement.node, UseLine):
                self._follow(statement.node, path, source.path)
        self._chain.pop()
        self._done[key] = Unit(parsed, shipped)

    def _check_language(self, parsed: Parsed) -> None:
        for index, statement in enumerate(parsed.statements):
            if isinstance(statement.node, LanguageLine):
                if statement.node.version != LANGUAGE:
                    self._problems.append(
                        reading.OTHER_LANGUAGE.at(statement.node.span, version=statement.node.version)
                    )
                if index:
                    self._problems.append(reading.LATE_LANGUAGE.at(statement.node.span))

    def _follow(self, use: UseLine, importer: Path, shown: str) -> None:
        if use.prefix is not None:
            self._problems.append(later.PREFIX_NOT_YET.at(use.prefix.span, what=f"the prefix `{use.prefix.text}`"))
            return
        for path, name in self._targets(use, importer, shown):
            self._import(path, name, use.span)

    def _import(self, path: Path, shown: str, span: Span) -> None:
        key = path.resolve()
        on_chain = [entry for entry, _ in self._chain]
        if key in on_chain:
            names = [name for _, name in self._chain[on_chain.index(key) :]]
            self._problems.append(reading.IMPORT_CYCLE.at(span, chain=" -> ".join([*names, shown])))
            return
        if key in self._done:
            return
        if len(self._done) >= MOST_FILES or len(self._chain) >= DEEPEST:
            self._problems.append(reading.TOO_MANY_IMPORTS.at(span, most=MOST_FILES))
            return
        found = self._files.read(path, shown, span)
        if isinstance(found, Diagnostic):
            self._done[key] = None
            self._problems.append(found)
            return
        self._visit(key, path, found)

    def _targets(self, use: UseLine, importer: Path, shown: str) -> Iterator[tuple[Path, str]]:
        if use.file is not None:
            yield from self._file(use.file, importer, shown)
        elif use.path is not None:
            yield from self._shipped(use.path)

    def _file(self, name: Name, importer: Path, shown: str) -> Iterator[tuple[Path, str]]:
        if "\0" in name.text or not name.text:
            self._problems.append(reading.UNREADABLE_FILE.at(name.span, file=name.text or " ", reason="not a path"))
            return
        path = importer.parent / name.text
        if not self._files.allows(path):
            help_ = f"The workspace is {self._files.root}; `--root` names another."
            self._problems.append(reading.OUTSIDE_ROOT.at(name.span, file=name.text, help=help_))
            return
        yield path, os.path.normpath(os.path.join(os.path.dirname(shown), name.text))

    def _shipped(self, name: Name) -> Iterator[tuple[Path, str]]:
        package, *parts = name.text.split(".")
        if package != LIBRARY:
            near = did_you_mean(package, (LIBRARY,))
            self._problems.append(later.PREFIX_NOT_YET.at(name.span, what=f"the pack `{package}`", help=near))
            return
        place = self._files.library.joinpath(*parts)
        if parts and place.with_suffix(".plan").is_file():
            yield place.with_suffix(".plan"), "/".join([LIBRARY, *parts]) + ".plan"
        elif parts and place.is_dir() and parts[0] != "templates":
            for file in sorted(place.glob("*.plan")):
                yield file, "/".join([LIBRARY, *parts, file.name])
        else:
            near = did_you_mean(name.text, self._library_names())
            self._problems.append(reading.UNKNOWN_LIBRARY.at(name.span, name=name.text, help=near))

    def _library_names(self) -> Iterator[str]:
        for file in sorted(self._files.library.rglob("*.plan")):
            parts = file.relative_to(self._files.library).with_suffix("").parts
            yield ".".join([LIBRARY, *parts])
            if len(parts) > 1:
                yield ".".join([LIBRARY, *parts[:-1]])
