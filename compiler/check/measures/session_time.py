"""The measure `session-time`.

Comes in: sessions. Goes out: the minutes each takes.
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
            for session in week.sessions:
                parts = session_parts(ledger, session)
                yield Figure(WHOLE_PLAN, week, session, total(parts), parts)


MEASURE = Measure(
    name="session-time",
    unit=BoundUnit.MINUTES,
    code=codes.SESSION_TIME,
    figures=_figures,
    scopes=frozenset({Scope.PLAN}),
    part="takes {number} min",
    about="The minutes a session takes, warm-up sets and rests included, under the conventions that "
    "this reference lists.",
    weeks="All weeks.",
    example="should session-time <= 75 min",
)
