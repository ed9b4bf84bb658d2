"""Does a figure fit a bound, how far is it off, and how are both written.

Comes in: a `Bound` and a number in its unit. Goes out: a side, a distance, words.
"""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum
from fractions import Fraction

from setwright.prescription import Rest
from setwright.quantities import plain
from setwright.rules import Bound, BoundUnit


class Side(Enum):
    """Where a figure lies."""

    BELOW = -1
    INSIDE = 0
    ABOVE = 1


def side(value: Fraction, bound: Bound) -> Side:
    """Where `value` lies; the ends belong to the bound unless it is strict."""
    if bound.low is not None and (value < bound.low or (bound.strict and value == bound.low)):
        return Side.BELOW
    if bound.high is not None and (value > bound.high or (bound.strict and value == bound.high)):
        return Side.ABOVE
    return Side.INSIDE


def fits(value: Fraction, bound: Bound) -> bool:
    """True where `value` lies inside."""
    return side(value, bound) is Side.INSIDE


def distance(value: Fraction, bound: Bound) -> Fraction:
    """How far `value` is outside, in the bound's unit; 0 inside, and 0 on an end that a strict bound leaves out."""
    if bound.low is not None and value < bound.low:
        return bound.low - value
    if bound.high is not None and value > bound.high:
        return value - bound.high
    return Fraction(0)


def written(values: Iterable[Fraction], bound: Bound) -> str:
    """The figures of a breach in words, those under the bound apart from those over it: `8 to 9 and 22`, `RPE 9`."""
    found = list(values)
    sides = ([value for value in found if side(value, bound) is each] for each in Side)
    return with_unit(" and ".join(_stretch(part, bound) for part in sides if part), bound.unit)


def with_unit(number: str, unit: BoundUnit) -> str:
    """A number as the language writes it in that unit."""
    match unit:
        case BoundUnit.NUMBER:
            return number
        case BoundUnit.RPE:
            return f"RPE {number}"
        case BoundUnit.PERCENT:
            return f"{number}%"
        case BoundUnit.MINUTES | BoundUnit.HOURS:
            return f"{number} {unit.value}"


def rest_text(minutes: Fraction) -> str:
    """Minutes as the language writes a rest: `90 s`, `2.5 min`."""
    return str(Rest(minutes * 60, minutes * 60))


def _stretch(values: list[Fraction], bound: Bound) -> str:
    low, high = _number(min(values), bound), _number(max(values), bound)
    return low if low == high else f"{low} to {high}"


def _number(value: Fraction, bound: Bound) -> str:
    # A figure outside must not be rounded to one that looks as if it fitted: 20.02 sets are not "20, outside 10-20".
    fewest = 1 if bound.unit in (BoundUnit.PERCENT, BoundUnit.MINUTES) else 2
    texts = (plain(value, places) for places in range(fewest, 7))
    return next((text for text in texts if side(Fraction(text), bound) is side(value, bound)), plain(value, 7))
