"""What movements are called on sheets: without the prefix of their import, where nothing else is called so.

Comes in: a plan whose movements bear the names they are kept under (`club.Back Squat`). Goes out: the same plan with
plain names, but for those that two of its movements would share.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from setwright.log.model import LineDone, Log
from setwright.message import Phrase
from setwright.plan import Line, Movement, Plan, Segment, Step, StepValue, Week
from setwright.prescription import PercentOfBest
from setwright.record import replace


def with_plain_names(plan: Plan, plain: Mapping[str, str]) -> Plan:
    """`plain` gives the plain name of each movement that is kept under a prefix; most plans know none."""
    printed = _printed(plan, plain)
    if not printed:
        return plan
    namer = _Namer(printed)
    weeks = tuple(namer.week(week) for week in plan.weeks)
    facts = tuple((namer.name(movement), best) for movement, best in plan.athlete_facts)
    bests = tuple((namer.name(movement), best) for movement, best in plan.athlete_bests)
    notes = tuple(namer.note(note) for note in plan.notes)
    return replace(plan, weeks=weeks, athlete_facts=facts, athlete_bests=bests, notes=notes)


def log_with_plain_names(log: Log, plan: Plan, plain: Mapping[str, str]) -> Log:
    """The log with the names that its plan has on sheets; `plan` bears those of the library still."""
    printed = _printed(plan, plain)
    if not printed:
        return log
    namer = _Namer(printed)
    sessions = (replace(one, lines=tuple(namer.line_done(line) for line in one.lines)) for one in log.sessions)
    return replace(log, sessions=tuple(sessions))


def _printed(plan: Plan, plain: Mapping[str, str]) -> dict[str, str]:
    """What sheets call the movements that are kept under a prefix."""
    if not plain:
        return {}
    said = dict.fromkeys(_names(plan))
    shared = Counter(plain.get(name, name).casefold() for name in said)
    return {name: plain[name] for name in said if name in plain and shared[plain[name].casefold()] == 1}


def _names(plan: Plan) -> Iterator[str]:
    """Every movement that a row of the sheets can speak of."""
    for line in (line for week in plan.weeks for session in week.sessions for line in session.lines):
        yield line.movement.name
        yield from line.swaps
        if line.instead_of is not None:
            yield line.instead_of
        for segment in line.segments:
            if isinstance(segment.intensity, PercentOfBest) and segment.intensity.of is not None:
                yield segment.intensity.of


class _Namer:
    """Gives plain names; a movement that several lines share is renamed once."""

    def __init__(self, printed: Mapping[str, str]) -> None:
        self._printed = printed
        self._made: dict[str, Movement] = {}

    def week(self, week: Week) -> Week:
        sessions = (replace(one, lines=tuple(self._line(line) for line in one.lines)) for one in week.sessions)
        return replace(week, sessions=tuple(sessions))

    def name(self, name: str) -> str:
        return self._printed.get(name, name)

    def line_done(self, line: LineDone) -> LineDone:
        return replace(line, movement=self._movement(line.movement))

    def note(self, note: str) -> str:
        """A note of the plan, which may say what the athlete avoids."""
        for kept, plain in self._printed.items():
            note = note.renamed(kept, plain) if isinstance(note, Phrase) else note.replace(kept, plain)
        return note

    def _line(self, line: Line) -> Line:
        return replace(
            line,
            movement=self._movement(line.movement),
            segments=tuple(self._segment(segment) for segment in line.segments),
            swaps=self._all(line.swaps),
            instead_of=None if line.instead_of is None else self.name(line.instead_of),
            steps=self._steps(line.steps),
        )

    def _movement(self, movement: Movement) -> Movement:
        if movement.name not in self._made:
            best = None if movement.best_from is None else (self.name(movement.best_from[0]), movement.best_from[1])
            name, swaps = self.name(movement.name), self._all(movement.swaps)
            self._made[movement.name] = replace(movement, name=name, swaps=swaps, best_from=best)
        return self._made[movement.name]

    def _segment(self, segment: Segment) -> Segment:
        intensity = segment.intensity
        if isinstance(intensity, PercentOfBest) and intensity.of is not None:
            intensity = PercentOfBest(intensity.percent, self.name(intensity.of))
        return replace(segment, intensity=intensity, steps=self._steps(segment.steps))

    def _steps(self, steps: tuple[Step, ...]) -> tuple[Step, ...]:
        return tuple(self._step(step) for step in steps)

    def _step(self, step: Step) -> Step:
        facts = tuple((name, self.name(value) if isinstance(value, str) else value) for name, value in step.facts)
        return replace(step, before=self._value(step.before), after=self._value(step.after), facts=facts)

    def _value(self, value: StepValue) -> StepValue:
        match value:
            case PercentOfBest(percent=percent, of=str() as of):
                return PercentOfBest(percent, self.name(of))
            case str():
                return self.name(value)
            case _:
                return value

    def _all(self, names: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(self.name(name) for name in names)
