"""The header of a table: which column says what, under whatever name it has.

Comes in: the header's cells. Goes out: `Columns`; the names that are understood are the table in chapter 19 of the
reference.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from setwright.log.cells import SEPARATORS, Row, rows_of
from setwright.record import record

# What a column means, and the names it may have, in any letter case and with any of `-_.` or blanks between the words.
KNOWN: Final = {
    "date": ("date", "day"),
    "slot": ("slot", "planned session"),
    "exercise": ("exercise", "movement", "lift"),
    "exercise_label": ("exercise label", "label"),
    "set": ("set", "set number"),
    "sets": ("sets",),
    "load": ("load", "weight", "kg", "lb"),
    "unit": ("unit", "units"),
    "reps": ("reps", "repetitions"),
    "effort": ("effort", "rpe", "rir"),
    "note": ("note", "notes", "comment", "comments"),
    "test": ("test",),
    "session_effort": ("session effort",),
    "session_min": ("session min",),
}
NEEDED: Final = ("date", "exercise", "reps")

_MEANING: Final = {name: meaning for meaning, names in KNOWN.items() for name in names}
_UNIT_IN_NAME = re.compile(r"(?P<name>.*?)\s*[(\[]?\s*(?P<unit>kg|lbs?)\s*[)\]]?")
_SEPARATOR_LINE = re.compile(r"sep=(.)\n", re.IGNORECASE)


@record
class Column:
    """One column: what it means (None where nobody knows) and its name; the unit or the scale its name gives."""

    meaning: str | None
    name: str
    gives: str | None = None


@record
class Header:
    """The columns of a table, and what stands between its cells."""

    separator: str
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]  # those under the header

    @property
    def missing(self) -> tuple[str, ...]:
        """What no table can be without, and this one has not."""
        meanings = {column.meaning for column in self.columns}
        return tuple(meaning for meaning in NEEDED if meaning not in meanings)


def header_of(text: str) -> Header:
    """The table with the separator under which its header has most known names; commas where none is known."""
    named = _SEPARATOR_LINE.match(text)  # some spreadsheets write and read such a line before the header
    separators = (named.group(1),) if named and named.group(1) in SEPARATORS else SEPARATORS
    found = [_header(text, separator, skip=named is not None) for separator in separators]
    return max(found, key=lambda header: sum(column.meaning is not None for column in header.columns))


def _header(text: str, separator: str, *, skip: bool) -> Header:
    first, *rows = [*_filled(text, separator)][skip:] or [Row(1, (), "")]
    return Header(separator, tuple(_column(cell) for cell in first.cells), tuple(rows))


def _filled(text: str, separator: str) -> Iterator[Row]:
    yield from (row for row in rows_of(text, separator) if not row.is_empty)


def _column(cell: str) -> Column:
    name = " ".join(re.split(r"[\s_.\-]+", cell.strip().casefold())).strip()
    if name in _MEANING:
        gives = {"kg": "kg", "lb": "lb", "rir": "RIR", "rpe": "RPE"}.get(name)
        return Column(_MEANING[name], cell.strip(), gives)
    with_unit = _UNIT_IN_NAME.fullmatch(name)
    if with_unit and _MEANING.get(with_unit["name"]) == "load":
        return Column("load", cell.strip(), with_unit["unit"].removesuffix("s"))
    return Column(None, cell.strip())
