"""Entries of a log, checked for names, loads and dates. Sheets do not use them yet, and a note says so."""

from __future__ import annotations

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import athletes as codes
from setwright.diagnostics.catalogue import later
from setwright.link.done import sets_done
from setwright.link.library import Library
from setwright.plan import WEEKDAYS
from setwright.syntax import nodes as n

Problems = list[Diagnostic]


def check_sessions(statements: tuple[n.Statement, ...], library: Library, problems: Problems) -> None:
    """Check every `session` of a file."""
    sessions = [statement for statement in statements if isinstance(statement.node, n.SessionHead)]
    for statement in sessions:
        assert isinstance(statement.node, n.SessionHead)
        _check_weekday(statement.node, problems)
        for line in statement.body:
            if isinstance(line.node, n.Entry):
                library.movement(line.node.movement.name, problems)
                _check_entry(line.node, problems)
    if sessions:
        problems.append(later.SESSIONS_NOT_YET.at(sessions[0].node.span))


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


def _check_entry(entry: n.Entry, problems: Problems) -> None:
    prescription = entry.prescription
    if entry.place is not None or sets_done(prescription) is None:
        problems.append(codes.SESSION_ENTRY.at(prescription.span, found=prescription.span.text))
