"""A club's folder in the morning: a line for each athlete, written as soon as it is known.

Comes in: a folder, perhaps one plan, a day. Goes out: text on standard output; broken files are told at the end.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from datetime import date
from typing import TYPE_CHECKING

from setwright.cli.terminal import put, wants_colour
from setwright.cli.trouble import Trouble
from setwright.diagnostics.printers.characters import visible
from setwright.record import record

if TYPE_CHECKING:
    from setwright.diagnostics import Diagnostic
    from setwright.report.roster import Morning

_LINE = 100
HEAD = ("athlete", "plan", "today", "behind", "next", "effort, 14 days", "rules not kept")
_KEY = (
    "Today: the planned session, or what was done. Behind: sessions missed. Effort: reported RPE less asked, mean of "
    "the last 14 days (sets). Rules: those that the last whole week, as it was done, is outside of."
)


@record
class _Held:
    """What one file declares, by the heads of its lines."""

    path: str
    plans: tuple[str, ...]
    athletes: tuple[str, ...]
    uses: tuple[str, ...]
    has_sessions: bool


def morning(folder: str, plan: str | None, on: date, form: str, root: str | None) -> bool:
    """Write the list; False where some file could not be read."""
    if not os.path.isdir(folder):
        raise Trouble(f"{folder}: is no folder")
    broken: list[Diagnostic] = []
    files = tuple(_held(path, broken) for path in _plan_files(folder))
    if not any(file.athletes for file in files):
        raise Trouble(f"{folder}: no file in it declares an athlete")
    untold: list[str] = []
    write = _Writer(form, [name for file in files for name in file.athletes], on)
    for file in files:
        for name in file.athletes:
            plans = (plan,) if plan is not None else _plans_of(file, files)
            if not plans:
                untold.append(f"{file.path}: {name} follows no plan: name its file with `use`, or on the command line")
            for one in plans:
                for told in _morning(one, file, name, files, on, root or folder, broken):
                    write(told)
    return _tell(broken, untold, write)


def _plan_files(folder: str) -> Iterator[str]:
    for at, folders, names in os.walk(folder):
        folders.sort()
        for name in sorted(names):
            if name.endswith(".plan"):
                yield os.path.join(at, name)


def _held(path: str, broken: list[Diagnostic]) -> _Held:
    """What a file declares, as far as it can be read."""
    from setwright.files import decoded
    from setwright.source import Source
    from setwright.syntax import LineReader
    from setwright.syntax import nodes as n

    with open(path, "rb") as file:
        source = decoded(file.read(), path)
    if not isinstance(source, Source):
        broken.append(source)
        return _Held(path, (), (), (), False)
    nodes = [one.node for one in LineReader().read(source).statements]
    heads = [node for node in nodes if isinstance(node, n.Head)]
    used = [node.file.text for node in nodes if isinstance(node, n.UseLine) and node.file is not None]
    return _Held(
        path,
        tuple(head.name.text for head in heads if head.word == "plan"),
        tuple(head.name.text for head in heads if head.word == "athlete"),
        tuple(os.path.normpath(os.path.join(os.path.dirname(path), name)) for name in used),
        any(isinstance(node, n.SessionHead | n.AwayLine) for node in nodes),
    )


def _plans_of(file: _Held, files: tuple[_Held, ...]) -> tuple[str, ...]:
    """The athlete's own file, else files that it uses, else those that use it, else the only one of the folder."""
    holding = [one for one in files if one.plans]
    own = os.path.normpath(file.path)
    for found in (
        [one.path for one in holding if one is file],
        [one.path for one in holding if os.path.normpath(one.path) in file.uses],
        [one.path for one in holding if own in one.uses],
    ):
        if found:
            return tuple(found)
    return (holding[0].path,) if len(holding) == 1 else ()


def _morning(
    plan: str,
    file: _Held,
    name: str,
    files: tuple[_Held, ...],
    on: date,
    root: str,
    broken: list[Diagnostic],
) -> Iterator[Morning]:
    from setwright.diagnostics import Severity
    from setwright.pipeline import compile
    from setwright.report.roster import morning as figures

    own = os.path.normpath(file.path)
    logs = tuple(one.path for one in files if one.has_sessions and (one is file or own in one.uses))
    made = compile(plan, athletes=(file.path,), root=root, logs=logs, on=on)
    errors = [problem for problem in made.diagnostics if problem.severity is Severity.ERROR]
    rules = _broken_rules()
    broken += [problem for problem in errors if problem.code.number not in rules]
    for one in made.compilations:
        if one.plan.athlete == name:
            yield figures(one.plan, one.promise, one.log, on)


def _broken_rules() -> frozenset[str]:
    from setwright.check.measures import MEASURES

    return frozenset(measure.code.number for measure in MEASURES)


class _Writer:
    """Lines as they come: in columns wide enough for the names, which are known, or as CSV."""

    def __init__(self, form: str, names: list[str], on: date) -> None:
        self._is_csv = form == "csv"
        self._widths = (max(7, *(len(visible(name)) for name in names)), 22, 24, 6, 30, 15, 0)
        if self._is_csv:
            self._csv(HEAD)
            return
        from textwrap import wrap

        from setwright.render.adherence import day

        put(f"{day(on)}\n".replace("\u00a0", " ") + "\n".join(wrap(_KEY, _LINE)) + "\n\n")
        self._line(HEAD)

    def __call__(self, told: Morning) -> None:
        from setwright.render.roster import cells

        row = cells(told)
        if self._is_csv:
            self._csv(row)
        else:
            self._line(row)

    def _csv(self, row: tuple[str, ...]) -> None:
        from setwright.render import csv

        put(csv.table(tuple(csv.guarded(cell) for cell in row), ()))

    def _line(self, row: tuple[str, ...]) -> None:
        from setwright.cli.figures import aligned

        padded = [visible(cell).ljust(width) for cell, width in zip(row, self._widths, strict=True)]
        put("\n".join(aligned([tuple(padded)], left=len(padded))) + "\n")


def _tell(broken: list[Diagnostic], untold: list[str], write: _Writer) -> bool:
    from setwright.cli.terminal import tell
    from setwright.diagnostics import plain
    from setwright.diagnostics.printers import terminal

    once = {(str(problem.span), problem.message): problem for problem in broken}
    if once:
        put("\n" + terminal.text(plain.records(once.values()), colour=wants_colour(sys.stderr)), sys.stderr)
    for line in untold:
        tell(visible(line))
    return not once and not untold
