"""`setwright fmt` as a person types it."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from run_command import run_command

UNTIDY = 'plan "Pier"\n  block Base:1 week\n    day Mon\n        Dip:3x8   # slow\n'
TIDY = 'plan "Pier"\n  block Base: 1 week\n    day Mon\n      Dip: 3 x 8  # slow\n'


@pytest.fixture
def pier(tmp_path: Path) -> Path:
    path = tmp_path / "pier.plan"
    path.write_text(UNTIDY, encoding="utf-8")
    return path


def test_writes_over_what_is_not_in_the_style(pier: Path) -> None:
    os.chmod(pier, 0o640)
    first = run_command("fmt", str(pier))
    assert (first.exit_code, first.stdout, first.stderr) == (0, "", f"wrote {pier}\n")
    assert pier.read_text("utf-8") == TIDY
    assert pier.stat().st_mode & 0o777 == 0o640
    assert run_command("fmt", str(pier)).stderr == ""
    assert [path.name for path in pier.parent.iterdir()] == ["pier.plan"]


def test_a_link_stays_a_link(pier: Path, tmp_path: Path) -> None:
    link = tmp_path / "link.plan"
    link.symlink_to(pier)
    run_command("fmt", str(link))
    assert link.is_symlink()
    assert pier.read_text("utf-8") == TIDY


def test_check_writes_nothing_and_says_which(pier: Path) -> None:
    answer = run_command("fmt", "--check", str(pier))
    assert (answer.exit_code, answer.stdout, answer.stderr) == (1, "", f"{pier}: not in the one style\n")
    assert pier.read_text("utf-8") == UNTIDY
    pier.write_text(TIDY, "utf-8")
    assert run_command("fmt", "--check", str(pier)).exit_code == 0


def test_diff_shows_what_would_change(pier: Path) -> None:
    answer = run_command("fmt", "--diff", str(pier))
    assert answer.exit_code == 0
    assert answer.stdout.splitlines()[2:] == [
        "@@ -1,4 +1,4 @@",
        ' plan "Pier"',
        "-  block Base:1 week",
        "+  block Base: 1 week",
        "     day Mon",
        "-        Dip:3x8   # slow",
        "+      Dip: 3 x 8  # slow",
    ]
    assert pier.read_text("utf-8") == UNTIDY


def test_standard_input_goes_to_standard_output() -> None:
    assert run_command("fmt", "-", stdin=UNTIDY.replace("\n", "\r\n")).stdout == TIDY


def test_a_file_that_cannot_be_read_is_left_alone_and_the_others_are_done(pier: Path, tmp_path: Path) -> None:
    broken = tmp_path / "broken.plan"
    broken.write_text(UNTIDY.replace("3x8", "3 sets"), encoding="utf-8")
    answer = run_command("fmt", str(broken), str(pier))
    assert answer.exit_code == 1
    assert f"{broken}:4:15: error[SW0101 unexpected-word]" in answer.stderr
    assert broken.read_text("utf-8") == UNTIDY.replace("3x8", "3 sets")
    assert pier.read_text("utf-8") == TIDY


def test_bytes_that_are_no_text_are_told(tmp_path: Path) -> None:
    path = tmp_path / "pier.plan"
    path.write_bytes(b'plan "Pi\xffer"\n')
    answer = run_command("fmt", str(path))
    assert answer.exit_code == 1
    assert ":1:9: error[" in answer.stderr


def test_only_line_ends_would_change(pier: Path) -> None:
    pier.write_bytes(TIDY.replace("\n", "\r\n").encode())
    assert "only line ends" in run_command("fmt", "--diff", str(pier)).stdout
    assert run_command("fmt", "--check", str(pier)).exit_code == 1
