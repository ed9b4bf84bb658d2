"""Blocks with their days whole: `like` between blocks and between days, deloads, limits.

Comes in: a plan's block statements. Goes out: `LinkedBlock`s in the order written.
"""

from __future__ import annotations

from fractions import Fraction

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import names, structure, weeks
from setwright.link.days import linked_day
from setwright.link.library import Library
from setwright.link.lines import LONGEST_BLOCK, week_numbers
from setwright.link.model import Deload, LinkedBlock, LinkedDay
from setwright.link.values import percent, rpe, whole
from setwright.message import Phrase, message
from setwright.plan import WEEKDAYS
from setwright.record import record, replace
from setwright.source import Span
from setwright.suggest import did_you_mean
from setwright.syntax import nodes as n

Problems = list[Diagnostic]

_UNREAD_DAY = "day"  # how the line of a day begins that could not be read


@record
class Calendar:
    """Where a slot falls within a week: numbered days of a microcycle, or weekdays from the plan's first.

    Where the line `microcycle` could not be read (`unread`), any slot may be right.
    """

    days: int
    numbered: bool
    first_weekday: int
    unread: bool = False

    def offset(self, slot: n.Name, problems: Problems) -> int | None:
        """Days from the first of the week."""
        if self.unread:
            return int(slot.text) if slot.text.isdigit() else WEEKDAYS.index(slot.text)
        if self.numbered and slot.text.isdigit():
            if 1 <= int(slot.text) <= self.days:
                return int(slot.text) - 1
            message = f"day {slot.text} is outside the microcycle of {self.days} days"
        elif self.numbered:
            message = (
                f"this plan counts the days of its microcycle; write `day 1` to `day {self.days}`, not `{slot.text}`"
            )
        elif slot.text.isdigit():
            message = f"day {slot.text} is a number; numbered days need `microcycle N days` in the plan"
        else:
            return (WEEKDAYS.index(slot.text) - self.first_weekday) % 7
        problems.append(structure.SLOT_MISMATCH.at(slot.span, message=message))
        return None


def linked_blocks(
    statements: list[n.Statement],
    models: tuple[n.Statement, ...],
    calendar: Calendar,
    library: Library,
    problems: Problems,
) -> tuple[LinkedBlock, ...]:
    """All blocks of a plan, each with its days. `models` are a template's blocks, which those of the plan are like."""
    by_name: dict[str, n.Statement] = {}
    for statement in statements:
        head = _head(statement)
        first = by_name.setdefault(head.name.text.casefold(), statement)
        if first is not statement:
            related = (Related(first.node.span, "it stands here already"),)
            problems.append(structure.BLOCK_TWICE.at(head.name.span, name=head.name.text, related=related))
    modelled = {_head(model).name.text.casefold(): model for model in models}
    linker = _Linker({**modelled, **by_name}, calendar, library, problems)
    return tuple(block for statement in by_name.values() if (block := linker.block(statement)) is not None)


def linked_deload(scalings: tuple[tuple[str, n.Item], ...], node: n.Node, problems: Problems) -> Deload:
    """`sets 50%, load 90%, effort RPE 6` as shares and a cap."""
    values: dict[str, n.Item] = {}
    for word, item in scalings:
        if word in values:
            problems.append(structure.SETTING_TWICE.at(item.span, word=word))
        values[word] = item
    sets = percent(values["sets"], problems, "a deload's sets") if "sets" in values else None
    load = percent(values["load"], problems, "a deload's load") if "load" in values else None
    effort = rpe(values["effort"], problems, "a deload") if "effort" in values else None
    return Deload(sets / 100 if sets else None, load / 100 if load else None, effort, node.span)


def _head(statement: n.Statement) -> n.BlockHead:
    assert isinstance(statement.node, n.BlockHead)
    return statement.node


class _Linker:
    """Resolves blocks; each is linked once, those it is like before it."""

    def __init__(
        self, by_name: dict[str, n.Statement], calendar: Calendar, library: Library, problems: Problems
    ) -> None:
        self._by_name = by_name
        self._calendar = calendar
        self._library = library
        self._problems = problems
        self._days: dict[str, dict[str, LinkedDay]] = {}
        self._unread: set[str] = set()  # blocks that have, or take over, a day whose own line could not be read

    def block(self, statement: n.Statement) -> LinkedBlock | None:
        head = _head(statement)
        days = self._resolved(head.name.text.casefold())
        before = len(self._problems)
        length = self._length(head)
        if length is None:
            return None
        deloads = self._deloads(statement.body, head, length)
        unread = any(isinstance(line.node, n.Unread) for line in statement.body)
        lost = unread or any(self._is_elsewhere(line.node) for line in statement.body)
        weeks_known = not unread and len(self._problems) == before
        if not days and len(deloads) < length and not lost and not self._inherits_nothing(head):
            self._problems.append(structure.NO_SESSIONS.at(head.span, what=f"block {head.name.text}"))
        like = Related(head.like.span, f"block {head.name.text} takes its days from here") if head.like else None
        limit, limit_span = self._limit(statement.body)
        return LinkedBlock(
            head.name.text,
            length,
            tuple(sorted(days.values(), key=lambda day: day.offset)),
            deloads,
            limit,
            limit_span,
            tuple(line.node.text for line in statement.body if isinstance(line.node, n.NoteLine)),
            head.span,
            like,
            weeks_known,
        )

    def _inherits_nothing(self, head: n.BlockHead) -> bool:
        """True where the block it is like is unknown, in a circle or empty, which is told there."""
        return head.like is not None and not self._days.get(head.like.text.casefold())

    def _is_elsewhere(self, node: n.Node) -> bool:
        """True for a day that the calendar does not have, which was told where it stands."""
        return isinstance(node, n.DayHead) and self._calendar.offset(node.slot, []) is None

    def _length(self, head: n.BlockHead) -> int | None:
        if head.weeks is None:
            self._problems.append(structure.WEEKS_MISSING.at(head.span, name=head.name.text))
            return None
        number = head.weeks.low
        if number is not None and number > LONGEST_BLOCK and not head.weeks.unit:
            what = f"block {head.name.text}"
            self._problems.append(weeks.TOO_MANY_WEEKS.at(head.weeks.span, what=what, weeks=number, most=LONGEST_BLOCK))
            return None
        return whole(head.weeks, self._problems, "a number of weeks (`4 weeks`)", LONGEST_BLOCK)

    def _resolved(self, key: str) -> dict[str, LinkedDay]:
        """The days of a block by slot, the blocks it is like resolved first."""
        chain: list[str] = []
        while key not in self._days:
            head = _head(self._by_name[key])
            chain.append(key)
            if head.like is None:
                break
            key = head.like.text.casefold()
            if key not in self._by_name:
                near = did_you_mean(head.like.text, (_head(other).name.text for other in self._by_name.values()))
                self._problems.append(names.UNKNOWN_BLOCK.at(head.like.span, name=head.like.text, help=near))
                break
            if key in chain:
                circle = [_head(self._by_name[other]).name.text for other in (*chain[chain.index(key) :], key)]
                self._problems.append(names.LIKE_CYCLE.at(head.like.span, what="blocks", chain=" -> ".join(circle)))
                break
        inherited = self._days.get(key, {})
        for link in reversed(chain):
            inherited = self._days[link] = self._own_days(self._by_name[link], inherited)
        return inherited

    def _own_days(self, statement: n.Statement, inherited: dict[str, LinkedDay]) -> dict[str, LinkedDay]:
        head = _head(statement)
        came = _taken_over(inherited, head)
        lost = head.like is not None and not inherited  # told where the block it is like is named
        lost = self._has_unread_day(statement) or lost
        dropped = self._dropped(statement.body, came, lost)
        own: dict[str, n.Statement] = {}
        for line in statement.body:
            if isinstance(line.node, n.DayHead):
                first = own.setdefault(line.node.slot.text, line)
                if first is not line:
                    related = (Related(first.node.span, "it stands here already"),)
                    self._problems.append(
                        structure.DAY_TWICE.at(line.node.span, slot=line.node.slot.text, related=related)
                    )
        days = _Days(own, {slot: day for slot, day in came.items() if slot not in dropped}, lost, self)
        return days.all()

    def _has_unread_day(self, statement: n.Statement) -> bool:
        """True where a day may be missing only because its line could not be read; its movements are looked up."""
        head = _head(statement)
        unread = [line for line in statement.body if _is_unread_day(line.node)]
        for line in unread:
            entries = (entry for entry in line.body if isinstance(entry.node, n.Entry | n.GroupHead))
            name = n.Name(_UNREAD_DAY, line.node.span)
            found: Problems = []
            linked_day(n.DayHead(line.node.span, name, None, None), entries, None, 0, self._library, found)
            self._problems.extend(problem for problem in found if problem.code is not structure.NOT_IN_DAY)
        if unread or (head.like is not None and head.like.text.casefold() in self._unread):
            self._unread.add(head.name.text.casefold())
        return head.name.text.casefold() in self._unread

    def _dropped(self, body: tuple[n.Statement, ...], inherited: dict[str, LinkedDay], lost: bool) -> set[str]:
        slots: set[str] = set()
        for line in body:
            if isinstance(line.node, n.DropLine) and line.node.slot is not None:
                if line.node.slot.text not in inherited and not lost:
                    self._problems.append(structure.UNKNOWN_DAY.at(line.node.slot.span, slot=line.node.slot.text))
                slots.add(line.node.slot.text)
        return slots

    def _deloads(self, body: tuple[n.Statement, ...], head: n.BlockHead, length: int) -> tuple[tuple[int, Deload], ...]:
        found: dict[int, Deload] = {}
        for line in body:
            if not isinstance(line.node, n.DeloadLine):
                continue
            if line.node.every is not None:
                message = "`deload every N weeks` stands under the plan; in a block write `deload week 4: ...`"
                self._problems.append(structure.SLOT_MISMATCH.at(line.node.span, message=message))
                continue
            deload = linked_deload(line.node.scalings, line.node, self._problems)
            numbers = week_numbers(line.node.weeks, self._problems) if line.node.weeks else range(1, length + 1)
            for number in numbers:
                if number > length:
                    self._problems.append(outside(head.name.text, length, number, line.node))
                elif number in found:
                    related = (Related(found[number].span, "it is given here"),)
                    self._problems.append(weeks.WEEK_TWICE.at(line.node.span, week=number, related=related))
                else:
                    found[number] = deload
        return tuple(sorted(found.items(), key=lambda pair: pair[0]))

    def _limit(self, body: tuple[n.Statement, ...]) -> tuple[Fraction | None, Span | None]:
        for line in body:
            if isinstance(line.node, n.ModifierLine) and isinstance(line.node.parts[0], n.ItemPart):
                part = line.node.parts[0]
                return rpe(part.item, self._problems, "a limit"), part.span
        return None, None


class _Days:
    """The days of one block, resolved on demand so that `day Fri like Mon` may name a later day."""

    def __init__(
        self, own: dict[str, n.Statement], inherited: dict[str, LinkedDay], lost: bool, linker: _Linker
    ) -> None:
        self._own = own
        self._inherited = inherited
        self._lost = lost
        self._linker = linker
        self._done: dict[str, LinkedDay | None] = {}
        self._chain: list[str] = []

    def all(self) -> dict[str, LinkedDay]:
        slots = dict.fromkeys([*self._inherited, *self._own])
        return {slot: day for slot in slots if (day := self._day(slot)) is not None}

    def _day(self, slot: str) -> LinkedDay | None:
        if slot not in self._own:
            return self._inherited.get(slot)
        if slot not in self._done:
            self._chain.append(slot)
            self._done[slot] = self._linked(self._own[slot])
            self._chain.pop()
        return self._done[slot]

    def _linked(self, statement: n.Statement) -> LinkedDay | None:
        head = statement.node
        assert isinstance(head, n.DayHead)
        problems = self._linker._problems
        offset = self._linker._calendar.offset(head.slot, problems)
        base = self._base(head)
        found: Problems = []
        day = linked_day(head, statement.body, base, offset or 0, self._linker._library, found)
        lost = base is None and (head.like is not None or self._lost)
        problems.extend(problem for problem in found if not lost or problem.code is not structure.NOT_IN_DAY)
        return day if offset is not None else None

    def _base(self, head: n.DayHead) -> LinkedDay | None:
        if head.like is None:
            return self._inherited.get(head.slot.text)
        problems = self._linker._problems
        slot = head.like.text
        if slot in self._chain:
            if slot == head.slot.text and slot in self._inherited:
                return self._inherited[slot]
            circle = " -> ".join([*self._chain[self._chain.index(slot) :], slot])
            problems.append(names.LIKE_CYCLE.at(head.like.span, what="days", chain=circle))
            return None
        day = self._day(slot)
        if day is None:
            if slot not in self._own and not self._lost:
                problems.append(structure.UNKNOWN_DAY.at(head.like.span, slot=slot))
            return None
        return _copied(
            day,
            Related(
                head.like.span,
                Phrase(
                    message("{day} takes its lines from {other} here"),
                    day=_day_name(head.slot.text),
                    other=_day_name(slot),
                ),
            ),
        )


def _is_unread_day(node: n.Node) -> bool:
    return isinstance(node, n.Unread) and node.span.text.split(maxsplit=1)[0].casefold() == _UNREAD_DAY


def _day_name(slot: str) -> str:
    return f"day {slot}" if slot.isdigit() else slot


def _taken_over(days: dict[str, LinkedDay], head: n.BlockHead) -> dict[str, LinkedDay]:
    if head.like is None:
        return {}
    said = message("block {block} takes its days from {other} here")
    came = Related(head.like.span, Phrase(said, block=head.name.text, other=head.like.text))
    return {slot: _copied(day, came) for slot, day in days.items()}


def _copied(day: LinkedDay, came: Related) -> LinkedDay:
    return replace(day, lines=tuple(replace(line, inherited=(came, *line.inherited)) for line in day.lines))


def outside(block: str, length: int, number: int, node: n.Node) -> Diagnostic:
    """The diagnostic for a week that a block does not have."""
    return weeks.WEEK_OUTSIDE_BLOCK.at(node.span, block=block, weeks=counted(length, "week"), week=number)


def counted(number: int, word: str) -> str:
    """`1 week`, `4 weeks`."""
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
