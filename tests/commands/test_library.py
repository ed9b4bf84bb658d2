"""`library`: search, and one thing whole."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

Run = Callable[..., Result]


def test_a_name_shows_one_movement_whole(club: Path, run: Run) -> None:
    for asked in (("Back Squat",), ("back", "squat"), ("BACK SQUAT",)):
        shown = run("library", *asked).stdout.splitlines()
        assert shown[0] == "Back Squat"
        facts = dict(line.strip().split(": ", 1) for line in shown[1:])
        assert {"pattern", "works", "needs", "load", "swap for", "cue", "declared"} <= set(facts)
        assert facts["pattern"] == "squat"
        assert facts["declared"].startswith("stdlib/exercises/squat.plan:")


@pytest.mark.parametrize(
    ("asked", "heading"),
    [("equipment", "Equipment"), ("muscles", "Muscles"), ("exercises", "Movements"), ("rules", "Rule sets")],
)
def test_a_kind_lists_what_there_is_of_it(asked: str, heading: str, run: Run) -> None:
    shown = run("library", asked).stdout.splitlines()
    assert shown[0] == heading
    assert len([line for line in shown if line.startswith("  ")]) == len(shown) - 1 > 4


@pytest.mark.parametrize(
    ("asked", "within"),
    [
        ("quads", "worked by: "),
        ("delts", "muscles: front-delts, side-delts, rear-delts"),
        ("barbell", "needed by: "),
        ("double-climb", "otherwise: reps + 1"),
        ("hypertrophy", "should weekly-sets for "),
        ("five-days", "  parameters:\n    press-lift = Bench Press (a movement)\n"),
        ("five-days", "\ntemplate five-days("),
    ],
)
def test_every_kind_can_be_shown_whole(asked: str, within: str, run: Run) -> None:
    answer = run("library", asked)
    assert answer.exit_code == 0
    assert answer.stdout.startswith(asked)
    assert within in answer.stdout


def test_a_word_finds_all_that_is_about_it(run: Run) -> None:
    shown = run("library", "split").stdout
    assert shown.startswith("Movements\n  ")
    assert "Rear-Foot-Elevated Split Squat" in shown
    assert "Bench Press" not in shown


def test_without_a_word_all_kinds_are_listed(run: Run) -> None:
    lines = run("library").stdout.splitlines()
    headings = [line for line in lines if line and not line.startswith(" ")]
    assert headings == ["Movements", "Muscles", "Groups", "Equipment", "Rule sets", "Progressions", "Templates"]
    assert len(lines) > 150


def test_a_library_of_ones_own(club: Path, run: Run) -> None:
    shown = run("library", "squat", "--in", "pier.plan").stdout
    assert shown.startswith("Back Squat\n")
    assert "declared: moves.plan:" in shown


def test_a_near_miss_gets_a_suggestion(run: Run) -> None:
    answer = run("library", "Bak Squat")
    assert answer.exit_code == 2
    assert "`Back Squat`" in answer.stderr


def test_a_file_that_is_not_there(run: Run) -> None:
    assert run("library", "--in", "nothing.plan").stderr == "setwright: nothing.plan: no such file\n"


def test_names_cannot_command_the_terminal(club: Path, run: Run) -> None:
    (club / "moves.plan").write_text((club / "moves.plan").read_text().replace('"Quadriceps"', '"Q\u202eu"'))
    assert "Q\\u202eu" in run("library", "quads", "--in", "moves.plan").stdout
