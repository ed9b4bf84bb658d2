"""Which names a file can say: those of everything imported plainly, and `club.Back Squat` for `use ... as club`.

Comes in: who uses whom, under which prefix. Goes out: the names under which the library keeps what a file means.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from setwright.source import Source
from setwright.syntax.nodes import Name


def home_of(name: Name) -> Source:
    """The file whose imports a name speaks of."""
    return name.home or name.span.source


@dataclass(slots=True)
class Scopes:
    """Filled while imports are followed, then only asked.

    What a file declares that is imported nowhere without a prefix is kept under a name of its own, the file's
    `qualifier`, a point and the name. It is the first prefix that the file was imported under, made unique.
    """

    _plain: set[Source] = field(default_factory=set)
    _qualifiers: dict[Source, str] = field(default_factory=dict)
    _groups: dict[tuple[Source, str], list[Source]] = field(default_factory=dict)  # by importer and prefix
    _names: dict[tuple[Source, str], str] = field(default_factory=dict)  # the qualifier that each group gives

    lost: dict[tuple[Source, str | None], str] = field(default_factory=dict)  # what was not read, by file and prefix

    def add_lost(self, importer: Source, prefix: str | None, what: str) -> None:
        """What the importer uses could not be read: names that it may hold are not known."""
        self.lost.setdefault((importer, prefix), what)

    def add_plain(self, file: Source) -> None:
        """What the file declares can be named by all files."""
        self._plain.add(file)

    def add_prefixed(self, importer: Source, prefix: str, file: Source) -> None:
        """What the file declares can be named by the importer, with the prefix."""
        self._groups.setdefault((importer, prefix), []).append(file)
        if file not in self._qualifiers:
            self._qualifiers[file] = self._qualifier_of_group(importer, prefix)

    def _qualifier_of_group(self, importer: Source, prefix: str) -> str:
        if (importer, prefix) not in self._names:
            taken, number = {*self._names.values()}, 2
            unique = prefix
            while unique in taken:
                unique, number = f"{prefix}-{number}", number + 1
            self._names[importer, prefix] = unique
        return self._names[importer, prefix]

    def kept(self, name: str, file: Source) -> str:
        """The name under which the library keeps what the file declares as `name`."""
        qualifier = self._qualifier(file)
        return f"{qualifier}.{name}" if qualifier else name

    def _qualifier(self, file: Source) -> str | None:
        return self._qualifiers.get(file) if self._qualifiers and file not in self._plain else None

    def meanings(self, name: Name) -> Iterator[tuple[str, frozenset[Source] | None]]:
        """What a name may mean where it was written, nearest first: a kept name, and the files that may declare it."""
        source = home_of(name)
        if name.prefixed:
            prefix, _, rest = name.text.partition(".")
            yield from self._of_files(rest, self._groups.get((source, prefix), []))
            return
        if self._qualifier(source):
            yield from self._of_files(name.text, self._companions(source))
        yield name.text, None

    def _of_files(self, name: str, files: list[Source]) -> Iterator[tuple[str, frozenset[Source]]]:
        those = frozenset(files)
        yield from ((kept, those) for kept in dict.fromkeys(self.kept(name, file) for file in files))

    def has_prefix(self, name: Name) -> bool:
        """False where a name bears a prefix that its file gives to no import."""
        return not name.prefixed or (home_of(name), name.text.partition(".")[0]) in self._groups

    def spoken(self, kept: Iterable[tuple[str, Source]], asking: Source) -> Iterator[str]:
        """Each kept name as the asking file would write it; those that it cannot name are left out."""
        if not self._groups:
            yield from (name for name, _ in kept)
            return
        prefixes = [(prefix, files) for (importer, prefix), files in self._groups.items() if importer == asking]
        companions = self._companions(asking)
        for name, file in kept:
            qualifier = self._qualifier(file)
            own = name.removeprefix(f"{qualifier}.") if qualifier else name
            if qualifier is None or file in companions:
                yield own
            yield from (f"{prefix}.{own}" for prefix, files in prefixes if file in files)

    def _companions(self, file: Source) -> list[Source]:
        """The file itself and those that are imported together with it under one prefix."""
        return [file, *(other for files in self._groups.values() if file in files for other in files)]
