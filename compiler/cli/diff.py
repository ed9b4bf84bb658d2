"""`setwright diff`: what changes for the athlete, between two files, two git revisions, or as git's own difference."""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING

import click

from setwright.cli.options import athlete_option, examples, root_option
from setwright.cli.sides import Side, asked, compiled_sides
from setwright.cli.terminal import put, wants_colour
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from setwright.report.difference.model import FileDifference

FORMATS = ("text", "markdown", "html", "json")
_COLOURS = {"+": "green", "-": "red", "~": "yellow", "!": "red"}
_CLUB = "examples/island-club-template"
_OF_GIT = (1, 7, 8, 9)  # arguments with which git calls a driver: unmerged, changed, and renamed in two ways


@click.command(epilog=examples(f"setwright diff {_CLUB}/liv-autumn.plan {_CLUB}/henrik-autumn.plan"))
@click.argument("sides", nargs=-1, required=True, metavar="OLD NEW")
@athlete_option
@click.option("--git", is_flag=True, help="OLD NEW are REV FILE (to the file as it is), or REV REV2 FILE.")
@click.option("--format", "form", type=click.Choice(FORMATS), default="text", show_default=True)
@click.option("--exit-code", is_flag=True, help="Exit with 1 where something changes, and with 2 for errors.")
@click.option(
    "--git-driver", is_flag=True, help="Take the arguments that git gives an external diff; write `--` behind it."
)
@root_option
def command(
    sides: tuple[str, ...],
    athletes: tuple[str, ...],
    git: bool,
    form: str,
    exit_code: bool,
    git_driver: bool,
    root: str | None,
) -> None:
    """What changes for the athlete from OLD to NEW: in training terms, not in lines.

    Either may be REV:FILE, a file in a git revision with all that it imports there. Plans of the two files answer to
    each other by name. What only looks different is no change.

    Exit code 0: done. 1: errors in a plan (with --exit-code: something changes). 2: wrong usage (with --exit-code: or
    errors).
    """
    if git_driver or (len(sides) in _OF_GIT and "GIT_DIFF_PATH_COUNTER" in os.environ):
        from setwright.cli.git_driver import told

        put(told(sides, athletes, form, _printed))
        return
    old, new = asked(sides, git)
    with compiled_sides(old, new, athletes, root) as (before, after):
        _tell_errors_or_go_on(before, after, 2 if exit_code else 1)
        for side in (before, after):
            if not side.plans:
                raise Trouble(f"{side.shown}: holds no plan")
        from setwright.report.difference import file_difference

        made = file_difference(before.plans, after.plans)
    put(_printed(made, form))
    sys.exit(1 if exit_code and not made.is_empty else 0)


def _tell_errors_or_go_on(old: Side, new: Side, code: int) -> None:
    """The errors of each side under its name."""
    from setwright.diagnostics import plain
    from setwright.diagnostics.printers import terminal
    from setwright.diagnostics.printers.characters import visible

    wrong = False
    for word, side in (("old", old), ("new", new)):
        errors = side.errors
        if errors:
            wrong = True
            put(f"In the {word} plan, {visible(side.shown)}:\n\n", sys.stderr)
            text = terminal.text(plain.records(errors), colour=wants_colour(sys.stderr))
            put(text.replace(side.prefix, side.shown_prefix) if side.prefix else text, sys.stderr)
    if wrong:
        sys.exit(code)


def _printed(made: FileDifference, form: str) -> str:
    match form:
        case "json":
            from setwright.render.difference.json import json_text

            return json_text(made)
        case "markdown":
            from setwright.render.difference.markdown import markdown_text

            return markdown_text(made)
        case "html":
            from setwright.render.html.difference import page

            return page(made)
        case _:
            return _text(made)


def _text(made: FileDifference) -> str:
    """Headings and rows, indented by block and day; weeks in a column."""
    from setwright.diagnostics.printers.characters import visible, width
    from setwright.render.difference import NO_CHANGE, parts

    colour = wants_colour(sys.stdout)
    lines: list[str] = []
    for part in parts(made):
        indent = "  " * (part.level - 1)
        title = f"{indent}{visible(part.title)}"
        lines += ["", click.style(title, bold=True) if colour else title]
        widest = max((width(row.when) for row in part.rows), default=0)
        for row in part.rows:
            when = row.when + " " * (widest - width(row.when) + 2) if widest else ""
            said = f"{indent}  {row.sign.value} {when}{visible(row.text)}"
            lines.append(click.style(said, fg=_COLOURS[row.sign.value]) if colour else said)
    return "\n".join(lines[1:] or [NO_CHANGE]) + "\n"
