"""The options that dress the sheets, for the verbs that print some, and the look they ask for."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

import click

from setwright.cli.compiling import tell_or_exit

if TYPE_CHECKING:
    from setwright.diagnostics import Diagnostic
    from setwright.render.material import Look

_OPTIONS = (
    click.option("--club", metavar="NAME", help="The club's name, over the title."),
    click.option("--logo", metavar="FILE", help="Its logo: PNG, JPEG, WebP, GIF or SVG, put into each sheet."),
    click.option("--colour", metavar="#RRGGBB", help="Its colour, made readable in light and dark."),
    click.option("--language", metavar="TAG", help="The language of the sheets; English by itself."),
    click.option("--template", metavar="FILE.html.j2", help="A template of the club's own for the HTML."),
)


def dress_options(command: Callable[..., Any]) -> Callable[..., Any]:
    """The options by which sheets are dressed; what they leave out, `setwright.toml` may say."""
    for option in reversed(_OPTIONS):
        command = option(command)
    return command


def look_or_exit(file: str, root: str | None, options: dict[str, str | None]) -> Look:
    """The look of the sheets of a plan; exit code 1 where it cannot be had."""
    from pathlib import Path

    from setwright.files import Files, find_root
    from setwright.render.look import look

    problems: list[Diagnostic] = []
    made = look(Files(Path(root) if root else find_root(Path(file))), options, problems)
    tell_or_exit(problems)
    return made
