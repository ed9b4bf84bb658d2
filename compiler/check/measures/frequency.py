"""The measure `frequency`.

Comes in: counted sets. Goes out: sessions per 7 days with a direct set, for each week and muscle.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.check.figures.sets import Ledger, direct_parts
from setwright.check.measure import PLAN_OR_MUSCLES, Figure, Measure, subjects
from setwright.check.weeks import WORKING_ONLY, looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.rules import BoundUnit, Rule


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    for subject in subjects(rule, ledger):
        for week, days in ledger.weeks:
            if looks_at(rule.where, week, WORKING_ONLY):
                sessions = [parts for day in days if (parts := direct_parts(day, subject))]
                parts = tuple(part for session in sessions for part in session)
                yield Figure(subject, week, None, len(sessions) * ledger.plan.per_seven_days, parts)


MEASURE = Measure(
    name="frequency",
    unit=BoundUnit.NUMBER,
    code=codes.FREQUENCY,
    figures=_figures,
    scopes=PLAN_OR_MUSCLES,
    part="{number} direct {sets}",
    about="Sessions a week with at least one direct set (weight 1) for a muscle, or for some muscle of a group. In a "
    "microcycle of another length than seven days they are scaled to seven days.",
    weeks="Working weeks; deload and test weeks only with `in every week`, or when the rule names them.",
    example="should frequency for every muscle >= 2",
)
