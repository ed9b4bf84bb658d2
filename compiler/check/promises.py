"""Holds a plan to each of its rules.

Comes in: a plan, its promise, the measures. Goes out: a diagnostic for each rule, subject and session slot out of
bounds, and one for each waiver that waives nothing.
"""

from __future__ import annotations

from collections.abc import Sequence

from setwright.check.bounds import fits
from setwright.check.breach import Breach, told
from setwright.check.faults import is_sound
from setwright.check.figures.sets import Ledger
from setwright.check.measure import Figure, Measure
from setwright.check.measures import MEASURES
from setwright.check.waivers import unused, waiving
from setwright.diagnostics import Diagnostic
from setwright.plan import Plan
from setwright.rules import Promise, Rule, Waiver


def breaches(plan: Plan, promise: Promise, measures: Sequence[Measure] = MEASURES) -> tuple[Diagnostic, ...]:
    """Where the plan is outside the ranges it set, rule by rule.

    Rules that are not sound (`rule_faults` tells of them) are passed over.
    """
    used: set[Waiver] = set()
    found = [told(breach, plan) for breach in broken(plan, promise, measures, used)]
    known = {measure.name for measure in measures}
    idle = [waiver for waiver in promise.waivers if waiver not in used and waiver.measure in known]
    return (*found, *(unused(waiver) for waiver in idle))


def broken(
    plan: Plan, promise: Promise, measures: Sequence[Measure] = MEASURES, used: set[Waiver] | None = None
) -> tuple[Breach, ...]:
    """The same as data, before it is told; waivers that waive something are added to `used`."""
    ledger = Ledger(plan, promise)
    known = {measure.name: measure for measure in measures}
    answering: set[Waiver] = set() if used is None else used
    found: list[Breach] = []
    for rule in promise.rules:
        measure = known.get(rule.measure)
        if measure is not None and is_sound(rule, measure):
            outside = [figure for figure in measure.figures(ledger, rule) if not fits(figure.value, rule.bound)]
            held = [figure for figure in outside if not _waived(figure, rule, ledger, answering)]
            found += _merged(rule, measure, held)
    return tuple(found)


def _waived(figure: Figure, rule: Rule, ledger: Ledger, used: set[Waiver]) -> bool:
    answering = waiving(ledger.promise.waivers, rule.measure, figure.subject, figure.week, ledger.plan)
    used.update(answering)
    return bool(answering)


def _merged(rule: Rule, measure: Measure, figures: Sequence[Figure]) -> list[Breach]:
    by_place: dict[tuple[str, str | None], list[Figure]] = {}
    for figure in figures:
        slot = figure.session.slot if figure.session else None
        by_place.setdefault((figure.subject.word, slot), []).append(figure)
    return [Breach(rule, measure, tuple(group)) for group in by_place.values()]
