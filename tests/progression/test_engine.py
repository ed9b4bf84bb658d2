"""The engine on exposures that went well and badly; each course is worked out by hand from the reference's table."""

from __future__ import annotations

from fractions import Fraction

import pytest

from setwright.prescription import Bodyweight, Effort, Intensity, PercentOfBest, Reps, RepsKind, Weight
from setwright.progression import Asked, Done, Progression, Standing, advanced, as_asked, begun
from setwright.progression.engine import LOAD, PERCENT, REPS, RPE, SETS
from setwright.progression.model import Action, Compare, Condition, How, Mark, Moved, Percent, Rule, Subject
from setwright.quantities import Mass, Unit


def kilograms(amount: int | str) -> Mass:
    return Mass(Fraction(amount), Unit.KG)


def asked(low: int, high: int, intensity: Intensity | None = None, sets: int = 3) -> Asked:
    return Asked(sets, Reps(RepsKind.COUNT, Fraction(low), Fraction(high)), intensity, Fraction(low), Fraction(high))


def done(*reps: int, effort: str | None = None) -> Done:
    return Done(tuple(Fraction(each) for each in reps), Fraction(effort) if effort else None)


def when(subject: str, compare: str, mark: str | None, number: int | str = 0) -> Condition:
    return Condition(Subject(subject), Compare(compare), Mark(mark) if mark else None, Fraction(number))


MORE_LOAD = Action(Moved.LOAD, How.MORE, kilograms("2.5"))
LESS_LOAD = Action(Moved.LOAD, How.LESS, Percent(Fraction(10)))
MORE_REPS = Action(Moved.REPS, How.MORE, Fraction(1))
TO_BOTTOM = Action(Moved.REPS, How.TO, Mark.BOTTOM)

# progression double-climb(step = 2.5 kg, back = 10%), rule for rule.
DOUBLE_CLIMB = Progression(
    "double-climb",
    (
        Rule(when("all", ">=", "top"), 1, (MORE_LOAD, TO_BOTTOM)),
        Rule(when("any", "<", "bottom"), 2, (LESS_LOAD,)),
        Rule(when("any", "<", "bottom"), 1, ()),
        Rule(None, 1, (MORE_REPS,)),
    ),
)


def course(progression: Progression, first: Asked, *exposures: Done) -> list[Standing]:
    made = [begun(progression, first)]
    for each in exposures:
        made.append(advanced(progression, made[-1], each))
    return made


def loads(made: list[Standing]) -> list[str]:
    return [f"{standing.asked.target} @ {standing.asked.intensity}" for standing in made]


def test_a_good_stretch() -> None:
    made = course(
        DOUBLE_CLIMB, asked(6, 8, Weight(kilograms(60))), done(6, 6, 6), done(7, 7, 7), done(8, 8, 8), done(6, 6, 6)
    )
    assert loads(made) == ["6 @ 60 kg", "7 @ 60 kg", "8 @ 60 kg", "6 @ 62.5 kg", "7 @ 62.5 kg"]


def test_more_than_asked_jumps_to_what_was_reached() -> None:
    assert loads(course(DOUBLE_CLIMB, asked(6, 8, Weight(kilograms(60))), done(8, 8, 9)))[-1] == "6 @ 62.5 kg"


def test_twice_under_the_bottom_takes_load_off_and_begins_to_count_anew() -> None:
    bad = done(6, 5, 5)
    made = course(DOUBLE_CLIMB, asked(6, 8, Weight(kilograms(60))), bad, bad, bad, bad)
    # held, 10% off, held, 10% off: 60, 54, 54, 48.6
    assert loads(made) == ["6 @ 60 kg", "6 @ 60 kg", "6 @ 54 kg", "6 @ 54 kg", "6 @ 48.6 kg"]


def test_a_good_exposure_between_two_bad_ones_breaks_the_run() -> None:
    bad = done(6, 5, 5)
    made = course(DOUBLE_CLIMB, asked(6, 8, Weight(kilograms(60))), bad, done(6, 6, 6), bad)
    assert loads(made) == ["6 @ 60 kg", "6 @ 60 kg", "7 @ 60 kg", "7 @ 60 kg"]


def test_steps_of_repetitions_stay_within_the_range() -> None:
    uneven = done(8, 8, 7)  # between bottom and top, so a repetition more is asked for, and the top is the end
    assert [standing.asked.target for standing in course(DOUBLE_CLIMB, asked(6, 8), uneven, uneven, uneven)] == [
        6,
        7,
        8,
        8,
    ]


def test_sets_left_out_have_no_repetitions() -> None:
    made = course(DOUBLE_CLIMB, asked(6, 8, Weight(kilograms(60))), done(8, 8))
    assert loads(made)[-1] == "6 @ 60 kg"
    assert made[-1].running == (0, 1, 0, 1)


def test_a_load_worked_out_from_a_percent_is_no_written_one() -> None:
    bad = done(5, 5, 5)
    (*_, last) = course(DOUBLE_CLIMB, asked(6, 8, Weight(kilograms(61))), bad, bad)
    assert last.asked.intensity == Weight(Mass(Fraction("54.9"), Unit.KG), written=False)
    (*_, last) = course(DOUBLE_CLIMB, asked(6, 8, Weight(kilograms(61))), done(8, 8, 8))
    assert last.asked.intensity == Weight(kilograms("63.5"))


def test_pounds_stay_pounds() -> None:
    (*_, last) = course(DOUBLE_CLIMB, asked(6, 8, Weight(Mass(Fraction(100), Unit.LB))), done(8, 8, 8))
    assert isinstance(last.asked.intensity, Weight)
    assert last.asked.intensity.mass.unit is Unit.LB
    assert last.asked.intensity.mass.to(Unit.KG) == Mass(
        Mass(Fraction(100), Unit.LB).to(Unit.KG).amount + Fraction("2.5"), Unit.KG
    )


@pytest.mark.parametrize(
    ("start", "action", "after"),
    [
        (Bodyweight(), MORE_LOAD, "bodyweight + 2.5 kg"),
        (Bodyweight(), LESS_LOAD, "bodyweight"),
        (Bodyweight(kilograms(20)), LESS_LOAD, "bodyweight + 18 kg"),
        (Bodyweight(kilograms(-20)), MORE_LOAD, "bodyweight - 17.5 kg"),
        (Bodyweight(kilograms(-20)), LESS_LOAD, "bodyweight - 22 kg"),
        (PercentOfBest(Fraction(80)), LESS_LOAD, "70%"),
        (PercentOfBest(Fraction(80)), MORE_LOAD, "80%"),
        (PercentOfBest(Fraction(145)), Action(Moved.LOAD, How.MORE, Percent(Fraction(10))), "150%"),
        (Effort(Fraction(8), Fraction(8)), MORE_LOAD, "RPE 8"),
        (Effort(Fraction(7), Fraction(8)), Action(Moved.EFFORT, How.MORE, Fraction(1, 2)), "RPE 7.5-8.5"),
        (Effort(Fraction(7), Fraction(8)), Action(Moved.EFFORT, How.MORE, Fraction(3)), "RPE 10"),
        (Effort(Fraction(8), Fraction(8), as_reserve=True), Action(Moved.EFFORT, How.MORE, Fraction(1)), "1 RIR"),
        (Effort(Fraction(8), Fraction(9)), Action(Moved.EFFORT, How.TO, Fraction(7)), "RPE 7"),
        (Weight(kilograms(60)), Action(Moved.LOAD, How.TO, kilograms(50)), "50 kg"),
        (Weight(kilograms(2)), Action(Moved.LOAD, How.LESS, kilograms(5)), "0.5 kg"),
        (Weight(kilograms(999)), MORE_LOAD, "1000 kg"),
        (None, MORE_LOAD, "None"),
    ],
)
def test_what_an_action_does_to_an_intensity(start: Intensity | None, action: Action, after: str) -> None:
    always = Progression("always", (Rule(None, 1, (action,)),))
    first = asked(5, 5, start)
    assert str(advanced(always, begun(always, first), as_asked(first)).asked.intensity) == after


@pytest.mark.parametrize(
    ("condition", "exposure", "matches"),
    [
        (when("all", ">=", "target"), done(6, 6, 6), True),
        (when("all", ">=", "target"), done(6, 6, 5), False),
        (when("any", "<", "target"), done(6, 6, 5), True),
        (when("any", "<", "target"), done(6, 6, 6), False),
        (when("last", ">=", "target", 2), done(6, 6, 8), True),
        (when("last", ">=", "target", 2), done(8, 8, 7), False),
        (when("last", ">", "top"), done(6, 6, 9), True),
        (when("all", "=", None, 7), done(7, 7, 7), True),
        (when("any", "<=", "bottom"), done(7, 7, 6), True),
        (when("effort", ">=", "target", 1), done(6, 6, 6, effort="9"), True),
        (when("effort", ">=", "target", 1), done(6, 6, 6, effort="8.5"), False),
        (when("effort", "<", "target"), done(6, 6, 6), False),  # nothing was reported
        (when("effort", "<=", None, 7), done(6, 6, 6, effort="7"), True),
    ],
)
def test_conditions(condition: Condition, exposure: Done, matches: bool) -> None:
    one = Progression("one", (Rule(condition, 1, (Action(Moved.SETS, How.MORE, Fraction(1)),)),))
    first = asked(6, 8, Effort(Fraction(8), Fraction(8)))
    assert advanced(one, begun(one, first), exposure).asked.sets == (4 if matches else 3)


def test_no_rule_no_change() -> None:
    one = Progression("one", (Rule(when("all", ">=", "top"), 1, (MORE_LOAD,)),))
    first = asked(6, 8, Weight(kilograms(60)))
    assert advanced(one, begun(one, first), done(6, 6, 6)).asked == first


def test_scales_are_those_of_what_may_be_written() -> None:
    from setwright.link.tracks import MOST_PERCENT, MOST_REPS, MOST_SETS
    from setwright.link.values import HEAVIEST

    assert SETS == (1, MOST_SETS)
    assert REPS == (1, MOST_REPS)
    assert PERCENT[1] == MOST_PERCENT
    assert {unit.value: most for unit, (_, most) in LOAD.items()} == HEAVIEST
    assert RPE == (1, 10)
