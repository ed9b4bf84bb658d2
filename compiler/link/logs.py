"""`session` entries of a file as a `Log`, checked for names, loads and dates.

Comes in: files and the library. Goes out: a `Log` for each athlete; what cannot be read is reported and left out.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import athletes as codes
from setwright.link.done import sets_done
from setwright.link.imports import Unit
from setwright.link.library import Library
from setwright.log.model import LineDone, Log, SessionDone
from setwright.plan import WEEKDAYS
from setwright.syntax import nodes as n

Problems = list[Diagnostic]


def linked_logs(
    units: Iterable[Unit], named: tuple[str, ...], chosen: tuple[str, ...], library: Library, problems: Problems
) -> dict[str | None, Log]:
    """The logs of the workspace's files by whose they are.

    Sessions in a file that declares one athlete, or uses one that does, are that athlete's; those of a file that was
    `named` as a log and has no athlete are of the one who was `chosen`, or of nobody where nobody was.
    """
    found: dict[str | None, list[SessionDone]] = {}
    for unit in units:
        sessions = [] if unit.shipped else [*_sessions(unit.parsed.statements, library, problems)]
        if sessions:
            found.setdefault(_owner(unit, named, chosen, library), []).extend(sessions)
    return {who: Log(tuple(sorted(sessions, key=lambda one: one.day))) for who, sessions in found.items()}


def _owner(unit: Unit, named: tuple[str, ...], chosen: tuple[str, ...], library: Library) -> str | None:
    own = [athlete.name for athlete in library.athletes if athlete.span.source is unit.parsed.source]
    if len(own) == 1:
        return own[0]
    return chosen[0] if unit.parsed.source.path in named and len(chosen) == 1 else None


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
    if head.day is None:
        return None
    notes = tuple(line.node.text for line in statement.body if isinstance(line.node, n.NoteLine))
    return SessionDone(head.day, lines, head.span, head.week, head.slot.text if head.slot else None, notes)


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
        if not isinstance(entry, n.Entry):
            continue
        movement = library.movement(entry.movement.name, problems)
        sets = sets_done(entry.prescription) if entry.place is None else None
        if sets is None:
            problems.append(codes.SESSION_ENTRY.at(entry.prescription.span, found=entry.prescription.span.text))
        elif movement is not None:
            yield LineDone(movement, entry.movement.label, sets, entry.span)
