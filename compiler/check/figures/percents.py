"""Which percent of a best a segment is lifted at.

Comes in: a line. Goes out: its work segments with their percent, where one is written or follows from one.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from setwright.plan import Line, Segment
from setwright.prescription import ChangeByPercent, PercentOfBest
from setwright.record import record


@record
class AtPercent:
    """A segment at `percent` (80 for 80%) of the best in `of`, None for the movement's own."""

    segment: Segment
    percent: Fraction
    of: str | None


def shares_of_best(line: Line) -> Iterator[AtPercent]:
    """The segments whose percent is known, in order.

    `90% then -10%` is 10% less than 90%, so 81%. Nothing follows from an effort, a load or a change by a mass.
    """
    before: AtPercent | None = None
    for segment in line.work:
        before = _share(segment, before)
        if before is not None:
            yield before


def _share(segment: Segment, before: AtPercent | None) -> AtPercent | None:
    match segment.intensity:
        case PercentOfBest(percent=percent, of=of):
            return AtPercent(segment, percent, of)
        case ChangeByPercent(percent=change) if before is not None:
            return AtPercent(segment, before.percent * (1 + change / 100), before.of)
        case _:
            return None
