"""What a week lifts and how loads run, against figures worked by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from build_plans import BENCH, CURL, SQUAT, day, deload, line, movement, percent, plan, reps, rpe, segment, week
from setwright.plan import Handling, Line, Load, Movement, Plan, Segment, SegmentKind
from setwright.prescription import Bodyweight, ChangeByMass, Intensity, RepsKind, Weight
from setwright.quantities import Mass, Unit
from setwright.record import replace
from setwright.report.lifted import lifted
from setwright.report.load import LoadWeek, load_weeks
from setwright.rules import Promise

PULL_UP = movement("Pull-Up", lats=1)
PAIR = replace(movement("Dumbbell Bench Press", chest=1), handling=Handling.PAIR)


def kg(amount: float) -> Weight:
    return Weight(Mass(Fraction(amount), Unit.KG))


def only(*lines: Line, **promised: object) -> LoadWeek:
    (found,) = load_weeks(plan(week(day("Mon", *lines))), Promise(**promised))
    return found


def at(load: float, sets: int, count: int) -> Segment:
    return segment(sets, count, kg(load))


# --- what is lifted ---------------------------------------------------------------------------------------------------


def test_published_volume_loads_and_their_mean() -> None:
    # BMJ Military Health 2020;168(4):314-319, table 1: 3 x 8 x 65 kg = 1560 kg; 10 x 55 + 8 x 65 + 6 x 75 = 1520 kg,
    # which is 63 kg a repetition (printed without decimals).
    assert only(line(BENCH, at(65, 3, 8))).known_load == 1560
    rising = only(line(BENCH, at(55, 1, 10), at(65, 1, 8), at(75, 1, 6)))
    assert (rising.known_load, rising.repetitions, rising.sets) == (1520, 24, 3)
    assert rising.is_whole
    assert rising.mean_load == Fraction(1520, 24)


def test_published_density() -> None:
    # The same table: 1560 kg in 45 min are 34.7 a minute. A timed set, which lifts nothing known, fills the time that
    # 3 x 32 s of work, 2 x 120 s of rest and 60 s of changing over leave.
    timed = line(SQUAT, segment(1, reps(2304, kind=RepsKind.SECONDS)))
    found = only(line(BENCH, at(65, 3, 8)), timed)
    assert found.minutes == 45
    assert found.known_density == Fraction(1560, 45)
    assert not found.is_whole


@pytest.mark.parametrize(
    ("segment_of", "repetitions", "load"),
    [  # by hand
        (at(100, 3, 5), 5, 100),
        (segment(3, reps(8, 10), kg(60)), 9, 60),
        (segment(3, reps(8, per_side=True), kg(20)), 16, 20),
        (segment(3, reps(5, kind=RepsKind.AT_LEAST), kg(80)), 5, 80),
        (segment(3, reps(0, kind=RepsKind.CLUSTER, parts=(2, 2, 1)), kg(90)), 5, 90),
        (segment(3, reps(0, kind=RepsKind.MAX), kg(50)), None, 50),
        (segment(3, reps(40, kind=RepsKind.METRES), kg(30)), None, 30),
        (segment(3, 5, rpe(8)), 5, None),
        (segment(3, 5, percent(80)), 5, None),
        (segment(3, 5, Bodyweight(Mass(Fraction(10), Unit.KG))), 5, None),
    ],
)
def test_one_set(segment_of: Segment, repetitions: int | None, load: int | None) -> None:
    (found,) = lifted(line(BENCH, segment_of))
    assert found.sets == 3
    assert found.repetitions == repetitions
    assert found.load == (None if load is None else Mass(Fraction(load), Unit.KG))


def test_a_pair_lifts_both() -> None:
    assert only(line(PAIR, at(20, 2, 10))).known_load == 2 * 10 * 2 * 20
    made = replace(segment(2, 10, rpe(8)), load=Load(Mass(Fraction("22.5"), Unit.KG), Handling.PAIR))
    assert only(line(BENCH, made)).known_load == 2 * 10 * 45


def test_what_hangs_on_a_body_stays_unknown_through_changes() -> None:
    more: Intensity = ChangeByMass(Mass(Fraction(5), Unit.KG))
    hung = replace(segment(2, 5, more), load=Load(Mass(Fraction(15), Unit.KG)))
    first = replace(segment(1, 5, Bodyweight(Mass(Fraction(10), Unit.KG))), load=Load(Mass(Fraction(10), Unit.KG)))
    found = only(line(PULL_UP, first, hung), line(BENCH, at(60, 1, 5)))
    assert (found.known_load, found.sets, found.sets_with_load) == (300, 4, 1)


def test_a_sum_of_some_sets_is_not_whole() -> None:
    assert not only(line(BENCH, at(65, 3, 8)), line(CURL, segment(2, 10, rpe(8)))).is_whole
    assert not only(line(BENCH, segment(3, reps(5, kind=RepsKind.AT_LEAST), kg(80)))).is_whole
    nothing = only(line(CURL, segment(2, 10, rpe(8))))
    assert (nothing.known_load, nothing.mean_load, nothing.known_density) == (0, None, None)


def test_warm_ups_are_not_lifted_here_and_drops_are() -> None:
    warm_up = segment(2, 5, kg(40), SegmentKind.WARM_UP)
    drop = segment(1, 8, kg(50), SegmentKind.DROP)
    found = only(line(BENCH, warm_up, at(80, 1, 5), drop))
    assert (found.sets, found.repetitions, found.known_load) == (2, 13, 800)


def test_pounds_in_a_plan_in_pounds() -> None:
    in_pounds = segment(3, 8, Weight(Mass(Fraction(135), Unit.LB)))
    made = replace(plan(week(day("Mon", line(BENCH, in_pounds)))), unit=Unit.LB)
    assert load_weeks(made)[0].known_load == 3 * 8 * 135
    assert load_weeks(made)[0].mean_load == 135


def test_optional_lines_as_promised_and_easy_sets_always() -> None:
    lines = line(BENCH, segment(2, 5, rpe(5))), line(CURL, segment(3, 10, rpe(8)), optional=True)
    assert only(*lines, from_rpe=Fraction(7)).sets == 5
    assert only(*lines, required_only=True).repetitions == 10


# --- the load of sessions ---------------------------------------------------------------------------------------------

DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


def trained(movement: Movement, minutes: float, effort: float) -> Line:
    """One set that lasts so long, and nothing else."""
    return line(movement, segment(1, reps(round(minutes * 60), kind=RepsKind.SECONDS), rpe(effort)))


def loads(*daily: int) -> Plan:
    """A plan whose days have these planned loads, at RPE 5; weeks of seven days."""
    weeks = [daily[at : at + 7] for at in range(0, len(daily), 7)]
    return plan(
        *(
            week(*(day(slot, trained(BENCH, load / 5, 5)) for slot, load in zip(DAYS, each, strict=True) if load))
            for each in weeks
        )
    )


def test_a_week_of_sessions() -> None:
    # Computed, from the definitions of Foster 1998: week F, 75 min at 7, 45 at 4, 75 at 6, none, 70 at 8, 60 at 4,
    # none. Every effort is raised to at least RPE 5 in a plan, so 45 min at 4 are 36 at 5, and 60 at 4 are 48 at 5.
    minutes = {"Mon": (75, 7), "Tue": (36, 5), "Wed": (75, 6), "Fri": (70, 8), "Sat": (48, 5)}
    (found,) = load_weeks(plan(week(*(day(slot, trained(BENCH, *each)) for slot, each in minutes.items()))))
    assert found.days == (525, 180, 450, 0, 560, 240, 0)
    assert found.planned_load == 1955
    assert found.monotony is not None
    assert found.strain is not None
    assert float(found.monotony) == pytest.approx(1.1807, abs=5e-5)
    assert float(found.strain) == pytest.approx(2308.24, abs=5e-3)


def test_ratios_come_with_the_28th_day() -> None:
    # Computed from the definitions of Windt and Gabbett 2019 and Williams et al. 2017: 100 a day for 21 days, then 200.
    found = load_weeks(loads(*[100] * 21, *[200] * 7))
    assert [each.coupled_ratio for each in found[:3]] == [each.moving_ratio for each in found[:3]] == [None] * 3
    assert found[3].coupled_ratio == Fraction(8, 5)
    assert found[3].moving_ratio is not None
    assert float(found[3].moving_ratio) == pytest.approx(186.6516 / 139.3598, abs=1e-6)
    assert [each.monotony for each in found] == [None] * 4  # all days are alike


def test_a_week_that_repeats_is_not_one_by_moving_averages() -> None:
    # Computed: week A four times; 150.7279 / 231.0227 on the Sunday.
    found = load_weeks(loads(*[480, 0, 420, 0, 540, 0, 0] * 4))[3]
    assert found.coupled_ratio == 1
    assert found.moving_ratio is not None
    assert float(found.moving_ratio) == pytest.approx(150.7279 / 231.0227, abs=1e-6)


def test_a_session_without_an_effort_leaves_its_week_and_the_28_days_after_it_open() -> None:
    known = week(day("Mon", trained(BENCH, 50, 6)))
    unknown = week(day("Mon", line(BENCH, segment(3, 5, percent(80)))), day("Thu", trained(BENCH, 50, 6)))
    found = load_weeks(plan(known, unknown, *[known] * 4, deload()))
    assert [each.planned_load for each in found] == [300, None, 300, 300, 300, 300, 0]
    assert (found[1].days, found[1].monotony, found[1].strain, found[1].sets_with_effort) == (None, None, None, 1)
    assert [each.coupled_ratio for each in found] == [None] * 5 + [1, 0]
    assert [each.moving_ratio is None for each in found] == [True] * 5 + [False] * 2


def test_a_rotation_is_summed_as_it_stands_and_strain_is_per_seven_days() -> None:
    rotation = week(day("1", trained(BENCH, 40, 5)), day("5", trained(SQUAT, 40, 5)))
    found = load_weeks(plan(*[rotation] * 4, microcycle=8))
    assert (found[0].planned_load, found[0].minutes, len(found[0].days or ())) == (400, 80, 8)
    # 200 on two of eight days: mean 50, sum of squares 60000, deviation (60000 / 7) ** 0.5.
    assert float(found[0].strain or 0) == pytest.approx(400 * 50 / (60000 / 7) ** 0.5 * 7 / 8)
    assert [each.coupled_ratio is None for each in found] == [True, True, True, False]  # 24 days, then 32
    assert found[3].coupled_ratio == Fraction(200, 7) / Fraction(200 * 7, 28)  # days 26-32 hold one session, 5-32 seven


def test_a_plan_of_rest() -> None:
    (found,) = load_weeks(plan(week()))
    assert (found.sets, found.minutes, found.known_load, found.planned_load) == (0, 0, 0, 0)
    assert (found.known_density, found.mean_load, found.monotony) == (None, None, None)
