"""Which planned session each done one was, and which sets belong to a line of it.

Comes in: a plan with its sessions on the athlete's days, and a `Log`. Goes out: a `Matching`; the rules are in
chapter 19 of the reference. Its cost is linear in the plan and the log.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Mapping
from datetime import date, timedelta

from setwright.log.model import LineDone, Log, SessionDone, SetDone
from setwright.plan import Cause, Line, Plan, Session, Week
from setwright.record import record

NEAR_DAYS = 28  # before and after a plan, where an entry may still speak of it

Place = tuple[int, int]  # the number of a week, and a session's position in it, both from 1


@record
class Matching:
    """Every session of a log once, by day: with the place of the planned session that it was, or as an extra.

    An extra inside the plan's weeks knows its week. `apart` are those before or after all of them, which say nothing of
    this plan.
    """

    placed: Mapping[Place, tuple[SessionDone, ...]]
    pairs: tuple[tuple[SessionDone, Place | None], ...]
    extras: tuple[tuple[int | None, SessionDone], ...] = ()
    apart: tuple[SessionDone, ...] = ()

    def done(self, week_number: int, position: int) -> tuple[SessionDone, ...]:
        """What was done of the planned session at that place: nothing, one session, or its parts by day."""
        return self.placed.get((week_number, position), ())

    @property
    def extra(self) -> tuple[SessionDone, ...]:
        """Sessions in the plan's time that were none of its own."""
        return tuple(session for _, session in self.extras)

    def extra_in(self, week_number: int) -> tuple[SessionDone, ...]:
        """The extra sessions of one week."""
        return tuple(session for number, session in self.extras if number == week_number)


def matched(plan: Plan, log: Log) -> Matching:
    """Pair the sessions of the log with those of the plan.

    First what entries say (`for week 3 Mon`), then dates, then, within a week, movements in common. In a plan without
    dates: what entries say, and the other sessions one after another.
    """
    sessions = sorted(log.sessions, key=lambda session: session.day)
    weeks = PlannedSessions(plan)
    places: list[Place | None] = [weeks.said(session) for session in sessions]
    if weeks.have_dates:
        _place_by_days(weeks, sessions, places)
        _place_by_movements(weeks, sessions, places)
    else:
        _place_in_order(weeks, places)
    return _gathered(weeks, sessions, places)


def lines_done(line: Line, sessions: Iterable[SessionDone], beside: Iterable[Line] = ()) -> tuple[SetDone, ...] | None:
    """The sets that were done of a planned line, in order; None where there is no entry for it.

    An entry is for the line of its movement and label. One whose label no line bears is for the first line of its
    movement, by `beside`, all lines of the planned session; without them the line counts as the only one.
    """
    found = [entry for session in sessions for entry in session.lines if _is_for(entry, line, beside)]
    return tuple(one for entry in found for one in entry.sets) if found else None


def entries_beside(planned: Session, sessions: Iterable[SessionDone]) -> tuple[LineDone, ...]:
    """What was done in these sessions that no line of the planned one asks for."""
    movements = {line.movement.name for line in planned.lines}
    return tuple(entry for session in sessions for entry in session.lines if entry.movement.name not in movements)


def _is_for(entry: LineDone, line: Line, beside: Iterable[Line]) -> bool:
    if entry.movement.name != line.movement.name:
        return False
    if entry.label == line.label:
        return True
    same = [other for other in beside if other.movement.name == line.movement.name] or [line]
    return same[0] == line and all(other.label != entry.label for other in same)


class PlannedSessions:
    """The plan's sessions by what they can be found by."""

    def __init__(self, plan: Plan) -> None:
        self.have_dates = plan.start is not None and bool(plan.weeks)
        self._weeks = plan.weeks
        self._starts = [week.start for week in plan.weeks if week.start is not None] if self.have_dates else []
        self._ends = _ends(plan.weeks, plan.microcycle) if self.have_dates else []
        self._numbers = {week.number: week for week in plan.weeks}
        self._by_slot: dict[tuple[int, str], Place] = {}
        self._by_day: dict[date, Place] = {}
        self._sessions = dict(_sessions(plan.weeks))
        for place, session in self._sessions.items():
            self._by_slot[place[0], session.slot] = place
            if session.date is not None:
                self._by_day.setdefault(session.date, place)
        for place, session in self._sessions.items():
            for slot in _former_slots(session):
                self._by_slot.setdefault((place[0], slot), place)

    def said(self, session: SessionDone) -> Place | None:
        """The session that an entry names: by the day it has, or else by the one it had before the athlete's days."""
        if session.week is None or session.slot is None or not self.is_near(session.day):
            return None
        return self._by_slot.get((session.week, session.slot))

    def on(self, day: date) -> Place | None:
        """The session planned for a day."""
        return self._by_day.get(day)

    @property
    def in_order(self) -> list[Place]:
        """All places."""
        return list(self._sessions)

    def number_on(self, day: date) -> int | None:
        """The week that a day lies in."""
        at = bisect_right(self._starts, day) - 1
        return self._weeks[at].number if at >= 0 and day < self._ends[at] else None

    def is_near(self, day: date) -> bool:
        """True where an entry can speak of this plan: it may be done early or late, but not years ago."""
        margin = timedelta(days=NEAR_DAYS)
        return not self.have_dates or self._starts[0] - margin <= day < self._ends[-1] + margin

    def are_on(self, day: date) -> bool:
        """True on the plan's days, from its first to its last; always where it has no dates."""
        return not self.have_dates or self._starts[0] <= day < self._ends[-1]

    def places_in(self, number: int) -> Iterator[Place]:
        """The places of one week."""
        yield from ((number, position) for position in range(1, len(self._numbers[number].sessions) + 1))

    def shared(self, place: Place, done: frozenset[str]) -> int:
        """How many movements the planned session has in common with a done one; 0 where less than half of either's."""
        lines = self._sessions[place].lines
        asked = {line.movement.name for line in lines}
        before = {line.instead_of for line in lines if line.instead_of is not None}
        common = min(len(done & (asked | before)), len(asked))
        return common if 2 * common >= min(len(done), len(asked)) else 0


def _sessions(weeks: Iterable[Week]) -> Iterator[tuple[Place, Session]]:
    for week in weeks:
        for position, session in enumerate(week.sessions, 1):
            yield (week.number, position), session


def _ends(weeks: tuple[Week, ...], microcycle: int) -> list[date]:
    """The day after each week: a microcycle after its start, or later where a session of it stands later."""
    ends: list[date] = []
    for week in weeks:
        assert week.start is not None
        days = [session.date for session in week.sessions if session.date is not None]
        ends.append(max([week.start + timedelta(days=microcycle), *(day + timedelta(days=1) for day in days)]))
    return ends


def _former_slots(session: Session) -> Iterator[str]:
    yield from (str(step.before) for step in session.steps if step.cause is Cause.AVAILABLE)


def _place_by_days(weeks: PlannedSessions, sessions: list[SessionDone], places: list[Place | None]) -> None:
    """Give what has no place the session planned for its day, unless an entry says that this was done on another."""
    said = {(place, session.day) for session, place in zip(sessions, places, strict=True) if place is not None}
    moved = {place for place, _ in said}
    for at, session in enumerate(sessions):
        place = weeks.on(session.day) if places[at] is None else None
        if place is not None and (place not in moved or (place, session.day) in said):
            places[at] = place


def _place_by_movements(weeks: PlannedSessions, sessions: list[SessionDone], places: list[Place | None]) -> None:
    """Give what has no place yet, by day, the session of its week that it shares most movements with."""
    taken = {place for place in places if place is not None}
    for at, session in enumerate(sessions):
        number = weeks.number_on(session.day) if places[at] is None else None
        if number is None:
            continue
        best = _most_alike(session, [place for place in weeks.places_in(number) if place not in taken], weeks)
        if best is not None:
            places[at] = best
            taken.add(best)


def _most_alike(session: SessionDone, free: list[Place], weeks: PlannedSessions) -> Place | None:
    """Of the free places the one with most movements in common; the earliest of equals."""
    done = frozenset(line.movement.name for line in session.lines)
    shared = {place: weeks.shared(place, done) for place in free}
    return max((place for place in free if shared[place]), key=lambda place: (shared[place], -place[1]), default=None)


def _place_in_order(weeks: PlannedSessions, places: list[Place | None]) -> None:
    """Give what has no place the next session after that of the one before it, leaving out those that are taken."""
    order = weeks.in_order
    index = {place: at for at, place in enumerate(order)}
    taken = {place for place in places if place is not None}
    following = 0
    for at, place in enumerate(places):
        if place is None:
            while following < len(order) and order[following] in taken:
                following += 1
            if following == len(order):
                continue
            place = places[at] = order[following]
        following = max(following, index[place] + 1)


def _gathered(weeks: PlannedSessions, sessions: list[SessionDone], places: list[Place | None]) -> Matching:
    placed: dict[Place, list[SessionDone]] = {}
    extras: list[tuple[int | None, SessionDone]] = []
    apart: list[SessionDone] = []
    for session, place in zip(sessions, places, strict=True):
        if place is not None:
            placed.setdefault(place, []).append(session)
        elif weeks.are_on(session.day):
            extras.append((weeks.number_on(session.day), session))
        else:
            apart.append(session)
    pairs = tuple(zip(sessions, places, strict=True))
    return Matching({place: tuple(found) for place, found in placed.items()}, pairs, tuple(extras), tuple(apart))
