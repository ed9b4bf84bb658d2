"""Minutes of a session; every expected value is a sum of seconds that can be done by hand."""

from fractions import Fraction

import pytest

from build_plans import BENCH, CURL, SQUAT, day, line, reps, rest, segment, superset, tempo
from setwright.check.figures.session_time import line_minutes, session_minutes
from setwright.plan import SegmentKind
from setwright.prescription import RepsKind


def seconds(*lines):
    return session_minutes(day("Mon", *lines)) * 60


def test_four_sets_of_eight_at_a_written_tempo():
    """4 x 8 at 3-1-1-0, rest 120 s: 160 s of work and 3 x 120 s of rest, the last rest left out (arithmetic)."""
    assert seconds(line(BENCH, segment(4, 8), rest=rest(120), tempo=tempo(3, 1, 1, 0))) == 520


@pytest.mark.parametrize(
    ("made", "expected"),
    [
        (line(BENCH, segment(2, 5)), 2 * 5 * 4 + 120),  # 4 s a repetition and 120 s of rest unless written
        (line(BENCH, segment(1, 5), tempo=tempo(2, 0, None, 0)), 5 * 3),  # X as 1 s
        (line(BENCH, segment(1, reps(6, 8))), 7 * 4),
        (line(BENCH, segment(1, reps(5, kind=RepsKind.AT_LEAST))), 5 * 4),
        (line(BENCH, segment(1, reps(0, kind=RepsKind.MAX))), 10 * 4),
        (line(BENCH, segment(2, 5), rest=rest(120, 180)), 2 * 20 + 150),
        (line(BENCH, segment(1, reps(8, per_side=True))), 2 * 8 * 4),
        (line(BENCH, segment(3, reps(40, kind=RepsKind.SECONDS)), rest=rest(60)), 3 * 40 + 2 * 60),
        (line(BENCH, segment(1, reps(30, kind=RepsKind.SECONDS, per_side=True))), 60),
        (line(BENCH, segment(2, reps(30, kind=RepsKind.METRES)), rest=rest(60)), 2 * 30 + 60),
        (line(BENCH, segment(1, reps(0, kind=RepsKind.CLUSTER, parts=(2, 2, 2)))), 6 * 4 + 2 * 20),
        (line(BENCH, segment(1, reps(0, kind=RepsKind.CLUSTER, parts=(2, 2, 2))), pause=Fraction(15)), 6 * 4 + 2 * 15),
        (line(BENCH, segment(8, 3), every=Fraction(90)), 8 * 90),
        (line(BENCH, segment(1, 5), segment(3, 5), rest=rest(60)), 4 * 20 + 3 * 60),
        (line(BENCH, segment(2, 5), segment(2, 5, kind=SegmentKind.DROP), rest=rest(60)), 4 * 20 + 60),
        (line(BENCH, segment(1, 8, kind=SegmentKind.WARM_UP), segment(1, 5)), (8 * 4 + 60) + 20),
        (line(BENCH, segment(1, 8, kind=SegmentKind.WARM_UP), segment(2, 5), every=Fraction(90)), 92 + 180),
    ],
)
def test_how_long_one_line_takes(made, expected):
    assert seconds(made) == expected


def test_a_changeover_passes_between_lines():
    assert seconds(line(BENCH, segment(1, 5)), line(SQUAT, segment(1, 5)), line(CURL, segment(1, 5))) == 3 * 20 + 2 * 60


def test_the_rounds_of_a_group_share_the_rest():
    group = superset(rest=rest(90))
    pair = line(BENCH, segment(3, 5), group=group), line(CURL, segment(2, 10), group=group)
    assert seconds(*pair) == 3 * 20 + 2 * 40 + 2 * 90 + 60
    assert seconds(line(SQUAT, segment(1, 5)), *pair) == 20 + 60 + (3 * 20 + 2 * 40 + 2 * 90 + 60)


def test_a_group_without_a_rest_takes_the_longest_of_its_lines_or_the_usual_one():
    bare = superset()
    assert seconds(line(BENCH, 2, group=bare, rest=rest(60)), line(CURL, 2, group=bare)) == 4 * 20 + 60 + 60
    assert seconds(line(BENCH, 2, group=bare), line(CURL, 2, group=bare)) == 4 * 20 + 120 + 60


def test_two_groups_side_by_side_are_two():
    first, second = superset("A", rest(30)), superset("B", rest(60))
    lines = [line(each, 2, group=group) for group in (first, second) for each in (BENCH, CURL)]
    assert seconds(*lines) == 8 * 20 + 30 + 60 + 3 * 60


def test_the_minutes_of_lines_add_up_to_the_session():
    group = superset(rest=rest(90))
    made = line(SQUAT, 5), line(BENCH, 3, group=group), line(CURL, 3, group=group)
    assert sum(part.amount for part in line_minutes(made)) == session_minutes(day("Mon", *made))


def test_an_empty_session_takes_no_time():
    assert session_minutes(day("Mon")) == 0
