"""Installed packs: where the `.plan` files of a Python package lie that offers them to plans.

Comes in: a pack's name. Goes out: its folder, or why it has none. A pack's own code is never run: its package is
found, not imported. This module is imported when a file uses a pack, and not before: it is slow to import.
"""

from __future__ import annotations

from importlib.machinery import ModuleSpec, PathFinder
from importlib.metadata import EntryPoint, entry_points
from importlib.util import find_spec
from pathlib import Path

GROUP = "setwright.library"


class BrokenPackError(Exception):
    """A pack is installed and has no folder that could be read; the text says why."""


def installed_packs() -> tuple[str, ...]:
    """The names of all packs in this Python environment; raises BrokenPackError where they cannot be listed."""
    return tuple(sorted({entry.name for entry in _entries()}))


def pack_folder(name: str) -> Path | None:
    """The folder of a pack, or None where no such pack is installed; raises BrokenPackError."""
    values = {entry.value: entry for entry in _entries() if entry.name == name}
    if not values:
        return None
    if len(values) > 1:
        raise BrokenPackError(f"several installed packages offer it: {', '.join(sorted(values))}")
    [(value, entry)] = values.items()
    module = _module(entry)
    if module is None:
        raise BrokenPackError(f"its entry point names `{value}`, which is no package")
    return _folder(module)


def _entries() -> tuple[EntryPoint, ...]:
    """What other people's packages say of themselves may be damaged in any way."""
    try:
        return tuple(entry_points(group=GROUP))
    except Exception as error:
        raise BrokenPackError(f"the list of installed packages cannot be read ({_said(error)})") from error


def _module(entry: EntryPoint) -> str | None:
    try:
        module, attribute = entry.module, entry.attr
    except AttributeError:  # the value has no form of an entry point
        return None
    return None if attribute or not all(part.isidentifier() for part in module.split(".")) else module


def _folder(module: str) -> Path:
    top, *others = module.split(".")
    try:
        spec = find_spec(top)
        for index in range(len(others)):  # `find_spec` of a dotted name would import what stands before the last point
            name = ".".join([top, *others[: index + 1]])
            spec = PathFinder.find_spec(name, _places(spec)) if spec else None
    except Exception as error:
        raise BrokenPackError(f"looking for its package `{module}` failed ({_said(error)})") from error
    if spec is None:
        raise BrokenPackError(f"its package `{module}` is not there")
    folders = [Path(place) for place in _places(spec)]
    folder = next((folder for folder in folders if folder.is_dir()), None)
    if folder is None:
        raise BrokenPackError(f"`{module}` is no package with a folder")
    return folder.resolve()


def _places(spec: ModuleSpec) -> list[str]:
    return list(spec.submodule_search_locations or ())


def _said(error: Exception) -> str:
    """An error as a few words on one line."""
    return " ".join(f"{type(error).__name__}: {error}".split())[:200]
