"""The shape of the project: what is shipped, which way imports go, and what costs nothing to start."""

from __future__ import annotations

import subprocess
import sys
import tomllib
from ast import literal_eval
from importlib import import_module
from pathlib import Path

import click
import pytest

from setwright.cli import VERBS

ROOT = Path(__file__).parents[2]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
SETUPTOOLS = PROJECT["tool"]["setuptools"]
HOMES = {"compiler": "setwright", "grammar": "setwright.grammar", "stdlib": "setwright.stdlib"}


def package(folder: Path) -> str:
    """The name under which a folder is installed."""
    first, *rest = folder.relative_to(ROOT).parts
    return ".".join([HOMES[first], *rest])


def python(*arguments: str) -> str:
    """What a fresh Python prints."""
    done = subprocess.run([sys.executable, *arguments], capture_output=True, text=True, cwd=ROOT, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def test_every_package_is_shipped() -> None:
    folders = {file.parent for home in HOMES for file in (ROOT / home).rglob("__init__.py")}
    assert sorted(SETUPTOOLS["packages"]) == sorted(package(folder) for folder in folders)


def test_every_module_lies_in_a_package() -> None:
    files = [file for home in HOMES for file in (ROOT / home).rglob("*.py")]
    assert [file for file in files if not (file.parent / "__init__.py").exists()] == []


def test_every_file_that_is_no_module_is_shipped() -> None:
    shipped: set[Path] = set()
    for name, patterns in SETUPTOOLS["package-data"].items():
        home = max((home for home in HOMES.values() if name == home or name.startswith(home + ".")), key=len)
        folder = ROOT / next(f for f, package in HOMES.items() if package == home)
        folder = folder.joinpath(*name.removeprefix(home).strip(".").split(".")) if name != home else folder
        shipped |= {file for pattern in patterns for file in folder.glob(pattern)}
    there = {file for home in HOMES for file in (ROOT / home).rglob("*") if file.is_file()}
    data = {file for file in there if file.suffix not in (".py", ".pyc", ".md")}
    assert data - shipped == set()


def test_imports_go_one_way() -> None:
    python("-c", "from importlinter.cli import lint_imports_command; lint_imports_command()")


def test_importing_the_package_costs_nothing() -> None:
    brought = "import sys; before = set(sys.modules); import setwright; print(sorted(set(sys.modules) - before))"
    light = {"setwright", "collections.abc", "typing", "typing.io", "typing.re", "_typing"}
    assert set(literal_eval(python("-c", brought))) <= light


def test_the_public_names_are_there() -> None:
    import setwright

    for name in setwright.__all__:
        assert getattr(setwright, name) is not None
    assert set(setwright.__all__) <= set(dir(setwright))
    with pytest.raises(AttributeError, match="no attribute 'nothing'"):
        setwright.nothing  # noqa: B018


@pytest.mark.parametrize("verb", [verb.name for verb in VERBS])
def test_every_verb_has_help_with_an_example_and_stands_in_the_readme(verb: str) -> None:
    command = import_module(f"setwright.cli.{verb}").command
    assert isinstance(command, click.Command)
    assert command.help
    assert command.epilog
    assert f"\nExample:\n  setwright {verb}" in command.epilog
    assert all(option.help or option.show_default for option in command.params if isinstance(option, click.Option))
    assert f"setwright {verb}" in (ROOT / "README.md").read_text(encoding="utf-8")


def test_verbs_are_listed_once() -> None:
    names = [verb.name for verb in VERBS]
    assert len(names) == len(set(names))
