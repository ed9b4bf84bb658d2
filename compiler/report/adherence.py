"""What was done beside what was asked: sessions, sets for muscles, effort, the load of sessions, bests, what is next.

Comes in: a plan with its promise and log, and a day. Goes out: `Adherence`, plain figures that judge nothing. Its cost
is linear in the plan and the log.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from datetime import date, timedelta
from enum import Enum
from fractions import Fraction

from setwright.check.figures.effort import stated_effort
from setwright.check.figures.sets import Ledger, Subject, asked_lines, total
from setwright.log.estimates import MovementBests, estimates, tests_done
from setwright.log.matching import Matching, lines_done, matched
from setwright.log.model import LineDone, Log, SessionDone, SetDone
from setwright.plan import Line, Movement, Muscle, Plan, Segment, Session, Week, WeekKind
from setwright.prescription import Effort
from setwright.record import record
from setwright.report.coming import Coming, coming
from setwright.rules import Promise
from setwright.science import load_management as science
from setwright.science.counting import credit
from setwright.science.repetitions import Model

NONE = Fraction(0)


class State(Enum):
    """What became of a planned session. Partly: some of its sets were done."""

    DONE = "done"
    PARTLY = "partly"
    MISSED = "missed"
    AWAY = "away"  # not asked for: on days away that the plan does not wait for
    COMING = "coming"


@record
class Drift:
    """Reported effort less asked effort, in points of RPE, over the sets where both are known.

    A range that was asked counts as met anywhere inside it. `mean` is None without such sets.
    """

    sets: int
    mean: Fraction | None


@record
class SessionLoad:
    """The week's session load: minutes x effort of the whole session, over the `known` of its `sessions`.

    `days` are the loads of its days, rest days 0, and the figures from them; None while the week lasts, and where a
    session says no effort or no minutes.
    """

    sessions: int
    known: int
    minutes: Fraction
    load: Fraction
    days: tuple[Fraction, ...] | None
    monotony: Fraction | None
    strain: Fraction | None


@record
class WeekDone:
    """One week of the plan. `sets_due` are of sessions that are over; all sets are work sets, optional lines left out.

    `sets_done` are those of planned lines, at most as many as were asked; `sets_beside` all others, extra sessions'
    among them.
    """

    number: int
    block: str
    kind: WeekKind
    start: date | None
    states: tuple[State, ...]  # of its sessions, in order
    extra: int
    sets_planned: int
    sets_due: int
    sets_done: int
    sets_beside: int
    drift: Drift
    load: SessionLoad

    def count(self, state: State) -> int:
        """How many of its sessions are in that state."""
        return self.states.count(state)

    @property
    def is_begun(self) -> bool:
        """True where anything of it is over, or was done beside it."""
        return self.extra > 0 or any(state is not State.COMING for state in self.states)


@record
class MuscleDone:
    """One muscle: the sets of each week of the plan, planned and done, as the promise counts them, per 7 days."""

    muscle: Muscle
    planned: tuple[Fraction, ...]
    done: tuple[Fraction, ...]


@record
class Adherence:
    """All of it on one day. `apart` are sessions of the log before or after the plan."""

    plan: Plan
    on: date
    weeks: tuple[WeekDone, ...]
    muscles: tuple[MuscleDone, ...]
    bests: tuple[MovementBests, ...]
    apart: int
    next: Coming | None

    @property
    def begun(self) -> tuple[WeekDone, ...]:
        """The weeks up to the last that has begun."""
        last = max((week.number for week in self.weeks if week.is_begun), default=0)
        return tuple(week for week in self.weeks if week.number <= last)

    def sessions(self, state: State) -> int:
        """How many sessions of the plan are in that state."""
        return sum(week.count(state) for week in self.weeks)

    @property
    def extra(self) -> int:
        """Sessions in the plan's time that were none of its own."""
        return sum(week.extra for week in self.weeks)


def adherence(plan: Plan, promise: Promise, log: Log, on: date) -> Adherence:
    """The figures of a plan on a day. Without dates, sessions before the last done one are over."""
    log = _until(log, on)
    matching = matched(plan, log)
    last = max(matching.placed, default=(0, 0))
    weeks = tuple(_week(plan, week, promise, matching, last, on) for week in plan.weeks)
    return Adherence(
        plan=plan,
        on=on,
        weeks=weeks,
        muscles=tuple(_muscles(plan, promise, matching)),
        bests=tuple(_bests(plan, log)),
        apart=len(matching.apart),
        next=coming(plan, log, on),
    )


def _until(log: Log, on: date) -> Log:
    """The log as it was known at the end of that day."""
    return Log(tuple(one for one in log.sessions if one.day <= on), log.aways)


# ---- weeks ---------------------------------------------------------------------------------------


def _week(plan: Plan, week: Week, promise: Promise, matching: Matching, last: tuple[int, int], on: date) -> WeekDone:
    states: list[State] = []
    planned = due = done = every = 0
    for position, session in enumerate(week.sessions, 1):
        found = matching.done(week.number, position)
        asked, met = _sets(session, found)
        is_over = session.date < on if session.date else (week.number, position) <= last
        states.append(State.AWAY if session.left_out and not found else _state(found, asked, met, is_over=is_over))
        planned += asked
        due += asked if found or is_over else 0
        done += met
        every += _lifted(found)
    extra = matching.extra_in(week.number)
    ours = (*_of_week(week, matching), *extra)
    return WeekDone(
        number=week.number,
        block=week.block,
        kind=week.kind,
        start=week.start,
        states=tuple(states),
        extra=len(extra),
        sets_planned=planned,
        sets_due=due,
        sets_done=done,
        sets_beside=every - done + _lifted(extra),
        drift=_drift(week, matching),
        load=_load(plan, week, ours, on),
    )


def _of_week(week: Week, matching: Matching) -> Iterator[SessionDone]:
    for position in range(1, len(week.sessions) + 1):
        yield from matching.done(week.number, position)


def _state(found: tuple[SessionDone, ...], asked: int, met: int, *, is_over: bool) -> State:
    if found:
        return State.DONE if met >= asked else State.PARTLY
    return State.MISSED if is_over else State.COMING


def _sets(session: Session, found: tuple[SessionDone, ...]) -> tuple[int, int]:
    """The work sets that its lines ask for, optional ones left out, and how many of those were done."""
    asked = met = 0
    for line in session.lines:
        if line.optional:
            continue
        asked += line.sets
        if found:
            met += min(line.sets, _count(lines_done(line, found, session.lines) or ()))
    return asked, met


def _lifted(sessions: Iterable[SessionDone]) -> int:
    return sum(_count(entry.sets) for one in sessions for entry in one.lines)


def _count(sets: Iterable[SetDone]) -> int:
    """Sets that were not missed."""
    return sum(one.reps.high > 0 for one in sets)


# ---- effort --------------------------------------------------------------------------------------


def _drift(week: Week, matching: Matching) -> Drift:
    found: list[Fraction] = []
    for position, session in enumerate(week.sessions, 1):
        found += differences(session, matching.done(week.number, position))
    return Drift(len(found), sum(found, NONE) / len(found) if found else None)


def differences(session: Session, done: tuple[SessionDone, ...]) -> Iterator[Fraction]:
    """Reported effort less asked effort, for each set of a planned session where both are known."""
    for line in session.lines if done else ():
        yield from _differences(line, lines_done(line, done, session.lines) or ())


def _differences(line: Line, done: tuple[SetDone, ...]) -> Iterator[Fraction]:
    """Set by set, in order."""
    asked = (effort for segment in line.work for effort in [_asked(segment)] * segment.sets)
    for effort, one in zip(asked, done, strict=False):
        if effort is not None and one.effort is not None and one.reps.high > 0:
            low, high = effort
            felt = one.effort.high
            yield felt - high if felt > high else min(felt - low, NONE)


def _asked(segment: Segment) -> tuple[Fraction, Fraction] | None:
    if isinstance(segment.intensity, Effort):
        return segment.intensity.low, segment.intensity.high
    stated = stated_effort(segment)
    return None if stated is None else (stated, stated)


# ---- the load of sessions ------------------------------------------------------------------------


def _load(plan: Plan, week: Week, sessions: tuple[SessionDone, ...], on: date) -> SessionLoad:
    loads = {id(one): _session_load(one) for one in sessions}
    known = [load for load in loads.values() if load is not None]
    days = _daily(plan, week, sessions, on) if sessions and len(known) == len(sessions) else None
    strain = None if days is None else science.strain(days)
    return SessionLoad(
        sessions=len(sessions),
        known=len(known),
        minutes=sum((one.minutes for one in sessions if one.minutes is not None), NONE),
        load=sum(known, NONE),
        days=days,
        monotony=None if days is None else science.monotony(days),
        strain=None if strain is None else strain * plan.per_seven_days,
    )


def _session_load(one: SessionDone) -> Fraction | None:
    if one.effort is None or one.minutes is None:
        return None
    return science.session_load(one.minutes, one.effort)


def _daily(plan: Plan, week: Week, sessions: tuple[SessionDone, ...], on: date) -> tuple[Fraction, ...] | None:
    """The loads of the week's days; None before its last day, without dates, and where one was done in another week."""
    if week.start is None or week.start + timedelta(days=plan.microcycle - 1) > on:
        return None
    days = [NONE] * plan.microcycle
    for one in sessions:
        at = (one.day - week.start).days
        load = _session_load(one)
        if load is None or not 0 <= at < plan.microcycle:
            return None
        days[at] += load
    return tuple(days)


# ---- muscles -------------------------------------------------------------------------------------


def _muscles(plan: Plan, promise: Promise, matching: Matching) -> Iterator[MuscleDone]:
    ledger = Ledger(plan, promise)
    done = {week.number: _credited(week, promise, matching) for week in plan.weeks}
    trained = {muscle.word for muscle in ledger.trained}.union(*done.values())
    for muscle in plan.muscles:
        if muscle.word in trained:
            subject = Subject(muscle.word, muscle.title, (muscle.word,))
            planned = (total(ledger.week_parts(days, subject)) for _, days in ledger.weeks)
            yield MuscleDone(
                muscle,
                tuple(sets * plan.per_seven_days for sets in planned),
                tuple(done[week.number].get(muscle.word, NONE) * plan.per_seven_days for week in plan.weeks),
            )


def _credited(week: Week, promise: Promise, matching: Matching) -> Mapping[str, Fraction]:
    """The sets done in a week by muscle, counted as the plan's are."""
    found: dict[str, Fraction] = defaultdict(Fraction)
    for entry in _entries(week, promise, matching):
        sets = sum(_counts(one, promise) for one in entry.sets)
        for muscle, weight in entry.movement.works:
            amount = sets * credit(promise.counting, weight)
            if amount:
                found[muscle] += amount
    return found


def _entries(week: Week, promise: Promise, matching: Matching) -> Iterator[LineDone]:
    """All that was done in a week; with `count required`, without what optional lines ask for."""
    for position, session in enumerate(week.sessions, 1):
        wanted = {line.movement.name for line in asked_lines(session, promise)}
        optional = {line.movement.name for line in session.lines} - wanted
        for one in matching.done(week.number, position):
            yield from (entry for entry in one.lines if entry.movement.name not in optional)
    for one in matching.extra_in(week.number):
        yield from one.lines


def _counts(one: SetDone, promise: Promise) -> bool:
    """Missed sets do not, and sets that were easier than the promise asks do not."""
    if one.reps.high <= 0:
        return False
    return promise.from_rpe is None or one.effort is None or one.effort.high >= promise.from_rpe


# ---- bests ---------------------------------------------------------------------------------------


def _bests(plan: Plan, log: Log) -> Iterator[MovementBests]:
    """Of the plan's movements, in the order in which they come up."""

    def model(movement: Movement) -> Model:
        return Model(movement.model or plan.model or Model.EPLEY.value)

    known = estimates(log, model, tests_done(plan, log))
    lines = (line for week in plan.weeks for session in week.sessions for line in session.lines)
    for name in dict.fromkeys(line.movement.name for line in lines):
        if name in known:
            yield known[name]
