"""What holds for every progression and every log: the engine is a function, and no value ever leaves its scale.

The plain reading of the reference's table is written here once more, from its sentences, for the choice of the rule.
"""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.prescription import Bodyweight, Effort, Intensity, PercentOfBest, Reps, RepsKind, Weight
from setwright.progression import Asked, Done, Progression, advanced, as_asked, begun, in_words
from setwright.progression.engine import LOAD, PERCENT, REPS, RPE, SETS
from setwright.progression.model import Action, Compare, Condition, How, Mark, Moved, Percent, Rule, Subject
from setwright.quantities import Mass, Unit

some = settings(max_examples=150)

halves = st.integers(1, 2000).map(lambda number: Fraction(number, 2))
counts = st.integers(1, 1000).map(Fraction)
units = st.sampled_from(Unit)
masses = st.builds(Mass, halves.map(lambda amount: min(amount, Fraction(1000))), units)
percents = st.integers(1, 200).map(lambda number: Percent(Fraction(number, 2)))


def _action(moved: Moved) -> st.SearchStrategy[Action]:
    amounts: dict[Moved, st.SearchStrategy[object]] = {
        Moved.LOAD: st.one_of(masses, percents),
        Moved.REPS: counts,
        Moved.SETS: st.integers(1, 100).map(Fraction),
        Moved.EFFORT: st.integers(2, 20).map(lambda number: Fraction(number, 2)),
    }
    moving = st.builds(Action, st.just(moved), st.sampled_from(How), amounts[moved])
    ends = st.builds(Action, st.just(Moved.REPS), st.just(How.TO), st.sampled_from((Mark.TOP, Mark.BOTTOM)))
    return st.one_of(moving, ends) if moved is Moved.REPS else moving


@st.composite
def conditions(draw: st.DrawFn) -> Condition:
    subject = draw(st.sampled_from(Subject))
    marks = (None, Mark.TARGET) if subject is Subject.EFFORT else (None, *Mark)
    mark = draw(st.sampled_from(marks))
    number = draw(st.integers(-3, 3) if mark else st.integers(1, 12))
    return Condition(subject, draw(st.sampled_from(Compare)), mark, Fraction(number))


actions = st.sampled_from(Moved).flatmap(_action)
rules = st.builds(Rule, st.one_of(st.none(), conditions()), st.integers(1, 3), st.lists(actions, max_size=3).map(tuple))
progressions = st.builds(Progression, st.just("any"), st.lists(rules, min_size=1, max_size=4).map(tuple))


def _intensities() -> st.SearchStrategy[Intensity | None]:
    rpes = st.integers(2, 20).map(lambda number: Fraction(number, 2))
    efforts = st.tuples(rpes, rpes, st.booleans()).map(lambda made: Effort(min(made[:2]), max(made[:2]), made[2]))
    added = st.one_of(st.none(), masses, masses.map(lambda mass: mass.times(Fraction(-1))))
    return st.one_of(
        st.none(),
        efforts,
        st.builds(PercentOfBest, st.integers(1, 300).map(lambda number: Fraction(number, 2))),
        st.builds(Weight, masses.map(lambda mass: Mass(max(mass.amount, Fraction(1)), mass.unit))),
        st.builds(Bodyweight, added),
    )


@st.composite
def firsts(draw: st.DrawFn) -> Asked:
    low = draw(st.integers(1, 20))
    high = low + draw(st.integers(0, 5))
    kind = draw(st.sampled_from((RepsKind.COUNT, RepsKind.AT_LEAST))) if low == high else RepsKind.COUNT
    reps = Reps(kind, Fraction(low), Fraction(high))
    return Asked(draw(st.integers(1, 10)), reps, draw(_intensities()), Fraction(low), Fraction(high))


logs = st.lists(
    st.builds(
        Done,
        st.lists(st.integers(0, 25).map(Fraction), max_size=8).map(tuple),
        st.one_of(st.none(), st.integers(2, 20).map(lambda number: Fraction(number, 2))),
    ),
    max_size=12,
)


@some
@given(progressions, firsts(), logs)
def test_no_value_leaves_its_scale(progression: Progression, first: Asked, log: list[Done]) -> None:
    standing = begun(progression, first)
    for exposure in log:
        standing = advanced(progression, standing, exposure)
        asked = standing.asked
        assert SETS[0] <= asked.sets <= SETS[1]
        assert REPS[0] <= asked.reps.low <= asked.reps.high <= REPS[1]
        assert (asked.bottom, asked.top, asked.reps.kind) == (first.bottom, first.top, first.reps.kind)
        assert type(asked.intensity) is type(first.intensity)
        assert on_scale(asked.intensity)


def on_scale(intensity: Intensity | None) -> bool:
    match intensity:
        case Effort(low=low, high=high):
            return RPE[0] <= low <= high <= RPE[1]
        case PercentOfBest(percent=percent):
            return PERCENT[0] <= percent <= PERCENT[1]
        case Weight(mass=mass):
            return LOAD[mass.unit][0] <= mass.amount <= LOAD[mass.unit][1]
        case Bodyweight(added=Mass() as added):
            return abs(added.amount) <= LOAD[added.unit][1]
        case _:
            return True


@some
@given(progressions, firsts(), logs)
def test_the_same_log_leads_to_the_same_place(progression: Progression, first: Asked, log: list[Done]) -> None:
    one = other = begun(progression, first)
    for exposure in log:
        one = advanced(progression, one, exposure)
    for exposure in list(log):
        other = advanced(progression, other, exposure)
    assert one == other


@some
@given(progressions, firsts(), logs)
def test_only_what_the_first_matching_rule_names_is_moved(
    progression: Progression, first: Asked, log: list[Done]
) -> None:
    """The rule is chosen a second time here, by looking back over the whole log as the reference's table says it."""
    standing = begun(progression, first)
    matched: list[list[bool]] = [[] for _ in progression.rules]  # since the rule was last carried out
    for exposure in log:
        for rule, past in zip(progression.rules, matched, strict=True):
            past.append(rule.condition is None or holds(rule.condition, standing.asked, exposure))
        ready = [
            index
            for index, rule in enumerate(progression.rules)
            if len(matched[index]) >= rule.times and all(matched[index][-rule.times :])
        ]
        after = advanced(progression, standing, exposure)
        carried = progression.rules[ready[0]].actions if ready else ()
        if ready:
            matched[ready[0]].clear()
        moved = {action.moved for action in carried}
        if Moved.SETS not in moved:
            assert after.asked.sets == standing.asked.sets
        if Moved.REPS not in moved:
            assert after.asked.target == standing.asked.target
        if not moved & {Moved.LOAD, Moved.EFFORT}:
            assert after.asked.intensity == standing.asked.intensity
        standing = after


def holds(condition: Condition, asked: Asked, exposure: Done) -> bool:
    reps = [*exposure.reps, *[Fraction(0)] * max(0, asked.sets - len(exposure.reps))]
    if condition.subject is Subject.EFFORT:
        has_target = isinstance(asked.intensity, Effort)
        if exposure.effort is None or (condition.mark and not has_target):
            return False
        base = asked.intensity.high if condition.mark and isinstance(asked.intensity, Effort) else Fraction(0)
        results = [exposure.effort]
    else:
        base = {None: Fraction(0), Mark.TOP: asked.top, Mark.BOTTOM: asked.bottom, Mark.TARGET: asked.reps.low}[
            condition.mark
        ]
        results = reps[-1:] if condition.subject is Subject.LAST else reps
    wanted = base + condition.number
    each = [
        {"<": got < wanted, "<=": got <= wanted, "=": got == wanted, ">=": got >= wanted, ">": got > wanted}[
            condition.compare.value
        ]
        for got in results
    ]
    return any(each) if condition.subject is Subject.ANY else all(each)


@some
@given(progressions, firsts())
def test_what_goes_to_plan_is_what_was_asked(progression: Progression, first: Asked) -> None:
    done = as_asked(first)
    assert done.reps == (first.reps.low,) * first.sets
    assert (done.effort is None) is not isinstance(first.intensity, Effort)


@some
@given(progressions, firsts())
def test_every_progression_can_be_said(progression: Progression, first: Asked) -> None:
    said = in_words(progression, first)
    assert said.endswith(".")
    assert "  " not in said
    assert said.count("When ") + said.count("Otherwise: ") >= len(progression.rules)
