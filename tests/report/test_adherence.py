"""Done beside planned, on plans built in Python: sessions, sets, effort, session load, muscles; a morning's line."""

from __future__ import annotations

from datetime import date, timedelta
from fractions import Fraction
from typing import Any

import pytest

from build_plans import BENCH, CURL, SQUAT, reps, rpe, stands
from build_plans import plan as plan_of
from setwright.log.model import LineDone, Log, SessionDone, SetDone
from setwright.plan import Line, Movement, Plan, Segment, SegmentKind, Session, Week, WeekKind
from setwright.prescription import Effort, Intensity
from setwright.record import replace
from setwright.report.adherence import Drift, State, adherence
from setwright.report.roster import morning
from setwright.rules import Promise
from setwright.science.counting import Counting

START = date(2027, 1, 4)


def day(number: int) -> date:
    """The plan's days from 0, a Monday."""
    return START + timedelta(days=number)


def line(movement: Movement, sets: int, intensity: Intensity | None = None, **more: Any) -> Line:
    return Line(
        movement, (Segment(SegmentKind.WORK, sets, reps(5), intensity, stands("3 x 5")),), stands("line"), **more
    )


def plan(*lines: Line, weeks: int = 3) -> Plan:
    """Monday and Thursday with the same lines, in every week."""
    made = [
        Week(
            number,
            "Base",
            number,
            WeekKind.WORKING,
            tuple(
                Session(slot, offset, lines, stands(slot), date=day(7 * number - 7 + offset))
                for slot, offset in (("Mon", 0), ("Thu", 3))
            ),
            stands("week"),
            start=day(7 * number - 7),
        )
        for number in range(1, weeks + 1)
    ]
    return replace(plan_of(), weeks=tuple(made), start=START)


def done(number: int, *entries: tuple[Movement, int], effort: float | None = None, **more: Any) -> SessionDone:
    felt = None if effort is None else rpe(effort)
    lines = tuple(
        LineDone(movement, None, (SetDone(None, reps(5), felt),) * sets, stands("done")) for movement, sets in entries
    )
    return SessionDone(day(number), lines, stands("session"), **more)


def of(planned: Plan, *sessions: SessionDone, on: int, promise: Promise = Promise()) -> Any:  # noqa: B008
    return adherence(planned, promise, Log(sessions), day(on))


def test_sessions_are_done_partly_done_missed_and_to_come() -> None:
    planned = plan(line(SQUAT, 3), line(BENCH, 2))
    found = of(
        planned,
        done(0, (SQUAT, 3), (BENCH, 2)),
        done(3, (SQUAT, 3), (BENCH, 1)),
        done(8, (CURL, 4)),  # a Tuesday, and nothing of the plan's
        on=14,
    )
    assert [week.states for week in found.weeks] == [
        (State.DONE, State.PARTLY),
        (State.MISSED, State.MISSED),
        (State.COMING, State.COMING),  # on the day itself nothing is missed yet
    ]
    assert [(week.sets_done, week.sets_due, week.sets_planned, week.sets_beside) for week in found.weeks] == [
        (9, 10, 10, 0),
        (0, 10, 10, 4),
        (0, 0, 10, 0),
    ]
    assert found.extra == 1
    assert len(found.begun) == 2


def test_what_comes_after_the_day_is_not_known() -> None:
    found = of(plan(line(SQUAT, 3)), done(0, (SQUAT, 3)), done(3, (SQUAT, 3)), on=1)
    assert found.weeks[0].states == (State.DONE, State.COMING)


def test_optional_lines_are_not_missed_and_more_sets_are_beside() -> None:
    planned = plan(line(SQUAT, 3), line(CURL, 2, optional=True))
    week = of(planned, done(0, (SQUAT, 4), (CURL, 1)), on=1).weeks[0]
    assert week.states[0] is State.DONE
    assert (week.sets_done, week.sets_planned, week.sets_beside) == (3, 6, 2)


def test_a_set_of_no_repetition_is_not_done() -> None:
    missed = LineDone(SQUAT, None, (SetDone(None, reps(0)),) * 3, stands("done"))
    found = of(plan(line(SQUAT, 3)), SessionDone(day(0), (missed,), stands("session")), on=1)
    assert found.weeks[0].states[0] is State.PARTLY


@pytest.mark.parametrize(
    ("asked", "felt", "drift"),
    [
        (rpe(8), 8.5, Drift(3, Fraction(1, 2))),
        (rpe(8), 7, Drift(3, Fraction(-1))),
        (rpe(7, 8), 7.5, Drift(3, Fraction(0))),
        (rpe(7, 8), 9, Drift(3, Fraction(1))),
        (rpe(7, 8), 6.5, Drift(3, Fraction(-1, 2))),
        (rpe(8), None, Drift(0, None)),
        (None, 8, Drift(0, None)),
    ],
)
def test_effort_drifts_by_reported_less_asked(asked: Effort | None, felt: float | None, drift: Drift) -> None:
    assert of(plan(line(SQUAT, 3, asked)), done(0, (SQUAT, 3), effort=felt), on=1).weeks[0].drift == drift


def test_muscles_count_as_the_promise_counts() -> None:
    planned = plan(line(BENCH, 4), weeks=1)
    session = done(0, (BENCH, 3), (SQUAT, 2))

    def sets(promise: Promise) -> dict[str, tuple[Fraction, Fraction]]:
        found = of(planned, session, on=7, promise=promise).muscles
        return {one.muscle.word: (one.done[0], one.planned[0]) for one in found}

    assert sets(Promise()) == {
        "chest": (3, 8),
        "front-delts": (Fraction(3, 2), 4),
        "triceps": (Fraction(3, 2), 4),
        "glutes": (2, 0),
        "quads": (2, 0),
    }
    assert sets(Promise(counting=Counting.TOTAL))["triceps"] == (3, 8)


def test_easy_sets_do_not_count_where_the_promise_says_so() -> None:
    planned = plan(line(BENCH, 4, rpe(8)), weeks=1)
    for felt, counted in ((6.5, 0), (7, 3), (None, 3)):
        found = of(planned, done(0, (BENCH, 3), effort=felt), on=7, promise=Promise(from_rpe=Fraction(7))).muscles
        assert {one.done[0] for one in found if one.muscle.word == "chest"} == {counted}


def test_session_load_monotony_and_strain() -> None:
    """Minutes x effort (Foster 1998): 60 x 5 and 40 x 7. With n - 1, by numpy: see below."""
    import numpy as np

    planned = plan(line(SQUAT, 1))
    hour, short = {"effort": 5, "minutes": 60}, {"effort": 7, "minutes": 40}
    sessions = [
        replace(one, effort=Fraction(more["effort"]), minutes=Fraction(more["minutes"]))
        for one, more in ((done(0, (SQUAT, 1)), hour), (done(3, (SQUAT, 1)), short))
    ]
    load = of(planned, *sessions, on=6).weeks[0].load
    daily = np.array([300, 0, 0, 280, 0, 0, 0])
    assert load.days == tuple(daily)
    assert (load.load, load.minutes) == (580, 100)
    assert float(load.monotony) == pytest.approx(daily.mean() / daily.std(ddof=1))
    assert float(load.strain) == pytest.approx(580 * daily.mean() / daily.std(ddof=1))
    assert of(planned, *sessions, on=5).weeks[0].load.monotony is None  # Sunday is still to come
    unknown = of(planned, sessions[0], done(3, (SQUAT, 1)), on=6).weeks[0].load
    assert (unknown.known, unknown.sessions, unknown.load, unknown.monotony) == (1, 2, 300, None)


def test_six_equal_days_and_one_of_rest() -> None:
    """6 / root 7 = 2.2678 whatever the load: domain facts, by algebra."""
    extra = [replace(done(at, (CURL, 1)), effort=Fraction(6), minutes=Fraction(50)) for at in range(6)]
    load = of(plan(line(SQUAT, 1)), *extra, on=6).weeks[0].load
    assert float(load.monotony) == pytest.approx(6 / 7**0.5)


def test_a_morning() -> None:
    planned = plan(line(SQUAT, 3, rpe(8)))
    log = Log((done(0, (SQUAT, 3), effort=8), done(3, (SQUAT, 3), effort=9)))
    found = morning(planned, Promise(), log, day(10))
    assert [session.slot for session in found.today] == ["Thu"]
    assert not found.done_today
    assert found.missed == 1
    assert found.drift == Drift(6, Fraction(1, 2))
    assert (found.checked, found.not_kept) == (1, ())
    assert morning(planned, Promise(), log, day(17)).drift == Drift(0, None)  # two weeks later
