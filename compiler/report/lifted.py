"""What the sets of a line lift: repetitions, and the load of each where it is known.

Comes in: a line. Goes out: `Lifted`, a record a work segment.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from setwright.plan import Handling, Line, Segment
from setwright.prescription import Bodyweight, ChangeByMass, ChangeByPercent, Reps, RepsKind, Weight
from setwright.quantities import Mass
from setwright.record import record


@record
class Lifted:
    """Sets that are alike. `repetitions` are those of one set: None for time, distance and `max`.

    `load` is what one repetition lifts, None where nobody knows. `open_ended` says that more repetitions may follow.
    """

    sets: int
    repetitions: Fraction | None
    load: Mass | None
    open_ended: bool


def lifted(line: Line) -> Iterator[Lifted]:
    """The work segments of a line. The conventions (common practice, no source):

    - A range of repetitions is taken at its middle, `5+` as 5, and `/side` is done twice, as for the session's time.
    - Of a pair, one in each hand, a repetition lifts both.
    - Sets at bodyweight, with mass added or taken off, have no known load: how much of a body a movement lifts is not
      known.
    """
    on_body = False
    for segment in line.work:
        if not isinstance(segment.intensity, ChangeByPercent | ChangeByMass):
            on_body = isinstance(segment.intensity, Bodyweight)
        load = None if on_body else _load(segment, line)
        yield Lifted(segment.sets, _repetitions(segment.reps), load, segment.reps.to_failure)


def _repetitions(reps: Reps) -> Fraction | None:
    if not reps.is_repetitions:
        return None
    match reps.kind:
        case RepsKind.CLUSTER:
            once = Fraction(sum(reps.parts))
        case RepsKind.AT_LEAST:
            once = reps.low
        case _:
            once = (reps.low + reps.high) / 2
    return 2 * once if reps.per_side else once


def _load(segment: Segment, line: Line) -> Mass | None:
    if segment.load is not None:
        mass, handling = segment.load.mass, segment.load.handling
    elif isinstance(segment.intensity, Weight):
        mass, handling = segment.intensity.mass, line.movement.handling
    else:
        return None
    return mass.times(Fraction(2)) if handling is Handling.PAIR else mass
