"""The command as a whole: help, verbs to come, wrong usage, and never a traceback."""

from __future__ import annotations

import os
import shlex
import subprocess
import sys
from pathlib import Path
from shutil import copytree

import pytest

from run_command import run_command as run
from setwright import __version__
from setwright.cli import VERBS
from setwright.cli.terminal import put, wants_colour
from setwright.cli.trouble import Trouble

EXAMPLES = Path(__file__).parents[2] / "examples"


def test_help_lists_every_verb() -> None:
    shown = run("--help")
    assert shown.exit_code == 0
    for verb in VERBS:
        assert f"\n  {verb.name} " in shown.output


def test_version() -> None:
    assert run("--version").output == f"setwright {__version__}\n"


@pytest.mark.parametrize("verb", [verb.name for verb in VERBS])
def test_a_verbs_help_ends_with_an_example_that_runs(
    verb: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shown = run(verb, "--help")
    assert shown.exit_code == 0
    name, *arguments = shlex.split(shown.output.rstrip().splitlines()[-1])
    assert (name, arguments[0]) == ("setwright", verb)
    copytree(EXAMPLES, tmp_path / "examples")
    monkeypatch.chdir(tmp_path)
    answer = run(*arguments)
    assert answer.exit_code == 0, answer.output


@pytest.mark.parametrize(
    "arguments",
    [
        ("nothing",),
        ("check",),
        ("check", "--nothing", "a.plan"),
        ("check", "--format", "xml", "a.plan"),
        ("build", "a.plan", "--format", "docx"),
        ("build", "a.plan", "--week", "0"),
        ("volume",),
        ("explain",),
        ("explain", "SW9999"),
        ("new",),
        ("new", "a\x1bb"),
        ("new", "Pier", "--from", "nothing"),
    ],
)
def test_wrong_usage_is_2(arguments: tuple[str, ...], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "a.plan").write_text("", encoding="utf-8")
    answer = run(*arguments)
    assert answer.exit_code == 2
    assert answer.stderr
    assert "Traceback" not in answer.output
    assert os.listdir(tmp_path) == ["a.plan"]


def test_a_slip_in_a_verb_is_answered_with_the_verb() -> None:
    answer = run("buidl", "a.plan")
    assert (answer.exit_code, answer.stderr) == (2, "setwright: there is no verb `buidl`. Did you mean `build`?\n")


@pytest.mark.parametrize("verb", ["check", "build", "volume"])
def test_a_missing_file_is_one_line(verb: str, tmp_path: Path) -> None:
    missing = tmp_path / "a\x1b[31m.plan"
    answer = run(verb, str(missing))
    assert (answer.exit_code, answer.stderr) == (2, f"setwright: {tmp_path}/a\\x1b[31m.plan: no such file\n")


@pytest.mark.parametrize("verb", ["check", "build", "volume"])
def test_a_folder_is_one_line(verb: str, tmp_path: Path) -> None:
    answer = run(verb, str(tmp_path))
    assert (answer.exit_code, answer.stderr) == (2, f"setwright: {tmp_path}: is a folder; name the .plan file in it\n")


def test_a_fault_of_ours_is_one_line(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object) -> None:
        raise ZeroDivisionError("one\ntwo")

    monkeypatch.setattr("setwright.cli.new.write_new", broken)
    answer = run("new", "Pier", "-o", str(tmp_path / "pier"))
    assert answer.exit_code == 2
    assert answer.stderr.startswith(
        "setwright: a fault in setwright itself, not in your plan (ZeroDivisionError: one);"
    )
    assert answer.stderr.count("\n") == 1


def test_a_trouble_cannot_command_the_terminal(capsys: pytest.CaptureFixture[str]) -> None:
    Trouble("a\x1b[2J\nb").show()
    assert capsys.readouterr().err == "setwright: a\\x1b[2J\\x0ab\n"


class Screen:
    """A stream that says it is a terminal."""

    encoding = "ascii"

    def __init__(self, is_terminal: bool = True) -> None:
        self.is_terminal = is_terminal
        self.shown = ""

    def isatty(self) -> bool:
        return self.is_terminal

    def write(self, text: str) -> None:
        self.shown += text

    def flush(self) -> None:
        pass


# no-color.org: "when present and not an empty string (regardless of its value)".
@pytest.mark.parametrize(
    ("is_terminal", "variables", "wanted"),
    [
        (True, {}, True),
        (False, {}, False),
        (True, {"NO_COLOR": "1"}, False),
        (True, {"NO_COLOR": "0"}, False),
        (True, {"NO_COLOR": ""}, True),
        (True, {"TERM": "dumb"}, False),
    ],
)
def test_colour_is_for_terminals_that_want_it(
    is_terminal: bool, variables: dict[str, str], wanted: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TERM", "xterm")
    for name, value in variables.items():
        monkeypatch.setenv(name, value)
    assert wants_colour(Screen(is_terminal)) is wanted  # type: ignore[arg-type]


def test_what_an_encoding_lacks_is_escaped() -> None:
    screen = Screen()
    put("深蹲 é\n", screen)  # type: ignore[arg-type]
    assert screen.shown == "\\u6df1\\u8e72 \\xe9\n"


def test_it_runs_as_a_module() -> None:
    done = subprocess.run([sys.executable, "-m", "setwright", "--version"], capture_output=True, text=True, check=True)
    assert done.stdout == f"setwright {__version__}\n"


@pytest.mark.parametrize("out", [">&-", "> /dev/full"])
@pytest.mark.parametrize("verb", ["explain --list", "new --list", "check a.plan"])
def test_nowhere_to_write_is_no_traceback(verb: str, out: str, tmp_path: Path) -> None:
    (tmp_path / "a.plan").write_text("", encoding="utf-8")
    script = f"{sys.executable} -m setwright {verb} {out}"
    done = subprocess.run(["bash", "-c", script], capture_output=True, text=True, check=False, cwd=tmp_path)
    assert done.returncode in (0, 1, 2)
    assert "Traceback" not in done.stderr
    assert "a fault in setwright" not in done.stderr
    assert done.stderr.count("\n") <= 1


def test_a_closed_pipe_is_no_traceback() -> None:
    script = f"{sys.executable} -m setwright explain --list | true; exit ${{PIPESTATUS[0]}}"
    done = subprocess.run(["bash", "-c", script], capture_output=True, text=True, check=False)
    assert done.stderr == ""
    assert done.returncode in (0, 1)
