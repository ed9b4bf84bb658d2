"""The measure `deload-cut`.

Comes in: counted sets. Goes out: percent fewer sets than in the working week before, for each deload week.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.check.figures.sets import Ledger, Subject, total
from setwright.check.measure import PLAN_OR_MUSCLES, Figure, Measure, subjects
from setwright.check.weeks import looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.plan import WeekKind
from setwright.rules import BoundUnit, Rule


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    for subject in subjects(rule, ledger):
        yield from _cuts(ledger, rule, subject)


def _cuts(ledger: Ledger, rule: Rule, subject: Subject) -> Iterator[Figure]:
    before = None
    for week, days in ledger.weeks:
        parts = ledger.week_parts(days, subject)
        if week.kind is WeekKind.WORKING:
            before = total(parts)
        elif before and week.kind is WeekKind.DELOAD and looks_at(rule.where, week):
            yield Figure(subject, week, None, (before - total(parts)) / before * 100, parts)


MEASURE = Measure(
    name="deload-cut",
    unit=BoundUnit.PERCENT,
    code=codes.DELOAD_CUT,
    figures=_figures,
    scopes=PLAN_OR_MUSCLES,
    part="keeps {number} {sets}",
    about="How many percent fewer counted sets a deload week has than the last working week before it: all sets, or "
    "those of a muscle with `for`. A deload that no working week comes before is not held to the bound.",
    weeks="Deload weeks and no others.",
    example="must deload-cut >= 40%",
)
