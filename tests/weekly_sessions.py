"""A measure that stands outside the package, in a file of its own: sessions a week that train a muscle at all."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from setwright.check.figures.sets import Ledger
from setwright.check.measure import PLAN_OR_MUSCLES, Figure, Measure, subjects
from setwright.check.weeks import WORKING_ONLY, looks_at
from setwright.diagnostics import Code, Severity
from setwright.rules import BoundUnit, Rule


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    for subject in subjects(rule, ledger):
        for week, days in ledger.weeks:
            if looks_at(rule.where, week, WORKING_ONLY):
                sessions = [parts for day in days if (parts := ledger.parts(day, subject))]
                parts = tuple(part for session in sessions for part in session)
                yield Figure(subject, week, None, Fraction(len(sessions)), parts)


MEASURE = Measure(
    name="weekly-sessions",
    unit=BoundUnit.NUMBER,
    code=Code(
        "CLUB01",
        "weekly-sessions",
        Severity.WARNING,
        title="Sessions of a week outside the range a rule sets",
        message="{number} {sessions}{whom} in {weeks}, outside the {bound} you asked for",
        text="A rule of our club.",
        failing="",
        mended="",
    ),
    figures=_figures,
    scopes=PLAN_OR_MUSCLES,
    part="is done for {number} {sets}",
    about="Sessions a week that train a muscle at all.",
    weeks="Working weeks.",
    example="should weekly-sessions for triceps >= 2",
)
