"""Where each exercise of a library file begins and ends, and what it is called, without parsing it.

A library holds hundreds of movements and a plan uses a few: those are parsed when they are asked for. Only files whose
lines are known to be sound (the shipped library's, which the tests parse whole) are read this way.
"""

from __future__ import annotations

import re

from setwright.record import record
from setwright.source import Source, Span

_HEAD = re.compile(r'exercise\s+(?:"((?:[^"\\]|\\.)*)"|([^"#]+?))(?:\s+like\s.*|\s*(?:#.*)?)$')
_ALSO = re.compile(r"\s+also\s+(.*)")
_PATTERN = re.compile(r"\s+pattern\s+([^\s#]+)")
_QUOTED = re.compile(r'"((?:[^"\\]|\\.)*)"')


@record
class Postponed:
    """An exercise that is not parsed yet: its names, where its name stands, and its lines."""

    name: str
    span: Span
    also: tuple[str, ...]
    lines: range  # line numbers, from 1


def outline(source: Source) -> tuple[tuple[Postponed, ...], tuple[int, ...]]:
    """The exercises of a file, and the numbers of all lines that belong to none."""
    exercises: list[Postponed] = []
    others: list[int] = []
    starts = [number for number, line in enumerate(source.lines, start=1) if line and line[0] not in " #"]
    others.extend(range(1, starts[0] if starts else len(source.lines) + 1))
    ends = [*starts[1:], len(source.lines) + 1]  # one too many where every line is indented
    for first, after in zip(starts, ends, strict=False):
        match = _HEAD.match(source.line(first))
        if match:
            exercises.append(_postponed(source, match, range(first, after)))
        else:
            others.extend(range(first, after))
    return tuple(exercises), tuple(others)


def pattern_of(postponed: Postponed) -> str | None:
    """The pattern that an exercise names in its own lines."""
    found = (_PATTERN.match(postponed.span.source.line(number)) for number in postponed.lines)
    return next((match.group(1) for match in found if match), None)


def _postponed(source: Source, match: re.Match[str], lines: range) -> Postponed:
    group = 1 if match.group(1) is not None else 2
    names = (_ALSO.match(source.line(number)) for number in lines)
    also = tuple(name for found in names if found for name in _QUOTED.findall(found.group(1)))
    return Postponed(match.group(group), Span(source, lines.start, match.start(group), match.end(group)), also, lines)
