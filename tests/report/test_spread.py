"""One week's work laid over other numbers of days, each layout worked out by hand from the steps of `dealt`."""

from __future__ import annotations

from fractions import Fraction

import pytest

from build_plans import BENCH, CURL, SQUAT, day, deload, line, plan, promise, rpe, rule, segment, superset, waiver, week
from setwright.plan import Line, Plan, SegmentKind
from setwright.prescription import ChangeByPercent
from setwright.report.compare import figures
from setwright.report.spread import dealt, first_working_week, offsets, spread
from setwright.rules import Promise

ONE_DAY = plan(week(day("Mon", line(SQUAT, 4), line(BENCH, 4), line(CURL, 3))))


def layout(made: Plan, days: int) -> list[list[tuple[str, int]]]:
    week = first_working_week(made)
    assert week is not None
    return [[(line.movement.name, line.sets) for line in lines] for lines in dealt(made, week, days)]


def the_lines(*lines: Line, days: int) -> list[tuple[Line, ...]]:
    made = plan(week(day("Mon", *lines)))
    return list(dealt(made, made.weeks[0], days))


def test_one_day_takes_all_in_the_order_written() -> None:
    assert layout(ONE_DAY, 1) == [[("Back Squat", 4), ("Bench Press", 4), ("Barbell Curl", 3)]]


def test_two_days_share_what_can_be_cut() -> None:
    # Squat and bench: half of the sets are the even share. Three sets of curls are not cut, and both days have four.
    first = [("Back Squat", 2), ("Bench Press", 2), ("Barbell Curl", 3)]
    assert layout(ONE_DAY, 2) == [first, [("Back Squat", 2), ("Bench Press", 2)]]


def test_three_days_put_hours_between_and_then_fill_the_emptiest() -> None:
    # Two portions lie 3 days apart at the least on Monday and Friday, 2 on the other pairs; the curls go to Wednesday.
    outer = [("Back Squat", 2), ("Bench Press", 2)]
    assert layout(ONE_DAY, 3) == [outer, [("Barbell Curl", 3)], outer]


def test_a_line_is_not_cut_where_whole_lines_share_evenly() -> None:
    assert layout(plan(week(day("Mon", line(SQUAT, 4), line(SQUAT, 4)))), 2) == [[("Back Squat", 4)]] * 2


def test_the_lines_are_taken_in_order_of_days() -> None:
    made = plan(week(day("Thu", line(CURL, 1)), day("Mon", line(BENCH, 1))))
    assert layout(made, 1) == [[("Bench Press", 1), ("Barbell Curl", 1)]]


def test_a_cut_goes_through_segments_and_each_portion_warms_up() -> None:
    warm_up = segment(2, 8, None, SegmentKind.WARM_UP)
    first, second = the_lines(line(SQUAT, warm_up, segment(1, 5, rpe(9)), segment(4, 5, rpe(8))), days=2)
    assert [(each.kind.value, each.sets, each.intensity) for each in first[0].segments] == [
        ("warm-up", 2, None),
        ("work", 1, rpe(9)),
        ("work", 2, rpe(8)),
    ]
    assert [(each.kind.value, each.sets) for each in second[0].segments] == [("warm-up", 2), ("work", 2)]


@pytest.mark.parametrize(
    "last",
    [
        segment(4, 5, ChangeByPercent(Fraction(-8))),
        segment(1, 8, None, SegmentKind.DROP),
        segment(3, 1, None, SegmentKind.TEST),
    ],
)
def test_sets_that_lean_on_each_other_stay_together(last) -> None:
    first, second = the_lines(line(SQUAT, segment(4, 3, rpe(8)), last), days=2)
    assert (len(first), second) == (1, ())


def test_supersets_of_two_sessions_do_not_become_one() -> None:
    pair = {"group": superset("A")}
    made = plan(week(day("Mon", line(SQUAT, 1, **pair), line(BENCH, 1, **pair)), day("Thu", line(CURL, 1, **pair))))
    (lines,) = dealt(made, made.weeks[0], 1)
    letters = [each.group.letter for each in lines if each.group]
    assert letters[0] == letters[1] != letters[2]


@pytest.mark.parametrize(
    ("days", "week", "expected"),
    [(1, 7, [0]), (2, 7, [0, 3]), (3, 7, [0, 2, 4]), (4, 7, [0, 1, 3, 5]), (6, 7, list(range(6))), (3, 8, [0, 2, 5])],
)
def test_days_lie_as_evenly_as_whole_days_can(days: int, week: int, expected: list[int]) -> None:
    assert list(offsets(days, week)) == expected


def test_the_columns_begin_with_the_week_as_written_and_rest_goes_round_the_week() -> None:
    written, twice = spread(ONE_DAY, Promise(), (2,))
    assert [written.heading, twice.heading] == ["As written, 1 day", "2 days"]
    assert [session.slot for session in twice.plan.weeks[0].sessions] == ["Mon", "Thu"]
    made = figures(twice)
    quads = made.of("quads")
    assert quads is not None
    # Monday to Thursday and Thursday to Monday, before two sets each.
    assert (quads.exposures.mean, quads.shortest_hours, quads.weighted_hours) == (2, 72, 84)
    assert [each.number for each in made.weeks] == [1]


def test_a_day_to_which_nothing_falls_stays_free() -> None:
    *_, last = spread(plan(week(day("Mon", line(CURL, 3)))), Promise(), (4,))
    assert [session.slot for session in last.plan.weeks[0].sessions] == ["Mon"]


def test_days_of_another_microcycle_are_numbered() -> None:
    *_, last = spread(plan(week(day("1", line(SQUAT, 4))), microcycle=8), Promise(), (2,))
    assert [session.slot for session in last.plan.weeks[0].sessions] == ["1", "5"]


def test_the_first_working_week_is_taken() -> None:
    rest = week(day("Mon"))
    made = plan(
        deload(day("Mon", line(BENCH, 1))), rest, week(day("Mon", line(BENCH, 5))), week(day("Mon", line(BENCH, 9)))
    )
    assert first_working_week(made) is made.weeks[2]
    assert first_working_week(plan(rest)) is None


def test_rules_of_that_week_hold_wherever_it_stands_and_others_do_not() -> None:
    made = plan(deload(), week(day("Mon", line(BENCH, 5))), week(day("Mon", line(BENCH, 9))))
    given = promise(
        rule("session-sets", "chest", high=4, weeks=(2,)),
        rule("session-sets", "chest", high=3, weeks=(1,)),
        rule("weekly-sets", "chest", high=4, block="Base"),
        rule("weekly-sets", "chest", high=4, block="Build"),
        waivers=(waiver("weekly-sets", "chest", weeks=(2,)),),
    )
    assert [figures(column).should for column in spread(made, given, (2,))] == [1, 0]
