"""The measure `load-rise`.

Comes in: the work segments of lines. Goes out: percent more load than in the working week before, for each movement.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import TypeAlias

from setwright.check.figures.percents import shares_of_best
from setwright.check.figures.sets import Ledger, Part, Subject, lines_for
from setwright.check.measure import PLAN_MUSCLES_OR_PATTERNS, Figure, Measure, subjects
from setwright.check.weeks import WORKING_ONLY, looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.plan import Line, Week, WeekKind
from setwright.prescription import Weight
from setwright.quantities import Unit
from setwright.record import record
from setwright.rules import BoundUnit, Rule


@record
class _Heaviest:
    """The heaviest that a week asks for, and the lines that ask for it."""

    load: Fraction  # percent, or kilograms
    reps: Fraction  # the most that it is done for
    lines: tuple[Line, ...]


# Loads can be compared within one movement and scale: the percent of one best, or a mass.
_Scale: TypeAlias = tuple[str, str]


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    whose = tuple(subjects(rule, ledger))
    before: dict[_Scale, _Heaviest] = {}
    for week in ledger.plan.weeks:
        heaviest = _heaviest(week, whose, ledger)
        if looks_at(rule.where, week, WORKING_ONLY):
            yield from _rises(week, before, heaviest)
        if week.kind is WeekKind.WORKING:
            before.update(heaviest)


def _rises(week: Week, before: dict[_Scale, _Heaviest], heaviest: dict[_Scale, _Heaviest]) -> Iterator[Figure]:
    for scale, found in heaviest.items():
        last = before.get(scale, found)
        if found.load > last.load > 0 and found.reps >= last.reps:
            percent = (found.load - last.load) / last.load * 100
            parts = tuple(Part(line, percent) for line in found.lines)
            yield Figure(Subject(scale[0], scale[0], None), week, None, percent, parts)


def _heaviest(week: Week, whose: Iterable[Subject], ledger: Ledger) -> dict[_Scale, _Heaviest]:
    lines = {
        id(line): line for session in week.sessions for who in whose for line in lines_for(session, who, ledger.promise)
    }
    found: dict[_Scale, _Heaviest] = {}
    for line in lines.values():
        for scale, load, reps in _loads(line):
            known = found.get(scale)
            if known is None or load > known.load:
                found[scale] = _Heaviest(load, reps, (line,))
            elif load == known.load:
                lines_ = known.lines if line is known.lines[-1] else (*known.lines, line)
                found[scale] = _Heaviest(load, max(reps, known.reps), lines_)
    return found


def _loads(line: Line) -> Iterator[tuple[_Scale, Fraction, Fraction]]:
    name = line.movement.name
    for share in shares_of_best(line):
        yield (name, share.of or name), share.percent, share.segment.reps.high
    for segment in line.work:
        if isinstance(segment.intensity, Weight):
            yield (name, ""), segment.intensity.mass.to(Unit.KG).amount, segment.reps.high


MEASURE = Measure(
    name="load-rise",
    unit=BoundUnit.PERCENT,
    code=codes.LOAD_RISE,
    figures=_figures,
    scopes=PLAN_MUSCLES_OR_PATTERNS,
    part="asks for {number}% more",
    about="How many percent heavier the heaviest load of a movement is than in the last working week that had one: of "
    "loads in kilograms or pounds, or of percents of the same best, so that 75% after 70% is 7.1%. Work by effort says "
    "no load; a week that is not heavier, or is heavier for fewer repetitions, has no rise to hold. With `for`, the "
    "movements of a pattern, or those that train the muscle directly (weight 1).",
    weeks="Working weeks; deload and test weeks only with `in every week`, or when the rule names them.",
    example="should load-rise <= 10%",
)
