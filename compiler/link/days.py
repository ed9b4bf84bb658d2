"""Days and their edits: fresh days, days like other days, and what `add`, `drop`, `swap` and plain lines do to them.

Comes in: a day's statements and the lines it inherits. Goes out: the day with all its lines.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction

from setwright.diagnostics import Diagnostic, Fix, Related
from setwright.diagnostics.catalogue import structure, weeks
from setwright.link.library import Library
from setwright.link.lines import linked_line, placeholder
from setwright.link.model import LinkedDay, LinkedGroup, LinkedLine
from setwright.link.tracks import rest_track, sets_track
from setwright.message import Phrase, message
from setwright.plan import GroupKind
from setwright.record import replace
from setwright.source import Span
from setwright.suggest import did_you_mean
from setwright.syntax import nodes as n

Problems = list[Diagnostic]


def linked_day(
    head: n.DayHead,
    body: Iterable[n.Statement],
    base: LinkedDay | None,
    offset: int,
    library: Library,
    problems: Problems,
) -> LinkedDay:
    """One day. `base` is the day it is like, or inherits from another block; None for a fresh one."""
    editor = _Editor(library, problems, base)
    notes: list[str] = []
    for statement in body:
        if isinstance(statement.node, n.NoteLine):
            notes.append(statement.node.text)
        else:
            editor.apply(statement)
    editor.refuse_doubles()
    kept_label = base.label if base is not None and head.like is None else None
    kept_notes = base.notes if base is not None else ()
    return LinkedDay(
        head.slot.text, offset, head.label or kept_label, tuple(editor.lines), (*kept_notes, *notes), head.span
    )


class _Editor:
    """A day's lines while its statements are applied one after another."""

    def __init__(self, library: Library, problems: Problems, base: LinkedDay | None) -> None:
        self.lines: list[LinkedLine] = list(base.lines) if base is not None else []
        self._library = library
        self._problems = problems
        self._inherited = base is not None

    def apply(self, statement: n.Statement) -> None:
        match statement.node:
            case n.Entry() as entry:
                self._entry(entry, statement.body)
            case n.GroupHead() as head:
                self._group(head, statement.body)
            case n.DropLine(movement=n.MovementName() as movement):
                index = self._find(movement, "dropped")
                if index is not None:
                    del self.lines[index]
            case n.SwapLine(old=old, new=new):
                self._swap(old, new)
            case n.Unread(span=span):
                self._unread(span)
            case _:
                pass

    def _unread(self, span: Span) -> None:
        """A line that could not be read keeps its place if it begins with a movement's name."""
        begin = re.match(r'[^:"\d@]*', span.text)
        name = begin.group().strip().removeprefix("add ") if begin else ""
        movement = self._library.movement(n.Name(name, span), []) if name else None
        if movement is not None and self._match(movement.name, None) is None:
            self.lines.append(placeholder(movement, None, span))

    def refuse_doubles(self) -> None:
        """Two lines of one movement need different labels."""
        seen: dict[tuple[str, str | None], LinkedLine] = {}
        for line in self.lines:
            first = seen.setdefault(line.key, line)
            if first is not line:
                related = (Related(first.span, "it stands here already"),)
                self._problems.append(
                    structure.MOVEMENT_TWICE.at(line.span, movement=_called(*line.key), related=related)
                )

    def _entry(self, entry: n.Entry, body: tuple[n.Statement, ...]) -> None:
        group = self._group_of(entry)
        line = linked_line(entry, body, group, self._library, self._problems)
        if line is None:
            return
        self._check_rounds(group, [line])
        index = self._match(line.movement.name, line.label) if self._inherited and not entry.added else None
        if index is not None:
            self.lines[index] = replace(line, label=self.lines[index].label)
        elif self._inherited and not entry.added:
            near = did_you_mean(line.movement.name, [other.movement.name for other in self.lines])
            fix = None if near else Fix(replace(entry.span, end=entry.span.start), "add ")
            self._problems.append(structure.WANTS_ADD.at(entry.span, movement=line.movement.name, help=near, fix=fix))
        else:
            self._insert([line], entry.place)

    def _group_of(self, entry: n.Entry) -> LinkedGroup | None:
        """The group that the line will stand in: that of the line it replaces, or of its new neighbour."""
        near = entry.movement if self._inherited and not entry.added else entry.place.movement if entry.place else None
        movement = self._library.movement(near.name, []) if near is not None else None
        index = self._match(movement.name, near.label) if movement is not None and near is not None else None
        return self.lines[index].group if index is not None else None

    def _group(self, head: n.GroupHead, body: tuple[n.Statement, ...]) -> None:
        if self._inherited and not head.added:
            self._problems.append(structure.WANTS_PLACE_IN_GROUP.at(head.span, word=head.word))
            return
        if not body:
            self._problems.append(structure.EMPTY_GROUP.at(head.span, word=head.word))
            return
        group = self._linked_group(head)
        lines = [
            line
            for statement in body
            if isinstance(statement.node, n.Entry)
            and (line := linked_line(statement.node, statement.body, group, self._library, self._problems))
        ]
        self._check_rounds(group, lines)
        self._insert(lines, head.place)

    def _linked_group(self, head: n.GroupHead) -> LinkedGroup:
        rounds = sets_track(head.rounds, self._problems) if head.rounds is not None else None
        rest = rest_track(head.rest, self._problems) if head.rest is not None else None
        return LinkedGroup(GroupKind(head.word), rounds, rest, head.span)

    def _check_rounds(self, group: LinkedGroup | None, lines: list[LinkedLine]) -> None:
        if group is None or group.rounds is None:
            return
        for line in lines:
            for segment in (*line.segments, *(segment for form in line.weekly for segment in form.segments)):
                sets = segment.sets
                once = sets is not None and set(sets.values) == {Fraction(1)}
                if sets is not None and not once and sets.values != group.rounds.values:
                    self._problems.append(weeks.SETS_IN_CIRCUIT.at(segment.span))

    def _insert(self, lines: list[LinkedLine], place: n.Place | None) -> None:
        if place is None:
            self.lines.extend(lines)
            return
        index = self._find(place.movement, f"a place to stand {place.word}")
        if index is None:
            return
        neighbour = self.lines[index].group
        joined = [line if line.group is not None else replace(line, group=neighbour) for line in lines]
        at = index + 1 if place.word == "after" else index
        self.lines[at:at] = joined

    def _swap(self, old: n.Name, new: n.Name) -> None:
        index = self._find(n.MovementName(old, None, old.span), "swapped")
        movement = self._library.movement(new, self._problems)
        if index is not None and movement is not None:
            line = self.lines[index]
            said = Phrase(message("swapped for {movement} here"), movement=movement.name)
            came = (Related(old.span, said), *line.inherited)
            self.lines[index] = replace(line, movement=movement, inherited=came, named=None)

    def _match(self, name: str, label: str | None) -> int | None:
        same = [index for index, line in enumerate(self.lines) if line.movement.name == name]
        exact = [index for index in same if self.lines[index].label == label]
        if exact:
            return exact[0]
        return same[0] if len(same) == 1 and label is None else None

    def _find(self, wanted: n.MovementName, edit: str) -> int | None:
        movement = self._library.movement(wanted.name, self._problems)
        if movement is None:
            return None
        index = self._match(movement.name, wanted.label)
        if index is None:
            near = did_you_mean(movement.name, [line.movement.name for line in self.lines])
            self._problems.append(
                structure.NOT_IN_DAY.at(
                    wanted.span, movement=_called(movement.name, wanted.label), edited=edit, help=near
                )
            )
        return index


def _called(name: str, label: str | None) -> str:
    return f'{name} "{label}"' if label else name
