"""The only window to the file system that compiling has: reads files under a root and remembers what it read.

Comes in: paths. Goes out: `Source`s or a diagnostic, and the list of files a result depends on.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from hashlib import sha256
from importlib.util import find_spec
from pathlib import Path

from setwright.diagnostics import Diagnostic
from setwright.roots import workspace
from setwright.source import Source, Span

LARGEST_FILE = 10_000_000  # bytes
LIBRARY = "stdlib"


def find_root(file: Path) -> Path:
    """The workspace of a file: the nearest folder above that bears a mark, else the file's own folder."""
    return Path(workspace(str(file)))


def library_folder() -> Path:
    """Where the shipped library lies."""
    return package_folder("setwright.stdlib")


def package_folder(package: str) -> Path:
    """The folder of an installed package of ours. (importlib.resources says the same, and takes longer to import.)"""
    spec = find_spec(package)
    assert spec is not None
    assert spec.submodule_search_locations
    return Path(spec.submodule_search_locations[0])


class Files:
    """Reads sources under `root`, in the shipped library and in the packs that are used, and nothing else.

    `unsaved` are texts that stand for what lies at their absolute paths: an editor's.
    """

    def __init__(self, root: Path, unsaved: Mapping[str, str] | None = None) -> None:
        self.root = root.resolve()
        self._unsaved = unsaved if unsaved is not None else {}
        self.library = library_folder().resolve()
        self._packs: dict[str, Path] = {}
        self._read: dict[str, str | None] = {}

    @property
    def dependencies(self) -> tuple[tuple[str, str | None], ...]:
        """Absolute path and sha256 of every file read; None for one that was looked for and is not there."""
        return tuple(sorted(self._read.items()))

    def allows(self, path: Path, importer: Path) -> bool:
        """True where the file lies inside the importer's pack or workspace, or in the shipped library."""
        resolved, pack = path.resolve(), self.pack_of(importer)
        home = self._packs[pack] if pack else self.root
        return resolved.is_relative_to(home) or resolved.is_relative_to(self.library)

    def pack_of(self, path: Path) -> str | None:
        """The pack that the file belongs to, if any."""
        resolved = path.resolve() if self._packs else path
        found = ((len(str(folder)), name) for name, folder in self._packs.items() if resolved.is_relative_to(folder))
        return max(found, default=(0, None))[1]

    def pack(self, name: str) -> Path | None:
        """The folder of an installed pack, or None where there is none; raises BrokenPackError.

        What is installed is part of the dependencies.
        """
        from setwright.cache import INSTALLED, state
        from setwright.packs import pack_folder

        self._read[INSTALLED] = state(INSTALLED)
        folder = pack_folder(name)
        if folder is not None:
            self._packs[name] = folder
        return folder

    def plans(self, folder: Path) -> list[Path]:
        """The plans at the top of a folder, by name; which there are is part of the dependencies."""
        if not folder.is_relative_to(self.library):  # the cache knows the state of the program's own files
            from setwright.cache import LISTING, state

            listing = os.path.join(folder, LISTING)
            self._read[listing] = state(listing)
        return sorted(folder.glob("*.plan")) if os.path.isdir(folder) else []  # a name may be too long for a folder

    def exists(self, path: Path) -> bool:
        """True where there is such a file; the answer is part of the dependencies."""
        there = str(path.resolve()) in self._unsaved or path.is_file()
        if not there:
            self._read[str(path.resolve())] = None
        return there

    def read(self, path: Path, shown: str, asked: Span | None = None) -> Source | Diagnostic:
        """The source at `path`, named `shown` in messages; `asked` is the line that wanted it."""
        data = self.content(path, shown, asked)
        return data if isinstance(data, Diagnostic) else decoded(data, shown)

    def content(self, path: Path, shown: str, asked: Span | None = None) -> bytes | Diagnostic:
        """The bytes at `path`: of a picture, or of what is to be decoded."""
        from setwright.diagnostics.catalogue import reading as codes

        if self._unsaved and (text := self._unsaved.get(str(path.resolve()))) is not None:
            return text.encode("utf-8", "surrogateescape")
        try:
            with path.open("rb") as stream:
                data = stream.read(LARGEST_FILE + 1)
        except (OSError, ValueError) as error:
            self._read[str(path.resolve())] = None
            reason = os.strerror(error.errno).lower() if isinstance(error, OSError) and error.errno else "not a path"
            return codes.UNREADABLE_FILE.at(asked or _top(shown), file=shown, reason=reason)
        if len(data) > LARGEST_FILE:
            self._read[str(path.resolve())] = "large"
            return codes.FILE_TOO_LARGE.at(asked or _top(shown), file=shown, most=LARGEST_FILE // 1_000_000)
        self._read[str(path.resolve())] = sha256(data).hexdigest()
        return data


def decoded(data: bytes, shown: str) -> Source | Diagnostic:
    """Bytes as a source: UTF-8, any line ends, no byte-order mark; or a diagnostic at the first wrong byte."""
    from setwright.diagnostics.catalogue import reading as codes

    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = error.object[: error.start].decode("utf-8")
        source = Source(shown, _unified(error.object.decode("utf-8", "replace")))
        line = _unified(before).count("\n") + 1
        column = len(_unified(before).rpartition("\n")[2])
        byte = error.object[error.start]
        return codes.NOT_UTF8.at(Span(source, line, column, column + 1), byte=f"0x{byte:02X}")
    return Source(shown, _unified(text))


def _unified(text: str) -> str:
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _top(shown: str) -> Span:
    return Span(Source(shown, ""), 1, 0, 0)
