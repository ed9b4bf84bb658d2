"""Laws of logs: a table of a log is the log, importing twice is importing once, the order of files does not matter."""

from __future__ import annotations

import csv
import io
from datetime import date, timedelta
from fractions import Fraction
from pathlib import Path
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.cli.importing import Import, imported, sessions_of
from setwright.files import Files
from setwright.log.identity import done_in
from setwright.log.model import LineDone, SessionDone, SetDone
from setwright.log.table import exported
from setwright.log.words import entry_lines, exact, quoted, session_head, written_name
from setwright.pipeline import compile, compiled
from setwright.plan import Movement
from setwright.prescription import Bodyweight, Effort, Reps, RepsKind, Weight
from setwright.quantities import Mass, Unit
from setwright.source import Source, Span
from setwright.syntax import LineReader

READER = LineReader()
HERE = Span(Source("log.plan", ""), 1, 0, 0)
NAMES = ("Squat", "Pull-Up", "Row 2", "Süß Lift", "=cmd", "-Odd", "kettle, bell;")
LIBRARY = "".join(f"exercise {written_name(name)}\n" for name in NAMES)

halves = st.integers(1, 4000).map(lambda number: Fraction(number, 8))
masses = st.builds(Mass, halves, st.sampled_from(Unit))
loads = st.one_of(
    st.none(),
    st.builds(Weight, masses),
    st.just(Bodyweight()),
    st.builds(lambda mass, sign: Bodyweight(mass.times(Fraction(sign))), masses, st.sampled_from((1, -1))),
)
counts = st.builds(
    lambda n, side: Reps(RepsKind.COUNT, n, n, per_side=side), st.integers(0, 200).map(Fraction), st.booleans()
)
metres = st.builds(lambda n: Reps(RepsKind.METRES, n, n), halves)
seconds = st.builds(lambda n, side: Reps(RepsKind.SECONDS, n, n, per_side=side), halves, st.booleans())
minutes = st.builds(lambda n: Reps(RepsKind.SECONDS, n * 15, n * 15, minutes=True), st.integers(1, 90).map(Fraction))
clusters = st.lists(st.integers(1, 9), min_size=2, max_size=5).map(
    lambda parts: Reps(RepsKind.CLUSTER, Fraction(sum(parts)), Fraction(sum(parts)), tuple(parts))
)
rpes = st.builds(
    lambda half, reserve: Effort(Fraction(half, 2), Fraction(half, 2), as_reserve=reserve),
    st.integers(2, 20),
    st.booleans(),
)
sets = st.builds(SetDone, loads, st.one_of(counts, metres, seconds, minutes, clusters), st.one_of(st.none(), rpes))
texts = st.text(st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Zl", "Zp")), max_size=30).map(
    lambda text: " ".join(text.split())
)
notes = texts.filter(lambda text: text and not text.startswith("# "))
labels = st.one_of(st.none(), st.sampled_from(("light", "=1", "a, b")))
lines = st.builds(
    lambda name, label, done, test: LineDone(Movement(name, HERE), label, tuple(done), HERE, test),
    st.sampled_from(NAMES),
    labels,
    st.lists(sets, min_size=1, max_size=25),
    st.booleans(),
)
wholes = st.one_of(
    st.just((None, None)),
    st.tuples(st.integers(0, 10).map(Fraction), st.one_of(st.none(), st.integers(1, 300).map(Fraction))),
)
sessions = st.builds(
    lambda day, done, said, noted, whole: SessionDone(
        *(date(2027, 1, 4) + timedelta(days=day), tuple(done), HERE), *said, tuple(noted), *whole
    ),
    st.integers(0, 40),
    st.lists(lines, min_size=1, max_size=4),
    st.one_of(st.just((None, None)), st.tuples(st.integers(1, 12), st.sampled_from(("Mon", "Fri", "3")))),
    st.lists(notes, max_size=2, unique=True),
    wholes,
)
logs = st.lists(sessions, max_size=5, unique_by=lambda session: session.day)


def take(table: str | bytes, log: bytes = LIBRARY.encode()) -> Import:
    """The table taken into a log."""
    content = table if isinstance(table, bytes) else table.encode()
    return imported(content, "rows.csv", log, "log.plan", reader=READER)


def read(text: bytes) -> tuple[SessionDone, ...]:
    """The sessions of a log's text."""
    return sessions_of(compiled("log.plan", Files(Path.cwd()), READER, text=text.decode()), "log.plan")


def known(session: SessionDone) -> tuple[object, ...]:
    """All that a session says, however its entries are divided."""
    tests = {(line.movement.name, line.label, one) for line in session.lines if line.is_test for one in line.sets}
    said = (session.day, session.week, session.slot, session.notes, session.effort, session.minutes)
    return (*said, done_in(session), tests)


def written(session: SessionDone) -> str:
    """A session as the lines of a log."""
    made = [session_head(session.day, session.week, session.slot)]
    for line in session.lines:
        made += [
            "  " + one for one in entry_lines(written_name(line.movement.name), line.label, line.sets, line.is_test)
        ]
    made += [f"  note {quoted(note)}" for note in session.notes]
    if session.effort is not None:
        length = f", {exact(session.minutes)} min" if session.minutes is not None else ""
        made.append(f"  effort {exact(session.effort)} of 10{length}")
    return "\n" + "\n".join(made) + "\n"


@given(logs)
@settings(deadline=None, max_examples=60)
def test_what_is_written_is_read_again(kept: list[SessionDone]) -> None:
    text = LIBRARY + "".join(map(written, kept))
    assert [*map(known, read(text.encode()))] == [known(one) for one in sorted(kept, key=lambda one: one.day)]


@given(logs, st.sampled_from(("utf-8", "utf-8-sig", "utf-16")))
@settings(deadline=None, max_examples=60)
def test_a_table_of_a_log_is_the_log(kept: list[SessionDone], encoding: str) -> None:
    taken = take(exported(kept).encode(encoding))
    assert taken.diagnostics == ()
    assert taken.after is not None
    again = read(taken.after)
    assert [*map(known, again)] == [known(one) for one in sorted(kept, key=lambda one: one.day)]
    assert exported(again) == exported(sorted(kept, key=lambda one: one.day))


@given(logs, logs)
@settings(deadline=None, max_examples=40)
def test_importing_twice_is_importing_once(kept: list[SessionDone], more: list[SessionDone]) -> None:
    once = take(exported(kept), (LIBRARY + "".join(map(written, more))).encode())
    assert once.after is not None
    twice = take(exported(kept), once.after)
    assert (twice.after, twice.sets) == (once.after, 0)


@given(logs, st.randoms())
@settings(deadline=None, max_examples=30)
def test_the_order_of_sessions_and_files_does_not_matter(kept: list[SessionDone], random: Random) -> None:
    mixed = sorted(kept, key=lambda _: random.random())
    first, second = (LIBRARY + "".join(map(written, order)) for order in (kept, mixed))
    assert [*map(known, read(first.encode()))] == [*map(known, read(second.encode()))]
    one, other = (take(exported(order)) for order in (kept, mixed))
    assert one.after is not None
    assert other.after is not None
    assert [*map(known, read(one.after))] == [*map(known, read(other.after))]


CELLS = st.one_of(
    st.sampled_from(
        ("2027-01-04", "1/2/2027", "Squat", "60 kg", "60", "5", "RPE 8", "bodyweight", '"', '""', "'=1", "", "1,5")
    ),
    st.text(max_size=12),
)
HEADERS = st.lists(st.sampled_from(("date", "exercise", "reps", "load", "unit", "effort", "note", "x", "")), max_size=8)


@given(HEADERS, st.lists(st.lists(CELLS, max_size=9), max_size=6), st.sampled_from(",;\t"), st.booleans())
@settings(deadline=None, max_examples=150)
def test_every_row_is_read_or_told(header: list[str], rows: list[list[str]], separator: str, proper: bool) -> None:
    """Whatever stands in a table: no exception, and each row that says something is an entry, a note or a comment."""
    top = ["date", "exercise", "reps", *header]
    if proper:
        out = io.StringIO()
        csv.writer(out, delimiter=separator).writerows([top, *rows])
        text = out.getvalue()
    else:
        text = "\n".join(separator.join(row) for row in [top, *rows])
    taken = take(text.encode("utf-8", "replace"))
    if taken.after is None:
        assert taken.diagnostics
        return
    assert not compile("log.plan", text=taken.after.decode()).has_errors
    lines = {line.strip() for line in taken.after.decode().splitlines()}
    comments = sum(line.startswith("# not read: ") for line in lines)
    unread = {found.span.source.line(found.span.line) for found in taken.diagnostics if found.code.number == "SW1107"}
    assert bool(comments) >= bool(unread)
    assert sum(len(line.sets) for one in read(taken.after) for line in one.lines) == taken.sets
    again = take(text.encode("utf-8", "replace"), taken.after)
    assert again.after == taken.after


@given(st.binary(max_size=300))
@settings(deadline=None, max_examples=150)
def test_any_bytes_are_answered(content: bytes) -> None:
    taken = take(content)
    assert taken.after is not None or taken.diagnostics
