"""The measure `strain`.

Comes in: the planned load of each day. Goes out: each week's load times its monotony.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.check.figures.session_load import daily_loads
from setwright.check.figures.sets import WHOLE_PLAN, Ledger
from setwright.check.measure import Figure, Measure
from setwright.check.weeks import looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.rules import BoundUnit, Rule, Scope


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    from setwright.science.load_management import strain

    for week, days in ledger.weeks:
        found = daily_loads(ledger, days) if looks_at(rule.where, week) else None
        if found is not None:
            loads, parts = found
            value = strain(loads)
            if value is not None:
                yield Figure(WHOLE_PLAN, week, None, value * ledger.plan.per_seven_days, parts)


MEASURE = Measure(
    name="strain",
    unit=BoundUnit.NUMBER,
    code=codes.STRAIN,
    figures=_figures,
    scopes=frozenset({Scope.PLAN}),
    part="adds {number} to the load",
    about="A week's planned load times its monotony; known where monotony is. In a microcycle of another length than "
    "seven days the load is scaled to seven days.",
    weeks="All weeks.",
    example="should strain <= 4000",
)
