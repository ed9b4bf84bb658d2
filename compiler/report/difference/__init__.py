"""What changes for the athlete from an old plan to a new one, in training terms.

Comes in: plans with their promises. Goes out: a `Difference` of two plans, or a `FileDifference` of all plans of two
files: plain data (`model`).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from setwright.plan import BlockSpan, Plan, Week
from setwright.report.difference.blocks import BlockPair, WeekPair, block_pairs
from setwright.report.difference.consequences import consequence
from setwright.report.difference.easing import eased
from setwright.report.difference.facts import fact_changes, movement_changes, rule_changes
from setwright.report.difference.model import (
    Aspect,
    BlockChange,
    Change,
    Difference,
    Fate,
    FileDifference,
    Heading,
    Stretched,
    Whole,
)
from setwright.report.difference.pairing import by_key
from setwright.report.difference.sessions import session_changes
from setwright.report.difference.stretches import Seen, change
from setwright.rules import Promise

Side = tuple[Plan, Promise]


def difference(old: Side, new: Side) -> Difference:
    """What changes from one plan to the other; empty where the athlete would do the same."""
    pairs = block_pairs(old[0], new[0])
    shifted = tuple(
        (one.number, other.number) for pair in pairs for one, other in pair.weeks if one.number != other.number
    )
    return Difference(
        _heading(old[0]),
        _heading(new[0]),
        fact_changes(old, new, pairs),
        rule_changes(old[1], new[1]),
        movement_changes(old[0], new[0]),
        tuple(found for pair in pairs for found in _block(pair)),
        shifted,
        consequence(old, new, [pair.weeks for pair in pairs]),
    )


def file_difference(old: Sequence[Side], new: Sequence[Side]) -> FileDifference:
    """Plans with the same name (and athlete); the one that is left on either side was given another name."""
    here = {at: (plan.name, plan.athlete) for at, (plan, _) in enumerate(old)}
    there = {at: (plan.name, plan.athlete) for at, (plan, _) in enumerate(new)}
    pairs = by_key(here, there)
    gone = [at for at in here if at not in {one for one, _ in pairs}]
    come = [at for at in there if at not in {other for _, other in pairs}]
    if len({here[at][0] for at in gone}) == len({there[at][0] for at in come}) == 1:
        renamed = by_key({at: here[at][1] for at in gone}, {at: there[at][1] for at in come})
        pairs += renamed
        gone = [at for at in gone if at not in {one for one, _ in renamed}]
        come = [at for at in come if at not in {other for _, other in renamed}]
    pairs.sort(key=lambda pair: pair[1])
    return FileDifference(
        tuple(difference(old[one], new[other]) for one, other in pairs),
        tuple(_whole(new[at][0]) for at in come),
        tuple(_whole(old[at][0]) for at in gone),
    )


def _block(pair: BlockPair) -> Iterator[BlockChange]:
    if pair.old is None or pair.new is None:
        fate = Fate.ADDED if pair.old is None else Fate.DROPPED
        added, dropped = _numbers(pair.new_weeks), _numbers(pair.old_weeks)
        yield BlockChange(fate, _stretched(pair.old), _stretched(pair.new), added, dropped)
        return
    whole, sessions = eased(pair.weeks, session_changes(pair.weeks))
    taken_old = {one.number for one, _ in pair.weeks}
    taken_new = {other.number for _, other in pair.weeks}
    made = BlockChange(
        Fate.CHANGED,
        _stretched(pair.old),
        _stretched(pair.new),
        tuple(number for number in _numbers(pair.new_weeks) if number not in taken_new),
        tuple(number for number in _numbers(pair.old_weeks) if number not in taken_old),
        (*_notes(pair.weeks), *whole),
        sessions,
    )
    if made.added or made.dropped or made.changes or made.sessions or pair.old.name != pair.new.name:
        yield made


def _notes(weeks: Sequence[WeekPair]) -> Iterator[Change]:
    return change(Aspect.NOTES, (Seen(week, week[0].notes, week[1].notes) for week in weeks))


def _numbers(weeks: Sequence[Week]) -> tuple[int, ...]:
    return tuple(week.number for week in weeks)


def _stretched(block: BlockSpan | None) -> Stretched | None:
    return Stretched(block.name, block.first_week, block.last_week) if block is not None else None


def _heading(plan: Plan) -> Heading:
    return Heading(plan.name, plan.athlete)


def _whole(plan: Plan) -> Whole:
    return Whole(
        _heading(plan),
        tuple(Stretched(block.name, block.first_week, block.last_week) for block in plan.blocks),
        sum(len(week.sessions) for week in plan.weeks),
        sum(line.sets for week in plan.weeks for session in week.sessions for line in session.lines),
    )
