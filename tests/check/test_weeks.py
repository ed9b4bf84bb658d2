"""Which weeks a rule names, and how weeks are written."""

import pytest

from build_plans import plan, week
from setwright.check.weeks import WORKING_ONLY, looks_at, phrase
from setwright.plan import WeekKind
from setwright.rules import Where

# Settle: working, working, deload; Build: working, test.
WEEKS = plan(
    week(block="Settle"),
    week(block="Settle"),
    week(block="Settle", kind=WeekKind.DELOAD),
    week(block="Build"),
    week(block="Build", kind=WeekKind.TEST),
).weeks


@pytest.mark.parametrize(
    ("where", "numbers"),
    [
        (Where(), [1, 2, 4]),
        (Where(every_week=True), [1, 2, 3, 4, 5]),
        (Where(weeks=(2, 3)), [2, 3]),
        (Where(block="Settle"), [1, 2]),
        (Where(block="Settle", every_week=True), [1, 2, 3]),
        (Where(block="Build", weeks=(1, 2)), [4, 5]),
    ],
)
def test_the_weeks_that_a_rule_looks_at(where, numbers):
    assert [each.number for each in WEEKS if looks_at(where, each, WORKING_ONLY)] == numbers


@pytest.mark.parametrize(
    ("numbers", "text"),
    [
        ([3], "week 3"),
        ([1, 2, 3, 5], "weeks 1-3 and 5"),
        ([2, 3], "weeks 2-3"),
        ([1, 3], "weeks 1 and 3"),
        ([8, 1, 3, 4], "weeks 1, 3-4 and 8"),
    ],
)
def test_weeks_are_written_in_stretches(numbers, text):
    assert phrase(numbers) == text
