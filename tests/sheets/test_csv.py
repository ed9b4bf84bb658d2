"""CSV: the bytes, the columns, and what a spreadsheet would take for a formula."""

from __future__ import annotations

import csv
import io
from fractions import Fraction

import pytest

from setwright.plan import Line, Plan
from setwright.prescription import Reps, RepsKind
from setwright.record import replace
from setwright.render import csv as sheet
from sheets.sample_plans import BENCH, SPAN, every_form, hostile, reported, small, work


def read(text: str) -> list[dict[str, str]]:
    """The rows as Python's own reader understands them."""
    return list(csv.DictReader(io.StringIO(text, newline="")))


def test_the_header_is_the_one_published() -> None:
    header = sheet.text(small()).split("\r\n", 1)[0]
    assert header == (
        "week,date,block,day,label,order,group,exercise,exercise_label,kind,sets,reps,reps_min,reps_max,"
        "intensity,load,unit,rest_s,tempo,projected,notes"
    )


def test_bytes_of_some_rows() -> None:
    lines = sheet.text(small()).encode().split(b"\r\n")
    assert lines[1] == (
        b"1,2027-01-04,Settle,Mon,Squat lead,1,,Back Squat,,warm-up,1,8,8,8,50%,20,kg,180,,yes,"
        b"advance double-climb(step: 2.5 kg)"
    )
    assert lines[6] == (
        b"1,2027-01-04,Settle,Mon,Squat lead,2,,Bench Press,pause,work,3,6-8,6,8,RPE 7-8,60,kg,120-180,3-1-X-0,no,"
        b"Pause on the chest from week 2."
    )
    assert lines[10] == (
        b"1,2027-01-04,Settle,Mon,Squat lead,5,B,Walking Lunge,,work,3,8/side,8,8,2 RIR,17.5,kg,,,no,optional; per hand"
    )
    assert lines[-1] == b""


@pytest.mark.parametrize(
    ("reps", "low", "high"),
    [
        (Reps(RepsKind.COUNT, Fraction(5), Fraction(5)), "5", "5"),
        (Reps(RepsKind.COUNT, Fraction(8), Fraction(10), per_side=True), "8", "10"),
        (Reps(RepsKind.AT_LEAST, Fraction(5), Fraction(5)), "5", ""),
        (Reps(RepsKind.CLUSTER, parts=(2, 2, 3)), "7", "7"),
        (Reps(RepsKind.MAX), "", ""),
        (Reps(RepsKind.SECONDS, Fraction(40), Fraction(40)), "", ""),
        (Reps(RepsKind.METRES, Fraction(30), Fraction(30)), "", ""),
    ],
)
def test_fewest_and_most_repetitions(reps: Reps, low: str, high: str) -> None:
    row = read(sheet.text(one_line(reps)))[0]
    assert (row["reps"], row["reps_min"], row["reps_max"]) == (str(reps), low, high)


def test_the_group_lends_its_rest_and_a_written_load_is_known() -> None:
    rows = {(row["exercise"], row["kind"], row["exercise_label"]): row for row in read(sheet.text(small()))}
    assert rows["Chin-Up", "work", ""]["rest_s"] == "90"
    assert rows["Chin-Up", "work", ""]["load"] == ""
    assert rows["Bench Press", "test", "last"]["load"] == "70"
    assert rows["Back Squat", "work", "cluster"]["notes"] == "every 180 s; pause 20 s"


def test_free_text_is_guarded_and_figures_are_not() -> None:
    rows = read(sheet.text(hostile()))
    assert rows[0]["exercise"].startswith("'=1+2|")
    assert rows[0]["notes"] == '\'=HYPERLINK(1); say "hi", then\r\nrest'
    assert rows[0]["exercise_label"] == "'+cmd"
    assert {row["label"] for row in rows} == {"'-2 days"}
    assert rows[0]["block"].startswith("'@Block")
    changes = [row["intensity"] for row in read(sheet.text(small())) if row["intensity"].startswith("-")]
    assert changes == ["-8%", "-20%", "-5 kg"]


# OWASP/www-community, pages/attacks/CSV_Injection.md: its two worked examples.
@pytest.mark.parametrize(
    ("cell", "printed"),
    [('=1+2";=1+2', '"\'=1+2"";=1+2"'), ("=1+2'\" ;,=1+2", '"\'=1+2\'"" ;,=1+2"')],
)
def test_published_examples_of_injection(cell: str, printed: str) -> None:
    line = replace(every_form()[1], label=cell)
    assert f",{printed},".encode() in sheet.text(with_lines(line)).encode()


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", "\n", "\0", "\uff1d"])
def test_every_start_of_a_formula(start: str) -> None:
    assert sheet.guarded(f"{start}x") == f"'{start}x"
    assert sheet.guarded(f"x{start}") == f"x{start}"


def test_volume() -> None:
    lines = sheet.volume_text(reported(small()).volume).encode().split(b"\r\n")
    assert lines[0] == b"week,muscle,direct_sets,fractional_sets,sessions,max_session_sets,rest_h_min"
    # Bench press by hand: 3 + 1 + 1 sets on Monday, 3 on Thursday, 72 hours later.
    assert lines[1] == b"1,chest,8,8,2,5,72"


def one_line(reps: Reps) -> Plan:
    return with_lines(replace(every_form()[1], movement=BENCH, segments=(work(1, reps),), span=SPAN))


def with_lines(*lines: Line) -> Plan:
    plan = small()
    session = replace(plan.weeks[0].sessions[0], lines=lines)
    return replace(plan, weeks=(replace(plan.weeks[0], sessions=(session,)),))
