"""Rules and waivers that came, went or ask for something else, in words.

Comes in: a `RuleChange`. Goes out: rows.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.check.weeks import phrase
from setwright.diagnostics import Severity
from setwright.render.difference.rows import Row, Sign
from setwright.report.difference.model import RuleChange
from setwright.rules import Rule, Scope, Waiver, Where


def rule_rows(change: RuleChange) -> Iterator[Row]:
    """The rule as it is written, before and after."""
    old, new = change.old, change.new
    if old is None and new is not None:
        yield Row(Sign.MORE, "", f"{_kind(new)} added: {rule_text(new)}")
    elif new is None and old is not None:
        yield Row(Sign.LESS, "", f"{_kind(old)} dropped: {rule_text(old)}")
    elif isinstance(old, Rule) and isinstance(new, Rule):
        yield Row(Sign.OTHER, "", _became(old, new))
    elif new is not None:
        yield Row(Sign.OTHER, "", f"{rule_text(new)}: another reason")


def rule_text(rule: Rule | Waiver) -> str:
    """`should weekly-sets for chest 10-20 in block Base`."""
    bound = f" {rule.bound.text}" if isinstance(rule, Rule) else ""
    return f"{_severity(rule)} {rule.measure}{_subjects(rule)}{bound}{_where(rule.where)}"


def _became(old: Rule, new: Rule) -> str:
    if old.bound != new.bound:
        harder = "" if old.severity is new.severity else f" (now {_severity(new)})"
        return f"Rule {_severity(old)} {old.measure}{_subjects(old)}: {old.bound.text} became {new.bound.text}{harder}"
    if old.severity is not new.severity:
        return f"Rule {_severity(old)} {old.measure}{_subjects(old)} {old.bound.text} is now a {_severity(new)}"
    return f"Rule {rule_text(new)}: {'another reason' if old.reason != new.reason else 'stands elsewhere'}"


def _kind(rule: Rule | Waiver) -> str:
    return "Rule" if isinstance(rule, Rule) else "Waiver"


def _severity(rule: Rule | Waiver) -> str:
    if isinstance(rule, Waiver):
        return "waive"
    return "must" if rule.severity is Severity.ERROR else "should"


def _subjects(rule: Rule | Waiver) -> str:
    match rule.scope:
        case Scope.PLAN:
            return ""
        case Scope.EVERY_MUSCLE:
            return " for every muscle"
        case Scope.RATIO:
            return f" {' : '.join(rule.subjects)}"
        case _:
            return f" for {', '.join(rule.subjects)}"


def _where(where: Where) -> str:
    said = f" in {phrase(where.weeks)}" if where.weeks is not None else " in every week" if where.every_week else ""
    return said + (f" in block {where.block}" if where.block is not None else "")
