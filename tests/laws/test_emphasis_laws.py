"""What holds for every emphasis: plans made of few parts, rules drawn at random, and the whole plan measured anew."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from typing import TypeVar

from hypothesis import given, settings
from hypothesis import strategies as st

from build_plans import (
    CURL,
    PUSHDOWN,
    SQUAT,
    day,
    line,
    movement,
    plan,
    promise,
    rpe,
    rule,
    segment,
    stands,
    waiver,
    week,
)
from setwright.check import breaches
from setwright.check.bounds import distance, fits
from setwright.check.figures.sets import Ledger
from setwright.check.measures import MEASURES
from setwright.check.waivers import waiving
from setwright.diagnostics import Severity
from setwright.emphasis import emphasised
from setwright.plan import Cause, Group, GroupKind, Line, Plan, Segment, SegmentKind, Week, WeekKind
from setwright.record import replace
from setwright.rules import BoundUnit, Promise, Rule, Wish

FLY = movement("Cable Fly", chest=1)
BENCH = movement("Bench Press", chest=1, triceps=0.5, front_delts=0.5)
PRESS_OUT = movement("Close Press", chest=1, triceps=1)
SETTINGS = settings(max_examples=60, deadline=None)

# ---- plans, rules and wishes ---------------------------------------------------------------------

movements = st.sampled_from([FLY, FLY, FLY, BENCH, BENCH, PRESS_OUT, PUSHDOWN, CURL, SQUAT])
sets = st.integers(1, 5)
segments = st.one_of(
    st.tuples(st.builds(segment, sets)),
    st.tuples(st.builds(lambda count: segment(count, 8, rpe(5)), sets)),
    st.builds(lambda top, back: (segment(top), segment(back, 8)), sets, sets),
    st.builds(lambda work, drop: (segment(work), segment(drop, 10, kind=SegmentKind.DROP)), sets, sets),
)
lines = st.builds(
    lambda what, parts, optional, group: line(what, *parts, optional=optional, group=group),
    movements,
    segments,
    st.sampled_from([False, False, True]),
    st.sampled_from([None, None, None, Group(GroupKind.CIRCUIT, "A", None, 3)]),
)
slots = st.lists(st.sampled_from(["Mon", "Tue", "Thu", "Sat"]), min_size=1, max_size=3, unique=True)


@st.composite
def weeks(draw: st.DrawFn) -> Week:
    kind = draw(st.sampled_from([WeekKind.WORKING, WeekKind.WORKING, WeekKind.WORKING, WeekKind.DELOAD, WeekKind.TEST]))
    order = sorted(draw(slots), key=["Mon", "Tue", "Thu", "Sat"].index)
    return week(*(day(slot, *draw(st.lists(lines, min_size=1, max_size=3))) for slot in order), kind=kind)


plans = st.lists(weeks(), min_size=1, max_size=4).map(lambda made: plan(*made)) | weeks().map(
    lambda one: plan(*(one,) * 4)
)
whom = st.sampled_from(["", "chest", "chest", "every muscle", "arms"])
numbers = st.integers(0, 14)


def must(measure: str, subjects: str, low: float | None, high: float | None, unit: BoundUnit, **more: object) -> Rule:
    return rule(measure, subjects, low, high, unit, severity=Severity.ERROR, **more)


rules = st.one_of(
    st.builds(lambda who, most: must("session-sets", who, None, most, BoundUnit.NUMBER), whom, numbers),
    st.builds(lambda who, least: must("session-sets", who, least, None, BoundUnit.NUMBER, strict=True), whom, numbers),
    st.builds(lambda who, low: must("weekly-sets", who, low, low + 6, BoundUnit.NUMBER), whom, numbers),
    st.builds(lambda who, most: must("weekly-rise", who, None, most * 10, BoundUnit.PERCENT), whom, numbers),
    st.builds(lambda who: must("weekly-rise", who, -10, 30, BoundUnit.PERCENT, every_week=True), whom),
    st.builds(lambda who, cut: must("deload-cut", who, cut * 10, None, BoundUnit.PERCENT), whom, numbers),
    st.builds(
        lambda who, hours, after: must("recovery", who, 24 * hours, None, BoundUnit.HOURS, after_sets=Fraction(after)),
        whom,
        st.integers(1, 12),
        numbers,
    ),
    st.builds(lambda most: must("session-time", "", None, 10 * most, BoundUnit.MINUTES), numbers),
    st.builds(lambda most: rule("weekly-sets", "every muscle", None, most), numbers),
)
waivers = st.builds(lambda at: waiver("weekly-sets", "chest", weeks=(at,)), st.integers(1, 4))
promises = st.builds(
    lambda held, waived, required, start: promise(
        *held, waivers=tuple(waived), required_only=required, from_rpe=Fraction(6) if start else None
    ),
    st.lists(rules, min_size=1, max_size=3),
    st.lists(waivers, max_size=1),
    st.booleans(),
    st.booleans(),
)


def wish(muscle: str, amount: int) -> Wish:
    return Wish(muscle, amount, stands(f"emphasis {muscle} {amount:+}"))


amounts = st.integers(1, 6) | st.integers(-6, -1)
single = st.builds(wish, st.sampled_from(["chest", "chest", "chest", "triceps", "biceps"]), amounts)

# ---- laws ----------------------------------------------------------------------------------------


@settings(SETTINGS, max_examples=150)
@given(plans, promises, st.lists(single, min_size=1, max_size=2))
def test_no_must_that_held_is_broken(plan: Plan, promise: Promise, wishes: list[Wish]) -> None:
    after, _ = emphasised(plan, promise, tuple(wishes))
    assert is_kept(plan, after, promise)


@SETTINGS
@given(plans, promises, single)
def test_a_plan_without_breaches_stays_one(plan: Plan, promise: Promise, wish: Wish) -> None:
    held = replace(
        promise, rules=tuple(one for one in promise.rules if not errors(plan, replace(promise, rules=(one,))))
    )
    after, _ = emphasised(plan, held, (wish,))
    assert not errors(after, held)


@SETTINGS
@given(plans, promises, single)
def test_no_other_muscle_gets_or_loses_a_direct_set(plan: Plan, promise: Promise, wish: Wish) -> None:
    after, _ = emphasised(plan, promise, (wish,))
    for old, new in zip(plan.weeks, after.weeks, strict=True):
        before, now = direct_sets(old), direct_sets(new)
        assert {word: now[word] for word in now if word != wish.muscle} == {
            word: before[word] for word in before if word != wish.muscle
        }


@SETTINGS
@given(plans, promises, st.lists(single, min_size=1, max_size=3))
def test_the_same_is_placed_each_time(plan: Plan, promise: Promise, wishes: list[Wish]) -> None:
    assert emphasised(plan, promise, tuple(wishes)) == emphasised(plan, promise, tuple(wishes))


@SETTINGS
@given(plans, promises, single)
def test_as_many_taken_as_added_change_nothing(plan: Plan, promise: Promise, wish: Wish) -> None:
    assert emphasised(plan, promise, (wish, replace(wish, sets=-wish.sets))) == (plan, ())


@SETTINGS
@given(plans, promises, single)
def test_each_week_gets_at_most_what_was_asked_and_the_rest_is_told(plan: Plan, promise: Promise, wish: Wish) -> None:
    after, found = emphasised(plan, promise, (wish,))
    sign = 1 if wish.sets > 0 else -1
    short = 0
    for old, new in zip(plan.weeks, after.weeks, strict=True):
        moved = (work_sets(new) - work_sets(old)) * sign
        if old.kind is WeekKind.WORKING:
            assert 0 <= moved <= abs(wish.sets)
            short += moved < abs(wish.sets)
        else:
            assert new == old
    assert bool(found) == bool(short)
    assert {one.span for one in found} <= {wish.span}


@SETTINGS
@given(plans, promises, single)
def test_nothing_but_sets_changes_and_each_change_says_why(plan: Plan, promise: Promise, wish: Wish) -> None:
    after, _ = emphasised(plan, promise, (wish,))
    for (old_line, old), (_, new) in zip(parts(plan), parts(after), strict=True):
        if old.sets == new.sets:
            assert new == old
            continue
        step = new.steps[-1]
        assert step.cause is Cause.EMPHASIS
        assert step.span == wish.span
        assert (step.before, step.after) == (old.sets, new.sets)
        assert replace(new, sets=old.sets, steps=old.steps) == old
        assert is_open(old_line, old, wish.muscle)
        assert new.sets >= 1


@settings(SETTINGS, max_examples=100)
@given(plans, promises, single)
def test_what_found_no_place_has_none(plan: Plan, promise: Promise, wish: Wish) -> None:
    """One set more, anywhere it may stand in a week that fell short, would break a rule of the plan measured anew."""
    after, _ = emphasised(plan, promise, (wish,))
    by = 1 if wish.sets > 0 else -1
    for at, (old, new) in enumerate(zip(plan.weeks, after.weeks, strict=True)):
        if old.kind is WeekKind.WORKING and abs(work_sets(new) - work_sets(old)) < abs(wish.sets):
            for tried in one_more(new, wish.muscle, by, promise):
                whole = replace(after, weeks=(*after.weeks[:at], tried, *after.weeks[at + 1 :]))
                assert not is_kept(after, whole, promise)


# ---- measured anew -------------------------------------------------------------------------------


def is_kept(before: Plan, after: Plan, promise: Promise) -> bool:
    """True where every figure of a `must` that fitted still does, and none that was outside is further out."""
    old, new = outside(before, promise), outside(after, promise)
    return all(place in old and off <= old[place] for place, off in new.items())


def outside(plan: Plan, promise: Promise) -> dict[tuple[object, ...], Fraction]:
    ledger = Ledger(plan, promise)
    known = {measure.name: measure for measure in MEASURES}
    return {
        (number, figure.subject.word, figure.week.number, figure.session and figure.session.slot): distance(
            figure.value, held.bound
        )
        for number, held in enumerate(promise.rules)
        if held.severity is Severity.ERROR
        for figure in known[held.measure].figures(ledger, held)
        if not fits(figure.value, held.bound)
        and not waiving(promise.waivers, held.measure, figure.subject, figure.week, plan)
    }


def errors(plan: Plan, promise: Promise) -> list[object]:
    return [found for found in breaches(plan, promise) if found.severity is Severity.ERROR]


def direct_sets(week: Week) -> Counter[str]:
    found: Counter[str] = Counter()
    for each in lines_of(week):
        for word, weight in each.movement.works:
            found[word] += each.sets if weight >= 1 else 0
    return found


def work_sets(week: Week) -> int:
    return sum(each.sets for each in lines_of(week))


def lines_of(week: Week) -> Iterator[Line]:
    return (each for session in week.sessions for each in session.lines)


def parts(plan: Plan) -> Iterator[tuple[Line, Segment]]:
    return ((each, part) for week in plan.weeks for each in lines_of(week) for part in each.segments)


def is_open(line: Line, segment: Segment, muscle: str) -> bool:
    """True where a set may come or go: the line trains the muscle alone, does no rounds, and ends its work with it."""
    prime = [word for word, weight in line.movement.works if weight >= 1]
    work = [each for each in line.segments if each.kind is SegmentKind.WORK]
    return prime == [muscle] and line.group is None and segment is work[-1]


def one_more(week: Week, muscle: str, by: int, promise: Promise) -> Iterator[Week]:
    for s, session in enumerate(week.sessions):
        for n, each in enumerate(session.lines):
            for g, part in enumerate(each.segments):
                easy = promise.from_rpe is not None and part.intensity == rpe(5)
                left_out = promise.required_only and each.optional
                if is_open(each, part, muscle) and part.sets + by >= 1 and not easy and not left_out:
                    changed = replace(part, sets=part.sets + by)
                    made = replace(each, segments=replaced(each.segments, g, changed))
                    whole = replace(session, lines=replaced(session.lines, n, made))
                    yield replace(week, sessions=replaced(week.sessions, s, whole))


T = TypeVar("T")


def replaced(items: tuple[T, ...], at: int, item: T) -> tuple[T, ...]:
    return (*items[:at], item, *items[at + 1 :])
