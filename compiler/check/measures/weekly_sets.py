"""The measure `weekly-sets`.

Comes in: counted sets. Goes out: sets per 7 days, for each week and muscle.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.check.figures.sets import Ledger, total
from setwright.check.measure import PLAN_OR_MUSCLES, Figure, Measure, subjects
from setwright.check.weeks import WORKING_ONLY, looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.rules import BoundUnit, Rule


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    for subject in subjects(rule, ledger):
        for week, days in ledger.weeks:
            if looks_at(rule.where, week, WORKING_ONLY):
                parts = ledger.week_parts(days, subject)
                yield Figure(subject, week, None, total(parts) * ledger.plan.per_seven_days, parts)


MEASURE = Measure(
    name="weekly-sets",
    unit=BoundUnit.NUMBER,
    code=codes.WEEKLY_SETS,
    figures=_figures,
    scopes=PLAN_OR_MUSCLES,
    part="adds {number} {sets}",
    about="Work sets a week that count for a muscle or group, or of the whole plan without `for`. In a microcycle of "
    "another length than seven days the sets are scaled to seven days.",
    weeks="Working weeks; deload and test weeks only with `in every week`, or when the rule names them.",
    example="should weekly-sets for chest, lats 10-20",
)
