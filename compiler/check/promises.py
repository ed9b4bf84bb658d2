"""Holds a plan to each of its rules.

Comes in: a plan, its promise, the measures. Goes out: a diagnostic for each rule, subject and session slot out of
bounds, and one for each waiver that waives nothing.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from setwright.check.bounds import fits
from setwright.check.breach import Breach, told
from setwright.check.faults import is_sound
from setwright.check.figures.sets import Ledger
from setwright.check.measure import Figure, Measure
from setwright.check.measures import MEASURES
from setwright.check.waivers import unused, waiving
from setwright.diagnostics import Diagnostic, Severity
from setwright.plan import Plan
from setwright.record import replace
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
    return tuple(_told_once(found))


def _told_once(found: Sequence[Breach]) -> Iterator[Breach]:
    """A figure that two rules with the same bound refuse is told once: by a `must`, else by the plan's own rule."""
    told: set[tuple[object, ...]] = set()
    kept: dict[int, Breach] = {}
    ranks = sorted(range(len(found)), key=lambda at: _rank(found[at].rule))
    for at in ranks:
        breach = found[at]
        figures = tuple(figure for figure in breach.figures if _same(breach, figure) not in told)
        told.update(_same(breach, figure) for figure in figures)
        if figures:
            kept[at] = replace(breach, figures=figures)
    return (kept[at] for at in sorted(kept))


def _rank(rule: Rule) -> tuple[bool, bool]:
    return rule.severity is not Severity.ERROR, rule.ruleset is not None


def _same(breach: Breach, figure: Figure) -> tuple[object, ...]:
    bound, place = breach.rule.bound, figure.session.span if figure.session else None
    size = (bound.low, bound.high, bound.unit, bound.strict)
    # What is held line by line is the same of the same lines, whatever they are picked by.
    lines = frozenset(part.line.span for part in figure.parts)
    whose = lines if breach.measure.line_by_line and lines else figure.subject.word
    return (breach.rule.measure, size, whose, figure.week.number, place, figure.value)


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
