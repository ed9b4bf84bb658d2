"""The rules as the sheet says them."""

from __future__ import annotations

from fractions import Fraction

import pytest

from progression.test_engine import DOUBLE_CLIMB, LESS_LOAD, asked, when
from setwright.prescription import PercentOfBest
from setwright.progression import Progression, in_words
from setwright.progression.model import Action, Condition, How, Moved, Rule


def test_a_whole_progression_with_the_numbers_of_its_line() -> None:
    assert in_words(DOUBLE_CLIMB, asked(6, 10)) == (
        "When every set has at least 10 repetitions: 2.5 kg more and 6 repetitions. "
        "When a set has fewer than 6 repetitions, twice running: 10% less. "
        "When a set has fewer than 6 repetitions: no change. "
        "Otherwise: 1 repetition more."
    )


def test_without_otherwise_it_says_that_nothing_changes() -> None:
    one = Progression("one", (Rule(when("all", ">=", "target"), 3, (LESS_LOAD,)),))
    assert in_words(one, asked(5, 5, PercentOfBest(Fraction(80)))) == (
        "When every set has the repetitions asked for, 3 times running: 10 percentage points less. "
        "Otherwise: no change."
    )


@pytest.mark.parametrize(
    ("condition", "said"),
    [
        (when("last", ">=", "target", 2), "the last set has at least 2 repetitions more than asked for"),
        (when("any", "<=", "target", -1), "a set has at most 1 repetition fewer than asked for"),
        (when("any", "<", "target"), "a set has fewer repetitions than asked for"),
        (when("all", ">", "target"), "every set has more repetitions than asked for"),
        (when("all", "=", "target"), "every set has exactly the repetitions asked for"),
        (when("all", ">=", None, 1), "every set has at least 1 repetition"),
        (when("effort", ">", "target"), "the effort is above the one asked for"),
        (when("effort", ">=", "target", 1), "the effort is at least 1 above the one asked for"),
        (when("effort", "<", None, "7.5"), "the effort is below RPE 7.5"),
    ],
)
def test_conditions(condition: Condition, said: str) -> None:
    assert in_words(Progression("one", (Rule(condition, 1, ()),)), asked(5, 5)).startswith(f"When {said}: no change.")


@pytest.mark.parametrize(
    ("action", "said"),
    [
        (Action(Moved.SETS, How.MORE, Fraction(1)), "1 set more"),
        (Action(Moved.SETS, How.TO, Fraction(3)), "3 sets"),
        (Action(Moved.REPS, How.LESS, Fraction(2)), "2 repetitions fewer"),
        (Action(Moved.EFFORT, How.MORE, Fraction(1, 2)), "effort 0.5 higher"),
        (Action(Moved.EFFORT, How.TO, Fraction(7)), "RPE 7"),
    ],
)
def test_actions(action: Action, said: str) -> None:
    assert in_words(Progression("one", (Rule(None, 1, (action,)),)), asked(5, 5)) == f"Otherwise: {said}."
