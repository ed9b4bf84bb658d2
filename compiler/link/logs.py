"""`session` entries of files as a `Log`, checked for names, loads and dates.

Comes in: files and the library. Goes out: a `Log` for each athlete; what cannot be read is reported and left out.
"""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from typing import Final

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import athletes as codes
from setwright.diagnostics.catalogue import logs
from setwright.link.absences import linked_aways
from setwright.link.done import impossible, is_test_mark, plain_sets, sets_done
from setwright.link.imports import Unit
from setwright.link.library import Library
from setwright.link.whole_sessions import whole_session
from setwright.log.identity import done_in, may_be_one
from setwright.log.model import LineDone, Log, SessionDone
from setwright.plan import WEEKDAYS
from setwright.record import replace
from setwright.syntax import nodes as n

Problems = list[Diagnostic]

FIRST_YEAR: Final = 1990
LAST_YEAR: Final = 2100


def linked_logs(
    units: Iterable[Unit], named: tuple[str, ...], chosen: tuple[str, ...], library: Library, problems: Problems
) -> dict[str | None, Log]:
    """The logs of the workspace's files by whose they are.

    Sessions in a file that declares one athlete, or else uses one that does, are that athlete's; those of a file that
    was `named` as a log and has no athlete are of the one who was `chosen`, or of nobody where nobody was.
    """
    found: dict[str | None, list[SessionDone]] = {}
    aways: dict[str | None, list[n.AwayLine]] = {}
    declared = _declared(library)
    for unit in units:
        if unit.shipped:
            continue
        statements = unit.parsed.statements
        sessions = [*_sessions(statements, library, problems)]
        away = [statement.node for statement in statements if isinstance(statement.node, n.AwayLine)]
        if sessions or away:
            own = _athletes(unit, declared)
            if len(own) > 1:
                problems.append(logs.WHOSE_SESSION.at((sessions or away)[0].span, athletes=", ".join(own)))
            owner = _owner(unit, own, named, chosen)
            found.setdefault(owner, []).extend(sessions)
            aways.setdefault(owner, []).extend(away)
    for athlete in library.athletes:
        lines = (line.node for line in library.statement(athlete).body)
        away = [line for line in lines if isinstance(line, n.AwayLine)]
        if away:
            aways.setdefault(athlete.name, []).extend(away)
    return {
        who: Log(tuple(_once(found.get(who, []), problems)), linked_aways(aways.get(who, ()), problems))
        for who in dict.fromkeys((*found, *aways))
    }


# ---- whose it is ---------------------------------------------------------------------------------


def _declared(library: Library) -> dict[str, list[str]]:
    """The athletes of each file, by its real path."""
    found: dict[str, list[str]] = {}
    for athlete in library.athletes:
        found.setdefault(os.path.realpath(athlete.span.source.path), []).append(athlete.name)
    return found


def _athletes(unit: Unit, declared: Mapping[str, list[str]]) -> list[str]:
    """Those that the file declares, or else those of the files that it uses."""
    path = unit.parsed.source.path
    own = declared.get(os.path.realpath(path))
    if own or not declared:
        return own or []
    used = (statement.node for statement in unit.parsed.statements if isinstance(statement.node, n.UseLine))
    beside = [os.path.join(os.path.dirname(path), use.file.text) for use in used if use.file is not None]
    return [name for file in beside if "\0" not in file for name in declared.get(os.path.realpath(file), ())]


def _owner(unit: Unit, own: list[str], named: tuple[str, ...], chosen: tuple[str, ...]) -> str | None:
    if len(own) == 1:
        return own[0]
    is_named = unit.parsed.source.path in named
    return chosen[0] if is_named and len(chosen) == 1 and (not own or chosen[0] in own) else None


def _once(sessions: list[SessionDone], problems: Problems) -> Iterator[SessionDone]:
    """The sessions by day, each once: the same sets on the same day were written down a second time."""
    kept: dict[object, list[SessionDone]] = {}
    days = Counter(session.day for session in sessions)
    for session in sessions:
        # Most days have one session, and what was done in it need not be compared with anything.
        done = done_in(session) if days[session.day] > 1 else None
        same = kept.setdefault((session.day, done), [])
        at = next((at for at, other in enumerate(same) if _is_again(other, session)), None)
        if at is None:
            same.append(session)
            continue
        first = same[at]
        related = (Related(first.span, "it stands here already"),)
        problems.append(logs.SESSION_TWICE.at(session.span, date=session.day.isoformat(), related=related))
        notes = (*first.notes, *(note for note in session.notes if note not in first.notes))
        known = first if first.week is not None else session
        whole = first if first.effort is not None else session
        same[at] = replace(
            first, notes=notes, week=known.week, slot=known.slot, effort=whole.effort, minutes=whole.minutes
        )
    yield from sorted((session for same in kept.values() for session in same), key=lambda session: session.day)


def _is_again(first: SessionDone, session: SessionDone) -> bool:
    """True where the second stands for the first; sessions that are nothing but notes have to have the same."""
    return may_be_one(first, session) and (bool(first.lines) or first.notes == session.notes)


# ---- entries -------------------------------------------------------------------------------------


def _sessions(statements: Iterable[n.Statement], library: Library, problems: Problems) -> Iterator[SessionDone]:
    for statement in statements:
        made = _session(statement, library, problems)
        if made is not None:
            yield made


def _session(statement: n.Statement, library: Library, problems: Problems) -> SessionDone | None:
    head = statement.node
    if not isinstance(head, n.SessionHead):
        return None
    _check_weekday(head, problems)
    lines = tuple(_lines(statement, library, problems))
    if head.day is None or not _is_possible(head, problems):
        return None
    notes = tuple(line.node.text for line in statement.body if isinstance(line.node, n.NoteLine))
    slot = head.slot.text if head.slot else None
    return SessionDone(head.day, lines, head.span, head.week, slot, notes, *whole_session(statement, problems))


def _is_possible(head: n.SessionHead, problems: Problems) -> bool:
    """False after saying that the date lies before or after all dates a session can have."""
    assert head.day is not None
    if FIRST_YEAR <= head.day.year < LAST_YEAR:
        return True
    where = f"before {FIRST_YEAR}" if head.day.year < FIRST_YEAR else "in a far future"
    first, last = f"{FIRST_YEAR}-01-01", f"{LAST_YEAR - 1}-12-31"
    problems.append(logs.SESSION_DATE.at(head.span, date=head.day.isoformat(), where=where, first=first, last=last))
    return False


def _check_weekday(head: n.SessionHead, problems: Problems) -> None:
    if head.day is None or head.weekday is None:
        return
    right = WEEKDAYS[head.day.weekday()]
    if right != head.weekday.text:
        problems.append(
            codes.SESSION_WEEKDAY.at(
                head.weekday.span, date=head.day.isoformat(), right=right, written=head.weekday.text
            )
        )


def _lines(statement: n.Statement, library: Library, problems: Problems) -> Iterator[LineDone]:
    for line in statement.body:
        entry = line.node
        if isinstance(entry, n.DoneEntry):
            movement = library.movement(entry.movement, problems)
            if movement is not None:
                yield LineDone(movement, None, plain_sets(entry.load, entry.reps, entry.effort), entry.span)
            continue
        if not isinstance(entry, n.Entry):
            continue
        movement = library.movement(entry.movement.name, problems)
        sets = sets_done(entry.prescription) if entry.place is None else None
        if sets is None:
            found, help_ = entry.prescription.span.text, impossible(entry.prescription)
            problems.append(codes.SESSION_ENTRY.at(entry.prescription.span, found=found, help=help_))
        elif movement is not None:
            is_test = any(is_test_mark(part) for part in entry.prescription.parts)
            yield LineDone(movement, entry.movement.label, sets, entry.span, is_test)
