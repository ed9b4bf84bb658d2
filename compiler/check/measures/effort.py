"""The measure `effort`.

Comes in: the work segments of lines. Goes out: the highest effort asked for in each session.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from setwright.check.bounds import fits
from setwright.check.figures.effort import stated_effort
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
                parts = _efforts(lines_for(session, subject, ledger.promise))
                if parts:
                    highest = max(part.amount for part in parts)
                    outside = tuple(part for part in parts if not fits(part.amount, rule.bound))
                    yield Figure(subject, week, session, highest, outside)


def _efforts(lines: Iterable[Line]) -> tuple[Part, ...]:
    stated = ((line, [effort for each in line.work if (effort := stated_effort(each)) is not None]) for line in lines)
    return tuple(Part(line, max(efforts, default=Fraction(0))) for line, efforts in stated if efforts)


MEASURE = Measure(
    name="effort",
    unit=BoundUnit.RPE,
    code=codes.EFFORT,
    figures=_figures,
    scopes=PLAN_MUSCLES_OR_PATTERNS,
    part="asks for RPE {number}",
    about="The highest effort that a session asks for, on the RPE scale: the top of a range, and RPE 10 for `max` or "
    "`5+` without a stated effort. Work by percent or load alone says no effort. With `for`, the lines of a "
    "movement pattern, or those that train the muscle directly (weight 1).",
    weeks="All weeks.",
    example="must effort <= RPE 8 in weeks 1-2",
)
