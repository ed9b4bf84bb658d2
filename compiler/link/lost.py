"""Unknown names that may only be unknown because a file could not be read.

Comes in: what was found wrong, and the `use` lines that failed. Goes out: the same without
what merely follows from them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import names, progressions
from setwright.link.scopes import Scopes
from setwright.record import replace

_UNKNOWN = (
    names.UNKNOWN_MOVEMENT,
    names.UNKNOWN_MUSCLE,
    names.UNKNOWN_EQUIPMENT,
    names.UNKNOWN_RULES,
    names.UNKNOWN_TEMPLATE,
    progressions.UNKNOWN_PROGRESSION,
)


def without_followers(problems: Iterable[Diagnostic], scopes: Scopes) -> Iterator[Diagnostic]:
    """Names with the prefix of a file that could not be read are left out; others are told where they may stand."""
    for problem in problems:
        if problem.code not in _UNKNOWN:
            yield problem
            continue
        source, name = problem.span.source, problem.span.text
        prefix, point, _ = name.partition(".")
        if point and (source, prefix) in scopes.lost:
            continue
        what = scopes.lost.get((source, None))
        if what is None or (problem.help or "").startswith("Did you mean"):
            yield problem
        else:
            yield replace(problem, help=f"Perhaps it stands in {_quoted(what)}, which could not be read.", fix=None)


def _quoted(what: str) -> str:
    return f"`{what.strip(chr(34))}`"
