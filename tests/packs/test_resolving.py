"""How a pack is found, and what is said where it cannot be: packages laid out by hand beside what pip would write."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from setwright.cache import INSTALLED, LISTING, state
from setwright.pipeline import Compiled, compile

RAISES = "raise RuntimeError('somebody imported a pack')\n"
MOVES = "exercise Slipway Step-Up\n"

Install = Callable[..., Path]


@pytest.fixture
def install(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Install:
    """Lays out a package with files, and the note of its entry point."""
    site = tmp_path / "site"
    site.mkdir()
    monkeypatch.syspath_prepend(str(site))

    def lay(pack: str, value: str, files: dict[str, str], *, name: str | None = None) -> Path:
        note = site / f"{(name or pack).replace('-', '_')}-1.0.dist-info"
        note.mkdir()
        (note / "METADATA").write_text(f"Metadata-Version: 2.1\nName: {name or pack}\nVersion: 1.0\n", encoding="utf-8")
        (note / "entry_points.txt").write_text(f"[setwright.library]\n{pack} = {value}\n", encoding="utf-8")
        for path, text in files.items():
            (site / path).parent.mkdir(parents=True, exist_ok=True)
            (site / path).write_text(text, encoding="utf-8")
        return site

    return lay


@pytest.fixture
def checked(tmp_path: Path) -> Callable[[str], Compiled]:
    """A file of a workspace, compiled."""

    def run(text: str) -> Compiled:
        (tmp_path / "work").mkdir(exist_ok=True)
        (tmp_path / "work" / "setwright.toml").touch()
        path = tmp_path / "work" / "pier.plan"
        path.write_text(text, encoding="utf-8")
        return compile(str(path))

    return run


def told(done: Compiled) -> list[str]:
    return [f"{found.code.number} {found.message}" for found in done.diagnostics]


def uses(path: str) -> str:
    return f'use {path}\n\nplan "Pier"\n  block Base: 1 week\n    day Mon\n      Slipway Step-Up: 3 x 5\n'


@pytest.mark.parametrize("path", ["shed", "shed.moves", "shed.more", "shed.more.steps"])
def test_a_pack_a_file_and_a_folder(path: str, install: Install, checked: Callable[[str], Compiled]) -> None:
    files = {"shed/__init__.py": RAISES, "shed/moves.plan": "", "shed/more/steps.plan": ""}
    at_top = path.count(".") == 0 or path.endswith("moves")
    files["shed/moves.plan" if at_top else "shed/more/steps.plan"] = MOVES
    install("shed", "shed", files)
    assert told(checked(uses(path))) == []


def test_no_code_of_a_pack_is_run(install: Install, checked: Callable[[str], Compiled]) -> None:
    """`find_spec` of a dotted name would import the package before the point."""
    files = {"outer/__init__.py": RAISES, "outer/inner/__init__.py": RAISES, "outer/inner/moves.plan": MOVES}
    install("shed", "outer.inner", files)
    assert told(checked(uses("shed"))) == []
    assert "outer" not in sys.modules


@pytest.mark.parametrize(
    ("value", "files", "reason"),
    [
        ("missing", {}, "its package `missing` is not there"),
        ("outer.missing", {"outer/__init__.py": RAISES}, "its package `outer.missing` is not there"),
        ("alone", {"alone.py": RAISES}, "`alone` is no package with a folder"),
        ("alone.inner", {"alone.py": RAISES}, "its package `alone.inner` is not there"),
        ("shed:moves", {"shed/__init__.py": "", "shed/moves.plan": MOVES}, "its entry point names `shed:moves`"),
        ("../elsewhere", {}, "its entry point names `../elsewhere`, which is no package"),
        ("", {}, "its entry point names ``, which is no package"),
    ],
)
def test_a_broken_pack_is_named(
    value: str, files: dict[str, str], reason: str, install: Install, checked: Callable[[str], Compiled]
) -> None:
    install("shed", value, files)
    [line] = told(checked("use shed.moves\n"))
    assert line.startswith(f"SW0012 the pack `shed` cannot be used: {reason}")


def test_what_raises_while_a_pack_is_looked_for_is_told(
    install: Install, checked: Callable[[str], Compiled], monkeypatch: pytest.MonkeyPatch
) -> None:
    class Finder:
        @staticmethod
        def find_spec(name: str, *_: object) -> None:
            if name == "odd_shed":
                raise ImportError("out of\norder")

    install("shed", "odd_shed", {})
    monkeypatch.setattr(sys, "meta_path", [Finder, *sys.meta_path])
    assert told(checked("use shed.moves\n")) == [
        "SW0012 the pack `shed` cannot be used: looking for its package `odd_shed` failed (ImportError: out of order)"
    ]


def test_two_packages_that_offer_one_pack(install: Install, checked: Callable[[str], Compiled]) -> None:
    install("shed", "one", {"one/__init__.py": "", "one/moves.plan": MOVES}, name="one")
    install("shed", "two", {"two/__init__.py": "", "two/moves.plan": MOVES}, name="two")
    assert told(checked("use shed.moves\n")) == [
        "SW0012 the pack `shed` cannot be used: several installed packages offer it: one, two"
    ]


@pytest.mark.parametrize(
    ("written", "help_"),
    [
        ("shde.moves", "Did you mean `shed`?"),
        ("harbour", "Installed here: `shed`."),
        ("stdlb", "Did you mean `stdlib`?"),
    ],
)
def test_an_unknown_pack(written: str, help_: str, install: Install, checked: Callable[[str], Compiled]) -> None:
    install("shed", "shed", {"shed/__init__.py": "", "shed/moves.plan": MOVES})
    [found] = checked(f"use {written}\n").diagnostics
    assert (found.code.name, found.help) == ("unknown-pack", help_)


def test_what_a_pack_does_not_hold(install: Install, checked: Callable[[str], Compiled]) -> None:
    install("shed", "shed", {"shed/__init__.py": "", "shed/moves.plan": MOVES})
    [found] = checked("use shed.move\n").diagnostics
    assert (found.code.name, found.help) == ("unknown-library", "Did you mean `shed.moves`?")


def test_a_pack_without_plans(install: Install, checked: Callable[[str], Compiled]) -> None:
    install("shed", "shed", {"shed/__init__.py": ""})
    assert told(checked("use shed\n")) == ["SW0007 there is no library `shed`"]


def test_a_packs_mistakes_are_told_at_their_place(install: Install, checked: Callable[[str], Compiled]) -> None:
    install("shed", "shed", {"shed/__init__.py": "", "shed/moves.plan": MOVES + "  needs oar\n"})
    [found] = checked(uses("shed.moves")).diagnostics
    assert str(found.span) == "shed/moves.plan:2:9"
    assert found.code.name == "unknown-equipment"


def test_files_of_a_pack_stay_in_their_pack(install: Install, checked: Callable[[str], Compiled]) -> None:
    """Also where the environment lies in the workspace, as a `.venv` does."""
    site = install("shed", "shed", {"shed/__init__.py": "", "shed/moves.plan": 'use "../secret.plan"\n' + MOVES})
    (site / "secret.plan").write_text("exercise Secret\n", encoding="utf-8")
    (site.parent / "setwright.toml").touch()
    [found] = checked(uses("shed.moves")).diagnostics
    assert found.message == "`../secret.plan` lies outside the pack `shed`"
    assert str(found.span) == "shed/moves.plan:1:5"


def test_a_link_does_not_lead_out_of_a_pack(install: Install, checked: Callable[[str], Compiled]) -> None:
    site = install("shed", "shed", {"shed/__init__.py": "", "secret.plan": MOVES})
    (site / "shed" / "moves.plan").symlink_to(site / "secret.plan")
    done = checked("use shed.moves\n")
    assert told(done) == ["SW0005 `shed.moves` lies outside the pack `shed`"]
    assert str(site / "secret.plan") not in dict(done.dependencies)


def test_packs_use_the_shipped_library_and_each_other(install: Install, checked: Callable[[str], Compiled]) -> None:
    step = MOVES + "  works quads 1\n  needs oar\n"
    install("shed", "shed", {"shed/__init__.py": "", "shed/moves.plan": "use stdlib.muscles\nuse gear.oars\n" + step})
    install("gear", "gear", {"gear/__init__.py": "", "gear/oars.plan": "equipment oar\n"})
    assert told(checked(uses("shed.moves"))) == []


def test_packs_that_use_each_other_in_a_circle(install: Install, checked: Callable[[str], Compiled]) -> None:
    install("shed", "shed", {"shed/__init__.py": "", "shed/moves.plan": "use gear.oars as gear\n" + MOVES})
    install("gear", "gear", {"gear/__init__.py": "", "gear/oars.plan": "use shed.moves\nequipment oar\n"})
    assert told(checked(uses("shed.moves"))) == [
        "SW0006 these files use each other in a circle: shed/moves.plan -> gear/oars.plan -> shed/moves.plan"
    ]


def test_what_a_result_depends_on(install: Install, checked: Callable[[str], Compiled]) -> None:
    """A pack that appears, goes or changes must end what the cache kept; a plan without packs asks for none of it."""
    unknown = dict(checked("use shed\n").dependencies)
    site = install("shed", "shed", {"shed/__init__.py": "", "shed/moves.plan": MOVES})
    assert unknown[INSTALLED] != state(INSTALLED)
    known = dict(checked(uses("shed")).dependencies)
    listing = str(site / "shed" / LISTING)
    assert {INSTALLED, listing, str(site / "shed" / "moves.plan")} <= known.keys()
    assert all(state(path) == seen for path, seen in known.items())
    (site / "shed" / "another.plan").touch()
    assert state(listing) != known[listing]
    assert INSTALLED not in dict(checked("use stdlib.muscles\n").dependencies)


def test_a_plan_without_packs_does_not_look_for_them(
    checked: Callable[[str], Compiled], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Start-up counts, and reading what is installed takes long."""
    monkeypatch.delitem(sys.modules, "setwright.packs", raising=False)
    checked("use stdlib.exercises\n")
    assert "setwright.packs" not in sys.modules
