"""Measures asked about plans made by hand.

Comes in: a plan and a rule. Goes out: the figures that the rule's measure finds.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from build_plans import promise
from setwright.check.figures.sets import Ledger
from setwright.check.measure import Figure
from setwright.check.measures import MEASURES
from setwright.plan import Plan
from setwright.rules import Rule


def measured(made: Plan, held: Rule, **how: Any) -> list[Figure]:
    """The figures of the rule's measure; `how` is how sets are counted."""
    (measure,) = (measure for measure in MEASURES if measure.name == held.measure)
    return list(measure.figures(Ledger(made, promise(held, **how)), held))


def figures(made: Plan, held: Rule, **how: Any) -> list[tuple[str, int, str | None, Fraction]]:
    """The same as (subject's word, week, slot or None, value)."""
    return [
        (each.subject.word, each.week.number, each.session.slot if each.session else None, each.value)
        for each in measured(made, held, **how)
    ]


def values(made: Plan, held: Rule, **how: Any) -> list[float]:
    """The values alone."""
    return [float(value) for *_, value in figures(made, held, **how)]
