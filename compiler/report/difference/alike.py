"""When two pieces of a plan are the same for an athlete, wherever and however they were written.

Comes in: segments, lines, sessions, weeks. Goes out: values that are equal where the sheets are.
"""

from __future__ import annotations

from collections.abc import Hashable

from setwright.plan import Line, Segment, Session, Week
from setwright.prescription import Bodyweight, Intensity, Reps, Weight
from setwright.record import replace


def same_reps(reps: Reps) -> Reps:
    """Repetitions without how a time was written: 90 s are 1.5 min."""
    return replace(reps, minutes=False) if reps.minutes else reps


def same_intensity(intensity: Intensity | None) -> Intensity | None:
    """An intensity without whether its mass was written or worked out."""
    match intensity:
        case Weight(written=False) | Bodyweight(written=False):
            return replace(intensity, written=True)
        case _:
            return intensity


def segment_print(segment: Segment) -> Hashable:
    """All of a segment that a sheet shows."""
    return (
        segment.kind,
        segment.sets,
        same_reps(segment.reps),
        same_intensity(segment.intensity),
        segment.load.mass if segment.load is not None else None,
        segment.load_factor,
    )


def work_print(line: Line) -> Hashable:
    """The segments of a line."""
    return tuple(segment_print(segment) for segment in line.segments)


def plain_advance(line: Line) -> str | None:
    """A line's progression, whatever spaces it was written with."""
    return None if line.advance is None else "".join(line.advance.split())


def session_print(session: Session) -> Hashable:
    """The lines of a session with their work, whichever day it stands on."""
    return tuple((line.movement.name, line.label, line.optional, line.rest, work_print(line)) for line in session.lines)


def session_shape(session: Session) -> Hashable:
    """The movements of a session."""
    return tuple((line.movement.name, line.label) for line in session.lines)


def week_print(week: Week) -> Hashable:
    """The sessions of a week with their work."""
    return week.kind, tuple((session.slot, session_print(session)) for session in week.sessions)


def week_shape(week: Week) -> Hashable:
    """The days of a week and their movements."""
    return tuple((session.slot, session_shape(session)) for session in week.sessions)
