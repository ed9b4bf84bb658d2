"""A plan from its text to each output: what a coach wrote is what the sheets say."""

from __future__ import annotations

import csv
import io
import json
from importlib.resources import files

import pytest
from jsonschema import Draft202012Validator

from setwright.pipeline import Compilation, compile
from setwright.render import csv as table
from setwright.render import html, markdown
from setwright.render import json as data
from setwright.report.overview import overview
from setwright.report.volume import volume

TEXT = """\
muscle quads "Quadriceps"
muscle chest "Chest"
equipment barbell "Barbell"
  loads bar

exercise Back Squat
  needs barbell
  works quads 1
  cue "Drive the floor away."
exercise Bench Press
  needs barbell
  works chest 1

athlete "Oda"
  bar 20 kg
  plates 2x20, 2x10, 2x5, 2x2.5, 2x1.25 kg
  has barbell
  best Back Squat: 100 kg

plan "Lock Street"
  start 2027-01-04
  block Base: 2 weeks
    deload week 2: sets 50%, load 90%
    day Mon "First"
      superset rest 90 s
        Back Squat: 4 x 5 @ 80%
        Bench Press: 3 x 8-10 @ RPE 8
          note "Pause."
"""


@pytest.fixture(scope="module")
def compiled() -> Compilation:
    made = compile("lock-street.plan", athletes=("Oda",), text=TEXT)
    assert [diagnostic.message for diagnostic in made.diagnostics if diagnostic.severity.value == "error"] == []
    return made.compilations[0]


def test_csv(compiled: Compilation) -> None:
    rows = list(csv.DictReader(io.StringIO(table.text(compiled.plan), newline="")))
    wanted = ("week", "date", "group", "exercise", "sets", "reps", "intensity", "load", "rest_s", "notes")
    # By hand: 80% of 100 kg is 80 kg; the deload halves the sets, 3 to 2 as halves go up, and takes 90% of the percent.
    assert [tuple(row[name] for name in wanted) for row in rows] == [
        ("1", "2027-01-04", "A", "Back Squat", "4", "5", "80%", "80", "90", ""),
        ("1", "2027-01-04", "A", "Bench Press", "3", "8-10", "RPE 8", "", "90", "Pause."),
        ("2", "2027-01-11", "A", "Back Squat", "2", "5", "72%", "72.5", "90", ""),
        ("2", "2027-01-11", "A", "Bench Press", "2", "8-10", "RPE 8", "", "90", "Pause."),
    ]


def test_json(compiled: Compilation) -> None:
    schema = json.loads(files("setwright.render").joinpath("plan.schema.json").read_text())
    plan = compiled.plan
    made = json.loads(data.document(plan, volume(plan, compiled.promise), overview(plan)))
    assert [error.message for error in Draft202012Validator(schema).iter_errors(made)] == []
    assert made["plan"]["athlete"] == "Oda"


def test_page_and_markdown(compiled: Compilation) -> None:
    plan = compiled.plan
    figures = (plan, volume(plan, compiled.promise), overview(plan))
    page, text = html.page(*figures).replace("\u00a0", " "), markdown.text(*figures)
    # 80 kg: 30 kg a side of a 20 kg bar.
    assert 'aria-label="each side 20 + 10"' in page
    assert "<b>80 kg</b>" in page
    assert "Superset A: 1 and 2 in turn, rest 90 s after each round" in page
    assert "rest 90 s</span>" not in page
    assert "| 1 | **Back Squat** | 4 × 5 @ 80% | **80 kg** | 20 + 10 |  |  |" in text
    assert "Deload week" in page
    assert "**Deload week.**" in text
