"""Compiling for the verbs that go on with the plan: findings go to standard error, and errors end the run."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

from setwright.cli.findings import compiled, require
from setwright.cli.terminal import put, wants_colour
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from collections.abc import Iterable
    from datetime import date

    from setwright.diagnostics import Diagnostic
    from setwright.pipeline import Compilation


def compile_or_exit(
    path: str,
    athletes: tuple[str, ...],
    root: str | None,
    *,
    tell_broken_rules: bool = True,
    logs: tuple[str, ...] = (),
    on: date | None = None,
) -> tuple[Compilation, ...]:
    """The plans of the file, at least one, for each athlete; exit code 1 where there are errors.

    With `logs`, the day `on` says what is over. Broken rules that are not told do not end the run either: the verb
    counts them itself.
    """
    require(path)
    for log in logs:
        require(log)
    made = compiled(path, athletes, root, logs, on)
    tell_or_exit(made.diagnostics if tell_broken_rules else _without_broken_rules(made.diagnostics))
    if not made.compilations:
        raise Trouble(f"{path}: holds no plan")
    return made.compilations


def tell_or_exit(diagnostics: Iterable[Diagnostic]) -> None:
    """Findings to standard error; exit code 1 where there are errors."""
    from setwright.diagnostics import plain
    from setwright.diagnostics.printers import terminal

    found = plain.records(diagnostics)
    if found:
        put(terminal.text(found, colour=wants_colour(sys.stderr)), sys.stderr)
    if plain.has_errors(found):
        sys.exit(1)


def _without_broken_rules(found: tuple[Diagnostic, ...]) -> tuple[Diagnostic, ...]:
    from setwright.check.measures import MEASURES

    broken = {measure.code.number for measure in MEASURES}
    return tuple(diagnostic for diagnostic in found if diagnostic.code.number not in broken)
