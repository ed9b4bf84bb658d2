"""A small plan with all it needs, in a folder of its own, and the command to run on it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from run_command import run_command

LIBRARY = """\
muscle quads "Quadriceps"
muscle chest
group pushers "Pushing muscles": quads, chest

equipment barbell "Barbell"
  loads bar

exercise Back Squat
  also "squat"
  pattern squat
  needs barbell
  works quads 1
  cue "Sit between your heels."
exercise Bench Press
  needs barbell
  works chest 1, quads 0.5
  swap for Back Squat
"""

PLAN = """\
use "moves.plan"

plan "Pier"
  block Base: 2 weeks
    day Mon
      Back Squat: 3 x 5 @ 80%
    day Thu
      Bench Press: 2 -> 3 x 8 @ RPE 8

athlete "Ines"
  best Back Squat: 100 kg
athlete "Noor"
  best Back Squat: 60 kg
"""

Run = Callable[..., Result]


@pytest.fixture
def club(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with `pier.plan` and its library, made the working folder."""
    folder = tmp_path / "club"
    folder.mkdir()
    (folder / "moves.plan").write_text(LIBRARY, encoding="utf-8")
    (folder / "pier.plan").write_text(PLAN, encoding="utf-8")
    monkeypatch.chdir(folder)
    return folder


@pytest.fixture
def run() -> Run:
    """The command as a person types it."""
    return run_command
