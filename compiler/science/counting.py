"""How much of a set counts for a muscle.

Comes in: a way of counting, and the weight that the movement gives the muscle. Goes out: sets credited.
"""

from __future__ import annotations

from enum import Enum
from fractions import Fraction
from typing import assert_never


class Counting(Enum):
    """A way of counting sets, as compared by Pelland et al. 2024 (SportRxiv preprint). Values are the language's."""

    DIRECT = "direct"
    """Only the prime movers' sets count."""

    FRACTIONAL = "fractional"
    """A set counts as much as the movement's weight for the muscle says (in the paper 1 or 0.5)."""

    TOTAL = "total"
    """Every set that works the muscle at all counts in full."""


def credit(mode: Counting, weight: Fraction) -> Fraction:
    """The sets (0 to 1) that one set of a movement adds for a muscle it works with `weight` (1 for a prime mover)."""
    match mode:
        case Counting.DIRECT:
            return Fraction(weight >= 1)
        case Counting.FRACTIONAL:
            return weight
        case Counting.TOTAL:
            return Fraction(weight > 0)
        case _:
            assert_never(mode)
