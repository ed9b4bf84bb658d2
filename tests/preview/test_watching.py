"""Saving in the ways editors save, and what the next build then is."""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from threading import Event, Thread
from time import sleep

import pytest

from run_command import run_command
from setwright.preview.building import Wanted, built
from setwright.preview.changes import wait_for_change

PLAN = 'use "moves.plan"\n\nplan "Pier"\n  block Base: 1 week\n    day Mon\n      Pier Row: {} x 8 @ RPE 7\n'
MOVES = "exercise Pier Row\n"


@pytest.fixture
def pier(tmp_path: Path) -> Path:
    (tmp_path / "moves.plan").write_text(MOVES, encoding="utf-8")
    (tmp_path / "setwright.toml").write_text("", encoding="utf-8")
    path = tmp_path / "pier.plan"
    path.write_text(PLAN.format(3), encoding="utf-8")
    return path


def save_over(path: Path, text: str) -> None:
    path.write_text(text, encoding="utf-8")


def save_by_renaming(path: Path, text: str) -> None:
    aside = path.with_suffix(".swp")
    aside.write_text(text, encoding="utf-8")
    os.replace(aside, path)


def save_by_deleting(path: Path, text: str) -> None:
    path.unlink()
    sleep(0.05)
    path.write_text(text, encoding="utf-8")


@pytest.mark.parametrize("save", [save_over, save_by_renaming, save_by_deleting])
@pytest.mark.parametrize("name", ["pier.plan", "moves.plan", "setwright.toml"])
def test_every_way_to_save_every_file_is_seen(pier: Path, name: str, save: Callable[[Path, str], None]) -> None:
    made = built(Wanted(str(pier)))
    assert len(made.pages) == 1
    text = {
        "pier.plan": PLAN.format(4),
        "moves.plan": MOVES + '  cue "Pull."\n',
        "setwright.toml": '[sheets]\nclub = "Pier"\n',
    }
    assert changed(made.states, lambda: save(pier.with_name(name), text[name]))
    again = built(Wanted(str(pier)), made.states)
    assert again.pages != made.pages


def test_a_save_during_the_build_is_seen_after_it(pier: Path) -> None:
    made = built(Wanted(str(pier)))
    pier.write_text(PLAN.format(4), encoding="utf-8")
    assert wait_for_change(made.states, Event())


def test_touching_a_file_or_saving_another_builds_nothing(pier: Path) -> None:
    made = built(Wanted(str(pier)))
    stop = Event()

    def busy() -> None:
        pier.touch()
        pier.with_name("other.plan").write_text("", encoding="utf-8")
        sleep(1.3)
        stop.set()

    Thread(target=busy).start()
    assert not wait_for_change(made.states, stop)


def test_a_file_that_is_gone_is_an_error_until_it_is_back(pier: Path) -> None:
    made = built(Wanted(str(pier)))
    moves = pier.with_name("moves.plan")
    assert changed(made.states, moves.unlink)
    gone = built(Wanted(str(pier)), made.states)
    assert (gone.pages, gone.found[0]["line"]) == ((), 1)
    assert changed(gone.states, lambda: save_over(moves, MOVES))
    assert built(Wanted(str(pier)), gone.states).pages == made.pages


def test_a_whole_folder_may_go_and_come_back(pier: Path, tmp_path_factory: pytest.TempPathFactory) -> None:
    made = built(Wanted(str(pier)))
    aside = tmp_path_factory.mktemp("aside") / "pier"
    shutil.copytree(pier.parent, aside)
    assert changed(made.states, lambda: shutil.rmtree(pier.parent))
    gone = built(Wanted(str(pier)), made.states)
    assert gone.pages == ()
    assert changed(gone.states, lambda: shutil.copytree(aside, pier.parent))
    assert built(Wanted(str(pier)), gone.states).pages == made.pages


def test_half_a_file_is_an_error_and_the_rest_mends_it(pier: Path) -> None:
    made = built(Wanted(str(pier)))
    half = PLAN.format(4)[:-17]
    assert changed(made.states, lambda: save_over(pier, half))
    broken = built(Wanted(str(pier)), made.states)
    assert broken.pages == ()
    assert broken.found
    assert changed(broken.states, lambda: save_over(pier, PLAN.format(4)))
    assert len(built(Wanted(str(pier)), broken.states).pages) == 1


def test_the_verb_builds_once(pier: Path) -> None:
    answer = run_command("watch", str(pier), "--once")
    assert answer.exit_code == 0
    address, told = answer.stderr.splitlines()
    assert address.startswith("http://127.0.0.1:")
    assert address.endswith(f"/ shows {pier}")
    assert told.startswith("built 1 sheet in ")


def test_a_taken_port_is_said(pier: Path) -> None:
    from setwright.preview.server import Server
    from setwright.preview.stage import Stage

    server = Server(Stage())
    answer = run_command("watch", str(pier), "--once", "--port", str(server.server_port))
    server.server_close()
    assert answer.exit_code == 2
    assert answer.stderr == f"setwright: port {server.server_port}: Address already in use\n"


def test_standard_input_cannot_be_watched() -> None:
    assert run_command("watch", "-", stdin="").exit_code == 2


def test_interrupting_it_ends_it_quietly(pier: Path) -> None:
    process = subprocess.Popen(
        [sys.executable, "-m", "setwright", "watch", str(pier)], stderr=subprocess.PIPE, text=True, encoding="utf-8"
    )
    assert process.stderr is not None
    assert "shows" in process.stderr.readline()
    assert "built 1 sheet" in process.stderr.readline()
    sleep(0.3)
    process.send_signal(signal.SIGINT)
    assert process.wait(10) == 0
    assert process.stderr.read().strip() == ""


def changed(states: tuple[tuple[str, str | None], ...], act: Callable[[], object]) -> bool:
    """Whether the change is seen within some seconds."""
    stop = Event()

    def late() -> None:
        sleep(0.2)
        act()
        stop.wait(8)
        stop.set()

    thread = Thread(target=late)
    thread.start()
    seen = wait_for_change(states, stop)
    stop.set()
    thread.join()
    return seen
