"""Options and help that several verbs share."""

from __future__ import annotations

import click

EXAMPLE = "examples/harbour-twelve-weeks/harbour-twelve-weeks.plan"  # a shipped one, for the ends of helps

athlete_option = click.option(
    "--athlete",
    "athletes",
    multiple=True,
    metavar="NAME",
    help="An athlete declared in the files, or a .plan file that declares some. `*` for all. May be given again.",
)

root_option = click.option(
    "--root",
    type=click.Path(),
    metavar="DIR",
    help="The folder that imports must stay in, instead of the one found by itself.",
)


def examples(*lines: str) -> str:
    """The end of a verb's help: commands to try."""
    return "\b\nExample:\n" + "\n".join(f"  {line}" for line in lines)
