"""The two sides of a difference: files, files of a git revision, or what git hands to a driver.

Comes in: what a person typed after `setwright diff`. Goes out: compiled sides, or the diagnostics of one with errors.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from shutil import copyfile
from typing import TYPE_CHECKING, NamedTuple

from setwright.cli.findings import STDIN, compiled, require
from setwright.cli.revisions import checked_out, top_of
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from setwright.diagnostics import Diagnostic
    from setwright.pipeline import Compiled
    from setwright.plan import Plan
    from setwright.rules import Promise


class Asked(NamedTuple):
    """One side as it was asked for: a path, in a revision or (None) as it lies in its folder."""

    revision: str | None
    path: str

    @property
    def shown(self) -> str:
        """As messages name it."""
        return self.path if self.revision is None else f"{self.revision}:{self.path}"


class Side(NamedTuple):
    """One side compiled; `prefix` of a path in its diagnostics stands for `shown_prefix`."""

    shown: str
    compiled: Compiled
    prefix: str = ""
    shown_prefix: str = ""

    @property
    def plans(self) -> list[tuple[Plan, Promise]]:
        """Its plans with what they promise."""
        return [(one.plan, one.promise) for one in self.compiled.compilations]

    @property
    def errors(self) -> tuple[Diagnostic, ...]:
        """What stops a comparison; broken rules do not, and are told as consequences."""
        return errors_of(self.compiled)


def errors_of(made: Compiled) -> tuple[Diagnostic, ...]:
    """The errors that are not rules a plan breaks."""
    from setwright.check.measures import MEASURES
    from setwright.diagnostics import Severity

    broken = {measure.code.number for measure in MEASURES}
    return tuple(one for one in made.diagnostics if one.severity is Severity.ERROR and one.code.number not in broken)


def asked(arguments: tuple[str, ...], git: bool) -> tuple[Asked, Asked]:
    """`OLD NEW`, where either may be `REV:FILE`; or with `--git`: `REV FILE`, `REV REV2 FILE`."""
    if not git:
        if len(arguments) != 2:
            raise Trouble(f"`diff` takes two files, OLD and NEW, and these are {len(arguments)}")
        return _one(arguments[0]), _one(arguments[1])
    match arguments:
        case (old, path):
            return Asked(old, _within(path)), Asked(None, path)
        case (old, new, path):
            return Asked(old, _within(path)), Asked(new, _within(path))
        case _:
            raise Trouble("`--git` takes REV FILE, or REV REV2 FILE")


@contextmanager
def compiled_sides(old: Asked, new: Asked, athletes: tuple[str, ...], root: str | None) -> Iterator[tuple[Side, Side]]:
    """Both sides, an athlete's file the same for both: that of the new side."""
    with ExitStack() as stack:
        folders = {
            revision: stack.enter_context(checked_out(revision, _repository(each)))
            for each in (old, new)
            if (revision := each.revision) is not None
        }
        newer = [_of_new_side(athlete, new, folders) for athlete in athletes]
        yield _side(old, newer, folders, root), _side(new, newer, folders, root)


def _one(argument: str) -> Asked:
    revision, colon, path = argument.partition(":")
    if argument == STDIN or not colon or os.path.lexists(argument):
        return Asked(None, argument)
    return Asked(revision, _within(path) if path.startswith(("./", "../")) else path)


def _within(path: str) -> str:
    """The path from the top of its repository."""
    top = os.path.realpath(top_of(os.path.dirname(path) if os.path.isdir(os.path.dirname(path) or ".") else "."))
    absolute = os.path.join(os.path.realpath(os.path.dirname(path) or "."), os.path.basename(path))
    within = os.path.relpath(absolute, top)
    if within.startswith(os.pardir):
        raise Trouble(f"{path}: outside the git repository {top}")
    return within.replace(os.sep, "/")


def _repository(of: Asked) -> str:
    folder = os.path.dirname(of.path)
    return folder if folder and os.path.isdir(folder) else "."


def _side(of: Asked, athletes: list[str], folders: dict[str, str], root: str | None) -> Side:
    if of.revision is None:
        require(of.path)
        return Side(of.shown, compiled(of.path, tuple(athletes), root))
    folder = folders[of.revision]
    path = os.path.join(folder, of.path)
    if not os.path.lexists(path):
        raise Trouble(f"{of.shown}: no such file in that revision")
    there = tuple(_in_folder(athlete, folder) for athlete in athletes)
    return Side(of.shown, compiled(path, there, None), folder + os.sep, f"{of.revision}:")


def _of_new_side(athlete: str, new: Asked, folders: dict[str, str]) -> str:
    """An athlete's file as the new side has it."""
    if not athlete.endswith(".plan") or new.revision is None:
        return athlete
    there = os.path.join(folders[new.revision], _within(athlete))
    return there if os.path.lexists(there) else athlete


def _in_folder(athlete: str, folder: str) -> str:
    """The athlete's file at its place in a revision, so that what it imports is found there."""
    if not athlete.endswith(".plan") or athlete.startswith(folder) or not os.path.isfile(athlete):
        return athlete
    other = next((top for top in Path(athlete).resolve().parents if (top / ".git").exists()), None)
    place = Path(folder, Path(athlete).resolve().relative_to(other) if other else os.path.basename(athlete))
    place.parent.mkdir(parents=True, exist_ok=True)
    copyfile(athlete, place)
    return str(place)
