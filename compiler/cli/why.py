"""`setwright why`: where the numbers of a line come from, from the written line to the sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from setwright.cli.compiling import tell_or_exit
from setwright.cli.findings import compiled, require
from setwright.cli.options import EXAMPLE, athlete_option, examples, root_option
from setwright.cli.terminal import put
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from setwright.pipeline import Compilation
    from setwright.report.derivation import Derivation, NothingThereError

FORMATS = ("text", "json")


@click.command(
    epilog=examples(
        f'setwright why {EXAMPLE} --week 3 --day Mon "Back Squat"',
        f"setwright why {EXAMPLE} --week 7 --day Tue --athlete examples/harbour-twelve-weeks/runa.plan",
    )
)
@click.argument("file", type=click.Path())
@click.argument("movement", required=False)
@click.option("--week", type=click.IntRange(1), required=True, metavar="N", help="The week of the plan.")
@click.option("--day", required=True, metavar="DAY", help="The day as the plan names it (`Mon`, `3`), or its date.")
@athlete_option
@click.option("--format", "form", type=click.Choice(FORMATS), default="text", show_default=True)
@root_option
def command(
    file: str, movement: str | None, week: int, day: str, athletes: tuple[str, ...], form: str, root: str | None
) -> None:
    """Where does this number come from? Each step from the written line to the number on the sheet, with its place.

    Without MOVEMENT, the whole session. Where an athlete's days or swaps changed it, either name finds it. A movement
    that stands twice in a session is told apart by its label: "Bench Press light". FILE may be `-`.
    """
    found = [(one, _found(one, week, day, movement)) for one in _plans(file, athletes, root)]
    if form == "json":
        from setwright.render.derivation_file import json_text

        put(json_text([(one.plan, lines) for one, lines in found]))
        return
    from setwright.cli.derivations import text

    put("\n".join(text(one.plan, lines) for one, lines in found))


def _plans(file: str, athletes: tuple[str, ...], root: str | None) -> tuple[Compilation, ...]:
    """The plans of the file. Errors end the run; of warnings `check` tells."""
    from setwright.diagnostics import Severity

    require(file)
    made = compiled(file, athletes, root)
    tell_or_exit(problem for problem in made.diagnostics if problem.severity is Severity.ERROR)
    if not made.compilations:
        raise Trouble(f"{file}: holds no plan")
    return made.compilations


def _found(one: Compilation, week: int, day: str, movement: str | None) -> tuple[Derivation, ...]:
    from setwright.report.derivation import NothingThereError, derivations

    try:
        return derivations(one.plan, week, day, movement)
    except NothingThereError as error:
        raise Trouble(_nothing_there(error, one, week)) from error


def _nothing_there(error: NothingThereError, one: Compilation, week: int) -> str:
    from setwright.suggest import did_you_mean, either

    there = either([f"`{name}`" for name in error.there], "and")
    match error.what:
        case "week":
            return f"the plan has no week {error.asked}; its weeks are {error.there[0]} to {error.there[-1]}"
        case "day":
            return f"week {week} has no day `{error.asked}`; it has {there}"
        case _:
            who = f" for {one.plan.athlete}" if one.plan.athlete else ""
            near = did_you_mean(error.asked, error.there)
            other = f"Week {week} has it on {either(error.elsewhere, 'and')}." if error.elsewhere else None
            return f"that session has no `{error.asked}`{who}. {other or near or f'It has {there}.'}"
