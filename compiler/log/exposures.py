"""One exposure as the engine of progressions wants it: what was asked, on the load that was used, and what was done.

Comes in: what a line asked and the sets that were done of it. Goes out: `Asked` and `Done`. The table is in chapter 6
of the reference.
"""

from __future__ import annotations

from fractions import Fraction

from setwright.log.model import Load, SetDone
from setwright.prescription import Bodyweight, Weight
from setwright.progression.engine import Asked, Done
from setwright.quantities import Mass
from setwright.record import replace


def answered(asked: Asked, sets: tuple[SetDone, ...]) -> tuple[Asked, Done]:
    """What was asked, with the load that was really used, and what its sets came to.

    Only the first sets count, as many as were asked. Where they all were done with one load, the line goes on from
    that load. Of the efforts reported the highest counts. Sets in seconds or metres have no repetitions.
    """
    first = sets[: asked.sets]
    counts = asked.reps.is_repetitions
    reps = tuple(one.reps.low if one.reps.is_repetitions or not counts else Fraction(0) for one in first)
    efforts = [one.effort.high for one in first if one.effort is not None]
    return _on_used_load(asked, first), Done(reps, max(efforts, default=None))


def in_words(sets: tuple[SetDone, ...]) -> str:
    """`62.5 kg x 8, 8, 7 @ RPE 9`: sets as an entry writes them; each run of one load and effort by itself."""
    said: list[str] = []
    last: tuple[Load | None, object] | None = None
    for one in sets:
        if (one.load, one.effort) != last:
            said.append((f"{one.load} x " if one.load is not None else "") + str(one.reps))
            last = (one.load, one.effort)
            tail = f" @ {one.effort}" if one.effort is not None else ""
            said[-1] += tail
        else:
            head, at, effort = said[-1].partition(" @ ")
            said[-1] = f"{head}, {one.reps}{at}{effort}"
    return "; ".join(said)


def _on_used_load(asked: Asked, sets: tuple[SetDone, ...]) -> Asked:
    used = {one.load for one in sets}
    load = used.pop() if len(used) == 1 else None
    match asked.intensity, load:
        case Weight(mass=mass), Weight(mass=done):
            return replace(asked, intensity=Weight(done.to(mass.unit), written=done.unit is mass.unit))
        case Bodyweight(added=None), Bodyweight():
            return replace(asked, intensity=load)
        case Bodyweight(added=Mass(unit=unit)), Bodyweight(added=done_with):
            extra = done_with or Mass(Fraction(0), unit)
            return replace(asked, intensity=Bodyweight(extra.to(unit), written=extra.unit is unit))
        case _:
            return asked
