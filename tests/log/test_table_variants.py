"""Three sessions as many programs and people would write them: either those sessions come out, or a clear message.

The variants are made here, each with what has to become of it: all sessions; all but the rows that were spoilt, which
are told with their lines; or a refusal.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from itertools import product
from pathlib import Path

import pytest

from setwright.cli.importing import Import, imported, sessions_of
from setwright.diagnostics import Severity
from setwright.files import Files
from setwright.log.model import SessionDone
from setwright.log.words import set_words
from setwright.pipeline import compiled
from setwright.record import record
from setwright.syntax import LineReader

READER = LineReader()
LOG = b"exercise Squat\nexercise Pull-Up\nexercise Plank\n"

# day, exercise, load, unit, reps, effort, note
ROWS = (
    ((2027, 1, 4), "Squat", "72.5", "kg", "5", "8", "Café, then “rain”"),
    ((2027, 1, 4), "Squat", "72.5", "kg", "5", "8.5", ""),
    ((2027, 1, 13), "Pull-Up", "bodyweight + 2.5", "kg", "8/side", "2 RIR", '"Slow"; then, fast'),
    ((2027, 1, 13), "Plank", "", "", "40 s", "", ""),
    ((2027, 1, 25), "Squat", "155", "lb", "(1+1+1)", "9", "=1+1"),
)
DONE = {
    ("2027-01-04", "Squat", "72.5 kg x 5 @ RPE 8"),
    ("2027-01-04", "Squat", "72.5 kg x 5 @ RPE 8.5"),
    ("2027-01-13", "Pull-Up", "bodyweight + 2.5 kg x 8/side @ 2 RIR"),
    ("2027-01-13", "Plank", "40 s"),
    ("2027-01-25", "Squat", "155 lb x (1+1+1) @ RPE 9"),
}
NOTES = ["Café, then “rain”", '"Slow"; then, fast', "=1+1"]

HEADERS = {
    "as sheets": ("date", "exercise", "load", "unit", "reps", "effort", "note"),
    "synonyms": ("Day", "Movement", "WEIGHT", "Units", "Repetitions", "RPE", "Notes"),
    "lifts": ("DATE", "lift", "Load", "unit", "reps", "Effort", "Comment"),
}
ENCODINGS = {
    "utf-8": "utf-8",
    "utf-8 with mark": "utf-8-sig",
    "utf-16": "utf-16",
    "utf-16 big": "utf-16-be",
    "windows": "cp1252",
}
DATES = {
    "iso": "{0:04}-{1:02}-{2:02}",
    "slashes": "{0:04}/{1:02}/{2:02}",
    "points": "{2:02}.{1:02}.{0:04}",
    "day first": "{2}/{1}/{0}",
    "month first": "{1:02}/{2:02}/{0}",
    "with a time": "{0:04}-{1:02}-{2:02} 18:30",
}
ENDS = {"crlf": "\r\n", "lf": "\n", "cr": "\r"}


@record
class Variant:
    """A table, what comes out of it, and the lines that are told. `refused` where nothing comes out."""

    name: str
    content: bytes
    done: frozenset[tuple[str, str, str]] = frozenset(DONE)
    lines: tuple[int, ...] = ()
    refused: bool = False


def table(
    rows: tuple[tuple[str, ...], ...] | None = None,
    *,
    header: str = "as sheets",
    separator: str = ",",
    date: str = "iso",
    comma: bool = False,
    end: str = "\r\n",
    quoting: int = csv.QUOTE_MINIMAL,
) -> str:
    """The table in one of its ways."""
    out = io.StringIO()
    writer = csv.writer(out, delimiter=separator, lineterminator=end, quoting=quoting)  # type: ignore[arg-type]
    writer.writerow(HEADERS[header])
    writer.writerows(rows if rows is not None else cells(date, comma=comma))
    return out.getvalue()


def cells(date: str = "iso", *, comma: bool = False) -> tuple[tuple[str, ...], ...]:
    """The rows as text."""
    return tuple((DATES[date].format(*day), *_figures(rest[:5], comma), rest[5]) for day, *rest in ROWS)


def _figures(values: list[str], comma: bool) -> list[str]:
    return [value.replace(".", ",") if comma else value for value in values]


def coded(text: str, encoding: str) -> bytes:
    """The text in an encoding; big-endian UTF-16 with its mark."""
    return (b"\xfe\xff" if encoding == "utf-16 big" else b"") + text.encode(ENCODINGS[encoding])


def good() -> Iterator[Variant]:
    """What many programs write: nothing of it may be lost."""
    for encoding, separator, comma, date in product(ENCODINGS, ",;\t", (False, True), DATES):
        name = f"{encoding}, {separator!r}, {'comma' if comma else 'point'}, {date}"
        header = list(HEADERS)[len(name) % len(HEADERS)]
        end = list(ENDS.values())[len(name) % len(ENDS)]
        quoting = (csv.QUOTE_MINIMAL, csv.QUOTE_ALL)[len(date) % 2]
        text = table(header=header, separator=separator, date=date, comma=comma, end=end, quoting=quoting)
        yield Variant(name, coded(text, encoding))
    plain = table()
    lines = plain.split("\r\n")
    yield Variant(
        "mixed line ends", "".join(one + end for one, end in zip(lines, "\r\n\n\r\r\n", strict=False)).encode()
    )
    yield Variant("no line end at the end", plain.rstrip("\r\n").encode())
    yield Variant("empty lines", ("\r\n\r\n" + plain.replace("\r\n", "\r\n\r\n")).encode())
    yield Variant("rows of separators", plain.replace("\r\n", "\r\n,,,,,,\r\n").encode())
    yield Variant("a line that names the separator", ("sep=;\r\n" + table(separator=";")).encode())
    yield Variant("blanks around cells", table(tuple(tuple(f"  {cell} " for cell in row) for row in cells())).encode())
    yield Variant("cells cut off at the end", plain.replace(",,\r\n", "\r\n").replace(",\r\n", "\r\n").encode())
    yield Variant("empty cells past the end", plain.replace("\r\n", ",,\r\n").encode())
    guarded = tuple(tuple(f"'{cell}" if cell.startswith("=") else cell for cell in row) for row in cells())
    yield Variant("guards against formulas", table(guarded).encode())
    figures = tuple((row[0], row[1], *(f"'{cell}" if cell else "" for cell in row[2:6]), row[6]) for row in cells())
    yield Variant("guards before all figures", table(figures).encode())
    units = tuple((*row[:2], f"{row[2]} {row[3]}".strip(), "", *row[4:]) for row in cells())
    yield Variant("units in the cells", table(units).encode())
    pounds = tuple((*row[:2], row[2] and f"{row[2]}{row[3]}s", "", *row[4:]) for row in cells())
    yield Variant("units of several forms", table(pounds).encode())
    yield Variant("efforts in words", table(tuple((*r[:5], _worded(r[5]), r[6]) for r in cells())).encode())
    yield Variant("small letters", table(tuple((r[0], r[1].lower(), *r[2:]) for r in cells())).encode())
    yield Variant("months by name", table(tuple((f"{int(r[0][8:])} Jan 2027", *r[1:]) for r in cells())).encode())
    yield Variant("months first by name", table(tuple((f"January {r[0][8:]}, 2027", *r[1:]) for r in cells())).encode())
    order = [6, 3, 1, 0, 5, 4, 2]
    mixed = [",".join(_quoted(row[at]) for at in order) for row in (HEADERS["as sheets"], *cells())]
    yield Variant("columns in another order", "\n".join(mixed).encode())
    yield Variant("a column of numbers", plain.replace("\r\n", ",1\r\n").replace("note,1", "note,set", 1).encode())


def _worded(effort: str) -> str:
    return f"@{effort}" if effort.isdigit() else f"rpe {effort}" if effort and "RIR" not in effort else effort.lower()


def _quoted(cell: str) -> str:
    return '"' + cell.replace('"', '""') + '"'


def spoilt() -> Iterator[Variant]:
    """One row that cannot be told, among others that can: those come out, and its line is told."""
    wrong = {
        "exercise": (1, ("Sqat", "=Squat", "Sled Push", "Squat 5x5", "\x01")),
        "load": (
            2,
            ("1.234,5", "1,250", "1 250", "=70+2", "70-75", "abc", "-70", "0", "70 stone", "1500", "70 lb", "7e1"),
        ),
        "unit": (3, ("stone", "g")),
        "reps": (4, ("", "5-6", "5.5", "five", "5+", "-5", "=5", "99999", "1,000", "5 x 3", "AMRAP")),
        "effort": (5, ("11", "0", "7-8", "hard", "RPE 8 RIR 2", "=8", "80%")),
        "date": (
            0,
            ("2027-02-30", "", "46391", "1985-01-04", "2150-01-04", "4/1/27", "=TODAY()", "soon", "27-1-4", "Mon"),
        ),
    }
    for what, (at, values) in wrong.items():
        for value, separator in product(values, ",;"):
            rows = list(cells())
            rows[0] = (*rows[0][:at], value, *rows[0][at + 1 :])
            yield _without_first(f"{what} {value!r} {separator}", table(tuple(rows), separator=separator))
    lines = table().split("\r\n")
    ragged = {
        "a decimal comma that is no separator": lines[1].replace("72.5", "72,5"),
        "too many cells": lines[1] + ",more,still more",
        "a quotation mark within": lines[1].replace("Squat", 'Sq"uat'),
        "a quotation mark that stays open": '"' + lines[1].replace('"', ""),
        "a long cell": lines[1].replace("Squat", "Squat" * 100),
    }
    for name, line in ragged.items():
        yield _without_first(name, "\r\n".join((lines[0], line, *lines[2:])))


def _without_first(name: str, text: str) -> Variant:
    return Variant(name, text.encode(), frozenset(DONE - {("2027-01-04", "Squat", "72.5 kg x 5 @ RPE 8")}), (2,))


def refused() -> Iterator[Variant]:
    """What could only be guessed at."""
    days_only = tuple(("04/05/2027", *row[1:]) for row in cells())
    mixed = tuple(
        (f"{day}/2027", *row[1:]) for day, row in zip(("13/1", "1/13", "2/2", "2/2", "2/2"), cells(), strict=True)
    )
    tables = {
        "days or months": table(days_only),
        "days and months": table(mixed),
        "no header": table().split("\r\n", 1)[1],
        "no dates": table().replace("date", "when?", 1),
        "no repetitions": table().replace("reps", "repz", 1),
        "nothing": "",
        "only blank lines": "\n\n \n",
        "a page": "<html><body>date, exercise and reps</body></html>",
    }
    for name, text in tables.items():
        yield Variant(name, text.encode(), frozenset(), refused=True)
    for name, content in {
        "utf-16 without a mark": table().encode("utf-16-le"),
        "half of utf-16": table().encode("utf-16")[:-1],
        "utf-32": table().encode("utf-32"),
        "no text": bytes(range(1, 256)),
        "utf-8 with a mark and then not": b"\xef\xbb\xbf" + table().encode("cp1252"),
    }.items():
        yield Variant(name, content, frozenset(), refused=True)


GOOD, SPOILT, REFUSED = (tuple(made) for made in (good(), spoilt(), refused()))


def test_there_are_many() -> None:
    assert len(GOOD) + len(SPOILT) + len(REFUSED) >= 250
    assert len({one.content for one in (*GOOD, *SPOILT, *REFUSED)}) >= 250


@pytest.mark.parametrize("variant", GOOD, ids=lambda one: one.name)
def test_all_of_it_comes_out(variant: Variant) -> None:
    taken = take(variant)
    assert sets_in(taken) == variant.done
    assert notes_in(taken) == NOTES
    assert {one.code.number for one in taken.diagnostics} <= {"SW1109"}
    assert ("SW1109" in {one.code.number for one in taken.diagnostics}) == variant.name.startswith("windows")
    comments = [line.strip() for line in text_of(taken).splitlines() if line.strip().startswith("#")]
    assert all(one.startswith("# not read: date: 2027-01-") for one in comments)  # the times of day, and nothing else
    assert bool(comments) == variant.name.endswith("with a time")


@pytest.mark.parametrize("variant", SPOILT, ids=lambda one: one.name)
def test_one_row_is_told_and_kept_and_the_others_come_out(variant: Variant) -> None:
    taken = take(variant)
    assert sets_in(taken) == variant.done
    told = [one for one in taken.diagnostics if one.code.number == "SW1107"]
    assert tuple(one.span.line for one in told) == variant.lines
    kept = [line for line in text_of(taken).splitlines() if "# not read: " in line]
    assert len(kept) == 1
    assert "72" in kept[0] or "kg" in kept[0]


@pytest.mark.parametrize("variant", REFUSED, ids=lambda one: one.name)
def test_it_is_refused_with_a_reason(variant: Variant) -> None:
    taken = take(variant)
    assert taken.after is None
    (why,) = [one for one in taken.diagnostics if one.severity is Severity.ERROR]
    assert why.code.number == "SW1106"
    assert len(why.message) > len("this table is not taken in: ")


@pytest.mark.parametrize("variant", [*GOOD[::9], *SPOILT[::5]], ids=lambda one: one.name)
def test_a_second_time_adds_nothing(variant: Variant) -> None:
    first = take(variant)
    assert first.after is not None
    again = imported(variant.content, "rows.csv", first.after, "log.plan", reader=READER)
    assert again.after == first.after
    assert again.sets == 0


def test_doubtful_dates_are_taken_in_as_is_said() -> None:
    content = table(tuple(("04/05/2027", *row[1:]) for row in cells())).encode()
    for order, day in (("day-first", "2027-05-04"), ("month-first", "2027-04-05")):
        taken = imported(content, "rows.csv", LOG, "log.plan", dates=order)
        assert {one[0] for one in sets_in(taken)} == {day}


def test_dates_that_are_the_same_either_way_are_not_doubtful() -> None:
    content = table(tuple(("05/05/2027", *row[1:]) for row in cells())).encode()
    assert {one[0] for one in sets_in(imported(content, "rows.csv", LOG, "log.plan"))} == {"2027-05-05"}


def test_a_unit_may_be_said_for_the_whole_table() -> None:
    content = b"date,exercise,load,reps\n2027-01-04,Squat,60,5\n2027-01-04,Squat,60 lb,5\n"
    without = imported(content, "rows.csv", LOG, "log.plan")
    assert [one.message for one in without.diagnostics] == [
        "this row was kept as a comment: `60` has no unit: kg or lb"
    ]
    taken = imported(content, "rows.csv", LOG, "log.plan", unit="kg")
    assert {one[2] for one in sets_in(taken)} == {"60 kg x 5", "60 lb x 5"}


def take(variant: Variant) -> Import:
    """The table taken into a log that only knows its movements."""
    taken = imported(variant.content, "rows.csv", LOG, "log.plan", reader=READER)
    assert taken.after is None or taken.after.startswith(LOG)
    return taken


def text_of(taken: Import) -> str:
    """The log's new text."""
    assert taken.after is not None, [one.message for one in taken.diagnostics]
    return taken.after.decode()


def sets_in(taken: Import) -> set[tuple[str, str, str]]:
    """Day, movement and words of each set in the log, none of them twice."""
    found = [
        (session.day.isoformat(), line.movement.name, set_words(one))
        for session in sessions_in(taken)
        for line in session.lines
        for one in line.sets
    ]
    assert len(found) == len(set(found)) == taken.sets
    return set(found)


def sessions_in(taken: Import) -> tuple[SessionDone, ...]:
    """The sessions of the log's new text."""
    return sessions_of(compiled("log.plan", Files(Path.cwd()), READER, text=text_of(taken)), "log.plan")


def notes_in(taken: Import) -> list[str]:
    """All notes by day."""
    return [note for session in sessions_in(taken) for note in session.notes]
