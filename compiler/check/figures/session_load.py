"""The load of planned sessions: minutes x effort, day by day.

Comes in: counted sessions. Goes out: what each line adds to the load of its day, in minutes x effort.

The effort of a whole session is something its athlete is asked for afterwards, from 0 to 10, and no plan knows it. What
stands in for it here is the mean RPE that the session's sets state, each set weighing the same: another scale, told
before the session and not after it. So these loads compare plans with each other, and not with loads from a diary.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from setwright.check.figures.effort import stated_effort
from setwright.check.figures.session_time import session_parts
from setwright.check.figures.sets import Day, Ledger, Part, asked_lines, total
from setwright.plan import Line


def planned_effort(lines: Iterable[Line]) -> Fraction | None:
    """The mean RPE of the work sets that state one (a range at its top), None where none does."""
    segments = (segment for line in lines for segment in line.work)
    stated = [(segment.sets, rpe) for segment in segments if (rpe := stated_effort(segment)) is not None]
    sets = sum(count for count, _ in stated)
    return sum((count * rpe for count, rpe in stated), Fraction(0)) / sets if sets else None


def load_parts(ledger: Ledger, day: Day) -> tuple[Part, ...] | None:
    """What each line of a session adds to its load: its minutes x the session's planned effort.

    None where no set states an effort. A session without lines is no load.
    """
    minutes = session_parts(ledger, day.session)
    effort = planned_effort(asked_lines(day.session, ledger.promise)) if minutes else Fraction(0)
    return None if effort is None else tuple(Part(part.line, part.amount * effort) for part in minutes)


def daily_loads(ledger: Ledger, days: Iterable[Day]) -> tuple[tuple[Fraction, ...], tuple[Part, ...]] | None:
    """The load of each day of a week, rest days 0, and the lines behind them; None where a session's is not known.

    Sessions on one day are added up. In a microcycle its own days take the place of the week's seven.
    """
    loads = [Fraction(0)] * ledger.plan.microcycle
    found: list[Part] = []
    for day in days:
        parts = load_parts(ledger, day)
        if parts is None:
            return None
        loads[day.session.offset] += total(parts)
        found += parts
    return tuple(loads), tuple(found)
