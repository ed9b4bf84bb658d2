"""The measure `rest` on small plans, worked out by hand, and how its breach is told."""

from fractions import Fraction

import pytest

from ask_measures import figures, measured
from build_plans import (
    BENCH,
    CURL,
    PUSHDOWN,
    SQUAT,
    day,
    deload,
    line,
    plan,
    promise,
    reps,
    rest,
    rule,
    segment,
    superset,
    week,
)
from setwright.check import breaches
from setwright.plan import Line, SegmentKind
from setwright.prescription import RepsKind
from setwright.record import replace
from setwright.rules import BoundUnit, Rule, Scope

LUNGE = replace(SQUAT, name="Reverse Lunge", pattern="lunge")
HACK = replace(SQUAT, name="Hack Squat", pattern="squat")
DROP = segment(2, reps(0, kind=RepsKind.MAX), kind=SegmentKind.DROP)
TWO_THREES = reps(0, kind=RepsKind.CLUSTER, parts=(3, 3))


def held(low: float | None = None, high: float | None = None, subjects: str = "", **more: object) -> Rule:
    return rule("rest", subjects, low, high, unit=BoundUnit.MINUTES, **more)


def shortest(*lines: Line, asked: Rule | None = None) -> list[float]:
    return [float(value) for *_, value in figures(plan(week(day("Mon", *lines))), asked or held(2))]


@pytest.mark.parametrize(
    ("lines", "minutes"),
    [
        ([line(SQUAT, 3, rest=rest(180)), line(BENCH, 3, rest=rest(90, 120))], [1.5]),
        ([line(SQUAT, 3), line(BENCH, 3, rest=rest(120))], [2]),  # a line that writes none says nothing
        ([line(SQUAT, 3)], []),
        ([line(SQUAT, 1, rest=rest(60))], []),  # no rest between the sets of one
        ([line(SQUAT, 1, 2, rest=rest(60))], [1]),  # a single, and two after it
        ([line(SQUAT, 1, DROP, rest=rest(60))], []),  # drop sets follow at once
        ([line(SQUAT, segment(3, kind=SegmentKind.WARM_UP), 1, rest=rest(60))], []),
        ([line(SQUAT, 8, every=Fraction(90), rest=rest(60))], []),
        ([line(SQUAT, segment(3, TWO_THREES), pause=Fraction(15), rest=rest(180))], [3]),  # the pause is no rest
        ([line(SQUAT, 3, rest=rest(100))], [float(Fraction(5, 3))]),
    ],
)
def test_the_shortest_rest_that_lines_write(lines: list[Line], minutes: list[float]) -> None:
    assert shortest(*lines) == minutes


def test_in_a_superset_it_is_the_rest_after_the_round() -> None:
    a, b = superset("A", rest(75)), superset("B")
    made = (
        line(BENCH, 3, rest=rest(75), group=a),  # the group's, as expanded
        line(CURL, 3, rest=rest(180), group=a),  # its own
        line(SQUAT, 1, group=b),  # three rounds: the other line has three sets
        line(PUSHDOWN, 3, rest=rest(60, 90), group=b),
    )
    monday = plan(week(day("Mon", *made)))
    for subjects, minutes in {"chest": 1.25, "biceps": 3, "quads": 1, "triceps": 1}.items():
        assert [float(value) for *_, value in figures(monday, held(2, subjects=subjects))] == [minutes], subjects


def test_a_range_is_held_by_its_shorter_and_by_its_longer_rest() -> None:
    lines = (line(SQUAT, 3, rest=rest(60, 90)), line(BENCH, 3, rest=rest(240, 360)))
    assert shortest(*lines, asked=held(2, 5)) == [1, 6]
    assert shortest(*lines, asked=held(2)) == [1]
    assert shortest(*lines, asked=held(high=5)) == [1, 6]  # the first fits
    assert shortest(line(SQUAT, 3, rest=rest(360, 420)), asked=held(2, 5)) == [7]  # once, by the longest
    assert shortest(line(SQUAT, 3, rest=rest(120, 300)), asked=held(2, 5)) == [2]


def test_whose_rest_it_is() -> None:
    monday = day("Mon", line(HACK, 3, rest=rest(180)), line(LUNGE, 3, rest=rest(90)), line(BENCH, 3, rest=rest(120)))
    made = plan(week(monday), deload(monday))
    patterns = replace(held(2), scope=Scope.PATTERNS, subjects=("squat", "lunge", "hinge", "chest"))
    assert figures(made, patterns) == [
        *(("squat", number, None, 3) for number in (1, 2)),
        *(("lunge", number, None, Fraction(3, 2)) for number in (1, 2)),
        *(("chest", number, None, 2) for number in (1, 2)),
    ]
    assert figures(made, held(2, subjects="every muscle", weeks=(2,))) == [
        ("chest", 2, None, 2),
        ("glutes", 2, None, Fraction(3, 2)),
        ("quads", 2, None, Fraction(3, 2)),
    ]
    assert (
        figures(plan(week(day("Mon", line(BENCH, 3, rest=rest(60), optional=True)))), held(2), required_only=True) == []
    )


def test_the_figure_is_behind_the_lines_outside_and_no_others() -> None:
    lines = (line(SQUAT, 3, rest=rest(100)), line(BENCH, 3, rest=rest(60)), line(CURL, 3, rest=rest(180)))
    (found,) = measured(plan(week(day("Mon", *lines))), held(2))
    assert [(part.line.movement.name, part.amount) for part in found.parts] == [
        ("Back Squat", Fraction(5, 3)),
        ("Bench Press", 1),
    ]


def test_a_breach_points_at_the_line_furthest_outside() -> None:
    lines = (line(SQUAT, 3, rest=rest(100)), line(BENCH, 3, rest=rest(60)), line(CURL, 3, rest=rest(90)))
    (found,) = breaches(plan(week(day("Mon", *lines))), promise(held(2)))
    assert found.message == "a rest of 60 s in week 1, outside the >= 2 min that the rule set house asks for"
    assert found.span.text == "Bench Press"
    assert [(other.span.text, other.text) for other in found.related] == [
        ("Barbell Curl", "writes 90 s"),
        ("Back Squat", "writes 100 s"),
        ("rule rest", "the rule stands here, in the rules `house`"),
    ]
