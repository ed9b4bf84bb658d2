"""The reports that sheets print, made for one plan: `Material` for every output.

Comes in: a plan with its promise, its log if that is to be printed, and one week or session if only that is wanted.
Goes out: `Material`.
"""

from __future__ import annotations

from datetime import date
from typing import TypeVar

from setwright.log.model import Log
from setwright.plan import Plan
from setwright.record import replace
from setwright.render.material import Material
from setwright.report.outcomes import outcomes
from setwright.report.overview import overview
from setwright.report.targets import targets
from setwright.report.volume import Volume, volume
from setwright.rules import Promise

T = TypeVar("T")


class NoSuchWeekError(Exception):
    """A week that the plan does not have; the text says how many there are."""


def gathered(
    plan: Plan, promise: Promise, week: int | None = None, *, log: Log | None = None, on: date | None = None
) -> Material:
    """The plan with its reports. One week alone has its figures as they are in the whole plan.

    With a log, and the day that counts as today, also what was done. Raises `NoSuchWeekError`.
    """
    done = None
    if log is not None and on is not None and (log.sessions or log.aways):
        done = outcomes(plan, log, on)
    whole = Material(plan, volume(plan, promise), overview(plan), promise, targets(plan, promise), done)
    return whole if week is None else _only_week(week, whole)


def only_session(material: Material, week: int, position: int) -> Material:
    """One session alone, by its week and its place there from 1, with its figures as they are in the whole plan."""
    one = _only_week(week, material)

    def kept(sessions: tuple[T, ...]) -> tuple[T, ...]:
        return sessions[position - 1 : position]

    weeks = tuple(replace(each, sessions=kept(each.sessions)) for each in one.plan.weeks)
    overview = tuple(replace(summary, sessions=kept(summary.sessions)) for summary in one.overview)
    return replace(one, plan=replace(one.plan, weeks=weeks), overview=overview)


def _only_week(number: int, whole: Material) -> Material:
    plan = whole.plan
    weeks = tuple(week for week in plan.weeks if week.number == number)
    if not weeks:
        count = len(plan.weeks)
        raise NoSuchWeekError(f"there is no week {number}: {plan.name} has {count} week{'' if count == 1 else 's'}")
    blocks = tuple(block for block in plan.blocks if block.first_week <= number <= block.last_week)
    return replace(
        whole,
        plan=replace(plan, weeks=weeks, blocks=blocks),
        volume=Volume(tuple(row for row in whole.volume.rows if row.week == number)),
        overview=tuple(summary for summary in whole.overview if summary.number == number),
        targets=whole.targets.within({number}) if whole.targets is not None else None,
    )
