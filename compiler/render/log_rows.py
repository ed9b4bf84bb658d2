"""The table of a plan with what was done: three columns more, and a row for everything that nobody asked for.

Comes in: a plan and its outcomes. Goes out: the whole table as text. Sets are written as a `session` takes them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from typing import Final

from setwright.log.model import LineDone, SetDone
from setwright.plan import Plan, SegmentKind, Session, Week
from setwright.render.csv import COLUMNS, LOG_COLUMNS, guarded, row, table
from setwright.report.outcomes import Outcomes, SessionOutcome, State

EXTRA: Final = "extra"


def text_with_log(plan: Plan, outcomes: Outcomes) -> str:
    """The plan's rows under a header, with what was done of each segment."""
    return table((*COLUMNS, *LOG_COLUMNS), _rows(plan, outcomes))


def written(sets: Sequence[SetDone]) -> str:
    """Sets as entries write them: `80 kg x 5, 5, 4 @ RPE 8`; those with other loads follow after a semicolon."""
    return "; ".join(_alike([*alike]) for _, alike in groupby(sets, key=lambda one: one.load))


def _alike(sets: Sequence[SetDone]) -> str:
    said: list[str] = []
    for at, one in enumerate(sets):
        last_of_effort = at + 1 == len(sets) or sets[at + 1].effort != one.effort
        said.append(f"{one.reps} @ {one.effort}" if one.effort and last_of_effort else str(one.reps))
    load = f"{sets[0].load} x " if sets[0].load is not None else ""
    return load + ", ".join(said)


def _rows(plan: Plan, outcomes: Outcomes) -> Iterator[tuple[str, ...]]:
    for week in plan.weeks:
        for position, session in enumerate(week.sessions, 1):
            yield from _session(week, session, outcomes.of(week.number, position))
        for extra in outcomes.extras_in(week.number):
            for entry in extra.lines:
                yield _extra(week, None, entry, extra.day.isoformat())
    for extra in outcomes.extras_in(None):
        for entry in extra.lines:
            yield _extra(None, None, entry, extra.day.isoformat())


def _session(week: Week, session: Session, outcome: SessionOutcome) -> Iterator[tuple[str, ...]]:
    state = "" if outcome.state is State.AHEAD else outcome.state.value
    days = " ".join(day.isoformat() for day in outcome.days)
    for order, line in enumerate(session.lines, 1):
        of = outcome.lines[order - 1] if outcome.lines else None
        sets = iter(of.segments) if of is not None else iter(())
        instead = f"{of.instead}: " if of is not None and of.instead else ""
        for segment in line.segments:
            done = next(sets, ()) if segment.kind is not SegmentKind.WARM_UP else ()
            cell = guarded(instead + written(done)) if done else ""
            yield (*row(week, session, order, line, segment), state, days, cell)
    for entry in outcome.beside:
        yield _extra(week, session, entry, days)


def _extra(week: Week | None, session: Session | None, entry: LineDone, days: str) -> tuple[str, ...]:
    """A row of which nothing was asked."""
    known = {
        "week": str(week.number) if week else "",
        "date": session.date.isoformat() if session and session.date else "",
        "block": guarded(week.block) if week else "",
        "day": session.slot if session else "",
        "label": guarded(session.label or "") if session else "",
        "exercise": guarded(entry.movement.name),
        "exercise_label": guarded(entry.label or ""),
        "kind": EXTRA,
        "projected": "no",
    }
    return (*(known.get(column, "") for column in COLUMNS), State.DONE.value, days, guarded(written(entry.sets)))
