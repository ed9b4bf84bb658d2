"""A table of sessions taken into a log.

Comes in: the bytes of a table and of a log. Goes out: the log's new bytes, whose beginning are the old ones.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING
from unicodedata import normalize

from setwright.cli.trouble import Trouble
from setwright.diagnostics import Severity
from setwright.log.words import on_one_line
from setwright.record import record

if TYPE_CHECKING:
    from collections.abc import Callable

    from setwright.diagnostics import Diagnostic
    from setwright.link.library import Library
    from setwright.log.merging import Named
    from setwright.log.model import SessionDone, SetDone
    from setwright.log.table import Table
    from setwright.pipeline import Compiled
    from setwright.syntax import LineReader
    from setwright.syntax.nodes import Name


@record
class Import:
    """What taking in a table comes to. `after` is None where the table was refused."""

    after: bytes | None
    sets: int
    known_sets: int
    diagnostics: tuple[Diagnostic, ...]


def imported(
    table: bytes,
    shown: str,
    log: bytes,
    path: str,
    *,
    root: str | None = None,
    unit: str | None = None,
    dates: str | None = None,
    reader: LineReader | None = None,
) -> Import:
    """The log with what the table has and it has not. Nothing is written, and the log's own bytes are not touched."""
    from setwright.log.merging import merged
    from setwright.syntax import LineReader

    read = _read(table, shown, unit, dates)
    if isinstance(read, Import):
        return read
    rows, notes = read
    reader = reader or LineReader()
    compiled = _compiled(log, path, root, reader)
    if compiled.has_errors:
        return Import(None, 0, 0, (*notes, *compiled.diagnostics))
    text = log.decode("utf-8-sig")
    made = merged(sessions_of(compiled, path), text.splitlines(), rows, _namer(compiled, path), _possible(reader))
    after = _appended(log, made.lines)
    told = (*notes, *rows.diagnostics, *made.diagnostics)
    if after != log:
        _check_result(_compiled(after, path, root, reader), path)
    return Import(after, made.sets, made.known_sets, told)


# ---- the steps -----------------------------------------------------------------------------------


def sessions_of(compiled: Compiled, path: str) -> tuple[SessionDone, ...]:
    """The sessions that the file itself holds, by day, whoever's they are."""
    from setwright.link.logs import linked_logs

    if compiled.library is None:
        return ()
    own = [unit for unit in compiled.units if not unit.shipped and unit.parsed.source.path == path]
    logs = linked_logs(own, (path,), (), compiled.library, [])
    return tuple(sorted((one for log in logs.values() for one in log.sessions), key=lambda one: one.day))


def _read(table: bytes, shown: str, unit: str | None, dates: str | None) -> Import | tuple[Table, list[Diagnostic]]:
    """The table, and what is to be said of it before; or that it was refused."""
    from setwright.diagnostics.catalogue import logs as codes
    from setwright.log.decoding import WINDOWS, decoded_table
    from setwright.log.readings import DateOrder
    from setwright.log.table import read_table
    from setwright.source import Source, Span

    text = decoded_table(table)
    source = Source(shown, text.text)
    first = Span(source, 1, 0, len(source.line(1)))
    if text.trouble is not None:
        return Import(None, 0, 0, (codes.TABLE_REFUSED.at(first, reason=text.trouble),))
    notes = [codes.GUESSED_ENCODING.at(first)] if text.encoding == WINDOWS else []
    rows = read_table(source, unit, DateOrder(dates) if dates else None)
    if any(found.severity is Severity.ERROR for found in rows.diagnostics):
        return Import(None, 0, 0, (*notes, *rows.diagnostics))
    return rows, notes


def _compiled(log: bytes, path: str, root: str | None, reader: LineReader) -> Compiled:
    from pathlib import Path

    from setwright.files import Files, find_root
    from setwright.pipeline import compiled

    files = Files(Path(root) if root else find_root(Path(path)))
    return compiled(path, files, reader, text=log.decode("utf-8", "surrogateescape"))


def _namer(compiled: Compiled, path: str) -> Callable[[str], Named]:
    """Finds the movements that the log's file can name."""
    from setwright.log.merging import Named
    from setwright.log.words import written_name
    from setwright.source import Source, Span
    from setwright.syntax.nodes import Name

    library = compiled.library
    sources = [unit.parsed.source for unit in compiled.units if unit.parsed.source.path == path]
    span = Span(sources[0] if sources else Source(path, ""), 1, 0, 0)

    @cache
    def named(text: str) -> Named:
        plain = normalize("NFC", " ".join(text.split()))
        prefix, point, rest = plain.partition(".")
        if library is not None and (key := library.movement_key(Name(plain, span))) is not None:
            declared = library.movements[key].name
            own = declared if library.movement_key(Name(declared, span)) == key else plain
            return Named(written_name(own), _known(library, Name(plain, span), own))
        if library is not None and point and library.movement_key(Name(plain, span, prefixed=True)) is not None:
            return Named(f"{prefix}.{written_name(rest)}", _known(library, Name(plain, span, prefixed=True), plain))
        near = library.near_movements(Name(plain, span)) if library is not None else None
        return Named(trouble=f"there is no movement `{on_one_line(plain)}`" + (f"; {_lower(near)}" if near else ""))

    return named


def _known(library: Library, name: Name, written: str) -> str:
    movement = library.movement(name, [])
    return movement.name if movement is not None else written


def _lower(help_: str) -> str:
    """Help as the end of a sentence."""
    return help_[:1].lower() + help_[1:].rstrip(".")


def _possible(reader: LineReader) -> Callable[[SetDone], bool]:
    """Whether a set can be an entry of a log: the language's own reader decides, once for sets alike."""
    from setwright.link.done import sets_done
    from setwright.log.words import set_words
    from setwright.source import Source
    from setwright.syntax.nodes import Entry

    @cache
    def possible(one: SetDone) -> bool:
        parsed = reader.read(Source("", f"session 2000-01-01\n  A: {set_words(one)}\n"))
        entry = parsed.statements[0].body[0].node if not parsed.diagnostics else None
        return isinstance(entry, Entry) and sets_done(entry.prescription) == (one,)

    return possible


def _appended(log: bytes, lines: tuple[str, ...]) -> bytes:
    """The log with lines at its end, which end as its own do."""
    if not lines:
        return log
    end = "\r\n" if b"\r\n" in log else "\n"
    start = "" if not log or log.endswith((b"\n", b"\r")) else end
    return log + (start + "".join(line + end for line in lines)).encode()


def _check_result(compiled: Compiled, path: str) -> None:
    """The log as it would be has to be one; else it is our fault, and nothing is written."""
    wrong = next((found for found in compiled.diagnostics if found.severity is Severity.ERROR), None)
    if wrong is not None:
        raise Trouble(f"{path}: a fault in setwright itself: the log would not be right ({wrong.message}); not written")
