"""The table of lifts by zone, as four copies of one article print it (zones under 70, 70-79, 80-89, 90 and over)."""

from __future__ import annotations

from fractions import Fraction

import pytest

from setwright.science.zones import ZONES, place_in_range, zone_of


def test_rows() -> None:
    assert [(str(zone), zone.reps_of_a_set, zone.optimal, (zone.fewest, zone.most)) for zone in ZONES] == [
        ("under 70%", (3, 6), 24, (18, 30)),
        ("70-80%", (3, 6), 18, (12, 24)),
        ("80-90%", (2, 4), 15, (10, 20)),
        ("90% and over", (1, 2), 7, (4, 10)),
    ]


@pytest.mark.parametrize(
    ("percent", "zone"),
    [("40", 0), ("69.99", 0), ("70", 1), ("79.5", 1), ("79.99", 1), ("80", 2), ("89.5", 2), ("90", 3), ("105", 3)],
)
def test_a_border_belongs_to_the_zone_above_it(percent: str, zone: int) -> None:
    """No gaps: 79.5%, which the printed 70-79 and 80-89 leave open, is in the lower of the two."""
    assert zone_of(Fraction(percent)) is ZONES[zone]


def test_the_gaps_of_the_other_printing_are_filled() -> None:
    """55-65, 70-75, 80-85 and over 90 say nothing of 66-69, 76-79 and 86-90; the zones taken here do."""
    assert [ZONES.index(zone_of(Fraction(percent))) for percent in (66, 69, 76, 79, 86, 90)] == [0, 0, 1, 1, 2, 3]


@pytest.mark.parametrize(
    ("sets", "reps", "percent", "place"),
    [  # computed: repetitions, and where they lie in the range
        (5, 5, "75", "above"),
        (6, 3, "75", "optimal"),
        (4, 6, "72.5", "upper edge"),
        (5, 3, "85", "optimal"),
        (3, 1, "92.5", "below"),
        (4, 5, "82.5", "upper edge"),  # 20 repetitions are in the range, and five a set more than the row's 2-4
    ],
)
def test_worked_sessions(sets: int, reps: int, percent: str, place: str) -> None:
    zone = zone_of(Fraction(percent))
    found = place_in_range(zone, Fraction(sets * reps))
    assert {"above": found > 1, "optimal": found == Fraction(1, 2), "upper edge": found == 1, "below": found < 0}[place]
    assert (reps > zone.reps_of_a_set[1]) == ((reps, percent) == (5, "82.5"))


@pytest.mark.parametrize("zone", ZONES, ids=str)
def test_the_optimal_number_is_the_middle_of_its_range(zone) -> None:
    assert place_in_range(zone, Fraction(zone.fewest)) == 0
    assert place_in_range(zone, Fraction(zone.optimal)) == Fraction(1, 2)
    assert place_in_range(zone, Fraction(zone.most)) == 1


def test_less_than_nothing_is_in_no_zone() -> None:
    with pytest.raises(ValueError, match="zone"):
        zone_of(Fraction(-1))
