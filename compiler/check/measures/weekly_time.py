"""The measure `weekly-time`.

Comes in: sessions. Goes out: the minutes that each week's sessions take together.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.check.figures.session_time import session_parts
from setwright.check.figures.sets import WHOLE_PLAN, Ledger, total
from setwright.check.measure import Figure, Measure
from setwright.check.weeks import looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.rules import BoundUnit, Rule, Scope


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    for week in ledger.plan.weeks:
        if looks_at(rule.where, week):
            parts = tuple(part for session in week.sessions for part in session_parts(ledger, session))
            yield Figure(WHOLE_PLAN, week, None, total(parts) * ledger.plan.per_seven_days, parts)


MEASURE = Measure(
    name="weekly-time",
    unit=BoundUnit.MINUTES,
    code=codes.WEEKLY_TIME,
    figures=_figures,
    scopes=frozenset({Scope.PLAN}),
    part="takes {number} min",
    about="The minutes that all sessions of a week take, each under the conventions for the time of a session. In a "
    "microcycle of another length than seven days they are scaled to seven days.",
    weeks="All weeks.",
    example="should weekly-time <= 300 min",
)
