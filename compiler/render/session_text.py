"""A session as plain text, in the sheet's words, for places that know neither tables nor markup.

Comes in: a session as it is arranged. Goes out: lines of text, without no-break spaces.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.render import words
from setwright.render.language import Language
from setwright.render.sheet import Row, SessionSheet, Station


def session_text(session: SessionSheet, language: Language) -> str:
    """Cautions and notes first, then the movements by number, each with its sets and remarks."""
    return "\n".join(_lines(session, language)).replace(words.NO_BREAK, " ")


def _lines(session: SessionSheet, language: Language) -> Iterator[str]:
    if session.minutes:
        yield session.minutes
    for head, said in session.cautions:
        yield words.headed(head, said, language)
    yield from session.notes
    for part in session.parts:
        yield ""
        if part.heading:
            yield part.heading
        for station in part.stations:
            yield from _station(station, language)


def _station(station: Station, language: Language) -> Iterator[str]:
    aside = [
        *filter(None, (station.instead, station.label)),
        *([language.text("optional")] if station.optional else []),
        *([language.text("projected")] if station.projected else []),
    ]
    yield f"{station.order}. {station.name}" + (f" ({', '.join(aside)})" if aside else "")
    if station.warm_up:
        yield "   " + words.headed(language.text("warm-up"), ", ".join(station.warm_up), language)
    for row in station.rows:
        yield f"   {_row(row, language)}"
    if station.manner:
        yield "   " + ", ".join(station.manner)
    for remark in station.remarks:
        yield "   " + (words.headed(remark.head, remark.text, language) if remark.head else remark.text)


def _row(row: Row, language: Language) -> str:
    lead = f"{row.lead} " if row.lead else ""
    side = f" {words.per_side(language)}" if row.per_side else ""
    effort = f" @ {row.effort}" if row.effort else ""
    return f"{lead}{row.dose}{side}{effort}" + _load(row, language)


def _load(row: Row, language: Language) -> str:
    if not row.load:
        return ""
    discs = " + ".join(disc.number for disc in row.discs)
    about = [
        *filter(None, (row.spread, row.aside)),
        *([words.headed(language.text("each side"), discs, language)] if discs else []),
    ]
    return f": {row.load}" + (f" ({'; '.join(about)})" if about else "")
