"""The measure `lifts-in-zone`.

Comes in: the work segments of lines. Goes out: where the lifts of a movement in a zone lie in the published range.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import TYPE_CHECKING

from setwright.check.figures.percents import shares_of_best
from setwright.check.figures.sets import Ledger, Part, Subject, lines_for, total
from setwright.check.measure import PLAN_MUSCLES_OR_PATTERNS, Figure, Measure, subjects
from setwright.check.weeks import WORKING_ONLY, looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.plan import Line, Session, Week
from setwright.prescription import Reps, RepsKind
from setwright.quantities import plain
from setwright.rules import BoundUnit, Rule

if TYPE_CHECKING:
    from setwright.science.zones import Zone


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    whose = tuple(subjects(rule, ledger))
    for week in ledger.plan.weeks:
        if looks_at(rule.where, week, WORKING_ONLY):
            for session in week.sessions:
                lines = {id(line): line for who in whose for line in lines_for(session, who, ledger.promise)}
                yield from _in_zones(week, session, lines.values())


def _in_zones(week: Week, session: Session, lines: Iterable[Line]) -> Iterator[Figure]:
    from setwright.science.zones import place_in_range

    for (movement, zone), parts in _by_zone(lines).items():
        lifts = total(parts)
        title = f"{movement} at {zone}, where the table has {zone.fewest}-{zone.most}"
        percent = place_in_range(zone, lifts) * 100
        words = f"{plain(lifts)} lifts ({plain(percent, 0)}%)"
        yield Figure(Subject(f"{movement} {zone}", title, None), week, session, percent, parts, words)


def _by_zone(lines: Iterable[Line]) -> dict[tuple[str, Zone], tuple[Part, ...]]:
    from setwright.science.zones import zone_of

    found: dict[tuple[str, Zone], tuple[Part, ...]] = defaultdict(tuple)
    for line in lines:
        for share in shares_of_best(line):
            lifts = share.segment.sets * _lifts(share.segment.reps)
            if share.of is None and lifts:
                found[line.movement.name, zone_of(share.percent)] += (Part(line, lifts),)
    return found


def _lifts(reps: Reps) -> Fraction:
    """The repetitions of a set that are known: a range at its top, `5+` as 5; none for `max`, times and distances."""
    match reps.kind:
        case RepsKind.COUNT:
            return reps.high
        case RepsKind.AT_LEAST:
            return reps.low
        case RepsKind.CLUSTER:
            return Fraction(sum(reps.parts))
        case RepsKind.MAX | RepsKind.SECONDS | RepsKind.METRES:
            return Fraction(0)


MEASURE = Measure(
    name="lifts-in-zone",
    unit=BoundUnit.PERCENT,
    code=codes.LIFTS_IN_ZONE,
    figures=_figures,
    scopes=PLAN_MUSCLES_OR_PATTERNS,
    part="adds {number} lifts",
    about="Where the repetitions that a session has of one movement in one zone of its best lie in the range of the "
    "published table: 0% are the fewest of the range, 50% its optimal number, 100% the most, and `0-100%` is the range "
    "itself. Only work by percent of the movement's own best counts: a range of repetitions at its top, `5+` as 5, "
    "`max` not at all, `/side` once. With `for`, the movements of a pattern, or those that train the muscle directly "
    "(weight 1).",
    weeks="Working weeks; deload and test weeks only with `in every week`, or when the rule names them.",
    example="should lifts-in-zone for quads 0-100%",
)
