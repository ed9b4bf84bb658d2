"""How many lifts of one movement a session holds, by zone of the best.

Comes in: a percent of the best, a number of lifts. Goes out: the zone of the published table, the place in its range.

The table is of competitive weightlifting, for one lift in one session. Closest to its origin: Laputin NP, Oleshko VG.
Managing the Training of Weightlifters. Kiev; 1982 ("3-6 reps/set at 70% (12-24 total)", read in a summary). It is
printed with two sets of borders: 55-65, 70-75, 80-85 and over 90, which leaves gaps; and under 70, 70-79, 80-89 and 90
and over, which is taken here, from each border up to the next, so that 79.5% is in the second zone. The counts are the
same in both.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from setwright.record import record


@record
class Zone:
    """One row of the table: percents of the best from `low` up to but without `high` (None: no end), and its counts."""

    low: int
    high: int | None
    reps_of_a_set: tuple[int, int]
    optimal: int
    fewest: int
    most: int

    def __str__(self) -> str:
        if self.high is None:
            return f"{self.low}% and over"
        return f"{self.low}-{self.high}%" if self.low else f"under {self.high}%"


ZONES: Final = (
    Zone(0, 70, (3, 6), 24, 18, 30),
    Zone(70, 80, (3, 6), 18, 12, 24),
    Zone(80, 90, (2, 4), 15, 10, 20),
    Zone(90, None, (1, 2), 7, 4, 10),
)


def zone_of(percent: Fraction) -> Zone:
    """The zone that a percent of the best (80 for 80%) lies in. Raises `ValueError` below 0."""
    if percent < 0:
        raise ValueError(f"no zone holds {percent}%")
    return next(zone for zone in ZONES if zone.high is None or percent < zone.high)


def place_in_range(zone: Zone, lifts: Fraction) -> Fraction:
    """Where a number of lifts lies between the zone's fewest (0) and its most (1); the optimal number is at 1/2.

    Below 0 and above 1 outside the range.
    """
    return (lifts - zone.fewest) / (zone.most - zone.fewest)
