"""The findings of one file as plain records: from the cache while nothing changed, else from the compiler."""

from __future__ import annotations

import gc
import os
import sys
from typing import TYPE_CHECKING

from setwright import __version__, cache
from setwright.cli.trouble import Trouble
from setwright.roots import workspace

if TYPE_CHECKING:
    from datetime import date

    from setwright.diagnostics.plain import Record
    from setwright.pipeline import Compiled

STDIN = "-"
STDIN_SHOWN = "<stdin>"


def findings(path: str, athletes: tuple[str, ...], root: str | None, *, use_cache: bool) -> list[Record]:
    """Everything the compiler says about the file; `-` is standard input, which is never cached."""
    if path == STDIN or not use_cache:
        return _compile(path, athletes, root)[0]
    entry = cache.key(path, root or workspace(path), ("check", *athletes))
    kept: list[Record] | None = cache.lookup(entry, __version__)
    if kept is not None:
        return kept
    found, dependencies = _compile(path, athletes, root)
    cache.store(entry, __version__, dependencies, found)
    return found


def require(path: str) -> None:
    """Say at once that a file is missing or is a folder."""
    if path != STDIN and os.path.isdir(path):
        raise Trouble(f"{path}: is a folder; name the .plan file in it")
    if path != STDIN and not os.path.lexists(path):
        raise Trouble(f"{path}: no such file")


def compiled(
    path: str, athletes: tuple[str, ...], root: str | None, logs: tuple[str, ...] = (), on: date | None = None
) -> Compiled:
    """The file compiled; of standard input, bytes that are not UTF-8 are carried along for the compiler to point at."""
    gc.disable()  # one run makes little that it does not need to its end; collecting took a twentieth of its time
    from setwright.pipeline import compile

    if path != STDIN:
        return compile(path, athletes=athletes, root=root, logs=logs, on=on)
    text = sys.stdin.buffer.read().decode("utf-8", "surrogateescape")
    return compile(STDIN_SHOWN, athletes=athletes, root=root, text=text, logs=logs, on=on)


def _compile(
    path: str, athletes: tuple[str, ...], root: str | None
) -> tuple[list[Record], tuple[tuple[str, str | None], ...]]:
    from setwright.diagnostics.plain import records

    made = compiled(path, athletes, root)
    return records(made.diagnostics), made.dependencies
