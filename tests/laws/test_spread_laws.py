"""What holds however a week is laid over days: its sets stay as many, in the order they were written."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from build_plans import BENCH, CURL, PUSHDOWN, SQUAT, day, line, plan, rpe, segment, superset, week
from setwright.plan import Line, Plan, Segment, SegmentKind
from setwright.prescription import ChangeByPercent
from setwright.report.compare import figures
from setwright.report.overview import overview
from setwright.report.spread import dealt, spread
from setwright.rules import Promise
from setwright.science.counting import Counting

few = settings(max_examples=40)
SLOTS = ("Mon", "Wed", "Thu", "Sat")

sets = st.integers(1, 8)
efforts = st.none() | st.integers(10, 20).map(lambda half: rpe(half / 2))
work = st.builds(segment, sets, st.just(5), efforts)
back_offs = st.builds(segment, sets, st.just(5), st.just(ChangeByPercent(Fraction(-10))))
drops = st.builds(segment, st.integers(1, 2), st.just(8), st.none(), st.just(SegmentKind.DROP))
warm_ups = st.builds(segment, st.integers(1, 3), st.just(8), st.none(), st.just(SegmentKind.WARM_UP))


def a_line(movement, before: list[Segment], main: list[Segment], after: list[Segment], joined: bool) -> Line:
    return line(movement, *before, *main, *after, **({"group": superset()} if joined else {}))


lines = st.builds(
    a_line,
    st.sampled_from([BENCH, SQUAT, PUSHDOWN, CURL]),
    st.lists(warm_ups, max_size=1),
    st.lists(work, min_size=1, max_size=2),
    st.lists(back_offs | drops, max_size=1),
    st.booleans(),
)
weeks = st.lists(st.lists(lines, min_size=1, max_size=4), min_size=1, max_size=4)
plans = weeks.map(lambda days: plan(week(*(day(slot, *held) for slot, held in zip(SLOTS, days, strict=False)))))
numbers = st.integers(1, 7)


@few
@given(plans, numbers, st.sampled_from(Counting))
def test_every_muscle_keeps_its_sets_and_the_week_its_effort(made: Plan, days: int, counting: Counting) -> None:
    written, laid_out = spread(made, Promise(counting=counting, from_rpe=Fraction(7)), (days,))
    before, after = figures(written), figures(laid_out)
    assert [(each.muscle, each.sets) for each in after.muscles] == [(each.muscle, each.sets) for each in before.muscles]
    assert after.weeks == before.weeks
    (one, _), (two, _) = overview(written.plan), overview(laid_out.plan)
    assert (two.sets, two.mean_effort, two.highest_effort) == (one.sets, one.mean_effort, one.highest_effort)


@few
@given(plans, numbers)
def test_the_same_week_is_always_laid_out_the_same_way(made: Plan, days: int) -> None:
    assert dealt(made, made.weeks[0], days) == dealt(made, made.weeks[0], days)


@few
@given(plans, numbers)
def test_each_day_keeps_the_order_written_and_no_portion_is_a_single_set(made: Plan, days: int) -> None:
    written = [line for session in made.weeks[0].sessions for line in session.lines]
    places = [(line.movement.name, line.segments[0].kind) for line in written]
    laid_out = dealt(made, made.weeks[0], days)
    assert len(laid_out) == days
    for held in laid_out:
        rest = iter(places)
        assert all((line.movement.name, line.segments[0].kind) in rest for line in held)
        assert all(line.sets > 1 for line in held) or any(line.sets == 1 for line in written)


@few
@given(plans)
def test_more_days_never_need_more_sets_in_the_largest_session_than_one_day_has(made: Plan) -> None:
    _, one, *more = [figures(column) for column in spread(made, Promise(), range(1, 8))]
    for muscle in one.muscles:
        for other in more:
            found = other.of(muscle.muscle.word)
            assert found is not None
            assert found.largest_session <= muscle.largest_session
