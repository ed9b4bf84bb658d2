"""The measure `weekly-rise`.

Comes in: counted sets. Goes out: percent more sets than in the working week before, for each week and muscle.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.check.figures.sets import Ledger, Subject, total
from setwright.check.measure import PLAN_OR_MUSCLES, Figure, Measure, subjects
from setwright.check.weeks import WORKING_ONLY, looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.plan import WeekKind
from setwright.rules import BoundUnit, Rule


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    for subject in subjects(rule, ledger):
        yield from _rises(ledger, rule, subject)


def _rises(ledger: Ledger, rule: Rule, subject: Subject) -> Iterator[Figure]:
    before = None
    for week, days in ledger.weeks:
        parts = ledger.week_parts(days, subject)
        now = total(parts)
        if before and looks_at(rule.where, week, WORKING_ONLY):
            yield Figure(subject, week, None, (now - before) / before * 100, parts)
        if week.kind is WeekKind.WORKING:
            before = now


MEASURE = Measure(
    name="weekly-rise",
    unit=BoundUnit.PERCENT,
    code=codes.WEEKLY_RISE,
    figures=_figures,
    scopes=PLAN_OR_MUSCLES,
    part="adds {number} {sets}",
    about="How many percent more counted sets a week has than the last working week before it. The plan's first week, "
    "and one that follows a week without any, has nothing to rise from and is not held to the bound.",
    weeks="Working weeks; deload and test weeks only with `in every week`, or when the rule names them.",
    example="should weekly-rise for every muscle <= 30%",
)
