"""One session for a terminal of 80 columns: warm-ups first, sets in columns, discs as numbers.

Comes in: a sheet of one session, and what is said over it. Goes out: lines of text with a line end, without colour.
"""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap
from typing import Final

from setwright.render import keys, words
from setwright.render.language import Language
from setwright.render.sheet import Row, SessionSheet, Sheet, Station, WeekSheet

WIDTH: Final = 80
_INDENT: Final = " " * 4
_RULE: Final = "\u2500" * WIDTH


def text(arranged: Sheet, which: str, nearness: str | None, language: Language) -> str:
    """The session, then the cautions that hold for all. `which` is its number, `nearness` stands beside its date."""
    (week,) = arranged.weeks
    (session,) = week.sessions
    lines = (
        *_head(arranged, language, which, nearness),
        *_session(week, session, language),
        *_foot(arranged, language),
    )
    return "\n".join(line.replace(words.NO_BREAK, " ").rstrip() for line in lines) + "\n"


def _head(arranged: Sheet, language: Language, which: str, nearness: str | None) -> Iterator[str]:
    (week,) = arranged.weeks
    (session,) = week.sessions
    yield from _folded(" \u2013 ".join(filter(None, (arranged.name, arranged.athlete))), "")
    day = words.headed(session.day, session.label, language) if session.label else session.day
    date = language.day(session.date) if session.date else None
    when = f"{date} ({nearness})" if date and nearness else date
    yield from _folded(_apart(day, when, session.minutes), "")
    number = language.text("Week {number}").format(number=week.number)
    yield from _folded(_apart(words.headed(number, f"{week.block}, {week.place}", language), which), "")
    yield _RULE


def _apart(*said: str | None) -> str:
    return " \u00b7 ".join(part for part in said if part)


def _session(week: WeekSheet, session: SessionSheet, language: Language) -> Iterator[str]:
    above = [
        *([f"{week.name}. {week.banner}"] if week.banner else []),
        *(f"{head}. {text}" for head, text in (*week.cautions, *session.cautions)),
        *week.notes,
        *session.notes,
    ]
    for one in above:
        yield from _folded(one, "")
    if above:
        yield ""
    rows = [row for part in session.parts for station in part.stations for row in station.rows]
    columns = _Columns(rows, language)
    for part in session.parts:
        if part.heading:
            yield from _folded(part.heading, "")
        for station in part.stations:
            yield from _station(station, columns, language)
            yield ""


def _station(station: Station, columns: _Columns, language: Language) -> Iterator[str]:
    aside = [
        *filter(None, (station.label, station.instead)),
        *([language.text("optional")] if station.optional else []),
        *([language.text("projected")] if station.projected else []),
    ]
    yield from _folded(f"{station.order:>2}  {station.name}" + (f" ({', '.join(aside)})" if aside else ""), "", _INDENT)
    if station.warm_up:
        head = language.text("Warm-up")
        yield from _folded(f"{head}  {', '.join(station.warm_up)}", _INDENT, " " * (len(_INDENT) + len(head) + 2))
    for row in station.rows:
        yield from columns.row(row)
    if station.manner:
        yield from _folded(_apart(*station.manner), _INDENT)
    for remark in station.remarks:
        yield from _folded(words.headed(remark.head, remark.text, language) if remark.head else remark.text, _INDENT)


def _foot(arranged: Sheet, language: Language) -> Iterator[str]:
    yield _RULE
    yield from _folded(language.text(keys.EFFORT_LINE), "")
    yield ""
    for head, said in arranged.cautions:
        yield from _folded(f"{head}. {said}", "", "  ")


class _Columns:
    """Dose, load, effort and discs below each other, each column as wide as this session needs."""

    def __init__(self, rows: list[Row], language: Language) -> None:
        self._language = language
        made = [self._cells(row) for row in rows]
        self._widths = [max(map(len, cells)) for cells in zip(*made, strict=True)]

    def row(self, row: Row) -> Iterator[str]:
        """The line of a row; what its load is made of goes below where there is no room."""
        cells = [cell.ljust(width) for cell, width in zip(self._cells(row), self._widths, strict=True)]
        line = _INDENT + "  ".join(cell for cell, width in zip(cells, self._widths, strict=True) if width)
        about = self._about(row)
        if not about or len(line) + 2 + len(about) <= WIDTH:
            yield f"{line}  {about}"
            return
        yield line
        yield from _folded(about, _INDENT * 2)

    def _cells(self, row: Row) -> tuple[str, str, str]:
        side = f" {words.per_side(self._language)}" if row.per_side else ""
        lead = f"{row.lead} " if row.lead else ""
        load = row.load or (f"____ {row.blank}" if row.blank else "")
        return f"{lead}{row.dose}{side}", load, f"@ {row.effort}" if row.effort else ""

    def _about(self, row: Row) -> str:
        discs = " + ".join(disc.number for disc in row.discs)
        said = [
            *filter(None, (f"({row.spread})" if row.spread else None, row.aside)),
            *([words.headed(self._language.text("each side"), discs, self._language)] if discs else []),
        ]
        return "; ".join(said)


def _folded(said: str, first: str, then: str | None = None) -> list[str]:
    """Text over as many lines as it needs; quantities stay whole at their no-break spaces."""
    after = first if then is None else then
    return wrap(said, WIDTH, initial_indent=first, subsequent_indent=after, break_on_hyphens=False) or [""]
