"""The measure `recovery`.

Comes in: counted sets and the days they fall on. Goes out: hours between one session for a muscle and the next.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from setwright.check.figures.sets import Day, Ledger, Subject, direct_parts, total
from setwright.check.measure import PLAN_OR_MUSCLES, Figure, Measure, subjects
from setwright.check.weeks import looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.rules import BoundUnit, Rule


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    for subject in subjects(rule, ledger):
        trained = [day for day in ledger.days if direct_parts(day, subject)]
        for before, after in pairwise(trained):
            if looks_at(rule.where, after.week) and _is_hard_enough(before, subject, ledger, rule):
                hours = Fraction(24 * (after.position - before.position))
                parts = direct_parts(before, subject) + direct_parts(after, subject)
                yield Figure(subject, after.week, after.session, hours, parts)


def _is_hard_enough(day: Day, subject: Subject, ledger: Ledger, rule: Rule) -> bool:
    least = rule.where.after_sets
    return least is None or total(ledger.parts(day, subject)) >= least


MEASURE = Measure(
    name="recovery",
    unit=BoundUnit.HOURS,
    code=codes.RECOVERY,
    figures=_figures,
    scopes=PLAN_OR_MUSCLES,
    part="{number} direct {sets}",
    about="Hours from a session with direct sets (weight 1) for a muscle to the next one, in whole days of 24 h and "
    "across the ends of weeks. `after 6 sets` leaves out what follows sessions with fewer counted sets for it.",
    weeks="All weeks; the week is that of the later session.",
    example="should recovery for quads, chest >= 48 h after 6 sets",
    after_sets=True,
)
