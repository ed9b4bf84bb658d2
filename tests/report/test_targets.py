"""What rules ask of weekly sets: by hand, and that it says of every plan what `check` says of it."""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from build_plans import BENCH, CURL, PUSHDOWN, SQUAT, day, deload, line, plan, promise, rpe, rule, segment, waiver, week
from setwright.check import breaches
from setwright.check.bounds import Side
from setwright.diagnostics import Diagnostic, Severity
from setwright.pipeline import compile as compiled
from setwright.plan import Plan
from setwright.report.targets import End, Targets, targets
from setwright.report.volume import MuscleWeek, volume
from setwright.rules import Promise
from setwright.science.counting import Counting

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*/*.plan"))
SAID = re.compile(r"weekly sets?(?: for (?P<whom>.+?))? in weeks? (?P<weeks>[\d, and-]+), outside")
THREE = plan(
    week(day("Mon", line(BENCH, 8), line(CURL, 2))),
    week(day("Mon", line(BENCH, 12), line(PUSHDOWN, 3))),
    deload(day("Mon", line(BENCH, 1))),
)


def test_the_tightest_of_each_end() -> None:
    asked = promise(
        rule("weekly-sets", "every muscle", 4),
        rule("weekly-sets", "chest", 10, 20),
        rule("weekly-sets", "chest", high=16, severity=Severity.ERROR),
        rule("weekly-sets", "chest", 10, strict=True),
    )
    chest = targets(THREE, asked).of("chest")
    assert chest is not None
    assert [(target.week, target.value, target.side) for target in chest.weeks] == [
        (1, 8, Side.BELOW),
        (2, 12, Side.INSIDE),
    ]
    assert chest.weeks[0].low == End(Fraction(10), strict=True, is_must=False)
    assert chest.weeks[0].high == End(Fraction(16), strict=False, is_must=True)


def test_a_rule_that_names_weeks_concerns_those_only() -> None:
    asked = promise(rule("weekly-sets", "chest", 10, weeks=(2,)), rule("weekly-sets", "quads", 2, every_week=True))
    found = targets(THREE, asked)
    assert [[target.week for target in each.weeks] for each in found.subjects] == [[2], [1, 2, 3]]
    assert found.of("biceps") is None
    assert [each.subject.word for each in found.within({1}).subjects] == ["quads"]


def test_a_waived_week_is_out_of_range_and_waived() -> None:
    asked = promise(rule("weekly-sets", "chest", 10), waivers=(waiver("weekly-sets", "chest", weeks=(1,)),))
    chest = targets(THREE, asked).of("chest")
    assert chest is not None
    assert [(target.side, target.is_waived) for target in chest.weeks] == [(Side.BELOW, True), (Side.INSIDE, False)]


def test_a_group_and_the_whole_plan_are_held_by_themselves() -> None:
    found = targets(THREE, promise(rule("weekly-sets", "arms", 5), rule("weekly-sets", "", high=11)))
    assert [each.is_muscle for each in found.subjects] == [False, False]
    # 8 sets of bench press give half a set each to the arms, and the curl gives them 2: 8 x 0.5 + 2.
    assert [target.value for target in found.subjects[0].weeks] == [6, 12 * Fraction(1, 2) + 3]
    assert [target.side for target in found.subjects[1].weeks] == [Side.INSIDE, Side.ABOVE]


def test_other_measures_ask_nothing_of_weekly_sets() -> None:
    assert targets(THREE, promise(rule("session-sets", "chest", high=2))) == Targets()


# ---- the same as `check` -------------------------------------------------------------------------


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_examples_are_marked_where_check_finds_a_breach(path: Path) -> None:
    made = compiled(str(path))
    marked = [place for one in made.compilations for place in marks(targets(one.plan, one.promise))]
    assert sorted(marked) == sorted(said(made.diagnostics))


subjects = st.sampled_from(("", "every muscle", "chest", "quads, triceps", "arms"))
wheres = st.sampled_from(({}, {"weeks": (1, 2)}, {"every_week": True}, {"block": "Base"}))
bounds = st.tuples(st.integers(0, 8), st.integers(8, 16), st.sampled_from(("low", "high", "both", "strict")))
movements = st.sampled_from((BENCH, SQUAT, PUSHDOWN, CURL))
lines = st.builds(
    lambda of, sets, effort, optional: line(of, segment(sets, 5, rpe(effort)), optional=optional),
    movements,
    st.integers(1, 9),
    st.sampled_from((5, 8)),
    st.booleans(),
)
days = st.lists(lines, max_size=4).map(lambda made: day("Mon", *made))
weeks = st.builds(lambda of, kind: kind(of), days, st.sampled_from((week, week, deload)))
plans = st.builds(
    lambda made, length: plan(*made, microcycle=length),
    st.lists(weeks, min_size=1, max_size=5),
    st.sampled_from((7, 8)),
)


@st.composite
def rules(draw: st.DrawFn):
    low, high, ends = draw(bounds)
    return rule(
        "weekly-sets",
        draw(subjects),
        None if ends == "high" else low,
        high if ends in ("high", "both") else None,
        strict=ends == "strict",
        severity=draw(st.sampled_from(Severity)),
        **draw(wheres),
    )


promises = st.builds(
    lambda made, waived, counting, easy, required: Promise(
        tuple(made), tuple(waived), counting, Fraction(6) if easy else None, required
    ),
    st.lists(rules(), max_size=4),
    st.lists(st.builds(lambda whom, where: waiver("weekly-sets", whom, **where), subjects, wheres), max_size=2),
    st.sampled_from(Counting),
    st.booleans(),
    st.booleans(),
)


@given(plans, promises)
def test_any_plan_is_marked_where_check_finds_a_breach(plan: Plan, asked: Promise) -> None:
    assert set(marks(targets(plan, asked))) == set(said(breaches(plan, asked)))


@given(plans, promises)
def test_the_figures_are_those_of_the_volume(plan: Plan, asked: Promise) -> None:
    rows = {(row.muscle.word, row.week): row for row in volume(plan, asked).rows}
    for found in targets(plan, asked).subjects:
        for target in found.weeks:
            row = rows.get((found.subject.word, target.week))
            if found.is_muscle:
                assert target.value == (0 if row is None else counted(row, asked.counting))


def counted(row: MuscleWeek, counting: Counting) -> Fraction:
    return {
        Counting.DIRECT: row.direct_sets,
        Counting.FRACTIONAL: row.fractional_sets,
        Counting.TOTAL: row.total_sets,
    }[counting]


def marks(found: Targets) -> list[tuple[str, int]]:
    """Whose sets are marked in which weeks, waived ones left out."""
    return [
        (each.subject.title, target.week)
        for each in found.subjects
        for target in each.weeks
        if target.side is not Side.INSIDE and not target.is_waived
    ]


def said(problems: Iterable[Diagnostic]) -> list[tuple[str, int]]:
    """The same as breaches tell it, each once."""
    found: dict[tuple[str, int], None] = {}
    for problem in problems:
        if problem.code.number == "SW0601":
            read = SAID.search(problem.message)
            assert read is not None, problem.message
            for first, last in re.findall(r"(\d+)(?:-(\d+))?", read["weeks"]):
                for number in range(int(first), int(last or first) + 1):
                    found[read["whom"] or "", number] = None
    return list(found)
