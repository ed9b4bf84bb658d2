"""How long a session takes, from the first warm-up set to the last work set.

Comes in: a session. Goes out: minutes, exact under the conventions that `session_minutes` states.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from itertools import groupby
from typing import Final

from setwright.check.figures.sets import Ledger, Part, asked_lines, total
from setwright.plan import Line, Segment, SegmentKind, Session
from setwright.prescription import Reps, RepsKind, Rest
from setwright.science import time

# All four: common practice, no source.
REPETITIONS_OF_MAX: Final = Fraction(10)
SECONDS_PER_METRE: Final = Fraction(1)
WARM_UP_REST_S: Final = Fraction(60)
CLUSTER_PAUSE_S: Final = Fraction(20)


def session_minutes(session: Session) -> Fraction:
    """The minutes a session takes. The conventions, of which none has a source unless `science.time` names it:

    - A set lasts its repetitions times its tempo, or times `REPETITION_S` without one. A range of repetitions, seconds
      or metres is taken at its middle, `5+` as 5, and `max` as ten repetitions. A timed set lasts its seconds, a metre
      one second. A cluster also has its pauses (20 s where none is written). Work `/side` is done twice.
    - Rest comes between work sets and not after the last one: what is written (a range at its middle), else
      `DEFAULT_REST_S`. Drop sets follow without rest. `every 90 s` gives each work set 90 s, rest included.
    - Each warm-up set is followed by 60 s of loading and rest.
    - In a superset or circuit the lines of a round follow each other at once, and the rest comes between rounds; there
      are as many rounds as the line with the most sets has.
    - `CHANGEOVER_S` passes once between each line and the next, also in a group.
    """
    return total(line_minutes(session.lines))


def line_minutes(lines: Iterable[Line]) -> tuple[Part, ...]:
    """The minutes of each line, with its changeover and its share of a group's rests; their sum is the session's."""
    seconds = [
        pair
        for _, group in groupby(lines, key=lambda line: line.group and line.group.letter)
        for pair in _together(list(group))
    ]
    return tuple(
        Part(line, (spent + (time.CHANGEOVER_S if place else 0)) / 60) for place, (line, spent) in enumerate(seconds)
    )


def session_parts(ledger: Ledger, session: Session) -> tuple[Part, ...]:
    """The minutes of each line that rules count; worked out once for all the rules of a plan."""
    return ledger.remembered(("minutes", id(session)), lambda: line_minutes(asked_lines(session, ledger.promise)))


def _together(lines: list[Line]) -> list[tuple[Line, Fraction]]:
    if lines[0].group is None:
        return [(line, _warm_up_seconds(line) + _alone_seconds(line)) for line in lines]
    rounds = max(rested_sets(line) for line in lines)
    share = max(0, rounds - 1) * _group_rest(lines) / len(lines)
    return [(line, _warm_up_seconds(line) + _work_seconds(line) + share) for line in lines]


def _alone_seconds(line: Line) -> Fraction:
    if line.every is not None:
        return line.sets * line.every
    return _work_seconds(line) + max(0, rested_sets(line) - 1) * _rest_seconds(line.rest)


def _group_rest(lines: list[Line]) -> Fraction:
    group = lines[0].group
    if group is not None and group.rest is not None:
        return _rest_seconds(group.rest)
    written = [_rest_seconds(line.rest) for line in lines if line.rest is not None]
    return max(written, default=_rest_seconds(None))


def rested_sets(line: Line) -> int:
    """The work sets of a line that rest comes between: all but drop sets, which follow at once."""
    return sum(segment.sets for segment in line.work if segment.kind is not SegmentKind.DROP)


def _work_seconds(line: Line) -> Fraction:
    return sum((segment.sets * _set_seconds(segment, line) for segment in line.work), Fraction(0))


def _warm_up_seconds(line: Line) -> Fraction:
    warm_ups = (segment for segment in line.segments if segment.kind is SegmentKind.WARM_UP)
    return sum((each.sets * (_set_seconds(each, line) + WARM_UP_REST_S) for each in warm_ups), Fraction(0))


def _set_seconds(segment: Segment, line: Line) -> Fraction:
    once = _one_side_seconds(segment.reps, line)
    return 2 * once if segment.reps.per_side else once


def _one_side_seconds(reps: Reps, line: Line) -> Fraction:
    tempo = None if line.tempo is None else line.tempo.phases
    match reps.kind:
        case RepsKind.COUNT:
            return time.set_seconds(_middle(reps), tempo)
        case RepsKind.AT_LEAST:
            return time.set_seconds(reps.low, tempo)
        case RepsKind.MAX:
            return time.set_seconds(REPETITIONS_OF_MAX, tempo)
        case RepsKind.SECONDS:
            return _middle(reps)
        case RepsKind.METRES:
            return _middle(reps) * SECONDS_PER_METRE
        case RepsKind.CLUSTER:
            pause = CLUSTER_PAUSE_S if line.pause is None else line.pause
            return time.set_seconds(Fraction(sum(reps.parts)), tempo) + max(0, len(reps.parts) - 1) * pause


def _rest_seconds(rest: Rest | None) -> Fraction:
    return Fraction(time.DEFAULT_REST_S) if rest is None else _middle(rest)


def _middle(span: Reps | Rest) -> Fraction:
    return span.low if span.low == span.high else (span.low + span.high) / 2
