"""Figures against bounds, and how both are written."""

from fractions import Fraction

import pytest

from setwright.check.bounds import Side, distance, side, written
from setwright.rules import Bound, BoundUnit


def bound(low, high, unit=BoundUnit.NUMBER, strict=False):
    ends = [None if end is None else Fraction(end) for end in (low, high)]
    return Bound(ends[0], ends[1], unit, "as written", strict)


@pytest.mark.parametrize(
    ("low", "high", "strict", "value", "where", "off"),
    [
        (10, 20, False, "10", Side.INSIDE, "0"),
        (10, 20, False, "20", Side.INSIDE, "0"),
        (10, 20, False, "9.5", Side.BELOW, "0.5"),
        (10, 20, False, "23", Side.ABOVE, "3"),
        (None, 20, False, "-4", Side.INSIDE, "0"),
        (10, None, False, "400", Side.INSIDE, "0"),
        (None, 20, True, "20", Side.ABOVE, "0"),
        (10, None, True, "10", Side.BELOW, "0"),
    ],
)
def test_a_value_lies_below_inside_or_above(low, high, strict, value, where, off):
    given = bound(low, high, strict=strict)
    assert (side(Fraction(value), given), distance(Fraction(value), given)) == (where, Fraction(off))


@pytest.mark.parametrize(
    ("values", "limits", "text"),
    [
        ("8", (10, 20), "8"),
        ("9 8 8.5", (10, 20), "8 to 9"),
        ("9 22 8", (10, 20), "8 to 9 and 22"),
        ("20.002", (10, 20), "20.002"),
        ("12.5", (None, 11), "12.5"),
        ("8.5 9", (None, 8, BoundUnit.RPE), "RPE 8.5 to 9"),
        ("24", (48, None, BoundUnit.HOURS), "24 h"),
        ("100/3", (None, 30, BoundUnit.PERCENT), "33.3%"),
        ("75.04", (None, 75, BoundUnit.MINUTES), "75.04 min"),
    ],
)
def test_figures_outside_are_written_with_their_unit_and_never_as_if_they_fitted(values, limits, text):
    assert written([Fraction(value) for value in values.split()], bound(*limits)) == text
