"""Where the numbers of a line come from: each value of it with the steps from what is written.

Comes in: an expanded plan, fitted or not, and which lines. Goes out: a `Derivation` for each of them in each week.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.plan import Line, Plan, Quantity, Segment, Session, Step, StepValue, Week
from setwright.record import record


@record
class Number:
    """One value and the steps to it, the first of which begins with what is written."""

    quantity: Quantity
    value: StepValue
    steps: tuple[Step, ...]


@record
class PartOfLine:
    """The values of one segment: sets, repetitions, intensity, load, each where there is one."""

    segment: Segment
    numbers: tuple[Number, ...]


@record
class Derivation:
    """One line in one session of one week: what holds for the whole line, then its segments, warm-ups first."""

    week: Week
    session: Session
    order: int  # in the session, from 1
    line: Line
    numbers: tuple[Number, ...]  # day and movement where they were changed, rest, tempo
    parts: tuple[PartOfLine, ...]


class NothingThereError(LookupError):
    """A week, day or movement that a plan does not have: `what` it is, as `asked`, and those that are `there`."""

    def __init__(self, what: str, asked: str, there: tuple[str, ...], elsewhere: tuple[str, ...] = ()) -> None:
        super().__init__(f"no {what} {asked}")
        self.what, self.asked, self.there = what, asked, there
        self.elsewhere = elsewhere  # days of that week which have the movement


def derivations(plan: Plan, number: int, day: str, movement: str | None = None) -> tuple[Derivation, ...]:
    """The lines of a session, or those of one movement in it. Raises `NothingThereError`.

    `day` is the slot (`Mon`, `3`) or the date (`2027-01-04`), also as the plan had it before an athlete's days moved
    it. `movement` may be what the plan asked for before a substitution, and may end in the line's label.
    """
    week = next((week for week in plan.weeks if week.number == number), None)
    if week is None:
        raise NothingThereError("week", str(number), tuple(str(week.number) for week in plan.weeks))
    session = _session(week, day)
    found = tuple(_of_session(week, session))
    if movement is None:
        return found
    wanted = movement.casefold()
    chosen = tuple(one for one in found if wanted in _names(one.line))
    if not chosen:
        there = dict.fromkeys(_called(one.line) for one in found)
        days = (other.slot for other in week.sessions if any(wanted in _names(line) for line in other.lines))
        raise NothingThereError("movement", movement, tuple(there), tuple(days))
    return chosen


def of_written_line(plan: Plan, path: str, number: int) -> tuple[Derivation, ...]:
    """All weeks of what is written on one line of a file: a movement's line, or one week of the week-by-week form."""

    def is_there(line: Line) -> bool:
        spans = (line.span, *(segment.span for segment in line.segments))
        return any(span.source.path == path and span.line == number for span in spans)

    return tuple(
        derivation(week, session, order, line)
        for week in plan.weeks
        for session in week.sessions
        for order, line in enumerate(session.lines, 1)
        if is_there(line)
    )


def derivation(week: Week, session: Session, order: int, line: Line) -> Derivation:
    """One line of a session with all its values."""
    changed = (
        (Quantity.DAY, session.slot, session.steps),
        (Quantity.DATE, session.date.isoformat() if session.date else None, session.steps),
        (Quantity.MOVEMENT, line.movement.name, line.steps),
        (Quantity.REST, line.rest, line.steps),
        (Quantity.TEMPO, line.tempo, line.steps),
    )
    numbers = tuple(
        number for quantity, value, steps in changed if (number := _number(quantity, value, steps)) is not None
    )
    return Derivation(week, session, order, line, numbers, tuple(_part(segment) for segment in line.segments))


# ---- helpers -------------------------------------------------------------------------------------


def _part(segment: Segment) -> PartOfLine:
    mass = segment.load.mass if segment.load is not None else None
    values: tuple[tuple[Quantity, StepValue], ...] = (
        (Quantity.SETS, segment.sets),
        (Quantity.REPS, segment.reps),
        (Quantity.INTENSITY, segment.intensity),
        (Quantity.LOAD, mass),
    )
    found = (_number(quantity, value, segment.steps) for quantity, value in values)
    return PartOfLine(segment, tuple(number for number in found if number is not None))


def _number(quantity: Quantity, value: StepValue, steps: tuple[Step, ...]) -> Number | None:
    chain = tuple(step for step in steps if step.quantity is quantity)
    return Number(quantity, value, chain) if chain else None


def _of_session(week: Week, session: Session) -> Iterator[Derivation]:
    return (derivation(week, session, order, line) for order, line in enumerate(session.lines, 1))


def _session(week: Week, day: str) -> Session:
    """By the day as it is first: an athlete's Tuesday may be the plan's Monday."""
    wanted = day.casefold()
    for names in (_days_now, _days_planned):
        for session in week.sessions:
            if wanted in names(session):
                return session
    dates = (f"{session.slot} ({session.date})" if session.date else session.slot for session in week.sessions)
    raise NothingThereError("day", day, tuple(dates))


def _days_now(session: Session) -> tuple[str, ...]:
    return session.slot.casefold(), session.date.isoformat() if session.date else session.slot.casefold()


def _days_planned(session: Session) -> tuple[str, ...]:
    return tuple(str(step.before).casefold() for step in session.steps)


def _names(line: Line) -> tuple[str, ...]:
    """What the line may be asked for by, in lower case."""
    names = [name for name in (line.movement.name, line.instead_of) if name is not None]
    if line.label is not None:
        names += [form.format(name, line.label) for name in names for form in ("{} {}", '{} "{}"')]
    return tuple(name.casefold() for name in names)


def _called(line: Line) -> str:
    return f'{line.movement.name} "{line.label}"' if line.label is not None else line.movement.name
