"""Which sets count, and for which muscle.

Comes in: a plan and a promise. Goes out: a `Ledger`, read once from the plan and then asked for any muscle or group.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cached_property

from setwright.check.figures.effort import stated_effort
from setwright.plan import Line, Movement, Muscle, Plan, Segment, Session, Week
from setwright.record import record, replace
from setwright.rules import Promise
from setwright.science.counting import Counting, credit


@record
class Subject:
    """Whose sets are meant: a muscle, a group, a movement pattern, or all of the plan (`members` None).

    A set counts for a group as much as for the member it trains most, so that a press never counts twice for the arms.
    """

    word: str
    title: str
    members: tuple[str, ...] | None
    pattern: str | None = None


WHOLE_PLAN = Subject("", "", None)


@record
class Share:
    """The counted sets of one line, and the weight that its movement gives a muscle."""

    line: Line
    sets: int
    weight: Fraction


@record
class Part:
    """A line of the plan and what it adds to a figure, in the figure's own unit."""

    line: Line
    amount: Fraction


@record
class Day:
    """A session with its counted sets. `position` is in days from the first day of the plan."""

    week: Week
    session: Session
    position: int
    lines: tuple[Share, ...]
    by_muscle: Mapping[str, tuple[Share, ...]]


@dataclass(frozen=True)
class Ledger:
    """Every counted set of a plan, by session and muscle; built in one pass over the plan when first asked."""

    plan: Plan
    promise: Promise
    _remembered: dict[Hashable, tuple[Part, ...]] = field(default_factory=dict)  # several rules ask the same
    _read: dict[int, tuple[Week, tuple[Day, ...]]] = field(default_factory=dict)  # by the identity of weeks it holds

    def of(self, weeks: tuple[Week, ...]) -> Ledger:
        """The ledger of these weeks instead of the plan's; a week that was counted before is not counted again."""
        other = Ledger(replace(self.plan, weeks=weeks), self.promise, self._remembered, self._read)
        assert other.weeks is not None  # read at once: what is remembered by identity lasts while its week is held
        return other

    @cached_property
    def weeks(self) -> tuple[tuple[Week, tuple[Day, ...]], ...]:
        """The weeks in order, with their sessions in order of days."""
        for week in self.plan.weeks:
            if id(week) not in self._read:
                self._read[id(week)] = (week, self._days(week))
        return tuple(self._read[id(week)] for week in self.plan.weeks)

    @property
    def days(self) -> Iterator[Day]:
        """All sessions in order."""
        return (day for _, days in self.weeks for day in days)

    @cached_property
    def trained_directly(self) -> tuple[Muscle, ...]:
        """The muscles that some line trains as a prime mover (weight 1), in library order, easy sets or not."""
        return self._trained(Fraction(1))

    @cached_property
    def trained(self) -> tuple[Muscle, ...]:
        """The muscles that some line trains at all, in library order."""
        return self._trained(Fraction(0))

    def parts(self, day: Day, subject: Subject, counting: Counting | None = None) -> tuple[Part, ...]:
        """The lines of a session whose sets count for `subject`, each with the sets credited."""
        mode = counting or self.promise.counting

        def credited() -> tuple[Part, ...]:
            amounts = ((share, share.sets * credit(mode, share.weight)) for share in shares(day, subject))
            return tuple(Part(share.line, amount) for share, amount in amounts if amount)

        return self.remembered((id(day), subject.word, mode), credited)

    def week_parts(self, days: Iterable[Day], subject: Subject, counting: Counting | None = None) -> tuple[Part, ...]:
        """The same for several sessions, one after the other."""
        return tuple(part for day in days for part in self.parts(day, subject, counting))

    def remembered(self, key: Hashable, made: Callable[[], tuple[Part, ...]]) -> tuple[Part, ...]:
        """The parts known under a key, made when they are first asked for."""
        known = self._remembered.get(key)
        if known is None:
            known = self._remembered[key] = made()
        return known

    def _trained(self, least: Fraction) -> tuple[Muscle, ...]:
        words = {
            word
            for movement in {id(line.movement): line.movement for line in self._counted_lines()}.values()
            for word, weight in movement.works
            if weight > 0 and weight >= least
        }
        return tuple(muscle for muscle in self.plan.muscles if muscle.word in words)

    def _counted_lines(self) -> Iterator[Line]:
        sessions = (session for week in self.plan.weeks for session in week.sessions)
        return (line for session in sessions for line in asked_lines(session, self.promise) if line.work)

    def _days(self, week: Week) -> tuple[Day, ...]:
        first = (week.number - 1) * self.plan.microcycle
        ordered = sorted(week.sessions, key=lambda session: session.offset)
        return tuple(_day(week, session, first + session.offset, self.promise) for session in ordered)


def shares(day: Day, subject: Subject) -> tuple[Share, ...]:
    """The lines of a session that train `subject`, each once, with the greatest weight it gives any member."""
    if subject.members is None:
        return day.lines
    if len(subject.members) == 1:
        return day.by_muscle.get(subject.members[0], ())
    best: dict[int, Share] = {}
    for member in subject.members:
        for share in day.by_muscle.get(member, ()):
            known = best.get(id(share.line))
            if known is None or known.weight < share.weight:
                best[id(share.line)] = share
    return tuple(best[id(share.line)] for share in day.lines if id(share.line) in best)


def direct_parts(day: Day, subject: Subject) -> tuple[Part, ...]:
    """The lines of a session that train `subject` as a prime mover, each with its counted sets."""
    return tuple(Part(share.line, Fraction(share.sets)) for share in shares(day, subject) if share.weight >= 1)


def pattern_parts(day: Day, pattern: str) -> tuple[Part, ...]:
    """The lines of a session with a movement of that pattern, each with its counted sets."""
    return tuple(
        Part(share.line, Fraction(share.sets)) for share in day.lines if share.line.movement.pattern == pattern
    )


def total(parts: tuple[Part, ...]) -> Fraction:
    """What the parts come to."""
    return sum((part.amount for part in parts), Fraction(0))


def asked_lines(session: Session, promise: Promise) -> tuple[Line, ...]:
    """The lines of a session that rules count: all, or with `count required` those that are not optional."""
    if not promise.required_only:
        return session.lines
    return tuple(line for line in session.lines if not line.optional)


def lines_for(session: Session, subject: Subject, promise: Promise) -> Iterator[Line]:
    """The lines of a session that rules count and that train `subject` as a prime mover, or are of its pattern.

    All lines for the whole plan.
    """
    return (line for line in asked_lines(session, promise) if _is_for(line.movement, subject))


def _is_for(movement: Movement, subject: Subject) -> bool:
    if subject.pattern is not None:
        return movement.pattern == subject.pattern
    members = subject.members
    return members is None or any(weight >= 1 and word in members for word, weight in movement.works)


def counted_sets(line: Line, promise: Promise) -> int:
    """The sets of a line that count: work, drops and tests, without warm-ups and sets stated easier than asked."""
    return sum(segment.sets for segment in line.work if _is_hard(segment, promise))


def _is_hard(segment: Segment, promise: Promise) -> bool:
    effort = stated_effort(segment)
    return promise.from_rpe is None or effort is None or effort >= promise.from_rpe


def _day(week: Week, session: Session, position: int, promise: Promise) -> Day:
    counted = ((line, counted_sets(line, promise)) for line in asked_lines(session, promise))
    lines = tuple(Share(line, sets, Fraction(1)) for line, sets in counted if sets)
    by_muscle: dict[str, list[Share]] = defaultdict(list)
    for share in lines:
        for word, weight in share.line.movement.works:
            by_muscle[word].append(Share(share.line, share.sets, weight))
    return Day(week, session, position, lines, {word: tuple(found) for word, found in by_muscle.items()})
