"""Inlay hints: a session's sets for its three largest muscles after a day, and the weeks of what moves after a line."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Final

from lsprotocol import types as lsp

from setwright.editor.features.feature import Feature
from setwright.editor.features.places import path_of
from setwright.editor.features.prescriptions import line_text, runs, session_sets
from setwright.editor.session import EditorSession
from setwright.quantities import plain
from setwright.record import field_names
from setwright.source import Source
from setwright.syntax import nodes as n

MOST_MUSCLES: Final = 3
LONGEST: Final = 90  # characters


def _answer(session: EditorSession, params: lsp.InlayHintParams) -> list[lsp.InlayHint]:
    path = path_of(params.text_document.uri)
    source = session.source(path)
    if source is None:
        return []
    first, last = params.range.start.line + 1, params.range.end.line + 1
    lines = (line for line in _lines(session.reader.read(source).statements) if first <= line.span.line <= last)
    said = ((line, _said(session, path, line)) for line in lines)
    return [_hint(session, source, line.span.line, text) for line, text in said if text]


def _lines(statements: tuple[n.Statement, ...]) -> Iterator[n.DayHead | n.Entry]:
    for statement in statements:
        if isinstance(statement.node, n.DayHead | n.Entry):
            yield statement.node
        yield from _lines(statement.body)


def _said(session: EditorSession, path: str, line: n.DayHead | n.Entry) -> str | None:
    if isinstance(line, n.DayHead):
        return _of_day(session, path, line)
    return _of_entry(session, path, line) if _moves(line.prescription.segments) else None


def _of_day(session: EditorSession, path: str, day: n.DayHead) -> str | None:
    """The sets of the first week that holds the session."""
    found = session.compilation(path, day.span.line)
    if found is None:
        return None
    made, at = found
    sessions = ((week, each) for week in made.plan.weeks for each in week.sessions)
    first = next((pair for pair in sessions if pair[1].span.line == at and pair[1].span.source.path == path), None)
    if first is None:
        return None
    sets = session_sets(made, *first)[:MOST_MUSCLES]
    return f"week {first[0].number}: " + ", ".join(f"{word} {plain(number)}" for word, number in sets) if sets else None


def _of_entry(session: EditorSession, path: str, entry: n.Entry) -> str | None:
    written = session.written_at(path, entry.span.line)
    if written is None:
        return None
    # A line that several days or blocks take over shows the first of each week.
    by_week = {one.week.number: line_text(one.line) for one in reversed(written[1])}
    said = " · ".join(runs(sorted(by_week.items())))
    return said if len(said) <= LONGEST else f"{said[: LONGEST - 1].rpartition(' · ')[0]} · …"


def _moves(part: Any) -> bool:
    """True where something in the line is another in another week."""
    if isinstance(part, tuple):
        return any(_moves(each) for each in part)
    if isinstance(part, n.RawTrack):
        return part.kind is not n.TrackKind.FIXED
    if isinstance(part, n.RawSegment | n.RawIntensity | n.RawBodyweight | n.RawChange):
        return any(_moves(getattr(part, field)) for field in field_names(type(part)))
    return False


def _hint(session: EditorSession, source: Source, line: int, text: str) -> lsp.InlayHint:
    end = len(source.line(line).rstrip())
    return lsp.InlayHint(session.positions.position(source, line, end), text, padding_left=True)


FEATURE = Feature(lsp.TEXT_DOCUMENT_INLAY_HINT, _answer)
