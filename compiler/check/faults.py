"""What is wrong with the rules themselves, before any plan is held to them.

Comes in: a promise. Goes out: a diagnostic for each rule or waiver that cannot be held as it is written.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from setwright.check.measure import Measure
from setwright.check.measures import MEASURES
from setwright.diagnostics import Diagnostic, Fix
from setwright.diagnostics.catalogue import rules as codes
from setwright.rules import BoundUnit, Promise, Rule, Scope, Waiver
from setwright.source import Span
from setwright.suggest import did_you_mean, either, nearest


def rule_faults(promise: Promise, measures: Sequence[Measure] = MEASURES) -> tuple[Diagnostic, ...]:
    """The faults of rules and waivers, in the order they stand; asked once a promise, not once an athlete."""
    known = {measure.name: measure for measure in measures}
    found = [fault for rule in promise.rules for fault in _faults(rule, known)]
    found += [_unknown(waiver, known) for waiver in promise.waivers if waiver.measure not in known]
    return tuple(found)


def is_sound(rule: Rule, measure: Measure) -> bool:
    """True where the measure can hold a plan to the rule."""
    return not any(_misuses(rule, measure))


def _faults(rule: Rule, known: Mapping[str, Measure]) -> Iterator[Diagnostic]:
    if rule.measure in known:
        yield from _misuses(rule, known[rule.measure])
    else:
        yield _unknown(rule, known)


def _unknown(entry: Rule | Waiver, known: Mapping[str, Measure]) -> Diagnostic:
    help = did_you_mean(entry.measure, known) or f"The measures are {either([*known], 'and')}."
    near, word = nearest(entry.measure, known, most=1), _word(entry)
    fix = Fix(word, near[0]) if near and word else None
    return codes.UNKNOWN_MEASURE.at(entry.span, measure=entry.measure, help=help, fix=fix)


def _word(entry: Rule | Waiver) -> Span | None:
    """Where the measure's word stands on the rule's line."""
    span = entry.span
    before, found, _ = span.text.partition(entry.measure)
    first = span.start + len(before)
    return Span(span.source, span.line, first, first + len(found)) if found else None


def _misuses(rule: Rule, measure: Measure) -> Iterator[Diagnostic]:
    if rule.bound.unit is not measure.unit:
        yield codes.BOUND_UNIT.at(
            rule.span,
            measure=measure.name,
            wanted=_UNITS[measure.unit],
            bound=rule.bound.text,
            help=f"For example `{measure.example}`.",
        )
    if rule.scope not in measure.scopes:
        yield codes.RULE_SUBJECT.at(rule.span, measure=measure.name, help=_subjects(measure))
    if rule.where.after_sets is not None and not measure.after_sets:
        help = "Take the words from `after` out."
        yield codes.RULE_AFTER_SETS.at(rule.span, measure=measure.name, help=help, fix=_without_after(rule.span))


def _without_after(span: Span) -> Fix | None:
    """The rule's line without the words, where they stand in it once."""
    found = list(re.finditer(r"\s+after\s+[^\s\"]+\s+sets", span.text))
    if len(found) != 1:
        return None
    first = span.start + found[0].start()
    return Fix(Span(span.source, span.line, first, span.start + found[0].end()), "")


def _subjects(measure: Measure) -> str:
    if measure.scopes == {Scope.PLAN}:
        return f"Write it without `for`: `{measure.example}`."
    if measure.scopes == {Scope.RATIO}:
        return f"Write two words with a colon: `{measure.example}`."
    if Scope.PATTERNS in measure.scopes:
        return "Write movement patterns, muscles or groups after `for`, or leave `for` out to mean all of the plan."
    if Scope.PLAN in measure.scopes:
        return "Write muscles or groups after `for`, or leave `for` out to mean all of the plan."
    return f"For example `{measure.example}`."


_UNITS = {
    BoundUnit.NUMBER: "a plain number",
    BoundUnit.RPE: "an effort such as RPE 8",
    BoundUnit.PERCENT: "a percent",
    BoundUnit.MINUTES: "minutes or seconds",
    BoundUnit.HOURS: "hours",
}
