"""Where a workspace begins. Apart from `files`, which a cached `check` has no time to import.

Comes in: the path of a file. Goes out: the folder that its imports must stay in.
"""

from __future__ import annotations

import os

SETTINGS = "setwright.toml"
ROOT_MARKS = (".git", SETTINGS)


def workspace(path: str) -> str:
    """The nearest folder above the file that bears a mark, else the file's own folder."""
    folder = own = os.path.dirname(os.path.realpath(path))
    while not any(os.path.exists(os.path.join(folder, mark)) for mark in ROOT_MARKS):
        if folder == os.path.dirname(folder):
            return own
        folder = os.path.dirname(folder)
    return folder
