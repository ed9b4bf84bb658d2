"""The folder of sheets: all or nothing, and only over what the tool wrote."""

from __future__ import annotations

import json
import os
from pathlib import Path

import click
import pytest

from setwright.cli import folder as module
from setwright.cli.folder import MANIFEST, write_new, write_sheets

ONE = {"a.html": b"<p>1", "b.csv": b"1\r\n"}
TWO = {"a.html": b"<p>2", "b.csv": b"2\r\n"}


def contents(folder: Path) -> dict[str, bytes]:
    """Every file but the manifest."""
    return {path.name: path.read_bytes() for path in folder.iterdir() if path.name != MANIFEST}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "out" / "sheets"


def test_it_makes_the_folder_and_replaces_its_own(folder: Path) -> None:
    write_sheets(str(folder), ONE)
    assert contents(folder) == ONE
    write_sheets(str(folder), TWO)
    assert contents(folder) == TWO
    write_sheets(str(folder), {"c.md": b"#"})
    assert contents(folder) == {**TWO, "c.md": b"#"}
    write_sheets(str(folder), ONE)
    assert contents(folder) == {**ONE, "c.md": b"#"}


def test_the_manifest_lists_what_was_written(folder: Path) -> None:
    write_sheets(str(folder), ONE)
    assert set(json.loads((folder / MANIFEST).read_text())["files"]) == set(ONE)


def test_what_somebody_else_wrote_stays(folder: Path) -> None:
    folder.mkdir(parents=True)
    (folder / "b.csv").write_bytes(b"mine")
    with pytest.raises(click.ClickException, match="was not written by setwright"):
        write_sheets(str(folder), ONE)
    assert contents(folder) == {"b.csv": b"mine"}
    assert not (folder / MANIFEST).exists()


def test_what_somebody_changed_stays(folder: Path) -> None:
    write_sheets(str(folder), ONE)
    (folder / "a.html").write_bytes(b"<p>my notes")
    with pytest.raises(click.ClickException, match="was changed since setwright wrote it"):
        write_sheets(str(folder), TWO)
    assert contents(folder) == {**ONE, "a.html": b"<p>my notes"}


def test_the_very_same_content_is_never_in_the_way(folder: Path) -> None:
    write_sheets(str(folder), ONE)
    (folder / MANIFEST).unlink()
    write_sheets(str(folder), ONE)
    write_sheets(str(folder), TWO)
    assert contents(folder) == TWO


@pytest.mark.parametrize("manifest", [b"", b"[]", b"{}", b'{"files": 1}', b'{"files": {"a.html": 1}}', b"\xff"])
def test_a_damaged_manifest_vouches_for_nothing(folder: Path, manifest: bytes) -> None:
    write_sheets(str(folder), ONE)
    (folder / MANIFEST).write_bytes(manifest)
    with pytest.raises(click.ClickException):
        write_sheets(str(folder), TWO)
    assert contents(folder) == ONE


def test_links_and_folders_are_not_replaced(folder: Path, tmp_path: Path) -> None:
    write_sheets(str(folder), ONE)
    target = tmp_path / "elsewhere"
    (folder / "a.html").rename(target)
    (folder / "a.html").symlink_to(target)
    with pytest.raises(click.ClickException, match="no plain file"):
        write_sheets(str(folder), TWO)
    (folder / "a.html").unlink()
    (folder / "a.html").mkdir()
    with pytest.raises(click.ClickException, match="no plain file"):
        write_sheets(str(folder), TWO)
    assert target.read_bytes() == ONE["a.html"]


def test_a_file_is_no_folder(tmp_path: Path) -> None:
    (tmp_path / "sheets").write_text("")
    with pytest.raises(click.ClickException, match="is not a folder"):
        write_sheets(str(tmp_path / "sheets"), ONE)


def fail_at(monkeypatch: pytest.MonkeyPatch, name: str, call: int) -> None:
    """Make the `call`-th call of `os.replace` or `_write_aside` fail as a full disk does, once."""
    owner: object = os if name == "replace" else module
    original = getattr(owner, name)
    calls = 0

    def failing(*arguments: object) -> object:
        nonlocal calls
        calls += 1
        if calls == call:
            raise OSError(28, "No space left on device")
        return original(*arguments)

    monkeypatch.setattr(owner, name, failing)


@pytest.mark.parametrize("name", ["replace", "_write_aside"])
@pytest.mark.parametrize("call", [1, 2, 3])
def test_a_build_that_fails_leaves_what_was_there(
    folder: Path, monkeypatch: pytest.MonkeyPatch, name: str, call: int
) -> None:
    write_sheets(str(folder), {"a.html": b"<p>1"})
    before = {path.name: path.read_bytes() for path in folder.iterdir()}
    with monkeypatch.context() as patch:
        fail_at(patch, name, call)
        with pytest.raises(OSError, match="No space left"):
            write_sheets(str(folder), TWO)
    assert {path.name: path.read_bytes() for path in folder.iterdir()} == before
    write_sheets(str(folder), TWO)
    assert contents(folder) == TWO


@pytest.mark.parametrize("call", [1, 2, 3])
def test_a_first_build_that_fails_leaves_no_folder(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, call: int
) -> None:
    fail_at(monkeypatch, "replace", call)
    with pytest.raises(OSError, match="No space left"):
        write_sheets(str(folder), ONE)
    assert list(tmp_path.iterdir()) == []


def test_a_build_stopped_between_two_files_can_be_done_again(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As after a power cut: the manifest and one sheet are new, the other is old, and nothing was tidied up."""
    write_sheets(str(folder), ONE)
    with monkeypatch.context() as patch:
        patch.setattr(module, "_undo", lambda *_: None)
        fail_at(patch, "replace", 3)
        with pytest.raises(OSError, match="No space left"):
            write_sheets(str(folder), TWO)
    assert contents(folder) == {"a.html": TWO["a.html"], "b.csv": ONE["b.csv"]}
    write_sheets(str(folder), {**TWO, "b.csv": b"3\r\n"})
    assert contents(folder) == {**TWO, "b.csv": b"3\r\n"}


def test_sheets_are_as_public_as_other_files(folder: Path) -> None:
    write_sheets(str(folder), ONE)
    other = folder / "other"
    other.write_text("")
    assert (folder / "a.html").stat().st_mode == other.stat().st_mode


def test_new_files_are_written_only_where_none_are(folder: Path) -> None:
    write_new(str(folder), {"a.plan": "plan\n", "log.plan": "#\n"})
    assert contents(folder) == {"a.plan": b"plan\n", "log.plan": b"#\n"}
    with pytest.raises(click.ClickException, match="is already there"):
        write_new(str(folder), {"b.plan": "plan\n", "log.plan": "#\n"})
    assert contents(folder) == {"a.plan": b"plan\n", "log.plan": b"#\n"}
