"""Quantities as types: masses with their unit, halves that round up, numbers as a coach writes them.

Pure values; everything from the syntax tree to the sheets speaks in these.
"""

from __future__ import annotations

from enum import Enum
from fractions import Fraction
from math import floor

from setwright.record import record

# The international avoirdupois pound, exact since 1959 (NIST SP 811, B.8).
KILOGRAMS_PER_POUND = Fraction(45359237, 100_000_000)


class Unit(Enum):
    """A unit of mass."""

    KG = "kg"
    LB = "lb"


@record
class Mass:
    """A mass in its own unit; conversion is exact."""

    amount: Fraction
    unit: Unit

    def to(self, unit: Unit) -> Mass:
        """The same mass in another unit."""
        if unit is self.unit:
            return self
        factor = KILOGRAMS_PER_POUND if self.unit is Unit.LB else 1 / KILOGRAMS_PER_POUND
        return Mass(self.amount * factor, unit)

    def times(self, factor: Fraction) -> Mass:
        """The mass scaled by a plain number."""
        return Mass(self.amount * factor, self.unit)

    def plus(self, other: Mass) -> Mass:
        """The sum, in this mass's unit."""
        return Mass(self.amount + other.to(self.unit).amount, self.unit)

    def __str__(self) -> str:
        return f"{plain(self.amount)} {self.unit.value}"


def round_half_up(value: Fraction, step: Fraction = Fraction(1)) -> Fraction:
    """The multiple of `step` nearest to `value`; a value halfway goes up."""
    return Fraction(floor(value / step + Fraction(1, 2))) * step


def plain(value: Fraction | int, places: int = 2) -> str:
    """A number as one writes it: no trailing zeros, at most `places` decimals, halves up."""
    # A sheet writes thousands of them: plain integers, since sums of fractions take a hundred times as long.
    over, under = value.numerator, value.denominator
    if under == 1:
        return str(over)
    scale: int = 10**places
    shown = (2 * over * scale + under) // (2 * under)
    whole, decimals = divmod(abs(shown), scale)
    sign = "-" if shown < 0 else ""
    return f"{sign}{whole}.{decimals:0{places}d}".rstrip("0") if decimals else f"{sign}{whole}"
