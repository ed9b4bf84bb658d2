"""`setwright check`: every error and every broken rule of the files named."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

import click

from setwright.cli.findings import findings, require
from setwright.cli.options import EXAMPLE, athlete_option, examples, root_option
from setwright.cli.terminal import put, wants_colour

if TYPE_CHECKING:
    from setwright.diagnostics.plain import Record

EVERY_ATHLETE = ("*",)  # the pipeline's word for all that the files declare


@click.command(epilog=examples(f"setwright check {EXAMPLE}"))
@click.argument("files", nargs=-1, required=True, type=click.Path(), metavar="FILE...")
@athlete_option
@click.option(
    "--format", "form", type=click.Choice(["text", "json", "sarif", "github"]), default="text", show_default=True
)
@click.option("--strict", is_flag=True, help="Count warnings as errors.")
@click.option("--no-cache", is_flag=True, help="Compile again even if nothing changed.")
@root_option
def command(
    files: tuple[str, ...], athletes: tuple[str, ...], form: str, strict: bool, no_cache: bool, root: str | None
) -> None:
    """Is it sound? Every error and every broken rule of the FILEs; `-` reads standard input.

    Without --athlete a plan is held against every athlete that its files declare.

    Exit code 0: no errors. 1: errors in a plan. 2: wrong usage.
    """
    from setwright.diagnostics import plain

    for file in files:
        require(file)
    found: list[Record] = []
    for file in dict.fromkeys(files):
        found += findings(file, athletes or EVERY_ATHLETE, root, use_cache=not no_cache)
    found = plain.ordered(plain.strict(found) if strict else found)
    put(_printed(found, form))
    sys.exit(1 if plain.has_errors(found) else 0)


def _printed(found: list[Record], form: str) -> str:
    match form:
        case "json":
            from setwright.diagnostics.printers import json

            return json.text(found)
        case "sarif":
            from setwright import __version__
            from setwright.diagnostics.printers import sarif

            return sarif.text(found, __version__)
        case "github":
            from setwright.diagnostics.printers import github

            return github.text(found)
        case _:
            from setwright.diagnostics.printers import terminal

            return terminal.text(found, colour=wants_colour(sys.stdout))
