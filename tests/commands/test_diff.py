"""`setwright diff`: files, git revisions, and git's own commands in a real repository."""

from __future__ import annotations

import json
import os
import shlex
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

from commands.conftest import PLAN, Run

ROOT = Path(__file__).parents[2]
SCHEMA = json.loads((ROOT / "compiler/render/difference.schema.json").read_text(encoding="utf-8"))
DRIVER = f"{shlex.quote(sys.executable)} -m setwright diff --git-driver --"


def edited(*edits: tuple[str, str]) -> str:
    text = PLAN
    for old, new in edits:
        assert old in text
        text = text.replace(old, new)
    return text


MORE = edited(("Back Squat: 3 x 5 @ 80%", "Back Squat: 4 x 5 @ 82.5%"))


@pytest.fixture
def newer(club: Path) -> Path:
    (club / "new.plan").write_text(MORE, encoding="utf-8")
    return club


def test_two_files(newer: Path, run: Run) -> None:
    answer = run("diff", "pier.plan", "new.plan")
    assert (answer.exit_code, answer.stderr) == (0, "")
    assert answer.stdout == (
        "Pier\n"
        "\n"
        "  Base, weeks 1-2\n"
        "\n"
        "    Mon\n"
        "      ~ weeks 1-2  Back Squat: 3 sets became 4; 80% became 82.5%\n"
        "\n"
        "  What it comes to\n"
        "    + weeks 1-2  Quadriceps: 4-4.5 sets a week became 5-5.5 (+1)\n"
        "    ~ weeks 1-2  All sets of the week: 5-6, now 6-7\n"
        "    ~ weeks 1-2  The week takes 8-11 min, now 10-13 min\n"
        "    ~ weeks 1-2  Mon takes 5 min, now 7 min\n"
    )


def test_an_athletes_loads(newer: Path, run: Run) -> None:
    answer = run("diff", "pier.plan", "new.plan", "--athlete", "Ines")
    assert "Pier, for Ines" in answer.stdout
    assert "80% became 82.5%; load 80 kg became 82.5 kg" in answer.stdout
    both = json.loads(run("diff", "pier.plan", "new.plan", "--athlete", "*", "--format", "json").stdout)
    assert [pair["new"]["athlete"] for pair in both["plans"]] == ["Ines", "Noor"]


def test_what_only_looks_different_is_no_change(club: Path, run: Run) -> None:
    (club / "new.plan").write_text("# A comment.\n" + PLAN.replace("Back Squat: 3", "Back Squat:    3"))
    answer = run("diff", "pier.plan", "new.plan", "--exit-code")
    assert (answer.exit_code, answer.stdout) == (0, "No change for the athlete.\n")


def test_exit_codes(newer: Path, run: Run) -> None:
    assert run("diff", "pier.plan", "new.plan", "--exit-code").exit_code == 1
    (newer / "new.plan").write_text(MORE.replace("Bench Press", "Bench Pres"), encoding="utf-8")
    answer = run("diff", "pier.plan", "new.plan")
    assert (answer.exit_code, answer.stdout) == (1, "")
    assert answer.stderr.startswith("In the new plan, new.plan:\n\nnew.plan:8:7: error[SW0201")
    assert run("diff", "pier.plan", "new.plan", "--exit-code").exit_code == 2


def test_json_is_as_the_schema_says_and_the_others_say_the_same(newer: Path, run: Run) -> None:
    told = json.loads(run("diff", "pier.plan", "new.plan", "--athlete", "Ines", "--format", "json").stdout)
    jsonschema.validate(told, SCHEMA)
    (line,) = told["plans"][0]["blocks"][0]["days"][0]["lines"]
    assert [change["what"] for change in line["changes"]] == ["sets", "intensity", "load"]
    assert line["changes"][0]["stretches"] == [
        {
            "kind": "working",
            "weeks": [{"old": 1, "new": 1}, {"old": 2, "new": 2}],
            "before": [3, 3],
            "after": [4, 4],
        }
    ]
    markdown = run("diff", "pier.plan", "new.plan", "--format", "markdown").stdout
    assert markdown.startswith("## Pier\n\n### Base, weeks 1")
    assert "Back Squat: 3 sets became 4; 80% became 82.5%" in markdown
    page = run("diff", "pier.plan", "new.plan", "--format", "html").stdout
    assert "Back Squat: 3 sets became 4; 80% became 82.5%" in page
    assert "<script" not in page
    assert "default-src &#39;none&#39;" in page


@pytest.mark.parametrize(
    ("edits", "said"),
    [
        ([("block Base: 2", "block Base: 3")], "1 week longer: 2 became 3"),
        ([("block Base", "block First")], "Base is now called First"),
        ([('plan "Pier"', 'plan "Quay"')], "Name: Pier became Quay"),
        ([('plan "Pier"', 'plan "Pier"\n  start 2027-01-04')], "Start: none became 4 January 2027"),
        ([("day Mon", "day Tue")], "moved here from Mon"),
        ([("      Back Squat: 3 x 5 @ 80%", "      Bench Press: 3 x 5 @ 80%")], "Back Squat swapped for Bench Press"),
        ([("3 x 5 @ 80%", "3 x 5 @ 80%, rest 2 min")], "rest none became 2 min"),
        ([("3 x 5 @ 80%", "3 x 5 @ 80%, tempo 3-1-1-0")], "tempo none became 3-1-1-0"),
        ([("3 x 5 @ 80%", "3 x 5 @ 80%, warm-up 50% x 5")], "warm-up added: 1 x 5 @ 50%"),
        ([("3 x 5 @ 80%", "3 x 5 @ 80%, optional")], "now optional"),
        ([("3 x 5 @ 80%", "1 x 3 @ 90% then 3 x 5 @ -10%")], "3 x 5 @ 80% became 1 x 3 @ 90% then 3 x 5 @ -10%"),
        ([("3 x 5 @ 80%", '3 x 5 @ 80%\n        note "Low."')], 'note added: "Low."'),
        ([("2 -> 3 x 8", "3 -> 4 x 8")], "2 → 3 sets became 3 → 4"),
        ([("    day Thu", "      Bench Press: 2 x 8 @ RPE 7\n    day Thu")], "Bench Press added: 2 x 8 @ RPE 7"),
        ([("      Back Squat: 3 x 5 @ 80%\n", '      note "Walk."\n')], "Back Squat dropped: 3 x 5 @ 80%"),
        ([("  block", "  should weekly-sets for quads 6-8\n  block")], "Rule added: should weekly-sets for quads 6-8"),
        (
            [("  block", "  should weekly-sets for quads 6-8\n  block")],
            "SW0601 weekly-sets for Quadriceps: now 4-4.5, outside the 6-8 asked for",
        ),
    ],
)
def test_what_an_edit_reads_like(club: Path, run: Run, edits: list[tuple[str, str]], said: str) -> None:
    (club / "new.plan").write_text(edited(*edits), encoding="utf-8")
    answer = run("diff", "pier.plan", "new.plan")
    assert answer.exit_code == 0, answer.output
    assert said in answer.stdout


def test_plans_answer_to_each_other_by_name(club: Path, run: Run) -> None:
    second = MORE[MORE.index("plan ") : MORE.index("athlete")].replace("Pier", "Quay")
    (club / "new.plan").write_text(PLAN.replace('plan "Pier"', second + '\nplan "Pier"'), encoding="utf-8")
    told = run("diff", "pier.plan", "new.plan").stdout
    assert told.startswith("Quay\n  + New plan: 2 weeks (Base), 4 sessions, ")
    assert "Pier" not in told


def test_names_do_not_command_the_terminal(club: Path, run: Run) -> None:
    (club / "new.plan").write_text(PLAN.replace('"Pier"', '"Pi\u202eer"'), encoding="utf-8")
    assert "\u202e" not in run("diff", "pier.plan", "new.plan").stdout


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("pier.plan",), "takes two files"),
        (("pier.plan", "nowhere.plan"), "no such file"),
        (("pier.plan", "moves.plan"), "holds no plan"),
        (("--git", "pier.plan"), "takes REV FILE"),
        (("--git", "HEAD", "pier.plan"), "not in a git repository"),
        (("--git-driver", "--", "a", "b"), "7 arguments"),
    ],
)
def test_what_cannot_be_compared(club: Path, run: Run, arguments: tuple[str, ...], said: str) -> None:
    answer = run("diff", *arguments)
    assert (answer.exit_code, answer.stdout) == (2, "")
    assert said in answer.stderr


# ---- git -----------------------------------------------------------------------------------------


def git(folder: Path, *arguments: str, **environment: str) -> str:
    """Git with nobody's configuration."""
    fixed = {
        "GIT_CONFIG_GLOBAL": os.devnull,
        "GIT_CONFIG_NOSYSTEM": "1",
        "GIT_AUTHOR_NAME": "Ines",
        "GIT_AUTHOR_EMAIL": "ines@example.org",
        "GIT_COMMITTER_NAME": "Ines",
        "GIT_COMMITTER_EMAIL": "ines@example.org",
    }
    done = subprocess.run(
        ["git", *arguments], cwd=folder, env={**os.environ, **fixed, **environment}, capture_output=True, check=False
    )
    assert done.returncode == 0, done.stderr.decode()
    return done.stdout.decode()


@pytest.fixture
def repository(club: Path) -> Path:
    """Two commits: more squats, and a share of the bench press that its library changed in the same commit."""
    git(club, "init", "-q", "-b", "main")
    (club / "README.txt").write_text("Pier\n")
    (club / ".gitattributes").write_text("*.plan diff=setwright\n")
    git(club, "add", ".")
    git(club, "commit", "-qm", "one")
    (club / "pier.plan").write_text(MORE, encoding="utf-8")
    moves = (club / "moves.plan").read_text(encoding="utf-8")
    (club / "moves.plan").write_text(moves.replace("quads 0.5", "quads 0.25"), encoding="utf-8")
    git(club, "commit", "-qam", "two")
    return club


SAID = "Back Squat: 3 sets became 4; 80% became 82.5%"
DESCRIBED = "Bench Press: works: chest 1, quads 0.5 became chest 1, quads 0.25"


@pytest.mark.parametrize(
    "arguments",
    [
        ("--git", "HEAD~1", "pier.plan"),
        ("--git", "HEAD~1", "HEAD", "pier.plan"),
        ("HEAD~1:pier.plan", "pier.plan"),
        ("HEAD~1:pier.plan", "main:./pier.plan"),
    ],
)
def test_revisions_with_what_they_import(repository: Path, run: Run, arguments: tuple[str, ...]) -> None:
    answer = run("diff", *arguments)
    assert answer.exit_code == 0, answer.output
    assert SAID in answer.stdout
    assert DESCRIBED in answer.stdout
    assert git(repository, "status", "--porcelain") == ""


def test_an_athletes_file_is_the_same_for_both_revisions(repository: Path, run: Run) -> None:
    (repository / "olga.plan").write_text('use "moves.plan"\n\nathlete "Olga"\n  best Back Squat: 100 kg\n')
    answer = run("diff", "--git", "HEAD~1", "HEAD", "pier.plan", "--athlete", "olga.plan")
    assert answer.exit_code == 0, answer.output
    assert "80% became 82.5%; load 80 kg became 82.5 kg" in answer.stdout


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("nowhere:pier.plan", "pier.plan"), "there is no revision `nowhere`"),
        (("HEAD:quay.plan", "pier.plan"), "no such file in that revision"),
        (("--git", "--", "--output=x", "pier.plan"), "not the name of a revision"),
    ],
)
def test_revisions_that_there_are_not(repository: Path, run: Run, arguments: tuple[str, ...], said: str) -> None:
    answer = run("diff", *arguments)
    assert (answer.exit_code, answer.stdout) == (2, "")
    assert said in answer.stderr
    assert not (repository / "x").exists()


def test_nothing_of_the_repository_runs(repository: Path, run: Run) -> None:
    git(repository, "config", "core.fsmonitor", "touch ran; false")
    git(repository, "config", "diff.setwright.textconv", "touch ran; cat")
    git(repository, "config", "filter.own.smudge", "touch ran; cat")
    (repository / ".gitattributes").write_text("*.plan diff=setwright filter=own\n")
    (repository / "ran").unlink(missing_ok=True)
    assert run("diff", "--git", "HEAD~1", "HEAD", "pier.plan").exit_code == 0
    assert not (repository / "ran").exists()


def test_errors_of_a_revision_name_it(repository: Path, run: Run) -> None:
    (repository / "pier.plan").write_text(MORE.replace("Bench Press", "Bench Pres"), encoding="utf-8")
    git(repository, "commit", "-qam", "three")
    answer = run("diff", "--git", "HEAD", "HEAD~1", "pier.plan")
    assert answer.exit_code == 1
    assert answer.stderr.startswith("In the old plan, HEAD:pier.plan:\n\nHEAD:pier.plan:8:7: error[SW0201")


@pytest.mark.parametrize("arguments", [("diff", "HEAD~1"), ("log", "-p", "--ext-diff"), ("show", "--ext-diff")])
def test_as_a_driver(repository: Path, arguments: tuple[str, ...]) -> None:
    git(repository, "config", "diff.setwright.command", DRIVER)
    told = git(repository, *arguments)
    assert "pier.plan: what changes for the athlete" in told
    assert SAID in told
    assert "moves.plan: holds no plan, so its lines\n" in told
    assert "+  works chest 1, quads 0.25" in told


@pytest.mark.parametrize("command", [DRIVER, DRIVER.removesuffix(" --git-driver --")])
def test_as_git_external_diff(repository: Path, command: str) -> None:
    (repository / "README.txt").write_text("Pier and quay\n")
    told = git(repository, "diff", "HEAD~1", GIT_EXTERNAL_DIFF=command)
    assert SAID in told
    assert "README.txt: not a plan, so its lines\n" in told
    assert "+Pier and quay" in told


def test_renamed_added_deleted_and_broken(repository: Path) -> None:
    git(repository, "config", "diff.setwright.command", DRIVER)
    (repository / "pier.plan").rename(repository / "quay.plan")
    (repository / "-odd.plan").write_text(PLAN.replace("Pier", "Odd"), encoding="utf-8")
    git(repository, "add", "-A")
    told = git(repository, "diff", "--cached", "-M")
    assert "pier.plan is now quay.plan: what changes for the athlete\n\nNo change for the athlete.\n" in told
    assert "-odd.plan: what changes for the athlete\n\nOdd\n  + New plan: 2 weeks (Base), 4 sessions, 11 sets\n" in told
    git(repository, "commit", "-qm", "three")
    (repository / "-odd.plan").unlink()
    (repository / "quay.plan").write_text(MORE.replace("Bench Press", "Bench Pres"), encoding="utf-8")
    told = git(repository, "diff")
    assert "Odd\n  - The plan is gone: 2 weeks (Base), 4 sessions, 11 sets\n" in told
    assert "quay.plan: the new side has errors (the first: quay.plan:8: no movement is called" in told
    assert "+      Bench Pres: 2 -> 3 x 8 @ RPE 8" in told
