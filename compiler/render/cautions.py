"""The cautions of a plan, a week and a session in words; the texts stand in `keys`.

Comes in: what `report.cautions` found, and a language. Goes out: pairs of a head and a text.
"""

from __future__ import annotations

from typing import TypeAlias

from setwright.plan import Plan, Session, Week
from setwright.render import keys, words
from setwright.render.keys import Pair
from setwright.render.language import Language
from setwright.report.cautions import HardDays, has_test, may_be_minor
from setwright.report.overview import WeekSummary

Caution: TypeAlias = Pair


def of_plan(plan: Plan, language: Language) -> tuple[Caution, ...]:
    """Those that stand before the weeks: first what concerns this athlete, then what holds for everyone."""
    if not may_be_minor(plan):
        return keys.translated(keys.CAUTIONS, language)
    head, text = keys.said(keys.MINOR, language)
    minor = (head, text.format(athlete=language.name(plan.athlete or ""), born=plan.athlete_born))
    return (minor, *keys.translated(keys.CAUTIONS, language))


def of_week(summary: WeekSummary, language: Language) -> tuple[Caution, ...]:
    """High effort for the same muscles on days in a row."""
    if not summary.hard_days:
        return ()
    head, text = keys.said(keys.HARD_DAYS, language)
    days = words.clauses([_hard_days(days, language) for days in summary.hard_days], language)
    return ((head, text.format(days=days)),)


def of_sessions(week: Week, language: Language) -> tuple[tuple[Caution, ...], ...]:
    """For each session how a best is tried, where one is: the steps once a week, later a word of where they stand."""
    first = next((session for session in week.sessions if has_test(session)), None)
    return tuple(_test(session, first, language) if first and has_test(session) else () for session in week.sessions)


def _test(session: Session, first: Session, language: Language) -> tuple[Caution, ...]:
    if session is first:
        return (keys.said(keys.TEST, language),)
    head, text = keys.said(keys.TEST_AGAIN, language)
    return ((head, text.format(day=words.slot_within(first.slot, language))),)


def _hard_days(days: HardDays, language: Language) -> str:
    return language.text("{muscles} on {first} and {second}").format(
        muscles=language.listed([language.text(title) for title in days.muscles]),
        first=words.slot_within(days.first, language),
        second=words.slot_within(days.second, language),
    )
