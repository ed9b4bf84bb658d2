"""What is another about one line, week by week.

Comes in: two `LineTrack`s that answer to each other. Goes out: the `Change`s between them, and work on one side only.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from setwright.plan import Group, Line, Segment, SegmentKind
from setwright.prescription import Bodyweight, Weight
from setwright.record import replace
from setwright.report.difference.alike import plain_advance, same_intensity, same_reps, segment_print
from setwright.report.difference.blocks import WeekPair
from setwright.report.difference.model import Aspect, Change, Fate, LineChange, Value, Written
from setwright.report.difference.stretches import Seen, change, numbers
from setwright.report.difference.tracks import LineTrack, TrackPair

_Both = tuple[WeekPair, Line, Line]


def line_changes(pair: TrackPair, weeks: Sequence[WeekPair]) -> Iterator[LineChange]:
    """The change of a line, and the weeks in which only one side has it; nothing where it is the same."""
    old, new = pair.old, pair.new
    if old is not None and new is not None:
        both = [(weeks[at], line, new.lines[at]) for at, line in old.lines.items() if at in new.lines]
        swapped = old.movement != new.movement
        # What may stand in for a movement goes with it, so that a swap says nothing of it.
        changes = tuple(found for found in _changes(both) if not (swapped and found.aspect is Aspect.SWAPS))
        if changes or (swapped and both):
            fate = Fate.SWAPPED if swapped else Fate.CHANGED
            stands = numbers(week for week, _, _ in both)
            yield LineChange(fate, old.movement, new.movement, new.label, stands, changes=changes)
    yield from _alone(old, new, weeks)


def _alone(old: LineTrack | None, new: LineTrack | None, weeks: Sequence[WeekPair]) -> Iterator[LineChange]:
    here = old.lines if old is not None else {}
    there = new.lines if new is not None else {}
    gone = [Written(weeks[at][0].number, line.segments) for at, line in here.items() if at not in there]
    come = [Written(weeks[at][1].number, line.segments) for at, line in there.items() if at not in here]
    if old is not None and gone:
        yield LineChange(Fate.DROPPED, old.movement, None, old.label, written=tuple(gone))
    if new is not None and come:
        yield LineChange(Fate.ADDED, None, new.movement, new.label, written=tuple(come))


def _changes(both: Sequence[_Both]) -> Iterator[Change]:
    yield from _work(both)
    yield from _of(both, Aspect.WARM_UP, _warm_ups, _warming_up)
    for aspect, value in _OF_A_LINE:
        yield from _of(both, aspect, value)
    yield from _of(both, Aspect.PROGRESSION, lambda line: line.advance, plain_advance)
    yield from _of(both, Aspect.GROUP, lambda line: line.group, lambda line: _done_together(line.group))


_OF_A_LINE: tuple[tuple[Aspect, Callable[[Line], Value]], ...] = (
    (Aspect.LABEL, lambda line: line.label),
    (Aspect.REST, lambda line: line.rest),
    (Aspect.TEMPO, lambda line: line.tempo),
    (Aspect.EVERY, lambda line: line.every),
    (Aspect.PAUSE, lambda line: line.pause),
    (Aspect.OPTIONAL, lambda line: line.optional),
    (Aspect.INSTEAD_OF, lambda line: line.instead_of),
    (Aspect.SWAPS, lambda line: line.swaps),
    (Aspect.NOTES, lambda line: line.notes),
)


def _of(
    both: Sequence[_Both],
    aspect: Aspect,
    value: Callable[[Line], Value],
    key: Callable[[Line], object] | None = None,
) -> Iterator[Change]:
    """The weeks in which the key (the value itself where none is given) differs."""
    by = key or value
    differing = [(week, old, new) for week, old, new in both if by(old) != by(new)]
    return change(aspect, (Seen(week, value(old), value(new)) for week, old, new in differing))


def _work(both: Sequence[_Both]) -> Iterator[Change]:
    """Segment by segment where both sides have as many of the same kinds; the other weeks as a whole."""
    like: list[_Both] = []
    unlike: list[_Both] = []
    for one in both:
        kinds = [[_kind(segment) for segment in line.work] for line in one[1:]]
        (like if kinds[0] == kinds[1] else unlike).append(one)
    yield from change(Aspect.WORK, (Seen(week, old.work, new.work) for week, old, new in unlike))
    yield from _of(like, Aspect.TEST, lambda line: line.is_test)
    parts = max((len(old.work) for _, old, _ in like), default=0)
    for part in range(parts):
        there = [(week, old.work[part], new.work[part]) for week, old, new in like if part < len(old.work)]
        yield from _segment(there, part if parts > 1 else None)


def _segment(both: Sequence[tuple[WeekPair, Segment, Segment]], part: int | None) -> Iterator[Change]:
    for aspect, value in _OF_A_SEGMENT:
        yield from change(aspect, (Seen(week, value(old), value(new)) for week, old, new in both), part)
    moved = [one for one in both if _mass(one[1]) != _mass(one[2]) and not _says_load(*one[1:])]
    yield from change(Aspect.LOAD, (Seen(week, old.load, new.load) for week, old, new in moved), part)


_OF_A_SEGMENT: tuple[tuple[Aspect, Callable[[Segment], Value]], ...] = (
    (Aspect.SETS, lambda segment: segment.sets),
    (Aspect.REPS, lambda segment: same_reps(segment.reps)),
    (Aspect.INTENSITY, lambda segment: same_intensity(segment.intensity)),
    (Aspect.LOAD_FACTOR, lambda segment: segment.load_factor),
)


def _mass(segment: Segment) -> object:
    return segment.load.mass if segment.load is not None else None


def _says_load(old: Segment, new: Segment) -> bool:
    """True where the intensity is the load, and is another already."""
    written = isinstance(old.intensity, Weight | Bodyweight) and isinstance(new.intensity, Weight | Bodyweight)
    return written and same_intensity(old.intensity) != same_intensity(new.intensity)


def _kind(segment: Segment) -> SegmentKind:
    """A test is work, and whether it is one is said once of the whole line."""
    return SegmentKind.WORK if segment.kind is SegmentKind.TEST else segment.kind


def _warm_ups(line: Line) -> tuple[Segment, ...]:
    return tuple(segment for segment in line.segments if segment.kind is SegmentKind.WARM_UP)


def _warming_up(line: Line) -> tuple[object, ...]:
    """Warm-ups as they are asked for; their loads follow those of the work, which are told."""
    return tuple(segment_print(replace(segment, load=None)) for segment in _warm_ups(line))


def _done_together(group: Group | None) -> Group | None:
    """A group without its letter, which follows from those before it, and its rest, which its lines have as well."""
    return None if group is None else replace(group, letter="", rest=None)
