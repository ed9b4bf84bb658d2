"""Options and help that several verbs share."""

from __future__ import annotations

from datetime import date, datetime

import click

EXAMPLE = "examples/harbour-twelve-weeks/harbour-twelve-weeks.plan"  # a shipped one, for the ends of helps

athlete_option = click.option(
    "--athlete",
    "athletes",
    multiple=True,
    metavar="NAME",
    help="An athlete declared in the files, or a .plan file that declares some. `*` for all. May be given again.",
)

log_option = click.option(
    "--log",
    "logs",
    multiple=True,
    type=click.Path(),
    metavar="FILE",
    help="A .plan file with sessions that were done. May be given again.",
)

on_option = click.option(
    "--on",
    type=click.DateTime(["%Y-%m-%d"]),
    metavar="DATE",
    help="The day that counts as today, such as 2027-01-18.",
)

root_option = click.option(
    "--root",
    type=click.Path(),
    metavar="DIR",
    help="The folder that imports must stay in, instead of the one found by itself.",
)


def day(on: datetime | None) -> date:
    """The day that was asked for, else today. The clock is read here alone."""
    return on.date() if on is not None else date.today()


def examples(*lines: str) -> str:
    """The end of a verb's help: commands to try."""
    return "\b\nExample:\n" + "\n".join(f"  {line}" for line in lines)
