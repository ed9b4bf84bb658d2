"""Which weeks say how hard they are: those where most sets are written as an effort, not as a percent or a load.

Comes in: a plan and its overview. Goes out: the overview without the efforts that would mislead.
"""

from __future__ import annotations

from collections.abc import Sequence

from setwright.check.figures.effort import known_effort
from setwright.plan import Plan, Week
from setwright.record import replace
from setwright.report.overview import WeekSummary


def telling(plan: Plan, overview: Sequence[WeekSummary]) -> tuple[WeekSummary, ...]:
    """The overview, with no efforts for weeks where fewer than half of the work sets state one.

    A week of heavy percents would otherwise look as light as its easiest small movement.
    """
    told = {week.number for week in plan.weeks if _tells(week)}
    return tuple(
        week if week.number in told else replace(week, mean_effort=None, highest_effort=None) for week in overview
    )


def _tells(week: Week) -> bool:
    segments = [segment for session in week.sessions for line in session.lines for segment in line.work]
    stated = sum(segment.sets for segment in segments if known_effort(segment) is not None)
    return stated > 0 and 2 * stated >= sum(segment.sets for segment in segments)
