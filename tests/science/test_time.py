"""Durations of sets and lines."""

from fractions import Fraction

import pytest

from setwright.science.time import DEFAULT_REST_S, Phases, line_seconds, repetition_seconds, set_seconds


@pytest.mark.parametrize(
    ("reps", "tempo", "seconds"),
    [  # arithmetic on tempos that research writes (2/0/2/0, 5/0/3/0, 6/0/4/0: PMC6006544)
        (8, (3, 1, 1, 0), 40),
        (10, (2, 0, 2, 0), 40),
        (6, (5, 0, 3, 0), 48),
        (5, (6, 0, 4, 0), 50),
        (5, (2, 0, None, 0), 15),  # 2/0/X/0 (jssm.org 18-191); X as one second: common practice, no source
    ],
)
def test_time_under_load(reps: int, tempo: Phases, seconds: int) -> None:
    assert set_seconds(Fraction(reps), tempo) == seconds


def test_without_a_tempo() -> None:
    # Four seconds a repetition: common practice, no source.
    assert repetition_seconds() == 4
    assert set_seconds(Fraction("8.5")) == 34


def test_the_last_rest_is_not_counted() -> None:
    # By arithmetic, 4 x 8 at 3-1-1-0 with 120 s: 160 s of work and 3 rests; a fourth rest would make 640.
    assert line_seconds(4, set_seconds(Fraction(8), (3, 1, 1, 0)), Fraction(DEFAULT_REST_S)) == 520


@pytest.mark.parametrize(("sets", "seconds"), [(0, 0), (1, 30), (2, 150)])
def test_few_sets(sets: int, seconds: int) -> None:
    assert line_seconds(sets, Fraction(30), Fraction(90)) == seconds
