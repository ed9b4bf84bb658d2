"""A line over the weeks of a block, and which old one answers to which new one.

Comes in: the days of a `DayPair`. Goes out: pairs of `LineTrack`s; swaps are seen as such.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from setwright.plan import Line
from setwright.record import record
from setwright.report.difference.alike import work_print
from setwright.report.difference.days import Days
from setwright.report.difference.pairing import Candidate, by_key, by_likeness


@dataclass(frozen=True)
class LineTrack:
    """One line: its movement, its label, which of several alike it is, and what it is in each week it stands in."""

    movement: str
    label: str | None
    nth: int
    lines: Mapping[int, Line]  # by the place of the week among the pairs

    @property
    def first(self) -> Line:
        """The line in the first week that has it."""
        return next(iter(self.lines.values()))

    @cached_property
    def work(self) -> tuple[object, ...]:
        """What is done in each week."""
        return tuple((at, work_print(line)) for at, line in self.lines.items())


@record
class TrackPair:
    """A line of either side; None where it is missing there."""

    old: LineTrack | None
    new: LineTrack | None


def track_pairs(old: Days | None, new: Days | None) -> tuple[TrackPair, ...]:
    """Lines by movement and label, then by movement alone, then as swaps. New order, dropped lines last."""
    left, right = _tracks(old), _tracks(new)
    found: dict[int, int] = {}  # new to old
    keys: tuple[Callable[[LineTrack], Hashable], ...] = (
        lambda one: (one.movement, one.label, one.work),
        lambda one: (one.movement, one.label),
        lambda one: one.movement,
    )
    for key in keys:
        free_old, free_new = _free(left, right, found)
        if not free_old or not free_new:
            break
        pairs = by_key({at: key(left[at]) for at in free_old}, {at: key(right[at]) for at in free_new})
        found.update((there, here) for here, there in pairs)
    _add_swaps(left, right, found)
    made = [TrackPair(left[found[at]] if at in found else None, track) for at, track in enumerate(right)]
    return (*made, *(TrackPair(track, None) for at, track in enumerate(left) if at not in found.values()))


def _tracks(days: Days | None) -> list[LineTrack]:
    made: dict[tuple[str, str | None, int], dict[int, Line]] = {}
    for at, session in days.sessions if days is not None else ():
        seen: dict[tuple[str, str | None], int] = {}
        for line in session.lines:
            name = (line.movement.name, line.label)
            seen[name] = nth = seen.get(name, -1) + 1
            made.setdefault((*name, nth), {})[at] = line
    return [LineTrack(*key, lines) for key, lines in made.items()]


def _free(
    left: Sequence[LineTrack], right: Sequence[LineTrack], found: Mapping[int, int]
) -> tuple[list[int], list[int]]:
    taken = set(found.values())
    return [at for at in range(len(left)) if at not in taken], [at for at in range(len(right)) if at not in found]


def _add_swaps(left: Sequence[LineTrack], right: Sequence[LineTrack], found: dict[int, int]) -> None:
    """What a `swap` line names, then what stands in the same place with the same work or of the same pattern."""
    free_old, free_new = _free(left, right, found)
    if not free_old or not free_new:
        return
    old, new = {at: left[at] for at in free_old}, {at: right[at] for at in free_new}
    found.update((there, here) for here, there in by_likeness(_named_swaps(old, new)))
    before_old = _gaps(left, {here: here for here in found.values()})
    before_new = _gaps(right, found)
    keys: tuple[Callable[[LineTrack, int], Hashable], ...] = (
        lambda track, gap: (gap, track.work),
        lambda track, gap: (gap, track.first.movement.pattern or track.movement),
    )
    for key in keys:
        free_old, free_new = _free(left, right, found)
        pairs = by_key(
            {at: key(left[at], before_old[at]) for at in free_old},
            {at: key(right[at], before_new[at]) for at in free_new},
        )
        found.update((there, here) for here, there in pairs)


def _gaps(tracks: Sequence[LineTrack], numbers: Mapping[int, int]) -> list[int]:
    """For each line the last paired one before it, by its place on the old side; -1 for none."""
    last, gaps = -1, []
    for at in range(len(tracks)):
        last = numbers.get(at, last)
        gaps.append(last)
    return gaps


def _named_swaps(old: Mapping[int, LineTrack], new: Mapping[int, LineTrack]) -> Iterator[Candidate]:
    """Lines of which one names the other: in the plan (better), or in the library."""
    for here, there, level in (*_names(old, new, False), *_names(new, old, True)):
        yield level, here, there


def _names(
    tracks: Mapping[int, LineTrack], others: Mapping[int, LineTrack], turned: bool
) -> Iterator[tuple[int, int, int]]:
    by_name: dict[str, list[int]] = {}
    for at, track in others.items():
        by_name.setdefault(track.movement, []).append(at)
    for at, track in tracks.items():
        line = track.first
        named = [(2, name) for name in (*line.swaps, line.instead_of) if name]
        for level, name in (*named, *((1, name) for name in line.movement.swaps)):
            for other in by_name.get(name, ()):
                if others[other].nth == track.nth:  # of several alike the first is the first's
                    yield (other, at, level) if turned else (at, other, level)
