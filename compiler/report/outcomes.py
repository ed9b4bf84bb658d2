"""What was done beside what was asked: each planned session with its sets, and what nobody asked for.

Comes in: a plan, its log, and the day that counts as today. Goes out: `Outcomes`. Its cost is linear in plan and log.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date
from enum import Enum
from fractions import Fraction

from setwright.log.matching import Matching, Place, entries_beside, lines_done, matched
from setwright.log.model import LineDone, Log, SessionDone, SetDone
from setwright.plan import Line, Plan, Session
from setwright.record import record


class State(Enum):
    """What became of a planned session."""

    DONE = "done"
    MISSED = "missed"
    AWAY = "away"  # left out, as the athlete was away and the plan does not wait
    AHEAD = "ahead"


@record
class LineOutcome:
    """One line of a session that was done: its sets by work segment, in order; those past all of them are the last's.

    `instead` is the movement that was done in its place. `more` counts sets past those asked; less than 0 where some
    were left out. No sets at all where there is no entry for it.
    """

    segments: tuple[tuple[SetDone, ...], ...]
    instead: str | None = None
    more: int = 0

    @property
    def sets(self) -> tuple[SetDone, ...]:
        """All of its sets."""
        return tuple(one for sets in self.segments for one in sets)


@record
class SessionOutcome:
    """One planned session. `lines` has one for each of its lines where it was done; `beside` is what none asks for."""

    state: State
    days: tuple[date, ...] = ()
    lines: tuple[LineOutcome, ...] = ()
    beside: tuple[LineDone, ...] = ()
    notes: tuple[str, ...] = ()
    efforts: tuple[Fraction, ...] = ()  # of the whole session, from 0 to 10, of each part that says it
    minutes: Fraction | None = None  # of all parts that say it


@record
class Outcomes:
    """A plan with its log on one day. `due` counts the sessions that were done and those whose day has passed."""

    on: date
    matching: Matching
    sessions: Mapping[Place, SessionOutcome]
    done: int
    due: int

    def of(self, week: int, position: int) -> SessionOutcome:
        """A planned session, by its week and its place in it from 1."""
        return self.sessions.get((week, position), _AHEAD)

    def extras_in(self, week: int | None) -> tuple[SessionDone, ...]:
        """The sessions in a week that were none of the plan's; None for those of a plan without dates."""
        return tuple(session for number, session in self.matching.extras if number == week)


_AHEAD = SessionOutcome(State.AHEAD)
_MISSED = SessionOutcome(State.MISSED)
_AWAY = SessionOutcome(State.AWAY)


def outcomes(plan: Plan, log: Log, on: date) -> Outcomes:
    """What became of each session of the plan by this day."""
    matching = matched(plan, log)
    last = max(matching.placed, default=None)
    made = {
        (week.number, position): _outcome(session, (week.number, position), matching, on, last)
        for week in plan.weeks
        for position, session in enumerate(week.sessions, 1)
    }
    done = sum(one.state is State.DONE for one in made.values())
    due = done + sum(one.state is State.MISSED for one in made.values())
    return Outcomes(on, matching, made, done, due)


def _outcome(session: Session, place: Place, matching: Matching, on: date, last: Place | None) -> SessionOutcome:
    done = matching.done(*place)
    if done:
        return _done(session, done)
    if session.left_out:
        return _AWAY
    # Without dates nothing is late; what was left out before a later session was missed.
    passed = session.date < on if session.date is not None else last is not None and place < last
    return _MISSED if passed else _AHEAD


def _done(session: Session, done: tuple[SessionDone, ...]) -> SessionOutcome:
    beside = [*entries_beside(session, done)]
    lines = tuple(_line(line, session, done, beside) for line in session.lines)
    notes = tuple(note for one in done for note in one.notes)
    days = tuple(dict.fromkeys(one.day for one in done))
    efforts = tuple(one.effort for one in done if one.effort is not None)
    minutes = [one.minutes for one in done if one.minutes is not None]
    length = sum(minutes, Fraction(0)) if minutes else None
    return SessionOutcome(State.DONE, days, lines, tuple(beside), notes, efforts, length)


def _line(line: Line, session: Session, done: tuple[SessionDone, ...], beside: list[LineDone]) -> LineOutcome:
    """The line's own sets; without any, those of a movement that may stand in for it, which then is beside no more."""
    own = lines_done(line, done, session.lines)
    if own is not None:
        return LineOutcome(tuple(_by_segment(line, own)), None, len(own) - line.sets)
    standing_in = {name.casefold() for name in (*line.swaps, *line.movement.swaps, line.instead_of or "")}
    other = next((entry for entry in beside if entry.movement.name.casefold() in standing_in), None)
    if other is None:
        return LineOutcome(tuple(() for _ in line.work), None, -line.sets)
    beside.remove(other)
    return LineOutcome(tuple(_by_segment(line, other.sets)), other.movement.name, len(other.sets) - line.sets)


def _by_segment(line: Line, sets: tuple[SetDone, ...]) -> Iterator[tuple[SetDone, ...]]:
    """As many sets as each segment asks for; the last one takes what is over."""
    start = 0
    for at, segment in enumerate(line.work, 1):
        end = start + segment.sets if at < len(line.work) else len(sets)
        yield sets[start:end]
        start = end
