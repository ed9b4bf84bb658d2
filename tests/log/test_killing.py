"""An import that is killed, at every step of its writing and at any moment: the log is the old one or the new one."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

# A child that imports, and kills itself at the Nth call of a function that touches the disk, before it or after it.
CHILD = """
import os, signal, sys
number, after = int(sys.argv[1]), sys.argv[2] == "after"
calls = 0
def deadly(call):
    def counted(*given, **named):
        global calls
        calls += 1
        if calls == number and not after:
            os.kill(os.getpid(), signal.SIGKILL)
        done = call(*given, **named)
        if calls == number:
            os.kill(os.getpid(), signal.SIGKILL)
        return done
    return counted
from setwright.cli import keeping
from setwright.cli.keeping import replace_keeping
for name in ("fsync", "link", "unlink", "rename", "replace", "chmod", "open"):
    setattr(keeping.os, name, deadly(getattr(os, name)))
replace_keeping("log.plan", BEFORE, AFTER)
print(calls)
"""
BEFORE = b"exercise Squat\n" * 500
AFTER = BEFORE + b"\nsession 2027-01-04\n  Squat: 60 kg x 5\n" * 500


def child(folder: Path, number: int, when: str, before: bytes | None) -> subprocess.CompletedProcess[bytes]:
    """One run of the child."""
    program = f"BEFORE, AFTER = {before!r}, {AFTER!r}\n{CHILD}"
    return subprocess.run(
        [sys.executable, "-c", program, str(number), when], cwd=folder, capture_output=True, check=False
    )


def test_nothing_is_lost_at_any_step(tmp_path: Path) -> None:
    log, kept = tmp_path / "log.plan", tmp_path / "log.plan.before"
    log.write_bytes(BEFORE)
    whole = child(tmp_path, 0, "before", BEFORE)
    steps = int(whole.stdout)
    assert steps >= 8
    assert (log.read_bytes(), kept.read_bytes()) == (AFTER, BEFORE)
    seen = set()
    for number in range(1, steps + 1):
        for when in ("before", "after"):
            log.write_bytes(BEFORE)
            kept.unlink(missing_ok=True)
            assert child(tmp_path, number, when, BEFORE).returncode == -signal.SIGKILL
            assert log.read_bytes() in (BEFORE, AFTER)
            assert not kept.exists() or kept.read_bytes() == BEFORE
            assert log.read_bytes() == BEFORE or kept.exists()
            seen.add(log.read_bytes())
    assert seen == {BEFORE, AFTER}
    log.write_bytes(BEFORE)
    assert child(tmp_path, 0, "before", BEFORE).returncode == 0  # what was left over is in nobody's way
    assert log.read_bytes() == AFTER


def test_a_new_log_is_there_whole_or_not_at_all(tmp_path: Path) -> None:
    log = tmp_path / "log.plan"
    steps = int(child(tmp_path, 0, "before", None).stdout)
    for number in range(1, steps + 1):
        for when in ("before", "after"):
            log.unlink(missing_ok=True)
            child(tmp_path, number, when, None)
            assert not log.exists() or log.read_bytes() == AFTER


@pytest.mark.parametrize("share", [0.05, 0.3, 0.6, 0.8, 0.9, 0.97, 1.02])
def test_nothing_is_lost_at_any_moment(tmp_path: Path, share: float) -> None:
    """The whole verb, killed after a share of the time that it takes."""
    rows = "".join(f"2027-{1 + at % 12:02}-{1 + at // 12 % 28:02},Squat,{20 + at % 50} kg,5\n" for at in range(600))
    (tmp_path / "rows.csv").write_text("date,exercise,load,reps\n" + rows)
    log = tmp_path / "log.plan"
    command = [sys.executable, "-m", "setwright", "import", "rows.csv", "--into", "log.plan"]
    log.write_bytes(BEFORE[:15])
    begun = time.perf_counter()
    subprocess.run(command, cwd=tmp_path, capture_output=True, check=True)
    seconds = time.perf_counter() - begun
    after = log.read_bytes()
    (tmp_path / "log.plan.before").unlink()
    log.write_bytes(BEFORE[:15])
    running = subprocess.Popen(command, cwd=tmp_path, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    time.sleep(seconds * share)
    running.kill()
    running.wait()
    assert log.read_bytes() in (BEFORE[:15], after)
    assert log.read_bytes() == BEFORE[:15] or (tmp_path / "log.plan.before").read_bytes() == BEFORE[:15]


def test_a_log_that_was_changed_meanwhile_is_left_alone(tmp_path: Path) -> None:
    log = tmp_path / "log.plan"
    log.write_bytes(BEFORE + b"# by hand\n")
    done = child(tmp_path, 0, "before", BEFORE)
    assert b"was changed while it was read" in done.stderr
    assert log.read_bytes() == BEFORE + b"# by hand\n"


def test_a_full_disk_leaves_the_log_alone(tmp_path: Path) -> None:
    log = tmp_path / "log.plan"
    log.write_bytes(BEFORE)
    limits = f"import resource; resource.setrlimit(resource.RLIMIT_FSIZE, ({len(BEFORE) + 100},) * 2)\n"
    ignored = "import signal; signal.signal(signal.SIGXFSZ, signal.SIG_IGN)\n"
    program = f"{limits}{ignored}BEFORE, AFTER = {BEFORE!r}, {AFTER!r}\n{CHILD}"
    done = subprocess.run(
        [sys.executable, "-c", program, "0", "before"], cwd=tmp_path, capture_output=True, check=False
    )
    assert b"File too large" in done.stderr
    assert log.read_bytes() == BEFORE
    assert not [name for name in os.listdir(tmp_path) if name.endswith(".part")]
