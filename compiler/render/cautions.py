"""The cautions of a plan, a week and a session in words; the texts stand in `keys`.

Comes in: what `report.cautions` found. Goes out: pairs of a head and a text.
"""

from __future__ import annotations

from typing import TypeAlias

from setwright.plan import Plan, Session, Week
from setwright.render import keys, words
from setwright.report.cautions import HardDays, has_test, may_be_minor
from setwright.report.overview import WeekSummary
from setwright.suggest import either

Caution: TypeAlias = tuple[str, str]


def of_plan(plan: Plan) -> tuple[Caution, ...]:
    """Those that stand before the weeks: first what concerns this athlete, then what holds for everyone."""
    if not may_be_minor(plan):
        return keys.CAUTIONS
    head, text = keys.MINOR
    return ((head, text.format(athlete=plan.athlete, born=plan.athlete_born)), *keys.CAUTIONS)


def of_week(summary: WeekSummary) -> tuple[Caution, ...]:
    """High effort for the same muscles on days in a row."""
    if not summary.hard_days:
        return ()
    head, text = keys.HARD_DAYS
    return ((head, text.format(days="; ".join(map(_hard_days, summary.hard_days)))),)


def of_sessions(week: Week) -> tuple[tuple[Caution, ...], ...]:
    """For each session how a best is tried, where one is: the steps once a week, later a word of where they stand."""
    first = next((session for session in week.sessions if has_test(session)), None)
    return tuple(_test(session, first) if first and has_test(session) else () for session in week.sessions)


def _test(session: Session, first: Session) -> tuple[Caution, ...]:
    if session is first:
        return (keys.TEST,)
    head, text = keys.TEST_AGAIN
    return ((head, text.format(day=words.slot(first.slot))),)


def _hard_days(days: HardDays) -> str:
    return f"{either(days.muscles, 'and')} on {words.slot(days.first)} and {words.slot(days.second)}"
