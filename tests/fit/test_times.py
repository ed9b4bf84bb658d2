"""When sessions begin: what an athlete says, carried to each session and into the JSON."""

from __future__ import annotations

import json
from datetime import time
from importlib.resources import files

import pytest
from jsonschema import Draft202012Validator

from setwright.pipeline import compile
from setwright.plan import Plan
from setwright.render.json import document
from setwright.report.overview import overview
from setwright.report.volume import volume

TEXT = """use stdlib.exercises
plan "Pier"
{start}
  block Base: 1 week
    day {first}
      Back Squat: 3 x 5
    day {second}
      Bench Press: 3 x 5
athlete "Ines"
{athlete}
"""
SCHEMA = json.loads(files("setwright.render").joinpath("plan.schema.json").read_text())


def fitted(athlete: str, start: str = "  start 2027-01-04", first: str = "Mon", second: str = "Sat") -> Plan:
    text = TEXT.format(start=start, first=first, second=second, athlete=athlete)
    made = compile("pier.plan", text=text, athletes=("Ines",))
    assert not made.diagnostics
    return made.compilations[0].plan


def times(plan: Plan) -> list[time | None]:
    return [session.at for week in plan.weeks for session in week.sessions]


@pytest.mark.parametrize(
    ("athlete", "expected"),
    [
        ("", [None, None]),
        ("  at 18:30", [time(18, 30), time(18, 30)]),
        ("  at Sat 9:05", [None, time(9, 5)]),
        ("  at Sat 9:05\n  at 0:00", [time(0, 0), time(9, 5)]),
        ("  at Sun 9:05\n  at 23:59", [time(23, 59), time(23, 59)]),
        ("  available Tue, Sat\n  at Tue 6:00\n  at Mon 7:00", [time(6, 0), None]),
    ],
)
def test_the_time_of_each_session(athlete: str, expected: list[time | None]) -> None:
    assert times(fitted(athlete)) == expected


def test_without_dates_weekdays_still_count() -> None:
    assert times(fitted("  at Sat 9:05", start="")) == [None, time(9, 5)]


def test_numbered_days_without_dates_have_the_time_of_all_days_alone() -> None:
    plan = fitted("  at Mon 9:05\n  at 18:30", start="  microcycle 8 days", first="1", second="4")
    assert times(plan) == [time(18, 30), time(18, 30)]


def test_without_an_athlete_no_session_has_one() -> None:
    text = TEXT.format(start="", first="Mon", second="Sat", athlete="  at 18:30")
    assert times(compile("pier.plan", text=text).compilations[0].plan) == [None, None]


def test_json_says_it() -> None:
    plan = fitted("  at Sat 9:05")
    said = json.loads(document(plan, volume(plan), overview(plan)))
    assert [session["at"] for session in said["plan"]["weeks"][0]["sessions"]] == [None, "09:05"]
    assert list(Draft202012Validator(SCHEMA).iter_errors(said)) == []
