"""The ways to add one set for a muscle to a week, or to take one away, best first.

Comes in: a week, a muscle, and how sets are counted. Goes out: `Move`s, and a week with one carried out.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from setwright.check.figures.sets import asked_lines, counted_sets
from setwright.link.tracks import MOST_SETS
from setwright.plan import Line, Movement, SegmentKind, Session, Week
from setwright.record import record, replace
from setwright.rules import Promise
from setwright.science.counting import credit


@record
class Move:
    """One set more or less in a segment: the places of its session, line and segment, and the sets it then has."""

    movement: Movement
    session: int
    line: int
    segment: int
    sets: int


def moves(week: Week, muscle: str, by: int, promise: Promise) -> list[Move]:
    """What can be done for the muscle (`by`: 1 or -1 set): fewest (taking: most) sets a session first, then plan order.

    A set goes to the last work segment of a line that trains no other muscle directly, and only where it counts.
    """
    found = [
        (_sets_for(muscle, session, promise), move)
        for place, session in enumerate(week.sessions)
        for move in _moves_in(session, place, muscle, by, promise)
    ]
    found.sort(key=lambda pair: pair[0] * by)  # the sort is stable: ties stay in the order of the plan
    return [move for _, move in found]


def trains_alone(line: Line, muscle: str) -> bool:
    """True where the muscle is the only prime mover (weight 1) of the line's movement."""
    return {word for word, weight in line.movement.works if weight >= 1} == {muscle}


def moved(week: Week, move: Move) -> Week:
    """The week with the segment's sets changed."""
    session = week.sessions[move.session]
    line = _with_sets(session.lines[move.line], move.segment, move.sets)
    lines = (*session.lines[: move.line], line, *session.lines[move.line + 1 :])
    changed = replace(session, lines=lines)
    return replace(week, sessions=(*week.sessions[: move.session], changed, *week.sessions[move.session + 1 :]))


def _sets_for(muscle: str, session: Session, promise: Promise) -> Fraction:
    counted = (
        counted_sets(line, promise) * credit(promise.counting, weight)
        for line in asked_lines(session, promise)
        for word, weight in line.movement.works
        if word == muscle
    )
    return sum(counted, Fraction(0))


def _moves_in(session: Session, place: int, muscle: str, by: int, promise: Promise) -> Iterator[Move]:
    for at, line in enumerate(session.lines):
        if not trains_alone(line, muscle) or _does_rounds(line) or (promise.required_only and line.optional):
            continue
        last = _last_work(line)
        if last is None:
            continue
        sets = line.segments[last].sets + by
        if 1 <= sets <= MOST_SETS and _counts(line, last, sets, promise):
            yield Move(line.movement, place, at, last, sets)


def _does_rounds(line: Line) -> bool:
    """True in a circuit, whose rounds say how many sets there are."""
    return line.group is not None and line.group.rounds is not None


def _last_work(line: Line) -> int | None:
    """The place of the last segment that is neither warm-up, nor drop, nor test."""
    places = [at for at, segment in enumerate(line.segments) if segment.kind is SegmentKind.WORK]
    return places[-1] if places else None


def _counts(line: Line, at: int, sets: int, promise: Promise) -> bool:
    """False where the segment is easier than the plan counts from."""
    return counted_sets(_with_sets(line, at, sets), promise) != counted_sets(line, promise)


def _with_sets(line: Line, at: int, sets: int) -> Line:
    changed = replace(line.segments[at], sets=sets)
    return replace(line, segments=(*line.segments[:at], changed, *line.segments[at + 1 :]))
