"""Colours of competition discs.

Comes in: a disc's mass. Goes out: the colour that the weightlifting federation's rules give it.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, Final

from setwright.quantities import Mass, Unit

if TYPE_CHECKING:
    from collections.abc import Mapping

# International Weightlifting Federation, technical rules, kilogram discs. Colours repeat, so the mass is the key.
DISC_COLOURS: Final[Mapping[Fraction, str]] = {
    Fraction("25"): "red",
    Fraction("20"): "blue",
    Fraction("15"): "yellow",
    Fraction("10"): "green",
    Fraction("5"): "white",
    Fraction("2.5"): "red",
    Fraction("2"): "blue",
    Fraction("1.5"): "yellow",
    Fraction("1"): "green",
    Fraction("0.5"): "white",
}


def colour_of(mass: Mass) -> str | None:
    """The colour of a kilogram disc of that mass; None for other kilogram discs and for all pound discs."""
    return DISC_COLOURS.get(mass.amount) if mass.unit is Unit.KG else None
