"""Which lifts a plan is built around, and what their weeks say."""

from __future__ import annotations

from fractions import Fraction

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
    rpe,
    segment,
    superset,
    week,
)
from setwright.plan import Line, Load, Plan, SegmentKind, Session
from setwright.prescription import Bodyweight, ChangeByPercent, PercentOfBest, RepsKind
from setwright.quantities import Mass, Unit
from setwright.record import replace
from setwright.report.main_lifts import MOST_LIFTS, main_lifts


def names(*sessions: Session) -> list[str]:
    return [lift.name for lift in main_lifts(plan(week(*sessions)))]


def readings(*lines: Line, best: Mass | None = None) -> tuple[Fraction | None, Fraction | None]:
    """The effort and percent of the bench press in one week."""
    made = plan(week(day("Mon", line(BENCH, 1)), day("Tue", *lines)))
    made = replace(made, athlete_bests=((BENCH.name, best),) if best else ())
    found = next(lift for lift in main_lifts(made) if lift.name == BENCH.name)
    return found.weeks[0].effort, found.weeks[0].percent


def loaded(kilograms: int, intensity: object, sets: int = 1) -> Line:
    made = replace(segment(sets, 5, intensity), load=Load(Mass(Fraction(kilograms), Unit.KG)))  # type: ignore[arg-type]
    return line(BENCH, made)


# ---- which -----------------------------------------------------------------------------------------


def test_what_opens_a_session() -> None:
    assert names(day("Mon", line(SQUAT, 3), line(BENCH, 9))) == ["Back Squat"]


def test_a_superset_before_it_does_not_open_it() -> None:
    pair = superset()
    grouped = (line(CURL, 3, group=pair), line(PUSHDOWN, 3, group=pair))
    assert names(day("Mon", *grouped, line(SQUAT, 3))) == ["Back Squat"]
    assert names(day("Mon", *grouped)) == ["Barbell Curl"]  # there is nothing else


def test_a_third_of_the_working_weeks_is_enough_and_less_is_not() -> None:
    def of(opening: int, others: int) -> list[str]:
        weeks = [week(day("Mon", line(BENCH, 3)))] * opening + [week(day("Mon", line(SQUAT, 3)))] * others
        return [lift.name for lift in main_lifts(plan(*weeks, deload(day("Mon", line(CURL, 1)))))]

    assert of(2, 4) == ["Back Squat", "Bench Press"]
    assert of(1, 3) == ["Back Squat"]


def test_what_is_tested_once_is_a_main_lift() -> None:
    tried = line(BENCH, segment(1, 1, percent(100), SegmentKind.TEST))
    assert names(day("Mon", line(SQUAT, 3), tried)) == ["Back Squat", "Bench Press"]


def test_most_sets_first_then_as_they_come_up_and_six_at_most() -> None:
    lifts = [movement(f"Lift {number}", chest=1) for number in range(8)]
    sessions = [day(str(at + 1), line(lift, 3 if at != 4 else 5)) for at, lift in enumerate(lifts)]
    assert names(*sessions) == ["Lift 4", "Lift 0", "Lift 1", "Lift 2", "Lift 3", "Lift 5"]
    assert MOST_LIFTS == 6


def test_a_plan_without_work_has_none() -> None:
    empty: Plan = plan(week(day("Mon", line(BENCH, segment(2, 5, kind=SegmentKind.WARM_UP)))))
    assert main_lifts(empty) == ()
    assert main_lifts(replace(empty, weeks=())) == ()


# ---- what they say -----------------------------------------------------------------------------------


def test_the_hardest_and_the_heaviest_of_the_week() -> None:
    lines = (line(BENCH, segment(3, 5, rpe(7, 8))), line(BENCH, segment(3, 5, percent(75)), segment(1, 3, percent(80))))
    assert readings(*lines) == (8, 80)


def test_what_is_taken_off_follows_from_a_percent() -> None:
    backed_off = line(BENCH, segment(3, 5, ChangeByPercent(Fraction(-10))))
    assert readings(backed_off) == (None, None)
    assert readings(line(BENCH, segment(1, 1, percent(90)), segment(3, 5, ChangeByPercent(Fraction(-10))))) == (
        None,
        90,
    )


def test_a_load_over_the_best_where_no_percent_is_written() -> None:
    best = Mass(Fraction(80), Unit.KG)
    assert readings(loaded(68, rpe(8)), best=best) == (8, 85)
    assert readings(loaded(68, rpe(8))) == (8, None)
    # 160 lb over 80 kg: 160 x 0.45359237 / 80 (NIST SP 811, B.8).
    pounds = line(BENCH, replace(segment(1, 5), load=Load(Mass(Fraction(160), Unit.LB))))
    assert readings(pounds, best=best) == (None, 160 * Fraction("0.45359237") / 80 * 100)


def test_a_written_percent_is_not_rounded_by_its_load() -> None:
    assert readings(loaded(60, percent(77)), best=Mass(Fraction(80), Unit.KG)) == (None, 77)


def test_a_percent_of_another_lift_says_nothing_and_its_load_does() -> None:
    of_squat = PercentOfBest(Fraction(50), "Back Squat")
    assert readings(loaded(60, of_squat)) == (None, None)
    assert readings(loaded(60, of_squat), best=Mass(Fraction(80), Unit.KG)) == (None, 75)


def test_what_hangs_on_the_body_is_no_share_of_a_best() -> None:
    assert readings(loaded(10, Bodyweight(Mass(Fraction(10), Unit.KG))), best=Mass(Fraction(80), Unit.KG)) == (
        None,
        None,
    )


def test_as_many_as_possible_is_an_effort_of_ten() -> None:
    assert readings(line(BENCH, segment(1, reps(5, kind=RepsKind.AT_LEAST)))) == (10, None)


def test_a_week_without_the_lift_says_nothing() -> None:
    made = plan(week(day("Mon", line(BENCH, segment(3, 5, rpe(8))))), deload(day("Mon", line(CURL, 1))))
    found = main_lifts(made)[0]
    assert [(each.week, each.effort, each.percent) for each in found.weeks] == [(1, 8, None), (2, None, None)]
    assert found.sets == 3
