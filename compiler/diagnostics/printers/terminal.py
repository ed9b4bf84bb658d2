"""Findings for a person at a terminal: the place and message, the line with the span underlined, other places, help.

Comes in: plain records in order. Goes out: text, with colour when asked, and a line that counts.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.diagnostics.printers.characters import cut, visible, width

if TYPE_CHECKING:
    from collections.abc import Sequence

    from setwright.diagnostics.plain import Record, RelatedRecord

_LONGEST_LINE = 160  # cells; of a longer line only the part around the span is shown
_LEAD = 60  # cells shown before the span in such a line
_STYLES = {
    "error": "\x1b[1;31m",
    "warning": "\x1b[1;33m",
    "note": "\x1b[1;36m",
    "help": "\x1b[36m",
    "strong": "\x1b[1m",
}
_PLAIN = "\x1b[0m"


def text(records: Sequence[Record], *, colour: bool = False) -> str:
    """All findings and the summary, ending in a line end."""
    found = [_finding(record, colour) + "\n" for record in records]
    return "\n".join([*found, summary(records) + "\n"])


def summary(records: Sequence[Record]) -> str:
    """`2 errors, 1 warning`."""
    severities = [record["severity"] for record in records]
    counts = [(severities.count(severity), severity) for severity in ("error", "warning", "note")]
    said = [f"{count} {severity}{'' if count == 1 else 's'}" for count, severity in counts if count]
    return ", ".join(said) or "no errors, no warnings"


def _finding(record: Record, colour: bool) -> str:
    severity = record["severity"]
    head = _styled(f"{severity}[{record['code']} {record['name']}]", severity, colour)
    message = _styled(visible(record["message"]), "strong", colour)
    lines = [f"{_where(record)}: {head}: {message}", *_excerpt(record, severity, colour)]
    for related in record["related"]:
        lines.append(f"  {_where(related)}: {visible(related['message'])}")
        lines += _excerpt(related, "help", colour)
    if record["help"]:
        lines.append(f"  {_styled('help:', 'help', colour)} {visible(record['help'])}")
    return "\n".join(lines)


def _where(place: Record | RelatedRecord) -> str:
    return f"{visible(place['path'])}:{place['line']}:{place['column']}"


def _excerpt(place: Record | RelatedRecord, style: str, colour: bool) -> list[str]:
    """The source line, and under it the marks; nothing where the place has no text (an empty file)."""
    if not place["source"].strip():
        return []
    number = str(place["line"])
    shown, before, marked = _marked(place["source"], place["column"] - 1, place["end_column"] - 1)
    marks = _styled("^" * max(1, marked), style, colour)
    return [f"  {number} | {shown}", f"  {' ' * len(number)} | {' ' * before}{marks}"]


def _marked(source: str, start: int, end: int) -> tuple[str, int, int]:
    """The line as shown, the cells before the span, and the cells under it."""
    before, under, after = visible(source[:start]), visible(source[start:end]), visible(source[end:])
    if width(before) + width(under) + width(after) > _LONGEST_LINE:
        before = _last(before, _LEAD)
        under = _first(under, _LONGEST_LINE - width(before))
        after = _first(after, _LONGEST_LINE - width(before) - width(under))
    return (before + under + after).rstrip(), width(before), width(under)


def _first(shown: str, cells: int) -> str:
    return shown if width(shown) <= cells else cut(shown, max(0, cells - 1)) + "…"


def _last(shown: str, cells: int) -> str:
    if width(shown) <= cells:
        return shown
    tail = shown[-cells:]
    while width(tail) > cells - 1:
        tail = tail[1:]
    return "…" + tail


def _styled(shown: str, style: str, colour: bool) -> str:
    return f"{_STYLES[style]}{shown}{_PLAIN}" if colour else shown
