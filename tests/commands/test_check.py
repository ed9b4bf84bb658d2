"""`check`: findings in every form, exit codes, standard input, and a cache that changes nothing but the time."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from setwright import files
from setwright.roots import workspace

Run = Callable[..., Result]


@pytest.fixture
def wrong(club: Path) -> Path:
    """A plan with two mistakes and a broken rule."""
    plan = club / "wrong.plan"
    text = (club / "pier.plan").read_text().replace("Back Squat: 3", "Bak Squat: 3").replace("x 8", "x")
    plan.write_text(text)
    return plan


@pytest.fixture
def warned(club: Path) -> Path:
    """A plan that is sound and breaks one of its `should` rules."""
    plan = club / "warned.plan"
    text = (club / "pier.plan").read_text()
    plan.write_text(text.replace("  block Base", "  should weekly-sets for chest <= 1\n  block Base"))
    return plan


def test_a_sound_plan_is_0(club: Path, run: Run) -> None:
    answer = run("check", "pier.plan")
    assert (answer.exit_code, answer.stdout, answer.stderr) == (0, "no errors, no warnings\n", "")


def test_all_mistakes_are_told_in_one_run(wrong: Path, run: Run) -> None:
    answer = run("check", wrong.name)
    assert answer.exit_code == 1
    assert "wrong.plan:6:7: error[SW0201 unknown-movement]" in answer.stdout
    assert "wrong.plan:8:" in answer.stdout
    assert answer.stdout.endswith("2 errors\n")
    assert "\x1b" not in answer.stdout


def test_a_broken_rule_is_a_warning_unless_strict(warned: Path, run: Run) -> None:
    lenient, strict = run("check", warned.name), run("check", warned.name, "--strict")
    assert (lenient.exit_code, strict.exit_code) == (0, 1)
    assert "warning[SW0601 weekly-sets]" in lenient.stdout
    assert strict.stdout == lenient.stdout.replace("warning", "error")


def test_json_is_an_array(wrong: Path, run: Run) -> None:
    answer = run("check", wrong.name, "--format", "json")
    found = json.loads(answer.stdout)
    assert answer.exit_code == 1
    assert [record["path"] for record in found] == ["wrong.plan", "wrong.plan"]
    text = wrong.read_bytes()
    assert text[found[0]["byte_start"] : found[0]["byte_end"]] == b"Bak Squat"


def test_github_has_a_line_a_finding(wrong: Path, run: Run) -> None:
    lines = run("check", wrong.name, "--format", "github").stdout.splitlines()
    assert len(lines) == 2
    assert lines[0].startswith("::error file=wrong.plan,line=6,endLine=6,col=7,endColumn=16,title=SW0201 ")


def test_several_files_are_told_in_the_order_of_their_names(club: Path, wrong: Path, warned: Path, run: Run) -> None:
    answer = run("check", wrong.name, "pier.plan", warned.name, wrong.name)
    assert answer.exit_code == 1
    assert answer.stdout.index("warned.plan:") < answer.stdout.index("wrong.plan:")
    assert answer.stdout.endswith("2 errors, 1 warning\n")


def test_a_mistake_in_a_shared_library_is_told_once(club: Path, run: Run) -> None:
    (club / "other.plan").write_text((club / "pier.plan").read_text())
    (club / "moves.plan").write_text((club / "moves.plan").read_text().replace("works quads 1", "works quad 1"))
    answer = run("check", "pier.plan", "other.plan")
    assert answer.stdout.endswith("\n1 error\n")


def test_standard_input(club: Path, run: Run) -> None:
    text = (club / "pier.plan").read_text()
    assert run("check", "-", stdin=text).exit_code == 0
    answer = run("check", "-", stdin=text.replace("Back Squat: 3", "Bak Squat: 3"))
    assert answer.exit_code == 1
    assert "<stdin>:6:7: error[SW0201 unknown-movement]" in answer.stdout


def test_bytes_that_are_not_utf8_are_a_finding(club: Path, run: Run) -> None:
    (club / "bytes.plan").write_bytes(b'plan "\xff"\n')
    for answer in (run("check", "bytes.plan"), run("check", "-", stdin=b'plan "\xff"\n')):
        assert answer.exit_code == 1
        assert "SW0002 not-utf8" in answer.stdout


def test_a_pipe_is_read_once_and_never_kept(club: Path) -> None:
    script = f"{sys.executable} -m setwright check <(cat pier.plan)"
    for text, code in (((club / "pier.plan").read_text().replace("use ", f'use "{club}/moves.plan" #'), 1), ("", 1)):
        (club / "pier.plan").write_text(text)
        for _ in range(2):
            done = subprocess.run(["bash", "-c", script], capture_output=True, text=True, check=False)
            assert done.returncode == code
            assert ("SW0004 empty-file" in done.stdout) is (not text)


def test_an_athlete_nobody_declares_is_an_error(club: Path, run: Run) -> None:
    assert run("check", "pier.plan", "--athlete", "Ines").exit_code == 0
    answer = run("check", "pier.plan", "--athlete", "Inez")
    assert answer.exit_code == 1
    assert "SW0211 unknown-athlete" in answer.stdout


def test_a_file_that_may_not_be_read_is_no_traceback(club: Path, run: Run) -> None:
    (club / "loop.plan").symlink_to("loop.plan")
    answer = run("check", "loop.plan")
    assert answer.exit_code in (1, 2)
    assert "Traceback" not in answer.output


def test_the_workspace_is_the_compilers_own_idea_of_it(club: Path, tmp_path: Path) -> None:
    deeper = club / "deeper"
    deeper.mkdir()
    (deeper / "link.plan").symlink_to("../pier.plan")
    for place, mark in ((deeper, None), (deeper, club / "setwright.toml"), (deeper, tmp_path / ".git")):
        if mark:
            mark.mkdir()
        for name in ("a.plan", "link.plan"):
            assert workspace(str(place / name)) == str(files.find_root(place / name))
        if mark:
            mark.rmdir()


# ---- the cache -----------------------------------------------------------------------------------


def in_a_process(*arguments: str) -> tuple[int, str, set[str]]:
    """Exit code, standard output, and the modules that were loaded."""
    script = (
        "import sys\nfrom setwright.cli import command\n"
        "try:\n    command(sys.argv[1:])\n"
        "except SystemExit as end:\n    print('\\0'.join(sys.modules), file=sys.stderr)\n    raise\n"
    )
    done = subprocess.run([sys.executable, "-c", script, *arguments], capture_output=True, text=True, check=False)
    return done.returncode, done.stdout, set(done.stderr.strip().split("\0"))


@pytest.mark.parametrize("form", ["text", "json", "github"])
@pytest.mark.parametrize("plan", ["pier.plan", "wrong.plan", "warned.plan"])
def test_a_second_run_prints_the_same_and_compiles_nothing(wrong: Path, warned: Path, plan: str, form: str) -> None:
    first = in_a_process("check", plan, "--format", form)
    second = in_a_process("check", plan, "--format", form)
    assert second[:2] == first[:2]
    assert "setwright.pipeline" in first[2]
    heavy = {"lark", "jinja2", "markupsafe", "importlib.metadata"}
    ours = {"setwright.pipeline", "setwright.files", "setwright.plan", "setwright.diagnostics.catalogue"}
    assert second[2] & (heavy | ours) == set()
    phases = ("syntax", "link", "expand", "fit", "check", "report", "render", "science")
    assert {name for name in second[2] if name.startswith(tuple(f"setwright.{phase}" for phase in phases))} == set()


def test_no_cache_compiles_again(club: Path) -> None:
    in_a_process("check", "pier.plan")
    assert "setwright.pipeline" in in_a_process("check", "pier.plan", "--no-cache")[2]


def test_a_change_anywhere_is_seen_at_once(club: Path, run: Run) -> None:
    assert run("check", "pier.plan").exit_code == 0
    library = club / "moves.plan"
    text = library.read_text()
    library.write_text(text.replace("exercise Back Squat", "exercise Front Squat").replace("swap for Back Squat", ""))
    assert run("check", "pier.plan").exit_code == 1
    library.unlink()
    assert run("check", "pier.plan").exit_code == 1
    library.write_text(text)
    assert run("check", "pier.plan").exit_code == 0


def test_another_name_for_the_file_is_printed_as_typed(wrong: Path, run: Run) -> None:
    run("check", "wrong.plan")
    assert run("check", "./wrong.plan").stdout.startswith("./wrong.plan:6:7: ")
    assert run("check", str(wrong)).stdout.startswith(f"{wrong}:6:7: ")


def test_athletes_are_told_apart(club: Path, run: Run) -> None:
    assert run("check", "pier.plan").exit_code == 0
    assert run("check", "pier.plan", "--athlete", "Inez").exit_code == 1
    assert run("check", "pier.plan").exit_code == 0


def test_a_changed_athlete_file_is_seen(club: Path, run: Run) -> None:
    athlete = club / "ana.plan"
    athlete.write_text('use "moves.plan"\nathlete "Ana"\n  best Back Squat: 80 kg\n')
    assert run("check", "pier.plan", "--athlete", "ana.plan").exit_code == 0
    athlete.write_text('use "moves.plan"\nathlete "Ana"\n  best Bak Squat: 80 kg\n')
    assert run("check", "pier.plan", "--athlete", "ana.plan").exit_code == 1


def test_a_root_that_moves_is_seen(club: Path, run: Run) -> None:
    """`use` may reach up to the nearest folder with a mark, so a mark that comes or goes changes what is sound."""
    deeper = club / "deeper"
    deeper.mkdir()
    (deeper / "pier.plan").write_text((club / "pier.plan").read_text().replace("moves.plan", "../moves.plan"))
    mark = club / "setwright.toml"
    assert run("check", "deeper/pier.plan").exit_code == 1
    mark.write_text("")
    assert run("check", "deeper/pier.plan").exit_code == 0
    mark.unlink()
    assert run("check", "deeper/pier.plan").exit_code == 1
    assert run("check", "deeper/pier.plan", "--root", ".").exit_code == 0


def test_an_entry_that_does_not_fit_is_ignored(club: Path, run: Run) -> None:
    first = run("check", "pier.plan").stdout
    for entry in Path(os.environ["XDG_CACHE_HOME"], "setwright").iterdir():
        entry.write_bytes(b"x")
    assert run("check", "pier.plan").stdout == first
