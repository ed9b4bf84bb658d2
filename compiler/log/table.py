"""Sessions as a table (CSV, RFC 4180), one row a set, and back.

Comes in: sessions, or the text of a table. Goes out: the text of a table, or its rows as sets done. A row that
cannot be read is kept as it is, with the reason. Columns, dates and numbers are as chapter 19 of the reference says.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date
from fractions import Fraction

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import logs as codes
from setwright.log import readings as read
from setwright.log.cells import Row, cell_text, guarded, unguarded
from setwright.log.columns import KNOWN, Column, Header, header_of
from setwright.log.model import LineDone, SessionDone, SetDone
from setwright.log.readings import AmbiguousDatesError, DateOrder, UnclearCellError
from setwright.log.words import effort_words, exact, load_words, note_parts, on_one_line, reps_words
from setwright.prescription import Bodyweight, Weight
from setwright.record import record
from setwright.source import Source, Span
from setwright.suggest import did_you_mean

# What a log has besides (a test, the whole session's effort and minutes) comes after the columns that sheets write.
COLUMNS = (
    *("date", "slot", "exercise", "exercise_label", "set", "load", "unit", "reps", "effort", "note"),
    *("test", "session_effort", "session_min"),
)
LONGEST_CELL = 200  # characters, of all but notes
FIRST_DAY, LAST_DAY = date(1990, 1, 1), date(2099, 12, 31)


@record
class RowDone:
    """One row as it was read, and its `text`. `movement` is as written; empty in a row that holds a note alone.

    `asides` are what stands in columns that nobody knows, with their names.
    """

    span: Span
    text: str
    day: date
    week: int | None
    slot: str | None
    movement: str
    label: str | None
    sets: tuple[SetDone, ...]
    note: str = ""
    is_test: bool = False
    effort: Fraction | None = None  # of the whole session
    minutes: Fraction | None = None
    asides: tuple[tuple[str, str], ...] = ()


@record
class UnreadRow:
    """A row that could not be read, and why; `day` where that could."""

    span: Span
    text: str
    reason: str
    day: date | None = None


@record
class Table:
    """All rows of a table in order, and what has to be said of it. `remarks` are comments that a sheet had kept.

    Where the diagnostics hold an error the table was refused, and no row is there.
    """

    rows: tuple[RowDone | UnreadRow, ...]
    remarks: tuple[str, ...]
    diagnostics: tuple[Diagnostic, ...]


# ---- out -----------------------------------------------------------------------------------------


def exported(sessions: Iterable[SessionDone]) -> str:
    """The table of sessions, with line ends after RFC 4180. What is said of a session stands on its first row."""
    rows = (row for session in sessions for row in _session_rows(session))
    return "".join(",".join(cell_text(cell) for cell in row) + "\r\n" for row in (COLUMNS, *rows))


def _session_rows(session: SessionDone) -> Iterator[tuple[str, ...]]:
    said = f"w{session.week}-{session.slot}" if session.week is not None and session.slot is not None else ""
    whole = ["" if value is None else exact(value) for value in (session.effort, session.minutes)]
    first = [guarded("\n".join(session.notes)), *whole]
    numbers: dict[tuple[str, str | None], int] = {}
    sets = [(line, one) for line in session.lines for one in line.sets]
    for at, (line, one) in enumerate(sets):
        key = (line.movement.name, line.label)
        numbers[key] = numbers.get(key, 0) + 1
        note, *rest = ["", "", ""] if at else first
        test = "yes" if line.is_test else ""
        yield (session.day.isoformat(), said, *_set_cells(line, one, numbers[key]), note, test, *rest)
    if not sets:
        yield (session.day.isoformat(), said, *([""] * 7), first[0], "", *first[1:])


def _set_cells(line: LineDone, one: SetDone, number: int) -> tuple[str, ...]:
    match one.load:
        case Weight(mass=mass):
            load, unit = exact(mass.amount), mass.unit.value
        case Bodyweight(added=added) if added is not None:
            load, unit = load_words(one.load).removesuffix(f" {added.unit.value}"), added.unit.value
        case _:
            load, unit = load_words(one.load), ""
    names = guarded(line.movement.name), guarded(line.label or "")
    return *names, str(number), load, unit, reps_words(one.reps), effort_words(one.effort)


# ---- in ------------------------------------------------------------------------------------------


def read_table(source: Source, unit: str | None = None, order: DateOrder | None = None) -> Table:
    """The rows of a table. `unit` is that of loads without one, `order` that of dates that do not tell.

    A header that lacks what no table can be without, and dates that nothing decides, refuse the whole table.
    """
    header = header_of(source.text)
    problems = [*_header_problems(header, source)]
    if not any(problem.severity is codes.TABLE_REFUSED.severity for problem in problems):
        reader = _Reader(header, source, unit, order)
        if reader.refused is None:
            found = [*reader.rows()]
            remarks = tuple(dict.fromkeys(one for one in found if isinstance(one, str)))
            rows = tuple(one for one in found if not isinstance(one, str))
            return Table(rows, remarks, tuple(problems))
        problems.append(reader.refused)
    return Table((), (), tuple(problems))


def _header_problems(header: Header, source: Source) -> Iterator[Diagnostic]:
    first = Span(source, 1, 0, len(source.line(1)))
    if header.missing:
        known = [name for names in KNOWN.values() for name in names]
        unknown = (column.name for column in header.columns if column.meaning is None)
        near = next((help_ for name in unknown if (help_ := did_you_mean(name, known))), None)
        lacks = " and ".join(f"`{name}`" for name in header.missing)
        yield codes.TABLE_REFUSED.at(first, reason=f"its first row names no column {lacks}", help=near)
        return
    for column in header.columns:
        if column.meaning is None and column.name:
            yield codes.UNKNOWN_COLUMN.at(first, name=on_one_line(column.name)[:LONGEST_CELL])


class _Reader:
    """Reads rows under a header, with what holds for the whole table found out before."""

    def __init__(self, header: Header, source: Source, unit: str | None, order: DateOrder | None) -> None:
        self._header = header
        self._source = source
        self._unit = unit
        self.refused: Diagnostic | None = None
        self._commas = read.has_decimal_commas(self._cells("load", "reps", "effort"))
        self._order = order or self._decided_order()

    def _cells(self, *meanings: str) -> Iterator[str]:
        places = [at for at, column in enumerate(self._header.columns) if column.meaning in meanings]
        for row in self._header.rows:
            yield from (row.cells[at] for at in places if at < len(row.cells) and len(row.cells[at]) <= LONGEST_CELL)

    def _decided_order(self) -> DateOrder | None:
        try:
            orders = read.possible_orders(self._cells("date"))
        except AmbiguousDatesError as doubt:
            reason = f"`{doubt}` and its other dates may begin with the day or with the month"
        else:
            if orders:
                return orders[0]
            reason = "some of its dates begin with the day and some with the month"
        first = Span(self._source, 1, 0, len(self._source.line(1)))
        help_ = "Say `--dates day-first` or `--dates month-first`, or write dates as `2027-01-04`."
        self.refused = codes.TABLE_REFUSED.at(first, reason=reason, help=help_)
        return None

    def rows(self) -> Iterator[RowDone | UnreadRow | str]:
        """Each row, read or not; a string is a comment that a sheet had kept."""
        for row in self._header.rows:
            line = self._source.line(row.line)
            span = Span(self._source, row.line, 0, len(line))
            try:
                yield from self._row(row, span)
            except UnclearCellError as unclear:
                yield UnreadRow(span, row.text, on_one_line(str(unclear)), self._day_of(row))

    def _day_of(self, row: Row) -> date | None:
        try:
            found = read.day(self._by_meaning(row).get("date", (None, ""))[1], self._order)
        except UnclearCellError:
            return None
        return found if FIRST_DAY <= found <= LAST_DAY else None

    def _row(self, row: Row, span: Span) -> Iterator[RowDone | str]:
        if row.broken:
            raise UnclearCellError("a quotation mark stands where none can")
        extra = len(row.cells) - len(self._header.columns)
        if extra > 0 and any(cell.strip() for cell in row.cells[-extra:]):
            raise UnclearCellError(f"it has {len(row.cells)} cells, and the header {len(self._header.columns)}")
        cells = self._by_meaning(row)
        note = unguarded(cells.get("note", (None, ""))[1]).strip()
        if note.startswith("# ") and not any(text for meaning, (_, text) in cells.items() if meaning != "note"):
            yield from (f"# {part.removeprefix('# ')}" for part in note_parts(note))
            return
        yield self._done(row, cells, note, span)

    def _by_meaning(self, row: Row) -> dict[str, tuple[Column | None, str]]:
        """The filled cells by what they mean. Two columns that mean the same may not both say something else."""
        found: dict[str, tuple[Column | None, str]] = {}
        for column, cell in zip(self._header.columns, row.cells, strict=False):
            text = cell.strip()
            if column.meaning is None or not text:
                continue
            if len(text) > LONGEST_CELL and column.meaning != "note":
                raise UnclearCellError(f"a cell under `{column.name}` is longer than {LONGEST_CELL} characters")
            other = found.setdefault(column.meaning, (column, text))
            if other[1] != text or (other[0] is not column and column.gives != (other[0] and other[0].gives)):
                raise UnclearCellError(f"two columns say its {column.meaning.replace('_', ' ')}")
        return found

    def _done(self, row: Row, cells: dict[str, tuple[Column | None, str]], note: str, span: Span) -> RowDone:
        day = read.day(self._text(cells, "date"), self._order)
        if not FIRST_DAY <= day <= LAST_DAY:
            raise UnclearCellError(f"{day} is not from {FIRST_DAY} to {LAST_DAY}")
        asides = [*self._asides(row)]
        said = self._text(cells, "slot")
        place = read.slot(said) if said else None
        if said and place is None:
            asides.append(("slot", said))
        if read.without_time(self._text(cells, "date"))[1]:
            asides.append(("date", self._text(cells, "date")))
        movement = unguarded(self._text(cells, "exercise"))
        sets = self._sets(cells) if movement else self._no_sets(cells)
        effort, minutes = (self._whole(cells, name) for name in ("session_effort", "session_min"))
        if not (movement or note or asides or said) and effort is None:
            raise UnclearCellError("there is no exercise")
        label = unguarded(self._text(cells, "exercise_label")) or None
        is_test = self._yes(cells)
        week, slot = place or (None, None)
        return RowDone(
            *(span, row.text, day, week, slot, movement, label, sets, note, is_test, effort, minutes, tuple(asides))
        )

    def _asides(self, row: Row) -> Iterator[tuple[str, str]]:
        for column, cell in zip(self._header.columns, row.cells, strict=False):
            if column.meaning is None and cell.strip():
                yield on_one_line(column.name or "a column without a name"), on_one_line(cell.strip())

    def _text(self, cells: dict[str, tuple[Column | None, str]], meaning: str) -> str:
        return cells[meaning][1] if meaning in cells else ""

    def _figures(self, cells: dict[str, tuple[Column | None, str]], meaning: str) -> str:
        """The same of a cell of figures, which may be guarded: by a spreadsheet even where it holds no formula."""
        text = self._text(cells, meaning)
        return text[1:].strip() if text.startswith("'") else text

    def _sets(self, cells: dict[str, tuple[Column | None, str]]) -> tuple[SetDone, ...]:
        column = cells.get("load", (None, ""))[0]
        by_name = column.gives if column is not None else None
        stated = self._figures(cells, "unit") or None
        if by_name and stated and by_name != stated.casefold().removesuffix("s"):
            raise UnclearCellError(f"its load stands under `{column.name if column else ''}`, its unit is `{stated}`")
        scale = cells["effort"][0] if "effort" in cells else None
        lifted = self._figures(cells, "load")
        given = stated or by_name or (None if _names_unit(lifted) else self._unit)
        load = read.load(lifted, given, commas=self._commas)
        reps = read.reps(self._figures(cells, "reps"), commas=self._commas)
        effort = read.effort(self._figures(cells, "effort"), scale.gives if scale else None, commas=self._commas)
        count = read.alike(self._text(cells, "sets")) if "sets" in cells else 1
        return (SetDone(load, reps, effort),) * count

    def _no_sets(self, cells: dict[str, tuple[Column | None, str]]) -> tuple[SetDone, ...]:
        """Nothing; a row without a movement holds no figures either."""
        if any(meaning in cells for meaning in ("load", "reps", "effort", "sets", "exercise_label")):
            raise UnclearCellError("there is no exercise")
        return ()

    def _whole(self, cells: dict[str, tuple[Column | None, str]], meaning: str) -> Fraction | None:
        text = self._figures(cells, meaning)
        if not text:
            return None
        value = read.number(text, commas=self._commas)
        if (meaning == "session_effort" and value > 10) or (meaning == "session_min" and not 0 < value <= 1440):
            raise UnclearCellError(f"`{text}` is out of range for `{meaning}`")
        if meaning == "session_min" and "session_effort" not in cells:
            raise UnclearCellError("the minutes of a session go with its effort")
        return value

    def _yes(self, cells: dict[str, tuple[Column | None, str]]) -> bool:
        text = self._text(cells, "test").casefold()
        if text not in ("", "yes", "no", "true", "false", "1", "0", "x"):
            raise UnclearCellError(f"`{text}` under `test`: write `yes` or `no`")
        return text in ("yes", "true", "1", "x")


def _names_unit(load: str) -> bool:
    return load.casefold().rstrip("s").endswith(("kg", "lb"))
