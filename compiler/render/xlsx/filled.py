"""What a log fills into the cells for what was done.

Comes in: the sets of a segment. Goes out: numbers for the cells, as a person would have typed them.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from setwright.log.model import SetDone
from setwright.prescription import Bodyweight, RepsKind, Weight
from setwright.quantities import Mass, Unit
from setwright.record import record
from setwright.render.words import known_mass
from setwright.render.xlsx.rows import Counted


@record
class Filled:
    """The cells of one row; None for those that stay blank. `reps` are all in all, counted once for each side.

    `load` is the mean of the sets, weighted by their repetitions, in the unit of the load beside it, so that what it is
    multiplied by gives what was lifted. `in_words` says that the numbers alone do not tell what was done.
    """

    all: tuple[SetDone, ...] = ()
    sets: int | None = None
    reps: Fraction | None = None
    load: Fraction | None = None
    effort: Fraction | None = None
    in_words: bool = False

    def lifted(self, row: Counted) -> Fraction:
        """Repetitions x load, as the formula beside it works it out; 0 while nothing is filled in."""
        if self.reps is None:
            return Fraction(0)
        asked = known_mass(row.segment)
        load = self.load if self.load is not None else asked.amount if asked is not None else Fraction(0)
        return self.reps * load * row.factor


def filled_in(sets: Sequence[SetDone], row: Counted, unit: Unit) -> Filled:
    """The cells of a row after these sets."""
    if not sets:
        return Filled()
    asked = known_mass(row.segment)
    counted = all(one.reps.kind in (RepsKind.COUNT, RepsKind.CLUSTER) for one in sets)
    sides = 2 if sets[0].reps.per_side else 1
    reps = sum((one.reps.low for one in sets), Fraction(0)) * sides if counted else None
    efforts = [one.effort.high for one in sets if one.effort is not None]
    alike = len({(one.load, one.reps) for one in sets}) == 1
    load = _load(sets, asked.unit if asked is not None else unit)
    return Filled(tuple(sets), len(sets), reps, load, efforts[-1] if efforts else None, not alike or not counted)


def _load(sets: Sequence[SetDone], unit: Unit) -> Fraction | None:
    masses = [_mass(one) for one in sets]
    if any(mass is None for mass in masses):
        return None
    weights = [one.reps.low or Fraction(1) for one in sets]
    total = sum(
        (mass.to(unit).amount * weight for mass, weight in zip(masses, weights, strict=True) if mass), Fraction(0)
    )
    return total / sum(weights)


def _mass(one: SetDone) -> Mass | None:
    match one.load:
        case Weight(mass) | Bodyweight(Mass() as mass):
            return mass
        case _:
            return None
