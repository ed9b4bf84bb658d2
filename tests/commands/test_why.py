"""`why`: where the numbers of a line come from, as a list with places and for programs."""

from __future__ import annotations

import json
import re
import shlex
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import pytest
from click.testing import Result
from jsonschema import Draft202012Validator

from setwright.pipeline import compile
from setwright.report.derivation import of_written_line

Run = Callable[..., Result]

ROOT = Path(__file__).parents[2]
HARBOUR = ROOT / "examples" / "harbour-twelve-weeks"
SCHEMA = json.loads(files("setwright.render").joinpath("derivation.schema.json").read_text())
REFERENCE = (ROOT / "grammar" / "README.md").read_text(encoding="utf-8")


def test_a_percent_of_a_tested_best(club: Path, run: Run) -> None:
    shown = run("why", "pier.plan", "--week", "1", "--day", "Mon", "Back Squat", "--athlete", "Noor")
    assert (shown.exit_code, shown.stderr) == (0, "")
    assert shown.stdout.splitlines() == [
        "Pier for Noor: week 1, block Base, Mon",
        "",
        "Back Squat: 3 × 5 @ 80%, 47.5 kg",
        "  line                  Back Squat: 3 x 5 @ 80%  [pier.plan:6]",
        "  sets         3 sets   as written: `3`",
        "  repetitions  5        as written: `5`",
        "  intensity    80%      as written: `80%`",
        "  load         48 kg    80% of the best, 60 kg",
        "                        the best: tested  [pier.plan:13]",
        "               47.5 kg  rounded to the usual steps  [pier.plan:6]",
    ]


def test_a_track_of_sets_in_a_whole_session(club: Path, run: Run) -> None:
    shown = run("why", "pier.plan", "--week", "2", "--day", "thu").stdout
    assert "  sets         3 sets  working week 2 of 2 in `2 -> 3`\n" in shown


def test_json_is_valid_by_its_schema_and_has_every_athlete(club: Path, run: Run) -> None:
    Draft202012Validator.check_schema(SCHEMA)
    made = json.loads(
        run("why", "pier.plan", "--week", "1", "--day", "Mon", "--athlete", "*", "--format", "json").stdout
    )
    Draft202012Validator(SCHEMA).validate(made)
    assert [plan["athlete"] for plan in made] == ["Ines", "Noor"]
    (line,) = made[1]["lines"]
    load = line["segments"][0]["numbers"][-1]
    assert (load["quantity"], load["value"]) == ("load", "47.5 kg")
    best, rounding = load["steps"]
    assert (best["what"], best["before"], best["after"]) == ("best", "80%", "48 kg")
    assert (best["facts"], best["related"][0]["line"]) == ({"best": "60 kg", "share": "0.8"}, 13)
    assert (rounding["what"], rounding["facts"]) == ("rounding", {"by": "steps"})


@pytest.mark.parametrize("week", range(1, 13))
def test_every_week_of_the_harbour_is_valid_by_the_schema(week: int, run: Run) -> None:
    plan = str(HARBOUR / "harbour-twelve-weeks.plan")
    for day in ("Mon", "Thu", "Sat"):
        typed = ("why", plan, "--athlete", str(HARBOUR / "runa.plan"), "--week", str(week), "--day", day)
        made = json.loads(run(*typed, "--format", "json").stdout)
        Draft202012Validator(SCHEMA).validate(made)
        assert made[0]["lines"]


MOVED = """
athlete "Kari"
  available Tue, Fri
  swap Bench Press for Back Squat
"""


@pytest.mark.parametrize("day", ["Thu", "Fri", "fri"])
@pytest.mark.parametrize("movement", ["Bench Press", "back squat"])
def test_what_an_athlete_moved_or_swapped_is_found_by_either_name(
    day: str, movement: str, club: Path, run: Run
) -> None:
    with (club / "pier.plan").open("a", encoding="utf-8") as file:
        file.write(MOVED)
    shown = run("why", "pier.plan", "--week", "1", "--day", day, movement, "--athlete", "Kari").stdout
    assert "  day          Friday      moved from Thursday to a day that the athlete has  [pier.plan:16]\n" in shown
    assert "  movement     Back Squat  in place of Bench Press: the athlete's own swap  [pier.plan:17]\n" in shown


def test_a_day_by_its_date_and_a_movement_by_its_label(club: Path, run: Run) -> None:
    text = (club / "pier.plan").read_text(encoding="utf-8").replace("  block", "  start 2027-01-04\n  block")
    (club / "pier.plan").write_text(
        text.replace("      Bench", '      Bench Press "light": 2 x 8\n      Bench'), "utf-8"
    )
    typed = ("why", "pier.plan", "--week", "1", "--day", "2027-01-07")
    assert run(*typed, "Bench Press").stdout.count("  line ") == 2
    assert run(*typed, "bench press light").stdout.count("  line ") == 1


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        (("--week", "1", "--day", "Mon", "Back Sqat"), "that session has no `Back Sqat`. Did you mean `Back Squat`?"),
        (("--week", "1", "--day", "Mon", "Bench Press"), "that session has no `Bench Press`. Week 1 has it on Thu."),
        (("--week", "1", "--day", "Mon", "Oar"), "that session has no `Oar`. It has `Back Squat`"),
        (("--week", "1", "--day", "Sun"), "week 1 has no day `Sun`; it has `Mon` and `Thu`"),
        (("--week", "9", "--day", "Mon"), "the plan has no week 9; its weeks are 1 to 2"),
    ],
)
def test_what_is_not_there(typed: tuple[str, ...], said: str, club: Path, run: Run) -> None:
    answer = run("why", "pier.plan", *typed)
    assert (answer.exit_code, answer.stdout) == (2, "")
    assert said in answer.stderr


def test_the_page_has_the_reasons_on_demand(club: Path, run: Run) -> None:
    typed = ("build", "pier.plan", "--athlete", "Noor", "-o", "-")
    plain, told = run(*typed).stdout, run(*typed, "--why").stdout
    assert 'class="why"' not in plain
    assert ".why" not in plain
    assert told.count('<details class="why">') == 4
    assert "<li>47.5\u00a0kg – rounded to the usual steps <small>pier.plan:6</small>" in told


@pytest.mark.parametrize("language", ["de", "fr"])
def test_the_reasons_speak_the_language_of_the_sheet(language: str, club: Path, run: Run) -> None:
    shown = run("build", "pier.plan", "--athlete", "Noor", "--why", "--language", language, "-o", "-").stdout
    reasons = "".join(re.findall(r"<details class=\"why\">.*?</details>", shown, re.DOTALL))
    assert reasons
    assert not {"written", "best", "rounded", "working"} & {*re.findall(r"\w+", reasons)}
    assert "47,5\u00a0kg" in reasons


def test_errors_end_the_run_and_warnings_are_left_to_check(club: Path, run: Run) -> None:
    (club / "pier.plan").write_text((club / "pier.plan").read_text(encoding="utf-8").replace("80%", "80"), "utf-8")
    answer = run("why", "pier.plan", "--week", "1", "--day", "Mon")
    assert answer.exit_code == 1
    assert "missing-unit" in answer.stderr


def test_all_weeks_of_one_written_line() -> None:
    path = str(HARBOUR / "harbour-twelve-weeks.plan")
    (one,) = compile(path).compilations
    number = next(at for at, line in enumerate(Path(path).read_text().splitlines(), 1) if "Face Pull:" in line)
    found = of_written_line(one.plan, path, number)
    assert [each.week.number for each in found] == list(range(1, 12))
    assert {each.line.movement.name for each in found} == {"Face Pull"}


def test_what_the_reference_shows_is_what_is_printed(monkeypatch: pytest.MonkeyPatch, run: Run) -> None:
    monkeypatch.chdir(ROOT)
    blocks = re.findall(r"^```console\n\$ setwright (why .*)\n((?:.*\n)*?)```$", REFERENCE, re.MULTILINE)
    assert blocks
    for typed, output in blocks:
        assert run(*shlex.split(typed)).stdout == output
