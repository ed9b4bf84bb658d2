"""Sets a muscle a week, against counts by hand."""

from fractions import Fraction

import pytest

from build_plans import BENCH, MUSCLES, PUSHDOWN, SQUAT, day, deload, line, movement, plan, rpe, segment, week
from setwright.plan import Muscle
from setwright.report.volume import Volume, volume
from setwright.rules import Promise

HALF = 0.5

# One week of three days. The weights are 1 for prime movers and 0.5 for what helps, the "fractional" way of counting
# of Pelland et al. 2024 (SportRxiv preprint); which muscle gets which is from memory, and only the sums are tested.
THREE_DAYS = plan(
    week(
        day(
            "Mon",
            line(movement("Bench Press", chest=1, front_delts=HALF, triceps=HALF), 4),
            line(movement("Barbell Row", lats=1, upper_back=1, biceps=HALF, rear_delts=HALF, erectors=HALF), 4),
            line(movement("Overhead Press", front_delts=1, side_delts=HALF, triceps=HALF), 3),
            line(movement("Barbell Curl", biceps=1, forearms=HALF), 3),
        ),
        day(
            "Wed",
            line(movement("Back Squat", quads=1, glutes=1, adductors=HALF, erectors=HALF), 4),
            line(movement("Romanian Deadlift", hamstrings=1, glutes=1, erectors=HALF, forearms=HALF), 3),
            line(movement("Leg Extension", quads=1), 2),
            line(movement("Standing Calf Raise", calves=1), 3),
        ),
        day(
            "Fri",
            line(movement("Incline Bench Press", chest=1, front_delts=HALF, triceps=HALF), 3),
            line(movement("Lat Pulldown", lats=1, biceps=HALF, upper_back=HALF), 4),
            line(movement("Triceps Pushdown", triceps=1), 3),
            line(movement("Lateral Raise", side_delts=1), 3),
        ),
    ),
    muscles=tuple(
        Muscle(word, word)
        for word in (
            *("adductors", "biceps", "calves", "chest", "erectors", "forearms", "front-delts", "glutes"),
            *("hamstrings", "lats", "quads", "rear-delts", "side-delts", "triceps", "upper-back", "abs"),
        )
    ),
)


@pytest.mark.parametrize(
    ("muscle", "total", "fractional", "direct"),
    [
        ("adductors", 4, 2, 0),
        ("biceps", 11, 7, 3),
        ("calves", 3, 3, 3),
        ("chest", 7, 7, 7),
        ("erectors", 11, 5.5, 0),
        ("forearms", 6, 3, 0),
        ("front-delts", 10, 6.5, 3),
        ("glutes", 7, 7, 7),
        ("hamstrings", 3, 3, 3),
        ("lats", 8, 8, 8),
        ("quads", 6, 6, 6),
        ("rear-delts", 4, 2, 0),
        ("side-delts", 6, 4.5, 3),
        ("triceps", 13, 8, 3),  # 4 x 0.5 + 3 x 0.5 + 3 x 0.5 + 3
        ("upper-back", 8, 6, 4),
    ],
)
def test_three_days_counted_in_three_ways(muscle, total, fractional, direct):
    row = volume(THREE_DAYS).of(1, muscle)
    assert (row.total_sets, row.fractional_sets, row.direct_sets) == (total, fractional, direct)


def test_muscles_stand_in_library_order_and_those_not_trained_are_left_out():
    assert [muscle.word for muscle in volume(THREE_DAYS).muscles] == [
        muscle.word for muscle in THREE_DAYS.muscles if muscle.word != "abs"
    ]


def test_sessions_most_in_one_session_and_least_rest():
    days = [day("Mon", line(BENCH, 4), line(PUSHDOWN, 2)), day("Tue", line(PUSHDOWN, 3)), day("Sun", line(BENCH, 6))]
    made = volume(plan(week(*days), week(*days), deload()))
    triceps, chest = made.of(1, "triceps"), made.of(2, "chest")
    assert (triceps.sessions, triceps.max_session_sets, triceps.rest_h_min) == (2, 4, 24)
    assert (chest.sessions, chest.max_session_sets, chest.rest_h_min) == (2, 6, 24)  # Sunday to Monday
    assert made.of(1, "chest").rest_h_min == 6 * 24
    assert made.of(2, "triceps").rest_h_min == 24
    idle = made.of(3, "chest")
    assert (idle.sessions, idle.max_session_sets, idle.fractional_sets, idle.rest_h_min) == (0, 0, 0, None)


def test_rest_goes_on_over_a_week_without_training():
    session = day("Mon", line(BENCH, 4))
    assert volume(plan(week(session), week(), week(session))).of(3, "chest").rest_h_min == 14 * 24


def test_sessions_are_taken_in_order_of_days_however_they_are_written():
    made = volume(plan(week(day("Fri", line(BENCH, 4)), day("Mon", line(BENCH, 4)), day("Thu", line(BENCH, 4)))))
    assert made.of(1, "chest").rest_h_min == 24


def test_an_eight_day_rotation_counts_per_seven_days_and_rests_by_its_own_days():
    rotation = week(day("1", line(SQUAT, 4)), day("5", line(SQUAT, 4)))
    row = volume(plan(rotation, rotation, microcycle=8)).of(2, "quads")
    assert (row.fractional_sets, row.direct_sets, row.total_sets) == (7, 7, 7)  # 8 x 7/8
    assert (row.sessions, row.max_session_sets, row.rest_h_min) == (2, 4, 96)


def test_easy_and_optional_sets_are_left_out_as_promised():
    lines = line(BENCH, segment(2, 5, rpe(5)), segment(3, 5, rpe(7))), line(PUSHDOWN, 3, optional=True)
    made = plan(week(day("Mon", *lines)))
    assert volume(made).of(1, "triceps").fractional_sets == Fraction(11, 2)
    kept = volume(made, Promise(from_rpe=Fraction(6), required_only=True))
    assert (kept.of(1, "chest").direct_sets, kept.of(1, "triceps").fractional_sets) == (3, Fraction(3, 2))


def test_a_plan_without_training_has_no_rows():
    assert volume(plan(week(day("Mon")))) == Volume(())
    assert Volume(()).muscles == ()


def test_an_unknown_muscle_is_a_key_error():
    with pytest.raises(KeyError):
        volume(plan(week(day("Mon", line(BENCH, 3))))).of(1, MUSCLES[2].word)
