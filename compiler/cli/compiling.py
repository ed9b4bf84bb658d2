"""Compiling for the verbs that go on with the plan: findings go to standard error, and errors end the run."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

from setwright.cli.findings import compiled, require
from setwright.cli.terminal import put, wants_colour
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from setwright.pipeline import Compilation


def compile_or_exit(path: str, athletes: tuple[str, ...], root: str | None) -> tuple[Compilation, ...]:
    """The plans of the file, at least one, for each athlete; exit code 1 where there are errors."""
    require(path)
    from setwright.diagnostics import plain
    from setwright.diagnostics.printers import terminal

    made = compiled(path, athletes, root)
    found = plain.records(made.diagnostics)
    if found:
        put(terminal.text(found, colour=wants_colour(sys.stderr)), sys.stderr)
    if plain.has_errors(found):
        sys.exit(1)
    if not made.compilations:
        raise Trouble(f"{path}: holds no plan")
    return made.compilations
