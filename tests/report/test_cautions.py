"""What calls for a caution, on plans made by hand. When it does is common practice, no source."""

from __future__ import annotations

from datetime import date

import pytest

from build_plans import BENCH, CURL, PUSHDOWN, SQUAT, day, line, percent, plan, reps, rpe, segment, week
from setwright.plan import Plan, SegmentKind
from setwright.prescription import RepsKind
from setwright.record import replace
from setwright.report.cautions import HardDays, hard_days, has_test, may_be_minor
from setwright.report.overview import overview

HARD = segment(3, 5, rpe(9))
ALL_OUT = segment(1, reps(5, kind=RepsKind.AT_LEAST), percent(80))
EASY = segment(3, 5, rpe(8.5))


def born(year: int | None, start: date | None = date(2027, 1, 4)) -> Plan:
    return replace(plan(week()), athlete="Lumi", athlete_born=year, start=start)


@pytest.mark.parametrize(
    ("year", "minor"),
    [(2012, True), (2010, True), (2009, True), (2008, False), (None, False)],  # of 2009: 17 until the birthday
)
def test_who_may_be_under_18_on_the_first_day(year: int | None, minor: bool) -> None:
    assert may_be_minor(born(year)) is minor


def test_without_a_date_nobody_knows() -> None:
    assert not may_be_minor(born(2012, start=None))


def test_a_session_with_a_test() -> None:
    tried = line(SQUAT, segment(1, 1, percent(95), SegmentKind.TEST))
    assert has_test(day("Mon", line(BENCH, 3), tried))
    assert not has_test(day("Mon", line(BENCH, 3)))


@pytest.mark.parametrize(
    ("monday", "tuesday", "muscles"),
    [
        ([line(BENCH, HARD)], [line(BENCH, HARD)], ["Chest"]),  # triceps only help
        ([line(BENCH, HARD)], [line(PUSHDOWN, HARD)], []),
        ([line(BENCH, HARD)], [line(BENCH, EASY)], []),
        ([line(BENCH, EASY, segment(1, 5, rpe(8, 9)))], [line(BENCH, HARD)], ["Chest"]),  # a range at its top
        ([line(SQUAT, ALL_OUT)], [line(SQUAT, HARD)], ["Glutes", "Quads"]),
        ([line(SQUAT, segment(3, 5, percent(95)))], [line(SQUAT, HARD)], []),  # a percent says no effort
        ([line(SQUAT, segment(3, 5, rpe(9), SegmentKind.WARM_UP), EASY)], [line(SQUAT, HARD)], []),
        ([line(SQUAT, EASY), line(BENCH, HARD)], [line(CURL, HARD), line(BENCH, HARD)], ["Chest"]),
    ],
)  # fmt: skip
def test_high_effort_for_the_same_muscle_on_two_days_in_a_row(
    monday: list[object], tuesday: list[object], muscles: list[str]
) -> None:
    made = plan(week(day("Mon", *monday), day("Tue", *tuesday)))
    assert hard_days(made) == ({1: (HardDays(tuple(muscles), "Mon", "Tue"),)} if muscles else {})


def test_a_day_between_is_a_day_between() -> None:
    assert hard_days(plan(week(day("Mon", line(BENCH, HARD)), day("Wed", line(BENCH, HARD))))) == {}


def test_days_in_a_row_across_the_end_of_a_week_stand_in_the_later_week() -> None:
    one = week(day("Mon", line(BENCH, HARD)), day("Sun", line(BENCH, HARD)))
    assert hard_days(plan(one, one)) == {2: (HardDays(("Chest",), "Sun", "Mon"),)}


def test_three_days_in_a_row_are_two_pairs_in_a_rotation_too() -> None:
    days = [day(slot, line(BENCH, HARD)) for slot in ("3", "1", "2")]
    pairs = (HardDays(("Chest",), "1", "2"), HardDays(("Chest",), "2", "3"))
    assert hard_days(plan(week(*days), microcycle=5)) == {1: pairs}


def test_two_sessions_on_one_day_are_one_day() -> None:
    twice = [day("Mon", line(BENCH, EASY)), day("Mon", line(BENCH, HARD)), day("Tue", line(BENCH, HARD))]
    assert hard_days(plan(week(*twice))) == {1: (HardDays(("Chest",), "Mon", "Tue"),)}


def test_the_overview_carries_them_week_by_week() -> None:
    hard = week(day("Mon", line(BENCH, HARD)), day("Tue", line(BENCH, HARD)))
    assert [len(each.hard_days) for each in overview(plan(week(day("Mon", line(BENCH, HARD))), hard))] == [0, 1]
