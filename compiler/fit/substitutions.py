"""What an athlete does in place of what is planned: by a swap of their own, or as they avoid it or lack equipment.

Comes in: an expanded plan and an athlete. Goes out: the plan with what stands in, and a warning where nothing fits.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from setwright.athlete import Athlete, Avoided
from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import athletes as codes
from setwright.fit.bests import MovementOf
from setwright.message import Phrase, message
from setwright.plan import Cause, Fact, Line, Movement, Plan, Quantity, Segment, SegmentKind, Session, Step, Week
from setwright.prescription import Bodyweight, ChangeByMass, PercentOfBest, Weight
from setwright.record import record, replace
from setwright.source import Span
from setwright.suggest import either

STILL_AVOIDED = Phrase(
    message("To be avoided, and nothing that is listed fits in its place: leave it out, or ask the coach.")
)


def substituted_plan(plan: Plan, athlete: Athlete, movement_of: MovementOf, problems: list[Diagnostic]) -> Plan:
    """The plan as this athlete does it; the same plan where they avoid, swap and lack nothing."""
    if not (athlete.avoids or athlete.swaps or athlete.has):
        return plan
    choice = _Choice(athlete, movement_of, problems)
    weeks = tuple(_substituted_week(week, choice) for week in plan.weeks)
    said = tuple(
        Phrase(message("{athlete} avoids {what}"), athlete=athlete.name, what=str(avoided))
        for avoided in athlete.avoids
    )
    return replace(plan, weeks=weeks, notes=(*plan.notes, *said))


def _substituted_week(week: Week, choice: _Choice) -> Week:
    return replace(week, sessions=tuple(choice.session(session, week.number) for session in week.sessions))


@record
class _Obstacle:
    """Why an athlete does not do a movement: they avoid it, or have not what it needs."""

    avoided: Avoided | None = None
    missing: tuple[str, ...] = ()

    def of(self, movement: str) -> str:
        return f"{movement} needs {either(self.missing, 'and')}" if self.missing else f"{movement} is avoided"


class _Choice:
    """One athlete's movements; each is judged once."""

    def __init__(self, athlete: Athlete, movement_of: MovementOf, problems: list[Diagnostic]) -> None:
        self._athlete = athlete
        self._equipment = athlete.equipment
        self._movement_of = movement_of
        self._problems = problems
        self._own = {swap.old: swap for swap in athlete.swaps if swap.new != swap.old}
        self._obstacles: dict[str, _Obstacle | None] = {}
        self._offered: dict[str, Movement] = {}
        self._warned: set[str] = set()

    def session(self, session: Session, week: int) -> Session:
        """The session with what the athlete does in it: their own swaps first, then the gaps in order."""
        lines = [self._by_own_swap(line) for line in session.lines]
        taken = {(line.movement.name, line.label) for line in lines if self._obstacle(line.movement) is None}
        done: list[Line] = []
        for line in lines:
            obstacle = self._obstacle(line.movement)
            found = line if obstacle is None else self._stood_in(line, obstacle, taken, week)
            taken.add((found.movement.name, found.label))
            done.append(self._with_offers(found))
        return replace(session, lines=tuple(done))

    def _by_own_swap(self, line: Line) -> Line:
        swap = self._own.get(line.movement.name)
        new = self._movement_of(swap.new) if swap else None
        return line if new is None or swap is None else _in_its_place(line, new, swap.span, _fact("swap"))

    def _stood_in(self, line: Line, obstacle: _Obstacle, taken: set[tuple[str, str | None]], week: int) -> Line:
        tried: list[str] = []
        for name in () if line.instead_of else line.swaps:
            movement = self._movement_of(name)
            if movement is None:
                continue
            against = self._obstacle(movement)
            if against is not None:
                tried.append(against.of(movement.name))
            elif movement.name in self._own:
                tried.append(f"{movement.name} is swapped for {self._own[movement.name].new}")
            elif (movement.name, line.label) in taken:
                tried.append(f"{movement.name} stands in that session already")
            else:
                return _in_its_place(line, movement, self._place(obstacle), _reasons(obstacle))
        self._warn(line, obstacle, tried, week)
        return replace(line, notes=(*line.notes, STILL_AVOIDED)) if obstacle.avoided else line

    def _place(self, obstacle: _Obstacle) -> Span:
        """The athlete's line that stands in the way."""
        return obstacle.avoided.span if obstacle.avoided else self._athlete.line_of("has") or self._athlete.span

    def _obstacle(self, movement: Movement) -> _Obstacle | None:
        if movement.name not in self._obstacles:
            self._obstacles[movement.name] = self._judged(movement)
        return self._obstacles[movement.name]

    def _judged(self, movement: Movement) -> _Obstacle | None:
        for avoided in self._athlete.avoids:
            if avoided.what == (movement.pattern if avoided.is_pattern else movement.name):
                return _Obstacle(avoided)
        if not self._athlete.has:
            return None
        missing = tuple(need for need in movement.needs if need not in self._equipment)
        return _Obstacle(missing=missing) if missing else None

    def _with_offers(self, line: Line) -> Line:
        """The line with only such names after `swap for` as the athlete can follow."""
        name = line.movement.name
        if name not in self._offered:
            self._offered[name] = replace(line.movement, swaps=self._fitting(line.movement.swaps, name))
        return replace(line, movement=self._offered[name], swaps=self._fitting(line.swaps, name))

    def _fitting(self, swaps: tuple[str, ...], done: str) -> tuple[str, ...]:
        return tuple(name for name in swaps if self._fits(self._movement_of(name), done))

    def _fits(self, movement: Movement | None, done: str) -> bool:
        if movement is None or movement.name == done or movement.name in self._own:
            return False
        return self._obstacle(movement) is None

    def _warn(self, line: Line, obstacle: _Obstacle, tried: list[str], week: int) -> None:
        name = line.movement.name
        if name in self._warned:
            return
        self._warned.add(name)
        facts: dict[str, Any] = {"athlete": self._athlete.name, "movement": name, "week": week}
        related, help_ = self._explained(line, obstacle, tried)
        if obstacle.avoided is not None:
            what = obstacle.avoided.what
            found = codes.AVOIDED_MOVEMENT.at(line.span, what=what, help=help_, related=related, **facts)
        else:
            equipment = either(obstacle.missing)
            found = codes.MISSING_EQUIPMENT.at(line.span, equipment=equipment, help=help_, related=related, **facts)
        self._problems.append(found)

    def _explained(self, line: Line, obstacle: _Obstacle, tried: list[str]) -> tuple[tuple[Related, ...], str]:
        related = (Related(obstacle.avoided.span, "avoided here"),) if obstacle.avoided else ()
        if line.instead_of:
            related = (*related, Related(self._own[line.instead_of].span, "it was brought in here"))
            return related, f"Swap {line.instead_of} for a movement that {self._athlete.name} can do."
        own = f"{self._athlete.name} can `swap {line.movement.name} for` another"
        way = f"The line can name more in `swap for`, or {own}."
        return related, f"{'; '.join(tried)}. {way}" if tried else way


def _fact(reason: str, what: str | None = None) -> tuple[Fact, ...]:
    return (("reason", reason), *((("what", what),) if what else ()))


def _reasons(obstacle: _Obstacle) -> tuple[Fact, ...]:
    if obstacle.avoided is not None:
        return _fact("avoid", str(obstacle.avoided))
    return _fact("missing", either(obstacle.missing, "and"))


def _in_its_place(line: Line, movement: Movement, span: Span, why: tuple[Fact, ...]) -> Line:
    """The line with another movement; its notes say for which one they were written.

    Warm-up sets are shares of a load; they go where the equipment of the new movement carries none.
    """
    planned = line.movement.name
    notes = tuple(Phrase(message("{head}: {said}"), head=planned, said=note) for note in line.notes)
    kept = (part for part in line.segments if part.kind is not SegmentKind.WARM_UP or movement.handling is not None)
    segments = tuple(_carried_over(segment, movement, span) for segment in kept)
    step = Step(Quantity.MOVEMENT, Cause.SUBSTITUTION, planned, movement.name, span, why)
    steps = (*line.steps, step)
    return replace(line, movement=movement, instead_of=planned, segments=segments, notes=notes, steps=steps)


def _carried_over(segment: Segment, movement: Movement, span: Span) -> Segment:
    """The segment without a load that was chosen for another movement. Efforts and shares of the own best stay."""
    match segment.intensity:
        case Weight() | ChangeByMass():
            dropped = True
        case PercentOfBest(of=of):
            dropped = of is not None
        case Bodyweight(added=added):
            dropped = movement.handling is not None or (added is not None and added.amount != 0)
        case _:
            dropped = False
    if not dropped:
        return segment
    step = Step(Quantity.INTENSITY, Cause.SUBSTITUTION, segment.intensity, None, span)
    return replace(segment, intensity=None, load_factor=Fraction(1), steps=(*segment.steps, step))
