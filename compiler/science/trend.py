"""A straight line through measurements that a few odd days do not bend.

Comes in: pairs of a day and a value. Goes out: a `Trend`, its slope with an interval of confidence.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from math import lcm
from statistics import NormalDist, median
from typing import Final

from setwright.record import record

CONFIDENCE: Final = 0.95


@record
class Trend:
    """A line: `slope` a day, and the two ends of what it may be; it runs through `middle_day` at `middle`."""

    slope: Fraction
    low: Fraction
    high: Fraction
    middle_day: Fraction
    middle: Fraction

    def at(self, day: int) -> Fraction:
        """The line's value on a day."""
        return self.middle + self.slope * (day - self.middle_day)


def robust_trend(points: Sequence[tuple[int, Fraction]], confidence: float = CONFIDENCE) -> Trend | None:
    """The median of the slopes between all pairs of days, through the medians of days and of values.

    The interval holds the true slope in that share of samples. None for fewer than two different days. With n days it
    takes n (n - 1) / 2 slopes, so callers bound n. Source: Theil H. Proc K Ned Akad Wet A 1950;53:386-392; the interval
    after Sen PK. J Am Stat Assoc 1968;63:1379-1389, with the normal approximation for Kendall's S and its correction
    for ties (Kendall MG. Rank Correlation Methods. London: Griffin; 1955).
    """
    slopes = _slopes(points)
    if not slopes:
        return None
    count = len(slopes)
    low, high = _ranks(points, count, confidence)
    middle = (slopes[(count - 1) // 2] + slopes[count // 2]) / 2
    days = [Fraction(day) for day, _ in points]
    return Trend(middle, slopes[low], slopes[high], median(days), median(value for _, value in points))


def _slopes(points: Sequence[tuple[int, Fraction]]) -> _Slopes:
    """Those of all pairs, lowest first: in whole numbers, as fractions of each would take ten times as long."""
    unit = lcm(*(value.denominator for _, value in points))
    whole = [(day, int(value * unit)) for day, value in points]
    rises = [
        (after - before, later - earlier) if later > earlier else (before - after, earlier - later)
        for at, (earlier, before) in enumerate(whole)
        for later, after in whole[at + 1 :]
        if later != earlier
    ]
    return _Slopes(sorted(rises, key=lambda rise: rise[0] / rise[1]), unit)


class _Slopes:
    """Slopes as rises over days, which become fractions when they are asked for."""

    def __init__(self, rises: list[tuple[int, int]], unit: int) -> None:
        self._rises = rises
        self._unit = unit

    def __len__(self) -> int:
        return len(self._rises)

    def __getitem__(self, at: int) -> Fraction:
        rise, days = self._rises[at]
        return Fraction(rise, days * self._unit)


def _ranks(points: Sequence[tuple[int, Fraction]], slopes: int, confidence: float) -> tuple[int, int]:
    """Which of the sorted slopes are the ends of the interval."""
    z = NormalDist().inv_cdf((1 + confidence) / 2)
    spread = z * _variance(points) ** 0.5
    low = max(round((slopes - spread) / 2) - 1, 0)
    high = min(round((slopes + spread) / 2), slopes - 1)
    return low, high


def _variance(points: Sequence[tuple[int, Fraction]]) -> float:
    """Of Kendall's S, with ties in either of the two."""
    ties = [*Counter(day for day, _ in points).values(), *Counter(value for _, value in points).values()]
    return max(0, _sum_of(len(points)) - sum(_sum_of(tie) for tie in ties)) / 18


def _sum_of(count: int) -> int:
    return count * (count - 1) * (2 * count + 5)
