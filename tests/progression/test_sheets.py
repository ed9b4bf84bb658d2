"""What the sheets say of a line that advances: words, projections, deloads, and steps that `why` can tell."""

from __future__ import annotations

from setwright.pipeline import compile
from setwright.plan import Cause, Line, Quantity

PLAN = """
exercise Squat

plan "Breakwater"
  block Base: 3 weeks
    deload week 3: sets 50%
    day Mon
      Squat: 3 x 6-8 @ 60 kg, advance double-climb(step: 5 kg)
"""


def lines() -> list[Line]:
    compiled = compile("breakwater.plan", text=PLAN)
    assert compiled.diagnostics == ()
    return [line for week in compiled.compilations[0].plan.weeks for session in week.sessions for line in session.lines]


def test_the_rules_stand_under_every_exposure() -> None:
    first, second, deload = lines()
    assert first.advance_words == second.advance_words
    assert first.advance_words is not None
    assert first.advance_words.startswith("When every set has at least 8 repetitions: 5 kg more and 6 repetitions. ")
    assert deload.advance_words == "A deload does not count. The next session goes on from the one before it."


def test_what_is_projected() -> None:
    assert [line.projected for line in lines()] == [False, True, True]


def test_a_projected_number_says_where_it_came_from() -> None:
    second = lines()[1]
    moved = [step for step in second.work[0].steps if step.cause is Cause.PROGRESSION]
    assert [(step.quantity, step.told_before, step.told_after) for step in moved] == [(Quantity.REPS, "6-8", "7")]
    assert moved[0].span.text.startswith("double-climb")
