"""`setwright build`: the sheets of a plan, a file for each athlete and format, or one of them to standard output."""

from __future__ import annotations

import os
import sys
from datetime import datetime

import click

from setwright.cli.compiling import compile_or_exit
from setwright.cli.dress import dress_options, look_or_exit
from setwright.cli.folder import write_sheets
from setwright.cli.options import athlete_option, day, examples, log_option, on_option, root_option
from setwright.cli.sheets import sheets
from setwright.cli.terminal import put, tell
from setwright.cli.trouble import Trouble
from setwright.diagnostics.printers.characters import visible_lines
from setwright.record import replace
from setwright.render.outputs import OUTPUTS, Output

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
@click.argument("file", type=click.Path())
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
@log_option
@on_option
@click.option("--why", is_flag=True, help="HTML: under each movement, where its numbers come from.")
@dress_options
@root_option
def command(
    file: str,
    athletes: tuple[str, ...],
    formats: tuple[Output, ...],
    week: int | None,
    output: str,
    root: str | None,
    logs: tuple[str, ...],
    on: datetime | None,
    why: bool,
    **dress: str | None,
) -> None:
    """Print it: the sheets of FILE (`-` reads standard input), one file for each athlete and format.

    With a log (sessions in the athlete's own file, or `--log`), what was done stands beside what was asked. Nothing is
    written when the plan has errors, and nothing is overwritten that setwright did not write. A club's name, logo,
    colour, language and template may also stand in `setwright.toml`, under `[sheets]`.
    """
    today = day(on)
    compiled = compile_or_exit(file, athletes, root, logs=logs, on=today)
    if output == STDOUT:
        _require_one(len(compiled), formats)
    made = sheets(compiled, formats, week, replace(look_or_exit(file, root, dress), why=why), today)
    if output == STDOUT:
        (content,) = made.values()
        _to_standard_output(content, formats[0])
        return
    write_sheets(output, made)
    for name in made:
        tell(f"wrote {visible_lines(os.path.join(output, name))}")


def _require_one(plans: int, formats: tuple[Output, ...]) -> None:
    """Standard output takes one sheet, and a terminal only what it can show; said before anything is rendered."""
    if plans != 1 or len(formats) != 1:
        asked = f"{_count(plans, 'sheet')} in {_count(len(formats), 'format')}"
        raise Trouble(f"`-o -` takes one sheet in one format, and this is {asked}")
    if sys.stdout is None:
        raise Trouble("standard output is closed")
    if formats[0].binary and sys.stdout.isatty():
        name = formats[0].name
        raise Trouble(f"a terminal cannot show {name}: write `> sheet.{name}` behind the command, or leave out `-o -`")


def _to_standard_output(content: bytes, form: Output) -> None:
    if sys.stdout.isatty() and not form.binary:
        put(visible_lines(content.decode()))
        return
    sys.stdout.buffer.write(content)
    sys.stdout.buffer.flush()


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}{'' if number == 1 else 's'}"
