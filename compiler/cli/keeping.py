"""One file changed so that nothing of it can be lost: not by a full disk, not by a stop at any moment.

Comes in: a path and bytes. Goes out: the file with the new bytes, and beside it the old one under a name of its own.
"""

from __future__ import annotations

import os
from contextlib import suppress
from tempfile import mkstemp

from setwright.cli.trouble import Trouble

BEFORE = ".before"


def replace_keeping(path: str, before: bytes | None, after: bytes) -> str | None:
    """Put other bytes into the file; the name under which the old ones are kept, None where there was no file.

    Everything is written aside and brought to the disk first; then the old bytes get their name, and one rename puts
    the new ones in place. `before` are the bytes that were read: where others stand there by now, nothing is written.
    """
    target = os.path.realpath(path)
    if before is None:
        _put_new(_write_aside(target, after, 0o666 & ~_umask()), target)
        return None
    mode = os.stat(target).st_mode & 0o7777
    kept = _keep(path, _write_aside(target, before, mode))
    aside = _write_aside(target, after, mode)
    try:
        if _bytes(target) != before:
            raise Trouble(f"{path}: was changed while it was read; nothing was written")
        os.replace(aside, target)
    except BaseException:
        with suppress(OSError):
            os.unlink(aside)
        raise
    _bring_to_disk(os.path.dirname(target))
    return kept


def _bytes(path: str) -> bytes:
    with open(path, "rb") as file:
        return file.read()


def _write_aside(target: str, content: bytes, mode: int) -> str:
    """A file beside the target with all the bytes, on the disk."""
    descriptor, aside = mkstemp(prefix=".setwright-", suffix=".part", dir=os.path.dirname(target))
    try:
        with open(descriptor, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(aside, mode)
    except BaseException:
        with suppress(OSError):
            os.unlink(aside)
        raise
    return aside


def _keep(path: str, aside: str) -> str:
    """Name the old bytes `runa-log.plan.before`, or with the first number that is free; nothing is written over."""
    number = 1
    while True:
        kept = path + BEFORE + (f"-{number}" if number > 1 else "")
        try:
            _put_new(aside, kept)
        except FileExistsError:
            number += 1
        else:
            return kept


def _put_new(aside: str, path: str) -> None:
    """Give a file that was written aside its name, which nothing may have yet."""
    try:
        os.link(aside, path)
    except FileExistsError:
        raise
    except OSError:  # a file system without links
        if os.path.lexists(path):
            raise FileExistsError(path) from None
        os.rename(aside, path)
    else:
        os.unlink(aside)
    _bring_to_disk(os.path.dirname(os.path.abspath(path)))


def _bring_to_disk(folder: str) -> None:
    """Make a rename last; where folders cannot be opened, the system does so by itself."""
    with suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


def _umask() -> int:
    current = os.umask(0)
    os.umask(current)
    return current
