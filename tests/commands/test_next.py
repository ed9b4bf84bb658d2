"""`next`: which session it is, and how it is shown in the terminal, as Markdown and as a page."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from sheets.logged_plans import ATHLETE, LOG, PLAN

Run = Callable[..., Result]

MINE = ("next", "plan.plan", "--athlete", "signe.plan")


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    for name, text in (("plan.plan", PLAN), ("signe.plan", ATHLETE), ("log.plan", LOG)):
        (tmp_path / name).write_text(text, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def heads(shown: Result) -> list[str]:
    assert (shown.exit_code, shown.stderr) == (0, "")
    return shown.stdout.splitlines()[:3]


def test_the_session_after_the_last_done_one(here: Path, run: Run) -> None:
    assert heads(run(*MINE, "--log", "log.plan", "--on", "2027-01-15")) == [
        "Breakwater \u2013 Signe",
        "Friday \u00b7 15 January 2027 (today) \u00b7 about 11 min",
        "Week 2: Base, week 2 of 3 \u00b7 session 6 of 9",
    ]


def test_a_session_that_is_late_says_so(here: Path, run: Run) -> None:
    assert "(its day has passed)" in heads(run(*MINE, "--log", "log.plan", "--on", "2027-01-18"))[1]


@pytest.mark.parametrize(("on", "number"), [("2026-12-01", 1), ("2027-01-04", 1), ("2027-01-05", 2), ("2027-01-10", 4)])
def test_without_a_log_the_first_from_the_day_on(on: str, number: int, here: Path, run: Run) -> None:
    assert heads(run(*MINE, "--on", on))[2].endswith(f"session {number} of 9")


def test_a_plan_without_dates_begins_at_its_beginning(here: Path, run: Run) -> None:
    (here / "plan.plan").write_text(PLAN.replace("  start 2027-01-04\n", ""), encoding="utf-8")
    shown = heads(run(*MINE, "--on", "2030-01-01"))
    assert re.fullmatch(r"Monday: Long \u00b7 about \d+ min", shown[1])
    assert shown[2].endswith("session 1 of 9")


def test_any_session_by_its_number(here: Path, run: Run) -> None:
    assert heads(run(*MINE, "--session", "9", "--on", "2027-01-01"))[2].endswith("session 9 of 9")
    refused = run(*MINE, "--session", "10")
    assert refused.exit_code == 2
    assert "there is no session 10: Breakwater has 9 sessions" in refused.stderr


def test_the_end_of_the_plan(here: Path, run: Run) -> None:
    shown = run(*MINE, "--on", "2027-01-23")
    assert (shown.exit_code, shown.stdout.replace("\u00a0", " ")) == (
        0,
        "Breakwater \u2013 Signe: no session is left; the last was planned for 22 January 2027.\n",
    )
    page = run(*MINE, "--on", "2027-01-23", "--format", "html")
    assert (page.exit_code, page.stdout) == (0, "")
    assert "no session is left" in page.stderr


def test_a_session_left_out_on_days_away_is_passed_over(here: Path, run: Run) -> None:
    away = 'athlete "Signe"\n  away 2027-01-15 to 2027-01-19 "Travel", skip\n'
    (here / "signe.plan").write_text(ATHLETE.replace('athlete "Signe"\n', away), encoding="utf-8")
    assert heads(run(*MINE, "--log", "log.plan", "--on", "2027-01-15"))[2].endswith("session 8 of 9")


def test_the_layout_of_the_terminal(here: Path, run: Run) -> None:
    (here / "plan.plan").write_text(
        PLAN.replace("3 x 5 @ RPE 8", "3 x 5 @ RPE 8, rest 3 min, warm-up 50% x 5, 75% x 3"), encoding="utf-8"
    )
    plates = "  bar 20 kg\n  plates 4x20, 2x10, 2x5, 2x2.5 kg\n"
    (here / "signe.plan").write_text(ATHLETE + plates, encoding="utf-8")
    shown = run(*MINE, "--on", "2027-01-04").stdout
    body = shown.split("\u2500" * 80 + "\n")[1].splitlines()
    assert body[:4] == [
        " 1  Back Squat",
        "    Warm-up  40 kg \u00d7 5, 60 kg \u00d7 3",
        "    3 \u00d7 5           80 kg              @ RPE 8  each side: 20 + 10",
        "    rest 3 min",
    ]
    assert " 2  Chin-Up" in body
    assert "    2 \u00d7 6\u201310        bodyweight + 5 kg" in body
    assert "    2 \u00d7 8 per side  ____ kg            @ 2 RIR" in body


@pytest.mark.parametrize("session", range(1, 59, 6))
def test_lines_keep_to_80_columns_and_end_in_the_cautions(session: int, run: Run) -> None:
    folder = Path(__file__).parents[2] / "examples" / "harbour-twelve-weeks"
    athlete = ("--athlete", str(folder / "runa.plan"))
    shown = run("next", str(folder / "harbour-twelve-weeks.plan"), *athlete, "--session", str(session)).stdout
    assert max(map(len, shown.splitlines())) <= 80
    foot = " ".join(shown.rpartition("\u2500" * 80)[2].split())
    for said in ("Warm up", "safety bars", "Stop at sharp or unusual pain", "doctor", "licensed professional"):
        assert said in foot


def test_markdown(here: Path, run: Run) -> None:
    shown = run(*MINE, "--log", "log.plan", "--on", "2027-01-15", "--format", "md").stdout
    assert shown.startswith("# Breakwater\n\nAthlete: Signe\n\n## Week 2: Base, week 2 of 3\n")
    assert shown.count("### ") == 1
    assert "| 1 | **Bench Press** | 3 \u00d7 8 | **60 kg** |" in shown
    assert "## Cautions" in shown


def test_a_page_of_one_session(here: Path, run: Run) -> None:
    page = run(*MINE, "--log", "log.plan", "--on", "2027-01-15", "--format", "html").stdout
    assert page.count("<article") == 1
    assert 'data-session="2027-01-15"' in page
    assert "Heavy and maximal sets" in page
    assert re.search(r"(?:src|href)=\"(?!#|data:)", page) is None
    linked = set(re.findall(r'href="#([^"]+)"', page))
    assert linked <= set(re.findall(r'id="([^"]+)"', page))


def test_a_page_is_of_one_plan(here: Path, run: Run) -> None:
    (here / "signe.plan").write_text(f'{ATHLETE}\nathlete "Ottar"\n', encoding="utf-8")
    refused = run(*MINE, "--format", "html", "--on", "2027-01-04")
    assert refused.exit_code == 2
    assert "name one --athlete" in refused.stderr
    assert run(*MINE, "--on", "2027-01-04").stdout.count("Week 1: Base") == 2


def test_in_another_language(here: Path, run: Run) -> None:
    shown = heads(run(*MINE, "--on", "2027-01-04", "--language", "de"))
    assert shown[1].startswith("Montag: Long \u00b7 4. Januar 2027 (heute)")


def test_what_is_missing_is_said(here: Path, run: Run) -> None:
    assert "nothing.plan: no such file" in run("next", "nothing.plan").stderr
    assert "nothing.plan: no such file" in run(*MINE, "--log", "nothing.plan").stderr
    assert run("next", "signe.plan").exit_code == 2
