"""The measure `session-sets`.

Comes in: counted sets. Goes out: sets a session, for each muscle that the session trains.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.check.figures.sets import Ledger, total
from setwright.check.measure import PLAN_OR_MUSCLES, Figure, Measure, subjects
from setwright.check.weeks import looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.rules import BoundUnit, Rule


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    for subject in subjects(rule, ledger):
        for day in ledger.days:
            parts = ledger.parts(day, subject)
            if parts and looks_at(rule.where, day.week):
                yield Figure(subject, day.week, day.session, total(parts), parts)


MEASURE = Measure(
    name="session-sets",
    unit=BoundUnit.NUMBER,
    code=codes.SESSION_SETS,
    figures=_figures,
    scopes=PLAN_OR_MUSCLES,
    part="adds {number} {sets}",
    about="Work sets in one session that count for a muscle or group, or of the whole session without `for`. A session "
    "without any set for it is not held to the bound.",
    weeks="All weeks.",
    example="must session-sets for every muscle <= 10",
)
