"""Weeks and sessions summed up, against sums by hand."""

from fractions import Fraction

from build_plans import BENCH, CURL, SQUAT, day, deload, line, percent, plan, reps, rpe, segment, week
from setwright.plan import SegmentKind, WeekKind
from setwright.prescription import RepsKind
from setwright.record import replace
from setwright.report.overview import overview


def test_effort_is_weighted_by_the_sets_that_state_one():
    lines = [
        line(SQUAT, segment(2, 5, rpe(10), SegmentKind.WARM_UP), segment(3, 5, rpe(7, 8))),
        line(BENCH, segment(4, 5, percent(80))),
        line(CURL, segment(1, reps(0, kind=RepsKind.MAX))),
    ]
    (summary,) = overview(plan(week(day("Mon", *lines))))
    assert summary.sets == 8
    assert summary.mean_effort == Fraction(3 * 8 + 1 * 10, 4)
    assert summary.highest_effort == 10


def test_a_week_that_states_no_effort_has_none():
    (summary,) = overview(plan(week(day("Mon", line(BENCH, segment(4, 5, percent(80)))))))
    assert (summary.mean_effort, summary.highest_effort) == (None, None)


def test_weeks_keep_their_number_block_and_kind_and_add_up_their_sessions():
    session = day("Mon", line(BENCH, 2), line(CURL, 1))  # 2 x 20 s + 120 s, 60 s over, 20 s
    first, second = overview(plan(week(session, day("Thu", line(BENCH, 1))), deload(session, block="Build")))
    assert (first.number, first.block, first.kind) == (1, "Base", WeekKind.WORKING)
    assert (second.number, second.block, second.kind) == (2, "Build", WeekKind.DELOAD)
    assert [(each.slot, each.sets, each.minutes) for each in first.sessions] == [
        ("Mon", 3, 4),
        ("Thu", 1, Fraction(1, 3)),
    ]
    assert (first.sets, first.minutes) == (4, Fraction(13, 3))


def test_an_effort_at_a_share_of_its_load_is_unknown():
    """What is left of RPE 9 at 85% of its load nobody can say; an effort that the deload lowered too is asked for."""
    scaled = replace(segment(2, 5, rpe(9)), load_factor=Fraction(85, 100))
    lowered = replace(segment(1, 5, rpe(6)), load_factor=Fraction(85, 100), effort_before=Fraction(9))
    (summary,) = overview(plan(week(day("Mon", line(SQUAT, scaled)), kind=WeekKind.DELOAD)))
    assert (summary.mean_effort, summary.highest_effort) == (None, None)
    (summary,) = overview(plan(week(day("Mon", line(SQUAT, scaled, lowered)), kind=WeekKind.DELOAD)))
    assert (summary.mean_effort, summary.highest_effort) == (6, 6)
