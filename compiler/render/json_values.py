"""What JSON is made of, for every document that is written. Types, and numbers as JSON has them."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TypeAlias

Value: TypeAlias = None | bool | int | float | str | Sequence["Value"] | dict[str, "Value"]
Object: TypeAlias = dict[str, Value]


def number(value: Fraction) -> int | float:
    """A JSON number: whole where it is whole, else with at most six decimals."""
    return value.numerator if value.denominator == 1 else round(float(value), 6)
