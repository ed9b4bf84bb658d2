"""What was done beside what was asked as tables of words, once for the terminal and for HTML.

Comes in: `Adherence`. Goes out: `Table`s with what each figure is. Nothing here says whether a figure is good.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from fractions import Fraction
from typing import Final

from setwright.log.estimates import FEWEST_DAYS, SHORTEST, WINDOW, MovementBests
from setwright.plan import WEEKDAYS, Session, WeekKind
from setwright.quantities import Mass, plain
from setwright.record import record
from setwright.render import words
from setwright.render.language import ENGLISH
from setwright.report.adherence import Adherence, State, WeekDone
from setwright.report.coming import Coming

DAYS: Final = 7
MARKS: Final = {State.DONE: "#", State.PARTLY: "/", State.MISSED: "-", State.AWAY: "o", State.COMING: "."}
MARKS_SAID: Final = "# done, / partly, - missed, o away, . to come"

SESSIONS_NOTE: Final = (
    "A session is partly done where sets that it asks for are missing; optional lines are left out. Sets are work "
    "sets. Beside: sets that no line asks for, and those of extra sessions."
)
EFFORT_NOTE: Final = (
    "Reported RPE less asked RPE, over the sets where both are known: +1 is one repetition fewer in reserve than "
    "asked. Anywhere inside a range that was asked is 0."
)
LOAD_NOTE: Final = (
    "Session load is minutes x the effort of the whole session, from 0 to 10 (Foster 1998): another scale than the RPE "
    "of sets. Monotony: mean of the days / their standard deviation (n - 1). Strain: load x monotony, per 7 days. "
    "Blank while a week lasts, or where a session says no effort or no minutes. The figures describe training and "
    "foretell no injury."
)
MUSCLES_NOTE: Final = "Sets done / planned in each week, counted as the plan's rules count them, per 7 days."
BESTS_NOTE: Final = (
    f"Bests for one repetition as each day's best set gives them: sets with a load, an effort and at most ten "
    f"repetitions to failure. A set without an effort only says that the best is not lower, and is left out. The trend "
    f"is the median of all slopes (Theil 1950), over the last {WINDOW.days // DAYS} weeks of the log; in brackets the "
    f"95% interval (Sen 1968). It takes {FEWEST_DAYS} days over {SHORTEST.days // DAYS} weeks. An estimate is no "
    "permission: a best is tested with spotters or safety bars, and never alone."
)


@record
class Table:
    """Figures that are read together, under their heads; `left` columns hold words."""

    title: str
    note: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    left: int = 1


def title(of: Adherence) -> str:
    """Whose figures these are."""
    return f"{of.plan.name}, for {of.plan.athlete}" if of.plan.athlete else of.plan.name


def summary(of: Adherence) -> tuple[tuple[str, str], ...]:
    """What one wants to know first, each with its name."""
    over = len([state for week in of.weeks for state in week.states if state not in (State.COMING, State.AWAY)])
    states = [f"{of.sessions(state)} {state.value}" for state in (State.DONE, State.PARTLY, State.MISSED)]
    away = of.sessions(State.AWAY)
    more = [f"{of.extra} extra"] if of.extra else []
    if of.apart:
        more.append(f"{of.apart} before or after the plan")
    due, done = sum(week.sets_due for week in of.weeks), sum(week.sets_done for week in of.weeks)
    sessions = f"{over} due: {', '.join(states)}; {of.sessions(State.COMING)} to come"
    today = [session for week in of.plan.weeks for session in week.sessions if session.date == of.on]
    return (
        ("On", f"{day(of.on)}{_week_of(of)}"),
        ("Sessions", "; ".join([sessions, *([f"{away} away"] if away else []), *more])),
        ("Sets", f"{done} of {due} due" + (f", {plain(Fraction(100 * done, due), 0)}%" if due else "")),
        ("Behind", behind(of)),
        *(("Today", session_said(session)) for session in today if not session.left_out),
        ("Next", coming_said(of.next, of.on)),
    )


def behind(of: Adherence) -> str:
    """The sessions that were missed, as a figure."""
    missed = of.sessions(State.MISSED)
    return f"by {missed} session{'' if missed == 1 else 's'}" if missed else "by none"


def coming_said(one: Coming | None, on: date) -> str:
    """The session after the last one that was done, which may have been due before today."""
    if one is None:
        return "the plan is over"
    due = one.session.date
    late = (on - due).days if due is not None else 0
    since = f", due {late} day{'' if late == 1 else 's'} ago" if late > 0 else ""
    when = day(due) if due else one.session.slot
    return f"week {one.week.number}, {when}{since}: {session_said(one.session)}"


def session_said(session: Session) -> str:
    """Its label and its movements."""
    movements = ", ".join(dict.fromkeys(line.movement.name for line in session.lines)) or "nothing"
    return f"{session.label} ({movements})" if session.label else movements


def day(of: date) -> str:
    """`Mon 4 January 2027`."""
    return f"{WEEKDAYS[of.weekday()]} {ENGLISH.day(of)}"


def tables(of: Adherence) -> tuple[Table, ...]:
    """All tables that have something to say; weeks that have not begun are left out."""
    every = (_sessions(of), _effort(of), _load(of), _muscles(of), _bests(of))
    return tuple(table for table in every if table.rows)


def week_name(week: WeekDone) -> str:
    """`4 D` for a deload."""
    return f"{week.number} {words.week_letter(week.kind, ENGLISH)}".rstrip()


def drift_said(value: Fraction | None) -> str:
    """`+0.5`; blank where nothing is known."""
    if value is None:
        return ""
    return f"+{plain(value, 2)}" if plain(value, 2) not in ("0",) and value > 0 else plain(value, 2)


def is_too_short(of: MovementBests) -> str | None:
    """Why there is no trend."""
    if of.trend is not None:
        return None
    kept = of.in_window
    if not kept:
        return "no estimate"
    span = (kept[-1].day - kept[0].day).days
    return f"too little: {len(kept)} day{'' if len(kept) == 1 else 's'} over {span} day{'' if span == 1 else 's'}"


def _week_of(of: Adherence) -> str:
    """Which week the day lies in."""
    starts = [week for week in of.weeks if week.start is not None and week.start <= of.on]
    if not starts:
        return ""
    week = starts[-1]
    kind = f", {words.week_aside(week.kind, ENGLISH)}" if week.kind is not WeekKind.WORKING else ""
    assert week.start is not None
    if week.number == len(of.weeks) and (of.on - week.start).days >= of.plan.microcycle:
        return ", after the plan's last week"
    return f", week {week.number} of {len(of.weeks)} ({week.block}{kind})"


def _sessions(of: Adherence) -> Table:
    rows = tuple(
        (
            week_name(week),
            week.start.isoformat() if week.start else "",
            "".join(MARKS[state] for state in week.states),
            *(str(week.count(state)) for state in (State.DONE, State.PARTLY, State.MISSED)),
            str(week.extra),
            f"{week.sets_done}/{week.sets_due}",
            str(week.sets_planned),
            str(week.sets_beside),
        )
        for week in of.begun
    )
    head = ("week", "from", "sessions", "done", "partly", "missed", "extra", "sets done/due", "planned", "beside")
    return Table("Sessions and sets", f"{MARKS_SAID}. {SESSIONS_NOTE}", head, rows, left=3)


def _effort(of: Adherence) -> Table:
    rows = tuple(
        (week_name(week), drift_said(week.drift.mean), str(week.drift.sets)) for week in of.begun if week.drift.sets
    )
    return Table("Effort: reported less asked", EFFORT_NOTE, ("week", "mean RPE", "sets"), rows)


def _load(of: Adherence) -> Table:
    begun = [week for week in of.begun if week.load.known]
    rows = tuple(
        (
            week_name(week),
            f"{week.load.known} of {week.load.sessions}",
            plain(week.load.minutes, 0),
            plain(week.load.load, 0),
            _cell(week.load.monotony, 2),
            _cell(week.load.strain, 0),
        )
        for week in begun
    )
    return Table("Session load", LOAD_NOTE, ("week", "known for", "minutes", "load", "monotony", "strain"), rows)


def _muscles(of: Adherence) -> Table:
    begun = of.begun
    rows = tuple(
        (
            one.muscle.title,
            *(f"{plain(done, 1)}/{plain(planned, 1)}" for done, planned in _pairs(one.done, one.planned, len(begun))),
        )
        for one in of.muscles
    )
    head = ("muscle", *(week_name(week) for week in begun))
    return Table("Sets for muscles", MUSCLES_NOTE, head, rows if begun else ())


def _pairs(done: Sequence[Fraction], planned: Sequence[Fraction], count: int) -> Iterator[tuple[Fraction, Fraction]]:
    return zip(done[:count], planned[:count], strict=True)


def _bests(of: Adherence) -> Table:
    rows = tuple(tuple(_best(one)) for one in of.bests)
    head = ("movement", "by", "trend now", "a week", "days", "last day", "its estimate", "tested", "sets left out")
    return Table("Estimated bests", BESTS_NOTE, head, rows, left=2)


def _best(one: MovementBests) -> Iterator[str]:
    yield one.movement.name
    yield one.model.value
    on_trend = one.on_trend
    if on_trend is None or one.trend is None:
        yield is_too_short(one) or ""
        yield ""
    else:
        yield _mass(on_trend)
        slope, low, high = (plain(value * DAYS, 2) for value in (one.trend.slope, one.trend.low, one.trend.high))
        yield f"{slope} ({low} to {high})"
    yield str(len(one.in_window))
    yield one.days[-1].day.isoformat() if one.days else ""
    yield _mass(one.days[-1].best) if one.days else ""
    yield f"{_mass(one.tested[-1].best)} on {one.tested[-1].day.isoformat()}" if one.tested else ""
    yield str(one.left_out.total)


def _mass(of: Mass) -> str:
    return f"{plain(of.amount, 1)} {of.unit.value}"


def _cell(value: Fraction | None, places: int) -> str:
    return "" if value is None else plain(value, places)
