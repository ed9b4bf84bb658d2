"""Compiling for the verbs that go on with the plan: findings go to standard error, and errors end the run."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

from setwright.cli.findings import compiled, require
from setwright.cli.terminal import put, wants_colour
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from setwright.diagnostics import Diagnostic
    from setwright.pipeline import Compilation


def compile_or_exit(
    path: str, athletes: tuple[str, ...], root: str | None, *, tell_broken_rules: bool = True
) -> tuple[Compilation, ...]:
    """The plans of the file, at least one, for each athlete; exit code 1 where there are errors.

    Broken rules that are not told do not end the run either: the verb counts them itself.
    """
    require(path)
    from setwright.diagnostics import plain
    from setwright.diagnostics.printers import terminal

    made = compiled(path, athletes, root)
    told = made.diagnostics if tell_broken_rules else _without_broken_rules(made.diagnostics)
    found = plain.records(told)
    if found:
        put(terminal.text(found, colour=wants_colour(sys.stderr)), sys.stderr)
    if plain.has_errors(found):
        sys.exit(1)
    if not made.compilations:
        raise Trouble(f"{path}: holds no plan")
    return made.compilations


def _without_broken_rules(found: tuple[Diagnostic, ...]) -> tuple[Diagnostic, ...]:
    from setwright.check.measures import MEASURES

    broken = {measure.code.number for measure in MEASURES}
    return tuple(diagnostic for diagnostic in found if diagnostic.code.number not in broken)
