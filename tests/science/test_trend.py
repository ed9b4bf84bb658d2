"""The robust trend: against scipy, and what it does with odd days."""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest
from scipy import stats

from setwright.science.trend import robust_trend

# scipy.stats.theilslopes is after Theil 1950 and Sen 1968, its interval with the correction for ties, too.
SAMPLES = {
    "rising": [(0, 100.0), (3, 101.0), (7, 101.5), (10, 103.0), (14, 102.0), (21, 104.5)],
    "falling with ties": [(0, 90.0), (2, 90.0), (4, 88.5), (9, 87.0), (13, 87.0), (20, 85.0), (25, 85.0)],
    "one odd day": [(0, 60.0), (7, 61.0), (14, 20.0), (21, 63.0), (28, 64.0), (35, 65.0)],
    "even": [(0, 70.0), (7, 70.0), (14, 70.0), (21, 70.0), (28, 70.0)],
    "many": [(day, 80 + 0.05 * day + 3 * ((day * 37) % 11) / 11) for day in range(0, 180, 2)],
}


@pytest.mark.parametrize("points", SAMPLES.values(), ids=SAMPLES)
def test_as_scipy_has_it(points: list[tuple[int, float]]) -> None:
    trend = robust_trend([(day, Fraction(value)) for day, value in points])
    assert trend is not None
    days, values = np.array([day for day, _ in points]), np.array([value for _, value in points])
    slope, intercept, low, high = stats.theilslopes(values, days, 0.95)
    assert [float(trend.slope), float(trend.low), float(trend.high)] == pytest.approx([slope, low, high])
    assert float(trend.at(0)) == pytest.approx(intercept)


@pytest.mark.parametrize("confidence", [0.5, 0.9, 0.99])
def test_at_other_confidences(confidence: float) -> None:
    points = SAMPLES["many"]
    trend = robust_trend([(day, Fraction(value)) for day, value in points], confidence)
    assert trend is not None
    _, _, low, high = stats.theilslopes([value for _, value in points], [day for day, _ in points], confidence)
    assert [float(trend.low), float(trend.high)] == pytest.approx([low, high])


def test_one_odd_day_does_not_bend_it() -> None:
    """By hand: five of the six points lie on a line of 1 in 7 days."""
    trend = robust_trend(
        [(0, Fraction(60)), (7, Fraction(61)), (14, Fraction(20)), (21, Fraction(63)), (28, Fraction(64))]
    )
    assert trend is not None
    assert trend.slope == Fraction(1, 7)
    assert trend.at(28) == 61 + Fraction(14, 7)  # through the medians, day 14 and 61


def test_one_day_has_no_trend() -> None:
    assert robust_trend([(3, Fraction(60))]) is None
    assert robust_trend([(3, Fraction(60)), (3, Fraction(61))]) is None
