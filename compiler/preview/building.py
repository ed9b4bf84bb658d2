"""One build for the preview: pages in memory, what was found, and the files that it all rests on.

Comes in: what is wanted. Goes out: `Built`. Nothing is raised for what files hold.
"""

from __future__ import annotations

import os
from datetime import date
from pathlib import Path

from setwright.cache import state
from setwright.diagnostics import Diagnostic
from setwright.diagnostics.plain import Record, has_errors, records
from setwright.files import Files, find_root
from setwright.pipeline import Compilation, compile
from setwright.record import record
from setwright.render import html
from setwright.render.gathered import gathered
from setwright.render.look import look
from setwright.render.material import Look
from setwright.render.outputs import FaultyTemplateError


@record
class Wanted:
    """A file, its athletes and logs, the look that the command line asked for, and the day that counts as today."""

    file: str
    athletes: tuple[str, ...] = ()
    root: str | None = None
    look: tuple[tuple[str, str | None], ...] = ()
    logs: tuple[str, ...] = ()
    on: date | None = None


@record
class Page:
    """One sheet."""

    title: str
    content: bytes


@record
class Built:
    """What a build came to; there are no pages where there are errors."""

    pages: tuple[Page, ...]
    found: tuple[Record, ...]
    states: tuple[tuple[str, str | None], ...]  # of every file that was read or missed, from before the build


def built(wanted: Wanted, known: tuple[tuple[str, str | None], ...] = ()) -> Built:
    """The sheets as the files are now.

    `known` are the files of the build before: their states are taken before anything is read, so that a save during
    the build is seen after it.
    """
    states = {path: state(path) for path, _ in known}
    compiled = compile(wanted.file, athletes=wanted.athletes, root=wanted.root, logs=wanted.logs, on=wanted.on)
    problems = list(compiled.diagnostics)
    files = Files(Path(wanted.root) if wanted.root else find_root(Path(wanted.file)))
    dress = look(files, dict(wanted.look), problems)
    pages = () if has_errors(records(problems)) else _pages(compiled.compilations, dress, wanted.on, problems)
    found = records(problems)
    read = {os.path.abspath(wanted.file), *(path for path, _ in (*compiled.dependencies, *files.dependencies))}
    states |= {path: state(path) for path in read if path not in states}
    return Built(() if has_errors(found) else pages, tuple(found), tuple(sorted(states.items())))


def _pages(
    compilations: tuple[Compilation, ...], dress: Look, on: date | None, problems: list[Diagnostic]
) -> tuple[Page, ...]:
    pages: list[Page] = []
    for one in compilations:
        title = f"{one.plan.name}, {one.plan.athlete}" if one.plan.athlete else one.plan.name
        try:
            material = gathered(one.plan, one.promise, log=one.log, on=on)
            pages.append(Page(title, html.page(material, dress).encode()))
        except FaultyTemplateError as faulty:
            problems.append(faulty.diagnostic)
    return tuple(pages)
