"""The reports that sheets print, made for one plan: `Material` for every output.

Comes in: a plan with its promise, and one week if only that is wanted. Goes out: `Material`.
"""

from __future__ import annotations

from setwright.plan import Plan
from setwright.record import replace
from setwright.render.material import Material
from setwright.report.overview import overview
from setwright.report.targets import targets
from setwright.report.volume import Volume, volume
from setwright.rules import Promise


class NoSuchWeekError(Exception):
    """A week that the plan does not have; the text says how many there are."""


def gathered(plan: Plan, promise: Promise, week: int | None = None) -> Material:
    """The plan with its reports. One week alone has its figures as they are in the whole plan.

    Raises `NoSuchWeekError`.
    """
    whole = Material(plan, volume(plan, promise), overview(plan), promise, targets(plan, promise))
    return whole if week is None else _only_week(week, whole)


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
