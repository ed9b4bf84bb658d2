"""Masses in two units, halves that round up, numbers as written."""

from fractions import Fraction

import pytest

from setwright.quantities import Mass, Unit, plain, round_half_up


@pytest.mark.parametrize(
    ("pounds", "kilograms"),
    [  # computed from 1 lb = 0.45359237 kg exactly (NIST SP 811, B.8)
        ("1", "0.45359237"),
        ("2.5", "1.133980925"),
        ("5", "2.26796185"),
        ("10", "4.5359237"),
        ("25", "11.33980925"),
        ("35", "15.87573295"),
        ("45", "20.41165665"),
        ("100", "45.359237"),
        ("135", "61.23496995"),
        ("225", "102.05828325"),
        ("315", "142.88159655"),
    ],
)
def test_pounds_are_exact(pounds: str, kilograms: str) -> None:
    in_pounds, in_kilograms = Mass(Fraction(pounds), Unit.LB), Mass(Fraction(kilograms), Unit.KG)
    assert in_pounds.to(Unit.KG) == in_kilograms
    assert in_kilograms.to(Unit.LB) == in_pounds


@pytest.mark.parametrize(
    ("kilograms", "pounds"),
    [("20", "44.0925"), ("60", "132.2774"), ("100", "220.4623"), ("140", "308.6472")],  # computed
)
def test_kilograms_in_pounds(kilograms: str, pounds: str) -> None:
    assert plain(Mass(Fraction(kilograms), Unit.KG).to(Unit.LB).amount, places=4) == pounds


@pytest.mark.parametrize(
    ("value", "step", "rounded"),
    [
        ("101.25", "2.5", "102.5"),  # computed; halves to even would give 100
        ("98.75", "2.5", "100"),
        ("98", "2.5", "97.5"),  # 70% and 80% of 140 kg
        ("112", "2.5", "112.5"),
        ("126", "2.5", "125"),
        ("2.5", "1", "3"),
        ("-2.5", "1", "-2"),  # up is up, also below zero
    ],
)
def test_halves_round_up(value: str, step: str, rounded: str) -> None:
    assert round_half_up(Fraction(value), Fraction(step)) == Fraction(rounded)


@pytest.mark.parametrize(
    ("value", "written"),
    [
        ("100", "100"),
        ("102.50", "102.5"),
        ("1.25", "1.25"),
        ("1.125", "1.13"),
        ("0.05", "0.05"),
        ("-8", "-8"),
        ("-0.5", "-0.5"),
        ("1/3", "0.33"),
        ("0.001", "0"),
    ],
)
def test_numbers_as_written(value: str, written: str) -> None:
    assert plain(Fraction(value)) == written


def test_a_sum_is_in_the_first_unit() -> None:
    assert Mass(Fraction(20), Unit.KG).plus(Mass(Fraction(10), Unit.LB)) == Mass(Fraction("24.5359237"), Unit.KG)
    assert str(Mass(Fraction("42.5"), Unit.KG)) == "42.5 kg"
