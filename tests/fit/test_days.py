"""Fewer days than sessions: which two the help says to merge."""

from __future__ import annotations

import pytest

from setwright.pipeline import compile

PLAN = """\
exercise Squat
plan "Lock Street"
  block Base: 1 week
    day Mon
      Squat: 5 x 5
    day Wed
      Squat: 3 x 5
    day Fri
      Squat: 4 x 5
    day Sun
      Squat: 2 x 5
"""


# Sets of neighbours: Mon + Wed = 8, Wed + Fri = 7, Fri + Sun = 6.
@pytest.mark.parametrize(
    ("days", "told"),
    [
        (
            "Mon, Tue, Wed",
            "Merge Fri with Sun (together they have 6 sets, the fewest of two neighbours), or free another day.",
        ),
        (
            "Mon, Tue",
            "2 sessions have to go: first merge Fri with Sun (together they have 6 sets, the fewest of two "
            "neighbours), or free 2 more days.",
        ),
    ],
)
def test_the_two_with_the_fewest_sets(days: str, told: str) -> None:
    made = compile("days.plan", athletes=("Oda",), text=f'{PLAN}\nathlete "Oda"\n  available {days}\n')
    assert [finding.help for finding in made.diagnostics] == [told]


def test_two_sessions_and_one_day() -> None:
    text = PLAN.partition("    day Fri")[0] + '\nathlete "Oda"\n  available Tue\n'
    made = compile("days.plan", athletes=("Oda",), text=text)
    assert [finding.help for finding in made.diagnostics] == [
        "Merge Mon with Wed (together they have 8 sets), or free another day."
    ]
