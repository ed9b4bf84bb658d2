"""A plan's declaration as one `LinkedPlan`: its settings read, its blocks linked, its promises collected."""

from __future__ import annotations

from datetime import date

from setwright.diagnostics import Diagnostic, Severity
from setwright.diagnostics.catalogue import structure, weeks
from setwright.link.absences import linked_ease_in
from setwright.link.blocks import Calendar, linked_blocks, linked_deload
from setwright.link.library import Declared, Library
from setwright.link.lines import LONGEST_PLAN, warm_up_steps
from setwright.link.model import Deload, LinkedBlock, LinkedPlan, WarmUpStep
from setwright.link.models import ROUNDING, known_model, known_word
from setwright.link.rulesets import promise_of, refuse_counting_twice
from setwright.link.templates import name_the_call, plan_lines
from setwright.link.values import whole
from setwright.link.wishes import linked_wish
from setwright.plan import EaseIn
from setwright.quantities import Unit
from setwright.record import record, replace
from setwright.rules import Promise, Rule, Waiver, Wish
from setwright.source import Span
from setwright.syntax import nodes as n
from setwright.syntax.structure import REPEATED, kind_of

MOST_RULES = 200  # those of the sets that the plan follows among them

Problems = list[Diagnostic]

LONGEST_MICROCYCLE = 60


@record
class Linked:
    """A plan, what it promises, and what it wishes for."""

    plan: LinkedPlan
    promise: Promise
    wishes: tuple[Wish, ...]


def linked_plan(declared: Declared, library: Library, problems: Problems) -> Linked | None:
    """One plan; None where nothing of it can be known. `plan.sound` is False where errors were found."""
    before = len(problems)
    statement = library.statement(declared)
    head = statement.node
    assert isinstance(head, n.Head)
    _refuse_repeats(statement.body, problems)
    refuse_counting_twice(statement.body, problems)
    lines = plan_lines(statement, library, problems)
    if lines is None:
        return None
    body = lines.body
    settings = _Settings(body, problems)
    start = settings.start()
    microcycle = settings.microcycle()
    unread = any(isinstance(line.node, n.Unread) and "microcycle" in line.node.span.text for line in body)
    calendar = Calendar(microcycle or 7, microcycle is not None, start.weekday() if start else 0, unread)
    written = [line for line in body if isinstance(line.node, n.BlockHead)]
    if len(written) + len(lines.models) > LONGEST_PLAN:  # each takes over days and says where from: too much for memory
        count = len(written) + len(lines.models)
        problems.append(structure.TOO_LARGE.at(head.span, what="blocks of this plan", count=count, most=LONGEST_PLAN))
        return None
    blocks = linked_blocks(written, lines.models, calendar, library, problems)
    _check_size(head, body, sum(block.weeks for block in blocks), problems)
    _check_end(settings, head, calendar.days * sum(block.weeks for block in blocks), problems)
    promise = promise_of(body, (block.name for block in blocks), library, problems)
    if len(promise.rules) > MOST_RULES:
        rules = len(promise.rules)
        problems.append(structure.TOO_LARGE.at(head.span, what="rules of this plan", count=rules, most=MOST_RULES))
        return None
    _check_weeks_named(promise, blocks, problems)
    wishes = _wishes(body, library, problems)
    plan = LinkedPlan(
        head.name.text,
        head.span,
        settings.unit(),
        blocks,
        settings.author(),
        start,
        microcycle or 7,
        _deload_every(body, problems),
        _warm_up(body, problems),
        settings.model(),
        settings.rounds_down(),
        tuple(line.node.text for line in body if isinstance(line.node, n.NoteLine)),
        ease_in=_ease_in(body, problems),
    )
    name_the_call(head, lines, problems, before)
    if settings.bests_from_log() is not None:
        plan = replace(plan, bests_from_log=settings.bests_from_log())
    if any(problem.severity is Severity.ERROR for problem in problems[before:]):
        plan = replace(plan, sound=False)
    return Linked(plan, promise, wishes)


def _refuse_repeats(body: tuple[n.Statement, ...], problems: Problems) -> None:
    seen: set[str] = set()
    for line in body:
        word = kind_of(line.node)
        if word in seen and word not in REPEATED:
            problems.append(structure.SETTING_TWICE.at(line.node.span, word=word))
        seen.add(word)


def _wishes(body: tuple[n.Statement, ...], library: Library, problems: Problems) -> tuple[Wish, ...]:
    wishes: tuple[Wish, ...] = ()
    for line in body:
        if isinstance(line.node, n.EmphasisLine) and (wish := linked_wish(line.node, wishes, library, problems)):
            wishes = (*wishes, wish)
    return wishes


def _check_weeks_named(promise: Promise, blocks: tuple[LinkedBlock, ...], problems: Problems) -> None:
    """Weeks that the plan's own rules and waivers name; a rule set it follows may be meant for longer plans."""
    lengths = {block.name: block.weeks for block in blocks}
    own: list[Rule | Waiver] = [rule for rule in promise.rules if rule.ruleset is None]
    for line in (*own, *promise.waivers):
        where = line.where
        most = sum(lengths.values()) if where.block is None else lengths.get(where.block)
        late = [week for week in where.weeks or () if most is not None and week > most]
        if late:
            what = "this plan" if where.block is None else f"block {where.block}"
            problems.append(weeks.WEEK_OUTSIDE_PLAN.at(line.span, week=late[0], what=what))


def _check_size(head: n.Head, body: tuple[n.Statement, ...], length: int, problems: Problems) -> None:
    if length > LONGEST_PLAN:
        problems.append(weeks.TOO_MANY_WEEKS.at(head.span, what="this plan", weeks=length, most=LONGEST_PLAN))
    if not any(isinstance(line.node, n.BlockHead | n.Unread) for line in body):
        problems.append(structure.NO_SESSIONS.at(head.span, what=f'plan "{head.name.text}"'))


def _check_end(settings: _Settings, head: n.Head, days: int, problems: Problems) -> None:
    """The calendar ends with the year 9999, and so do plans."""
    start = settings.start()
    if start is not None and days > (date.max - start).days + 1:
        problems.append(
            structure.TOO_LARGE.at(head.span, what="year of the last day", count=date.max.year + 1, most=date.max.year)
        )


class _Settings:
    """The plan's keyword lines."""

    def __init__(self, body: tuple[n.Statement, ...], problems: Problems) -> None:
        self._values = {line.node.word: line.node for line in body if isinstance(line.node, n.Setting)}
        self._problems = problems

    def _name(self, word: str) -> n.Name | None:
        setting = self._values.get(word)
        value = setting.values[0] if setting and setting.values else None
        return value if isinstance(value, n.Name) else None

    def author(self) -> str | None:
        name = self._name("author")
        return name.text if name else None

    def unit(self) -> Unit:
        name = self._name("units")
        return Unit(name.text) if name else Unit.KG

    def start(self) -> date | None:
        setting = self._values.get("start")
        value = setting.values[0] if setting and setting.values else None
        return value if isinstance(value, date) else None

    def microcycle(self) -> int | None:
        name = self._name("microcycle")
        if name is None:
            return None
        days = int(name.text)
        if not 1 <= days <= LONGEST_MICROCYCLE:
            self._problems.append(
                structure.TOO_LARGE.at(name.span, what="days in a microcycle", count=days, most=LONGEST_MICROCYCLE)
            )
            return LONGEST_MICROCYCLE
        return days

    def model(self) -> str | None:
        name = self._name("model")
        return known_model(name, self._problems) if name else None

    def bests_from_log(self) -> Span | None:
        setting = self._values.get("bests")
        return setting.span if setting else None

    def rounds_down(self) -> bool:
        name = self._name("round")
        return name is not None and known_word(name, "round", ROUNDING, self._problems) == "down"


def _deload_every(body: tuple[n.Statement, ...], problems: Problems) -> tuple[int, Deload] | None:
    for line in body:
        if isinstance(line.node, n.DeloadLine):
            if line.node.every is None:
                message = "under a plan a deload comes every so many weeks: `deload every 4 weeks: sets 50%`"
                problems.append(structure.SLOT_MISMATCH.at(line.node.span, message=message))
                continue
            deload = linked_deload(line.node.scalings, line.node, problems)
            every = whole(line.node.every, problems, "a number of weeks (`4`)", LONGEST_PLAN)
            return (every, deload) if every else None
    return None


def _ease_in(body: tuple[n.Statement, ...], problems: Problems) -> EaseIn | None:
    return next((linked_ease_in(line.node, problems) for line in body if isinstance(line.node, n.EaseInLine)), None)


def _warm_up(body: tuple[n.Statement, ...], problems: Problems) -> tuple[WarmUpStep, ...] | None:
    for line in body:
        if isinstance(line.node, n.ModifierLine):
            return warm_up_steps(line.node.parts, problems)
    return None
