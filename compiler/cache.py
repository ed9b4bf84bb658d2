"""What `check` found last time, kept in the user's cache folder for as long as nothing it read has changed.

Comes in: what was checked, how, and what it read. Goes out: the findings as plain data, or None. It never raises, is
safe to delete, and holds JSON under a checksum: nothing in it is ever executed.
"""

from __future__ import annotations

import os
import sys
from contextlib import suppress
from hashlib import sha256
from json import dumps, loads
from stat import S_ISDIR, S_ISREG
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from typing import Any

FOLDER = "folder"  # the state of a path that was looked at and is a folder
INSTALLED = "installed packages"  # a dependency on what is installed, which is no path
LISTING = "*.plan"  # after a folder: a dependency on which plans it holds
_LAYOUT = 1  # of an entry; raise it when the plain records change
_MOST_ENTRIES = 500


def state(path: str) -> str | None:
    """What a dependency is now: the SHA-256 of its bytes, `folder`, or None where nothing is.

    A pipe is not read: what is in it can be read once, and the compiler wants it.
    """
    if path == INSTALLED:
        return _hash_of(_installed())
    if path.endswith(LISTING):
        return _hash_of(_plans(os.path.dirname(path)))
    try:
        mode = os.stat(path).st_mode
        if S_ISDIR(mode):
            return FOLDER
        if not S_ISREG(mode):
            return "not a file"
        with open(path, "rb") as file:
            return sha256(file.read()).hexdigest()
    except (FileNotFoundError, NotADirectoryError):
        return None
    except OSError:
        return "unreadable"


def _installed() -> Iterable[object]:
    """What pip leaves beside the packages it installs; entries with the times at which they were last changed."""
    for folder in sys.path:
        with suppress(OSError), os.scandir(folder or ".") as found:
            for entry in found:
                if entry.name.endswith((".dist-info", ".egg-info", ".egg-link", ".pth")):
                    yield [folder, entry.name, entry.stat().st_mtime_ns]


def _plans(folder: str) -> Iterable[object]:
    with suppress(OSError):
        yield from (name for name in os.listdir(folder) if name.endswith(".plan"))


def _hash_of(facts: Iterable[object]) -> str:
    return sha256(dumps(sorted(map(dumps, facts))).encode()).hexdigest()


def key(path: str, root: str | None, options: Sequence[str]) -> str:
    """The name of the entry for one file checked in one way from one folder."""
    asked = [os.getcwd(), path, os.path.abspath(path), root, *options]
    return sha256(dumps(asked).encode()).hexdigest()


def lookup(entry: str, version: str) -> list[Any] | None:
    """The findings kept under `entry`, if every file they came from, and the compiler, are what they were."""
    with suppress(Exception):
        folder = _folder(make=False)
        kept = _read(os.path.join(folder, entry)) if folder else None
        if (
            kept is not None
            and kept["maker"] == _maker(version)
            and all(state(path) == seen for path, seen in kept["dependencies"])
        ):
            found: list[Any] = kept["records"]
            return found
    return None


def store(entry: str, version: str, dependencies: Iterable[tuple[str, str | None]], records: Sequence[object]) -> None:
    """Keep the findings; where that cannot be done, do nothing."""
    with suppress(Exception):
        folder = _folder(make=True)
        if folder:
            body = {"maker": _maker(version), "dependencies": list(dependencies), "records": list(records)}
            _write(folder, entry, dumps(body).encode())
            _drop_oldest(folder)


def _folder(*, make: bool) -> str | None:
    """The folder of entries, or None where it is not there, not ours alone, or cannot be made."""
    base = os.environ.get("XDG_CACHE_HOME", "")
    if not os.path.isabs(base):  # the XDG Base Directory Specification has relative paths ignored
        base = os.path.join(os.path.expanduser("~"), ".cache")
    folder = os.path.join(base, "setwright")
    if not os.path.isabs(folder):
        return None
    if make:
        os.makedirs(base, exist_ok=True)
        with suppress(FileExistsError):
            os.mkdir(folder, 0o700)
    found = os.lstat(folder)
    return folder if S_ISDIR(found.st_mode) and _ours(found) else None


def _ours(found: os.stat_result) -> bool:
    """True where the user owns it and nobody else may write to it."""
    if sys.platform == "win32":
        return True
    return found.st_uid == os.geteuid() and not found.st_mode & 0o022


def _read(path: str) -> dict[str, Any] | None:
    descriptor = os.open(path, os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0))
    with open(descriptor, "rb") as file:
        if not _ours(os.fstat(descriptor)):
            return None
        checksum, _, body = file.read().partition(b"\n")
    if sha256(body).hexdigest().encode() != checksum:
        return None
    kept: dict[str, Any] = loads(body)
    return kept


def _write(folder: str, entry: str, body: bytes) -> None:
    """All of it or none: written under another name, then moved into place."""
    temporary = os.path.join(folder, f".{entry}.{os.getpid()}")
    descriptor = os.open(temporary, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    try:
        with open(descriptor, "wb") as file:
            file.write(sha256(body).hexdigest().encode() + b"\n" + body)
        os.replace(temporary, os.path.join(folder, entry))
    except BaseException:
        os.unlink(temporary)
        raise


def _drop_oldest(folder: str) -> None:
    """Keep the folder from growing without end, and clear away what a stopped run left."""
    files = [entry for entry in os.scandir(folder) if entry.is_file()]
    for entry in sorted(files, key=lambda entry: entry.stat().st_mtime)[:-_MOST_ENTRIES]:
        os.unlink(entry.path)


def _maker(version: str) -> list[object]:
    """What made an entry: version, Python, and the state of the program's own files, which change in a working copy."""
    newest, files = 0, 0
    for folder in _program_folders():
        for found in _program_files(folder):
            newest = max(newest, found.stat().st_mtime_ns)
            files += found.stat().st_size
    return [_LAYOUT, version, sys.version, newest, files]


def _program_folders() -> list[str]:
    from importlib.util import find_spec

    folders = [os.path.dirname(__file__)]
    for name in ("setwright.grammar", "setwright.stdlib"):
        found = find_spec(name)
        folders += (found and found.submodule_search_locations) or []
    return folders


def _program_files(folder: str) -> Iterable[os.DirEntry[str]]:
    with os.scandir(folder) as found:
        for entry in found:
            if entry.is_dir(follow_symlinks=False):
                if entry.name != "__pycache__":
                    yield from _program_files(entry.path)
            elif entry.name.endswith((".py", ".lark", ".json", ".plan")):
                yield entry
