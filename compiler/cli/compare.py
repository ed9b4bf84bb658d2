"""`setwright compare`: whole plans side by side, or one plan's week over different numbers of days."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import click

from setwright.cli.compiling import compile_or_exit
from setwright.cli.options import athlete_option, examples, root_option
from setwright.cli.terminal import put
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from setwright.plan import Plan
    from setwright.report.compare import Column, Comparison
    from setwright.rules import Promise

_MOST_DAYS = 7  # to lay over: each day more doubles the ways to lay a line down
_HEADING = 18  # characters of a column's head before it goes on in the next line
_LINE = 100

FORMATS = ("table", "csv", "json", "html")
_CLUB = "examples/island-club-template"
_TEST = "examples/quarry-town-test/quarry-town-test.plan"


@click.command(
    epilog=examples(
        f"setwright compare {_CLUB}/liv-autumn.plan {_CLUB}/henrik-autumn.plan",
        f"setwright compare --spread 2,3,4,5,6 {_TEST}",
    )
)
@click.argument("files", nargs=-1, required=True, type=click.Path(), metavar="FILE...")
@athlete_option
@click.option(
    "--spread",
    metavar="DAYS",
    help="Lay the first working week of one plan over so many days, such as 2,3,4,5,6, and compare those.",
)
@click.option(
    "--ceiling",
    type=click.IntRange(min=1),
    default=10,
    show_default="10, common practice",
    metavar="SETS",
    help="Sets for a muscle in a session past which they are counted apart.",
)
@click.option("--format", "form", type=click.Choice(FORMATS), default="table", show_default=True)
@root_option
def command(
    files: tuple[str, ...], athletes: tuple[str, ...], spread: str | None, ceiling: int, form: str, root: str | None
) -> None:
    """Whole plans side by side: sets, sessions, rest, effort, minutes, broken rules. Figures only.

    Every plan of each FILE is a column; `-` reads standard input. Broken rules are counted and not told: that is what
    `setwright check` does.
    """
    made = [
        (file, one.plan, one.promise)
        for file in dict.fromkeys(files)
        for one in compile_or_exit(file, athletes, root, tell_broken_rules=False)
    ]
    from setwright.report.compare import comparison

    columns = _laid_over(made, spread) if spread is not None else _side_by_side(made)
    put(_printed(comparison(columns, Fraction(ceiling)), form))


def _side_by_side(made: list[tuple[str, Plan, Promise]]) -> tuple[Column, ...]:
    from setwright.report.compare import columns

    if len(made) < 2:
        raise Trouble("one plan has nothing to stand beside; name another file, or lay it over days with `--spread`")
    return columns(made)


def _laid_over(made: list[tuple[str, Plan, Promise]], spread: str) -> tuple[Column, ...]:
    from setwright.report.spread import first_working_week
    from setwright.report.spread import spread as laid_over

    if len(made) > 1:
        raise Trouble(f"`--spread` takes one plan, and these are {len(made)}")
    file, plan, promise = made[0]
    days = _days(spread, min(plan.microcycle, _MOST_DAYS))
    if first_working_week(plan) is None:
        raise Trouble(f"{file}: has no working week with sets to lay over days")
    return laid_over(plan, promise, days, file)


def _days(written: str, most: int) -> tuple[int, ...]:
    """The numbers of days, each once, in the order given."""
    parts = [part.strip() for part in written.split(",")]
    wrong = next((part for part in parts if not (part.isascii() and part.isdigit() and 1 <= int(part) <= most)), None)
    if wrong is not None:
        raise Trouble(f"`--spread {written}`: `{wrong}` is not a number of days from 1 to {most}, such as in 2,3,4")
    return tuple(dict.fromkeys(int(part) for part in parts))


def _printed(made: Comparison, form: str) -> str:
    match form:
        case "csv":
            from setwright.render.comparison_files import csv_text

            return csv_text(made)
        case "json":
            from setwright.render.comparison_files import json_text

            return json_text(made)
        case "html":
            from setwright.render.html.comparison import page

            return page(made)
        case _:
            return _table(made)


def _table(made: Comparison) -> str:
    from textwrap import wrap

    from setwright.cli.figures import aligned
    from setwright.diagnostics.printers.characters import visible
    from setwright.render.comparison import KEY, sections

    heads = _heads(made)
    blank = ("",) * len(made.columns)
    rows: list[tuple[str, ...]] = []
    notes: dict[int, list[str]] = {}  # by the row that they stand above
    for section in sections(made):
        rows += [("", *blank), (section.title, *blank)]
        notes[len(rows)] = wrap(section.note, _LINE, initial_indent="  ", subsequent_indent="  ")
        # Plans are named over every section: the first heads are out of sight by the time the last figures come.
        rows += [("", *line) for line in heads]
        rows += [(f"  {visible(row.title)}", *(cell.text for cell in row.cells)) for row in section.rows]
    lines = [line for at, row in enumerate(aligned(rows)) for line in (*notes.get(at, ()), row)]
    return "\n".join([*wrap(KEY, _LINE), *lines]) + "\n"


def _heads(made: Comparison) -> list[tuple[str, ...]]:
    """The lines of the columns' heads, all as many, the text at the bottom."""
    from textwrap import wrap

    from setwright.diagnostics.printers.characters import visible

    headings = [wrap(visible(column.heading), _HEADING) for column in made.columns]
    height = max(1, *(len(lines) for lines in headings))
    return list(zip(*([""] * (height - len(lines)) + lines for lines in headings), strict=True))
