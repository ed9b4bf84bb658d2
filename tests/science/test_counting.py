"""Counting sets for a muscle: one week worked by hand."""

from fractions import Fraction

import numpy as np
import pytest

from build_plans import day, line, movement, plan, week
from setwright.plan import Muscle
from setwright.report.volume import volume
from setwright.science.counting import Counting, credit

# Sets of each movement in a week of three days, 39 in all.
WEEK = {
    "bench press": 4,
    "barbell row": 4,
    "overhead press": 3,
    "barbell curl": 3,
    "back squat": 4,
    "romanian deadlift": 3,
    "leg extension": 2,
    "standing calf raise": 3,
    "incline bench press": 3,
    "lat pulldown": 4,
    "triceps pushdown": 3,
    "lateral raise": 3,
}

# Prime movers 1, clear helpers 0.5 (weights after Pelland et al. 2024; which muscle helps where is a design choice).
WORKS = {
    "bench press": "chest 1, front-delts 0.5, triceps 0.5",
    "barbell row": "lats 1, upper-back 1, biceps 0.5, rear-delts 0.5, erectors 0.5",
    "overhead press": "front-delts 1, side-delts 0.5, triceps 0.5",
    "barbell curl": "biceps 1, forearms 0.5",
    "back squat": "quads 1, glutes 1, adductors 0.5, erectors 0.5",
    "romanian deadlift": "hamstrings 1, glutes 1, erectors 0.5, forearms 0.5",
    "leg extension": "quads 1",
    "standing calf raise": "calves 1",
    "incline bench press": "chest 1, front-delts 0.5, triceps 0.5",
    "lat pulldown": "lats 1, biceps 0.5, upper-back 0.5",
    "triceps pushdown": "triceps 1",
    "lateral raise": "side-delts 1",
}


def weekly_sets(mode: Counting, muscle: str) -> Fraction:
    total = Fraction(0)
    for name, sets in WEEK.items():
        for work in WORKS[name].split(", "):
            worked, weight = work.split()
            if worked == muscle:
                total += sets * credit(mode, Fraction(weight))
    return total


@pytest.mark.parametrize(
    ("muscle", "total", "fractional", "direct"),
    [  # worked by hand; triceps: 4 x 0.5 + 3 x 0.5 + 3 x 0.5 + 3 x 1 = 8, front delts: 2 + 3 + 1.5 = 6.5
        ("adductors", 4, "2", 0),
        ("biceps", 11, "7", 3),
        ("calves", 3, "3", 3),
        ("chest", 7, "7", 7),
        ("erectors", 11, "5.5", 0),
        ("forearms", 6, "3", 0),
        ("front-delts", 10, "6.5", 3),
        ("glutes", 7, "7", 7),
        ("hamstrings", 3, "3", 3),
        ("lats", 8, "8", 8),
        ("quads", 6, "6", 6),
        ("rear-delts", 4, "2", 0),
        ("side-delts", 6, "4.5", 3),
        ("triceps", 13, "8", 3),
        ("upper-back", 8, "6", 4),
    ],
)
def test_a_week_by_hand(muscle: str, total: int, fractional: str, direct: int) -> None:
    assert weekly_sets(Counting.TOTAL, muscle) == total
    assert weekly_sets(Counting.FRACTIONAL, muscle) == Fraction(fractional)
    assert weekly_sets(Counting.DIRECT, muscle) == direct


def test_a_week_as_a_product_of_matrices() -> None:
    """Sets x credits by numpy, beside what the report counts in the same week."""
    muscles = sorted({work.split()[0] for works in WORKS.values() for work in works.split(", ")})
    weights = np.zeros((len(WEEK), len(muscles)))
    for row, name in enumerate(WEEK):
        for work in WORKS[name].split(", "):
            worked, weight = work.split()
            weights[row, muscles.index(worked)] = float(weight)
    sets = np.array(list(WEEK.values()))

    done = [line(movement(name, **credits_of(name)), count) for name, count in WEEK.items()]
    days = week(day("Mon", *done[:4]), day("Wed", *done[4:8]), day("Fri", *done[8:]))
    counted = volume(plan(days, muscles=tuple(Muscle(word, word) for word in muscles))).rows
    assert [row.muscle.word for row in counted] == muscles
    assert [float(row.fractional_sets) for row in counted] == (sets @ weights).tolist()
    assert [float(row.total_sets) for row in counted] == (sets @ (weights > 0)).tolist()
    assert [float(row.direct_sets) for row in counted] == (sets @ (weights >= 1)).tolist()


def credits_of(name: str) -> dict[str, float]:
    pairs = (work.split() for work in WORKS[name].split(", "))
    return {worked.replace("-", "_"): float(weight) for worked, weight in pairs}


@pytest.mark.parametrize("mode", Counting)
def test_no_work_counts_nothing(mode: Counting) -> None:
    assert credit(mode, Fraction(0)) == 0
