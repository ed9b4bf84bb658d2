"""Tables for spreadsheets and programs, by RFC 4180.

Comes in: a plan, or its volume. Goes out: rows of text, or the whole table with CRLF line ends.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator
from typing import Final

from setwright.plan import Handling, Line, Plan, Segment, Session, Week
from setwright.prescription import Reps, RepsKind, Rest
from setwright.quantities import plain
from setwright.render.material import Look, Material
from setwright.render.words import known_mass
from setwright.report.volume import MuscleWeek, Volume

COLUMNS: Final = (
    *("week", "date", "block", "day", "label", "order", "group", "exercise", "exercise_label", "kind", "sets"),
    *("reps", "reps_min", "reps_max", "intensity", "load", "unit", "rest_s", "tempo", "projected", "notes"),
)

# With a log: what became of the session, on which days, and the sets as an entry of a session writes them.
LOG_COLUMNS: Final = ("state", "done_on", "done")

VOLUME_COLUMNS: Final = (
    *("week", "muscle", "direct_sets", "fractional_sets", "sessions", "max_session_sets", "rest_h_min"),
)

# OWASP, CSV Injection (with line feed since 2025), and null from ASVS 1.2.10. The wide forms are read as the narrow
# ones where Chinese, Japanese or Korean is typed.
FORMULA_STARTS: Final = ("=", "+", "-", "@", "\t", "\r", "\n", "\0", "\uff1d", "\uff0b", "\uff0d", "\uff20")


def rendered(material: Material, look: Look) -> bytes:
    """The rows as a file: data, so that no look changes it."""
    if material.outcomes is not None:
        from setwright.render.log_rows import text_with_log

        return text_with_log(material.plan, material.outcomes).encode()
    return text(material.plan).encode()


def text(plan: Plan) -> str:
    """The whole plan, one row a segment a week a session, under a header."""
    return table(COLUMNS, rows(plan))


def rows(plan: Plan) -> Iterator[tuple[str, ...]]:
    """The rows of `text` without the header, cells in the order of `COLUMNS`, free text guarded against formulas."""
    for week in plan.weeks:
        for session in week.sessions:
            for order, line in enumerate(session.lines, 1):
                for segment in line.segments:
                    yield row(week, session, order, line, segment)


def volume_text(volume: Volume) -> str:
    """Sets a muscle gets a week, under a header."""
    return table(VOLUME_COLUMNS, volume_rows(volume))


def volume_rows(volume: Volume) -> Iterator[tuple[str, ...]]:
    """The rows of `volume_text` without the header, cells in the order of `VOLUME_COLUMNS`."""
    return (_volume_row(row) for row in volume.rows)


def guarded(cell: str) -> str:
    """Free text that no spreadsheet takes for a formula: a single quote is put before a start that one might."""
    return f"'{cell}" if cell.startswith(FORMULA_STARTS) else cell


def table(header: tuple[str, ...], body: Iterable[tuple[str, ...]]) -> str:
    """A header and rows of cells that are guarded already, as one text."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(header)
    writer.writerows(body)
    return out.getvalue()


def row(week: Week, session: Session, order: int, line: Line, segment: Segment) -> tuple[str, ...]:
    """The row of one segment."""
    mass = known_mass(segment)
    return (
        str(week.number),
        session.date.isoformat() if session.date else "",
        guarded(week.block),
        session.slot,
        guarded(session.label or ""),
        str(order),
        line.group.letter if line.group else "",
        guarded(line.movement.name),
        guarded(line.label or ""),
        segment.kind.value,
        str(segment.sets),
        str(segment.reps),
        *_repetitions(segment.reps),
        str(segment.intensity) if segment.intensity else "",
        plain(mass.amount) if mass else "",
        mass.unit.value if mass else "",
        _seconds(line.rest or (line.group.rest if line.group else None)),
        str(line.tempo) if line.tempo else "",
        "yes" if line.projected else "no",
        guarded("; ".join(_notes(line, segment))),
    )


def _repetitions(reps: Reps) -> tuple[str, str]:
    """The fewest and the most repetitions; blank for time, distance and `max`, no most for `5+`."""
    if not reps.is_repetitions:
        return "", ""
    if reps.kind is RepsKind.CLUSTER:
        return str(sum(reps.parts)), str(sum(reps.parts))
    return plain(reps.low), "" if reps.kind is RepsKind.AT_LEAST else plain(reps.high)


def _seconds(rest: Rest | None) -> str:
    if rest is None:
        return ""
    return plain(rest.low) if rest.low == rest.high else f"{plain(rest.low)}-{plain(rest.high)}"


def _notes(line: Line, segment: Segment) -> Iterator[str]:
    """What has no column of its own, then the notes."""
    if line.instead_of is not None:
        yield f"instead of {line.instead_of}"
    if line.optional:
        yield "optional"
    if line.every is not None:
        yield f"every {plain(line.every)} s"
    if line.pause is not None:
        yield f"pause {plain(line.pause)} s"
    if segment.load is not None and segment.load.handling is Handling.PAIR:
        yield "per hand"
    if segment.load is not None and segment.load.spread is not None:
        yield f"models give {'-'.join(plain(end.amount) for end in segment.load.spread)} {segment.load.mass.unit.value}"
    if line.advance is not None:
        yield line.advance if line.advance.startswith("advance") else f"advance {line.advance}"
    yield from line.notes


def _volume_row(row: MuscleWeek) -> tuple[str, ...]:
    return (
        str(row.week),
        row.muscle.word,
        plain(row.direct_sets),
        plain(row.fractional_sets),
        str(row.sessions),
        plain(row.max_session_sets),
        "" if row.rest_h_min is None else str(row.rest_h_min),
    )
