"""Effort against the scale of Zourdos et al. 2016 (J Strength Cond Res 30(1):267-275)."""

from fractions import Fraction

import pytest

from setwright.science.effort import EFFORT_KEY, LOWEST_RPE, reps_in_reserve, rpe_from_reserve

# RPE 10 is none left, 9 is one "and so forth" (abstract); half points from a clinic's page that reports the scale;
# 9.5, 6 and 5 as numbers are conventions.
SCALE = [
    ("10", "0"),
    ("9.5", "0.5"),
    ("9", "1"),
    ("8.5", "1.5"),
    ("8", "2"),
    ("7.5", "2.5"),
    ("7", "3"),
    ("6", "4"),
    ("5", "5"),
]


@pytest.mark.parametrize(("rpe", "rir"), SCALE)
def test_scale_both_ways(rpe: str, rir: str) -> None:
    assert reps_in_reserve(Fraction(rpe)) == Fraction(rir)
    assert rpe_from_reserve(Fraction(rir)) == Fraction(rpe)


def test_no_count_where_the_scale_has_none() -> None:
    # Under 5 the scale says light or very light effort.
    assert LOWEST_RPE == 5
    for rpe in ("4.5", "3", "1", "10.5"):
        with pytest.raises(ValueError, match=f"not at RPE {Fraction(rpe)}"):
            reps_in_reserve(Fraction(rpe))


def test_many_in_reserve_still_compare() -> None:
    assert rpe_from_reserve(Fraction(6)) < LOWEST_RPE
    with pytest.raises(ValueError, match="fewer than none"):
        rpe_from_reserve(Fraction(-1))


def test_key_covers_the_scale_from_the_top() -> None:
    assert [rpe for rpe, _ in EFFORT_KEY] == [rpe for rpe, _ in SCALE]


@pytest.mark.parametrize(
    ("rpe", "count"), [("9", "One more"), ("8", "Two more"), ("7", "Three more"), ("6", "four"), ("5", "five")]
)
def test_key_says_what_the_arithmetic_does(rpe: str, count: str) -> None:
    assert count in dict(EFFORT_KEY)[rpe]
