"""Diagnostics as plain data, complete enough to print without the sources or the catalogue.

Comes in: `Diagnostic`s. Goes out: `Record`s, which every printer reads, the cache keeps, and `--format json` prints.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, TypedDict

if TYPE_CHECKING:
    from collections.abc import Iterable

    from setwright.diagnostics.model import Diagnostic, Fix, Related
    from setwright.source import Source, Span


class Place(TypedDict):
    """A stretch of one line. Lines and columns count from 1, columns in characters; `end_column` is the first past it.

    Byte offsets count from 0 in the UTF-8 text as it was read: line ends are LF and a byte order mark is left out.
    """

    path: str
    line: int
    column: int
    end_column: int
    byte_start: int
    byte_end: int


class RelatedRecord(Place):
    """Another place that matters, why, and its line."""

    message: str
    source: str


class FixRecord(Place):
    """What would stand under the place to mend the problem."""

    replacement: str


class Record(Place):
    """One finding. `severity` is `error`, `warning` or `note`; `source` is the line's text."""

    code: str
    name: str
    severity: str
    message: str
    source: str
    related: list[RelatedRecord]
    help: str | None
    fix: FixRecord | None


def records(diagnostics: Iterable[Diagnostic]) -> list[Record]:
    """The diagnostics as plain data, in the order of their places, each said once."""
    bytes_before = _BytesBefore()
    return ordered([_record(diagnostic, bytes_before) for diagnostic in diagnostics])


def ordered(found: list[Record]) -> list[Record]:
    """Sorted by path, line and column; what is said twice (two plans that import one library) is said once."""
    kept: list[Record] = []
    for record in sorted(found, key=_order):
        if record not in kept[-1:]:
            kept.append(record)
    return kept


def strict(found: list[Record]) -> list[Record]:
    """The same findings with every warning an error."""
    return [{**record, "severity": "error"} if record["severity"] == "warning" else record for record in found]


def has_errors(found: list[Record]) -> bool:
    """True where a finding stops the sheets."""
    return any(record["severity"] == "error" for record in found)


def _order(record: Record) -> tuple[str, int, int, str, str, int]:
    place = (record["path"], record["line"], record["column"])
    return (*place, record["code"], record["message"], record["end_column"])


class _BytesBefore:
    """How many bytes of UTF-8 come before each line of a source, counted once a source."""

    def __init__(self) -> None:
        self._starts: dict[int, list[int]] = {}
        self._kept_alive: list[Source] = []

    def line(self, source: Source, number: int) -> int:
        if id(source) not in self._starts:
            self._kept_alive.append(source)
            starts = [0]
            for line in source.lines:
                starts.append(starts[-1] + _bytes_of(line) + 1)
            self._starts[id(source)] = starts
        starts = self._starts[id(source)]
        return starts[min(number, len(starts)) - 1]


def _record(diagnostic: Diagnostic, bytes_before: _BytesBefore) -> Record:
    return {
        "code": diagnostic.code.number,
        "name": diagnostic.code.name,
        "severity": diagnostic.severity.value,
        "message": diagnostic.message,
        **_place(diagnostic.span, bytes_before),
        "source": diagnostic.span.source.line(diagnostic.span.line),
        "related": [_related(related, bytes_before) for related in diagnostic.related],
        "help": diagnostic.help,
        "fix": _fix(diagnostic.fix, bytes_before) if diagnostic.fix else None,
    }


def _related(related: Related, bytes_before: _BytesBefore) -> RelatedRecord:
    source = related.span.source.line(related.span.line)
    return {"message": related.text, **_place(related.span, bytes_before), "source": source}


def _fix(fix: Fix, bytes_before: _BytesBefore) -> FixRecord:
    return {"replacement": fix.replacement, **_place(fix.span, bytes_before)}


def _place(span: Span, bytes_before: _BytesBefore) -> Place:
    line = span.source.line(span.line)
    start = min(span.start, len(line))
    end = max(start, min(span.end, len(line)))
    before = bytes_before.line(span.source, span.line)
    return {
        "path": span.source.path,
        "line": span.line,
        "column": start + 1,
        "end_column": end + 1,
        "byte_start": before + _bytes_of(line[:start]),
        "byte_end": before + _bytes_of(line[:end]),
    }


def _bytes_of(text: str) -> int:
    return len(text.encode("utf-8", "surrogatepass"))
