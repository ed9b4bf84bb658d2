"""Loads that equipment can make, against published disc sets and against trying everything."""

from collections.abc import Iterator
from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.quantities import Mass, Unit
from setwright.science.discs import DISC_COLOURS, colour_of
from setwright.science.plates import Loading, LoadMaker, Rack, Series, Stepped, usual_steps


def kg(amount: str | int | Fraction) -> Mass:
    return Mass(Fraction(amount), Unit.KG)


def lb(amount: str | int | Fraction) -> Mass:
    return Mass(Fraction(amount), Unit.LB)


def discs(text: str) -> tuple[Fraction, ...]:
    return tuple(Fraction(mass) for mass in text.split())


def stock(text: str, each: int = 10) -> tuple[tuple[int, Mass], ...]:
    return tuple((each, kg(mass)) for mass in text.split())


# Discs of the weightlifting federation (as reported by nbcolympics.com) and of the powerlifting federation (secondary
# translation of its rules); collars are 2.5 kg each in both.
IWF = stock("25 20 15 10 5 2.5 2 1.5 1 0.5")
IPF = stock("50 25 20 15 10 5 2.5 1.25")
IPF_WITHOUT_50 = IPF[1:]


@pytest.mark.parametrize(
    ("target", "bar", "collars", "plates", "per_side"),
    [  # computed
        ("100", 20, None, IWF, "25 15"),
        ("100", 20, "2.5", IWF, "25 10 2.5"),
        ("61", 15, "2.5", IWF, "20 0.5"),
        ("25", 20, "2.5", IWF, ""),
        ("25", 20, "2.5", IPF, ""),
        ("182.5", 20, "2.5", IPF_WITHOUT_50, "25 25 25 2.5 1.25"),
        ("300", 20, "2.5", IPF_WITHOUT_50, "25 25 25 25 25 10 2.5"),
        ("300", 20, "2.5", IPF, "50 50 25 10 2.5"),
        ("102.5", 20, "2.5", IPF, "25 10 2.5 1.25"),
    ],
)
def test_published_sets(
    target: str, bar: int, collars: str | None, plates: tuple[tuple[int, Mass], ...], per_side: str
) -> None:
    rack = Rack(kg(bar), plates, kg(collars) if collars else None)
    assert rack.nearest(kg(target)) == rack.at_most(kg(target)) == Loading(kg(target), discs(per_side))


@pytest.mark.parametrize(
    ("target", "below", "above"),
    [("142.5", "142", "143"), ("227.5", "227", "228")],  # computed: on the IWF set each leaves 0.25 kg a side
)
def test_not_loadable(target: str, below: str, above: str) -> None:
    rack = Rack(kg(20), IWF, kg("2.5"))
    assert rack.nearest(kg(target)).total == kg(above)  # halfway: up
    assert rack.at_most(kg(target)).total == kg(below)


def test_the_heaviest_first_is_not_always_right() -> None:
    # Computed: with 25, 20, 20 a side, 40 a side is 20 + 20; to begin with the 25 gets stuck.
    rack = Rack(kg(20), ((2, kg(25)), (4, kg(20))))
    assert rack.nearest(kg(100)) == Loading(kg(100), discs("20 20"))


def test_fewest_discs_then_the_heavier() -> None:
    rack = Rack(kg(20), stock("25 20 15 10 5", each=4))
    assert rack.nearest(kg(60)).per_side == discs("20")  # not 15 + 5 or 10 + 10
    assert rack.nearest(kg(100)).per_side == discs("25 15")  # not 20 + 20


def test_fewer_discs_before_a_heavier_one() -> None:
    rack = Rack(kg(20), ((2, kg(25)), (4, kg(15)), (4, kg("2.5"))))
    assert rack.nearest(kg(80)).per_side == discs("15 15")  # not 25 + 2.5 + 2.5


def test_odd_discs_stay_on_the_floor() -> None:
    # The stock of the language's example athlete: 4 discs of 2.5 are two a side; a fifth changes nothing.
    four = Rack(kg(15), ((2, kg(20)), (2, kg(10)), (2, kg(5)), (4, kg("2.5")), (2, kg("1.25"))))
    five = Rack(kg(15), ((2, kg(20)), (2, kg(10)), (2, kg(5)), (5, kg("2.5")), (3, kg("1.25"))))
    assert four.heaviest == five.heaviest == Loading(kg("97.5"), discs("20 10 5 2.5 2.5 1.25"))
    assert Rack(kg(20), ((1, kg(20)),)).heaviest.per_side == ()
    assert Rack(kg(20), ((1, kg(20)), (1, kg(20)))).heaviest.per_side == discs("20")


def test_past_the_ends() -> None:
    rack = Rack(kg(20), ((2, kg(10)),), kg("2.5"))
    assert rack.lightest == rack.nearest(kg(1)) == rack.at_most(kg(1)) == Loading(kg(25), ())
    assert rack.heaviest == rack.nearest(kg(500)) == rack.at_most(kg(500)) == Loading(kg(45), discs("10"))


def test_a_bar_alone() -> None:
    assert Rack(kg(20), ()).nearest(kg(100)) == Loading(kg(20), ())


def test_targets_in_another_unit() -> None:
    # 225 lb is 102.058... kg exactly (1 lb = 0.45359237 kg).
    rack = Rack(kg(20), stock("25 20 15 10 5 2.5 1.25"))
    assert rack.nearest(lb(225)).total == kg("102.5")
    assert rack.at_most(lb(225)).total == kg(100)
    pounds = Rack(lb(45), ((4, lb(45)), (2, lb(25)), (2, lb(10)), (2, lb(5)), (2, lb("2.5"))))
    assert pounds.nearest(kg(60)) == Loading(lb(130), discs("25 10 5 2.5"))  # 132.28 lb
    assert pounds.nearest(lb("132.5")) == Loading(lb(135), discs("45"))  # halfway: up


def test_discs_and_collars_in_another_unit() -> None:
    rack = Rack(kg(20), ((2, kg(20)), (2, lb(45))), lb(5))
    assert rack.lightest.total == kg("24.5359237")
    assert rack.nearest(kg(64)).per_side == discs("20")
    assert rack.nearest(kg(66)).per_side == discs("20.41165665")


def test_absurd_counts_are_answered() -> None:
    rack = Rack(kg(20), ((10**11, kg(20)), (10**11, kg("1.25"))))
    assert rack.nearest(kg(100)) == Loading(kg(100), discs("20 20"))


# --- against trying every combination ---------------------------------------------------------------------------------

masses = st.sampled_from([*map(kg, discs("25 20 15 10 5 2.5 2 1.25 1 0.5")), lb(45), lb(10)])
stocks = st.lists(st.tuples(st.integers(0, 5), masses), max_size=5).map(tuple)
targets = st.fractions(0, 250, max_denominator=40)


def every_side(plates: tuple[tuple[int, Mass], ...]) -> Iterator[tuple[Fraction, ...]]:
    """Every choice of discs for one side, kinds apart even when two entries are of one mass."""
    singles: dict[Fraction, int] = {}
    for count, mass in plates:
        singles[mass.to(Unit.KG).amount] = singles.get(mass.to(Unit.KG).amount, 0) + count
    for counts in product(*(range(count // 2 + 1) for count in singles.values())):
        chosen = [mass for mass, count in zip(singles, counts, strict=True) for _ in range(count)]
        yield tuple(sorted(chosen, reverse=True))


@given(stocks, targets)
def test_rack_against_every_combination(plates: tuple[tuple[int, Mass], ...], target: Fraction) -> None:
    rack = Rack(kg(20), plates, kg("2.5"))
    ways = [(25 + 2 * sum(side), side) for side in every_side(plates)]

    nearest = rack.nearest(kg(target))
    total, side = min(ways, key=lambda way: (abs(way[0] - target), -way[0], len(way[1]), [-disc for disc in way[1]]))
    assert nearest == Loading(kg(total), side)

    below = [total for total, _ in ways if total <= target]
    assert rack.at_most(kg(target)).total == kg(max(below, default=Fraction(25)))


# --- dumbbells, stacks ------------------------------------------------------------------------------------------------


def test_series() -> None:
    dumbbells = Series(tuple(kg(mass) for mass in range(2, 31, 2)))
    assert dumbbells.nearest(kg(13)) == Loading(kg(14))  # halfway: up
    assert dumbbells.nearest(kg("12.9")) == Loading(kg(12))
    assert dumbbells.at_most(kg("13.9")) == Loading(kg(12))
    assert dumbbells.nearest(lb(30)) == Loading(kg(14))  # 13.61 kg
    assert dumbbells.lightest == dumbbells.at_most(kg(1)) == Loading(kg(2))
    assert dumbbells.heaviest == dumbbells.nearest(kg(99)) == Loading(kg(30))


def test_series_in_any_order_and_unit() -> None:
    mixed = Series((lb(25), kg(4), kg(12)))
    assert mixed.nearest(kg(11)) == Loading(lb(25))  # 11.34 kg
    with pytest.raises(ValueError, match="at least one"):
        Series(())


@pytest.mark.parametrize(
    ("target", "nearest", "at_most"),
    [
        (kg("101.25"), kg("102.5"), kg(100)),  # computed; halves up
        (kg("98.75"), kg(100), kg("97.5")),
        (kg(100), kg(100), kg(100)),
        (lb(225), kg("102.5"), kg(100)),
        (kg(1), kg(0), kg(0)),
    ],
)
def test_steps(target: Mass, nearest: Mass, at_most: Mass) -> None:
    steps = Stepped(kg("2.5"))
    assert (steps.nearest(target), steps.at_most(target)) == (Loading(nearest), Loading(at_most))


def test_usual_steps() -> None:
    # 2.5 kg and 5 lb: common practice, no source.
    assert usual_steps(Unit.KG).nearest(kg("41.3")) == Loading(kg("42.5"))
    assert usual_steps(Unit.LB).nearest(lb("41.3")) == Loading(lb(40))


@pytest.mark.parametrize(
    "maker", [Rack(kg(20), stock("20 10")), Series((kg(10), kg(20))), Stepped(kg(5))], ids=["rack", "series", "steps"]
)
def test_all_make_loads(maker: LoadMaker) -> None:
    assert maker.nearest(kg(20)).total == maker.at_most(kg(20)).total == kg(20)


# --- colours ----------------------------------------------------------------------------------------------------------


def test_colours_of_discs() -> None:
    # Weightlifting federation, as reported by nbcolympics.com.
    published = "25 red, 20 blue, 15 yellow, 10 green, 5 white, 2.5 red, 2 blue, 1.5 yellow, 1 green, 0.5 white"
    pairs = [entry.split() for entry in published.split(", ")]
    assert [(str(float(mass)), colour) for mass, colour in DISC_COLOURS.items()] == [
        (str(float(mass)), colour) for mass, colour in pairs
    ]
    assert colour_of(kg("2.5")) == "red"
    assert colour_of(kg("1.25")) is None
    assert colour_of(lb(45)) is None
    assert colour_of(lb(25)) is None
