"""A linked plan laid out week by week.

Comes in: blocks with their days and tracks. Goes out: a `Plan` whose every week, session and line is written out.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable
from datetime import date, timedelta
from fractions import Fraction
from typing import TYPE_CHECKING

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import structure
from setwright.diagnostics.catalogue import weeks as codes
from setwright.expand.deloads import deloaded
from setwright.expand.lines import Moment, check_tracks, worked_line
from setwright.expand.tracks import value_in_week
from setwright.link.blocks import counted
from setwright.link.model import Deload, LinkedBlock, LinkedDay, LinkedGroup, LinkedLine, LinkedPlan
from setwright.plan import (
    BlockSpan,
    Group,
    GroupKind,
    Line,
    Muscle,
    Plan,
    Session,
    Week,
    WeekKind,
)
from setwright.record import replace

if TYPE_CHECKING:
    from setwright.expand.projections import Courses
    from setwright.log.history import History

Problems = list[Diagnostic]
MOST_ROWS = 20_000  # segments and notes of all weeks
LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def expanded_plan(
    linked: LinkedPlan,
    muscles: Iterable[Muscle],
    groups: Iterable[tuple[str, tuple[str, ...]]],
    problems: Problems,
    history: History | None = None,
) -> Plan | None:
    """The whole plan, or None where it is not sound or cannot be laid out (after saying why).

    With a history, lines that advance by a progression answer what was done.
    """
    before = len(problems)
    expansion = _Expansion(linked, problems, history)
    for block in linked.blocks:
        expansion.add(block)
    if not linked.sound or any(problem.severity.value == "error" for problem in problems[before:]):
        return None
    return Plan(
        name=linked.name,
        span=linked.span,
        unit=linked.unit,
        weeks=tuple(expansion.weeks),
        blocks=tuple(expansion.blocks),
        muscles=tuple(muscles),
        groups=tuple(groups),
        author=linked.author,
        start=linked.start,
        microcycle=linked.microcycle,
        notes=linked.notes,
        model=linked.model,
        round_down=linked.round_down,
        bests_from_log=linked.bests_from_log,
        ease_in=linked.ease_in,
    )


class _Expansion:
    """The weeks made so far; a deload looks back at the last working one."""

    def __init__(self, plan: LinkedPlan, problems: Problems, history: History | None) -> None:
        self.weeks: list[Week] = []
        self.blocks: list[BlockSpan] = []
        self._plan = plan
        self._problems = problems
        self._courses: Courses = {}
        self._history = history
        self._rows = 0
        self._last_working: Week | None = None

    def add(self, block: LinkedBlock) -> None:
        """Lay out one block after those before it."""
        first = len(self.weeks) + 1
        if not self._plan.sound and (self._plan.deload_every is not None or not block.weeks_known):
            return
        deloads = self._deloads(block, first)
        working = [number for number in range(1, block.weeks + 1) if number not in deloads]
        if not self._check(block, working, deloads) or not self._plan.sound:
            return
        for number in range(1, block.weeks + 1):
            if self._rows > MOST_ROWS:
                return
            if number in deloads:
                self._add_deload(block, number, deloads[number])
            else:
                moment = Moment(block, number, working.index(number), len(working))
                if self._history is not None:
                    weeks = tuple(first - 1 + each for each in working)
                    moment = replace(moment, working=weeks, history=self._history)
                self._add_working(block, moment)
        self.blocks.append(BlockSpan(block.name, first, len(self.weeks), block.span))

    def _deloads(self, block: LinkedBlock, first: int) -> dict[int, Deload]:
        deloads: dict[int, Deload] = {}
        if self._plan.deload_every is not None:
            every, deload = self._plan.deload_every
            deloads = {n: deload for n in range(1, block.weeks + 1) if (first + n - 1) % every == 0}
        return {**deloads, **dict(block.deloads)}

    def _check(self, block: LinkedBlock, working: list[int], deloads: dict[int, Deload]) -> bool:
        before = len(self._problems)
        for day in block.days:
            for line in day.lines:
                if working:
                    check_tracks(line, block, len(working), self._problems)
                self._check_weekly(line, block, working, deloads)
        if 1 in deloads and self._last_working is None and self._plan.sound and len(self._problems) == before:
            self._problems.append(codes.DELOAD_FROM_NOTHING.at(deloads[1].span, week=len(self.weeks) + 1))
        return all(problem.severity.value != "error" for problem in self._problems[before:])

    def _check_weekly(
        self, line: LinkedLine, block: LinkedBlock, working: list[int], deloads: dict[int, Deload]
    ) -> None:
        given = {number: form for form in line.weekly for number in form.weeks}
        if not given:
            return
        for number, form in given.items():
            if number > block.weeks:
                self._problems.append(
                    codes.WEEK_OUTSIDE_BLOCK.at(
                        form.span, block=block.name, weeks=counted(block.weeks, "week"), week=number
                    )
                )
            elif number in deloads:
                self._problems.append(codes.UNUSED_WEEK_LINE.at(form.span, week=number, block=block.name))
        missing = [number for number in working if number not in given]
        if missing:
            listed = ("week " if len(missing) == 1 else "weeks ") + ", ".join(map(str, missing))
            self._problems.append(codes.WEEK_MISSING.at(line.span, weeks=listed, block=block.name))

    def _add_working(self, block: LinkedBlock, moment: Moment) -> None:
        sessions = self._sessions(block.days, lambda day: self._worked(day, moment))
        is_test = any(line.is_test for session in sessions for line in session.lines)
        self._append(block, moment.number, WeekKind.TEST if is_test else WeekKind.WORKING, sessions)
        if not is_test or self._last_working is None:
            self._last_working = self.weeks[-1]

    def _add_deload(self, block: LinkedBlock, number: int, deload: Deload) -> None:
        before = self._last_working
        assert before is not None
        days = block.days or tuple(_as_day(session) for session in before.sessions)
        sessions = self._sessions(days, lambda day: self._deloaded(day, before, block, deload))
        self._append(block, number, WeekKind.DELOAD, sessions)

    def _append(self, block: LinkedBlock, number: int, kind: WeekKind, sessions: tuple[Session, ...]) -> None:
        start = self._week_start()
        notes = block.notes if number == 1 else ()
        self.weeks.append(Week(len(self.weeks) + 1, block.name, number, kind, sessions, block.span, start, notes))
        self._rows += sum(_rows(session) for session in sessions)
        if self._rows > MOST_ROWS:
            rows = f"more than {MOST_ROWS}"
            self._problems.append(
                structure.TOO_LARGE.at(self._plan.span, what="rows and notes of all weeks", count=rows, most=MOST_ROWS)
            )

    def _week_start(self) -> date | None:
        if self._plan.start is None:
            return None
        try:
            return self._plan.start + timedelta(days=self._plan.microcycle * len(self.weeks))
        except OverflowError:
            return None

    def _sessions(
        self, days: tuple[LinkedDay, ...], lines_of: Callable[[LinkedDay], tuple[Line, ...]]
    ) -> tuple[Session, ...]:
        start = self._week_start()
        return tuple(
            Session(day.slot, day.offset, lines_of(day), day.span, day.label, _day_of(start, day.offset), day.notes)
            for day in days
        )

    def _worked(self, day: LinkedDay, moment: Moment) -> tuple[Line, ...]:
        groups = _groups(day, moment)
        if moment.history is not None:
            moment = replace(moment, position=moment.block.days.index(day) + 1)
        lines = (
            worked_line(line, groups.get(id(line.group)), moment, self._plan, self._courses, self._problems)
            for line in day.lines
        )
        return _grouped([line for line in lines if line is not None])

    def _deloaded(self, day: LinkedDay, before: Week, block: LinkedBlock, deload: Deload) -> tuple[Line, ...]:
        """Each line as it was in the working week before; one that is new here begins with its first week's values."""
        session = next((session for session in before.sessions if session.slot == day.slot), None)
        known = {(line.movement.name, line.label): line for line in session.lines} if session else {}
        if not block.days:
            lines = list(known.values())
        else:
            fresh = {(line.movement.name, line.label): line for line in self._fresh(day, known, Moment(block, 1, 0, 1))}
            found = (known.get(line.key) or fresh.get(line.key) for line in day.lines)
            lines = [line for line in found if line is not None]
        return tuple(deloaded(line, deload, block) for line in lines)

    def _fresh(self, day: LinkedDay, known: dict[tuple[str, str | None], Line], moment: Moment) -> list[Line]:
        """Lines that the week before does not have, as their own block begins them."""
        groups = _groups(day, moment)
        made = (
            worked_line(
                line, groups.get(id(line.group)), _first_of(line, moment), self._plan, self._courses, self._problems
            )
            for line in day.lines
            if line.key not in known
        )
        return [line for line in made if line is not None]


def _rows(session: Session) -> int:
    """How much of a sheet the session fills."""
    return len(session.notes) + sum(len(line.segments) + len(line.notes) for line in session.lines)


def _first_of(line: LinkedLine, moment: Moment) -> Moment:
    """The first week that a line in the week-by-week form prescribes."""
    numbers = [number for form in line.weekly for number in form.weeks]
    return replace(moment, number=min(numbers)) if numbers else moment


def _as_day(session: Session) -> LinkedDay:
    """The place of a session, for a block that deloads the week before without days of its own."""
    return LinkedDay(session.slot, session.offset, session.label, (), session.notes, session.span)


def _day_of(start: date | None, offset: int) -> date | None:
    try:
        return start + timedelta(days=offset) if start else None
    except OverflowError:
        return None


def _groups(day: LinkedDay, moment: Moment) -> dict[int, Group]:
    """Each group of the day with its letter, by the identity of the linked group."""
    made: dict[int, Group] = {}
    for line in day.lines:
        if line.group is not None and id(line.group) not in made:
            made[id(line.group)] = _lettered(line.group, LETTERS[len(made) % len(LETTERS)], moment)
    return made


def _grouped(lines: list[Line]) -> tuple[Line, ...]:
    """The lines with groups lettered in order; a superset of one line, after edits, is a plain line with its rest."""
    sizes = Counter(line.group.letter for line in lines if line.group is not None)
    letters: dict[str, str] = {}
    made: list[Line] = []
    for line in lines:
        group = line.group
        if group is not None and group.kind is GroupKind.SUPERSET and sizes[group.letter] == 1:
            made.append(replace(line, group=None))
        elif group is not None:
            letter = letters.setdefault(group.letter, LETTERS[len(letters) % len(LETTERS)])
            made.append(line if letter == group.letter else replace(line, group=replace(group, letter=letter)))
        else:
            made.append(line)
    return tuple(made)


def _lettered(group: LinkedGroup, letter: str, moment: Moment) -> Group:
    rounds: Fraction | None = None
    if group.rounds is not None:
        rounds = value_in_week(group.rounds, moment.index, moment.working_weeks)
    rest = value_in_week(group.rest, moment.index, moment.working_weeks) if group.rest is not None else None
    return Group(group.kind, letter, rest, int(rounds) if rounds is not None else None)
