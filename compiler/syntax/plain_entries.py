"""Lines of a log in their plainest form, read by a pattern: a parser takes ten times as long, and years are many lines.

Comes in: a line that stands in a `session`. Goes out: its node, or None for a line that only the grammar can read. What
is read here the grammar would read the same, and nothing about it can be wrong but its name or date.
"""

from __future__ import annotations

import re
from datetime import date

from setwright.source import Source, Span
from setwright.syntax import nodes as n

_HEAD = re.compile(r"session (\d{4}-\d\d-\d\d)(?: (Mon|Tue|Wed|Thu|Fri|Sat|Sun))?")
_MASS = r"[1-9]\d{0,2}(?:\.\d{1,3})? (?:kg|lb)"
_ENTRY = re.compile(
    r"((?:[A-Z][A-Za-z\-]*)(?: [A-Z][A-Za-z\-]*)*): "
    rf"(?:({_MASS}|bodyweight(?: [+-] {_MASS})?) x )?"
    r"(\d{1,3}(?:, \d{1,3}){0,30})(?: @ RPE ([1-9](?:\.5)?|10))?"
)


def plain_line(source: Source, number: int, shift: int, content: str) -> n.Node | None:
    """The node of a line from column `shift` on, or None where it is not of the plainest form."""
    end = shift + len(content)
    if entry := _ENTRY.fullmatch(content):
        name, load, reps, effort = entry.groups()
        called = n.Name(name, Span(source, number, shift, shift + len(name)))
        return n.DoneEntry(Span(source, number, shift, end), called, load, reps, effort)
    head = _HEAD.fullmatch(content)
    if head is None or shift:
        return None
    try:
        day = date.fromisoformat(head[1])
    except ValueError:
        return None
    weekday = n.Name(head[2], Span(source, number, *head.span(2))) if head[2] else None
    return n.SessionHead(Span(source, number, 0, end), day, weekday)
