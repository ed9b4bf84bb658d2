"""The measure `balance`.

Comes in: counted sets. Goes out: the sets of one side for each set of the other, for each week.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from setwright.check.figures.sets import Day, Ledger, Part, Subject, pattern_parts, total
from setwright.check.measure import Figure, Measure, named_subject
from setwright.check.weeks import WORKING_ONLY, looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.quantities import plain
from setwright.rules import BoundUnit, Rule, Scope

# Sets against none have no ratio; this is past every upper bound, and what is printed are the two numbers.
AGAINST_NONE: Final = Fraction(10**9)


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    left, right = rule.subjects
    subject = Subject(f"{left}:{right}", f"{left} : {right}", None)
    for week, days in ledger.weeks:
        if looks_at(rule.where, week, WORKING_ONLY):
            one, other = _parts(left, days, ledger), _parts(right, days, ledger)
            value = _ratio(total(one), total(other))
            if value is not None:
                words = f"{plain(total(one))} : 0" if value == AGAINST_NONE else None
                yield Figure(subject, week, None, value, _both(one, other), words)


def _parts(side: str, days: Sequence[Day], ledger: Ledger) -> tuple[Part, ...]:
    """A muscle's or group's sets as they count; else all the counted sets of a movement pattern."""
    subject = named_subject(side, ledger)
    if subject is not None:
        return ledger.week_parts(days, subject)
    return tuple(part for day in days for part in pattern_parts(day, side))


def _ratio(one: Fraction, other: Fraction) -> Fraction | None:
    if not other:
        return AGAINST_NONE if one else None
    return one / other


def _both(one: tuple[Part, ...], other: tuple[Part, ...]) -> tuple[Part, ...]:
    """Each line once: what counts for both muscles of a ratio stands on the first side."""
    there = {id(part.line) for part in one}
    return (*one, *(part for part in other if id(part.line) not in there))


MEASURE = Measure(
    name="balance",
    unit=BoundUnit.NUMBER,
    code=codes.BALANCE,
    figures=_figures,
    scopes=frozenset({Scope.RATIO}),
    part="has {number} {sets}",
    about="The counted sets of the first word for each set of the second. The words are movement patterns, whose sets "
    "count whole, or muscles and groups, whose sets count as the plan counts them. A week without sets on either side "
    "is not held to the bound; sets against none are above every bound.",
    weeks="Working weeks; deload and test weeks only with `in every week`, or when the rule names them.",
    example="should balance horizontal-push : horizontal-pull 0.7-1.4",
)
