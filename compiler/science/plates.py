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
from typing import TYPE_CHECKING, Final, Protocol, TypeAlias

from setwright.quantities import Mass, Unit, round_half_up
from setwright.record import record

if TYPE_CHECKING:
    from collections.abc import Sequence

# More of one kind never fit on one end of a bar; it bounds the work when someone writes absurdly many.
MOST_OF_A_KIND: Final = 20

# Of one half of the kinds. Reached only by many discs of unrelated masses: ten kinds with twenty discs a side stay
# under 900, and of single pairs it takes more than twenty-four kinds. Then the lightest kinds are left aside: the loads
# found can still be made, and stand grams apart.
MOST_SUMS: Final = 4096

# What some discs of one side weigh together, in parts of the unit, and the best way to it, heaviest first.
Sums: TypeAlias = "dict[int, tuple[int, ...]]"


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

    @cached_property
    def lightest(self) -> Loading:
        """The bar with its collars and no discs."""
        return self._loading(0)

    @cached_property
    def heaviest(self) -> Loading:
        """The bar with every pair of discs."""
        return self._loading(sum(max(half) for half in self._halves))

    def nearest(self, target: Mass) -> Loading:
        """The load nearest to `target`, which may be in another unit; of two equally near, the heavier."""
        wanted = self._one_side_of(target)
        below, above = self._around(floor(wanted))
        if below is None or (above is not None and above - wanted <= wanted - below):
            assert above is not None  # an empty side is always there, below or above
            return self._loading(above)
        return self._loading(below)

    def at_most(self, target: Mass) -> Loading:
        """The heaviest load not above `target`; the lightest if all are above."""
        below, _ = self._around(floor(self._one_side_of(target)))
        return self._loading(below or 0)

    # Until a load is chosen, masses on a side are whole numbers of the discs' common fraction: several times faster.
    # All the masses of a side would be too many to work out for one load. The kinds are dealt into two halves, and what
    # lacks is looked for in one half beside each sum of the other: ten kinds with two discs a side, of any masses, have
    # 243 and 243 sums, which come to 59,049 together.

    @cached_property
    def _pairs(self) -> tuple[tuple[Fraction, int], ...]:
        return _pairs(self.plates, self.bar.unit)

    @cached_property
    def _parts(self) -> int:
        return lcm(*(mass.denominator for mass, _ in self._pairs))

    @cached_property
    def _halves(self) -> tuple[Sums, Sums]:
        return _halves([(int(mass * self._parts), count) for mass, count in self._pairs])

    @cached_property
    def _rising(self) -> tuple[int, ...]:
        return tuple(sorted(self._halves[1]))

    @cached_property
    def _empty(self) -> Mass:
        return self.bar if self.collars is None else self.bar.plus(self.collars.times(Fraction(2)))

    def _one_side_of(self, target: Mass) -> Fraction:
        return (target.to(self.bar.unit).amount - self._empty.amount) / 2 * self._parts

    def _around(self, wanted: int) -> tuple[int | None, int | None]:
        """The heaviest side of at most `wanted` and the lightest above it, None where there is none."""
        below = above = None
        rising = self._rising
        for part in self._halves[0]:
            at = bisect_right(rising, wanted - part)
            if at and (below is None or part + rising[at - 1] > below):
                below = part + rising[at - 1]
            if at < len(rising) and (above is None or part + rising[at] < above):
                above = part + rising[at]
            if below == wanted and above == wanted + 1:
                break
        return below, above

    def _loading(self, side: int) -> Loading:
        total = Mass(self._empty.amount + Fraction(2 * side, self._parts), self.bar.unit)
        return Loading(total, tuple(Fraction(disc, self._parts) for disc in _best_way(side, *self._halves)))


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


def _halves(pairs: Sequence[tuple[int, int]]) -> tuple[Sums, Sums]:
    """The sums of some kinds and those of the others, the fewer first; each kind goes to where fewer are."""
    fewer: Sums = {0: ()}
    more: Sums = {0: ()}
    for disc, count in pairs:
        grown = _with_kind(fewer, disc, count)
        if len(grown) > MOST_SUMS:
            break
        fewer, more = (grown, more) if len(grown) <= len(more) else (more, grown)
    return fewer, more


def _with_kind(sums: Sums, disc: int, count: int) -> Sums:
    """The sums that up to `count` discs of one more, lighter kind make; stops once there are too many.

    A bounded subset sum, kind by kind: taking the heaviest that fits each time would miss 20 + 20 for 40 when there is
    a 25.
    """
    found = dict(sums)
    for side, discs in sums.items():
        for number in range(1, count + 1):
            side += disc
            known = found.get(side)
            if known is not None and len(known) < len(discs) + number:
                continue  # before the discs are put together: where many ways lead to a sum, most are longer
            way = discs + (disc,) * number
            if known is None or len(way) < len(known) or way > known:
                found[side] = way
        if len(found) > MOST_SUMS:
            break
    return found


def _best_way(side: int, fewer: Sums, more: Sums) -> tuple[int, ...]:
    """The fewest discs that weigh `side` together, then the heavier ones.

    The best ways of both halves make the best of their pair: discs put to two sets of as many do not change which of
    the two holds more of the heaviest disc that they differ in.
    """
    best: tuple[int, ...] | None = None
    for part, some in fewer.items():
        others = more.get(side - part)
        if others is None or (best is not None and len(some) + len(others) > len(best)):
            continue
        discs = tuple(sorted(some + others, reverse=True))
        if best is None or len(discs) < len(best) or discs > best:
            best = discs
    assert best is not None
    return best
