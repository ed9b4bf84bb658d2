"""What movements are called on sheets: without the prefix of their import, where nothing else is called so.

Comes in: a plan whose movements bear the names they are kept under (`club.Back Squat`). Goes out: the same plan with
plain names, but for those that two of its movements would share.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from setwright.plan import Line, Movement, Plan, Segment, Week
from setwright.prescription import PercentOfBest
from setwright.record import replace


def with_plain_names(plan: Plan, plain: Mapping[str, str]) -> Plan:
    """`plain` gives the plain name of each movement that is kept under a prefix; most plans know none."""
    if not plain:
        return plan
    said = dict.fromkeys(_names(plan))
    shared = Counter(plain.get(name, name).casefold() for name in said)
    printed = {name: plain[name] for name in said if name in plain and shared[plain[name].casefold()] == 1}
    if not printed:
        return plan
    namer = _Namer(printed)
    weeks = tuple(namer.week(week) for week in plan.weeks)
    facts = tuple((namer.name(movement), best) for movement, best in plan.athlete_facts)
    return replace(plan, weeks=weeks, athlete_facts=facts, notes=tuple(namer.note(note) for note in plan.notes))


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

    def note(self, note: str) -> str:
        """A note of the plan, which may say what the athlete avoids."""
        for kept, plain in self._printed.items():
            note = note.replace(kept, plain)
        return note

    def _line(self, line: Line) -> Line:
        return replace(
            line,
            movement=self._movement(line.movement),
            segments=tuple(self._segment(segment) for segment in line.segments),
            swaps=self._all(line.swaps),
            instead_of=None if line.instead_of is None else self.name(line.instead_of),
        )

    def _movement(self, movement: Movement) -> Movement:
        if movement.name not in self._made:
            best = None if movement.best_from is None else (self.name(movement.best_from[0]), movement.best_from[1])
            name, swaps = self.name(movement.name), self._all(movement.swaps)
            self._made[movement.name] = replace(movement, name=name, swaps=swaps, best_from=best)
        return self._made[movement.name]

    def _segment(self, segment: Segment) -> Segment:
        match segment.intensity:
            case PercentOfBest(percent=percent, of=str() as of):
                return replace(segment, intensity=PercentOfBest(percent, self.name(of)))
            case _:
                return segment

    def _all(self, names: tuple[str, ...]) -> tuple[str, ...]:
        return tuple(self.name(name) for name in names)
