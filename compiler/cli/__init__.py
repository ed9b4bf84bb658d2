"""The command `setwright`: a table of verbs, each in a file of its own that is imported when it is asked for.

Comes in: the command line. Goes out: exit code 0 (clean), 1 (errors in a plan), 2 (wrong usage), and never a traceback.
"""

from __future__ import annotations

from importlib import import_module
from typing import NamedTuple

import click

from setwright import __version__
from setwright.cli.trouble import Trouble, as_trouble


class Verb(NamedTuple):
    """A verb and the question it answers."""

    name: str
    answers: str


VERBS = (
    Verb("new", "Start a plan: a folder with a plan, an athlete and a log that compile."),
    Verb("check", "Is it sound? Every error and every broken rule."),
    Verb("build", "Print the sheets: for screen, paper, spreadsheet or calendar."),
    Verb("next", "Today's or the next session alone."),
    Verb("import", "Take a table of sessions (CSV) into a log."),
    Verb("export", "A log as a table (CSV)."),
    Verb("volume", "Sets for each muscle in each week, exposures, rest between; or loads."),
    Verb("compare", "Whole plans side by side, or one week's work over different numbers of days."),
    Verb("watch", "Build on save, and keep the newest sheet open in a browser."),
    Verb("why", "Where does this number come from? From the written line to the sheet."),
    Verb("diff", "What changes for the athlete, between two files or two git revisions."),
    Verb("fmt", "One style for every file; comments stay."),
    Verb("log", "How is it going? Done beside planned, for one athlete or a whole club."),
    Verb("library", "Search movements, muscles, equipment, rules and templates."),
    Verb("lsp", "The language server that editors start."),
    Verb("explain", "The long text of a diagnostic, with an example put right."),
)


def main() -> None:
    """The console script."""
    command(prog_name="setwright")


class _Verbs(click.Group):
    """A group that imports a verb's module only when that verb is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return [verb.name for verb in VERBS]

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if not any(verb.name == cmd_name for verb in VERBS):
            return None
        found = import_module(f"setwright.cli.{cmd_name}").command
        assert isinstance(found, click.Command)
        return found

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        try:
            return super().resolve_command(ctx, args)
        except click.UsageError:
            from setwright.suggest import did_you_mean

            near = did_you_mean(args[0], (verb.name for verb in VERBS))
            if near is None:
                raise
            raise Trouble(f"there is no verb `{args[0]}`. {near}") from None

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Verbs"):
            formatter.write_dl([(verb.name, verb.answers) for verb in VERBS])

    def invoke(self, ctx: click.Context) -> object:
        try:
            return super().invoke(ctx)
        except Exception as error:
            raise as_trouble(error) from error


@click.group(
    cls=_Verbs,
    context_settings={"help_option_names": ["-h", "--help"]},
    epilog="Example: setwright check examples/*/*.plan",
)
@click.version_option(version=__version__, message="setwright %(version)s")
def command() -> None:
    """Strength-training plans as plain text: check them, count them, print them."""
