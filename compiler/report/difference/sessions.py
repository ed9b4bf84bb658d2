"""What is another about a block's days and their lines.

Comes in: the weeks of a block that are in both plans. Goes out: `SessionChange`s in the order of the new week.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from setwright.plan import Session
from setwright.report.difference.blocks import WeekPair
from setwright.report.difference.days import DayPair, Days, day_pairs
from setwright.report.difference.lines import line_changes
from setwright.report.difference.model import Aspect, Change, Day, DayWork, Fate, SessionChange
from setwright.report.difference.stretches import Seen, change, numbers
from setwright.report.difference.tracks import TrackPair, track_pairs

Both = tuple[WeekPair, Session, Session]


def session_changes(weeks: Sequence[WeekPair]) -> tuple[SessionChange, ...]:
    """Days that changed, moved, came or went."""
    return tuple(change for pair in day_pairs(weeks) for change in _of_day(pair, weeks))


def _of_day(pair: DayPair, weeks: Sequence[WeekPair]) -> Iterator[SessionChange]:
    old, new = pair.old, pair.new
    here = dict(old.sessions) if old is not None else {}
    there = dict(new.sessions) if new is not None else {}
    if old is not None and new is not None:
        yield from _changed(old, new, [(weeks[at], here[at], there[at]) for at in here if at in there], weeks)
    gone = tuple(_work(weeks[at][0].number, session) for at, session in here.items() if at not in there)
    come = tuple(_work(weeks[at][1].number, session) for at, session in there.items() if at not in here)
    if old is not None and gone:
        yield SessionChange(Fate.DROPPED, _day(old), None, work=gone)
    if new is not None and come:
        yield SessionChange(Fate.ADDED, None, _day(new), work=come)


def _changed(old: Days, new: Days, both: Sequence[Both], weeks: Sequence[WeekPair]) -> Iterator[SessionChange]:
    if not both:
        return
    shared = {week[1].number for week, _, _ in both}
    tracks = track_pairs(_only(old, weeks, shared), _only(new, weeks, shared))
    lines = tuple(found for pair in tracks for found in line_changes(pair, weeks))
    changes = (*_of_session(both), *_order(both, tracks))
    if changes or lines or old.slot != new.slot:
        stands = numbers(week for week, _, _ in both)
        yield SessionChange(Fate.CHANGED, _day(old), _day(new), stands, changes=changes, lines=lines)


def _only(days: Days, weeks: Sequence[WeekPair], shared: set[int]) -> Days:
    """The sessions of weeks in which both sides have the day."""
    return Days(days.slot, tuple((at, each) for at, each in days.sessions if weeks[at][1].number in shared))


def _of_session(both: Sequence[Both]) -> Iterator[Change]:
    yield from change(Aspect.LABEL, (Seen(week, old.label, new.label) for week, old, new in both))
    yield from change(Aspect.TIME_OF_DAY, (Seen(week, old.at, new.at) for week, old, new in both))
    yield from change(Aspect.NOTES, (Seen(week, old.notes, new.notes) for week, old, new in both))


def _order(both: Sequence[Both], tracks: Sequence[TrackPair]) -> Iterator[Change]:
    """The movements that both sides have, where they are done in another order."""
    pairs = [(pair.old, pair.new) for pair in tracks if pair.old is not None and pair.new is not None]
    seen: list[Seen] = []
    places_old = {id(line): at for at, (old, _) in enumerate(pairs) for line in old.lines.values()}
    places_new = {id(line): at for at, (_, new) in enumerate(pairs) for line in new.lines.values()}
    for week, old, new in both:
        here = [(places_old[id(line)], line.movement.name) for line in old.lines if id(line) in places_old]
        there = [(places_new[id(line)], line.movement.name) for line in new.lines if id(line) in places_new]
        shared = {at for at, _ in here} & {at for at, _ in there}
        before = [one for one in here if one[0] in shared]
        after = [one for one in there if one[0] in shared]
        if [at for at, _ in before] != [at for at, _ in after]:
            names = tuple(name for _, name in before), tuple(name for _, name in after)
            seen.append(Seen(week, *names))
    return change(Aspect.ORDER, seen)


def _work(number: int, session: Session) -> DayWork:
    return DayWork(number, tuple((line.movement.name, line.sets) for line in session.lines))


def _day(days: Days) -> Day:
    first = days.sessions[0][1]
    return Day(days.slot, first.label)
