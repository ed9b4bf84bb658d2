"""Volume load, session load, monotony, strain and ratios of load, against published and computed values.

Rows marked "computed" are the published formula worked out in IEEE doubles; deviations are cross-checked with the
standard library's `statistics`.
"""

from __future__ import annotations

import statistics
from fractions import Fraction

import pytest

from setwright.quantities import Mass, Unit
from setwright.science.load_management import (
    coupled_from_uncoupled,
    coupled_ratio,
    density,
    mean_load,
    monotony,
    moving_loads,
    moving_ratio,
    relative_intensity,
    sample_deviation,
    session_load,
    strain,
    uncoupled_ratio,
    volume_load,
    weekly_load,
)

Sets = list[tuple[int, Fraction, Mass]]


def kg(amount: float) -> Mass:
    return Mass(Fraction(str(amount)), Unit.KG)


def sets(*rows: tuple[int, int, float]) -> Sets:
    return [(count, Fraction(reps), kg(load)) for count, reps, load in rows]


def days(*loads: float) -> list[Fraction]:
    return [Fraction(str(load)) for load in loads]


# --- what was lifted: BMJ Military Health 2020;168(4):314-319, table 1 ----------------------------------------------

CONSTANT = sets((3, 8, 65))
PROGRESSIVE = sets((1, 10, 55), (1, 8, 65), (1, 6, 75))


def test_volume_load() -> None:
    assert volume_load(CONSTANT) == 1560
    assert volume_load(PROGRESSIVE) == 1520


def test_volume_load_of_a_deload() -> None:
    """Half of the sets at 90% of the load leave 45%: 3000 kg come to 1350 kg (computed)."""
    assert volume_load(sets((6, 5, 100))) == 3000
    assert volume_load(sets((3, 5, 90))) == 1350


def test_volume_load_in_pounds_is_in_kilograms() -> None:
    """100 lb are 45.359237 kg exactly (NIST SP 811, B.8)."""
    assert volume_load([(1, Fraction(10), Mass(Fraction(100), Unit.LB))]) == Fraction("453.59237")


def test_mean_load() -> None:
    """1520 kg over 24 repetitions: printed 63, unrounded 63.33."""
    found = mean_load(PROGRESSIVE)
    assert found == Fraction(1520, 24)
    assert mean_load([]) is None


def test_relative_intensity() -> None:
    """Of a best of 110 kg: printed 57%. From the printed 63 kg 57.27%, unrounded 57.58% (computed)."""
    assert float(relative_intensity(kg(63), kg(110))) == pytest.approx(0.5727, abs=0.00005)
    assert float(relative_intensity(Mass(Fraction(1520, 24), Unit.KG), kg(110))) == pytest.approx(0.5758, abs=0.00005)
    assert relative_intensity(kg(50), kg(50).to(Unit.LB)) == 1
    with pytest.raises(ValueError, match="best"):
        relative_intensity(kg(50), kg(0))


def test_density() -> None:
    """1560 kg in 45 minutes: printed 34.7."""
    assert float(density(volume_load(CONSTANT), Fraction(45))) == pytest.approx(34.7, abs=0.05)
    with pytest.raises(ValueError, match="time"):
        density(Fraction(1560), Fraction(0))


def test_monotony_as_printed() -> None:
    """A mean of 790 and a deviation of 897 are printed as 0.88; the days themselves are not given."""
    assert round(790 / 897, 2) == 0.88
    # Two days x and y have the mean (x + y) / 2 and the sample deviation (x - y) / root 2.
    apart = 897 * 2**0.5 / 2
    found = monotony([Fraction(790 - apart), Fraction(790 + apart)])
    assert float(found or 0) == pytest.approx(0.8807, abs=0.00005)


# --- session load, monotony, strain: Foster 1998 --------------------------------------------------------------------


def test_session_load() -> None:
    """The week of sessions behind week F, minutes x effort of the whole session (computed)."""
    sessions = [(75, 7), (45, 4), (75, 6), (0, 0), (70, 8), (60, 4), (0, 0)]
    assert [session_load(Fraction(m), Fraction(e)) for m, e in sessions] == days(525, 180, 450, 0, 560, 240, 0)


@pytest.mark.parametrize(("minutes", "effort"), [(60, 11), (60, -1), (-5, 5)])
def test_session_load_off_the_scale(minutes: int, effort: int) -> None:
    with pytest.raises(ValueError, match="session"):
        session_load(Fraction(minutes), Fraction(effort))


WEEKS = {  # computed; the deviation with n - 1
    "A": (days(480, 0, 420, 0, 540, 0, 0), 1440, 205.71, 258.90, 0.7946, 1144.19),
    "B": (days(360, 300, 0, 420, 300, 480, 0), 1860, 265.71, 192.43, 1.3808, 2568.38),
    "C": (days(300, 300, 300, 300, 300, 300, 0), 1800, 257.14, 113.39, 2.2678, 4082.02),
    "F": (days(525, 180, 450, 0, 560, 240, 0), 1955, 279.29, 236.55, 1.1807, 2308.24),
}


@pytest.mark.parametrize("name", WEEKS)
def test_weeks(name: str) -> None:
    loads, total, mean, deviation, even, strained = WEEKS[name]
    assert weekly_load(loads) == total
    assert float(weekly_load(loads) / 7) == pytest.approx(mean, abs=0.005)
    assert float(sample_deviation(loads) or 0) == pytest.approx(deviation, abs=0.005)
    assert float(monotony(loads) or 0) == pytest.approx(even, abs=0.00005)
    assert float(strain(loads) or 0) == pytest.approx(strained, abs=0.005)


@pytest.mark.parametrize("loads", [days(*[400] * 7), days(*[0] * 7)], ids=["D", "E"])
def test_days_that_are_all_alike_have_no_monotony(loads: list[Fraction]) -> None:
    assert sample_deviation(loads) == 0
    assert monotony(loads) is None
    assert strain(loads) is None


@pytest.mark.parametrize("load", [1, 300, 725.5])
def test_six_equal_days_and_one_of_rest_are_a_constant(load: float) -> None:
    """6 / root 7 whatever the load (computed)."""
    assert float(monotony(days(*[load] * 6, 0)) or 0) == pytest.approx(6 / 7**0.5, rel=1e-12)


@pytest.mark.parametrize("name", WEEKS)
def test_the_deviation_is_the_standard_librarys_and_the_other_one_is_root_of_7_sixths_away(name: str) -> None:
    loads, *_ = WEEKS[name]
    floats = [float(load) for load in loads]
    assert float(sample_deviation(loads) or 0) == pytest.approx(statistics.stdev(floats), rel=1e-12)
    by_population = statistics.fmean(floats) / statistics.pstdev(floats)
    assert by_population / float(monotony(loads) or 0) == pytest.approx((7 / 6) ** 0.5, rel=1e-12)


def test_the_deviation_is_exact_where_it_can_be() -> None:
    assert sample_deviation(days(1, 3, 5)) == 2
    assert sample_deviation(days(0.5, 1.5, 2.5)) == 1
    assert sample_deviation(days(5)) is None


# --- ratios of load -------------------------------------------------------------------------------------------------


def in_weeks(*loads: float) -> list[Fraction]:
    """Weeks of these loads, each spread evenly over its days."""
    return [Fraction(str(load)) / 7 for load in loads for _ in range(7)]


@pytest.mark.parametrize(
    ("loads", "coupled", "uncoupled"),
    [  # computed
        (in_weeks(1000, 1000, 1000, 1500), 1.3333, 1.5000),
        (in_weeks(1200, 1400, 1600, 1800), 1.2000, 1.2857),
        (days(*[100] * 7, *[120] * 7, *[140] * 7, *[200] * 7), 1.4286, 1.6667),
        (days(*[100] * 21, *[200] * 7), 1.6000, 2.0000),
    ],
)
def test_rolling_ratios(loads: list[Fraction], coupled: float, uncoupled: float) -> None:
    """Windt and Gabbett 2019: the last 7 days over the last 28, or over the 21 before."""
    assert float(coupled_ratio(loads) or 0) == pytest.approx(coupled, abs=0.00005)
    assert float(uncoupled_ratio(loads) or 0) == pytest.approx(uncoupled, abs=0.00005)
    assert coupled_ratio(loads) == coupled_from_uncoupled(uncoupled_ratio(loads) or Fraction(0))


@pytest.mark.parametrize(
    ("uncoupled", "coupled"),
    [(0.5, 0.5714), (0.8, 0.8421), (1, 1), (1.3, 1.2093), (1.5, 1.3333), (2, 1.6), (3, 2)],  # computed
)
def test_coupled_from_uncoupled(uncoupled: float, coupled: float) -> None:
    assert float(coupled_from_uncoupled(Fraction(str(uncoupled)))) == pytest.approx(coupled, abs=0.00005)


def test_the_coupled_ratio_stays_below_4() -> None:
    assert coupled_ratio(days(*[0] * 21, *[500] * 7)) == 4  # all of four weeks in one: the end that is not passed
    assert uncoupled_ratio(days(*[0] * 21, *[500] * 7)) is None
    assert coupled_from_uncoupled(Fraction(10**6)) < 4


def test_too_few_days_and_nothing_but_rest_have_no_ratio() -> None:
    assert coupled_ratio(days(*[100] * 27)) is None
    assert uncoupled_ratio(days(*[100] * 27)) is None
    assert coupled_ratio(days(*[0] * 28)) is None
    assert moving_ratio(days(0, 0)) is None
    assert moving_ratio([]) is None


# --- moving averages: Williams et al. 2017, seeded with the first day's load -----------------------------------------

TWO_WEEKS = days(300, 0, 400, 0, 500, 0, 0) * 2
MOVING = {  # day: recent, usual, ratio; computed
    1: (300.0000, 300.0000, 1.0000),
    2: (225.0000, 279.3103, 0.8056),
    3: (268.7500, 287.6338, 0.9343),
    4: (201.5625, 267.7970, 0.7527),
    5: (276.1719, 283.8110, 0.9731),
    6: (207.1289, 264.2378, 0.7839),
    7: (155.3467, 246.0145, 0.6315),
    8: (191.5100, 249.7376, 0.7668),
    14: (136.0378, 213.2776, 0.6378),
}


@pytest.mark.parametrize("day", MOVING)
def test_moving_loads_day_by_day(day: int) -> None:
    recent, usual, ratio = MOVING[day]
    assert float(moving_loads(TWO_WEEKS, 7)[day - 1]) == pytest.approx(recent, abs=0.00005)
    assert float(moving_loads(TWO_WEEKS, 28)[day - 1]) == pytest.approx(usual, abs=0.00005)
    assert float(moving_ratio(TWO_WEEKS[:day]) or 0) == pytest.approx(ratio, abs=0.00005)


def test_weights_of_today() -> None:
    """2 / (N + 1): 0.25 for 7 days and 2/29 for 28."""
    assert moving_loads(days(0, 1), 7)[-1] == Fraction(1, 4)
    assert moving_loads(days(0, 1), 28)[-1] == Fraction(2, 29)


@pytest.mark.parametrize(
    ("loads", "recent", "usual", "ratio"),
    [  # computed
        (days(*[100] * 7, *[120] * 7, *[140] * 7, *[200] * 7), 191.5870, 151.8017, 1.2621),
        (days(*[100] * 21, *[200] * 7), 186.6516, 139.3598, 1.3394),
        # Four times week A: a week that repeats does not come to 1.
        (days(480, 0, 420, 0, 540, 0, 0) * 4, 150.7279, 231.0227, 0.6524),
    ],
)
def test_moving_ratios(loads: list[Fraction], recent: float, usual: float, ratio: float) -> None:
    assert float(moving_loads(loads, 7)[-1]) == pytest.approx(recent, abs=0.00005)
    assert float(moving_loads(loads, 28)[-1]) == pytest.approx(usual, abs=0.00005)
    assert float(moving_ratio(loads) or 0) == pytest.approx(ratio, abs=0.00005)
