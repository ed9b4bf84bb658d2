"""The rows of a table as entries of a log, without what the log has already.

Comes in: the sessions of a log and the rows of a `Table`. Goes out: lines to put at its end, and what has to be said.
Nothing of the rows is dropped: what cannot be an entry becomes a comment.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from datetime import date
from fractions import Fraction

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import logs as codes
from setwright.log.identity import done_in, what_was_done
from setwright.log.model import SessionDone, SetDone
from setwright.log.table import RowDone, Table, UnreadRow
from setwright.log.words import (
    LONGEST_NOTE,
    entry_lines,
    exact,
    note_parts,
    on_one_line,
    quoted,
    session_head,
    set_words,
)
from setwright.prescription import Bodyweight
from setwright.record import record

NOT_READ = "# not read: "

Problems = list[Diagnostic]
Key = tuple[str, str | None]  # a movement and its label


@record
class Named:
    """A movement: the name that the log's file would write, and the one by which it is known. Or why there is none."""

    written: str = ""
    known: str = ""
    trouble: str | None = None


@record
class Merged:
    """What to put at a log's end; how many sets that are, and how many were there already."""

    lines: tuple[str, ...]
    sets: int
    known_sets: int
    diagnostics: tuple[Diagnostic, ...]


@dataclass(slots=True)
class _Entry:
    """Rows of one movement, one after another."""

    named: Named
    label: str | None
    is_test: bool
    sets: list[tuple[SetDone, RowDone]] = field(default_factory=list)


@dataclass(slots=True)
class _Group:
    """The rows of one session, in order."""

    day: date
    week: int | None
    slot: str | None
    entries: list[_Entry] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    whole: tuple[Fraction, Fraction | None] | None = None
    comments: list[str] = field(default_factory=list)


def merged(
    sessions: Iterable[SessionDone],
    written: Iterable[str],
    table: Table,
    named: Callable[[str], Named],
    is_possible: Callable[[SetDone], bool],
) -> Merged:
    """Lines for what the table has and the log has not. `written` are the lines of the log as they stand.

    Sets are compared by what was done, day by day: whoever imports a table again adds nothing. Where the log has other
    sets of a movement on that day instead, neither is taken for better: the rows become comments.
    """
    problems: Problems = []
    groups, loose = _grouped(table, named, is_possible, problems)
    known = _Known(sessions)
    there = {line.strip() for line in written}
    lines: list[str] = []
    alone = [*table.remarks]
    added = before = 0
    for group in groups:
        new, counted = _new_lines(group, known, problems)
        added += counted[0]
        before += counted[1]
        if not new:
            alone += group.comments
            continue
        lines += ["", session_head(group.day, group.week, group.slot)]
        lines += [f"  {line}" for line in (*new, *_unwritten(group.comments, there))]
    alone = _unwritten([*alone, *loose], there)
    return Merged((*lines, *([""] if alone else []), *alone), added, before, tuple(problems))


def _unwritten(comments: Iterable[str], there: set[str]) -> list[str]:
    """The comments that stand nowhere yet, each once; from now on they do."""
    found = [line for line in dict.fromkeys(comments) if line not in there]
    there.update(found)
    return found


# ---- rows, session by session --------------------------------------------------------------------


def _grouped(
    table: Table, named: Callable[[str], Named], is_possible: Callable[[SetDone], bool], problems: Problems
) -> tuple[list[_Group], list[str]]:
    """The sessions of the table, and comments that belong to none of them."""
    groups: dict[tuple[date, int | None, str | None], _Group] = {}
    by_day: dict[date, _Group] = {}
    waiting: list[UnreadRow] = []
    for row in table.rows:
        unread = row if isinstance(row, UnreadRow) else None
        if isinstance(row, RowDone):
            group = groups.setdefault((row.day, row.week, row.slot), _Group(row.day, row.week, row.slot))
            by_day[row.day] = group
            trouble = _put(row, group, named, is_possible)
            unread = UnreadRow(row.span, row.text, trouble, row.day) if trouble else None
        if unread is not None:
            problems.append(codes.ROW_NOT_READ.at(unread.span, reason=unread.reason))
            waiting.append(unread)
    loose: list[str] = []
    for unread in waiting:
        beside = by_day.get(unread.day) if unread.day is not None else None
        (beside.comments if beside else loose).extend(_comment(unread.text, unread.reason))
    return list(groups.values()), loose


def _put(
    row: RowDone, group: _Group, named: Callable[[str], Named], is_possible: Callable[[SetDone], bool]
) -> str | None:
    """Put a row into its session; or why that cannot be."""
    if row.movement:
        found = named(row.movement)
        if found.trouble is not None:
            return found.trouble
        if not is_possible(row.sets[0]):
            return f"`{set_words(row.sets[0])}` is no set that can be done"
        last = group.entries[-1] if group.entries else None
        if last is None or (last.named.known, last.label, last.is_test) != (found.known, row.label, row.is_test):
            last = _Entry(found, row.label, row.is_test)
            group.entries.append(last)
        last.sets += [(one, row) for one in row.sets]
    if row.note:
        group.notes += note_parts(row.note)
    if row.effort is not None:
        whole = (row.effort, row.minutes)
        if group.whole not in (None, whole):
            return "its session has another effort already"
        group.whole = whole
    for name, value in row.asides:
        group.comments += _comment(f"{name}: {value}")
    return None


def _comment(text: str, reason: str | None = None) -> Iterator[str]:
    """What was not read, as comments: all of it, a long one in pieces."""
    whole = on_one_line(text) + (f" ({reason})" if reason else "")
    for start in range(0, max(len(whole), 1), LONGEST_NOTE):
        yield (NOT_READ + whole[start : start + LONGEST_NOTE]).rstrip()


# ---- what the log has already --------------------------------------------------------------------


@dataclass(slots=True)
class _Pool:
    """One session of the log, or one that is being added: its place, and its sets that no row stands for yet."""

    week: int | None
    slot: str | None
    whole: tuple[object, ...]
    sets: dict[Key, Counter[object]] = field(default_factory=dict)
    session: SessionDone | None = None

    def is_beside(self, group: _Group) -> bool:
        """True where it may be the group's session: it is of that day, and not said to be another of the plan."""
        return None in (group.week, self.week) or self.is_said(group)

    def is_said(self, group: _Group) -> bool:
        """True where both say the same of their place."""
        return (group.week, group.slot) == (self.week, self.slot)


class _Known:
    """The log by day."""

    def __init__(self, sessions: Iterable[SessionDone]) -> None:
        self._days: dict[date, list[_Pool]] = {}
        for session in sessions:
            pool = _Pool(session.week, session.slot, done_in(session), session=session)
            for line in session.lines:
                sets = pool.sets.setdefault((line.movement.name, line.label), Counter())
                sets.update(_as_done(one) for one in line.sets)
            self._days.setdefault(session.day, []).append(pool)

    def beside(self, group: _Group) -> list[_Pool]:
        """The sessions that may be this one, first those that say so."""
        found = [pool for pool in self._days.get(group.day, []) if pool.is_beside(group)]
        return sorted(found, key=lambda pool: not pool.is_said(group))

    def add(self, group: _Group, whole: tuple[object, ...]) -> None:
        """A session that is being added: no other one with the same sets could be told from it."""
        self._days.setdefault(group.day, []).append(_Pool(group.week, group.slot, whole))


def _as_done(one: SetDone) -> object:
    """A set by what was done, however it was written: RIR or RPE, minutes or seconds, nothing added to the body."""
    load = one.load
    if isinstance(load, Bodyweight) and (load.added is None or load.added.amount == 0):
        load = Bodyweight()
    reps = one.reps
    effort = one.effort.low if one.effort is not None else None
    return load, reps.kind, reps.low, reps.parts, reps.per_side, effort


def _new_lines(group: _Group, known: _Known, problems: Problems) -> tuple[list[str], tuple[int, int]]:
    """The lines of a session that the log lacks; how many sets they are, and how many it has."""
    pools = known.beside(group)
    fresh, there = _fresh_sets(group, pools, problems)
    keys = {id(entry): (entry.named.known, entry.label) for entry in group.entries}
    whole = what_was_done((keys[at], [one for one, _ in sets]) for at, sets in fresh.items())
    if whole and any(pool.whole == whole for pool in pools):
        for sets in fresh.values():  # a second session with just these sets would count as the first
            _refuse(group, sets, problems)
            sets.clear()
    elif whole:
        known.add(group, whole)
    lines: list[str] = []
    for entry in group.entries:
        new = [one for one, _ in fresh[id(entry)]]
        lines += entry_lines(entry.named.written, entry.label, new, entry.is_test)
    in_log = [pool.session for pool in pools if pool.session is not None]
    noted = {part for session in in_log for note in session.notes for part in note_parts(note)}
    lines += [f"note {quoted(note)}" for note in dict.fromkeys(group.notes) if note not in noted]
    lines += _whole_session(group, in_log)
    return lines, (sum(map(len, fresh.values())), there)


def _fresh_sets(
    group: _Group, pools: list[_Pool], problems: Problems
) -> tuple[dict[int, list[tuple[SetDone, RowDone]]], int]:
    """The sets of each entry that the log lacks, and how many it has; where it has others, they become comments."""
    fresh: dict[int, list[tuple[SetDone, RowDone]]] = {id(entry): [] for entry in group.entries}
    rows: dict[Key, list[tuple[SetDone, RowDone, _Entry]]] = {}
    for entry in group.entries:
        for one, row in entry.sets:
            rows.setdefault((entry.named.known, entry.label), []).append((one, row, entry))
    there = 0
    for key, sets in rows.items():
        left = [one for one in sets if not _taken(_as_done(one[0]), key, pools)]
        there += len(sets) - len(left)
        if left and any(pool.sets[key].total() for pool in pools if key in pool.sets):
            _refuse(group, [(one, row) for one, row, _ in left], problems)
            continue
        for one, row, entry in left:
            fresh[id(entry)].append((one, row))
    return fresh, there


def _refuse(group: _Group, sets: Iterable[tuple[SetDone, RowDone]], problems: Problems) -> None:
    """Put the rows into comments: the log has other sets there."""
    for row in {id(row): row for _, row in sets}.values():
        problems.append(codes.SETS_DIFFER.at(row.span, movement=row.movement, date=group.day.isoformat()))
        group.comments += _comment(row.text, "the log has other sets")


def _taken(done: object, key: Key, pools: list[_Pool]) -> bool:
    """True where the log has the set, which then stands for this one alone."""
    for pool in pools:
        sets = pool.sets.get(key)
        if sets and sets[done] > 0:
            sets[done] -= 1
            return True
    return False


def _whole_session(group: _Group, in_log: list[SessionDone]) -> Iterator[str]:
    if group.whole is None:
        return
    effort, minutes = group.whole
    said = f"effort {exact(effort)} of 10" + (f", {exact(minutes)} min" if minutes is not None else "")
    there = [(session.effort, session.minutes) for session in in_log if session.effort is not None]
    if not there:
        yield said
    elif (effort, minutes) not in there:
        group.comments += _comment(said, "the log has another effort")
