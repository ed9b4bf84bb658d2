"""`compare`: whole plans side by side, one week over several days, in every format, and what it refuses."""

from __future__ import annotations

import csv
import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

Run = Callable[..., Result]

# Beside `pier.plan` (Monday 3 sets of squats; Thursday 2, then 3 of bench, which counts half for the quads).
QUAY = """\
use "moves.plan"

plan "Quay"
  must session-sets for chest <= 3
  should weekly-sets for quads 10-12
  block Base: 2 weeks
    day Mon
      Bench Press: 4 x 8 @ RPE 9, rest 3 min
    day Fri
      Back Squat: 2 x 5 @ RPE 8, rest 3 min
"""


@pytest.fixture
def quay(club: Path) -> Path:
    (club / "quay.plan").write_text(QUAY, encoding="utf-8")
    return club


def test_the_table(quay: Path, run: Run) -> None:
    answer = run("compare", "pier.plan", "quay.plan", "--ceiling", "3")
    assert (answer.exit_code, answer.stderr) == (0, "")
    lines = [" ".join(line.split()) for line in answer.stdout.splitlines()]
    # Squats 3 x 5: 60 s and two rests of 120 s. Bench 2 to 3 x 8: 64 + 120 s, 96 + 240 s.
    # In Quay, with its own rest: 4 x 32 + 540 s, 2 x 20 + 180 s.
    assert lines[lines.index("Whole plans") :] == [
        "Whole plans",
        "Minutes are estimated. A rule counts as broken once for each muscle and day that it is broken for,",
        *("in however many weeks.", "Pier Quay"),
        *("Working weeks 2 of 2 2 of 2", "Sessions a week 2 2"),
        *("Minutes a session 5 (3-6) 7 (4-11)", "Minutes a week 9 (8-11) 15"),
        *("Hours between exposures, by sets 168 168", "Rules broken: must 0 1", "Rules broken: should 0 1"),
        *("", "Sets a week", "Pier Quay", "Quadriceps 4.3 (4-4.5) 4", "Chest 2.5 (2-3) 4"),
        *("", "Largest session, sets"),
        "The most sets for a muscle in one session. Where they are drawn, the ceiling of 3 is marked.",
        *("Pier Quay", "Quadriceps 3 2", "Chest 3 4"),
        *("", "Sets a week past 3 a session"),
        "Those that come after the ceiling of their session. Muscles without any are left out.",
        *("Pier Quay", "Chest 0 1"),
        *("", "Exposures a week"),
        "Sessions with a direct set: one of a movement that trains the muscle first.",
        *("Pier Quay", "Quadriceps 1 1", "Chest 1 1"),
        *("", "Shortest hours between exposures", "In whole days of 24 hours, also across weeks."),
        *("Pier Quay", "Quadriceps 168 168", "Chest 168 168"),
        *("", "Hours between exposures, by sets"),
        "How long after the exposure before it a direct set comes, as a mean over all sets: a gap weighs as",
        *("many sets as come after it.", "Pier Quay", "Quadriceps 168 168", "Chest 168 168"),
        *("", "Effort by week: highest, mean"),
        "RPE of the hardest set that states one, then the mean of those sets. D: a deload week, T: a test",
        "week. A week where fewer than half of the sets state an effort has neither.",
        *("Pier Quay", "Week 1 - 9, 8.7", "Week 2 8, 8 9, 8.7"),
    ]


def test_csv_has_a_column_a_plan_and_json_the_same_figures(quay: Path, run: Run) -> None:
    files = ("compare", "pier.plan", "quay.plan", "--ceiling", "3", "--format")
    rows = list(csv.DictReader(run(*files, "csv").stdout.splitlines()))
    found = {(row["figure"], row["of"], row["value"]): (row["Pier"], row["Quay"]) for row in rows}
    assert found["sets", "quads", "mean"] == ("4.25", "4")
    assert found["beyond_ceiling", "chest", "high"] == ("0", "1")
    assert found["broken_must", "", ""] == ("0", "1")
    assert found["ceiling", "", ""] == ("3", "3")
    assert found["kind", "week 1", ""] == ("working", "working")
    assert found["effort", "week 1", "highest"] == ("", "9")  # two of five sets in Pier's first week state an effort
    told = json.loads(run(*files, "json").stdout)
    assert told["ceiling"] == 3
    pier, other = told["plans"]
    assert pier["muscles"][0]["sets"] == {"mean": 4.25, "low": 4, "high": 4.5}
    assert pier["weeks"][0] == {
        "week": 1,
        "kind": "working",
        "sets": 5,
        "sets_with_effort": 2,
        "highest_effort": 8,
        "mean_effort": 8,
    }
    assert (other["heading"], other["file"], other["broken"]) == ("Quay", "quay.plan", {"must": 1, "should": 1})


def test_one_week_over_several_days(quay: Path, run: Run) -> None:
    answer = run("compare", "--spread", "1,2", "quay.plan", "--format", "csv")
    rows = list(csv.reader(answer.stdout.splitlines()))
    assert rows[0][4:] == ["As written, 2 days", "1 day", "2 days"]
    found = {tuple(row[:3]): row[4:] for row in rows}
    assert found["sets", "chest", "mean"] == ["4", "4", "4"]
    assert found["largest_session", "chest", ""] == ["4", "4", "2"]  # four sets of bench are cut into two and two
    assert found["exposures", "chest", "mean"] == ["1", "1", "2"]
    assert found["shortest_hours", "chest", ""] == ["168", "168", "72"]
    assert found["broken_must", "", ""] == ["1", "1", "0"]


def test_plans_in_one_file_and_athletes_count_each(quay: Path, run: Run) -> None:
    (quay / "both.plan").write_text(QUAY + QUAY.split("\n", 2)[2].replace("Quay", "Mole"), encoding="utf-8")
    assert headings(run("compare", "both.plan", "--format", "json")) == ["Quay", "Mole"]
    fitted = run("compare", "pier.plan", "--athlete", "*", "--format", "json")
    assert headings(fitted) == ["Pier, for Ines", "Pier, for Noor"]


def test_a_file_heads_its_column_where_names_repeat(quay: Path, run: Run) -> None:
    (quay / "other.plan").write_text(QUAY, encoding="utf-8")
    answer = run("compare", "quay.plan", "other.plan", "quay.plan", "--format", "json")
    assert headings(answer) == ["Quay (quay.plan)", "Quay (other.plan)"]


def test_names_command_neither_terminal_nor_spreadsheet_nor_page(quay: Path, run: Run) -> None:
    (quay / "quay.plan").write_text(QUAY.replace('"Quay"', '"=Qu\u202ea<b>y"'), encoding="utf-8")
    files = ("compare", "pier.plan", "quay.plan")
    assert "=Qu\\u202ea<b>y" in run(*files).stdout
    assert ",'=Qu" in run(*files, "--format", "csv").stdout.splitlines()[0]
    assert "<b>y" not in run(*files, "--format", "html").stdout


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("pier.plan",), "nothing to stand beside"),
        (("pier.plan", "nowhere.plan"), "no such file"),
        (("--spread", "2,3", "pier.plan", "quay.plan"), "takes one plan, and these are 2"),
        (("--spread", "2,x", "pier.plan"), "`x` is not a number of days from 1 to 7"),
        (("--spread", "8", "pier.plan"), "`8` is not a number of days"),
        (("--spread", "0", "pier.plan"), "`0` is not a number of days"),
        (("--spread", "", "pier.plan"), "`` is not a number of days"),
        (("--spread", "2", "rest.plan"), "has no working week with sets"),
        (("pier.plan", "quay.plan", "--ceiling", "0"), "--ceiling"),
    ],
)
def test_what_cannot_be_compared(quay: Path, run: Run, arguments: tuple[str, ...], said: str) -> None:
    (quay / "rest.plan").write_text('plan "Rest"\n  block Base: 1 week\n    day Mon\n      note "Walk."\n')
    answer = run("compare", *arguments)
    assert (answer.exit_code, answer.stdout) == (2, "")
    assert said in answer.stderr


def test_errors_end_it_and_broken_rules_do_not(quay: Path, run: Run) -> None:
    (quay / "pier.plan").write_text((quay / "pier.plan").read_text().replace("Back Squat: 3", "Bak Squat: 3"))
    answer = run("compare", "quay.plan", "pier.plan")
    assert (answer.exit_code, answer.stdout) == (1, "")
    assert "SW0201" in answer.stderr
    assert "SW06" not in answer.stderr


def test_plans_that_train_nothing(quay: Path, run: Run) -> None:
    (quay / "rest.plan").write_text('plan "Rest"\n  block Base: 1 week\n    day Mon\n      note "Walk."\n')
    for form in ("table", "csv", "json", "html"):
        for files in (("rest.plan", "pier.plan"), ("rest.plan", "rest.plan", "quay.plan")):
            answer = run("compare", *files, "--format", form)
            assert answer.exit_code == 0, answer.output


def headings(answer: Result) -> list[str]:
    return [plan["heading"] for plan in json.loads(answer.stdout)["plans"]]
