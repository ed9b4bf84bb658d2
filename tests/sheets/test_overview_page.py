"""The overview: what rules ask beside the sets, marks that need no colour, the main lifts, dates, minutes."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest

from build_plans import BENCH, CURL, SQUAT, day, deload, line, percent, plan, promise, rpe, rule, segment, waiver, week
from setwright.diagnostics import Severity
from setwright.plan import Plan
from setwright.render import aims, html, tables
from setwright.render.html.lift_charts import lift_charts
from setwright.render.language import ENGLISH
from setwright.render.markdown import text as markdown
from setwright.render.material import Material
from setwright.render.tables import Grid, Record
from setwright.report.main_lifts import LiftWeek, MainLift, main_lifts
from setwright.report.overview import overview
from setwright.report.targets import targets
from setwright.report.volume import volume
from setwright.rules import Promise
from setwright.science.counting import Counting
from sheets.sample_plans import long, small

MADE = plan(
    week(day("Mon", line(BENCH, 8), line(CURL, 2))),
    week(day("Mon", line(BENCH, 12), line(CURL, 2))),
    deload(day("Mon", line(BENCH, 2))),
    week(day("Mon", line(BENCH, 22))),
)
NONE = Promise()


def material(of: Plan, asked: Promise = NONE) -> Material:
    return Material(of, volume(of, asked), overview(of), asked)


def page(of: Plan, asked: Promise = NONE) -> str:
    made = html.page(material(of, asked))
    return re.split(r'<section class="overview"', made)[1].split("</section>")[0]


def grid(asked: Promise, of: Plan = MADE) -> Grid:
    made = material(of, asked)
    found = targets(of, asked)
    return tables.sets_grids(of, made.volume, made.overview, ENGLISH, found, asked.counting)[0]


def row(title: str, asked: Promise, of: Plan = MADE) -> Record:
    return next(record for record in grid(asked, of).records if record.title == title)


def ranges(*rules: object) -> tuple[str, ...]:
    return tuple(text.replace("\u00a0", " ") for text in row("Chest", promise(*rules)).aside)  # type: ignore[arg-type]


# ---- sets and what is asked --------------------------------------------------------------------------


def test_signs_point_to_where_a_week_lies_and_words_say_it() -> None:
    chest = row("Chest", promise(rule("weekly-sets", "chest", 10, 20)))
    assert [cell.text for cell in chest.cells] == ["8", "12", "2", "22"]
    assert [cell.mark and cell.mark.sign for cell in chest.cells] == ["\u25bc", None, None, "\u25b2"]
    assert chest.cells[0].mark is not None
    assert chest.cells[0].mark.said == "below the 10\u201320 asked for"


def test_a_waived_week_has_a_hollow_sign() -> None:
    asked = promise(rule("weekly-sets", "chest", 10), waivers=(waiver("weekly-sets", "chest", weeks=(1,)),))
    marks = [cell.mark for cell in row("Chest", asked).cells if cell.mark]
    assert [(mark.sign, mark.said) for mark in marks] == [("\u25bd", "below the \u2265\u00a010 asked for, waived")]


@pytest.mark.parametrize(
    ("rules", "said"),
    [
        ([rule("weekly-sets", "chest", 10, 20)], ("10\u201320",)),
        ([rule("weekly-sets", "chest", 10)], ("\u2265 10",)),
        ([rule("weekly-sets", "chest", high=20)], ("\u2264 20",)),
        ([rule("weekly-sets", "chest", 4, strict=True)], ("> 4",)),
        ([rule("weekly-sets", "chest", 10, 20, severity=Severity.ERROR)], ("10\u201320 must",)),
        (
            [rule("weekly-sets", "chest", 10, severity=Severity.ERROR), rule("weekly-sets", "chest", high=20)],
            ("\u2265 10 must, \u2264 20",),
        ),
        ([rule("weekly-sets", "chest", 10, weeks=(1, 2))], ("wk 1\u20132: \u2265 10",)),
        (
            [rule("weekly-sets", "chest", 10, weeks=(1, 4)), rule("weekly-sets", "chest", 12, weeks=(2,))],
            ("wk 1, 4: \u2265 10", "wk 2: \u2265 12"),
        ),
        ([rule("weekly-sets", "chest", 4, every_week=True)], ("\u2265 4",)),
    ],
)
def test_what_is_asked_in_words(rules: list[object], said: tuple[str, ...]) -> None:
    assert ranges(*rules) == said


def test_no_rule_no_column_and_no_key() -> None:
    assert grid(NONE).aside is None
    assert aims.key(targets(MADE, NONE), ENGLISH) == ""
    assert "Asked for" not in page(MADE)


def test_the_key_names_the_signs_that_there_are() -> None:
    def key(*rules: object) -> str:
        return aims.key(targets(MADE, promise(*rules)), ENGLISH).replace("\u00a0", " ")  # type: ignore[arg-type]

    assert key(rule("weekly-sets", "chest", 10)) == "\u25bc below what the plan\u2019s rules ask for."
    assert "\u25b2 above it" in key(rule("weekly-sets", "chest", 10, 20))
    assert key(rule("weekly-sets", "chest", 1)) == "No week lies outside what the plan\u2019s rules ask for."


def test_a_group_has_a_row_of_its_own_and_weeks_that_rules_leave_out_are_empty_there() -> None:
    arms = row("Arms", promise(rule("weekly-sets", "arms", 7)))
    assert [cell.text for cell in arms.cells] == ["6", "8", "", "11"]
    assert [bool(cell.mark) for cell in arms.cells] == [True, False, False, False]


def test_a_muscle_that_is_asked_for_and_never_trained_has_a_row() -> None:
    quads = row("Quads", promise(rule("weekly-sets", "quads", 4)))
    assert [(cell.text, bool(cell.mark)) for cell in quads.cells] == [
        ("\u2013", True),
        ("\u2013", True),
        ("\u2013", False),
        ("\u2013", True),
    ]


@pytest.mark.parametrize(
    ("counting", "sets"),
    [
        (Counting.DIRECT, ["\u2013"] * 4),
        (Counting.FRACTIONAL, ["4", "6", "1", "11"]),
        (Counting.TOTAL, ["8", "12", "2", "22"]),
    ],
)
def test_sets_are_counted_as_the_rules_count(counting: Counting, sets: list[str]) -> None:
    assert [cell.text for cell in row("Triceps", promise(counting=counting)).cells] == sets


def test_the_page_says_the_range_and_the_mark_for_ear_and_eye() -> None:
    made = page(MADE, promise(rule("weekly-sets", "chest", 10, 20)))
    assert '<th scope="col" class="aside">Asked for</th>' in made
    assert '<td class="aside">10\u201320</td>' in made
    assert 'aria-hidden="true">\u25bc</i><span class="unseen"> below the 10\u201320 asked for</span>' in made


def test_markdown_has_the_range_and_the_signs() -> None:
    made = markdown(material(MADE, promise(rule("weekly-sets", "chest", 10, 20))))
    assert "| Chest | 10\u201320 | 8\u25bc | 12 | 2 | 22\u25b2 |" in made
    assert "| Muscle | Asked for | 1 | 2 | 3 D | 4 |" in made


def test_one_week_keeps_what_the_whole_plan_asks() -> None:
    asked = promise(rule("weekly-sets", "every muscle", 4))
    whole = material(MADE, asked)
    alone = plan(MADE.weeks[3])
    found = targets(MADE, asked).within({1})
    made = html.page(Material(alone, whole.volume, whole.overview[3:], asked, found))
    assert "Asked for" in made


# ---- minutes -----------------------------------------------------------------------------------------


def test_minutes_have_a_range_and_a_sum() -> None:
    made = material(MADE)
    grid = tables.minutes_grids(MADE, made.overview, ENGLISH)[0]
    minutes = [week.minutes for week in made.overview]
    least, most = (ENGLISH.number(end(minutes), 0) for end in (min, max))
    assert grid.records[0].aside == (f"{least}\u2013{most}",)
    hours = ENGLISH.number(sum(minutes, Fraction(0)) / 60, 0)
    assert tables.in_all(made.overview, ENGLISH) == f"About {hours} hours in all."


# ---- main lifts --------------------------------------------------------------------------------------


def lift(*readings: tuple[float | None, float | None]) -> MainLift:
    """A lift by effort and percent a week."""
    weeks = plan(*(week() for _ in readings)).weeks
    return MainLift(
        "Back Squat",
        10,
        tuple(
            LiftWeek(each.number, each.kind, *(None if one is None else Fraction(one) for one in pair))
            for each, pair in zip(weeks, readings, strict=True)
        ),
    )


def test_numbers_stand_at_the_points_and_a_week_without_breaks_the_line() -> None:
    made = lift_charts([lift((8, 80), (None, 82.5), (9, None), (9, 87.25))], ENGLISH)
    assert made is not None
    percents, efforts = made.charts[0].strips
    assert [text for _, _, text in percents.numbers] == ["80", "82.5", "87"]
    assert [text for _, _, text in efforts.numbers] == ["8", "9", "9"]
    assert (percents.line.count("M"), efforts.line.count("M")) == (2, 2)
    assert percents.dots.count("M") == 3
    assert [float(y) for _, y, _ in percents.numbers] == sorted(
        (float(y) for _, y, _ in percents.numbers), reverse=True
    )


def test_a_chart_in_words() -> None:
    made = lift_charts([lift((8, 80), (None, None))], ENGLISH)
    assert made is not None
    assert made.charts[0].said == "Highest percent of the best, week 1: 80. Hardest stated effort (RPE), week 1: 8."


def test_strips_that_no_lift_has_are_left_out() -> None:
    made = lift_charts([lift((8, None), (9, None))], ENGLISH)
    assert made is not None
    assert made.parts == ("effort",)
    assert made.best is None
    assert lift_charts([lift((None, None), (None, None))], ENGLISH) is None


def test_one_week_is_no_chart() -> None:
    assert lift_charts([lift((8, 80))], ENGLISH) is None


def test_the_page_draws_every_main_lift_and_says_what_is_missing() -> None:
    heavy = line(SQUAT, segment(3, 5, percent(80)))
    felt = line(BENCH, segment(3, 5, rpe(8)))
    made = page(plan(week(day("Mon", heavy), day("Tue", felt)), deload(day("Mon", heavy), day("Tue", felt))))
    assert re.findall(r'<figcaption id="lift-\d" dir="auto">(.*?)<', made) == ["Back Squat", "Bench Press"]
    assert "no effort stated" in made
    assert "no percent known" in made
    assert made.count("<use ") == 1
    assert 'fill="url(#deload)"' in made


def test_charts_of_a_year_number_some_weeks_only() -> None:
    made = lift_charts(main_lifts(long(52)), ENGLISH)
    assert made is not None
    assert all(len(strip.numbers) <= 14 for chart in made.charts for strip in chart.strips)
    assert len(made.ticks) <= 14


# ---- dates -------------------------------------------------------------------------------------------


def test_weeks_say_when_they_begin_and_a_month_stands_where_it_begins() -> None:
    made = page(small())
    assert re.findall(r'<text class="date"[^>]*>(\d+)<', made) == ["4", "11", "18"]
    assert re.findall(r'<text class="date month"[^>]*>(\w+)<', made) == ["Jan"]
    assert "Begins" in made


def test_a_plan_without_dates_has_no_row_for_them() -> None:
    assert "Begins" not in page(MADE)
