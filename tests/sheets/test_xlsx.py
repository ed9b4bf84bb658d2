"""Workbooks, read by another library than wrote them: types of cells, text that stays text, names, the same bytes.

What the formulas come to is tested in tests/office, by an office suite.
"""

from __future__ import annotations

import io
import zipfile
from datetime import datetime
from fractions import Fraction
from time import perf_counter

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.worksheet.worksheet import Worksheet

from setwright.plan import Plan
from setwright.quantities import Unit
from setwright.record import replace
from setwright.render import xlsx
from setwright.render.language import Language
from setwright.render.material import PLAIN, Look, Material
from setwright.render.xlsx.book import LONGEST_NAME, lines_of, sheet_name
from setwright.render.xlsx.week import Column
from setwright.rules import Promise
from sheets.sample_plans import hostile, long, reported, small

FORBIDDEN = set("[]:*?/\\")


def material(plan: Plan, promise: Promise = Promise()) -> Material:  # noqa: B008 (frozen)
    made = reported(plan)
    return Material(made.plan, made.volume, made.overview, promise)


def content(plan: Plan, look: Look = PLAIN) -> bytes:
    return xlsx.rendered(material(plan), look)


def opened(plan: Plan, *, values: bool = False, look: Look = PLAIN) -> Workbook:
    return load_workbook(io.BytesIO(content(plan, look)), data_only=values)


@pytest.fixture(scope="module")
def week() -> Worksheet:
    return opened(small())["Week 1"]


def row_of(sheet: Worksheet, movement: str, sets: int) -> int:
    found = [
        row
        for row in range(1, sheet.max_row + 1)
        if sheet.cell(row, 1 + Column.MOVEMENT).value == movement and sheet.cell(row, 1 + Column.SETS).value == sets
    ]
    return found[0]


def test_a_sheet_for_each_week_between_overview_and_movements() -> None:
    assert opened(small()).sheetnames == ["Overview", "Volume", "Week 1", "Week 2", "Week 3", "Movements"]


def test_the_columns_of_a_week(week: Worksheet) -> None:
    assert [cell.value for cell in week[3]][:13] == [
        *("", "Movement", "Part", "Sets", "Repetitions", "Effort", "Load", "Each side of the bar"),
        *("Sets done", "Reps in all", "Load lifted", "Last RPE", "In words"),
    ]


def test_numbers_are_numbers_with_their_unit_in_the_format(week: Worksheet) -> None:
    row = row_of(week, "Back Squat", 3)
    cells = [week.cell(row, 1 + column) for column in (Column.SETS, Column.REPS, Column.LOAD)]
    assert [(cell.data_type, cell.value) for cell in cells] == [("n", 3), ("n", 5), ("n", 80)]
    assert cells[2].number_format == 'General" kg"'
    pair = week.cell(row_of(week, "Walking Lunge", 3), 1 + Column.REPS)
    assert (pair.value, pair.number_format) == (8, 'General" per\u00a0side"')
    timed = week.cell(row_of(week, "Plank", 3), 1 + Column.REPS)
    assert (timed.value, timed.number_format) == (40, 'General" s"')
    added = week.cell(row_of(week, "Chin-Up", 3), 1 + Column.LOAD)
    assert (added.value, added.number_format.split(";")[0]) == (5, '"+ "General" kg"')
    percent = week.cell(row_of(week, "Back Squat", 4), 1 + Column.EFFORT)
    assert (percent.value, percent.number_format) == (0.85, "0%")
    spread = week.cell(row_of(week, "Bench Press", 3), 1 + Column.REPS)
    assert (spread.data_type, spread.value) == ("s", "6\u20138")


def test_dates_are_dates(week: Worksheet) -> None:
    dates = [cell for row in week.iter_rows() for cell in row if getattr(cell, "is_date", False)]
    assert [cell.value for cell in dates] == [datetime(2027, 1, 4), datetime(2027, 1, 7)]
    assert {cell.number_format for cell in dates} == {"yyyy-mm-dd"}


def test_a_load_in_pounds_says_so() -> None:
    plan = replace(small(), unit=Unit.LB)
    sheet = opened(plan)["Week 1"]
    blank = sheet.cell(row_of(sheet, "Cable Pushdown", 3), 1 + Column.LOAD)
    assert (blank.value, blank.number_format) == (None, 'General" lb"')


def test_text_is_never_a_formula() -> None:
    for sheet in opened(hostile()):
        for row in sheet.iter_rows():
            for cell in row:
                text = str(cell.value)
                if cell.data_type == "f":
                    assert text.startswith(("=SUM(", "=SUMPRODUCT(", "=N(")), text
                elif cell.data_type == "s" and text.startswith(("=", "+", "-", "@", "\t")):
                    assert cell.quotePrefix, text  # stays text also when a person edits the cell


def test_nothing_runs_and_nothing_leads_out() -> None:
    with zipfile.ZipFile(io.BytesIO(content(hostile()))) as parts:
        names = parts.namelist()
        assert not [name for name in names if "vba" in name.casefold() or "external" in name.casefold()]
        assert not [name for name in names if name.endswith(".rels") and b'TargetMode="External"' in parts.read(name)]


def test_the_same_plan_makes_the_same_bytes() -> None:
    assert content(small()) == content(small())
    assert opened(small()).properties.created == datetime(2000, 1, 1)


def test_values_stand_beside_the_formulas() -> None:
    made = reported(small())
    shown = opened(small(), values=True)["Volume"]
    rows = {str(row[0]): row[1:] for row in shown.iter_rows(min_row=6, max_row=10, values_only=True)}
    for muscle in made.volume.muscles:
        ours = [float(made.volume.of(number, muscle.word).direct_sets) for number in (1, 2, 3)]
        assert list(rows[muscle.title])[:3] == ours, muscle
    assert any(any(row) for row in rows.values())


def test_which_sets_count_is_said_and_marked() -> None:
    made = reported(small())
    promise = Promise(from_rpe=Fraction(8), required_only=True)
    book = load_workbook(io.BytesIO(xlsx.rendered(Material(made.plan, made.volume, made.overview, promise), PLAIN)))
    said = str(book["Volume"]["A2"].value)
    assert "easier than RPE\u00a08" in said
    assert "Optional movements are not counted" in said
    week = book["Week 1"]
    flags = {row: week.cell(row, 1 + Column.COUNTS).value for row in range(4, week.max_row + 1)}
    assert flags[row_of(week, "Walking Lunge", 3)] == 0  # optional
    assert flags[row_of(week, "Cable Pushdown", 3)] == 1  # 1 in reserve
    assert flags[row_of(week, "Back Squat", 1)] == 0  # the first of the warm-up


def test_it_prints_on_a4_as_wide_as_the_paper_with_the_heads_on_each_page(week: Worksheet) -> None:
    assert str(week.page_setup.paperSize) == week.PAPERSIZE_A4
    assert (week.page_setup.fitToWidth or 1, week.page_setup.fitToHeight) == (1, 0)
    assert week.sheet_properties.pageSetUpPr is not None
    assert week.sheet_properties.pageSetUpPr.fitToPage
    assert week.print_title_rows == "$3:$3"
    assert week.freeze_panes == "C4"
    assert str(week.print_area).endswith(f"$A$1:$M${week.max_row}")


class Odd(Language):
    """A language whose words no sheet can be called."""

    def text(self, message: str) -> str:
        return {"Volume": "'[a]:*?/\\'", "Overview": "History", "Week {number}": "\U0001f3cb" * 40}.get(
            message, message
        )


def test_names_of_sheets_are_valid_whatever_the_words() -> None:
    names = opened(long(12, 1, 1), look=Look(language=Odd())).sheetnames
    assert len({name.casefold() for name in names}) == len(names) == 15
    for name in names:
        assert 0 < len(name.encode("utf-16-le")) // 2 <= LONGEST_NAME
        assert not FORBIDDEN & set(name)
        assert name.strip("'") == name
        assert name.casefold() != "history"


def test_a_name_that_is_taken_gets_a_number() -> None:
    assert sheet_name("week 1", {"week 1"}) == "week 1 2"
    assert sheet_name("*" * 40, set()) == "Sheet"
    assert sheet_name("x" * 40, {"x" * 31}) == "x" * 29 + " 2"


def test_lines_of_text() -> None:
    assert lines_of("abc", 3) == 1
    assert lines_of("abcd", 3) == 2
    assert lines_of("a\n\nb", 9) == 3
    assert lines_of("\u6df1\u8e72", 3) == 2  # wide letters


def test_other_scripts_and_long_texts() -> None:
    plan = replace(hostile(), name="\u0baa\u0baf\u0bbf\u0bb1\u0bcd\u0b9a\u0bbf " * 20, notes=("x" * 40_000,))
    book = opened(plan)
    assert str(book["Overview"]["A1"].value) == plan.name
    assert any(len(str(cell.value)) == 32_767 for row in book["Overview"].iter_rows() for cell in row)


def test_a_plan_of_notes_alone() -> None:
    plan = small()
    weeks = tuple(
        replace(week, sessions=tuple(replace(session, lines=()) for session in week.sessions)) for week in plan.weeks
    )
    assert opened(replace(plan, weeks=weeks))["Week 1"].max_row > 3


def test_a_year_of_five_days_is_made_in_reasonable_time() -> None:
    of = material(long(52, 5, 6))
    start = perf_counter()
    xlsx.rendered(of, PLAIN)
    assert perf_counter() - start < 30
