"""What holds for every load and count: order does not matter, parts add up, effort raises and repetitions lower."""

from __future__ import annotations

import statistics
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from ask_measures import values
from build_plans import BENCH, CURL, PUSHDOWN, SQUAT, WEEKDAYS, day, line, plan, rule, segment, stands, week
from setwright.athlete import Athlete, Best
from setwright.diagnostics import Diagnostic
from setwright.fit.bests import Bests
from setwright.fit.loads import LineLoader
from setwright.fit.makers import Makers
from setwright.plan import Handling, Line, Movement
from setwright.prescription import Effort
from setwright.quantities import Mass, Unit
from setwright.record import replace
from setwright.science.counting import Counting
from setwright.science.effort import reps_in_reserve
from setwright.science.load_management import (
    coupled_from_uncoupled,
    coupled_ratio,
    monotony,
    moving_loads,
    sample_deviation,
    strain,
    uncoupled_ratio,
)
from setwright.science.repetitions import Model, share_of_best

loads = st.fractions(0, 2000, max_denominator=60)
weeks = st.lists(loads, min_size=7, max_size=7)
months = st.lists(loads, min_size=28, max_size=60)

TOLERANCE = Fraction(1, 10**9)


def near(one: Fraction | None, other: Fraction | None) -> bool:
    """Alike but for the places a root is cut after; None only beside None."""
    if one is None or other is None:
        return one is other
    return abs(one - other) <= TOLERANCE * max(1, abs(one))


# ---- loads ---------------------------------------------------------------------------------------


@given(weeks)
def test_the_deviation_is_that_of_the_standard_library(daily: list[Fraction]) -> None:
    found = sample_deviation(daily)
    assert found is not None
    assert float(found) == pytest.approx(statistics.stdev(daily), rel=1e-9, abs=1e-9)


@given(weeks.flatmap(lambda daily: st.tuples(st.just(daily), st.permutations(daily))))
def test_the_order_of_days_changes_neither_monotony_nor_strain(pair: tuple[list[Fraction], list[Fraction]]) -> None:
    assert monotony(pair[0]) == monotony(pair[1])
    assert strain(pair[0]) == strain(pair[1])


@given(weeks, st.fractions(Fraction(1, 10), 10, max_denominator=20))
def test_monotony_has_no_unit_and_strain_has_that_of_the_load(daily: list[Fraction], factor: Fraction) -> None:
    assume((sample_deviation(daily) or 0) > Fraction(1, 1000) or len(set(daily)) == 1)
    scaled = [load * factor for load in daily]
    assert near(monotony(daily), monotony(scaled))
    before = strain(daily)
    assert near(None if before is None else before * factor, strain(scaled))


@given(loads)
def test_days_that_are_alike_have_no_monotony(load: Fraction) -> None:
    assert monotony([load] * 7) is None


@given(months)
def test_coupled_and_uncoupled_are_one_relation(daily: list[Fraction]) -> None:
    apart, together = uncoupled_ratio(daily), coupled_ratio(daily)
    if apart is not None:
        assert together == coupled_from_uncoupled(apart)
    assert together is None or 0 <= together <= 4


@given(months, st.sampled_from([7, 28]))
def test_a_moving_load_stays_between_the_least_and_the_greatest(daily: list[Fraction], span: int) -> None:
    found = moving_loads(daily, span)
    assert len(found) == len(daily)
    assert min(daily) <= min(found) <= max(found) <= max(daily)
    assert found[0] == daily[0]


# ---- shares of the best --------------------------------------------------------------------------


@given(st.integers(1, 9), st.lists(st.integers(10, 20), min_size=2, max_size=2, unique=True))
@pytest.mark.parametrize("model", Model)
def test_a_load_rises_with_effort(model: Model, reps: int, halves: list[int]) -> None:
    easier, harder = (Fraction(rpe, 2) for rpe in sorted(halves))
    lighter, heavier = (share_of_best(model, reps + reps_in_reserve(rpe)) for rpe in (easier, harder))
    assert lighter < heavier


@given(st.integers(1, 9), st.integers(10, 20))
@pytest.mark.parametrize("model", Model)
def test_a_load_falls_with_repetitions(model: Model, reps: int, half: int) -> None:
    reserve = reps_in_reserve(Fraction(half, 2))
    assert share_of_best(model, reps + 1 + reserve) < share_of_best(model, reps + reserve)


discs = st.lists(st.tuples(st.integers(1, 3), st.sampled_from([20, 15, 12, 10, 5, 3, 1])), min_size=1, max_size=6)


@given(discs, st.integers(40, 300), st.sampled_from(Model), st.booleans(), st.data())
def test_what_is_loaded_rises_with_effort_and_falls_with_repetitions(
    pairs: list[tuple[int, int]], best: int, model: Model, down: bool, data: st.DataObject
) -> None:
    """Rounding to what discs can make turns no order round, though it may make two loads one."""
    load = loader(pairs, best, model, down)
    reps, halves = data.draw(st.integers(1, 9)), data.draw(st.integers(10, 19))
    here = load(reps, Fraction(halves, 2))
    assert here <= load(reps, Fraction(halves + 1, 2))
    assert here >= load(reps + 1, Fraction(halves, 2))


def loader(pairs: list[tuple[int, int]], best: int, model: Model, down: bool) -> Callable[[int, Fraction], Fraction]:
    """What an athlete with these pairs of discs and this best in kilograms loads for repetitions at an RPE."""
    press = replace(BENCH, handling=Handling.BAR)
    athlete = Athlete(
        "Ines",
        stands("Ines"),
        bar=Mass(Fraction(20), Unit.KG),
        plates=tuple((2 * count, Mass(Fraction(disc), Unit.KG)) for count, disc in pairs),
        bests=(Best(press.name, Mass(Fraction(best), Unit.KG), stands("best")),),
        model=model.value,
    )
    loading = LineLoader(Makers(athlete, Unit.KG, down), Bests(athlete, None, lambda name: press), "Ines", ignored)

    def load(reps: int, effort: Fraction) -> Fraction:
        (made,) = loading.loaded(line(press, segment(3, reps, Effort(effort, effort))), 1).segments
        assert made.load is not None
        return made.load.mass.amount

    return load


def ignored(problem: Diagnostic) -> None:
    """Loads past the discs are told elsewhere."""


# ---- counting ------------------------------------------------------------------------------------

movements = st.sampled_from([BENCH, SQUAT, PUSHDOWN, CURL])
sessions = st.lists(st.lists(st.tuples(movements, st.integers(1, 9)), max_size=5), min_size=1, max_size=7)
subjects = st.sampled_from(["", "chest", "triceps", "arms", "quads"])
countings = st.sampled_from(Counting)

Sessions = list[list[tuple[Movement, int]]]


def lines(session: list[tuple[Movement, int]]) -> list[Line]:
    return [line(movement, sets) for movement, sets in session]


def weekly(made: Sessions, subject: str, counting: Counting) -> float:
    days = (day(slot, *lines(session)) for slot, session in zip(WEEKDAYS, made, strict=False))
    (found,) = values(plan(week(*days)), rule("weekly-sets", subject, 1), counting=counting)
    return found


@given(sessions, subjects, countings)
def test_counting_adds_up_over_sessions(made: Sessions, subject: str, counting: Counting) -> None:
    assert weekly(made, subject, counting) == sum(weekly([session], subject, counting) for session in made)


@given(sessions, subjects, countings, st.randoms(use_true_random=False))
def test_counting_does_not_mind_the_order(made: Sessions, subject: str, counting: Counting, chance) -> None:
    shuffled = [list(session) for session in made]
    for session in shuffled:
        chance.shuffle(session)
    chance.shuffle(shuffled)
    assert weekly(shuffled, subject, counting) == weekly(made, subject, counting)


@given(sessions, subjects)
def test_direct_is_at_most_fractional_is_at_most_total(made: Sessions, subject: str) -> None:
    direct, fractional, total = (
        weekly(made, subject, how) for how in (Counting.DIRECT, Counting.FRACTIONAL, Counting.TOTAL)
    )
    assert direct <= fractional <= total
