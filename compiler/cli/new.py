"""`setwright new`: a folder to start from, made of a shipped starter, with an athlete and a log beside it."""

from __future__ import annotations

import os
import re
from importlib.resources import files
from typing import TYPE_CHECKING

import click

from setwright.cli.folder import write_new
from setwright.cli.names import slug
from setwright.cli.options import examples
from setwright.cli.terminal import put, tell
from setwright.cli.trouble import Trouble
from setwright.diagnostics.printers.characters import visible

if TYPE_CHECKING:
    from importlib.resources.abc import Traversable

_FIRST = "three-days-full-body"
_NAME = re.compile(r'^plan ".*"', re.MULTILINE)
_AUTHOR = re.compile(r'^  author ".*"\n', re.MULTILINE)

_ATHLETE = """\
# Who the sheets are for. Only the name must be here; each line tells the compiler more.
# Loads come from the bests, and are rounded to what this bar and these plates make.

use stdlib.exercises

athlete "Noor"
  bodyweight 70 kg
  bar 20 kg
  plates 4x20, 2x15, 2x10, 2x5, 4x2.5, 2x1.25 kg    # how many there are in all; a bar takes pairs
  dumbbells 2-30 kg by 2 kg
  best Back Squat: 90 kg                            # tested
  best Bench Press: 60 kg x 5 @ RPE 9               # or a hard set, from which a best is estimated
  best Deadlift: 110 kg x 3 @ RPE 8
"""

_LOG = """\
# What was done: a session a day, a line a movement, the repetitions of each set.

use stdlib.exercises

session 2027-01-04 Mon
  Back Squat: 65 kg x 5, 5, 5 @ RPE 7
  Bench Press: 45 kg x 8, 8, 7
  note "Replace this session with your own."
"""


@click.command(epilog=examples('setwright new "Harbour Spring" --from three-days-full-body'))
@click.argument("name", required=False)
@click.option("--from", "starter", default=_FIRST, show_default=True, metavar="STARTER", help="What to start from.")
@click.option("--list", "listing", is_flag=True, help="The starters there are.")
@click.option("-o", "--output", metavar="DIR", help="The folder to write; named for the plan unless you say.")
def command(name: str | None, starter: str, listing: bool, output: str | None) -> None:
    """Start me off: a folder with a plan called NAME, an athlete and a log, commented, that compile.

    Nothing is ever overwritten.
    """
    if listing:
        put("".join(f"{one}: {about}\n" for one, about in _listed()))
        return
    if not name or not name.strip():
        raise click.UsageError("Name the plan, or ask for --list.")
    if visible(name) != name:
        raise Trouble("the name of a plan is one line of text that can be seen")
    stem, folder = slug(name), output or slug(name)
    plan = f"{stem}.plan" if stem not in ("athlete", "log") else f"{stem}-plan.plan"
    write_new(folder, {plan: _plan(starter, name.strip()), "athlete.plan": _ATHLETE, "log.plan": _LOG})
    paths = [visible(os.path.join(folder, file)) for file in (plan, "athlete.plan", "log.plan")]
    for path in paths:
        tell(f"wrote {path}")
    tell(f"Now: setwright build {paths[0]} --athlete {paths[1]}")


def starters() -> list[tuple[str, str]]:
    """Name and text of every shipped starter, by name."""
    folder = files("setwright.stdlib").joinpath("templates")
    found = [file for file in folder.iterdir() if file.name.endswith(".plan")]
    return sorted((file.name.removesuffix(".plan"), _read(file)) for file in found)


def _read(file: Traversable) -> str:
    return file.read_text(encoding="utf-8").replace("\r\n", "\n")


def _listed() -> list[tuple[str, str]]:
    """Each starter with the first line of its comment."""
    return [(name, text.split("\n", 1)[0].lstrip("# ")) for name, text in starters()]


def _plan(starter: str, name: str) -> str:
    """The starter's text under the coach's own name."""
    texts = dict(starters())
    text = texts.get(starter.casefold())
    if text is None:
        from setwright.suggest import did_you_mean

        near = did_you_mean(starter, texts) or "`setwright new --list` lists them."
        raise Trouble(f"no starter is called `{starter}`. {near}")
    escaped = name.replace("\\", "\\\\").replace('"', '\\"')
    return _AUTHOR.sub("", _NAME.sub(lambda _: f'plan "{escaped}"', text, count=1), count=1)
