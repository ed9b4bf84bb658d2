# ruff: noqa: N999 (a verb's file bears its name)
"""`setwright import`: a table of sessions into a log, which is the only thing that ever writes one."""

from __future__ import annotations

import os
import sys

import click

from setwright.cli.compiling import tell_or_exit
from setwright.cli.findings import STDIN, STDIN_SHOWN, require
from setwright.cli.options import examples, root_option
from setwright.cli.terminal import tell
from setwright.cli.trouble import Trouble

TABLE = "examples/mill-club-log/torvi-phone.csv"


@click.command(name="import", epilog=examples(f"setwright import {TABLE} --into torvi-log.plan"))
@click.argument("table", type=click.Path(), metavar="TABLE")
@click.option("--into", "log", required=True, type=click.Path(), metavar="LOG.plan", help="The log to add to.")
@click.option("--athlete-file", type=click.Path(), metavar="FILE", help="Whose log it is, where it begins with this.")
@click.option("--unit", type=click.Choice(["kg", "lb"]), help="The unit of loads that have none.")
@click.option("--dates", type=click.Choice(["day-first", "month-first"]), help="Where the table does not show it.")
@root_option
def command(
    table: str, log: str, athlete_file: str | None, unit: str | None, dates: str | None, root: str | None
) -> None:
    """Take the sessions of a TABLE (CSV) into a log; `-` reads standard input.

    They are put at the end; what is in the log stays as it is, byte for byte, and the old file is kept beside it as
    LOG.plan.before. Sets that are there already are not added again. What cannot be understood becomes a comment.

    Exit code 0: done, with what was not understood on standard error. 1: the table, or the log, cannot be read. 2:
    wrong usage.
    """
    from setwright.cli.importing import imported
    from setwright.cli.keeping import replace_keeping

    require(table)
    _require_plan(log, athlete_file)
    before = _bytes(log) if os.path.lexists(log) else None
    begun = before if before is not None else _begun(log, athlete_file)
    shown = STDIN_SHOWN if table == STDIN else table
    content = sys.stdin.buffer.read() if table == STDIN else _bytes(table)
    done = imported(content, shown, begun, log, root=root, unit=unit, dates=dates)
    if done.after is not None and done.after != begun:
        kept = replace_keeping(log, before, done.after)
        beside = f"; the file as it was is {kept}" if kept else ""
        tell(f"{log}: {_sets(done.sets)} added, {done.known_sets} there already{beside}")
    elif done.after is not None:
        tell(f"{log}: nothing to add, {_sets(done.known_sets)} there already")
    tell_or_exit(done.diagnostics)


def _require_plan(log: str, athlete_file: str | None) -> None:
    if not log.endswith(".plan"):
        raise Trouble(f"{log}: a log's name ends in .plan")
    if os.path.isdir(log):
        raise Trouble(f"{log}: is a folder; name the .plan file in it")
    if athlete_file is None:
        return
    require(athlete_file)
    if os.path.lexists(log):
        raise Trouble(f"{log}: is there already; whose it is, its own `use` line says")


def _begun(log: str, athlete_file: str | None) -> bytes:
    """The first lines of a log that is not there yet."""
    folder = os.path.dirname(os.path.abspath(log))
    if not os.path.isdir(folder):
        raise Trouble(f"{folder}: no such folder")
    lines = "use stdlib.exercises\n"
    if athlete_file is not None:
        from setwright.log.words import quoted

        lines += f"use {quoted(os.path.relpath(athlete_file, folder).replace(os.sep, '/'))}\n"
    return lines.encode()


def _bytes(path: str) -> bytes:
    with open(path, "rb") as file:
        return file.read()


def _sets(count: int) -> str:
    return "1 set" if count == 1 else f"{count} sets"
