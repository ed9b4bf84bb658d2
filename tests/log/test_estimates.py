"""Bests as a log tells them: which sets count, the window, tests before estimates."""

from __future__ import annotations

from datetime import date, timedelta
from fractions import Fraction
from typing import Any

import pytest

from build_plans import SQUAT, reps, rpe, stands
from setwright.log.estimates import BestTested, DayBest, LeftOut, MovementBests, estimates
from setwright.log.model import LineDone, Log, SessionDone, SetDone
from setwright.prescription import Bodyweight, RepsKind, Weight
from setwright.quantities import Mass, Unit
from setwright.science.repetitions import Model

START = date(2027, 1, 4)


def kg(amount: float) -> Mass:
    return Mass(Fraction(amount), Unit.KG)


def one(load: float | None, count: int, effort: float | None = None, **more: Any) -> SetDone:
    return SetDone(None if load is None else Weight(kg(load)), reps(count, **more), rpe(effort) if effort else None)


def on(day: int, *sets: SetDone, is_test: bool = False) -> SessionDone:
    when = START + timedelta(days=day)
    return SessionDone(when, (LineDone(SQUAT, None, sets, stands(f"day {day}"), is_test),), stands(f"day {day}"))


def squat(*sessions: SessionDone) -> MovementBests:
    return estimates(Log(sessions), lambda _: Model.EPLEY)["Back Squat"]


def test_a_days_best_is_its_highest_estimate() -> None:
    """Epley (1985): 100 x (1 + 7/30) = 123.33 and 120 x (1 + 4/30) = 136: domain facts, sets with an RPE."""
    found = squat(on(0, one(100, 5, 8), one(120, 3, 9), one(80, 5, 8)))
    (best,) = found.days
    assert best.best.amount == 136
    assert (best.mass.amount, best.reps, best.reserve) == (120, 3, 1)


@pytest.mark.parametrize(
    ("left", "reason"),
    [
        (one(100, 5), "without_effort"),
        (one(None, 5, 8), "without_load"),
        (SetDone(Bodyweight(), reps(5), rpe(8)), "without_load"),
        (one(100, 5, 4.5), "too_easy"),
        (one(60, 9, 8), "too_many"),  # eleven to failure
        (one(100, 0, 10), "others"),
        (one(60, 30, 8, kind=RepsKind.SECONDS), "others"),
    ],
)
def test_sets_that_are_left_out_are_counted(left: SetDone, reason: str) -> None:
    found = squat(on(0, left, one(100, 8, 8)))
    assert len(found.days) == 1
    assert found.left_out == LeftOut(**{reason: 1})


def test_ten_to_failure_are_taken() -> None:
    assert squat(on(0, one(75, 8, 8))).days[0].best.amount == 100  # 75 x (1 + 10/30)


def test_a_trend_takes_five_days_over_three_weeks() -> None:
    days = [on(day, one(100, 1, 10)) for day in (0, 5, 10, 20)]
    assert squat(*days).trend is None
    assert squat(*days, on(20, one(101, 1, 10))).trend is None  # the same day again
    assert squat(*days, on(19, one(100, 1, 10))).trend is None  # over 20 days
    assert squat(*days, on(21, one(100, 1, 10))).trend is not None


def test_it_looks_at_the_last_26_weeks() -> None:
    """Long ago it was 200; since then 2 a week: by hand 100 + 2 x 4 on the last day."""
    found = squat(on(0, one(200, 1, 10)), *(on(300 + 7 * week, one(100 + 2 * week, 1, 10)) for week in range(5)))
    assert found.trend is not None
    assert found.trend.slope == Fraction(2, 7)
    assert found.on_trend == kg(108)


def test_what_was_known_on_a_day() -> None:
    found = squat(*(on(7 * week, one(100 + 2 * week, 1, 10)) for week in range(6)))
    assert found.known(START + timedelta(days=28)) is None  # four days are before it
    known = found.known(START + timedelta(days=29))
    assert isinstance(known, DayBest)
    assert (known.best, known.day) == (kg(108), START + timedelta(days=28))
    assert found.known(START + timedelta(days=365)) is None  # half a year after the last: it says nothing any more


def test_a_tested_single_outranks_estimates_and_a_newer_test_an_older() -> None:
    lifts = [on(7 * week, one(100 + 2 * week, 1, 9)) for week in range(6)]
    tests = [on(36, one(104, 1), one(107.5, 1), one(110, 0), is_test=True), on(43, one(105, 1), is_test=True)]
    found = squat(*lifts, *tests)
    assert [test.best for test in found.tested] == [kg(107.5), kg(105)]
    known = found.known(None)
    assert isinstance(known, BestTested)
    assert known.best == kg(105)
    before = found.known(START + timedelta(days=40))
    assert isinstance(before, BestTested)
    assert before.best == kg(107.5)


def test_only_singles_test_a_best() -> None:
    assert squat(on(0, one(100, 3, 10), is_test=True)).tested == ()
