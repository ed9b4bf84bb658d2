"""The measure `intensity`.

Comes in: the work segments of lines. Goes out: the highest percent of a best asked for in each session.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from setwright.check.bounds import fits
from setwright.check.figures.percents import shares_of_best
from setwright.check.figures.sets import Ledger, Part, lines_for
from setwright.check.measure import PLAN_MUSCLES_OR_PATTERNS, Figure, Measure, subjects
from setwright.check.weeks import looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.plan import Line
from setwright.rules import BoundUnit, Rule


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    weeks = [week for week in ledger.plan.weeks if looks_at(rule.where, week)]
    for subject in subjects(rule, ledger):
        for week in weeks:
            for session in week.sessions:
                parts = _percents(lines_for(session, subject, ledger.promise))
                if parts:
                    highest = max(part.amount for part in parts)
                    outside = tuple(part for part in parts if not fits(part.amount, rule.bound))
                    yield Figure(subject, week, session, highest, outside)


def _percents(lines: Iterable[Line]) -> tuple[Part, ...]:
    known = ((line, [share.percent for share in shares_of_best(line)]) for line in lines)
    return tuple(Part(line, max(percents, default=Fraction(0))) for line, percents in known if percents)


MEASURE = Measure(
    name="intensity",
    unit=BoundUnit.PERCENT,
    code=codes.INTENSITY,
    figures=_figures,
    scopes=PLAN_MUSCLES_OR_PATTERNS,
    part="asks for {number}%",
    about="The highest percent of a best that a session asks for, as written: `80%`, `80% of Back Squat`, and what "
    "follows from it, so that `90% then -10%` is 90% and 81%. Work by effort or load says no percent. With `for`, the "
    "lines of a movement pattern, or those that train the muscle directly (weight 1).",
    weeks="All weeks.",
    example="should intensity <= 90% in block Base",
)
