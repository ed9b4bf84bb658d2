"""Follows `use` lines from one file to all it needs.

Comes in: a source and the window to the files. Goes out: every file, imports before importers, each once.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from setwright.diagnostics import Diagnostic, Fix
from setwright.diagnostics.catalogue import reading
from setwright.files import LIBRARY, Files
from setwright.link.scopes import Scopes
from setwright.record import record, replace
from setwright.source import Source, Span
from setwright.suggest import did_you_mean, either
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

    def __init__(
        self, files: Files, reader: LineReader, problems: list[Diagnostic], scopes: Scopes | None = None
    ) -> None:
        self._files = files
        self._scopes = scopes or Scopes()
        self._reader = reader
        self._problems = problems
        self._done: dict[Path, Unit | None] = {}
        self._chain: list[tuple[Path, str]] = []
        self._log: Source | None = None

    def closure(self, path: Path, source: Source, *, is_log: bool = False) -> tuple[Unit, ...]:
        """The root file and everything it uses, imports first."""
        self._scopes.add_plain(source)
        self._log = source if is_log else None
        self._visit(path.resolve(), path, source)
        return tuple(unit for unit in self._done.values() if unit is not None)

    def _visit(self, key: Path, path: Path, source: Source) -> None:
        shipped = key.is_relative_to(self._files.library)
        parsed = self._reader.read_library(source) if shipped else self._reader.read(source, is_log=source is self._log)
        self._problems.extend(parsed.diagnostics)
        self._check_language(parsed)
        self._chain.append((key, source.path))
        for statement in parsed.statements:
            if isinstance(statement.node, UseLine):
                self._follow(statement.node, path, source)
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

    def _follow(self, use: UseLine, importer: Path, source: Source) -> None:
        prefix = use.prefix.text if use.prefix is not None else None
        if use.prefix is not None and use.prefix.text[0].isupper():
            help_ = f"Write `as {use.prefix.text.lower()}`."
            fix = Fix(use.prefix.span, use.prefix.text.lower())
            self._problems.append(reading.BAD_PREFIX.at(use.prefix.span, prefix=prefix, help=help_, fix=fix))
            self._scopes.add_lost(source, use.prefix.text, use.span.text)
            prefix = use.prefix.text.lower()
        units = [self._import(path, name, use.span) for path, name in self._targets(use, importer, source.path)]
        if not units or None in units:
            self._scopes.add_lost(source, prefix, (use.file or use.path or use).span.text)
        for unit in filter(None, units):
            if prefix is None:
                self._scopes.add_plain(unit.parsed.source)
            else:
                self._scopes.add_prefixed(source, prefix, unit.parsed.source)

    def _import(self, path: Path, shown: str, span: Span) -> Unit | None:
        key = path.resolve()
        on_chain = [entry for entry, _ in self._chain]
        if key in on_chain:
            names = [name for _, name in self._chain[on_chain.index(key) :]]
            self._problems.append(reading.IMPORT_CYCLE.at(span, chain=" -> ".join([*names, shown])))
            return None
        if key in self._done:
            return self._done[key]
        if len(self._done) >= MOST_FILES or len(self._chain) >= DEEPEST:
            self._problems.append(reading.TOO_MANY_IMPORTS.at(span, most=MOST_FILES))
            return None
        found = self._files.read(path, shown, span)
        if isinstance(found, Diagnostic):
            self._done[key] = None
            self._problems.append(found)
            return None
        self._visit(key, path, found)
        return self._done[key]

    def _targets(self, use: UseLine, importer: Path, shown: str) -> Iterator[tuple[Path, str]]:
        if use.file is not None:
            yield from self._file(use.file, importer, shown)
        elif use.path is not None:
            yield from self._named(use.path)

    def _file(self, name: Name, importer: Path, shown: str) -> Iterator[tuple[Path, str]]:
        if "\0" in name.text or not name.text:
            self._problems.append(reading.UNREADABLE_FILE.at(name.span, file=name.text or " ", reason="not a path"))
            return
        path = importer.parent / name.text
        if not self._is_allowed(path, importer, name):
            return
        yield path, os.path.normpath(os.path.join(os.path.dirname(shown), name.text))

    def _is_allowed(self, path: Path, importer: Path, name: Name) -> bool:
        """False after saying that the path leaves the importer's pack, or the workspace."""
        if self._files.allows(path, importer):
            return True
        pack = self._files.pack_of(importer)
        home, help_ = "the workspace", f"The workspace is {self._files.root}; `--root` names another."
        if pack is not None:
            home, help_ = f"the pack `{pack}`", "A pack can also use the shipped library, and other packs by name."
        self._problems.append(reading.OUTSIDE_ROOT.at(name.span, file=name.text, home=home, help=help_))
        return False

    def _named(self, name: Name) -> Iterator[tuple[Path, str]]:
        """The plans that a dotted path names: of the shipped library, or of an installed pack."""
        first, *parts = name.text.split(".")
        folder = self._files.library if first == LIBRARY else self._pack_folder(first, name)
        if folder is None:
            return
        place = folder.joinpath(*parts)
        file = place.with_suffix(".plan")
        if parts and os.path.isfile(file):  # unlike its method, this is no for names that are too long
            found = [(file, "/".join([first, *parts]) + ".plan")]
        else:
            plans = self._files.plans(place) if parts or first != LIBRARY else []
            found = [(file, "/".join([first, *parts, file.name])) for file in plans]
        if not found:
            self._files.plans(place.parent)  # where it may appear
            near = did_you_mean(name.text, _library_names(first, folder))
            self._problems.append(reading.UNKNOWN_LIBRARY.at(name.span, name=name.text, help=near))
        # A link in a pack may lead out of it.
        yield from (each for each in found if first == LIBRARY or self._is_allowed(each[0], folder, name))

    def _pack_folder(self, pack: str, name: Name) -> Path | None:
        from setwright.packs import BrokenPackError, installed_packs  # slow to import, and rarely wanted

        try:
            folder = self._files.pack(pack)
            known = installed_packs() if folder is None else ()
        except BrokenPackError as error:
            self._problems.append(reading.BROKEN_PACK.at(name.span, name=pack, reason=error))
            return None
        if folder is None:
            help_ = did_you_mean(pack, (LIBRARY, *known)) or (
                f"Installed here: {either([f'`{one}`' for one in known], 'and')}."
                if known
                else "No pack is installed in the environment that Setwright runs in."
            )
            span = replace(name.span, end=name.span.start + len(pack))
            self._problems.append(reading.UNKNOWN_PACK.at(span, name=pack, help=help_))
        return folder


def _library_names(first: str, folder: Path) -> Iterator[str]:
    """What could be named in a library's folder: its files, and the folders they lie in."""
    for file in sorted(folder.rglob("*.plan")):
        parts = file.relative_to(folder).with_suffix("").parts
        yield ".".join([first, *parts])
        if len(parts) > 1:
            yield ".".join([first, *parts[:-1]])
