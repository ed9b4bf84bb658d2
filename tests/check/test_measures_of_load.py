"""Measures of percents, balance, planned load and zones on small plans, worked out by hand or by published formulas."""

from fractions import Fraction

import pytest

from ask_measures import figures, measured, values
from build_plans import (
    BENCH,
    CURL,
    PUSHDOWN,
    SQUAT,
    day,
    deload,
    line,
    movement,
    percent,
    plan,
    reps,
    rest,
    rpe,
    rule,
    segment,
    week,
)
from setwright.plan import SegmentKind
from setwright.prescription import ChangeByPercent, PercentOfBest, RepsKind, Weight
from setwright.quantities import Mass, Unit
from setwright.record import replace
from setwright.rules import BoundUnit, Where


def less(change):
    return ChangeByPercent(Fraction(change))


@pytest.mark.parametrize(
    ("segments", "subjects", "highest"),
    [
        ([segment(3, 5, percent(80))], "", [80]),
        ([segment(3, 5, rpe(9))], "", []),
        ([segment(3, 5)], "", []),
        ([segment(3, 5, percent(95), SegmentKind.WARM_UP), segment(3, 5, percent(80))], "", [80]),
        ([segment(1, 3, percent(80)), segment(1, 2, less(5))], "", [84]),  # 80% and 5% of it more
        ([segment(1, 3, percent(90)), segment(3, 5, less(-10)), segment(1, 5, less(20))], "", [97.2]),  # 81% x 1.2
        ([segment(1, 3, rpe(8)), segment(3, 5, less(-10))], "", []),
        ([segment(3, 5, PercentOfBest(Fraction(110), of="Front Squat"))], "", [110]),
        ([segment(3, 5, percent(80))], "chest", [80]),
        ([segment(3, 5, percent(80))], "triceps", []),
    ],
)
def test_intensity_is_the_highest_percent_that_is_written(segments, subjects, highest):
    made = plan(week(day("Mon", line(BENCH, *segments))))
    assert values(made, rule("intensity", subjects, high=85, unit=BoundUnit.PERCENT)) == pytest.approx(highest)


PUSH = replace(BENCH, pattern="horizontal-push")
DIP = replace(movement("Dip", chest=1, triceps=1), pattern="horizontal-push")
ROW = replace(movement("Barbell Row", biceps=0.5), pattern="horizontal-pull")


@pytest.mark.parametrize(
    ("lines", "sides", "ratios"),
    [
        ([(PUSH, 4), (DIP, 2), (ROW, 4)], "horizontal-push : horizontal-pull", [1.5]),
        ([(PUSH, 4), (DIP, 2), (ROW, 4)], "horizontal-pull : horizontal-push", [2 / 3]),
        ([(PUSH, 4), (DIP, 2), (ROW, 4)], "chest : biceps", [6 / 2]),
        ([(PUSH, 4), (DIP, 2), (ROW, 4)], "arms : chest", [(2 + 2 + 2) / 6]),
        ([(PUSH, 4), (DIP, 2), (ROW, 4)], "chest : horizontal-pull", [6 / 4]),
        ([(SQUAT, 3)], "horizontal-push : horizontal-pull", []),
        ([(ROW, 3)], "horizontal-push : horizontal-pull", [0]),
    ],
)
def test_balance_of_patterns_and_muscles(lines, sides, ratios):
    made = plan(week(day("Mon", *(line(each, sets) for each, sets in lines))))
    assert values(made, rule("balance", sides, 0.7, 1.4)) == pytest.approx(ratios)


def test_sets_against_none_are_above_every_bound_and_are_printed_as_they_are():
    made = plan(week(day("Mon", line(PUSH, 8)), day("Thu", line(DIP, 1))), deload(day("Mon", line(PUSH, 4))))
    held = rule("balance", "horizontal-push : horizontal-pull", 0.7, 1.4)
    (found,) = measured(made, held)
    assert (found.subject.word, found.words, found.value > 10**6) == ("horizontal-push:horizontal-pull", "9 : 0", True)
    assert [part.amount for part in found.parts] == [8, 1]


def test_balance_names_a_line_of_both_sides_once():
    held = rule("balance", "chest : triceps", 0.7, 1.4)
    made = plan(week(day("Mon", line(DIP, 3), line(PUSHDOWN, 2))))
    (found,) = measured(made, held)
    assert [(part.line.movement.name, part.amount) for part in found.parts] == [("Dip", 3), ("Triceps Pushdown", 2)]


def test_balance_leaves_easy_sets_out_as_the_plan_counts():
    made = plan(week(day("Mon", line(PUSH, segment(4, 8, rpe(8)), segment(2, 8, rpe(5))), line(ROW, 4))))
    held = rule("balance", "horizontal-push : horizontal-pull", 0.7, 1.4)
    assert values(made, held, from_rpe=Fraction(6)) == [1]


def trained(minutes, effort):
    """A line that takes so many minutes at an RPE."""
    return line(BENCH, segment(1, reps(minutes * 60, kind=RepsKind.SECONDS), rpe(effort)))


# Weeks of daily loads worked out by the formulas of Foster 1998 (Med Sci Sports Exerc 30(7):1164-1168), with n - 1.
LOADED_WEEKS = [
    ({"Mon": (60, 8), "Wed": (60, 7), "Fri": (60, 9)}, 0.7946, 1144.19),
    ({"Mon": (60, 6), "Tue": (60, 5), "Thu": (60, 7), "Fri": (60, 5), "Sat": (60, 8)}, 1.3808, 2568.38),
    (dict.fromkeys(("Mon", "Tue", "Wed", "Thu", "Fri", "Sat"), (60, 5)), 2.2678, 4082.02),
    ({"Mon": (75, 7), "Tue": (45, 4), "Wed": (75, 6), "Fri": (70, 8), "Sat": (60, 4)}, 1.1807, 2308.24),
]


@pytest.mark.parametrize(("days", "even", "strained"), LOADED_WEEKS)
def test_monotony_and_strain_of_weeks(days, even, strained):
    made = plan(week(*(day(slot, trained(*load)) for slot, load in days.items())))
    assert values(made, rule("monotony", "", high=2)) == pytest.approx([even], abs=0.00005)
    assert values(made, rule("strain", "", high=4000)) == pytest.approx([strained], abs=0.005)


@pytest.mark.parametrize(
    "made",
    [
        plan(week(*(day(slot, trained(50, 8)) for slot in ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")))),
        plan(week()),
        plan(week(day("Mon", trained(50, 8)), day("Thu", line(BENCH, segment(3, 5, percent(80)))))),
        plan(week(day("1", trained(50, 8))), microcycle=1),
    ],
    ids=["all alike", "rest", "an effort nobody stated", "one day"],
)
def test_where_monotony_is_not_defined_nothing_is_judged(made):
    assert values(made, rule("monotony", "", high=0)) == values(made, rule("strain", "", high=0)) == []


def test_the_planned_effort_of_a_session_is_the_mean_of_its_sets():
    # 1 set at RPE 9 and 3 at RPE 7 of 60 s each with rests of 60 s: (9 + 21) / 4 = 7.5, and 7 min.
    mixed = line(
        BENCH,
        segment(1, reps(60, kind=RepsKind.SECONDS), rpe(9)),
        segment(3, reps(60, kind=RepsKind.SECONDS), rpe(7)),
        rest=rest(60),
    )
    alone = plan(week(day("Mon", mixed)))
    # One day of load x among seven has the mean x/7 and the deviation x / root 7, so a strain of x / root 7.
    assert values(alone, rule("strain", "", high=1)) == pytest.approx([7 * 7.5 / 7**0.5])
    by_percent = line(CURL, segment(1, reps(60, kind=RepsKind.SECONDS), percent(60)))
    longer = plan(week(day("Mon", mixed, by_percent)))  # 1 min more, and 1 min of changing over
    assert values(longer, rule("strain", "", high=1)) == pytest.approx([9 * 7.5 / 7**0.5])


def test_two_sessions_on_one_day_are_one_day_and_a_rotation_has_its_own_days():
    twice = plan(week(day("Mon", trained(30, 8)), day("Mon", trained(20, 6))))
    assert values(twice, rule("strain", "", high=1)) == pytest.approx([360 / 7**0.5])
    # One of eight days: the mean is x/8, the deviation x / root 8; the load of eight days is scaled to seven.
    rotation = plan(week(day("1", trained(50, 8))), microcycle=8)
    assert values(rotation, rule("monotony", "", high=1)) == pytest.approx([8**0.5 / 8])
    assert values(rotation, rule("strain", "", high=1)) == pytest.approx([400 * 7 / 8 * 8**0.5 / 8])


@pytest.mark.parametrize(
    ("segments", "places"),
    [
        # 5 x 5 at 75% are 25 of 12-24, 6 x 3 are 18, the optimal number (worked out from the published table).
        ([segment(5, 5, percent(75))], [Fraction(13, 12) * 100]),
        ([segment(6, 3, percent(75))], [50]),
        ([segment(4, 6, percent(72.5))], [100]),
        ([segment(5, 3, percent(85))], [50]),
        ([segment(3, 1, percent(92.5))], [Fraction(-1, 6) * 100]),
        ([segment(3, reps(2, 3), percent(80)), segment(1, reps(3, kind=RepsKind.AT_LEAST), percent(80))], [20]),  # 12
        ([segment(3, reps(0, kind=RepsKind.CLUSTER, parts=(2, 2)), percent(70))], [0]),
        ([segment(1, 2, percent(90)), segment(5, 3, less(-10))], [Fraction(-100, 3), 50]),  # 2 at 90%, 15 at 81%
        ([segment(1, reps(0, kind=RepsKind.MAX), percent(85))], []),
        ([segment(5, 5, PercentOfBest(Fraction(75), of="Front Squat"))], []),
        ([segment(5, 5, rpe(8))], []),
    ],
)
def test_lifts_in_zone(segments, places):
    made = plan(week(day("Mon", line(SQUAT, *segments))))
    held = rule("lifts-in-zone", "", 0, 100, unit=BoundUnit.PERCENT)
    assert values(made, held) == pytest.approx([float(place) for place in places])
    assert values(made, rule("lifts-in-zone", "chest", 0, 100, unit=BoundUnit.PERCENT)) == []


def test_lifts_of_one_movement_are_added_up_in_a_session_and_not_over_sessions():
    fives = line(SQUAT, segment(2, 6, percent(70)))
    both = day("Mon", fives, replace(fives, label="paused"), line(BENCH, segment(3, 6, percent(75))))
    made = plan(week(both, day("Thu", fives)), deload(day("Mon", fives)))
    held = rule("lifts-in-zone", "quads, glutes, chest", 0, 100, unit=BoundUnit.PERCENT)
    assert figures(made, held) == [
        ("Back Squat 70-80%", 1, "Mon", 100),
        ("Bench Press 70-80%", 1, "Mon", 50),
        ("Back Squat 70-80%", 1, "Thu", 0),
    ]


def kg(mass):
    return Weight(Mass(Fraction(mass), Unit.KG))


def lb(mass):
    return Weight(Mass(Fraction(mass), Unit.LB))


LOAD_RISE = rule("load-rise", "", 2, 10, unit=BoundUnit.PERCENT)


# Ratamess et al. 2009 (ACSM, Med Sci Sports Exerc 41(3):687-708): 2-10% more is 102 to 110 after 100 kg, 40.8 to 44
# after 40, 63.75 to 68.75 after 62.5, 145.35 to 156.75 after 142.5; 42.5 after 40 lies inside, 22.5 after 20 does not.
@pytest.mark.parametrize(
    ("before", "after", "percent_more"),
    [
        (100, 102, 2),
        (100, 110, 10),
        (40, "40.8", 2),
        (40, 44, 10),
        ("62.5", "63.75", 2),
        ("62.5", "68.75", 10),
        ("142.5", "145.35", 2),
        ("142.5", "156.75", 10),
        (40, "42.5", 6.25),
        (20, "22.5", 12.5),
    ],
)
def test_load_rise_of_published_steps(before, after, percent_more):
    made = plan(*(week(day("Mon", line(BENCH, segment(3, 5, kg(load))))) for load in (before, after)))
    assert values(made, LOAD_RISE) == [percent_more]


@pytest.mark.parametrize(
    ("weeks", "rises"),
    [
        ([[kg(40)], [kg(40)], [kg(38)], [kg(40)]], [Fraction(200, 38)]),  # a week that is not heavier has no rise
        ([[kg(40)], [], [kg(50)]], [25]),  # the last week that had one
        ([[percent(70), percent(80)], [percent(84), percent(75)]], [5]),  # the heaviest of each week
        ([[percent(70)], [kg(80)], [percent(77)], [kg(100)]], [10, 25]),
        ([[PercentOfBest(Fraction(60), of="Back Squat")], [percent(80)]], []),
        ([[lb(100)], [kg(50)]], [100 * (50 / 45.359237 - 1)]),  # a pound is 0.45359237 kg (NIST SP 811)
        ([[rpe(7)], [rpe(9)]], []),
    ],
)
def test_load_rise_compares_like_with_like(weeks, rises):
    made = plan(*(week(day("Mon", *(line(BENCH, segment(3, 5, load)) for load in loads))) for loads in weeks))
    assert values(made, LOAD_RISE) == pytest.approx([float(rise) for rise in rises])


def test_load_rise_steps_over_deloads_and_warm_ups_and_takes_what_follows_from_a_percent():
    def monday(*segments):
        return day("Mon", line(BENCH, *segments), line(SQUAT, segment(3, 5, percent(70))))

    made = plan(
        week(monday(segment(1, 5, percent(60), SegmentKind.WARM_UP), segment(1, 3, percent(50)))),
        deload(monday(segment(1, 3, percent(45)))),
        week(monday(segment(1, 3, percent(50)), segment(1, 3, less(20)))),  # 60%
    )
    assert figures(made, LOAD_RISE) == [("Bench Press", 3, None, 20)]
    assert figures(made, replace(LOAD_RISE, where=Where(every_week=True))) == [("Bench Press", 3, None, 20)]
    for_chest = rule("load-rise", "chest", 2, 10, unit=BoundUnit.PERCENT)
    for_quads = rule("load-rise", "quads", 2, 10, unit=BoundUnit.PERCENT)
    assert (values(made, for_chest), values(made, for_quads)) == ([20], [])


def test_load_rise_names_every_line_that_asks_for_the_most():
    monday = day("Mon", line(BENCH, segment(3, 5, kg(40))), line(BENCH, segment(3, 5, kg(30)), label="light"))
    heavier = day("Mon", line(BENCH, segment(3, 5, kg(44))), line(BENCH, segment(3, 5, kg(33)), label="light"))
    again = day("Thu", line(BENCH, segment(3, 5, kg(44)), label="again"))
    (found,) = measured(plan(week(monday), week(heavier, again)), LOAD_RISE)
    assert [(part.line.label, part.amount) for part in found.parts] == [(None, 10), ("again", 10)]
