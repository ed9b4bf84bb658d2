"""What was done beside what was asked, in each format."""

from __future__ import annotations

import csv
import io
import json
from html.parser import HTMLParser
from importlib.resources import files
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator, FormatChecker
from openpyxl import load_workbook

from setwright.record import replace
from setwright.render import html, markdown
from setwright.render import json as json_sheet
from setwright.render.csv import COLUMNS, LOG_COLUMNS, rendered
from setwright.render.csv import text as csv_text
from setwright.render.done import arranged
from setwright.render.language import ENGLISH, language
from setwright.render.material import PLAIN, Look, Material
from setwright.render.sheet import SessionSheet, Station
from setwright.render.xlsx import rendered as workbook
from sheets.logged_plans import LOG, PLAN, material

SCHEMA = json.loads(files("setwright.render").joinpath("plan.schema.json").read_text())


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Material:
    return material(tmp_path_factory.mktemp("log"))


def session(made: Material, week: int, position: int) -> SessionSheet:
    return arranged(made, ENGLISH).weeks[week - 1].sessions[position - 1]


def stations(one: SessionSheet) -> list[Station]:
    return [station for part in one.parts for station in part.stations]


def plain(texts: tuple[str, ...] | None) -> list[str]:
    return [text.replace("\u00a0", " ") for text in texts or ()]


def test_sets_stand_where_the_boxes_were(made: Material) -> None:
    squat, chin_up, split, plank = stations(session(made, 1, 1))
    assert plain(squat.rows[0].did) == [
        "80 \u00d7 5 @ 8.5",
        "80 \u00d7 5 @ 8.5",
        "80 \u00d7 4 @ 8.5",
        "70 \u00d7 8 @ 1 RIR",
    ]
    assert plain(squat.did) == ["1 set more than asked"]
    assert plain(chin_up.rows[0].did) == ["+5 \u00d7 8"]
    assert plain(chin_up.did) == ["1 set fewer than asked"]
    assert plain(split.rows[0].did) == ["12 \u00d7 8 @ 2", "12 \u00d7 8 @ 2"]
    assert (plank.rows[0].did, plain(plank.did)) == ((), ["not done"])
    assert [row.blanks for station in (squat, chin_up, split, plank) for row in station.rows] == [0, 0, 0, 0]


def test_the_parts_of_a_line_take_sets_in_order(made: Material) -> None:
    (deadlift,) = stations(session(made, 1, 2))
    assert [plain(row.did) for row in deadlift.rows] == [["100 \u00d7 3 @ 8"], ["92.5 \u00d7 5", "92.5 \u00d7 0"]]


def test_another_day_and_what_was_done_besides(made: Material) -> None:
    assert plain(session(made, 1, 2).did) == [
        "Done on Thursday, 7 January.",
        "Besides: Barbell Curl 30 kg \u00d7 12, 12",
    ]
    assert plain(session(made, 1, 1).did) == ["Done.", "\u201cSlept <five> hours.\u201d"]


def test_a_movement_that_may_stand_in(made: Material) -> None:
    bench, face_pull = stations(session(made, 1, 3))
    assert plain(bench.did) == ["Dumbbell Bench Press in its place"]
    assert plain(bench.rows[0].did) == ["22.5 \u00d7 8"] * 3
    assert face_pull.did == ()
    assert plain(session(made, 1, 3).did) == ["Done."]


def test_a_session_whose_day_has_passed_keeps_its_boxes(made: Material) -> None:
    missed = session(made, 2, 1)
    assert (missed.state, missed.did) == ("missed", ("Not done.",))
    assert [row.did for station in stations(missed) for row in station.rows] == [None] * 4
    assert stations(missed)[0].rows[0].blanks == 3


def test_today_and_later_are_ahead(made: Material) -> None:
    for week, position in ((2, 3), (3, 1), (3, 2), (3, 3)):
        assert (session(made, week, position).state, session(made, week, position).did) == ("", ())


def test_a_unit_that_is_not_the_plans_is_said(made: Material) -> None:
    assert plain(stations(session(made, 2, 2))[0].rows[0].did) == ["225 lb \u00d7 3"]


def test_a_session_outside_the_plan_stands_under_its_week(made: Material) -> None:
    weeks = arranged(made, ENGLISH).weeks
    assert plain(weeks[0].extras) == ["Outside the plan, on Sunday, 10 January: Plank 50 s"]
    assert weeks[1].extras == weeks[2].extras == ()


def test_how_many_of_those_that_are_due_were_done(made: Material) -> None:
    assert arranged(made, ENGLISH).progress == "4 of 5 sessions"


def test_without_dates_sessions_go_in_order(tmp_path: Path) -> None:
    undated = "\n".join(line for line in PLAN.splitlines() if "start" not in line) + "\n"
    log = LOG.replace(" for week 1 Wed", "").partition("session 2027-01-08")[0]
    paper = arranged(material(tmp_path, undated, log), ENGLISH)
    assert [one.state for week in paper.weeks for one in week.sessions] == ["done", "done", *[""] * 7]
    assert plain(paper.weeks[0].sessions[0].did)[0] == "Done on Monday, 4 January."
    assert paper.progress == "2 of 2 sessions"


def test_html_holds_the_sets_and_no_foreign_markup(made: Material) -> None:
    page = html.page(made)
    assert "<dt>Done so far</dt><dd>4 of 5 sessions</dd>" in page
    assert "Slept &lt;five&gt; hours." in page
    cells = Done()
    cells.feed(page)
    assert cells.found["week-1-1"]["1.0"] == [
        "80 \u00d7 5 @ 8.5",
        "80 \u00d7 5 @ 8.5",
        "80 \u00d7 4 @ 8.5",
        "70 \u00d7 8 @ 1 RIR",
    ]
    assert cells.found["week-1-1"]["4.0"] == []
    assert all(not sets for sets in cells.found["week-3-1"].values())


def test_nothing_changes_without_a_log(made: Material) -> None:
    without = replace(made, outcomes=None)
    assert "did" not in html.page(without).partition("<body>")[2]
    assert ".was {" not in html.page(without)
    assert rendered(without, PLAIN) == csv_text(made.plan).encode()


def test_markdown(made: Material) -> None:
    text = markdown.text(made)
    assert "- Done so far: 4 of 5 sessions" in text
    assert "> Done on Thursday, 7 January." in text
    assert "| 80 \u00d7 5 @ 8.5, 80 \u00d7 5 @ 8.5, 80 \u00d7 4 @ 8.5, 70 \u00d7 8 @ 1 RIR |" in text
    assert "**Bench Press** *(Dumbbell Bench Press in its place)*" in text
    assert "> Outside the plan, on Sunday, 10 January: Plank 50 s" in text


def test_csv_has_three_columns_more_and_rows_for_what_was_not_asked(made: Material) -> None:
    rows = list(csv.DictReader(io.StringIO(rendered(made, PLAIN).decode(), newline="")))
    assert tuple(rows[0]) == (*COLUMNS, *LOG_COLUMNS)
    squat = next(row for row in rows if row["exercise"] == "Back Squat" and row["kind"] == "work")
    assert squat["done"] == "80 kg x 5, 5, 4 @ RPE 8.5; 70 kg x 8 @ 1 RIR"
    assert (squat["state"], squat["done_on"]) == ("done", "2027-01-04")
    extra = [row for row in rows if row["kind"] == "extra"]
    assert [(row["week"], row["exercise"], row["done_on"], row["done"]) for row in extra] == [
        ("1", "Barbell Curl", "2027-01-07", "30 kg x 12, 12"),
        ("1", "Plank", "2027-01-10", "50 s"),
    ]
    bench = next(row for row in rows if row["exercise"] == "Bench Press")
    assert bench["done"] == "Dumbbell Bench Press: 22.5 kg x 8, 8, 8"
    assert {row["state"] for row in rows if row["week"] == "3"} == {""}


def test_json_keeps_to_the_schema(made: Material) -> None:
    document = json.loads(json_sheet.rendered(made, PLAIN))
    checker = Draft202012Validator(SCHEMA, format_checker=FormatChecker())
    assert [error.message for error in checker.iter_errors(document)] == []
    log = document["log"]
    assert (log["on"], log["done"], log["due"]) == ("2027-01-15", 4, 5)
    assert [(one["week"], one["session"], one["state"]) for one in log["sessions"]] == [
        *((1, 1, "done"), (1, 2, "done"), (1, 3, "done"), (2, 1, "missed"), (2, 2, "done")),
    ]
    assert log["sessions"][0]["lines"][1]["segments"][0][0] == {
        "load": {"amount": 5, "unit": "kg"},
        "bodyweight": True,
        "amount": 8,
        "kind": "count",
        "parts": [],
        "per_side": False,
        "rpe": None,
        "scale": None,
    }
    assert [one["on"] for one in log["extra"]] == ["2027-01-10"]


def test_the_workbook_is_filled_in(made: Material) -> None:
    book = load_workbook(io.BytesIO(workbook(made, PLAIN)), data_only=True)
    page = book["Week 1"]
    rows = {row[1].value: [cell.value for cell in row[8:15]] for row in page.iter_rows() if row[8].value is not None}
    # (5 + 5 + 4) x 80 + 8 x 70 = 1,680 kg in 22 repetitions
    assert rows["Back Squat"][:4] == [4, 22, pytest.approx(1680 / 22), 9]
    assert rows["Back Squat"][6] == pytest.approx(1680)
    assert rows["Split Squat"][1] == 32  # two sets of eight, each side
    assert rows["Face Pull"][:3] == [2, 30, 15]
    assert book["Week 3"]["I5"].value is None


@pytest.mark.parametrize("tag", ["de", "fr"])
def test_other_languages_say_it_too(tag: str, made: Material) -> None:
    text = markdown.text(made, Look(language=language(tag)))
    for english in ("Done so far", "Done on", "Besides", "Outside the plan", "not done", "in its place", "than asked"):
        assert english not in text


class Done(HTMLParser):
    """The sets that stand in the boxes of a page, by session and row."""

    def __init__(self) -> None:
        super().__init__()
        self.found: dict[str, dict[str, list[str]]] = {}
        self._session = self._row = ""
        self._inside = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        said = dict(attrs)
        if tag == "article":
            self._session = said["id"] or ""
            self.found[self._session] = {}
        elif tag == "tr" and "data-row" in said:
            self._row = said["data-row"] or ""
            self.found[self._session][self._row] = []
        elif tag == "td":
            self._inside = "done" in (said.get("class") or "").split()

    def handle_endtag(self, tag: str) -> None:
        self._inside = self._inside and tag != "td"

    def handle_data(self, data: str) -> None:
        if self._inside and data.strip():
            self.found[self._session][self._row].append(data.replace("\u00a0", " "))
