"""How hard a segment is said to be.

Comes in: a segment. Goes out: an RPE, or nothing where the plan does not say.
"""

from __future__ import annotations

from fractions import Fraction

from setwright.plan import Segment
from setwright.prescription import Effort
from setwright.science.effort import HIGHEST_RPE


def stated_effort(segment: Segment) -> Fraction | None:
    """The top of the RPE a segment asks for; `max` and `5+` without one ask for all there is, RPE 10.

    None for a percent or a load alone: how hard that is depends on the athlete.
    """
    if isinstance(segment.intensity, Effort):
        return segment.intensity.high
    return HIGHEST_RPE if segment.reps.to_failure else None
