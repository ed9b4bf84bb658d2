"""Plans side by side, against figures by hand."""

from __future__ import annotations

from fractions import Fraction

from build_plans import (
    BENCH,
    PUSHDOWN,
    SQUAT,
    day,
    deload,
    line,
    percent,
    plan,
    promise,
    rpe,
    rule,
    segment,
    waiver,
    week,
)
from setwright.diagnostics import Severity
from setwright.plan import Plan
from setwright.record import replace
from setwright.report.compare import Average, Column, PlanFigures, WeekFigures, columns, comparison, figures
from setwright.rules import Promise

# Bench Press is chest 1, triceps 0.5, front deltoids 0.5; Triceps Pushdown is triceps 1.
PRESSING = week(day("Mon", line(BENCH, 4), line(PUSHDOWN, 2)), day("Thu", line(BENCH, 11)))
TWO_WEEKS = plan(PRESSING, PRESSING, deload(day("Mon", line(BENCH, 2))))
SQUATS = plan(
    week(day("Mon", line(SQUAT, segment(3, 5, rpe(7, 8)), segment(1, 5, percent(80))))),
    week(day("Mon", line(SQUAT, segment(5, 5, rpe(9))))),
)


def of(made: Plan, given: Promise = Promise(), **more: int) -> PlanFigures:  # noqa: B008 (frozen)
    ceiling = Fraction(more.get("ceiling", 10))
    return figures(Column("Test", made, given), ceiling)


def test_sets_a_session_past_the_ceiling_and_exposures() -> None:
    chest, triceps = of(TWO_WEEKS).of("chest"), of(TWO_WEEKS).of("triceps")
    assert chest is not None
    assert triceps is not None
    assert (chest.sets, triceps.sets) == (same(15), same("9.5"))  # 4 + 11; (2 + 2) + 5.5
    assert (chest.largest_session, triceps.largest_session) == (11, Fraction("5.5"))
    assert (chest.beyond_ceiling, triceps.beyond_ceiling) == (same(1), same(0))
    assert (chest.exposures, triceps.exposures) == (same(2), same(1))  # Thursday has no direct set for the triceps


def test_hours_between_exposures_plain_and_by_sets() -> None:
    made = of(TWO_WEEKS)
    chest, triceps, delts = (made.of(word) for word in ("chest", "triceps", "front-delts"))
    assert chest is not None
    assert triceps is not None
    assert delts is not None
    # Monday to Thursday 72 h before 11 sets, twice; Thursday to Monday 96 h before 4. The deload's Monday is left out.
    assert chest.shortest_hours == 72
    assert chest.weighted_hours == Fraction(72 * 11 + 96 * 4 + 72 * 11, 26)
    assert (triceps.shortest_hours, triceps.weighted_hours) == (168, 168)
    assert (delts.shortest_hours, delts.weighted_hours) == (None, None)
    assert made.weighted_hours == Fraction(72 * 22 + 96 * 4 + 168 * 2, 28)


def test_a_mean_and_a_range_over_working_weeks() -> None:
    quads = of(SQUATS).of("quads")
    assert quads is not None
    assert quads.sets == Average(Fraction("4.5"), Fraction(4), Fraction(5))
    (_, low) = of(SQUATS, ceiling=4).muscles  # the glutes, the quads
    assert low.beyond_ceiling == Average(Fraction("0.5"), Fraction(0), Fraction(1))


def test_minutes_and_sessions_of_working_weeks() -> None:
    made = of(TWO_WEEKS)
    # A set of five lasts 20 s, a rest 120 s, changing over 60 s: Monday 440 + 60 + 160 s, Thursday 220 + 1200 s.
    monday, thursday = Fraction(660, 60), Fraction(1420, 60)
    assert made.session_minutes == Average((monday + thursday) / 2, monday, thursday)
    assert made.week_minutes == same(monday + thursday)
    assert (made.sessions, made.working_weeks) == (same(2), 2)


def test_effort_by_week_says_how_many_sets_state_one() -> None:
    first, second = of(SQUATS).weeks
    assert (first.highest_effort, first.mean_effort, first.stated, first.sets) == (8, 8, 3, 4)
    assert (second.highest_effort, second.mean_effort, second.stated, second.sets) == (9, 9, 5, 5)
    assert [each.kind.value for each in of(TWO_WEEKS).weeks] == ["working", "working", "deload"]
    assert isinstance(first, WeekFigures)


def test_broken_rules_are_counted_once_for_a_muscle_and_day() -> None:
    given = promise(
        rule("session-sets", "every muscle", high=10, severity=Severity.ERROR),  # chest, Thursday, in both weeks
        rule("frequency", "every muscle", low=2),  # triceps
        rule("weekly-sets", "chest", high=12),  # waived
        waivers=(waiver("weekly-sets", "chest"), waiver("recovery", "chest")),  # the second waives nothing
    )
    assert (of(TWO_WEEKS, given).must, of(TWO_WEEKS, given).should) == (1, 1)


def test_easy_and_optional_sets_are_left_out_as_the_rules_say() -> None:
    made = plan(
        week(day("Mon", line(BENCH, segment(2, 5, rpe(5)), segment(3, 5, rpe(8))), line(SQUAT, 2, optional=True)))
    )
    told = of(made, Promise(from_rpe=Fraction(6), required_only=True))
    assert [(each.muscle.word, each.sets.mean) for each in told.muscles if each.muscle.word == "chest"] == [
        ("chest", 3)
    ]
    assert told.of("quads") is None
    assert (told.from_rpe, told.required_only) == (6, True)


def test_an_eight_day_rotation_counts_per_seven_days() -> None:
    rotation = week(day("1", line(SQUAT, 4)), day("5", line(SQUAT, 12)))
    made = of(plan(rotation, rotation, microcycle=8))
    quads = made.of("quads")
    assert quads is not None
    assert (quads.sets, quads.exposures, quads.beyond_ceiling) == (same(14), same("1.75"), same("1.75"))
    assert (quads.largest_session, quads.shortest_hours, made.sessions) == (12, 96, same("1.75"))


def test_only_the_weeks_asked_for_are_looked_at_but_rest_goes_back_before_them() -> None:
    quads = figures(Column("Test", SQUATS, Promise(), over=(2,))).of("quads")
    assert quads is not None
    assert (quads.sets, quads.shortest_hours) == (same(5), 168)


def test_a_plan_without_working_weeks_has_no_figures_but_its_weeks() -> None:
    made = of(plan(deload(day("Mon", line(BENCH, 2)))))
    assert (made.muscles, made.sessions, made.session_minutes, made.weighted_hours) == ((), None, None, None)
    assert [each.number for each in made.weeks] == [1]


def test_muscles_of_all_plans_stand_in_library_order() -> None:
    made = comparison(columns([("a.plan", SQUATS, Promise()), ("b.plan", TWO_WEEKS, Promise())]))
    assert [muscle.word for muscle in made.muscles] == ["chest", "front-delts", "triceps", "glutes", "quads"]
    assert made.ceiling == 10


def test_columns_are_headed_by_name_and_by_file_where_names_repeat() -> None:
    other, fitted = replace(SQUATS, name="Quay"), replace(SQUATS, athlete="Ines")
    made = columns(
        [(file, each, Promise()) for file, each in (("a", SQUATS), ("b", SQUATS), ("b", other), ("a", fitted))]
    )
    assert [column.heading for column in made] == ["Test (a)", "Test (b)", "Quay", "Test, for Ines"]


def same(value: Fraction | int | str) -> Average:
    """A figure that is the same each time."""
    return Average(Fraction(value), Fraction(value), Fraction(value))
