"""The cache of `check`: right or absent, never wrong, and never in the way."""

from __future__ import annotations

import json
import os
import stat
from pathlib import Path

import pytest

from setwright import cache

FOUND = [{"code": "SW0201", "message": "深蹲 \udc80", "related": []}]


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    path = tmp_path / "a.plan"
    path.write_text("plan")
    return path


@pytest.fixture
def home() -> Path:
    return Path(os.environ["XDG_CACHE_HOME"], "setwright")


def keep(plan: Path, *more: tuple[str, str | None]) -> None:
    cache.store("entry", "1", ((str(plan), cache.state(str(plan))), *more), FOUND)


def test_what_was_kept_comes_back_whole(plan: Path) -> None:
    keep(plan)
    assert cache.lookup("entry", "1") == FOUND


def test_it_holds_only_while_every_file_is_the_same(plan: Path, tmp_path: Path) -> None:
    absent = tmp_path / "b.plan"
    keep(plan, (str(absent), None), (str(tmp_path), cache.FOLDER))
    assert cache.lookup("entry", "1") == FOUND
    absent.write_text("")
    assert cache.lookup("entry", "1") is None
    absent.unlink()
    assert cache.lookup("entry", "1") == FOUND
    plan.write_text("Plan")
    assert cache.lookup("entry", "1") is None
    plan.unlink()
    assert cache.lookup("entry", "1") is None


def test_another_version_or_key_knows_nothing(plan: Path) -> None:
    keep(plan)
    assert cache.lookup("entry", "2") is None
    assert cache.lookup("other", "1") is None


def test_a_change_of_the_program_itself_ends_it(plan: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    keep(plan)
    monkeypatch.setattr(cache, "_program_folders", lambda: [str(plan.parent)])
    assert cache.lookup("entry", "1") is None


@pytest.mark.parametrize(
    "other",
    [("b.plan", None, ()), ("a.plan", "/elsewhere", ()), ("a.plan", None, ("Ines",)), ("./a.plan", None, ())],
)
def test_the_key_tells_file_root_and_options_apart(other: tuple[str, str | None, tuple[str, ...]]) -> None:
    assert cache.key("a.plan", None, ()) != cache.key(*other)


def test_the_key_tells_working_folders_apart(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    here = cache.key("/x/a.plan", None, ())
    monkeypatch.chdir(tmp_path)
    assert cache.key("/x/a.plan", None, ()) != here


def test_only_the_user_can_read_it(plan: Path, home: Path) -> None:
    keep(plan)
    assert stat.S_IMODE(home.stat().st_mode) == 0o700
    assert stat.S_IMODE((home / "entry").stat().st_mode) == 0o600
    assert [entry.name for entry in home.iterdir()] == ["entry"]


@pytest.mark.parametrize("content", [b"", b"\n", b"{}", b"0\n[]", b"\xff" * 100])
def test_a_damaged_entry_is_no_entry(plan: Path, home: Path, content: bytes) -> None:
    keep(plan)
    (home / "entry").write_bytes(content)
    assert cache.lookup("entry", "1") is None
    keep(plan)
    assert cache.lookup("entry", "1") == FOUND


def test_a_changed_entry_fails_its_checksum(plan: Path, home: Path) -> None:
    keep(plan)
    entry = home / "entry"
    entry.write_bytes(entry.read_bytes().replace(b"SW0201", b"SW0202"))
    assert cache.lookup("entry", "1") is None


def test_a_folder_others_can_write_to_is_not_trusted(plan: Path, home: Path) -> None:
    keep(plan)
    home.chmod(0o777)
    assert cache.lookup("entry", "1") is None
    (home / "entry").unlink()
    keep(plan)
    assert list(home.iterdir()) == []


def test_a_link_is_not_followed(plan: Path, home: Path, tmp_path: Path) -> None:
    keep(plan)
    moved = tmp_path / "moved"
    (home / "entry").rename(moved)
    (home / "entry").symlink_to(moved)
    assert cache.lookup("entry", "1") is None


@pytest.mark.parametrize("at", ["/dev/null/cache", "relative"])
def test_a_place_that_cannot_be_is_silent(plan: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, at: str) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", at)
    monkeypatch.setenv("HOME", "/dev/null")
    monkeypatch.chdir(tmp_path)
    keep(plan)
    assert cache.lookup("entry", "1") is None
    assert sorted(tmp_path.iterdir()) == [plan]


def test_without_xdg_it_lies_in_the_home_folder(plan: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("XDG_CACHE_HOME")
    monkeypatch.setenv("HOME", str(tmp_path))
    keep(plan)
    assert (tmp_path / ".cache" / "setwright" / "entry").is_file()


def test_the_folder_does_not_grow_without_end(plan: Path, home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cache, "_MOST_ENTRIES", 3)
    for number in range(5):
        cache.store(f"entry-{number}", "1", (), FOUND)
        os.utime(home / f"entry-{number}", (number, number))
    assert len(list(home.iterdir())) == 3
    assert cache.lookup("entry-4", "1") == FOUND


def test_an_entry_is_json(plan: Path, home: Path) -> None:
    keep(plan)
    _, _, body = (home / "entry").read_bytes().partition(b"\n")
    assert set(json.loads(body)) == {"maker", "dependencies", "records"}
