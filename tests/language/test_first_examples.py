"""The examples that the language was designed by: each is read without a mistake, and what is carried out compiles.

`first_examples/saltmarsh.csv` was worked out by hand, block by block:

- Settle, weeks 1-4, the last a deload: 75 -> 82.5% over three working weeks is 75, 78.75 -> 79, 82.5; sets 3 -> 4 are
  3, 3.5 -> 4, 4; RPE 7 -> 8 is 7, 7.5, 8. `limit effort RPE 8` turns 1 RIR into 2 RIR. The deload halves week 3's sets
  (4 -> 2, 3 -> 1.5 -> 2, 1 -> 1) and takes 90%: 82.5 -> 74.25%; 5 kg -> 4.5, which loads as 5 in steps of 2.5 kg.
- Build, weeks 5-8: no limit, so 1 RIR stays; 80 -> 87.5% is 80, 83.75 -> 84, 87.5; the deload has 5 -> 2.5 -> 3 sets at
  78.75%. Friday stays as Settle's Friday was; its ramp starts anew.
- The chin-ups of both blocks climb by a repetition an exposure, 6-10, 7, 8; the deload lightens the last of these.
- Measure, week 9: one test. 2027-01-04 is a Monday.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from setwright.files import library_folder
from setwright.pipeline import Compiled, compile
from setwright.render.csv import COLUMNS, rows
from setwright.source import Source
from setwright.syntax import LineReader

FIRST = Path(__file__).parent / "first_examples"

DAY = 'use stdlib.exercises\nplan "Example"\n  block Base: 4 weeks\n    day Mon\n'

# What the example leaves out because another file would hold it.
BEFORE = {
    "week_by_week": DAY,
    "bench_press": (
        "muscle chest\nmuscle triceps\nmuscle side-delts\nmuscle rear-delts\nequipment barbell\nequipment bench\n"
        "exercise Dumbbell Bench Press\nexercise Push-Up\n"
    ),
    "quayside": "use stdlib.exercises\n",
    "rules": "use stdlib.muscles\n",
    "ines": "use stdlib.exercises\n",
}
EXAMPLES = sorted(path.stem for path in FIRST.glob("*.plan"))


@pytest.mark.parametrize("name", EXAMPLES)
def test_example_is_read(name: str) -> None:
    parsed = LineReader().read(Source(name, text(name)))
    assert [found.message for found in parsed.diagnostics] == []


@pytest.mark.parametrize("name", EXAMPLES)
def test_example_has_no_error(name: str) -> None:
    assert errors(compiled(name)) == []


def test_the_shipped_progression_is_that_of_the_example() -> None:
    shipped = (library_folder() / "progressions.plan").read_text(encoding="utf-8")
    assert f"\n{text('double_climb')}" in shipped


def test_sheet_of_the_long_example() -> None:
    done = compiled("saltmarsh")
    header, *expected = csv.reader((FIRST / "saltmarsh.csv").read_text(encoding="utf-8").splitlines())
    assert tuple(header) == COLUMNS
    assert [list(row) for one in done.compilations for row in rows(one.plan)] == expected


def test_week_by_week_example() -> None:
    done = compiled("week_by_week")
    assert [(row[0], row[10], row[11], row[14], row[17]) for one in done.compilations for row in rows(one.plan)] == [
        ("1", "5", "5", "75%", "180"),
        ("2", "4", "4", "80%", "180"),
        ("3", "3", "3", "85%", "180"),
        ("4", "3", "3", "85%", "180"),
    ]


def test_template_example() -> None:
    """RPE 7 -> 9 over six weeks: 7, 7.4 -> 7.5, 7.8 -> 8, 8.2 -> 8, 8.6 -> 8.5, 9; the press and the edit stay."""
    done = compiled("quayside")
    sheet = [(row[0], row[7], row[10], row[11], row[14]) for one in done.compilations for row in rows(one.plan)]
    efforts = ["RPE 7", "RPE 7.5", "RPE 8", "RPE 8", "RPE 8.5", "RPE 9"]
    assert sheet == [
        line
        for week, effort in enumerate(efforts, start=1)
        for line in (
            (str(week), "Front Squat", "3", "5", effort),
            (str(week), "Bench Press", "3", "6-8", "2 RIR"),
            (str(week), "Face Pull", "2", "15", ""),
        )
    ]


def text(name: str) -> str:
    return BEFORE.get(name, "") + (FIRST / f"{name}.plan").read_text(encoding="utf-8")


def compiled(name: str) -> Compiled:
    return compile(f"{name}.plan", text=text(name))


def errors(done: Compiled) -> list[str]:
    return [f"{found.span}: {found.message}" for found in done.diagnostics if found.severity.value == "error"]
