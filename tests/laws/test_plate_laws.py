"""Rounding never misses a nearer load: odd and limited stocks of discs against all that one side can weigh.

All the ways of loading a side are laid out by numpy, in grams, so that nothing is rounded and nothing left out.
"""

from __future__ import annotations

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.quantities import Mass, Unit
from setwright.science.plates import Rack

MOST_KINDS = 10
MOST_A_SIDE = 20
BAR_G = 20_000
COLLAR_G = 2_500

Stock = dict[int, int]  # grams of a disc, and how many single discs there are

some_grams = st.integers(50, 50_000)
round_grams = st.integers(1, 100).map(lambda quarters: 250 * quarters)
bought = st.lists(
    st.tuples(some_grams | round_grams, st.integers(1, 9)), max_size=MOST_KINDS, unique_by=lambda kind: kind[0]
)
usual_grams = st.sampled_from([25_000, 20_000, 15_000, 10_000, 5_000, 2_500, 2_000, 1_500, 1_250, 1_000, 500])
targets = st.integers(0, 400_000)


def kg(grams: int | Fraction) -> Mass:
    return Mass(Fraction(grams) / 1000, Unit.KG)


def within(kinds: list[tuple[int, int]]) -> Stock:
    """The first kinds that come to at most twenty discs a side."""
    stock: Stock = {}
    for grams, singles in kinds:
        if sum(count // 2 for count in stock.values()) + singles // 2 <= MOST_A_SIDE:
            stock[grams] = singles
    return stock


def every_side(stock: Stock) -> tuple[np.ndarray, np.ndarray]:
    """The grams of each way to load a side, and the discs that it takes; the later of two has more heavy ones."""
    grams, discs = np.zeros(1, dtype=np.int64), np.zeros(1, dtype=np.int64)
    for mass, singles in sorted(stock.items(), reverse=True):
        numbers = np.arange(singles // 2 + 1)
        grams = np.add.outer(grams, mass * numbers).ravel()
        discs = np.add.outer(discs, numbers).ravel()
    return grams, discs


def rack(stock: Stock) -> Rack:
    return Rack(kg(BAR_G), tuple((singles, kg(mass)) for mass, singles in stock.items()), kg(COLLAR_G))


def assert_nothing_nearer(stock: Stock, target: int) -> None:
    grams, discs = every_side(stock)
    totals = BAR_G + 2 * COLLAR_G + 2 * grams
    made = rack(stock)

    gaps = np.abs(totals - target)
    chosen = made.nearest(kg(target))
    assert chosen.total == kg(int(totals[gaps == gaps.min()].max()))  # of two equally near, the heavier
    assert chosen.per_side == fewest(stock, grams, discs, int((chosen.total.amount * 1000 - BAR_G) / 2) - COLLAR_G)
    assert_can_be_loaded(stock, chosen.per_side, chosen.total)

    under = totals[totals <= target]
    below = made.at_most(kg(target))
    assert below.total == kg(int(under.max() if under.size else totals.min()))
    assert_can_be_loaded(stock, below.per_side, below.total)
    assert (made.lightest.total, made.heaviest.total) == (kg(int(totals.min())), kg(int(totals.max())))


def fewest(stock: Stock, grams: np.ndarray, discs: np.ndarray, side: int) -> tuple[Fraction, ...]:
    """Of all ways to a side the one with the fewest discs, then with the heavier ones."""
    ways = np.flatnonzero(grams == side)
    best = ways[discs[ways] == discs[ways].min()].max()
    kinds = sorted(stock, reverse=True)
    numbers = np.unravel_index(best, [stock[kind] // 2 + 1 for kind in kinds]) if kinds else ()
    return tuple(Fraction(kind, 1000) for kind, number in zip(kinds, numbers, strict=True) for _ in range(number))


def assert_can_be_loaded(stock: Stock, per_side: tuple[Fraction, ...], total: Mass) -> None:
    assert list(per_side) == sorted(per_side, reverse=True)
    assert kg(BAR_G + 2 * COLLAR_G).amount + 2 * sum(per_side) == total.amount
    for disc in set(per_side):
        assert 2 * per_side.count(disc) <= stock[int(disc * 1000)]


@given(bought.map(within), targets)
def test_odd_stocks(stock: Stock, target: int) -> None:
    assert_nothing_nearer(stock, target)


@given(st.dictionaries(some_grams, st.integers(1, 3), max_size=4), targets)
def test_limited_stocks(stock: Stock, target: int) -> None:
    assert_nothing_nearer(stock, target)


@given(st.dictionaries(usual_grams, st.integers(2, 8), min_size=3, max_size=7), st.data())
def test_the_fewest_discs_of_many_ways(stock: Stock, data: st.DataObject) -> None:
    grams, _ = every_side(stock)
    side = data.draw(st.sampled_from(np.unique(grams).tolist()))
    assert_nothing_nearer(stock, BAR_G + 2 * COLLAR_G + 2 * side)


@pytest.mark.parametrize(
    "stock",
    [
        dict.fromkeys((25_000, 20_000, 15_000, 10_000, 5_000, 2_500, 1_250), 8),
        dict.fromkeys((20_000, 15_000, 12_000, 10_000, 9_000, 7_500, 5_000, 3_000, 2_500, 1_000), 4),
        {20_000: 6, 15_000: 2, 11_000: 5, 10_000: 12, 5_000: 10, 2_000: 7},
        {30_000: 16, 24_000: 2, 16_000: 4, 4_000: 8},
    ],
    ids=["usual", "ten kinds", "uneven", "many of the heaviest"],
)
def test_every_load_takes_the_fewest_discs(stock: Stock) -> None:
    grams, discs = every_side(stock)
    made = rack(stock)
    for side in np.unique(grams).tolist():
        chosen = made.nearest(kg(BAR_G + 2 * COLLAR_G + 2 * side))
        assert chosen.per_side == fewest(stock, grams, discs, side)


@settings(max_examples=20)
@given(st.lists(some_grams, min_size=MOST_KINDS, max_size=MOST_KINDS, unique=True), st.lists(targets, min_size=5))
def test_ten_odd_kinds_with_twenty_discs_a_side(masses: list[int], wanted: list[int]) -> None:
    for target in wanted:
        assert_nothing_nearer(dict.fromkeys(masses, 4), target)


@settings(max_examples=3, deadline=None)
@given(st.lists(some_grams, min_size=20, max_size=20, unique=True), targets)
def test_twenty_odd_kinds_of_two(masses: list[int], target: int) -> None:
    assert_nothing_nearer(dict.fromkeys(masses, 2), target)


@given(bought.map(within), st.lists(targets, min_size=2, max_size=2))
def test_a_heavier_target_never_gets_a_lighter_load(stock: Stock, wanted: list[int]) -> None:
    made = rack(stock)
    lighter, heavier = (made.nearest(kg(target)).total.amount for target in sorted(wanted))
    assert lighter <= heavier
