"""`setwright log`: how it is going, for one athlete, or for a whole folder of them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from setwright.cli.compiling import compile_or_exit
from setwright.cli.options import athlete_option, day, examples, log_option, on_option, root_option
from setwright.cli.terminal import put
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from datetime import datetime

    from setwright.report.adherence import Adherence

FORMATS = ("table", "html", "csv", "json")
_CLUB = "examples/mill-club-log"


@click.command(
    epilog=examples(
        f"setwright log {_CLUB}/mill-evenings.plan --athlete {_CLUB}/torvi.plan --on 2027-01-28",
        f"setwright log --roster {_CLUB} --on 2027-01-28",
    )
)
@click.argument("file", type=click.Path(), required=False)
@log_option
@athlete_option
@click.option("--roster", type=click.Path(), metavar="DIR", help="A line for every athlete of a club's folder.")
@on_option
@click.option("--format", "form", type=click.Choice(FORMATS), default="table", show_default=True)
@root_option
def command(
    file: str | None,
    logs: tuple[str, ...],
    athletes: tuple[str, ...],
    roster: str | None,
    on: datetime | None,
    form: str,
    root: str | None,
) -> None:
    """How is it going? Done beside planned: sessions, sets for muscles, effort, session load, bests, what comes next.

    Sessions in an athlete's own file are read with the athlete; others are named with `--log`. With `--roster`, the
    morning list of a folder: who has a session today, how many each is behind, effort, and rules that were not kept.
    There an athlete follows the plan of FILE, else the plans of their own file or of a file that it uses, else the
    only plan file of the folder.
    """
    if roster is not None:
        _tell_roster(roster, file, on, form, root)
        return
    if file is None:
        raise Trouble("`log` takes a plan's file, or a folder with `--roster`")
    from setwright.report.adherence import adherence

    today = day(on)
    made = compile_or_exit(file, athletes, root, tell_broken_rules=False, logs=logs, on=today)
    put(_printed(tuple(adherence(one.plan, one.promise, one.log, today) for one in made), form))


def _printed(figures: tuple[Adherence, ...], form: str) -> str:
    match form:
        case "csv":
            from setwright.render.adherence_files import csv_text

            return csv_text(figures)
        case "json":
            from setwright.render.adherence_files import json_text

            return json_text(figures)
        case "html":
            from setwright.render.html.adherence import page

            return page(figures)
        case _:
            from setwright.cli.log_figures import text

            return "\n".join(text(one) for one in figures)


def _tell_roster(folder: str, file: str | None, on: datetime | None, form: str, root: str | None) -> None:
    import sys

    from setwright.cli.roster import morning

    if form not in ("table", "csv"):
        raise Trouble(f"a roster comes as `--format table` or `csv`, not as {form}")
    if not morning(folder, file, day(on), form, root):
        sys.exit(1)
