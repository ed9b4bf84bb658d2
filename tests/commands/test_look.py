"""A club's name, logo, colour and language: from options, from `setwright.toml`, and what is said of wrong ones."""

from __future__ import annotations

import base64
import io
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from setwright.cli import build
from setwright.cli.trouble import Trouble
from setwright.render.logo import LARGEST
from setwright.render.outputs import OUTPUTS, Output

Run = Callable[..., Result]

SVG = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 8 8"><path d="M0 8 4 0l4 8z"/></svg>'
PNG = b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR" + bytes(17)
SETTINGS = '[sheets]\nclub = "Tarnfell <Rowing> Club"\nlogo = "pictures/logo.svg"\ncolour = "#7A1F3D"\n'


@pytest.fixture
def set_up(club: Path) -> Path:
    (club / "pictures").mkdir()
    (club / "pictures" / "logo.svg").write_bytes(SVG)
    (club / "setwright.toml").write_text(SETTINGS, encoding="utf-8")
    return club


def page(club: Path) -> str:
    return (club / "sheets" / "pier.html").read_text(encoding="utf-8")


def test_settings_of_a_folder(set_up: Path, run: Run) -> None:
    answer = run("build", "pier.plan")
    assert (answer.exit_code, answer.stderr) == (0, "wrote sheets/pier.html\n")
    assert "<bdi>Tarnfell &lt;Rowing&gt; Club</bdi>" in page(set_up)
    assert f'src="data:image/svg+xml;base64,{base64.b64encode(SVG).decode()}"' in page(set_up)
    assert "@media screen{:root{--accent:#7a1f3d}}" in page(set_up)


def test_options_go_before_the_settings(set_up: Path, run: Run) -> None:
    (set_up / "new.png").write_bytes(PNG)
    assert run("build", "pier.plan", "--club", "Pier Club", "--logo", "new.png", "--colour", "#00ff00").exit_code == 0
    assert "<bdi>Pier Club</bdi>" in page(set_up)
    assert "Tarnfell" not in page(set_up)
    assert 'src="data:image/png;base64,' in page(set_up)
    light = re.search(r"@media screen\{:root\{--accent:(#\w{6})\}\}", page(set_up))
    assert light
    assert light[1] != "#00ff00"  # which nobody could read on white


def test_settings_of_the_root_hold_in_its_folders(set_up: Path, run: Run) -> None:
    (set_up / "plans").mkdir()
    text = (set_up / "pier.plan").read_text().replace('"moves.plan"', '"../moves.plan"')
    (set_up / "plans" / "quay.plan").write_text(text)
    assert run("build", "plans/quay.plan").exit_code == 0
    assert "data:image/svg+xml" in page(set_up)


def test_without_any_the_sheet_is_as_ever(club: Path, run: Run) -> None:
    run("build", "pier.plan")
    assert 'class="club"' not in page(club)


@pytest.mark.parametrize(
    ("settings", "place", "code"),
    [
        ("[sheets]\nclub = Pier\n", "2:8", "broken-settings"),
        ("[sheets]\nclub = 1\n", "2:1", "setting-without-text"),
        ('[sheets]\nclub = ""\n', "2:1", "setting-without-text"),
        ('[sheets]\nclub = """a\nb"""\n', "2:1", "setting-without-text"),
        ('[sheets]\n# club\n"clbu" = "Pier"\n', "3:1", "unknown-setting"),
        ('[sheet]\nclub = "Pier"\n', "1:1", "unknown-setting"),
        ('sheets = "Pier"\n', "1:1", "unknown-setting"),
        ('sheets.colour = "red"\n', "1:1", "bad-colour"),
        ('sheets = { club = "Pier", colour = "#12345g" }\n', "1:1", "bad-colour"),
        ('[sheets]\nclub = "colour"\n  colour = "#fff"\n', "3:3", "bad-colour"),
        ('[sheets]\nlogo = "nobody.png"\n', "2:1", "unreadable-file"),
        ('[sheets]\nlogo = "pier.plan"\n', "2:1", "bad-logo"),
        ('[sheets]\nlogo = "../secret.png"\n', "2:1", "outside-root"),
        ('[sheets]\nlogo = "/etc/hostname"\n', "2:1", "outside-root"),
        ('[sheets]\nlogo = "link.png"\n', "2:1", "outside-root"),
        ('[sheets]\nlogo = "."\n', "2:1", "unreadable-file"),
        ('[sheets]\ntemplate = "../secret.html.j2"\n', "2:1", "outside-root"),
        ('[sheets]\nlanguage = "xx"\n', "2:1", "unknown-language"),
    ],
)
def test_wrong_settings(club: Path, run: Run, settings: str, place: str, code: str) -> None:
    (club.parent / "secret.png").write_bytes(PNG)
    (club / "link.png").symlink_to("../secret.png")
    (club / "setwright.toml").write_text(settings, encoding="utf-8")
    answer = run("build", "pier.plan")
    assert answer.exit_code == 1
    assert re.search(rf"^setwright\.toml:{place}: error\[SW\d+ {code}\]", answer.stderr, re.MULTILINE), answer.stderr
    assert not (club / "sheets").exists()


def test_settings_that_are_no_text(club: Path, run: Run) -> None:
    (club / "setwright.toml").write_bytes(b'[sheets]\nclub = "\xff"\n')
    assert "setwright.toml:2:9: error[SW0002 not-utf8]" in run("build", "pier.plan").stderr


@pytest.mark.parametrize(
    ("content", "kind"),
    [
        (SVG, "image/svg+xml"),
        (b'\xef\xbb\xbf<?xml version="1.0" encoding="utf-8"?>\n<!-- ours -->' + SVG, "image/svg+xml"),
        (PNG, "image/png"),
        (b"\xff\xd8\xff\xe0" + bytes(9) + b"\xff\xd9", "image/jpeg"),
        (b"GIF89a" + bytes(9), "image/gif"),
        (b"RIFF\0\0\0\0WEBPVP8 " + bytes(4), "image/webp"),
    ],
)
def test_logos(club: Path, run: Run, content: bytes, kind: str) -> None:
    (club / "logo").write_bytes(content)
    assert run("build", "pier.plan", "--logo", "logo").exit_code == 0
    assert f'src="data:{kind};base64,{base64.b64encode(content).decode()}"' in page(club)


@pytest.mark.parametrize(
    ("content", "reason"),
    [
        (b"", "no PNG"),
        (b"<html><svg></svg></html>", "no PNG"),
        (PNG[:8], "it is broken"),
        (PNG[:-1], "it is broken"),
        (b"\xff\xd8\xff\xe0\0\0", "it is broken"),
        (b"GIF89a", "it is broken"),
        (b"RIFF\0\0\0\0WEBP", "it is broken"),
        (PNG + bytes(LARGEST), "larger than 100 kB"),
        (SVG.replace(b"</svg>", b""), "cannot be read"),
        (SVG.replace(b"<path", b"<script>alert(1)</script><path"), "script"),
        (SVG.replace(b"<path", b'<path onload="alert(1)"'), "script"),
        (SVG.replace(b"<path", b"<foreignObject/><path"), "foreignObject"),
        (SVG.replace(b"<path", b'<image href="http://pier.example/x.png"/><path'), "elsewhere"),
        (SVG.replace(b"<path", b"<style>@import 'x.css'</style><path"), "elsewhere"),
        (SVG.replace(b"<path", b'<path fill="url(http://pier.example/x#y)"'), "elsewhere"),
        (b'<!DOCTYPE svg [<!ENTITY a "b">]>' + SVG, "document type"),
        (b'<?xml-stylesheet href="x.css"?>' + SVG, "style sheet"),
        (SVG.replace(b"M0", b"\xff"), "UTF-8"),
    ],
)
def test_files_that_are_no_logo(club: Path, run: Run, content: bytes, reason: str) -> None:
    (club / "logo").write_bytes(content)
    answer = run("build", "pier.plan", "--logo", "logo")
    assert answer.exit_code == 1
    assert "--logo:1:1: error[SW1005 bad-logo]" in answer.stderr
    assert reason in answer.stderr


def test_the_language_of_the_sheets(club: Path, run: Run) -> None:
    assert run("build", "pier.plan", "--language", "de").exit_code == 0
    assert '<html lang="de"' in page(club)
    answer = run("build", "pier.plan", "--language", "xx")
    assert answer.exit_code == 1
    assert "--language:1:1: error[SW1006 unknown-language]" in answer.stderr


class Terminal(io.TextIOWrapper):
    """Standard output that somebody watches."""

    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize("output", [one for one in OUTPUTS if one.binary], ids=lambda one: one.name)
def test_a_terminal_is_not_filled_with_bytes(club: Path, monkeypatch: pytest.MonkeyPatch, output: Output) -> None:
    monkeypatch.setattr("sys.stdout", Terminal(io.BytesIO()))
    with pytest.raises(Trouble, match="a terminal cannot show"):
        build.command.main(["pier.plan", "--format", output.name, "-o", "-"], standalone_mode=False)


@pytest.mark.parametrize("output", OUTPUTS, ids=lambda one: one.name)
def test_bytes_pass_where_they_are_redirected(club: Path, run: Run, output: Output) -> None:
    name = output.name
    dated = (club / "pier.plan").read_text().replace("  block Base", "  start 2027-01-04\n  block Base")
    (club / "pier.plan").write_text(dated)
    content = run("build", "pier.plan", "--format", name, "-o", "-").stdout_bytes
    assert content
    assert output.binary is not is_text(content)


def is_text(content: bytes) -> bool:
    try:
        content.decode()
    except UnicodeDecodeError:
        return False
    return True


def test_many_sheets_get_a_bar_where_somebody_watches(club: Path, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("setwright.cli.sheets.QUICK", 1)
    assert run("build", "pier.plan", "--format", "csv,json").stderr == "wrote sheets/pier.csv\nwrote sheets/pier.json\n"
    watched = Terminal(io.BytesIO(), encoding="utf-8")
    monkeypatch.setattr("sys.stderr", watched)
    build.command.main(["pier.plan", "--format", "csv,json"], standalone_mode=False)
    watched.flush()
    said = watched.buffer.getvalue().decode()  # type: ignore[attr-defined]
    assert "sheets  [" in said
    assert "100%" in said
    assert said.endswith("wrote sheets/pier.csv\nwrote sheets/pier.json\n")
