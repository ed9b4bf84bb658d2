"""The formulas of a workbook, calculated by LibreOffice, against our own figures, cell by cell."""

from __future__ import annotations

import io
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook, load_workbook

from build_plans import (
    BENCH,
    CURL,
    SQUAT,
    day,
    deload,
    line,
    movement,
    percent,
    plan,
    reps,
    rpe,
    segment,
    superset,
    week,
)
from office.conftest import Recalculated
from setwright.pipeline import Compilation, compile
from setwright.plan import Handling, Line, Load, Plan, SegmentKind
from setwright.prescription import Bodyweight, ChangeByPercent, RepsKind, Weight
from setwright.quantities import Mass, Unit
from setwright.record import replace
from setwright.render import xlsx
from setwright.render.material import PLAIN, Material
from setwright.report.load import load_weeks
from setwright.report.overview import overview
from setwright.report.volume import volume
from setwright.rules import Promise
from setwright.science.counting import Counting
from sheets.sample_plans import hostile, long, small

EXAMPLES = Path(__file__).parents[2] / "examples"
NEAR = 1e-9

# A weight of 1 is a prime mover; a slash and a star stand in names on purpose.
CLEAN = movement("Clean *? ~1", quads=1, glutes=0.75, biceps=0.25)
SINGLE = replace(CURL, name="=Curl", handling=Handling.PAIR)


def kg(amount: str) -> Mass:
    return Mass(Fraction(amount), Unit.KG)


def mixed(microcycle: int = 7) -> Plan:
    """Easy, hard, optional, dropped and warm-up sets, in kilograms and pounds, on bars and in each hand."""
    pair = Load(kg("12.5"), Handling.PAIR)
    first = (
        line(SQUAT, segment(2, 5, percent(50), SegmentKind.WARM_UP), segment(3, 5, rpe(5)), segment(2, 3, rpe(8))),
        line(BENCH, segment(3, reps(6, 9), Weight(kg("60.5"))), segment(1, 8, ChangeByPercent(Fraction(-10)))),
        line(SINGLE, replace(segment(2, reps(8, per_side=True), rpe(7, 9)), load=pair), optional=True),
        line(CLEAN, segment(4, reps(5, kind=RepsKind.AT_LEAST), Weight(Mass(Fraction(135), Unit.LB)))),
        line(CURL, segment(2, 8, Bodyweight(kg("5"))), segment(1, 8, rpe(9), SegmentKind.DROP), group=superset()),
        line(CURL, segment(2, reps(40, kind=RepsKind.SECONDS), rpe(6)), group=superset()),
    )
    second = (line(BENCH, segment(5, reps(0, kind=RepsKind.MAX))), line(SQUAT, segment(3, 5, Weight(kg("100")))))
    slots = ("1", "4") if microcycle != 7 else ("Mon", "Thu")
    days = [day(slot, *lines) for slot, lines in zip(slots, (first, second), strict=True)]
    return plan(week(*days), deload(days[1]), week(days[0], block="Peak"), microcycle=microcycle)


PROMISES = {
    "plain": Promise(),
    "direct": Promise(counting=Counting.DIRECT),
    "total": Promise(counting=Counting.TOTAL),
    "hard": Promise(from_rpe=Fraction(8)),
    "required": Promise(required_only=True, from_rpe=Fraction(6), counting=Counting.DIRECT),
}


def compiled_examples() -> dict[str, Compilation]:
    found: dict[str, Compilation] = {}
    for file in sorted(EXAMPLES.glob("*/*.plan")):
        others = tuple(str(path) for path in file.parent.glob("*.plan") if path != file)
        for each in (compile(str(file)), compile(str(file), athletes=others)):
            for one in each.compilations:
                found[f"{file.stem}-{one.plan.athlete or 'no-one'}"] = one
    return found


def material(made: Plan, promise: Promise) -> Material:
    return Material(made, volume(made, promise), overview(made), promise)


def opened(of: Material) -> Workbook:
    return load_workbook(io.BytesIO(xlsx.rendered(of, PLAIN)))


@pytest.fixture(scope="module")
def materials() -> dict[str, Material]:
    made = {name: material(one.plan, one.promise) for name, one in compiled_examples().items()}
    made |= {name: material(mixed(), promise) for name, promise in PROMISES.items()}
    made |= {f"{name}-8-days": material(mixed(8), promise) for name, promise in PROMISES.items()}
    made |= {"small": material(small(), Promise()), "hostile": material(hostile(), Promise())}
    return made


@pytest.fixture(scope="module")
def books(materials: dict[str, Material], recalculated: Recalculated) -> dict[str, Workbook]:
    return recalculated({name: opened(one) for name, one in materials.items()})


def test_every_example_is_among_them(materials: dict[str, Material]) -> None:
    assert {path.parent.name for path in EXAMPLES.glob("*/*.plan")} - {"rowing-club-library"} <= {
        path.parent.name for path in EXAMPLES.glob("*/*.plan") if any(name.startswith(path.stem) for name in materials)
    }


def test_volume_as_ours(materials: dict[str, Material], books: dict[str, Workbook]) -> None:
    compared = 0
    for name, of in materials.items():
        shown = tables(books[name])
        ours = expected(of)
        assert shown.keys() == ours.keys(), name
        for cell, value in ours.items():
            assert shown[cell] == pytest.approx(float(value), abs=NEAR), (name, cell)
        compared += len(ours)
    assert compared > 3000


def test_sets_and_loads_that_are_changed(recalculated: Recalculated) -> None:
    of = material(mixed(), PROMISES["hard"])
    book = opened(of)
    sheet = book["Week 1"]
    row = next(
        row for row in range(1, 60) if sheet.cell(row, 2).value == "Bench Press" and sheet.cell(row, 4).value == 3
    )
    sheet.cell(row, 4).value = 7
    sheet.cell(row, 7).value = 42.5
    sheet.cell(row, 5).value = 4
    bench = line(BENCH, segment(7, 4, Weight(kg("42.5"))), segment(1, 8, ChangeByPercent(Fraction(-10))))
    changed = material(with_line(of.plan, "Bench Press", bench), of.promise)
    shown, ours = tables(recalculated({"changed": book})["changed"]), expected(changed)
    assert shown == pytest.approx({cell: float(value) for cell, value in ours.items()}, abs=NEAR)
    assert ours != expected(of)


def test_what_was_done_is_added_up(recalculated: Recalculated) -> None:
    book = opened(material(mixed(), Promise()))
    sheet = book["Week 1"]
    rows = {
        sheet.cell(row, 2).value: row for row in range(1, 60) if sheet.cell(row, 4).value and sheet.cell(row, 7).value
    }
    for name, repetitions, load in (("=Curl", 30, 10), ("Bench Press", 21, None), ("Clean *? ~1", 12, 100)):
        sheet.cell(rows[name], 9).value = 3
        sheet.cell(rows[name], 10).value = repetitions
        sheet.cell(rows[name], 11).value = load
    made = recalculated({"done": book})["done"]
    bench = 21 * sheet.cell(rows["Bench Press"], 7).value
    # Of a pair a repetition lifts both; the clean's load is in pounds (0.45359237 kg, NIST SP 811, B.8).
    expected_load = 30 * 10 * 2 + bench + 12 * 100 * 0.45359237
    assert lifted(made, "as done")[0] == pytest.approx(expected_load)
    assert lifted(made, "as done")[1:] == [0, 0]
    overview_row = next(row for row in made["Overview"].iter_rows(values_only=True) if row[0] == "Week 1")
    assert overview_row[8] == 9


def expected(of: Material) -> dict[tuple[str, str, int], Fraction]:
    """Our figures by table, row and place of the week."""
    weeks = {each.number: place for place, each in enumerate(of.plan.weeks)}
    made: dict[tuple[str, str, int], Fraction] = {}
    for row in volume(of.plan, of.promise).rows:
        made["Direct", row.muscle.title, weeks[row.week]] = row.direct_sets
        made["Fractional", row.muscle.title, weeks[row.week]] = row.fractional_sets
        made["All", row.muscle.title, weeks[row.week]] = row.total_sets
    for each in load_weeks(of.plan, of.promise):
        made["Lifted", "asked", weeks[each.number]] = each.known_load
    for summary in overview(of.plan):
        made["Overview", "sets", weeks[summary.number]] = Fraction(summary.sets)
    return made


def tables(book: Workbook) -> dict[tuple[str, str, int], float]:
    """What the sheets say, under the same keys."""
    found: dict[tuple[str, str, int], float] = {}
    head = ""
    for name, *figures in book["Volume"].iter_rows(min_row=5, values_only=True):
        if name and all(figure is None for figure in figures):
            head = str(name).split()[0]
        elif name and head in ("Direct", "Fractional", "All"):
            found |= {
                (head, str(name), place): number(figure) for place, figure in enumerate(figures) if figure is not None
            }
    for place, figure in enumerate(lifted(book, "as asked")):
        found["Lifted", "asked", place] = figure
    weeks = [row for row in book["Overview"].iter_rows(values_only=True) if str(row[0]).startswith("Week ")]
    return found | {("Overview", "sets", place): number(row[7]) for place, row in enumerate(weeks)}


def lifted(book: Workbook, which: str) -> list[float]:
    row = next(row for row in book["Volume"].iter_rows(values_only=True) if str(row[0]).startswith(which))
    return [number(figure) for figure in row[1:] if figure is not None]


def number(value: Any) -> float:
    assert isinstance(value, int | float), value
    return float(value)


def with_line(made: Plan, name: str, other: Line) -> Plan:
    """The plan with another line for a movement of the first session."""
    (first, *sessions), *_ = (each.sessions for each in made.weeks)
    lines = tuple(other if each.movement.name == name else each for each in first.lines)
    changed = replace(made.weeks[0], sessions=(replace(first, lines=lines), *sessions))
    return replace(made, weeks=(changed, *made.weeks[1:]))


def test_a_year_of_five_days(recalculated: Recalculated) -> None:
    of = material(long(52, 5, 6), Promise())
    shown, ours = tables(recalculated({"year": opened(of)})["year"]), expected(of)
    assert shown == pytest.approx({cell: float(value) for cell, value in ours.items()}, abs=NEAR)
