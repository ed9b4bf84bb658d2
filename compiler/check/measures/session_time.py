"""The measure `session-time`.

Comes in: sessions. Goes out: the minutes each takes.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.check.figures.session_time import line_minutes
from setwright.check.figures.sets import WHOLE_PLAN, Ledger, Part, asked_lines, total
from setwright.check.measure import Figure, Measure
from setwright.check.weeks import looks_at
from setwright.diagnostics.catalogue import rules as codes
from setwright.plan import Session
from setwright.rules import BoundUnit, Rule, Scope


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    for week in ledger.plan.weeks:
        if looks_at(rule.where, week):
            for session in week.sessions:
                parts = _parts(ledger, session)
                yield Figure(WHOLE_PLAN, week, session, total(parts), parts)


def _parts(ledger: Ledger, session: Session) -> tuple[Part, ...]:
    return ledger.remembered(("minutes", id(session)), lambda: line_minutes(asked_lines(session, ledger.promise)))


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
