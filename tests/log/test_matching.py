"""Which planned session a done one was: every rule by hand, and laws of the whole."""

from __future__ import annotations

from datetime import date, timedelta
from random import Random
from time import perf_counter

from hypothesis import given
from hypothesis import strategies as st

from build_logs import done, log, pier
from setwright.log.matching import Place, entries_beside, lines_done, matched
from setwright.log.model import Log, SessionDone
from setwright.plan import Plan

PLAN = pier()
UNDATED = pier(start="")


def places(plan: Plan, *sessions: SessionDone) -> list[Place | None]:
    """The place of each session, in the order given."""
    found = {id(session): place for session, place in matched(plan, log(*sessions)).pairs}
    return [found[id(session)] for session in sessions]


# ---- with dates ----------------------------------------------------------------------------------


def test_what_the_entry_says_goes_before_its_date() -> None:
    assert places(PLAN, done("06", "Squat", at="1 Mon")) == [(1, 1)]


def test_the_same_date_whatever_was_done() -> None:
    assert places(PLAN, done("06", "Curl")) == [(1, 2)]


def test_both_halves_of_a_day_are_its_session() -> None:
    morning, evening = done("04", "Squat"), done("04", "Bench")
    assert places(PLAN, morning, evening) == [(1, 1), (1, 1)]
    assert matched(PLAN, log(morning, evening)).done(1, 1) == (morning, evening)


def test_a_day_whose_session_was_done_on_another_is_free_for_something_else() -> None:
    early, instead = done("05", "Squat", "Bench", at="1 Wed"), done("06", "Squat", "Pull")
    assert places(PLAN, early, instead) == [(1, 2), (1, 3)]


def test_a_second_part_on_the_day_that_an_entry_names_belongs_to_it() -> None:
    assert places(PLAN, done("04", "Squat", at="1 Mon"), done("04", "Bench")) == [(1, 1), (1, 1)]


def test_the_session_of_the_week_with_most_movements_in_common() -> None:
    assert places(PLAN, done("05", "Squat", "Pull")) == [(1, 3)]
    assert places(PLAN, done("05", "Press", "Row")) == [(1, 2)]


def test_of_sessions_that_are_equally_alike_the_earliest() -> None:
    assert places(PLAN, done("05", "Squat")) == [(1, 1)]
    assert places(PLAN, done("05", "Squat"), done("07", "Squat")) == [(1, 1), (1, 3)]


def test_half_of_either_is_enough_and_less_is_not() -> None:
    assert places(PLAN, done("05", "Squat", "Curl", "Row", "Press")) == [(1, 2)]  # 2 of the 2 of Wednesday
    assert places(PLAN, done("05", "Squat", "Curl")) == [(1, 1)]  # 1 of 2 done, 1 of 2 asked
    assert places(pier(), done("05", "Curl", "Hop", "Jump", "Skip", "Walk", "Row")) == [(1, 2)]  # 1 of 2 asked
    assert places(PLAN, done("05", "Curl")) == [None]


def test_nothing_is_taken_from_another_week() -> None:
    assert places(PLAN, done("10", "Squat", "Bench")) == [(1, 1)]
    assert places(PLAN, done("11", "Curl"), done("10", "Press", "Row")) == [(2, 1), (1, 2)]
    assert places(PLAN, done("04"), done("06"), done("08"), done("10", "Squat", "Bench"))[3] is None


def test_extras_in_the_plans_time_and_what_lies_apart() -> None:
    before, extra, after = done("2026-12-30", "Squat"), done("07", "Curl"), done("18", "Squat")
    found = matched(PLAN, log(after, extra, before))
    assert found.extra == (extra,)
    assert found.extra_in(1) == (extra,)
    assert found.extra_in(2) == ()
    assert found.apart == (before, after)


def test_an_entry_that_names_no_session_counts_as_one_that_says_nothing() -> None:
    assert places(PLAN, done("04", "Squat", at="9 Mon"), done("05", "Pull", at="1 Sun")) == [(1, 1), (1, 3)]


def test_what_is_said_holds_near_the_plan_and_not_years_away() -> None:
    late, early, before = "2027-02-14", "2026-12-07", "2026-12-06"
    assert places(PLAN, done(late, at="2 Fri"), done(early, at="1 Mon")) == [(2, 3), (1, 1)]
    assert places(PLAN, done("2027-02-15", at="2 Fri"), done(before, at="1 Mon")) == [None, None]
    assert places(UNDATED, done("2019-02-15", at="2 Fri")) == [(2, 3)]


def test_an_athletes_own_days_and_the_plans_days_before_them() -> None:
    moved = pier(athlete="available Tue, Thu, Sat")
    assert places(moved, done("05", "Curl")) == [(1, 1)]
    assert places(moved, done("20", "Squat", at="2 Tue"), done("21", "Squat", at="2 Wed")) == [(2, 1), (2, 2)]


def test_microcycles_are_the_weeks_of_their_plan() -> None:
    from setwright.pipeline import compile

    text = (
        'exercise Squat\nexercise Row\nplan "Pier"\n  start 2027-01-04\n  microcycle 5 days\n'
        "  block Base: 3 weeks\n    day 1\n      Squat: 3 x 5\n    day 3\n      Row: 3 x 5\n"
    )
    plan = compile("pier.plan", text=text).compilations[0].plan
    assert places(plan, done("08", "Row"), done("10", "Squat"), done("30", "Row", at="3 3")) == [(1, 2), (2, 1), (3, 2)]


# ---- without dates -------------------------------------------------------------------------------


def test_without_dates_one_after_another_from_what_is_said() -> None:
    sessions = (done("04"), done("06"), done("15", at="2 Mon"), done("18"), done("20"), done("22"))
    assert places(UNDATED, *sessions) == [(1, 1), (1, 2), (2, 1), (2, 2), (2, 3), None]


def test_without_dates_nothing_is_given_twice() -> None:
    assert places(UNDATED, done("04"), done("09", at="1 Wed"), done("05")) == [(1, 1), (1, 2), (1, 3)]


# ---- lines ---------------------------------------------------------------------------------------


def test_sets_of_a_line_are_those_of_its_movement_and_label() -> None:
    light, heavy = PLAN.weeks[0].sessions[1].lines[1:]
    session = done("06", "Press/light", "Press", "Press")
    found = lines_done(light, (session,), (light, heavy)), lines_done(heavy, (session,), (light, heavy))
    assert [len(one or ()) for one in found] == [2, 4]


def test_entries_whose_label_no_line_bears_go_to_the_first_line() -> None:
    light, heavy = PLAN.weeks[0].sessions[1].lines[1:]
    session = done("06", "Press/cluster")
    assert len(lines_done(light, (session,), (light, heavy)) or ()) == 2
    assert lines_done(heavy, (session,), (light, heavy)) is None
    assert lines_done(heavy, (session,)) is not None


def test_no_entry_is_none() -> None:
    row = PLAN.weeks[0].sessions[1].lines[0]
    assert lines_done(row, (done("06", "Press"),)) is None


def test_what_no_line_asks_for() -> None:
    found = entries_beside(PLAN.weeks[0].sessions[0], (done("04", "Squat", "Curl"),))
    assert [entry.movement.name for entry in found] == ["Curl"]


# ---- laws ----------------------------------------------------------------------------------------

MOVEMENTS = ("Squat", "Bench", "Row", "Press", "Pull", "Curl")
SAYINGS = ("1 Mon", "1 Wed", "1 Fri", "2 Mon", "2 Wed", "2 Fri", "3 Mon", None, None, None, None)
SESSIONS = st.builds(
    lambda day, names, at: done(str(date(2026, 12, 28) + timedelta(days=day)), *names, at=at),
    st.integers(0, 30),
    st.lists(st.sampled_from(MOVEMENTS), max_size=4, unique=True),
    st.sampled_from(SAYINGS),
)


@given(st.lists(SESSIONS, max_size=12), st.sampled_from([PLAN, UNDATED]))
def test_every_session_has_one_place(sessions: list[SessionDone], plan: Plan) -> None:
    found = matched(plan, Log(tuple(sessions)))
    told = [*(one for group in found.placed.values() for one in group), *found.extra, *found.apart]
    assert sorted(map(id, told)) == sorted(map(id, sessions))
    assert set(found.placed) <= {(week, at) for week in (1, 2) for at in (1, 2, 3)}
    for session, place in found.pairs:
        assert place is None or any(one is session for one in found.done(*place))


@given(st.lists(SESSIONS, max_size=12, unique_by=lambda session: session.day), st.randoms())
def test_the_order_in_the_file_does_not_matter(sessions: list[SessionDone], random: Random) -> None:
    mixed = sorted(sessions, key=lambda _: random.random())
    assert matched(PLAN, Log(tuple(mixed))) == matched(PLAN, Log(tuple(sessions)))


@given(st.lists(SESSIONS, max_size=12))
def test_what_is_said_and_what_has_the_date_is_kept(sessions: list[SessionDone]) -> None:
    days = {session.date: (week.number, at) for week in PLAN.weeks for at, session in enumerate(week.sessions, 1)}
    slots = {
        (week.number, one.slot): (week.number, at) for week in PLAN.weeks for at, one in enumerate(week.sessions, 1)
    }
    for session, place in matched(PLAN, Log(tuple(sessions))).pairs:
        said = slots.get((session.week or 0, session.slot or ""))
        if said is not None:
            assert place == said
        elif place is not None and session.day not in days:
            assert PLAN.weeks[place[0] - 1].start <= session.day  # type: ignore[operator]


def test_ten_years_take_about_ten_times_as_long_as_one() -> None:
    def seconds(count: int) -> float:
        first = date(2027, 1, 4) - timedelta(days=2 * count)
        kept = log(*(done(str(first + timedelta(days=2 * at)), *MOVEMENTS) for at in range(count + 12)))
        begun = perf_counter()
        matched(PLAN, kept)
        return perf_counter() - begun

    seconds(150)
    assert min(seconds(6000) for _ in range(3)) < 40 * max(min(seconds(600) for _ in range(3)), 1e-4)
