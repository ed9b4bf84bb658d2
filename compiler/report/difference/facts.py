"""What is another about a plan as a whole: what it says of itself, what it promises, how its movements are described.

Comes in: two plans and promises. Goes out: facts, rules and movements that differ.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Iterator, Sequence

from setwright.plan import Movement, Plan
from setwright.record import replace
from setwright.report.difference.blocks import BlockPair
from setwright.report.difference.model import Aspect, Fact, MovementChange, RuleChange, Value
from setwright.report.difference.pairing import by_key
from setwright.rules import Promise, Rule, Waiver


def fact_changes(old: tuple[Plan, Promise], new: tuple[Plan, Promise], blocks: Sequence[BlockPair]) -> tuple[Fact, ...]:
    """What a plan says once."""
    both = zip(_facts(*old, _order(blocks, new=False)), _facts(*new, _order(blocks, new=True)), strict=True)
    return tuple(Fact(aspect, before, after) for (aspect, before), (_, after) in both if before != after)


def rule_changes(old: Promise, new: Promise) -> tuple[RuleChange, ...]:
    """Rules and waivers, but for those that come and go with the rule set they stand in."""
    only = _rulesets(old) ^ _rulesets(new)
    here: list[Rule | Waiver] = [*(rule for rule in old.rules if rule.ruleset not in only), *old.waivers]
    there: list[Rule | Waiver] = [*(rule for rule in new.rules if rule.ruleset not in only), *new.waivers]
    pairs = {new: old for old, new in by_key(_keys(here), _keys(there))}
    taken = set(pairs.values())
    changed = [
        RuleChange(here[pairs[at]] if at in pairs else None, rule)
        for at, rule in enumerate(there)
        if at not in pairs or _asked(here[pairs[at]]) != _asked(rule)
    ]
    return (*changed, *(RuleChange(rule, None) for at, rule in enumerate(here) if at not in taken))


def movement_changes(old: Plan, new: Plan) -> tuple[MovementChange, ...]:
    """Movements of both plans whose description changed."""
    before, after = _movements(old), _movements(new)
    made = (MovementChange(name, _described(before[name], after[name])) for name in after if name in before)
    return tuple(change for change in made if change.facts)


def _facts(plan: Plan, promise: Promise, order: tuple[str, ...]) -> Iterator[tuple[Aspect, Value]]:
    yield Aspect.NAME, plan.name
    yield Aspect.AUTHOR, plan.author
    yield Aspect.START, plan.start
    yield Aspect.UNITS, plan.unit.value
    yield Aspect.MICROCYCLE, plan.microcycle
    yield Aspect.NOTES, plan.notes
    yield Aspect.MODEL, plan.model
    yield Aspect.ROUNDING, "down" if plan.round_down else "nearest"
    yield Aspect.FOLLOWS, tuple(sorted(_rulesets(promise)))
    yield Aspect.COUNTING, promise.counting.value
    yield Aspect.COUNT_FROM, promise.from_rpe
    yield Aspect.COUNT_REQUIRED, promise.required_only
    yield Aspect.BLOCK_ORDER, order


def _order(blocks: Sequence[BlockPair], *, new: bool) -> tuple[str, ...]:
    """The blocks that both plans have, in the order of one of them; a renamed block has one name: it did not move."""
    both = [(pair.old, pair.new) for pair in blocks if pair.old is not None and pair.new is not None]
    ordered = sorted(both, key=lambda pair: (pair[1] if new else pair[0]).first_week)
    return tuple(min(one.name, other.name) for one, other in ordered)


def _rulesets(promise: Promise) -> set[str]:
    return {rule.ruleset for rule in promise.rules if rule.ruleset is not None}


def _keys(rules: Sequence[Rule | Waiver]) -> dict[int, Hashable]:
    return {
        at: (type(rule).__name__, rule.measure, rule.scope, rule.subjects, rule.where) for at, rule in enumerate(rules)
    }


def _asked(rule: Rule | Waiver) -> Hashable:
    """What a rule asks for; a bound is what it says and not how it is written."""
    if isinstance(rule, Waiver):
        return rule.reason
    return rule.severity, replace(rule.bound, text=""), rule.reason, rule.ruleset


def _movements(plan: Plan) -> dict[str, Movement]:
    lines: Iterable[Movement] = (
        line.movement for week in plan.weeks for session in week.sessions for line in session.lines
    )
    return {movement.name: movement for movement in lines}


def _described(old: Movement, new: Movement) -> tuple[Fact, ...]:
    both: tuple[tuple[Aspect, Value, Value], ...] = (
        (Aspect.PATTERN, old.pattern, new.pattern),
        (Aspect.NEEDS, tuple(sorted(old.needs)), tuple(sorted(new.needs))),
        (Aspect.WORKS, tuple(sorted(old.works)), tuple(sorted(new.works))),
        (Aspect.SWAPS, tuple(sorted(old.swaps)), tuple(sorted(new.swaps))),
        (Aspect.CUE, old.cue, new.cue),
    )
    return tuple(Fact(aspect, before, after) for aspect, before, after in both if before != after)
