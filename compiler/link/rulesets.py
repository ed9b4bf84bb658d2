"""Rules, counting and waivers: of the sets a plan follows, and of its own lines."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from setwright.diagnostics import Diagnostic, Severity
from setwright.diagnostics.catalogue import names, structure, weeks
from setwright.link.library import Library
from setwright.link.lines import LONGEST_PLAN, week_numbers
from setwright.link.missing import missing_use
from setwright.link.models import known_word
from setwright.link.values import rpe, stray_word
from setwright.record import replace
from setwright.rules import Bound, BoundUnit, Promise, Rule, Scope, Waiver, Where
from setwright.science.counting import Counting
from setwright.suggest import did_you_mean
from setwright.syntax import nodes as n
from setwright.syntax.habits import spelled

Problems = list[Diagnostic]

COUNTINGS = (*(counting.value for counting in Counting), "required")
_UNITS = {
    None: BoundUnit.NUMBER,
    "%": BoundUnit.PERCENT,
    "s": BoundUnit.MINUTES,
    "min": BoundUnit.MINUTES,
    "h": BoundUnit.HOURS,
}


def promise_of(
    body: Iterable[n.Statement], block_names: Iterable[str], library: Library, problems: Problems
) -> Promise:
    """All that a plan's `follow`, rule, `count` and `waive` lines promise."""
    blocks = tuple(block_names)
    promise = Promise()
    own = [line for line in body if isinstance(line.node, n.RuleLine | n.CountLine)]
    for line in body:
        if isinstance(line.node, n.FollowLine):
            for name in line.node.names:
                promise = _followed(promise, name, blocks, library, problems)
    promise = _with_lines(promise, own, None, blocks, library, problems)
    waivers = tuple(
        waiver
        for line in body
        if isinstance(line.node, n.WaiveLine) and (waiver := _waiver(line.node, blocks, library, problems))
    )
    return replace(promise, waivers=waivers)


def refuse_counting_twice(body: Iterable[n.Statement], problems: Problems) -> None:
    """Of what counts, from which effort, and whether optional work does, one line each may stand in one place."""
    seen: set[str] = set()
    for line in body:
        if isinstance(line.node, n.CountLine):
            how = line.node.how
            what = "count from" if how is None else "count required" if how.text == "required" else "count"
            if what in seen:
                problems.append(structure.SETTING_TWICE.at(line.node.span, word=what))
            seen.add(what)


def check_ruleset(statement: n.Statement, library: Library, problems: Problems) -> Promise:
    """A rule set by itself, so that its own file can be checked."""
    assert isinstance(statement.node, n.Head)
    refuse_counting_twice(statement.body, problems)
    return _with_lines(Promise(), statement.body, statement.node.name.text, None, library, problems)


def _followed(promise: Promise, name: n.Name, blocks: tuple[str, ...], library: Library, problems: Problems) -> Promise:
    declared = library.declared(library.rulesets, name)
    if declared is None:
        help_, fix = library.near_declared(library.rulesets, name), None
        if help_ is None:
            help_, fix = missing_use(f"rules.{name.text}", name)
        problems.append(names.UNKNOWN_RULES.at(name.span, name=name.text, help=help_, fix=fix))
        return promise
    # A set's own faults are reported when its file is checked; here they would stand once a plan.
    return _with_lines(promise, library.statement(declared).body, name.text, blocks, library, [])


def _with_lines(
    promise: Promise,
    body: Iterable[n.Statement],
    ruleset: str | None,
    blocks: tuple[str, ...] | None,
    library: Library,
    problems: Problems,
) -> Promise:
    rules = list(promise.rules)
    for line in body:
        if isinstance(line.node, n.RuleLine):
            rule = _rule(line.node, ruleset, blocks, library, problems)
            rules.extend([rule] if rule else [])
        elif isinstance(line.node, n.CountLine):
            promise = _counted(promise, line.node, problems)
    return replace(promise, rules=tuple(rules))


def _counted(promise: Promise, line: n.CountLine, problems: Problems) -> Promise:
    if line.start is not None:
        return replace(promise, from_rpe=rpe(line.start, problems, "counting"))
    assert line.how is not None
    word = known_word(line.how, "count", COUNTINGS, problems)
    if word == "required":
        return replace(promise, required_only=True)
    return replace(promise, counting=Counting(word)) if word else promise


def _rule(
    line: n.RuleLine, ruleset: str | None, blocks: tuple[str, ...] | None, library: Library, problems: Problems
) -> Rule | None:
    bound = _bound(line.compare, line.bound, problems)
    scope, subjects = _subject(line.subject, library, problems)
    where = _where(line.where, blocks, problems)
    if bound is None:
        return None
    severity = Severity.ERROR if line.word == "must" else Severity.WARNING
    return Rule(severity, line.measure.text, scope, subjects, bound, where, line.reason, line.span, ruleset)


def _waiver(line: n.WaiveLine, blocks: tuple[str, ...], library: Library, problems: Problems) -> Waiver | None:
    scope, subjects = _subject(line.subject, library, problems)
    where = _where(line.where, blocks, problems)
    return Waiver(line.measure.text, scope, subjects, where, line.reason, line.span)


def _bound(compare: str | None, item: n.Item, problems: Problems) -> Bound | None:
    low, high = item.low, item.high
    if item.word is not None and spelled(item.word):
        problems.append(stray_word(item.span, item.word))
        return None
    if item.word is not None or low is None or high is None or item.unit not in _UNITS or low > high:
        problems.append(
            weeks.WRONG_UNIT.at(
                item.span, found=item.span.text, wanted="a bound (`10-20`, `<= RPE 8`, `>= 48 h`, `<= 30%`)"
            )
        )
        return None
    if item.unit == "s":
        low, high = low / 60, high / 60
    unit = BoundUnit.RPE if item.rpe else _UNITS[item.unit]
    text = f"{compare} {item.span.text}" if compare else item.span.text
    match compare:
        case "<" | "<=" | "≤":
            return Bound(None, high, unit, text, strict=compare == "<")
        case ">" | ">=" | "≥":
            return Bound(low, None, unit, text, strict=compare == ">")
        case _:
            return Bound(low, high, unit, text)


def _subject(part: n.SubjectPart | None, library: Library, problems: Problems) -> tuple[Scope, tuple[str, ...]]:
    if part is None:
        return Scope.PLAN, ()
    if part.kind == "every":
        return Scope.EVERY_MUSCLE, ()
    if part.kind == "ratio":
        return Scope.RATIO, tuple(library.known_side(name, problems) for name in part.names)
    patterns = [name for name in part.names if library.is_pattern(name)]
    found = [
        name.text if name in patterns else library.known_subject(name, problems, patterns=True) for name in part.names
    ]
    scope = Scope.PATTERNS if patterns else Scope.MUSCLES
    return scope, tuple(subject for subject in found if subject is not None)


def _where(parts: tuple[n.WherePart, ...], blocks: tuple[str, ...] | None, problems: Problems) -> Where:
    where = Where()
    for part in parts:
        match part.kind:
            case "weeks":
                where = replace(where, weeks=week_numbers(part.items, problems, LONGEST_PLAN))
            case "every":
                where = replace(where, every_week=True)
            case "block" if part.block is not None:
                where = replace(where, block=_block_name(part.block, blocks, problems))
            case _:
                where = replace(where, after_sets=_sets(part.items[0], problems))
    return where


def _block_name(name: n.Name, blocks: tuple[str, ...] | None, problems: Problems) -> str:
    if blocks is None:
        return name.text
    for block in blocks:
        if block.casefold() == name.text.casefold():
            return block
    problems.append(names.UNKNOWN_BLOCK.at(name.span, name=name.text, help=did_you_mean(name.text, blocks)))
    return name.text


def _sets(item: n.Item, problems: Problems) -> Fraction | None:
    if item.low is None or item.unit or item.rpe or item.low != item.high:
        problems.append(weeks.NOT_A_COUNT.at(item.span, found=item.span.text))
        return None
    return item.low
