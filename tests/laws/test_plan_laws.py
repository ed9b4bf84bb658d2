"""What holds for every plan: plans are made as small data, written as text, compiled, and held to a few laws."""

from __future__ import annotations

import csv
import io
import re
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.pipeline import EVERY_ATHLETE, Compiled, compile
from setwright.plan import Line, Plan, Segment, WeekKind
from setwright.prescription import Effort, PercentOfBest
from setwright.quantities import plain
from setwright.record import record, replace
from setwright.render.csv import text as sheet

HEAD = 'exercise Squat\nexercise Row\n\nathlete "Tove"\n  best Squat: 140 kg\n  best Row: 82.5 kg\n\n'
DAYS = (("Mon", "Squat"), ("Wed", "Row"), ("Sat", "Squat"))
few = settings(max_examples=40)


@record
class Ramp:
    """`low -> high` in one unit; either end may be the greater."""

    first: Fraction
    last: Fraction
    form: str  # where the two numbers go: `RPE {}`

    def __str__(self) -> str:
        return self.form.format(f"{plain(self.first)} -> {plain(self.last)}")


@record
class Prescribed:
    """One movement's line: everything it says but its name."""

    sets: Ramp
    reps: str
    intensity: Ramp
    more: str

    def __str__(self) -> str:
        return f"{self.sets} x {self.reps} @ {self.intensity}{self.more}"


@record
class Block:
    """Weeks with one movement a day, perhaps a deload in the last."""

    weeks: int
    deload: str | None
    days: tuple[Prescribed, ...]

    def lines(self, name: str) -> list[str]:
        made = [f"  block {name}: {self.weeks} weeks"]
        if self.deload is not None:
            made.append(f"    deload week {self.weeks}: {self.deload}")
        for (slot, movement), prescribed in zip(DAYS, self.days, strict=False):
            made += [f"    day {slot}", f"      {movement}: {prescribed}"]
        return made


def ramps(form: str, low: int, high: int, steps: int = 1) -> st.SearchStrategy[Ramp]:
    ends = st.integers(low * steps, high * steps).map(lambda number: Fraction(number, steps))
    return st.builds(Ramp, ends, ends, st.just(form))


loads_in_steps = st.integers(1, 60).map(lambda number: number * Fraction(5, 2))
intensities = (
    ramps("RPE {}", 5, 10, 2)
    | ramps("{}%", 40, 95, 2)
    | ramps("{} RIR", 0, 5, 2)
    | st.builds(Ramp, loads_in_steps, loads_in_steps, st.just("{} kg"))
)
prescriptions = st.builds(
    Prescribed,
    ramps("{}", 1, 9),
    st.sampled_from(["5", "8-10", "3+", "(2+2+2)", "6/side"]),
    intensities,
    st.sampled_from(["", ", rest 2 min, optional", " then 2 x 8 @ -10%", " then drop 1 x max @ -20%"]),
)
deloads = st.builds(
    lambda sets, load, effort: f"sets {sets}%, load {load}%{effort}",
    st.integers(1, 100),
    st.integers(1, 100),
    st.sampled_from(["", ", effort RPE 6", ", effort RPE 8"]),
)
days = st.lists(prescriptions, min_size=1, max_size=3).map(tuple)
blocks = st.builds(Block, st.integers(2, 6), st.none() | deloads, days)
plans = st.lists(blocks, min_size=1, max_size=2).map(
    lambda made: (
        HEAD
        + "\n".join(['plan "Quay"', *(line for number, block in enumerate(made) for line in block.lines(f"B{number}"))])
        + "\n"
    )
)


@few
@given(plans)
def test_rows_are_as_many_as_segments(text: str) -> None:
    for plan in fitted(text):
        table = list(csv.reader(io.StringIO(sheet(plan))))
        assert len(table) - 1 == sum(len(line.segments) for line in lines(plan))


@few
@given(plans, st.data())
def test_comments_and_blank_lines_change_nothing(text: str, data: st.DataObject) -> None:
    written = text.splitlines()
    at = data.draw(st.integers(0, len(written)))
    extra = data.draw(st.sampled_from(["", "   ", "# 3 x 5", '        # "day Mon"', " \t "]))
    more = "\n".join([*written[:at], extra, *(f"{line}  # as said" if line else line for line in written[at:])])
    assert [sheet(plan) for plan in fitted(more)] == [sheet(plan) for plan in fitted(text)]


@few
@given(st.integers(2, 8), prescriptions)
def test_ramps_go_from_end_to_end_without_turning(weeks: int, line: Prescribed) -> None:
    text = HEAD + "\n".join(['plan "Quay"', *Block(weeks, None, (line,)).lines("Base")]) + "\n"
    for plan in fitted(text):
        first = [line.segments[0] for line in lines(plan)]
        assert_ramp([Fraction(segment.sets) for segment in first], line.sets)
        amounts = [amount(segment, line.intensity) for segment in first]
        assert_ramp(amounts, line.intensity)


@few
@given(st.integers(2, 5), deloads, prescriptions, st.none() | ramps("{} kg", 1, 40, 2))
def test_a_deload_never_makes_a_line_harder(weeks: int, deload: str, line: Prescribed, odd: Ramp | None) -> None:
    if odd is not None:
        line = replace(line, intensity=odd)  # loads that stand in no usual step
    text = HEAD + "\n".join(['plan "Quay"', *Block(weeks, deload, (line,)).lines("Base")]) + "\n"
    for plan in fitted(text):
        *_, before, light = plan.weeks
        assert light.kind is WeekKind.DELOAD
        for heavy, easy in zip(before.sessions[0].lines[0].segments, light.sessions[0].lines[0].segments, strict=True):
            assert 1 <= easy.sets <= heavy.sets
            if easy.load is not None and heavy.load is not None:
                assert easy.load.mass.amount <= heavy.load.mass.amount
            if isinstance(easy.intensity, Effort) and isinstance(heavy.intensity, Effort):
                assert easy.intensity.high <= heavy.intensity.high
            if isinstance(easy.intensity, PercentOfBest) and isinstance(heavy.intensity, PercentOfBest):
                assert easy.intensity.percent <= heavy.intensity.percent


@settings(max_examples=150)
@given(plans, st.data())
def test_no_change_of_a_line_makes_the_compiler_fall(text: str, data: st.DataObject) -> None:
    written = text.splitlines()
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(written) - 1))
        written[at : at + 1] = changed(written[at], written, data)
        if not written:
            break
    compiled = compile_text("\n".join(written))
    for found in compiled.diagnostics:
        assert "\n" not in found.message
        assert 1 <= found.span.line <= len(written) + 1
        assert 0 <= found.span.start <= found.span.end


def changed(line: str, written: list[str], data: st.DataObject) -> list[str]:
    """What becomes of a line: gone, doubled, moved in or out, or a stretch of it replaced."""
    match data.draw(st.sampled_from(["gone", "double", "other", "indent", "cut", "word", "text"])):
        case "gone":
            return []
        case "double":
            return [line, line]
        case "other":
            return [data.draw(st.sampled_from(written))]
        case "indent":
            return [data.draw(st.sampled_from(["", " ", "  ", "   ", "    ", "\t"])) + line.lstrip()]
        case "cut":
            return [line[: data.draw(st.integers(0, len(line)))]]
        case "word":
            words = re.split(r"(\s+)", line)
            words[data.draw(st.integers(0, len(words) - 1))] = data.draw(st.sampled_from(WORDS))
            return ["".join(words)]
        case _:
            place = data.draw(st.integers(0, len(line)))
            return [line[:place] + data.draw(st.text(max_size=6)) + line[place:]]


WORDS = re.split(
    "[|]",
    "0|-1|99999999999999|5-|5+|8-10|max|(2+2)|[3, 4]|[3, ...]|[|x|@|->|%|kg|RPE|RIR|/side|then|drop|test|like|like Mon|"
    'like B0|day Mon|deload: sets 50%|warm-up|week 1: 3 x 5|superset|circuit 3 rounds|bodyweight + 5 kg|start|"|"x"|#|'
    "Squat|Nowhere",
)


def assert_ramp(values: list[Fraction], ramp: Ramp) -> None:
    assert (values[0], values[-1]) == (ramp.first, ramp.last)
    assert values == sorted(values, reverse=ramp.first > ramp.last)


def amount(segment: Segment, ramp: Ramp) -> Fraction:
    """The number in front of the ramp's unit, as printed."""
    before, after = ramp.form.split("{}")
    return Fraction(str(segment.intensity).removeprefix(before).removesuffix(after))


def lines(plan: Plan) -> list[Line]:
    return [line for week in plan.weeks for session in week.sessions for line in session.lines]


def fitted(text: str) -> list[Plan]:
    compiled = compile_text(text)
    assert not compiled.has_errors, [f"{found.span}: {found.message}" for found in compiled.diagnostics]
    return [one.plan for one in compiled.compilations]


def compile_text(text: str) -> Compiled:
    return compile("law.plan", text=text, athletes=(EVERY_ATHLETE,))
