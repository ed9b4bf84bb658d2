"""`new`: every starter makes a folder that compiles, and nothing is overwritten."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from setwright.cli.new import starters

Run = Callable[..., Result]
STARTERS = [name for name, _ in starters()]


@pytest.fixture(autouse=True)
def elsewhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_the_list_says_what_each_is(run: Run) -> None:
    lines = run("new", "--list").stdout.splitlines()
    assert [line.split(": ")[0] for line in lines] == STARTERS
    assert len(STARTERS) >= 4
    assert all(len(line.split(": ", 1)[1]) > 10 for line in lines)


@pytest.mark.parametrize("starter", STARTERS)
def test_every_starter_compiles_with_its_athlete_and_log(starter: str, run: Run) -> None:
    answer = run("new", 'Pier "Nord" \\ 深蹲', "--from", starter)
    assert answer.exit_code == 0, answer.output
    folder = Path("pier-nord-深蹲")
    assert sorted(os.listdir(folder)) == ["athlete.plan", "log.plan", "pier-nord-深蹲.plan"]
    for file in folder.iterdir():
        assert file.read_text(encoding="utf-8").startswith("# ")
        checked = run("check", str(file))
        assert checked.exit_code == 0, checked.stdout
    plan, athlete = folder / "pier-nord-深蹲.plan", folder / "athlete.plan"
    built = run("build", str(plan), "--athlete", str(athlete), "--format", "json", "-o", "-")
    assert built.exit_code == 0, built.stderr
    assert '"name": "Pier \\"Nord\\" \\\\ 深蹲"' in built.stdout
    assert '"author": null' in built.stdout


def test_it_says_what_to_do_next(run: Run) -> None:
    answer = run("new", "Pier")
    assert answer.stdout == ""
    last = answer.stderr.splitlines()[-1]
    assert last == "Now: setwright build pier/pier.plan --athlete pier/athlete.plan"
    assert run(*last.split()[2:]).exit_code == 0


def test_nothing_is_overwritten(run: Run) -> None:
    run("new", "Pier")
    Path("pier/pier.plan").unlink()
    Path("pier/log.plan").write_text("mine")
    before = {path: path.read_bytes() for path in Path("pier").iterdir()}
    answer = run("new", "Pier")
    assert answer.exit_code == 2
    assert "is already there" in answer.stderr
    assert {path: path.read_bytes() for path in Path("pier").iterdir()} == before


def test_a_folder_of_ones_own_choice(run: Run) -> None:
    assert run("new", "../Pier", "-o", "plans/spring").exit_code == 0
    assert sorted(os.listdir("plans/spring")) == ["athlete.plan", "log.plan", "pier.plan"]
    assert os.listdir(".") == ["plans"]


@pytest.mark.parametrize("name", ["Athlete", "log"])
def test_a_name_that_another_file_has(name: str, run: Run) -> None:
    assert run("new", name, "-o", "here").exit_code == 0
    assert len(os.listdir("here")) == 3


def test_an_unknown_starter_is_met_with_a_near_one(run: Run) -> None:
    answer = run("new", "Pier", "--from", "five-day")
    assert answer.exit_code == 2
    assert "`five-days`" in answer.stderr
    assert os.listdir(".") == []
