"""Which loads equipment can make, and with which discs.

Comes in: a bar with its discs, a row of dumbbells or an equal step, and a wanted mass. Goes out: the load to use.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import floor, lcm
from typing import TYPE_CHECKING, Final, Protocol

from setwright.quantities import Mass, Unit, round_half_up
from setwright.record import record

if TYPE_CHECKING:
    from collections.abc import Sequence

# More of one kind never fit on one end of a bar; it bounds the work when someone writes absurdly many.
MOST_OF_A_KIND: Final = 20

# Reached only by many discs of unrelated masses. Then the lightest kinds are left aside: the loads found can still be
# made, and stand grams apart.
MOST_LOADS: Final = 100_000


@record
class Loading:
    """A load that can be made: its whole mass, and for a bar the discs on one side.

    `per_side` is in the total's unit, heaviest first; empty for an empty bar and for what takes no discs.
    """

    total: Mass
    per_side: tuple[Fraction, ...] = ()


class LoadMaker(Protocol):
    """Anything that makes some loads and not others."""

    def nearest(self, target: Mass) -> Loading:
        """The load nearest to `target`, which may be in another unit; of two equally near, the heavier."""

    def at_most(self, target: Mass) -> Loading:
        """The heaviest load not above `target`; if all are above, the lightest."""


@dataclass(frozen=True)
class Rack:
    """A bar and the discs there are for it.

    `plates` counts single discs; both sides are loaded alike, so an odd one stays on the floor. `collars` is the mass
    of one collar, of which each side gets one. Masses are above zero; discs and collars in another unit than the bar's
    are converted exactly, and loads are in the bar's unit. Of several ways to a load, the one with the fewest
    discs is taken, then the one with the heavier discs. Exact for any ten kinds and twenty discs a side, and for larger
    stocks of the usual masses.
    """

    bar: Mass
    plates: tuple[tuple[int, Mass], ...]
    collars: Mass | None = None

    @property
    def lightest(self) -> Loading:
        """The bar with its collars and no discs."""
        return self._loading(0)

    @property
    def heaviest(self) -> Loading:
        """The bar with every pair of discs."""
        return self._loading(-1)

    def nearest(self, target: Mass) -> Loading:
        """The load nearest to `target`, which may be in another unit; of two equally near, the heavier."""
        return self._loading(_nearest(self._rising, self._one_side_of(target)))

    def at_most(self, target: Mass) -> Loading:
        """The heaviest load not above `target`; the lightest if all are above."""
        return self._loading(_at_most(self._rising, self._one_side_of(target)))

    # Until a load is chosen, masses on a side are whole numbers of the discs' common fraction: several times faster.

    @cached_property
    def _pairs(self) -> tuple[tuple[Fraction, int], ...]:
        return _pairs(self.plates, self.bar.unit)

    @cached_property
    def _parts(self) -> int:
        return lcm(*(mass.denominator for mass, _ in self._pairs))

    @cached_property
    def _sides(self) -> dict[int, tuple[int, ...]]:
        return _sides([(int(mass * self._parts), count) for mass, count in self._pairs])

    @cached_property
    def _rising(self) -> tuple[int, ...]:
        return tuple(sorted(self._sides))

    @cached_property
    def _empty(self) -> Mass:
        return self.bar if self.collars is None else self.bar.plus(self.collars.times(Fraction(2)))

    def _one_side_of(self, target: Mass) -> Fraction:
        return (target.to(self.bar.unit).amount - self._empty.amount) / 2 * self._parts

    def _loading(self, index: int) -> Loading:
        side = self._rising[index]
        total = Mass(self._empty.amount + Fraction(2 * side, self._parts), self.bar.unit)
        return Loading(total, tuple(Fraction(disc, self._parts) for disc in self._sides[side]))


@dataclass(frozen=True)
class Series:
    """Loads that stand ready, like a row of dumbbells, in any order and unit.

    Raises `ValueError` when there are none.
    """

    values: tuple[Mass, ...]

    def __post_init__(self) -> None:
        if not self.values:
            raise ValueError("a series of loads holds at least one")

    @property
    def lightest(self) -> Loading:
        """The lightest that stands there."""
        return Loading(self._rising[0])

    @property
    def heaviest(self) -> Loading:
        """The heaviest that stands there."""
        return Loading(self._rising[-1])

    def nearest(self, target: Mass) -> Loading:
        """The load nearest to `target`, which may be in another unit; of two equally near, the heavier."""
        return Loading(self._rising[_nearest(self._kilograms, target.to(Unit.KG).amount)])

    def at_most(self, target: Mass) -> Loading:
        """The heaviest load not above `target`; the lightest if all are above."""
        return Loading(self._rising[_at_most(self._kilograms, target.to(Unit.KG).amount)])

    @cached_property
    def _rising(self) -> tuple[Mass, ...]:
        return tuple(sorted(self.values, key=lambda mass: mass.to(Unit.KG).amount))

    @cached_property
    def _kilograms(self) -> tuple[Fraction, ...]:
        return tuple(mass.to(Unit.KG).amount for mass in self._rising)


@record
class Stepped:
    """Every multiple of a step (above zero), none included: a stack, or equipment nobody described."""

    step: Mass

    def nearest(self, target: Mass) -> Loading:
        """The multiple nearest to `target`, in the step's unit; halves go up."""
        unit = self.step.unit
        return Loading(Mass(round_half_up(target.to(unit).amount, self.step.amount), unit))

    def at_most(self, target: Mass) -> Loading:
        """The greatest multiple not above `target`, in the step's unit."""
        unit = self.step.unit
        return Loading(Mass(floor(target.to(unit).amount / self.step.amount) * self.step.amount, unit))


def usual_steps(unit: Unit) -> Stepped:
    """The steps taken when nobody said what there is: 2.5 kg or 5 lb (common practice, no source)."""
    return Stepped(Mass(Fraction("2.5"), unit) if unit is Unit.KG else Mass(Fraction(5), unit))


def _nearest(rising: Sequence[int] | Sequence[Fraction], wanted: Fraction) -> int:
    above = bisect_left(rising, wanted)
    if above == len(rising):
        return above - 1
    if above > 0 and wanted - rising[above - 1] < rising[above] - wanted:
        return above - 1
    return above


def _at_most(rising: Sequence[int] | Sequence[Fraction], wanted: Fraction) -> int:
    return max(0, bisect_right(rising, wanted) - 1)


def _pairs(plates: tuple[tuple[int, Mass], ...], unit: Unit) -> tuple[tuple[Fraction, int], ...]:
    """Each kind of disc once, heaviest first, with how many go on one side."""
    singles: Counter[Fraction] = Counter()
    for count, mass in plates:
        singles[mass.to(unit).amount] += count
    return tuple((mass, min(count // 2, MOST_OF_A_KIND)) for mass, count in sorted(singles.items(), reverse=True))


def _sides(pairs: Sequence[tuple[int, int]]) -> dict[int, tuple[int, ...]]:
    """Every mass that one side can have, with the discs for it.

    A bounded subset sum, kind by kind: taking the heaviest that fits each time would miss 20 + 20 for 40 when there
    is a 25.
    """
    sides: dict[int, tuple[int, ...]] = {0: ()}
    for disc, count in pairs:
        more = _with_kind(sides, disc, count)
        if len(more) > MOST_LOADS:
            break
        sides = more
    return sides


def _with_kind(sides: dict[int, tuple[int, ...]], disc: int, count: int) -> dict[int, tuple[int, ...]]:
    """The sides that up to `count` discs of one more, lighter kind make; stops once there are too many."""
    found = dict(sides)
    for side, discs in sides.items():
        for number in range(1, count + 1):
            _keep_better(found, side + number * disc, discs + (disc,) * number)
        if len(found) > MOST_LOADS:
            break
    return found


def _keep_better(found: dict[int, tuple[int, ...]], side: int, discs: tuple[int, ...]) -> None:
    known = found.get(side)
    if known is None or (-len(discs), discs) > (-len(known), known):
        found[side] = discs
