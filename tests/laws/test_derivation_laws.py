"""What holds for every derivation: its steps begin with what is written, can be replayed, and end on the sheet."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from laws.replaying import replayed
from setwright.athlete import Athlete
from setwright.pipeline import EVERY_ATHLETE, compile
from setwright.plan import Cause, Plan, Quantity, SegmentKind, Step, StepValue
from setwright.prescription import Bodyweight, Weight
from setwright.quantities import Mass, Unit, plain
from setwright.render.csv import COLUMNS
from setwright.render.csv import text as sheet
from setwright.report.derivation import Derivation, Number, PartOfLine, derivation

EXAMPLES = Path(__file__).parents[2] / "examples"

EXERCISES = """
muscle thighs "Thighs"
equipment barbell "Barbell"
  loads bar
equipment dumbbells "Dumbbells"
  loads pair
exercise Squat
  needs barbell
exercise Row
  needs dumbbells
  swap for Pull
exercise Pull
exercise Lunge
  works thighs 1
  best from Squat 60%
"""
NAMES = ("Squat", "Row", "Pull", "Lunge")
SLOTS = ("Mon", "Wed", "Sat")
REPS = ("5", "8-10", "3+", "(2+2+2)", "6/side", "30 s", "[8, 6, ...]", "5 -> 3")
SETS = ("3", "4", "2 -> 4", "[3, 4, repeat]", "2 + 0.5/week")
INTENSITIES = (
    *("", "", " @ RPE 8", " @ RPE 7-8", " @ 2 RIR", " @ RPE 6.5 -> 8.5", " @ 4 -> 1 RIR", " @ [3, 2, ...] RIR"),
    *(" @ 80%", " @ 70% -> 85%", " @ 67.5% + 2.5%/week", " @ [72.5, 75, repeat]%", " @ 75% of Squat"),
    *(" @ 61 kg", " @ 40 kg -> 52 kg", " @ 40 kg + 2.5 kg/week", " @ 100 lb"),
    *(" @ bodyweight", " @ bodyweight + 5 -> 11 kg", " @ bodyweight - 7 kg", " @ bodyweight + 4 kg + 1 kg/week"),
)
AFTER = ("", "", " then 2 x 8 @ -10%", " then 1 x 5 @ +4 kg", " then drop 1 x max @ -20%", " then 2 x 5 @ -8 -> -4%")
MORE = (
    "",
    ", rest 90 s",
    ", rest 2-3 min",
    ", tempo 3-1-X-0",
    ", warm-up",
    ", warm-up 50% x 5, 75% x 3",
    ", limit RPE 7.5",
)


@st.composite
def athletes(draw: st.DrawFn) -> str:
    lines = ['athlete "Tove"']
    for name, most in (("Squat", 180), ("Row", 60), ("Pull", 90)):
        best = f"  best {name}: {draw(st.integers(40, most * 2)) / 2:g} kg"
        lines += draw(st.sampled_from(([], [best], [f"{best} x 5"], [f"{best} x 6 @ RPE 8.5"])))
    lines += draw(st.sampled_from(([], ["  bar 20 kg, collars 1 kg", "  plates 4x20, 2x10, 4x5, 2x1.25 kg"])))
    lines += draw(st.sampled_from(([], ["  dumbbells 5-30 kg by 2.5 kg"])))
    lines += draw(st.sampled_from(([], ["  round down"])))
    lines += draw(st.sampled_from(([], [f"  model {draw(st.sampled_from(['epley', 'brzycki', 'lombardi']))}"])))
    lines += draw(st.sampled_from(([], ["  available Tue, Thu, Fri"])))
    lines += draw(st.sampled_from(([], ["  swap Squat for Lunge"], ['  avoid Row "Back."'], ["  has barbell"])))
    lines += draw(st.sampled_from(([], ["  units lb"])))
    lines += draw(st.sampled_from(([], ["  emphasis thighs +2 sets per week"], ["  emphasis thighs -1 sets per week"])))
    return "\n".join(lines)


@st.composite
def plans(draw: st.DrawFn) -> str:
    template = draw(st.booleans())
    head = "template pier(many = 3, hard = RPE 8, lift = Row)" if template else 'plan "Pier"'
    lines = [head, "  warm-up 40% x 5, 70% x 3"]
    for number in range(draw(st.integers(1, 2))):
        like = " like B0" if number else ""
        lines.append(f"  block B{number}: {draw(st.integers(2, 5))} weeks{like}")
        lines += draw(st.sampled_from(([], ["    limit effort RPE 8"])))
        deload = f"sets {draw(st.integers(1, 100))}%, load {draw(st.integers(50, 100))}%"
        effort = draw(st.sampled_from(("", ", effort RPE 6")))
        lines += draw(st.sampled_from(([], [f"    deload week 2: {deload}{effort}"])))
        for slot in () if number else SLOTS[: draw(st.integers(1, 3))]:
            lines.append(f"    day {slot}")
            lines += draw(st.lists(entries(), min_size=1, max_size=3, unique_by=lambda line: line.split(":")[0]))
            if template and slot == "Mon":
                lines.append('      lift "given": many x 5 @ hard')
    if template:
        lines += ['plan "Pier" from pier(many: 4)']
    return "\n".join(lines)


@st.composite
def entries(draw: st.DrawFn) -> str:
    sets, reps, effort, after, more = (draw(st.sampled_from(each)) for each in (SETS, REPS, INTENSITIES, AFTER, MORE))
    name = draw(st.sampled_from(NAMES))
    if draw(st.integers(0, 9)) == 0:
        return f"      {name}: {sets} x 5 @ 61 kg{more}, advance load-each-exposure(step: 2.5 kg)"
    return f"      {name}: {sets} x {reps}{effort}{after}{more}"


@settings(max_examples=120)
@given(plans(), athletes())
def test_every_step_can_be_replayed_and_the_last_is_on_the_sheet(plan: str, athlete: str) -> None:
    text = f"{EXERCISES}\n{athlete}\n{plan}\n"
    compiled = compile("law.plan", text=text, athletes=(EVERY_ATHLETE,))
    assert not compiled.has_errors
    for one in compiled.compilations:
        hold(one.plan, equipment(athlete))


@pytest.mark.parametrize("path", sorted(EXAMPLES.glob("*/*.plan")), ids=lambda path: path.stem)
def test_every_number_of_every_example_has_a_derivation(path: Path) -> None:
    beside = tuple(str(other) for other in path.parent.glob("*.plan") if 'athlete "' in other.read_text())
    for athletes in ((), beside):
        compiled = compile(str(path), athletes=athletes, root=str(path.parent))
        for one in compiled.compilations:
            fits(one.plan)


# ---- what is held --------------------------------------------------------------------------------


def hold(plan: Plan, athlete: Athlete) -> None:
    fits(plan)
    for one in derived(plan):
        for number in numbers(one):
            before: Step | None = None
            for step in number.steps:
                assert same(replayed(step, before, athlete), step.after), (step, before)
                before = step
        assert_leans_on_the_sets_before(one)


def fits(plan: Plan) -> None:
    """Every value has a chain that begins with text, fits link by link, and ends in what the table prints."""
    rows = iter(list(csv.DictReader(io.StringIO(sheet(plan)))))
    for one in derived(plan):
        for number in one.numbers:
            assert_chain(number)
        for part in one.parts:
            assert_complete(part)
            row = next(rows)
            assert (row["sets"], row["reps"]) == (str(value(part, Quantity.SETS)), str(value(part, Quantity.REPS)))
            shown = value(part, Quantity.INTENSITY)
            assert row["intensity"] == ("" if shown is None else str(shown))
            load = value(part, Quantity.LOAD)
            assert load is None or (row["load"], row["unit"]) == (plain(load.amount), load.unit.value)
    assert next(rows, None) is None
    assert set(COLUMNS) >= {"sets", "reps", "intensity", "load", "unit"}


def assert_chain(number: Number) -> None:
    steps = number.steps
    for one, following in pairwise(steps):
        assert following.before == one.after, (one, following)
        assert following.told_before == one.told_after
    assert steps[-1].after == number.value, steps
    if number.quantity not in (Quantity.LOAD, Quantity.DAY, Quantity.MOVEMENT):
        assert isinstance(steps[0].before, str)
        assert steps[0].span.text in steps[0].before or steps[0].cause is not Cause.PARAMETER


def assert_complete(part: PartOfLine) -> None:
    """Sets and repetitions always, an intensity where one was written, a load where there is one."""
    segment, chains = part.segment, {number.quantity: number for number in part.numbers}
    for number in part.numbers:
        assert_chain(number)
    assert {Quantity.SETS, Quantity.REPS} <= set(chains)
    assert (segment.intensity is None) or Quantity.INTENSITY in chains
    assert (segment.load is None) == (Quantity.LOAD not in chains)
    if Quantity.LOAD in chains:
        stated = [step for step in chains[Quantity.INTENSITY].steps if step.cause is not Cause.ROUNDING]
        assert chains[Quantity.LOAD].steps[0].before == stated[-1].after


def assert_leans_on_the_sets_before(one: Derivation) -> None:
    """A change names the load of the segment before it, a warm-up that of the first work set."""
    work = [part for part in one.parts if part.segment.kind is not SegmentKind.WARM_UP]
    before: StepValue = None
    for part in work:
        for step in steps(part, Cause.CHANGE):
            assert step.fact("load_before") == before
        before = value(part, Quantity.LOAD)
    first = value(work[0], Quantity.LOAD)
    for part in one.parts:
        assert all(step.fact("work_load") == first for step in steps(part, Cause.WARM_UP))


def same(value: StepValue, other: StepValue) -> bool:
    """Alike, in whatever unit, and whether a load was written or worked out, which no text says."""
    match value, other:
        case Mass(), Mass():
            return value.to(Unit.KG) == other.to(Unit.KG)
        case Weight(mass), Weight(another):
            return mass == another
        case Bodyweight(added), Bodyweight(another):
            return added == another
        case _:
            return value == other


def derived(plan: Plan) -> Iterator[Derivation]:
    for week in plan.weeks:
        for session in week.sessions:
            for order, line in enumerate(session.lines, 1):
                yield derivation(week, session, order, line)


def numbers(one: Derivation) -> Iterator[Number]:
    yield from one.numbers
    for part in one.parts:
        yield from part.numbers


def steps(part: PartOfLine, cause: Cause) -> list[Step]:
    return [step for number in part.numbers for step in number.steps if step.cause is cause]


def value(part: PartOfLine, quantity: Quantity) -> StepValue:
    return next((number.value for number in part.numbers if number.quantity is quantity), None)


def equipment(text: str) -> Athlete:
    """The equipment of the athlete as it is generated, read once more for the brute force."""
    stock = ((4, 20), (2, 10), (4, 5), (2, Fraction(5, 4)))
    has_bar = "bar 20" in text
    return Athlete(
        "Tove",
        None,  # type: ignore[arg-type]
        bar=kilograms(20) if has_bar else None,
        collars=kilograms(1) if has_bar else None,
        plates=tuple((count, kilograms(disc)) for count, disc in stock) if has_bar else (),
        dumbbells=tuple(kilograms(Fraction(half, 2)) for half in range(10, 61, 5)) if "dumbbells 5" in text else (),
    )


def kilograms(amount: int | Fraction) -> Mass:
    return Mass(Fraction(amount), Unit.KG)
