"""The same numbers from numpy and scipy, which work them out by other code and in floating point."""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants
from scipy.optimize import brentq
from scipy.signal import lfilter

from setwright.quantities import Mass, Unit
from setwright.science.load_management import (
    ACUTE_DAYS,
    CHRONIC_DAYS,
    coupled_ratio,
    monotony,
    moving_loads,
    moving_ratio,
    sample_deviation,
    strain,
    uncoupled_ratio,
)
from setwright.science.repetitions import Model, estimated_best, reps_at_share, share_of_best

# Whole loads: numpy's mean of equal days is then exact, so that both sides see the same weeks without a deviation.
loads = st.integers(0, 3000)
weeks = st.lists(loads, min_size=7, max_size=7)
months = st.lists(loads, min_size=CHRONIC_DAYS, max_size=90)
CLOSE = 1e-9


def fractions(daily: list[int]) -> list[Fraction]:
    return [Fraction(load) for load in daily]


# --- monotony, strain: numpy.std --------------------------------------------------------------------------------------


@given(weeks)
def test_deviation_of_a_week(daily: list[int]) -> None:
    found = sample_deviation(fractions(daily))
    assert found is not None
    assert float(found) == pytest.approx(np.std(daily, ddof=1), rel=CLOSE)


@given(weeks)
def test_monotony_and_strain_of_a_week(daily: list[int]) -> None:
    even, hard = monotony(fractions(daily)), strain(fractions(daily))
    deviation = np.std(daily, ddof=1)
    if deviation == 0:
        assert even is hard is None
        return
    assert even is not None
    assert hard is not None
    assert float(even) == pytest.approx(np.mean(daily) / deviation, rel=CLOSE)
    assert float(hard) == pytest.approx(np.sum(daily) * np.mean(daily) / deviation, rel=CLOSE)


# --- recent load to usual load: scipy.signal.lfilter, numpy.convolve --------------------------------------------------


def moving(daily: list[int], days: int) -> np.ndarray:
    """The recurrence as a filter of first order, begun as if the first day's load had been there for ever."""
    weight = 2 / (days + 1)
    found, _ = lfilter([weight], [1, weight - 1], daily, zi=[(1 - weight) * daily[0]])
    return np.asarray(found)


@given(st.lists(loads, min_size=1, max_size=90), st.sampled_from([ACUTE_DAYS, CHRONIC_DAYS]))
def test_moving_loads(daily: list[int], days: int) -> None:
    found = [float(load) for load in moving_loads(fractions(daily), days)]
    assert found == pytest.approx(moving(daily, days), rel=CLOSE, abs=CLOSE)


@given(months)
def test_moving_ratio(daily: list[int]) -> None:
    found, usual = moving_ratio(fractions(daily)), moving(daily, CHRONIC_DAYS)[-1]
    if not any(daily):
        assert found is None
        return
    assert found is not None
    assert float(found) == pytest.approx(moving(daily, ACUTE_DAYS)[-1] / usual, rel=CLOSE)


@given(months)
def test_coupled_and_uncoupled_ratios(daily: list[int]) -> None:
    def means(of: list[int], days: int) -> np.ndarray:
        return np.convolve(of, np.full(days, 1 / days), mode="valid")

    recent = means(daily, ACUTE_DAYS)[-1]
    before = means(daily[:-ACUTE_DAYS], CHRONIC_DAYS - ACUTE_DAYS)[-1]
    for found, usual in (
        (coupled_ratio(fractions(daily)), means(daily, CHRONIC_DAYS)[-1]),
        (uncoupled_ratio(fractions(daily)), before),
    ):
        assert (found is None) == (usual == 0)
        assert found is None or float(found) == pytest.approx(recent / usual, rel=CLOSE)


# --- repetition models: numpy for the formulas, scipy.optimize.brentq for their inverses ------------------------------

# 100 / best for 100 kg x r, from the formulas as `Model` cites them.
FORMULAS = {
    Model.EPLEY: lambda r: 1 / (1 + r / 30),
    Model.BRZYCKI: lambda r: (37 - r) / 36,
    Model.LANDER: lambda r: (101.3 - 2.67123 * r) / 100,
    Model.LOMBARDI: lambda r: r**-0.10,
    Model.MAYHEW: lambda r: (52.2 + 41.9 * np.exp(-0.055 * r)) / 100,
    Model.OCONNER: lambda r: 1 / (1 + r / 40),
    Model.WATHAN: lambda r: (48.8 + 53.8 * np.exp(-0.075 * r)) / 100,
}
# Every second tenth between one repetition and the model's end.
GRID = np.arange(1.2, 36.95, 0.2)

# Haff GG, Triplett NT (eds.), Essentials of Strength Training and Conditioning, 4th ed., 2016: percent by repetitions.
TABLE_REPS = (1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15)
TABLE_PERCENT = (100, 95, 93, 90, 87, 85, 83, 80, 77, 75, 70, 67, 65)


def grid(model: Model) -> np.ndarray:
    return GRID[TABLE_REPS[-1] >= GRID] if model is Model.TABLE else GRID


@pytest.mark.parametrize("model", FORMULAS)
def test_formulas(model: Model) -> None:
    found = [float(share_of_best(model, Fraction(reps))) for reps in GRID]
    assert found == pytest.approx(FORMULAS[model](GRID), rel=CLOSE)
    bests = [float(estimated_best(model, Mass(Fraction(100), Unit.KG), Fraction(reps)).amount) for reps in GRID]
    assert bests == pytest.approx(100 / FORMULAS[model](GRID), rel=CLOSE)


def test_the_mean_of_the_formulas() -> None:
    found = [float(share_of_best(Model.MEAN, Fraction(reps))) for reps in GRID]
    assert found == pytest.approx(np.mean([formula(GRID) for formula in FORMULAS.values()], axis=0), rel=CLOSE)


@pytest.mark.parametrize("model", Model)
def test_inverses(model: Model) -> None:
    last = float(TABLE_REPS[-1]) if model is Model.TABLE else 36.999
    for reps in grid(model):
        share = share_of_best(model, Fraction(reps))
        # Just above one repetition the formula itself begins; at one, every model gives the load.
        root = brentq(
            lambda tried, share=share: float(share_of_best(model, Fraction(tried)) - share), 1 + 1e-9, last, xtol=1e-12
        )
        assert float(reps_at_share(model, share)) == pytest.approx(root, abs=1e-8)
        assert root == pytest.approx(reps, abs=1e-8)


def test_between_the_rows_of_the_table() -> None:
    reps = grid(Model.TABLE)
    shares = np.interp(reps, TABLE_REPS, np.array(TABLE_PERCENT) / 100)
    assert [float(share_of_best(Model.TABLE, Fraction(each))) for each in reps] == pytest.approx(shares, rel=CLOSE)

    asked = np.linspace(0.65, 1, 141)
    back = np.interp(asked, np.array(TABLE_PERCENT[::-1]) / 100, TABLE_REPS[::-1])
    found = [float(reps_at_share(Model.TABLE, Fraction(round(each * 400), 400))) for each in asked]
    assert found == pytest.approx(back, rel=CLOSE)


# --- pounds: scipy.constants ------------------------------------------------------------------------------------------


def test_pounds() -> None:
    # Exact by definition: 1 lb = 0.45359237 kg (NIST SP 811, B.8); 7000 grains of 64.79891 mg each.
    one = Mass(Fraction(1), Unit.LB).to(Unit.KG).amount
    assert one == Fraction("0.45359237") == 7000 * Fraction("0.00006479891")
    assert float(one) == pytest.approx(constants.lb, rel=1e-15)
    assert float(one) == pytest.approx(constants.pound, rel=1e-15)
    assert float(one) == pytest.approx(7000 * constants.grain, rel=1e-15)


@given(st.fractions(0, 1000, max_denominator=8))
def test_masses_in_pounds(amount: Fraction) -> None:
    assert float(Mass(amount, Unit.LB).to(Unit.KG).amount) == pytest.approx(float(amount) * constants.lb)
    assert float(Mass(amount, Unit.KG).to(Unit.LB).amount) == pytest.approx(float(amount) / constants.lb)
