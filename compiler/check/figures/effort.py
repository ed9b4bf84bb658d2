"""How hard a segment is said to be.

Comes in: a segment. Goes out: an RPE, or nothing where the plan does not say or a deload made it untrue.
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


def known_effort(segment: Segment) -> Fraction | None:
    """The stated effort where the load still answers it; None where a deload made the load a share of that effort's."""
    return None if is_scaled(segment) else stated_effort(segment)


def is_scaled(segment: Segment) -> bool:
    """True where a deload scaled the load of an effort that it left as it was: the sets are easier than they say.

    An effort that the deload lowered too is what it asks for, with the scaled load as a ceiling.
    """
    return isinstance(segment.intensity, Effort) and segment.load_factor < 1 and segment.effort_before is None
