"""Dates: weeks, sessions and weekdays against the ISO calendar of the standard library and against numpy's days."""

from __future__ import annotations

import calendar
import csv
import io
from datetime import date, timedelta

import numpy as np
from hypothesis import example, given, settings
from hypothesis import strategies as st

from setwright.pipeline import EVERY_ATHLETE, compile
from setwright.plan import WEEKDAYS, Plan
from setwright.render.csv import text as sheet

few = settings(max_examples=60)

# Any day, and more often those around the ends of years and of Februaries.
near_ends = st.builds(
    lambda year, month, days: date(year, month, 1) + timedelta(days=days),
    st.integers(1990, 2110),
    st.sampled_from([1, 3]),
    st.integers(-9, 9),
)
starts = st.dates(date(1970, 1, 1), date(2399, 12, 31)) | near_ends
slots = st.lists(st.sampled_from(WEEKDAYS), min_size=1, max_size=7, unique=True)
lengths = st.integers(1, 60)


def compiled(head: str, days: list[str], weeks: int, athlete: str = "") -> Plan:
    lines = ["exercise Squat", athlete, 'plan "Quay"', *head.splitlines(), f"  block Base: {weeks} weeks"]
    for slot in days:
        lines += [f"    day {slot}", "      Squat: 3 x 5"]
    made = compile(
        "dates.plan", text="\n".join(lines).replace(": 1 weeks", ": 1 week") + "\n", athletes=(EVERY_ATHLETE,)
    )
    assert not made.has_errors, [found.message for found in made.diagnostics]
    return made.compilations[0].plan


def numpy_weekday(day: np.datetime64) -> int:
    """1 for Monday to 7 for Sunday; the days of numpy begin on 1970-01-01, a Thursday."""
    return int((day.astype("datetime64[D]").astype(np.int64) + 3) % 7) + 1


def assert_weeks_follow_each_other(plan: Plan, start: date, days: int) -> None:
    first = np.datetime64(start)
    for number, week in enumerate(plan.weeks, 1):
        assert week.number == number
        assert week.start == start + timedelta(days=days * (number - 1))
        assert np.datetime64(week.start) == first + np.timedelta64(days * (number - 1), "D")


def assert_sessions_are_on_their_weekdays(plan: Plan) -> None:
    for week in plan.weeks:
        for session in week.sessions:
            assert session.date is not None
            assert week.start is not None
            assert week.start <= session.date < week.start + timedelta(days=7)
            assert (session.date - week.start).days == session.offset
            weekday = WEEKDAYS.index(session.slot) + 1
            day = np.datetime64(session.date)
            assert session.date.isocalendar().weekday == weekday == numpy_weekday(day)
            assert calendar.weekday(session.date.year, session.date.month, session.date.day) == weekday - 1
            assert np.is_busday(day, weekmask=session.slot)


@few
@given(starts, slots, lengths)
@example(date(2024, 2, 26), ["Thu", "Fri"], 53)  # 29 February in week 1
@example(date(2100, 2, 22), ["Sun", "Mon"], 2)  # no leap year, though divisible by four
@example(date(2026, 12, 28), ["Mon", "Fri", "Sun"], 2)  # ISO week 53 of 2026 ends on 3 January 2027
@example(date(2027, 1, 1), ["Fri"], 53)
def test_week_n_starts_seven_days_after_the_one_before(start: date, days: list[str], weeks: int) -> None:
    plan = compiled(f"  start {start.isoformat()}", days, weeks)
    assert len(plan.weeks) == weeks
    assert_weeks_follow_each_other(plan, start, 7)
    assert_sessions_are_on_their_weekdays(plan)
    assert all(sorted(session.slot for session in week.sessions) == sorted(days) for week in plan.weeks)


@few
@given(starts, slots, lengths)
def test_from_a_monday_a_week_is_an_iso_week(start: date, days: list[str], weeks: int) -> None:
    monday = start - timedelta(days=start.isocalendar().weekday - 1)
    plan = compiled(f"  start {monday.isoformat()}", days, weeks)
    for week in plan.weeks:
        assert week.start is not None
        year, number, weekday = week.start.isocalendar()
        assert weekday == 1
        # ISO 8601: the week belongs to the year that its Thursday lies in, and is numbered from that year's first.
        thursday = np.datetime64(week.start) + np.timedelta64(3, "D")
        in_year = thursday - thursday.astype("datetime64[Y]").astype("datetime64[D]")
        assert (year, number) == (thursday.item().year, int(in_year.astype(np.int64)) // 7 + 1)
        for session in week.sessions:
            assert session.date is not None
            assert session.date.isocalendar()[:2] == (year, number)


@few
@given(starts, st.integers(1, 14), st.integers(1, 20), st.data())
def test_a_rotation_follows_its_own_length(start: date, days: int, weeks: int, data: st.DataObject) -> None:
    numbers = data.draw(st.lists(st.integers(1, days), min_size=1, max_size=7, unique=True))
    plan = compiled(f"  start {start.isoformat()}\n  microcycle {days} days", [str(each) for each in numbers], weeks)
    assert_weeks_follow_each_other(plan, start, days)
    for week in plan.weeks:
        for session in week.sessions:
            day = np.datetime64(start) + np.timedelta64(days * (week.number - 1) + int(session.slot) - 1, "D")
            assert np.datetime64(session.date) == day


@few
@given(starts, slots, slots, st.integers(1, 9))
def test_an_athletes_days_are_on_their_weekdays_too(
    start: date, days: list[str], available: list[str], weeks: int
) -> None:
    athlete = f'athlete "Ines"\n  available {", ".join(available)}'
    plan = compiled(f"  start {start.isoformat()}", days[: len(available)], weeks, athlete)
    assert_weeks_follow_each_other(plan, start, 7)
    assert_sessions_are_on_their_weekdays(plan)
    for week in plan.weeks:
        assert {session.slot for session in week.sessions} <= set(available)
        dates = [session.date for session in week.sessions if session.date is not None]
        assert dates == sorted(set(dates))


@few
@given(starts, slots, st.integers(1, 9))
def test_the_sheet_prints_the_dates_of_iso_8601(start: date, days: list[str], weeks: int) -> None:
    for row in csv.DictReader(io.StringIO(sheet(compiled(f"  start {start.isoformat()}", days, weeks)))):
        day = np.datetime64(row["date"])
        assert np.datetime_as_string(day) == row["date"]
        offset = (WEEKDAYS.index(row["day"]) - start.weekday()) % 7
        assert day == np.datetime64(start) + np.timedelta64(7 * (int(row["week"]) - 1) + offset, "D")
