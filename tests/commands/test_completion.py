"""Completion in the shell: the scripts that click makes, and one of them in a real bash."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path
from select import select
from time import monotonic

import pytest

from setwright.cli import VERBS

PATIENCE = 20  # seconds
BESIDE_PYTHON = os.pathsep.join((str(Path(sys.executable).parent), os.environ["PATH"]))


def script(shell: str) -> str:
    """What `_SETWRIGHT_COMPLETE=<shell>_source setwright` prints."""
    environment = {**os.environ, "_SETWRIGHT_COMPLETE": f"{shell}_source", "PATH": BESIDE_PYTHON}
    done = subprocess.run(["setwright"], env=environment, capture_output=True, text=True, check=False)
    assert done.stderr == ""
    return done.stdout


@pytest.mark.parametrize(
    ("shell", "words"),
    [
        ("bash", ("complete -o nosort -F", "_SETWRIGHT_COMPLETE=bash_complete")),
        ("zsh", ("#compdef setwright", "_SETWRIGHT_COMPLETE=zsh_complete")),
        ("fish", ("complete --no-files --command setwright", "_SETWRIGHT_COMPLETE=fish_complete")),
    ],
)
def test_the_script_is_printed(shell: str, words: tuple[str, ...]) -> None:
    printed = script(shell)
    for word in words:
        assert word in printed


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_what_the_scripts_ask_for_is_answered(shell: str) -> None:
    """The three scripts ask in words of their own for one thing: what could follow `setwright c`."""
    begun = {"bash": ("setwright c", "1"), "zsh": ("setwright c", "1"), "fish": ("setwright c", "c")}[shell]
    environment = {
        **os.environ,
        "_SETWRIGHT_COMPLETE": f"{shell}_complete",
        "COMP_WORDS": begun[0],
        "COMP_CWORD": begun[1],
        "PATH": BESIDE_PYTHON,
    }
    done = subprocess.run(["setwright"], env=environment, capture_output=True, text=True, check=False)
    proposed = set(re.split(r"[,\t\n]", done.stdout))
    assert {verb.name for verb in VERBS if verb.name.startswith("c")} <= proposed


def in_bash(folder: Path, typed: str, wanted: str) -> str:
    """What a bash at a terminal shows when the tabulator is struck twice behind what was typed.

    It is read until what is wanted is there, or for as long as a slow machine may take.
    """
    (folder / "complete.bash").write_text(script("bash"), encoding="utf-8")
    environment = {**os.environ, "PATH": BESIDE_PYTHON, "PS1": "", "TERM": "dumb", "HISTFILE": os.devnull}
    ours, theirs = os.openpty()
    shell = subprocess.Popen(
        ["bash", "--norc", "--noprofile", "-i"],
        stdin=theirs,
        stdout=theirs,
        stderr=theirs,
        cwd=folder,
        env=environment,
        start_new_session=True,
    )
    os.close(theirs)
    os.write(ours, f"source complete.bash\n{typed}\t\t".encode())
    shown, end = "", monotonic() + PATIENCE
    while wanted not in shown and monotonic() < end and select([ours], [], [], PATIENCE)[0]:
        shown += os.read(ours, 4096).decode("utf-8", "replace")
    shell.kill()
    shell.wait()
    os.close(ours)
    return shown


@pytest.mark.parametrize(
    ("typed", "wanted"),
    [
        ("setwright expl", "setwright explain"),
        ("setwright check --f", "check --format"),
        ("setwright check wint", "check winter.plan"),
        ("setwright fmt plans/au", "fmt plans/autumn.plan"),
    ],
)
def test_bash_completes_verbs_options_and_files(tmp_path: Path, typed: str, wanted: str) -> None:
    (tmp_path / "winter.plan").touch()
    (tmp_path / "plans").mkdir()
    (tmp_path / "plans" / "autumn.plan").touch()
    assert wanted in in_bash(tmp_path, typed, wanted)


def test_bash_lists_every_verb(tmp_path: Path) -> None:
    shown = in_bash(tmp_path, "setwright ", f"{VERBS[-1].name} ")
    assert {verb.name for verb in VERBS} <= set(shown.split())
