"""One week's work laid over another number of days, so that frequencies can be compared at the same volume.

Comes in: a plan, what it promises, numbers of days. Goes out: `Column`s to compare, first the week as written.

The week is the plan's first working week: whole sets that stand on a sheet, where a mean of weeks would have fractions
of sets. It is laid out by `dealt`, then set down twice, and the second time is looked at, so that the hours from the
last day of one week to the first of the next count too.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import combinations, pairwise
from typing import Final, TypeVar

from setwright.check.weeks import is_named
from setwright.plan import BlockSpan, Line, Plan, Segment, SegmentKind, Session, Week, WeekKind
from setwright.prescription import ChangeByMass, ChangeByPercent
from setwright.record import record, replace
from setwright.report.compare import Column
from setwright.rules import Promise, Rule, Waiver

_Said = TypeVar("_Said", Rule, Waiver)

# The days of a week as the language writes them; days of another microcycle are numbered.
WEEKDAYS: Final = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")

# Nobody loads a bar for less when the sets can stay together (common practice, no source).
FEWEST_SETS_OF_A_PORTION: Final = 2


@record
class _Placing:
    """Portions of one line and the days they go to, both in order."""

    sizes: tuple[int, ...]
    days: tuple[int, ...]


def spread(plan: Plan, promise: Promise, days: Iterable[int], file: str = "") -> tuple[Column, ...]:
    """The first working week as written, then over each number of days, which must fit into the plan's week.

    The plan must have a working week. What the promise asks of other weeks is left out.
    """
    week = first_working_week(plan)
    assert week is not None
    asked = _asked_of(promise, week)
    written = _twice(plan, week, week.sessions)
    columns = [Column(f"As written, {_days(len(week.sessions))}", written, asked, file, (2,))]
    for number in days:
        sessions = _sessions(plan, week, dealt(plan, week, number), number)
        columns.append(Column(_days(number), _twice(plan, week, sessions), asked, file, (2,)))
    return tuple(columns)


def first_working_week(plan: Plan) -> Week | None:
    """The week that `spread` takes, None where there is none with a work set."""
    working = (week for week in plan.weeks if week.kind is WeekKind.WORKING)
    return next((week for week in working if any(line.sets for line in _lines(week))), None)


def dealt(plan: Plan, week: Week, days: int) -> tuple[tuple[Line, ...], ...]:
    """The lines of each day. Lines are dealt one after the other, in the order they are written, each to the place with

    1. the fewest sets past an even share (a muscle's sets of the week by the number of days), over all muscles;
    2. then in the fewest portions: of near equal size, at least two sets each, the larger ones first. A line whose sets
       lean on each other (a change from the set before, a drop, a test) is not cut;
    3. then with the longest shortest time between sessions with direct sets, over the muscles it trains directly;
    4. then on the days with the fewest sets so far;
    5. then on the earliest days.

    Each portion brings the line's warm-ups, and lines of a superset or circuit stay one where they meet on a day.
    """
    table = _Table(_works(week), days, plan.microcycle)
    made: list[list[Line]] = [[] for _ in range(days)]
    for session in sorted(week.sessions, key=lambda session: session.offset):
        for line in session.lines:
            placing = min(_placings(line, days), key=lambda option: table.cost(line, option))
            table.put(line, placing)
            for day, portion in zip(placing.days, _cut(_grouped(line, session), placing.sizes), strict=True):
                made[day].append(portion)
    return tuple(tuple(lines) for lines in made)


class _Table:
    """The days as they fill: sets of each muscle, days with direct sets, sets of all."""

    def __init__(self, works: dict[str, Fraction], days: int, microcycle: int) -> None:
        self._share = {word: sets / days for word, sets in works.items()}
        self._sets = {word: [Fraction(0)] * days for word in works}
        self._direct: dict[str, set[int]] = {word: set() for word in works}
        self._all = [0] * days
        self._offsets = offsets(days, microcycle)
        self._microcycle = microcycle

    def cost(self, line: Line, placing: _Placing) -> tuple[Fraction, int, int, int, tuple[int, ...]]:
        """What `dealt` weighs, in its order; the least is best."""
        added = dict(zip(placing.days, placing.sizes, strict=True))
        past = sum((self._past_share(word, weight, added) for word, weight in line.movement.works), Fraction(0))
        direct = [word for word, weight in line.movement.works if weight >= 1]
        between = sum(self._shortest(self._direct[word] | set(placing.days)) for word in direct)
        crowded = sum((self._all[day] + sets) ** 2 - self._all[day] ** 2 for day, sets in added.items())
        return past, len(placing.days), -between, crowded, placing.days

    def put(self, line: Line, placing: _Placing) -> None:
        """Lay the line down."""
        for day, sets in zip(placing.days, placing.sizes, strict=True):
            self._all[day] += sets
            for word, weight in line.movement.works:
                self._sets[word][day] += weight * sets
                if weight >= 1:
                    self._direct[word].add(day)

    def _past_share(self, word: str, weight: Fraction, added: dict[int, int]) -> Fraction:
        """How many of the muscle's sets more than now lie past its even share."""
        free = [max(Fraction(0), self._share[word] - sets) for sets in self._sets[word]]
        return sum((max(Fraction(0), weight * more - free[day]) for day, more in added.items()), Fraction(0))

    def _shortest(self, days: set[int]) -> int:
        """The fewest days from one to the next, round the end of the week."""
        places = sorted(self._offsets[day] for day in days)
        return min(after - before for before, after in pairwise([*places, places[0] + self._microcycle]))


def offsets(days: int, microcycle: int) -> tuple[int, ...]:
    """Where so many days lie in a week, from 0: as evenly as whole days can (4 of 7: Mon, Tue, Thu, Sat)."""
    return tuple(at * microcycle // days for at in range(days))


def _placings(line: Line, days: int) -> Iterator[_Placing]:
    """Every way to lay a line down, whole or in portions."""
    most = 1 if _holds_together(line) else max(1, line.sets // FEWEST_SETS_OF_A_PORTION)
    for number in range(1, min(most, days) + 1):
        sizes = tuple(line.sets // number + (at < line.sets % number) for at in range(number))
        for chosen in combinations(range(days), number):
            yield _Placing(sizes, chosen)


def _holds_together(line: Line) -> bool:
    return any(
        segment.kind is not SegmentKind.WORK or isinstance(segment.intensity, ChangeByPercent | ChangeByMass)
        for segment in line.work
    )


def _cut(line: Line, sizes: Sequence[int]) -> Iterator[Line]:
    """The line in portions of so many sets, each with its warm-ups."""
    warm_ups = line.segments[: len(line.segments) - len(line.work)]
    left = list(line.work)
    for size in sizes:
        taken: list[Segment] = []
        while size and left:
            sets = min(size, left[0].sets)
            taken.append(replace(left[0], sets=sets))
            left[0] = replace(left[0], sets=left[0].sets - sets)
            size -= sets
            if not left[0].sets:
                left.pop(0)
        yield replace(line, segments=(*warm_ups, *taken))


def _grouped(line: Line, session: Session) -> Line:
    """The line with a letter of its own for its group, which may meet those of other sessions on its new day."""
    if line.group is None:
        return line
    return replace(line, group=replace(line.group, letter=f"{session.offset}{line.group.letter}"))


def _works(week: Week) -> dict[str, Fraction]:
    """The sets of the week for each muscle."""
    sets: dict[str, Fraction] = {}
    for line in _lines(week):
        for word, weight in line.movement.works:
            sets[word] = sets.get(word, Fraction(0)) + weight * line.sets
    return sets


def _lines(week: Week) -> Iterator[Line]:
    return (line for session in week.sessions for line in session.lines)


def _sessions(plan: Plan, week: Week, lines: Sequence[tuple[Line, ...]], days: int) -> tuple[Session, ...]:
    """The days that have lines; one that got none stays free."""
    return tuple(
        Session(_slot(offset, plan.microcycle), offset, held, week.span)
        for offset, held in zip(offsets(days, plan.microcycle), lines, strict=True)
        if held
    )


def _slot(offset: int, microcycle: int) -> str:
    return WEEKDAYS[offset] if microcycle == len(WEEKDAYS) else str(offset + 1)


def _twice(plan: Plan, week: Week, sessions: tuple[Session, ...]) -> Plan:
    """The plan with nothing in it but the week, twice."""
    weeks = tuple(replace(week, number=at, number_in_block=at, sessions=sessions) for at in (1, 2))
    return replace(plan, weeks=weeks, blocks=(BlockSpan(week.block, 1, 2, week.span),))


def _asked_of(promise: Promise, week: Week) -> Promise:
    """What a promise asks of one week, wherever that week then stands."""
    rules = tuple(_anywhere(rule) for rule in promise.rules if is_named(rule.where, week))
    waivers = tuple(_anywhere(waiver) for waiver in promise.waivers if is_named(waiver.where, week))
    return replace(promise, rules=rules, waivers=waivers)


def _anywhere(of: _Said) -> _Said:
    return replace(of, where=replace(of.where, weeks=None, block=None))


def _days(number: int) -> str:
    return f"{number} day" if number == 1 else f"{number} days"
