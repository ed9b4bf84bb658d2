"""Loads that a repetition model gives only roughly, because the sets are of many repetitions.

Comes in: each load that rests on a model past what it is made for. Goes out: one warning for a plan and an athlete.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import Final

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import athletes as codes
from setwright.quantities import plain
from setwright.record import record, replace
from setwright.science.repetitions import RELIABLE_REPS, Model
from setwright.source import Span
from setwright.suggest import either

OTHERS_SHOWN: Final = 5


@record
class Rough:
    """A load of a movement by a model, the repetitions to failure it was asked for, and where they are written."""

    movement: str
    model: Model
    reps: Fraction
    span: Span


def rough_loads(found: Iterable[Rough], athlete: str, home: str) -> Diagnostic:
    """The warning, at the first of them as written in the file `home`; each movement is told once, at its most.

    There is at least one in `found`.
    """
    every = _by_movement(found, home)
    first, *others = every
    more = len(others) - OTHERS_SHOWN
    names = [each.movement for each in (first, *others[:OTHERS_SHOWN])]
    if more > 0:
        names.append(f"{more} more {'movement' if more == 1 else 'movements'}")
    return codes.MANY_REPETITIONS.at(
        first.span,
        athlete=athlete,
        movements=either(names, "and"),
        models=either(list(dict.fromkeys(each.model.value for each in every)), "and"),
        reps=plain(max(each.reps for each in every)),
        most=RELIABLE_REPS,
        related=tuple(
            Related(each.span, f"{each.movement}: {plain(each.reps)} repetitions to failure by {each.model.value}")
            for each in others[:OTHERS_SHOWN]
        ),
        help="Write the load, a percent or fewer repetitions; or let the effort decide: the sheet prints the range in "
        "which the formulas disagree.",
    )


def _by_movement(found: Iterable[Rough], home: str) -> list[Rough]:
    def place(each: Rough) -> tuple[bool, str, int, int]:
        return each.span.source.path != home, each.span.source.path, each.span.line, each.span.start

    told: dict[str, Rough] = {}
    for each in sorted(found, key=place):
        known = told.setdefault(each.movement, each)
        told[each.movement] = replace(known, reps=max(known.reps, each.reps))
    return list(told.values())
