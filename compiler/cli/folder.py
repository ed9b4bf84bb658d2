"""The folder sheets go to: all of a build arrives or none of it, and nothing that somebody else wrote is overwritten.

Comes in: file names and bytes. Goes out: files, and a manifest of what was written, by which the next build knows them.
"""

from __future__ import annotations

import os
from contextlib import suppress
from hashlib import sha256
from json import dumps, loads
from tempfile import mkstemp
from typing import TYPE_CHECKING

from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from collections.abc import Mapping

MANIFEST = ".setwright-sheets.json"
_ABOUT = "Written by setwright: the files here that a build may replace, by their last SHA-256s."


def write_sheets(folder: str, sheets: Mapping[str, bytes]) -> None:
    """Put the sheets into the folder, which is made if need be; on trouble the folder is left as it was."""
    if os.path.lexists(folder) and not os.path.isdir(folder):
        raise Trouble(f"{folder}: is there and is not a folder")
    known = _known(folder)
    before = {name: _before(folder, name, content, known) for name, content in sheets.items()}
    manifest = _manifest(known, sheets, before)
    made = _make(folder)
    try:
        _replace_all(folder, {MANIFEST: manifest, **sheets}, {MANIFEST: _bytes(folder, MANIFEST), **before})
    except BaseException:
        for path in reversed(made):
            with suppress(OSError):
                os.rmdir(path)
        raise


def write_new(folder: str, files: Mapping[str, str]) -> None:
    """Put files into the folder and those in it, none of which may be there yet."""
    if os.path.lexists(folder) and not os.path.isdir(folder):
        raise Trouble(f"{folder}: is there and is not a folder")
    for name in files:
        if os.path.lexists(os.path.join(folder, name)):
            raise Trouble(f"{os.path.join(folder, name)}: is already there, and `new` never overwrites")
    made = _make(folder)
    written: list[str] = []
    try:
        for name, text in files.items():
            path = os.path.join(folder, name)
            made += _make(os.path.dirname(path))
            with open(path, "x", encoding="utf-8", newline="\n") as file:
                written.append(path)
                file.write(text)
    except BaseException:
        for path in written:
            os.unlink(path)
        for path in reversed(made):
            with suppress(OSError):
                os.rmdir(path)
        raise


def replace_file(path: str, content: bytes) -> None:
    """Put other content into a file that is there, all of it or none; its permissions stay, and a link stays a link."""
    target = os.path.realpath(path)
    mode = os.stat(target).st_mode
    aside = _write_aside(os.path.dirname(target), content)
    try:
        os.chmod(aside, mode & 0o7777)
        os.replace(aside, target)
    except BaseException:
        os.unlink(aside)
        raise


def _make(folder: str) -> list[str]:
    """Make the folder and those above it; the ones that were missing, outermost first."""
    missing: list[str] = []
    path = os.path.abspath(folder)
    while not os.path.isdir(path):
        missing.append(path)
        path = os.path.dirname(path)
    os.makedirs(folder, exist_ok=True)
    return missing[::-1]


def _known(folder: str) -> dict[str, list[str]]:
    """The manifest: the hashes of each file's last two builds; empty where there is none that can be read."""
    with suppress(OSError, ValueError, TypeError, KeyError, AttributeError):
        with open(os.path.join(folder, MANIFEST), "rb") as file:
            files = loads(file.read())["files"]
        return {str(name): [str(seen) for seen in hashes] for name, hashes in files.items()}
    return {}


def _before(folder: str, name: str, content: bytes, known: Mapping[str, list[str]]) -> bytes | None:
    """What stands under the name now, if it may be replaced: the tool wrote it, or it is what would be written."""
    path = os.path.join(folder, name)
    if not os.path.lexists(path):
        return None
    if os.path.islink(path) or not os.path.isfile(path):
        raise Trouble(f"{path}: is in the way and is no plain file; nothing was written")
    with open(path, "rb") as file:
        before = file.read()
    if before != content and _hash(before) not in known.get(name, ()):
        done = "was changed since setwright wrote it" if name in known else "was not written by setwright"
        raise Trouble(f"{path}: {done}; move it away or choose another folder with -o; nothing was written")
    return before


def _bytes(folder: str, name: str) -> bytes | None:
    with suppress(OSError), open(os.path.join(folder, name), "rb") as file:
        return file.read()
    return None


def _manifest(known: Mapping[str, list[str]], sheets: Mapping[str, bytes], before: Mapping[str, bytes | None]) -> bytes:
    """The new manifest. It also knows the files as they were, so that a stopped build can be done again."""
    files = {**known}
    for name, content in sheets.items():
        was = before[name]
        files[name] = list(dict.fromkeys([_hash(content), *([] if was is None else [_hash(was)])]))
    return dumps({"about": _ABOUT, "files": dict(sorted(files.items()))}, indent=2, ensure_ascii=False).encode() + b"\n"


def _replace_all(folder: str, contents: Mapping[str, bytes], before: Mapping[str, bytes | None]) -> None:
    """Write everything aside first, where a full disk shows; then only rename, and undo that if it fails half-way."""
    aside: dict[str, str] = {}
    backups: dict[str, str] = {}
    replaced: list[str] = []
    try:
        for name, content in contents.items():
            aside[name] = _write_aside(folder, content)
            was = before[name]
            if was is not None:
                backups[name] = _write_aside(folder, was)
        for name, temporary in aside.items():
            os.replace(temporary, os.path.join(folder, name))
            replaced.append(name)
    except BaseException:
        _undo(folder, replaced, backups)
        raise
    finally:
        for temporary in (*aside.values(), *backups.values()):
            with suppress(OSError):
                os.unlink(temporary)


def _undo(folder: str, replaced: list[str], backups: Mapping[str, str]) -> None:
    for name in replaced:
        path = os.path.join(folder, name)
        if name in backups:
            os.replace(backups[name], path)
        else:
            os.unlink(path)


def _write_aside(folder: str, content: bytes) -> str:
    descriptor, path = mkstemp(prefix=".setwright-", suffix=".part", dir=folder)
    try:
        with open(descriptor, "wb") as file:
            file.write(content)
        os.chmod(path, 0o666 & ~_umask())  # mkstemp keeps a file private; sheets are as public as other files
    except BaseException:
        os.unlink(path)
        raise
    return path


def _umask() -> int:
    current = os.umask(0)
    os.umask(current)
    return current


def _hash(content: bytes) -> str:
    return sha256(content).hexdigest()
