"""Formats that need an optional part of the package: what is said where it is missing, and that they are written."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from run_command import run_command
from setwright.render.outputs import OUTPUTS, Output

EXTRAS = [output for output in OUTPUTS if output.extra]
PLAN = """use stdlib.exercises
plan "Pier"
  start 2027-01-04
  block Base: 1 week
    day Mon
      Back Squat: 3 x 5
"""


@pytest.fixture
def plan(tmp_path: Path) -> str:
    file = tmp_path / "pier.plan"
    file.write_text(PLAN)
    return str(file)


def test_the_optional_formats() -> None:
    assert [(output.name, output.extra, output.needs, output.binary) for output in EXTRAS] == [
        ("xlsx", "xlsx", "xlsxwriter", True),
        ("ics", "ics", "icalendar", False),
        ("pdf", "pdf", "weasyprint", True),
    ]


@pytest.mark.parametrize("output", EXTRAS, ids=lambda output: output.name)
def test_a_missing_part_names_what_brings_it(
    output: Output, plan: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, str(output.needs), None)
    done = run_command("build", plan, "--format", f"html,{output.name}", "-o", str(tmp_path / "out"))
    assert done.exit_code == 2
    assert f"`--format {output.name}` needs `pip install 'setwright[{output.extra}]'`" in done.stderr
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("name", ["xlsx", "ics"])
def test_it_is_written_where_the_part_is_there(name: str, plan: str, tmp_path: Path) -> None:
    done = run_command("build", plan, "--format", name, "--week", "1", "-o", str(tmp_path / "out"))
    assert done.exit_code == 0, done.stderr
    assert (tmp_path / "out" / f"pier-week-1.{name}").read_bytes()[:2] in (b"PK", b"BE")


def test_the_language_server_without_its_part(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "pygls.lsp.server", None)
    for name in [name for name in sys.modules if name.startswith("setwright.editor")]:
        monkeypatch.delitem(sys.modules, name)
    done = run_command("lsp", "--check")
    assert done.exit_code == 2
    assert done.stderr == "setwright: `lsp` needs `pip install 'setwright[lsp]'`\n"
