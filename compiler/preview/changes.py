"""Waits until a file that a build rests on is another one.

Folders are watched, not files: an editor that saves by renaming puts a new file in the old one's place. What counts is
the state of the files themselves; the watching only says when to look.
"""

from __future__ import annotations

import os
from collections.abc import Iterable
from pathlib import Path
from threading import Event
from typing import Final

from setwright.cache import INSTALLED, state
from setwright.files import library_folder

LOOK_AGAIN: Final = 1000  # milliseconds; for file systems that tell nothing
QUIET: Final = 40  # milliseconds without another change before a build begins


def wait_for_change(states: Iterable[tuple[str, str | None]], stop: Event) -> bool:
    """True as soon as one of the files is no longer in the state given; False when told to stop."""
    from watchfiles import watch

    files = [(path, before) for path, before in states if not _is_ours(path)]
    folders = _folders(path for path, _ in files)
    for _ in watch(
        *folders,
        recursive=False,
        stop_event=stop,
        step=QUIET,
        debounce=400,
        rust_timeout=LOOK_AGAIN,
        yield_on_timeout=True,
    ):
        if stop.is_set():
            return False
        if any(state(path) != before for path, before in files):
            return True
    return False


def _is_ours(path: str) -> bool:
    """Whether the program brought the file, so that nobody edits it."""
    return path == INSTALLED or Path(path).is_relative_to(library_folder())


def _folders(paths: Iterable[str]) -> tuple[str, ...]:
    """The folders of the files; for one that is not there, the nearest above it that is."""
    found: dict[str, None] = {}
    for path in paths:
        folder = os.path.dirname(path)
        while not os.path.isdir(folder):
            folder = os.path.dirname(folder)
        found[folder] = None
    return tuple(found)
