"""Progressions on random logs: the compiler and a second reading of the reference's tables ask for the same."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.laws.rereading_progressions import Ask, Happened, Reader, shown

from setwright.pipeline import compile
from setwright.plan import Line, Plan, WeekKind
from setwright.prescription import Bodyweight, Effort, Weight

START = date(2027, 1, 4)
DAYS = {"Mon": 0, "Thu": 3}
MOVEMENTS = "exercise Press\nexercise Row\nexercise Carry\n\n"


@dataclass(frozen=True)
class Case:
    """A plan of one block with a line on Monday and its like on Thursday, and what became of each session."""

    rules: tuple[str, ...]
    written: str
    first: Ask
    weeks: int
    deloads: tuple[int, ...]
    away: int | None  # a week
    happened: dict[tuple[int, str], str | None]  # the text of an entry, "" for another movement, None for nothing
    by_name: frozenset[tuple[int, str]]  # those whose entry says which session it was, a day late
    on: int | None  # the day that is today, from the start

    @property
    def text(self) -> str:
        rules = "".join(f"  {rule}\n" for rule in self.rules)
        deloads = "".join(f"    deload week {week}: sets 50%\n" for week in self.deloads)
        day = f"Press: {self.written}, advance climb\n      Row: 3 x 8\n"
        plan = (
            f'{MOVEMENTS}progression climb\n{rules}\nplan "Pier"\n  start {START}\n'
            f"  block Base: {self.weeks} weeks\n{deloads}"
            f"    day Mon\n      {day}    day Thu\n      {day}\n"
        )
        first = START + timedelta(days=7 * (self.away or 1) - 7)
        absent = f"away {first} to {first + timedelta(days=6)}\n" if self.away else ""
        return plan + absent + "".join(self._session(*place) for place in self.happened)

    def _session(self, week: int, slot: str) -> str:
        said = self.happened[week, slot]
        day = START + timedelta(days=7 * (week - 1) + DAYS[slot])
        if said is None:
            return ""
        if (week, slot) in self.by_name:
            return f"session {day + timedelta(days=1)} for week {week} {slot}\n  {said or 'Carry: 40 m'}\n"
        return f"session {day}\n  {said or 'Carry: 40 m'}\n"

    def over(self, week: int, slot: str) -> bool:
        """Done or skipped; what is neither is still to come."""
        done = [place for place, said in self.happened.items() if said is not None]
        day = 7 * (week - 1) + DAYS[slot]
        return (
            self.away == week
            or (week, slot) <= max(done, default=(0, ""))
            or (bool(done) and self.on is not None and day < self.on)
        )


counts = st.integers(1, 3)
times = st.sampled_from(("", "", " 2 times running", " 3 times running"))
compares = st.sampled_from(("<", "<=", "=", ">=", ">"))
marks = st.one_of(
    st.sampled_from(("top", "bottom", "target")),
    st.builds("{} {} {}".format, st.sampled_from(("top", "bottom", "target")), st.sampled_from("+-"), counts),
    st.integers(3, 9).map(str),
)
by_sets = st.builds(
    "when {} {} {}{}".format, st.sampled_from(("all sets", "any set", "last set")), compares, marks, times
)
efforts = st.integers(10, 20).map(lambda number: f"RPE {number / 2:g}")
reported = st.builds("when effort {} {}{}".format, compares, efforts, times)
against_target = st.builds(
    "when effort {} {}{}".format, compares, st.sampled_from(("target", "target + 1", "target - 1")), times
)
repetitions = st.one_of(
    st.builds("reps {} {}".format, st.sampled_from("+-"), counts),
    st.sampled_from(("reps = top", "reps = bottom", "reps = 5")),
)
sets = st.one_of(st.builds("sets {} 1".format, st.sampled_from("+-")), st.just("sets = 4"))
by_mass = st.one_of(
    st.builds("load {} {} kg".format, st.sampled_from("+-"), st.sampled_from(("1", "2.5"))), st.just("load = 50 kg")
)
by_percent = st.builds("load {} {}%".format, st.sampled_from("+-"), st.sampled_from(("4", "10")))
of_effort = st.one_of(st.sampled_from(("effort + 0.5", "effort - 1", "effort = RPE 7")))
HOLD = st.just("hold")


@st.composite
def cases(draw: st.DrawFn) -> Case:
    kind = draw(st.sampled_from(("kg", "bodyweight", "effort")))
    conditions = {"kg": (by_sets, reported), "bodyweight": (by_sets, reported)}.get(kind, (by_sets, against_target))
    moves = {"kg": (by_mass, by_percent), "bodyweight": (by_mass,), "effort": (of_effort,)}[kind]
    actions = st.lists(st.one_of(repetitions, sets, *moves), min_size=1, max_size=2).map(", ".join)
    rules = draw(st.lists(st.builds("{}: {}".format, st.one_of(*conditions), st.one_of(actions, HOLD)), max_size=3))
    if not rules or draw(st.booleans()):
        rules.append(f"otherwise: {draw(actions)}")
    low = draw(st.integers(4, 7))
    high = low + draw(st.integers(0, 3))
    weeks = draw(st.integers(1, 6))
    number = draw(st.integers(2, 4))
    load = Fraction(draw(st.integers(80, 140)), 2)
    first = Ask(number, Fraction(low), Fraction(high), load=None if kind == "effort" else load)
    asked = {"kg": f"{float(load):g} kg", "bodyweight": f"bodyweight + {float(load):g} kg", "effort": "RPE 7"}[kind]
    if kind == "effort":
        first = Ask(number, Fraction(low), Fraction(high), rpe=Fraction(7))
    reps = f"{low}-{high}" if low < high else str(low)
    places = [(week, slot) for week in range(1, weeks + 1) for slot in DAYS]
    away = draw(st.one_of(st.none(), st.integers(1, weeks)))
    last = draw(st.integers(0, len(places)))
    happened = {
        place: draw(_entries(kind, load)) if at < last and place[0] != away else None for at, place in enumerate(places)
    }
    return Case(
        tuple(rules),
        f"{number} x {reps} @ {asked}",
        first,
        weeks,
        tuple(sorted(draw(st.sets(st.integers(2, max(weeks, 2)), max_size=2)))) if weeks > 1 else (),
        away,
        happened,
        frozenset(place for place in places if draw(st.booleans())),
        draw(st.one_of(st.none(), st.integers(0, 7 * weeks + 3))),
    )


@st.composite
def _entries(draw: st.DrawFn, kind: str, load: Fraction) -> str | None:
    """Nothing, another movement, or sets with one load or two, some of them with their effort."""
    what = draw(st.sampled_from(("nothing", "other", "sets", "sets", "sets", "two loads", "no load")))
    if what in ("nothing", "other"):
        return None if what == "nothing" else draw(st.sampled_from(("", "Row: 8, 8, 8")))
    lines = []
    for _ in range(2 if what == "two loads" else 1):
        used = load + draw(st.sampled_from((0, 0, Fraction(5, 2), -5)))
        before = {"kg": f"{float(used):g} kg x ", "bodyweight": f"bodyweight + {float(used):g} kg x "}.get(kind, "")
        reps = draw(st.lists(st.integers(0, 11), min_size=1, max_size=5))
        felt = draw(st.one_of(st.just(""), efforts.map(lambda effort: f" @ {effort}")))
        lines.append(f"Press: {before if what != 'no load' else ''}{', '.join(map(str, reps))}{felt}")
    return "\n  ".join(lines)


def read_back(said: str, kind: str) -> Happened:
    """What the text of an entry says, read by itself."""
    done: list[tuple[Fraction | None, int]] = []
    rpes: list[Fraction | None] = []
    for entry in said.split("\n"):
        name, _, rest = entry.strip().partition(": ")
        if name != "Press":
            continue
        work, _, felt = rest.partition(" @ RPE ")
        load, _, reps = work.rpartition(" x ")
        number = Fraction(load.removeprefix("bodyweight + ").removesuffix(" kg")) if load else None
        for count in reps.split(", "):
            done.append((number if kind != "effort" else None, int(count)))
            rpes.append(Fraction(felt) if felt else None)
    return Happened("done", tuple(done), tuple(rpes)) if done else Happened("skipped")


@settings(max_examples=100, deadline=None)
@given(cases())
def test_the_compiler_asks_what_the_tables_say(case: Case) -> None:
    on = START + timedelta(days=case.on) if case.on is not None else None
    compiled = compile("pier.plan", text=case.text, on=on, logs=("pier.plan",))
    assert not compiled.has_errors, (compiled.diagnostics, case.text)
    plan = compiled.compilations[0].plan
    working = [week for week in range(1, case.weeks + 1) if week not in case.deloads]
    kind = "effort" if case.first.rpe is not None else "load"
    for position, slot in enumerate(DAYS):
        exposures = []
        for week in working:
            said = case.happened[week, slot]
            unmade = Happened("skipped" if case.over(week, slot) else "coming")
            exposures.append(read_back(said, kind) if said is not None else unmade)
        expected = Reader(list(case.rules), case.first).read(exposures)
        for week, (ask, is_projection) in zip(working, expected, strict=True):
            if week != case.away:
                assert line_of(plan, week, position) == (
                    ask.sets,
                    ask.low,
                    ask.high,
                    shown(ask),
                    ask.rpe,
                    is_projection,
                ), (
                    week,
                    slot,
                    case.text,
                )


def line_of(plan: Plan, number: int, position: int) -> tuple[object, ...]:
    week = plan.weeks[number - 1]
    assert week.kind is WeekKind.WORKING
    line: Line = week.sessions[position].lines[0]
    segment = line.work[0]
    load = rpe = None
    match segment.intensity:
        case Weight(mass=mass):
            load = mass.amount
        case Bodyweight(added=added):
            load = added.amount if added else Fraction(0)
        case Effort(high=high):
            rpe = high
    return segment.sets, segment.reps.low, segment.reps.high, load, rpe, line.projected
