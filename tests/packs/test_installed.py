"""Packs as pip installs them: a fresh environment, a real pack, one that `new --pack` wrote, and the command there.

The environment sees this one's packages (Setwright, what it needs, and setuptools to build with), so that nothing has
to be fetched.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import sysconfig
from collections.abc import Callable
from pathlib import Path
from venv import EnvBuilder

import pytest

from run_command import run_command

SAMPLE = Path(__file__).parent / "tidewater-lifts"

PLAN = """\
use stdlib.exercises
use tidewater-lifts.exercises as club
use tidewater-lifts.rules as club
use shed-days.exercises
use shed-days.rules

plan "Slipway"
  follow club.regatta, first-month
  block Base: 1 week
    day Mon
      club.Back Squat: 3 x 5 @ 2 RIR
      Slow Goblet Squat: 3 x 8 @ 2 RIR
"""

Command = Callable[..., subprocess.CompletedProcess[str]]


@pytest.fixture(scope="module")
def python(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The interpreter of a fresh environment in which both packs are installed."""
    folder = tmp_path_factory.mktemp("fresh")
    EnvBuilder(symlinks=os.name != "nt", with_pip=False).create(folder / "venv")
    interpreter = folder / "venv" / ("Scripts" if os.name == "nt" else "bin") / "python"
    mine = sysconfig.get_path("purelib")
    theirs = sysconfig.get_path("purelib", vars={"base": str(folder / "venv"), "platbase": str(folder / "venv")})
    Path(theirs, "mine.pth").write_text(f"import site; site.addsitedir({mine!r})\n", encoding="utf-8")
    shutil.copytree(SAMPLE, folder / "tidewater-lifts")  # a build leaves traces in the folder
    made = run_command("new", "--pack", "Shed Days", "-o", str(folder / "shed-days"))
    assert made.exit_code == 0, made.output
    pip(interpreter, "install", str(folder / "tidewater-lifts"), str(folder / "shed-days"))
    return interpreter


def pip(interpreter: Path, verb: str, *arguments: str) -> None:
    quietly = (sys.executable, "-m", "pip", "--python", interpreter, "--disable-pip-version-check", "-q")
    offline = ("--no-index", "--no-deps", "--no-build-isolation") if verb == "install" else ("--yes",)
    subprocess.run([*quietly, verb, *offline, *arguments], check=True)


@pytest.fixture
def command(python: Path, tmp_path: Path) -> Command:
    """Setwright as it is started in that environment, in a folder with the plan."""
    (tmp_path / "slipway.plan").write_text(PLAN, encoding="utf-8")

    def run(*arguments: str) -> subprocess.CompletedProcess[str]:
        call = [python, "-m", "setwright", *arguments]
        return subprocess.run(call, cwd=tmp_path, capture_output=True, text=True, encoding="utf-8", check=False)

    return run


def test_a_plan_uses_installed_packs(command: Command) -> None:
    done = command("check", "slipway.plan")
    assert (done.returncode, done.stdout, done.stderr) == (0, "no errors, no warnings\n", "")


def test_sheets_name_movements_plainly(command: Command) -> None:
    done = command("build", "slipway.plan", "--format", "csv", "-o", "-")
    assert done.returncode == 0, done.stderr
    movements = [row.split(",")[7] for row in done.stdout.splitlines()[1:]]
    assert movements == ["Back Squat", "Slow Goblet Squat"]


def test_rules_of_a_pack_are_held(command: Command, tmp_path: Path) -> None:
    (tmp_path / "slipway.plan").write_text(PLAN.replace("3 x 5", "4 x 5"), encoding="utf-8")
    done = command("check", "slipway.plan")
    assert done.returncode == 1
    assert "tidewater-lifts/rules/regatta.plan:4" in done.stdout


def test_an_unknown_pack_is_met_with_a_near_one(command: Command, tmp_path: Path) -> None:
    (tmp_path / "slipway.plan").write_text("use tidewater-lift.exercises\n", encoding="utf-8")
    done = command("check", "slipway.plan")
    assert done.returncode == 1
    assert "SW0011 unknown-pack" in done.stdout
    assert "Did you mean `tidewater-lifts`?" in done.stdout


def test_upgrading_and_removing_a_pack_is_seen_at_once(command: Command, python: Path, tmp_path: Path) -> None:
    changed = tmp_path / "shed-days"
    run_command("new", "--pack", "Shed Days", "-o", str(changed))
    rules = changed / "shed_days" / "rules.plan"
    rules.write_text(rules.read_text(encoding="utf-8").replace("RPE 8", "RPE 7"), encoding="utf-8")
    assert command("check", "slipway.plan").returncode == 0
    pip(python, "install", "--force-reinstall", str(changed))
    assert "RPE 8" in command("check", "slipway.plan").stdout
    pip(python, "uninstall", "shed-days")
    gone = command("check", "slipway.plan")
    assert "no installed pack is called `shed-days`" in gone.stdout
    assert gone.stdout == command("check", "slipway.plan").stdout
    pip(python, "install", str(changed))
    assert "no installed pack" not in command("check", "slipway.plan").stdout
