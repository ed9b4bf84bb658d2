"""What is said of an emphasis that fell short, and what a segment keeps of one that was placed."""

from __future__ import annotations

import pytest

from build_plans import BENCH, CURL, SQUAT, day, deload, line, plan, promise, rule, segment, stands, week
from setwright.diagnostics import Severity
from setwright.emphasis import emphasised
from setwright.plan import Cause, Plan, Quantity, SegmentKind, Step
from setwright.rules import Promise, Wish

AT_MOST_SIX = rule("session-sets", "every muscle", None, 6, severity=Severity.ERROR)


def wish(muscle: str, sets: int) -> Wish:
    return Wish(muscle, sets, stands(f"emphasis {muscle} {sets:+}"))


def said(plan: Plan, promise: Promise, *wishes: Wish) -> list[tuple[str, str | None, list[str]]]:
    """Message, help and the texts of the places that each warning shows."""
    _, found = emphasised(plan, promise, wishes)
    return [(one.message, one.help, [f"{each.span.text}: {each.text}" for each in one.related]) for one in found]


def test_the_rule_that_stopped_it_is_shown() -> None:
    assert said(plan(week(day("Mon", line(CURL, 5)))), promise(AT_MOST_SIX), wish("biceps", 3)) == [
        (
            "1 of 3 sets a week for Biceps could be added in week 1",
            "One set more would break `must session-sets for every muscle <= 6`.",
            ["rule session-sets: this rule stopped it, in the rules `house`"],
        )
    ]


def test_weeks_with_the_same_answer_stand_together() -> None:
    full, light = week(day("Mon", line(CURL, 6))), week(day("Mon", line(CURL, 5)))
    told = said(
        plan(full, full, deload(day("Mon", line(CURL, 3))), light, full), promise(AT_MOST_SIX), wish("biceps", 2)
    )
    assert [message for message, _, _ in told] == [
        "0 of 2 sets a week for Biceps could be added in weeks 1-2 and 5",
        "1 of 2 sets a week for Biceps could be added in week 4",
    ]


@pytest.mark.parametrize("by", [1, -1])
def test_lines_that_train_two_muscles_directly_are_left_alone(by: int) -> None:
    ((_, told, places),) = said(plan(week(day("Mon", line(SQUAT, 3)))), promise(), wish("quads", by))
    assert (told, places) == ("No line there trains Quads and no other muscle directly (weight 1).", [])


def test_a_wish_below_half_a_set_in_a_short_microcycle() -> None:
    short = plan(week(day("1", line(CURL, 3))), microcycle=3)
    assert said(short, promise(), wish("biceps", 1)) == [
        (
            "0 of 0 sets a week for Biceps could be added in week 1",
            "That is less than half a set in a microcycle of 3 days.",
            [],
        )
    ]


def test_a_segment_keeps_what_was_added_to_it() -> None:
    asked = wish("chest", 2)
    done, found = emphasised(plan(week(day("Mon", line(BENCH, 3)))), promise(), (asked,))
    assert found == ()
    (only,) = done.weeks[0].sessions[0].lines[0].segments
    assert (only.sets, only.steps) == (5, (Step(Quantity.SETS, Cause.EMPHASIS, 3, 5, asked.span),))
    (again,) = emphasised(done, promise(), (wish("chest", -4),))[0].weeks[0].sessions[0].lines[0].segments
    assert [(step.before, step.after) for step in again.steps] == [(3, 5), (5, 1)]


def test_warm_ups_and_drops_do_not_take_sets() -> None:
    parts = (segment(1, kind=SegmentKind.WARM_UP), segment(3), segment(2, 8), segment(1, kind=SegmentKind.DROP))
    done, _ = emphasised(plan(week(day("Mon", line(BENCH, *parts)))), promise(), (wish("chest", 2),))
    assert [each.sets for each in done.weeks[0].sessions[0].lines[0].segments] == [1, 3, 4, 1]


def test_a_should_stops_nothing() -> None:
    soft = promise(rule("session-sets", "every muscle", None, 3))
    done, found = emphasised(plan(week(day("Mon", line(CURL, 3)))), soft, (wish("biceps", 2),))
    assert found == ()
    assert done.weeks[0].sessions[0].lines[0].sets == 5
