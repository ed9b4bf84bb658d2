"""The hooks for pre-commit, run by pre-commit in a repository of plans.

There the hooks are local ones with the entries and patterns of `.pre-commit-hooks.yaml`, so that nothing is installed
anew: `repo: local` and `language: system` of https://pre-commit.com, "Repository local hooks".
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
import yaml

ROOT = Path(__file__).parents[2]
HOOKS: list[dict[str, Any]] = yaml.safe_load((ROOT / ".pre-commit-hooks.yaml").read_text(encoding="utf-8"))
TIDY = 'plan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Walk."\n'


@pytest.fixture
def repository(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("PATH", os.pathsep.join((str(Path(sys.executable).parent), os.environ["PATH"])))
    monkeypatch.setenv("PRE_COMMIT_HOME", str(tmp_path / "kept"))
    monkeypatch.setenv("GIT_CONFIG_GLOBAL", os.devnull)
    folder = tmp_path / "plans"
    folder.mkdir()
    hooks = [{**hook, "language": "system"} for hook in HOOKS]
    config = yaml.safe_dump({"repos": [{"repo": "local", "hooks": hooks}]})
    (folder / ".pre-commit-config.yaml").write_text(config, encoding="utf-8")
    (folder / "other.txt").write_text("no plan\n", encoding="utf-8")
    subprocess.run(["git", "init", "-q", str(folder)], check=True)
    return folder


def run(repository: Path, hook: str) -> subprocess.CompletedProcess[str]:
    subprocess.run(["git", "add", "."], cwd=repository, check=True)
    command = [sys.executable, "-m", "pre_commit", "run", hook, "--all-files"]
    return subprocess.run(command, cwd=repository, capture_output=True, text=True, check=False)


def test_what_the_hooks_are() -> None:
    assert [(hook["id"], hook["entry"], hook["language"]) for hook in HOOKS] == [
        ("setwright-check", "setwright check", "python"),
        ("setwright-fmt", "setwright fmt", "python"),
    ]


@pytest.mark.parametrize("hook", [hook["id"] for hook in HOOKS])
def test_plans_that_are_sound_pass(hook: str, repository: Path) -> None:
    (repository / "pier.plan").write_text(TIDY, encoding="utf-8")
    done = run(repository, hook)
    assert done.returncode == 0, done.stdout
    assert "Passed" in done.stdout


def test_an_error_stops_the_commit(repository: Path) -> None:
    (repository / "pier.plan").write_text(TIDY.replace("note", "nota"), encoding="utf-8")
    done = run(repository, "setwright-check")
    assert done.returncode == 1
    assert "pier.plan:4:" in done.stdout


def test_the_style_is_written_and_the_change_is_told(repository: Path) -> None:
    (repository / "pier.plan").write_text(TIDY.replace("1 week", "1   week"), encoding="utf-8")
    done = run(repository, "setwright-fmt")
    assert done.returncode == 1
    assert "files were modified by this hook" in done.stdout
    assert (repository / "pier.plan").read_text(encoding="utf-8") == TIDY
    assert run(repository, "setwright-fmt").returncode == 0
