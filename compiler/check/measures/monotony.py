"""The measure `monotony`.

Comes in: the planned load of each day. Goes out: how even each week's days are.
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
    from setwright.science.load_management import monotony

    for week, days in ledger.weeks:
        found = daily_loads(ledger, days) if looks_at(rule.where, week) else None
        if found is not None:
            loads, parts = found
            value = monotony(loads)
            if value is not None:
                yield Figure(WHOLE_PLAN, week, None, value, parts)


MEASURE = Measure(
    name="monotony",
    unit=BoundUnit.NUMBER,
    code=codes.MONOTONY,
    figures=_figures,
    scopes=frozenset({Scope.PLAN}),
    part="adds {number} to the load",
    about="How alike the days of a week are: the mean of their planned loads divided by the sample standard deviation "
    "(n - 1), rest days as 0. Where all days are alike it is not defined, and where a session states no effort it is "
    "not known; then no bound is held.",
    weeks="All weeks.",
    example="should monotony <= 2",
)
