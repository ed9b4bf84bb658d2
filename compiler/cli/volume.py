"""`setwright volume`: sets for each muscle in each week, as a table, as bars, or for a program."""

from __future__ import annotations

import click

from setwright.cli.compiling import compile_or_exit
from setwright.cli.options import EXAMPLE, athlete_option, examples, root_option
from setwright.cli.terminal import put
from setwright.cli.trouble import Trouble

FORMATS = ("table", "bars", "csv", "json")


@click.command(epilog=examples(f"setwright volume {EXAMPLE} --format bars"))
@click.argument("file")
@athlete_option
@click.option("--format", "form", type=click.Choice(FORMATS), default="table", show_default=True)
@root_option
def command(file: str, athletes: tuple[str, ...], form: str, root: str | None) -> None:
    """How much is that? Sets for each muscle in each week, the most in a session, exposures, rest between.

    FILE may be `-` for standard input. A week is seven days; sets count as the plan's rules count them.
    """
    from setwright.report.volume import volume

    figures = [(one.plan, volume(one.plan, one.promise)) for one in compile_or_exit(file, athletes, root)]
    if form == "csv":
        from setwright.render.csv import volume_text

        if len(figures) > 1:
            raise Trouble(f"a CSV table holds one plan, and this is {len(figures)}; `--format json` takes them all")
        put(volume_text(figures[0][1]))
        return
    from setwright.cli import figures as printed

    match form:
        case "json":
            put(printed.json(figures))
        case "bars":
            put("\n".join(printed.bars(plan, volume) for plan, volume in figures))
        case _:
            put("\n".join(printed.table(plan, volume) for plan, volume in figures))
