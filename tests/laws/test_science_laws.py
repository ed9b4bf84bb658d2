"""What holds for every number: shares fall, inverses invert, rounding never misses a nearer load."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.quantities import Mass, Unit, round_half_up
from setwright.science.effort import reps_in_reserve, rpe_from_reserve
from setwright.science.plates import Series, Stepped
from setwright.science.repetitions import Model, estimated_best, reps_at_share, share_of_best

EXACT = {Model.EPLEY, Model.BRZYCKI, Model.LANDER, Model.OCONNER, Model.TABLE}
TOLERANCE = Fraction(1, 10**9)

models = st.sampled_from(Model)
amounts = st.fractions(Fraction(1, 2), 400, max_denominator=100)
units = st.sampled_from(Unit)
masses = st.builds(Mass, amounts, units)


def reps_for(model: Model) -> st.SearchStrategy[Fraction]:
    """Repetitions that the model answers, to the hundredth."""
    return st.integers(100, 1500 if model is Model.TABLE else 3699).map(lambda hundredths: Fraction(hundredths, 100))


@given(st.data())
@pytest.mark.parametrize("model", Model)
def test_share_falls_with_reps(model: Model, data: st.DataObject) -> None:
    fewer, more = sorted(data.draw(st.lists(reps_for(model), min_size=2, max_size=2, unique=True)))
    assert 1 >= share_of_best(model, fewer) > share_of_best(model, more) > 0


@given(st.data())
@pytest.mark.parametrize("model", Model)
def test_inverse_gives_the_reps_back(model: Model, data: st.DataObject) -> None:
    reps = data.draw(reps_for(model))
    back = reps_at_share(model, share_of_best(model, reps))
    assert back == reps if model in EXACT else abs(back - reps) <= TOLERANCE


@given(masses, st.data())
@pytest.mark.parametrize("model", Model)
def test_estimate_is_linear_in_the_load_and_never_below_it(model: Model, load: Mass, data: st.DataObject) -> None:
    reps = data.draw(reps_for(model))
    best = estimated_best(model, load, reps)
    assert best.unit is load.unit
    assert best.amount >= load.amount
    assert estimated_best(model, load.times(Fraction(2)), reps).amount == 2 * best.amount


@given(st.fractions(5, 10, max_denominator=10))
def test_effort_and_reserve_are_inverse(rpe: Fraction) -> None:
    assert rpe_from_reserve(reps_in_reserve(rpe)) == rpe


@given(st.lists(masses, min_size=1, max_size=12).map(tuple), masses)
def test_no_nearer_load_in_a_series(values: tuple[Mass, ...], target: Mass) -> None:
    wanted = target.to(Unit.KG).amount
    chosen = Series(values).nearest(target).total
    assert chosen in values
    gaps = [(abs(value.to(Unit.KG).amount - wanted), -value.to(Unit.KG).amount) for value in values]
    assert (abs(chosen.to(Unit.KG).amount - wanted), -chosen.to(Unit.KG).amount) == min(gaps)

    low = Series(values).at_most(target).total.to(Unit.KG).amount
    all_loads = [value.to(Unit.KG).amount for value in values]
    assert low == max((load for load in all_loads if load <= wanted), default=min(all_loads))


@given(masses, masses)
def test_no_nearer_multiple_of_a_step(step: Mass, target: Mass) -> None:
    steps, wanted = Stepped(step), target.to(step.unit).amount
    nearest, below = steps.nearest(target).total.amount, steps.at_most(target).total.amount
    assert (nearest / step.amount).denominator == (below / step.amount).denominator == 1
    assert -step.amount / 2 < nearest - wanted <= step.amount / 2
    assert 0 <= wanted - below < step.amount


@given(st.fractions(-500, 500, max_denominator=1000), amounts)
def test_rounding_is_within_half_a_step(value: Fraction, step: Fraction) -> None:
    rounded = round_half_up(value, step)
    assert (rounded / step).denominator == 1
    assert -step / 2 < rounded - value <= step / 2


@given(masses)
def test_units_convert_there_and_back(mass: Mass) -> None:
    assert mass.to(Unit.KG).to(mass.unit) == mass.to(Unit.LB).to(mass.unit) == mass
