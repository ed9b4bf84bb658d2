"""`build`: sheets in a folder or on standard output, or nothing at all."""

from __future__ import annotations

import csv
import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

Run = Callable[..., Result]


def names(folder: Path) -> list[str]:
    """What a folder holds, hidden files left out."""
    return sorted(path.name for path in folder.iterdir() if not path.name.startswith("."))


def test_html_into_sheets_is_what_one_gets(club: Path, run: Run) -> None:
    answer = run("build", "pier.plan")
    assert (answer.exit_code, answer.stdout, answer.stderr) == (0, "", "wrote sheets/pier.html\n")
    assert (club / "sheets" / "pier.html").read_text(encoding="utf-8").startswith("<!DOCTYPE html>")


def test_a_file_for_each_athlete_and_format(club: Path, run: Run) -> None:
    (club / "ana.plan").write_text('use "moves.plan"\nathlete "Ana"\n  best Back Squat: 80 kg\n')
    arguments = ("--athlete", "Ines", "--athlete", "ana.plan", "--format", "csv,md", "--format", "json", "-o", "out")
    answer = run("build", "pier.plan", *arguments)
    assert answer.exit_code == 0, answer.output
    expected = [f"pier-{athlete}.{form}" for athlete in ("ana", "ines") for form in ("csv", "json", "md")]
    assert names(club / "out") == expected
    assert sorted(answer.stderr.splitlines()) == [f"wrote out/{name}" for name in expected]
    ana = json.loads((club / "out" / "pier-ana.json").read_text(encoding="utf-8"))
    assert ana["plan"]["athlete"] == "Ana"


def test_one_week_keeps_its_figures(club: Path, run: Run) -> None:
    assert run("build", "pier.plan", "--format", "html,md,csv,json", "--week", "2").exit_code == 0
    assert names(club / "sheets") == [f"pier-week-2.{form}" for form in ("csv", "html", "json", "md")]
    rows = list(csv.DictReader((club / "sheets" / "pier-week-2.csv").read_text().splitlines()))
    assert {row["week"] for row in rows} == {"2"}
    document = json.loads((club / "sheets" / "pier-week-2.json").read_text())
    assert [week["number"] for week in document["plan"]["weeks"]] == [2]
    whole = json.loads(run("build", "pier.plan", "--format", "json", "-o", "-").stdout)
    assert document["volume"] == [row for row in whole["volume"] if row["week"] == 2]


def test_a_week_that_is_not_there(club: Path, run: Run) -> None:
    answer = run("build", "pier.plan", "--week", "3")
    assert (answer.exit_code, answer.stderr) == (2, "setwright: there is no week 3: Pier has 2 weeks\n")
    assert not (club / "sheets").exists()


def test_errors_are_told_and_nothing_is_written(club: Path, run: Run) -> None:
    (club / "pier.plan").write_text((club / "pier.plan").read_text().replace("Back Squat: 3", "Bak Squat: 3"))
    answer = run("build", "pier.plan")
    assert answer.exit_code == 1
    assert answer.stdout == ""
    assert "pier.plan:6:7: error[SW0201 unknown-movement]" in answer.stderr
    assert not (club / "sheets").exists()


def test_a_build_that_cannot_be_rendered_leaves_what_was_there(
    club: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    run("build", "pier.plan", "--format", "csv")
    before = (club / "sheets" / "pier.csv").read_bytes()
    (club / "pier.plan").write_text((club / "pier.plan").read_text().replace("3 x 5", "4 x 5"))

    def broken(*_: object) -> str:
        raise RuntimeError("no")

    monkeypatch.setattr("setwright.render.json.document", broken)
    answer = run("build", "pier.plan", "--format", "csv,json")
    assert answer.exit_code == 2
    assert (club / "sheets" / "pier.csv").read_bytes() == before
    assert names(club / "sheets") == ["pier.csv"]


def test_what_somebody_else_wrote_stays(club: Path, run: Run) -> None:
    (club / "sheets").mkdir()
    (club / "sheets" / "pier.html").write_text("mine")
    answer = run("build", "pier.plan", "--format", "html,csv")
    assert answer.exit_code == 2
    assert "sheets/pier.html: was not written by setwright" in answer.stderr
    assert names(club / "sheets") == ["pier.html"]


def test_to_standard_output_as_bytes(club: Path, run: Run) -> None:
    script = [sys.executable, "-m", "setwright", "build", "pier.plan", "--format", "csv", "-o", "-"]
    done = subprocess.run(script, capture_output=True, check=True)
    assert done.stdout.startswith(b"week,date,block,")
    assert done.stdout.endswith(b"\r\n")
    assert done.stderr == b""
    run("build", "pier.plan", "--format", "csv")
    assert (club / "sheets" / "pier.csv").read_bytes() == done.stdout


@pytest.mark.parametrize("more", [("--format", "csv,json"), ("--athlete", "Ines", "--athlete", "Noor")])
def test_standard_output_takes_one_sheet(club: Path, run: Run, more: tuple[str, ...]) -> None:
    answer = run("build", "pier.plan", "-o", "-", *more)
    assert answer.exit_code == 2
    assert "takes one sheet in one format" in answer.stderr
    assert answer.stdout == ""


def test_standard_input_is_a_plan_too(club: Path, run: Run) -> None:
    text = (club / "pier.plan").read_text()
    assert run("build", "-", "--format", "csv", "-o", "-", stdin=text).stdout.startswith("week,")


def test_a_file_without_a_plan(club: Path, run: Run) -> None:
    answer = run("build", "moves.plan")
    assert (answer.exit_code, answer.stderr) == (2, "setwright: moves.plan: holds no plan\n")


def test_names_stay_in_the_folder_and_apart(club: Path, run: Run) -> None:
    text = (club / "pier.plan").read_text()
    block = text[text.index("  block") : text.index("athlete")]
    plans = "".join(f'plan "{name}"\n{block}' for name in ("../../Quay", "QUAY", "con"))
    (club / "all.plan").write_text('use "moves.plan"\n' + plans)
    answer = run("build", "all.plan", "--format", "csv")
    assert answer.exit_code == 0, answer.output
    assert names(club / "sheets") == ["plan-con.csv", "quay-2.csv", "quay.csv"]
    assert names(club) == ["all.plan", "moves.plan", "pier.plan", "sheets"]


def test_a_folder_that_cannot_be_is_one_line(club: Path, run: Run) -> None:
    for place in ("pier.plan", "pier.plan/deeper", "/dev/null/sheets"):
        answer = run("build", "pier.plan", "-o", place)
        assert answer.exit_code == 2
        assert answer.stderr.startswith("setwright: ")
        assert answer.stderr.count("\n") == 1


def test_a_second_build_is_the_same_to_the_byte(club: Path, run: Run) -> None:
    everything = ("build", "pier.plan", "--athlete", "Ines", "--format", "html,md,csv,json")
    run(*everything)
    first = {name: (club / "sheets" / name).read_bytes() for name in os.listdir(club / "sheets")}
    run(*everything)
    assert {name: (club / "sheets" / name).read_bytes() for name in os.listdir(club / "sheets")} == first
