"""`setwright build`: the sheets of a plan, a file for each athlete and format, or one of them to standard output."""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING

import click

from setwright.cli.compiling import compile_or_exit
from setwright.cli.folder import write_sheets
from setwright.cli.names import stems
from setwright.cli.options import athlete_option, examples, root_option
from setwright.cli.terminal import put, tell
from setwright.cli.trouble import Trouble
from setwright.diagnostics.printers.characters import visible_lines
from setwright.record import replace
from setwright.render.outputs import OUTPUTS, Output

if TYPE_CHECKING:
    from setwright.pipeline import Compilation
    from setwright.plan import Plan
    from setwright.render.material import Material
    from setwright.report.overview import WeekSummary
    from setwright.report.volume import Volume

STDOUT = "-"


def _formats(_ctx: click.Context, _param: click.Parameter, given: tuple[str, ...]) -> tuple[Output, ...]:
    """Formats by name, each once, in the order given."""
    known = {output.name: output for output in OUTPUTS}
    names = dict.fromkeys(name.strip() for value in given for name in value.split(","))
    for name in names:
        if name not in known:
            raise click.BadParameter(f"{name!r} is not one of {', '.join(known)}.")
    return tuple(known[name] for name in names)


@click.command(
    epilog=examples(
        "setwright build examples/harbour-twelve-weeks/harbour-twelve-weeks.plan --format html,csv -o sheets"
    )
)
@click.argument("file")
@athlete_option
@click.option(
    "--format",
    "formats",
    callback=_formats,
    multiple=True,
    default=("html",),
    metavar="FORMAT",
    help=f"{', '.join(output.name for output in OUTPUTS)}; html by itself; several with commas, or given again.",
)
@click.option("--week", type=click.IntRange(1), metavar="N", help="Only this week of the plan.")
@click.option(
    "-o", "--output", default="sheets", show_default=True, metavar="DIR", help="Where to; `-` is standard output."
)
@root_option
def command(
    file: str,
    athletes: tuple[str, ...],
    formats: tuple[Output, ...],
    week: int | None,
    output: str,
    root: str | None,
) -> None:
    """Print it: the sheets of FILE (`-` reads standard input), one file for each athlete and format.

    Nothing is written when the plan has errors, and nothing is overwritten that setwright did not write.
    """
    compiled = compile_or_exit(file, athletes, root)
    if output == STDOUT:
        _to_standard_output(compiled, formats, week)
        return
    sheets = _sheets(compiled, formats, week)
    write_sheets(output, sheets)
    for name in sheets:
        tell(f"wrote {visible_lines(os.path.join(output, name))}")


def _to_standard_output(compiled: tuple[Compilation, ...], formats: tuple[Output, ...], week: int | None) -> None:
    if len(compiled) != 1 or len(formats) != 1:
        asked = f"{_count(len(compiled), 'sheet')} in {_count(len(formats), 'format')}"
        raise Trouble(f"`-o -` takes one sheet in one format, and this is {asked}")
    content = _rendered(compiled[0], formats, week)[formats[0].name]
    if sys.stdout is None:
        raise Trouble("standard output is closed")
    if sys.stdout.isatty():
        put(visible_lines(content.decode()))
        return
    sys.stdout.buffer.write(content)
    sys.stdout.buffer.flush()


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}{'' if number == 1 else 's'}"


def _sheets(compiled: tuple[Compilation, ...], formats: tuple[Output, ...], week: int | None) -> dict[str, bytes]:
    """File names and contents, all of them made before any is written."""
    suffix = f"week {week}" if week else None
    names = stems((one.plan.name, one.plan.athlete, suffix) for one in compiled)
    return {
        f"{name}.{form}": content
        for name, one in zip(names, compiled, strict=True)
        for form, content in _rendered(one, formats, week).items()
    }


def _rendered(compilation: Compilation, formats: tuple[Output, ...], week: int | None) -> dict[str, bytes]:
    from setwright.render.material import PLAIN
    from setwright.render.outputs import MissingExtraError, rendered

    material = _material(compilation, week)
    try:
        return {form.name: rendered(form, material, PLAIN) for form in formats}
    except MissingExtraError as missing:
        extra = missing.output.extra
        raise Trouble(f"`--format {missing.output.name}` needs `pip install 'setwright[{extra}]'`") from missing


def _material(compilation: Compilation, week: int | None) -> Material:
    from setwright.render.material import Material
    from setwright.report.overview import overview
    from setwright.report.volume import volume

    plan = compilation.plan
    figures = volume(plan, compilation.promise)
    summaries = overview(plan)
    if week:
        plan, figures, summaries = _only_week(week, plan, figures, summaries)
    return Material(plan, figures, summaries, compilation.promise)


def _only_week(
    number: int, plan: Plan, figures: Volume, summaries: tuple[WeekSummary, ...]
) -> tuple[Plan, Volume, tuple[WeekSummary, ...]]:
    """One week of each, with its figures as they are in the whole plan."""
    from setwright.report.volume import Volume

    weeks = tuple(week for week in plan.weeks if week.number == number)
    if not weeks:
        raise Trouble(f"there is no week {number}: {plan.name} has {_count(len(plan.weeks), 'week')}")
    return (
        replace(plan, weeks=weeks, blocks=tuple(b for b in plan.blocks if b.first_week <= number <= b.last_week)),
        Volume(tuple(row for row in figures.rows if row.week == number)),
        tuple(summary for summary in summaries if summary.number == number),
    )
