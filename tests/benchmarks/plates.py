"""What a load costs that discs have to make: the first of a stock, with what is worked out once, and each after it.

The floor is a millisecond a load. Run with Python.
"""

from __future__ import annotations

import random
import statistics
from collections.abc import Callable
from fractions import Fraction

from measuring import seconds

from setwright.quantities import Mass, Unit
from setwright.science.plates import Rack

FLOOR_S = 0.001
STOCKS_EACH = 40
LOADS_EACH = 50

Stock = tuple[tuple[int, Mass], ...]

COMPETITION = ("25", "20", "15", "10", "5", "2.5", "2", "1.5", "1", "0.5")  # the weightlifting federation's ten kinds
GYM = ("20", "15", "10", "5", "2.5", "1.25", "0.5")
POUNDS = ("45", "25", "10", "5", "2.5")


def kilograms(masses: tuple[str, ...], each: int) -> Stock:
    return tuple((each, Mass(Fraction(mass), Unit.KG)) for mass in masses)


def odd(kinds: int, each: int, chance: random.Random) -> Stock:
    """Kinds of unrelated masses, to the gram."""
    return tuple((each, Mass(Fraction(chance.randrange(250, 25_000), 1000), Unit.KG)) for _ in range(kinds))


def mixed() -> Stock:
    return (*kilograms(GYM[:5], 4), *((4, Mass(Fraction(mass), Unit.LB)) for mass in POUNDS))


def main() -> None:
    chance = random.Random(11)
    print(f"medians in ms and as a ratio to {FLOOR_S * 1000:.0f} ms: the first load of a stock, and each after it")
    report("a pair of each of seven kinds", lambda: kilograms(GYM, 2))
    report("ten usual kinds, twenty discs a side", lambda: kilograms(COMPETITION, 4))
    report("ten kinds, kilograms and pounds, twenty discs a side", mixed)
    report("ten odd kinds, twenty discs a side", lambda: odd(10, 4, chance))
    report("five odd kinds, twenty discs a side", lambda: odd(5, 8, chance))
    print("more than is asked for")
    report("ten usual kinds, twenty of each a side", lambda: kilograms(COMPETITION, 40))
    report("twenty-four odd pairs", lambda: odd(24, 2, chance))


def report(name: str, stock: Callable[[], Stock]) -> None:
    """Print what loads of new racks with this stock take; targets are any number of grams between the ends."""
    chance = random.Random(5)
    first: list[float] = []
    later: list[float] = []
    for _ in range(STOCKS_EACH):
        rack = Rack(Mass(Fraction(20), Unit.KG), stock())
        heaviest = 20 + sum(count * mass.to(Unit.KG).amount for count, mass in rack.plates)
        wanted = [
            Mass(Fraction(chance.randrange(20_000, int(heaviest * 1000)), 1000), Unit.KG) for _ in range(LOADS_EACH)
        ]
        taken = [seconds(lambda rack=rack, target=target: rack.nearest(target)) for target in wanted]
        first.append(taken[0])
        later += taken[1:]
    each = [statistics.median(side) for side in (first, later)]
    print(f"  {name:54}" + "".join(f"{side * 1000:9.3f} ms {side / FLOOR_S:6.2f}" for side in each))


if __name__ == "__main__":
    main()
