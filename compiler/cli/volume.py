"""`setwright volume`: sets for each muscle, or loads, in each week, as a table, as bars, or for a program."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from setwright.cli.compiling import compile_or_exit
from setwright.cli.options import EXAMPLE, athlete_option, examples, root_option
from setwright.cli.terminal import put
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from setwright.pipeline import Compilation

FORMATS = ("table", "bars", "csv", "json")
FIGURES = ("muscle", "load")


@click.command(
    epilog=examples(
        f"setwright volume {EXAMPLE} --format bars",
        f"setwright volume {EXAMPLE} --by load",
    )
)
@click.argument("file", type=click.Path())
@athlete_option
@click.option(
    "--by",
    type=click.Choice(FIGURES),
    default="muscle",
    show_default=True,
    help="Sets for each muscle; or repetitions, volume load, minutes and the load of sessions.",
)
@click.option("--format", "form", type=click.Choice(FORMATS), default="table", show_default=True)
@root_option
def command(file: str, athletes: tuple[str, ...], by: str, form: str, root: str | None) -> None:
    """How much is that? Sets for each muscle in each week, the most in a session, exposures, rest between.

    With `--by load`: repetitions, volume load and minutes of each week; planned session load, monotony, strain; the
    last 7 days to the last 28. The load of a session is its minutes x the mean RPE that its sets state. That effort is
    a planned stand-in for what an athlete says of the whole session afterwards, and another scale.

    FILE may be `-` for standard input. Sets for muscles are per seven days and count as the plan's rules count them;
    loads are of the plan's weeks as they stand.
    """
    if by == "load" and form == "bars":
        raise Trouble("bars are drawn of sets for muscles; `--by load` comes as `--format table`, `csv` or `json`")
    made = compile_or_exit(file, athletes, root)
    if form == "csv" and len(made) > 1:
        raise Trouble(f"a CSV table holds one plan, and this is {len(made)}; `--format json` takes them all")
    put(_loads(made, form) if by == "load" else _sets(made, form))


def _sets(made: tuple[Compilation, ...], form: str) -> str:
    from setwright.cli import figures as printed
    from setwright.render.csv import volume_text
    from setwright.report.volume import volume

    figures = [(one.plan, volume(one.plan, one.promise)) for one in made]
    match form:
        case "csv":
            return volume_text(figures[0][1])
        case "json":
            return printed.json(figures)
        case "bars":
            return "\n".join(printed.bars(plan, volume) for plan, volume in figures)
        case _:
            return "\n".join(printed.table(plan, volume) for plan, volume in figures)


def _loads(made: tuple[Compilation, ...], form: str) -> str:
    from setwright.cli.load_figures import table
    from setwright.render import load_files
    from setwright.report.load import load_weeks

    figures = [(one.plan, load_weeks(one.plan, one.promise)) for one in made]
    match form:
        case "csv":
            return load_files.csv_text(*figures[0])
        case "json":
            return load_files.json_text(figures)
        case _:
            return "\n".join(table(plan, weeks) for plan, weeks in figures)
