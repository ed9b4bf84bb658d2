"""The measure `rest`.

Comes in: the rests that lines and groups write. Goes out: the shortest of each week, and the longest if too long.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from setwright.check.bounds import Side, rest_text, side
from setwright.check.figures.session_time import rested_sets
from setwright.check.figures.sets import Ledger, Part, Subject, lines_for
from setwright.check.measure import PLAN_MUSCLES_OR_PATTERNS, Figure, Measure, subjects
from setwright.check.weeks import looks_at
from setwright.diagnostics.catalogue import measures as codes
from setwright.plan import Line, Session, Week
from setwright.prescription import Rest
from setwright.record import record
from setwright.rules import BoundUnit, Promise, Rule


@record
class _Written:
    """A line and the rest between its sets."""

    line: Line
    rest: Rest


def _figures(ledger: Ledger, rule: Rule) -> Iterator[Figure]:
    weeks = [week for week in ledger.plan.weeks if looks_at(rule.where, week)]
    for subject in subjects(rule, ledger):
        for week in weeks:
            yield from _held(list(_rests(week, subject, ledger.promise)), subject, week, rule)


def _held(rests: Sequence[_Written], subject: Subject, week: Week, rule: Rule) -> Iterator[Figure]:
    """A range is held to a lower end by its shorter rest, and to an upper end by its longer one."""
    lows = [Part(found.line, found.rest.low / 60) for found in rests]
    highs = [Part(found.line, found.rest.high / 60) for found in rests]
    shortest = min((part.amount for part in lows), default=None)
    longest = max((part.amount for part in highs), default=None)
    if shortest is not None and side(shortest, rule.bound) is not Side.ABOVE:
        short = tuple(part for part in lows if side(part.amount, rule.bound) is Side.BELOW)
        yield Figure(subject, week, None, shortest, short, rest_text(shortest))
    if longest is not None and side(longest, rule.bound) is Side.ABOVE:
        long = tuple(part for part in highs if side(part.amount, rule.bound) is Side.ABOVE)
        yield Figure(subject, week, None, longest, long, rest_text(longest))


def _rests(week: Week, subject: Subject, promise: Promise) -> Iterator[_Written]:
    for session in week.sessions:
        for line in lines_for(session, subject, promise):
            rest = _rest_of(line, session)
            if rest is not None:
                yield _Written(line, rest)


def _rest_of(line: Line, session: Session) -> Rest | None:
    """What is written between its sets, or rounds: of one set there is no rest, and of `every 90 s` none is known."""
    if line.every is not None:
        return None
    together = _together(line, session)
    if max(rested_sets(each) for each in together) < 2:
        return None
    return line.rest or max((each.rest for each in together if each.rest is not None), key=_length, default=None)


def _together(line: Line, session: Session) -> list[Line]:
    """The lines of a superset or circuit; without one the line alone."""
    group = line.group
    if group is None:
        return [line]
    return [each for each in session.lines if each.group is not None and each.group.letter == group.letter]


def _length(rest: Rest) -> Fraction:
    return rest.low + rest.high


MEASURE = Measure(
    name="rest",
    unit=BoundUnit.MINUTES,
    code=codes.REST,
    figures=_figures,
    scopes=PLAN_MUSCLES_OR_PATTERNS,
    part="writes {rest}",
    about="The shortest rest between sets that the lines of a week write, and the longest where the bound has an upper "
    "end. `rest 2-3 min` is 2 min to a lower end and 3 min to an upper one. In a superset or circuit it is the "
    "rest after the round. A line that writes no rest, has one set only, or starts its sets `every 90 s` says "
    "nothing; pauses inside clusters and drop sets are no rest. With `for`, the movements of a pattern, or those "
    "that train the muscle directly (weight 1).",
    weeks="All weeks.",
    example="should rest for squat, hinge, horizontal-push >= 2 min",
    line_by_line=True,
)
