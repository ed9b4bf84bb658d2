"""Each code's own examples: the failing one yields the code, the mended one does not and has no error."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

import pytest

from setwright.cli.importing import imported
from setwright.diagnostics import Code, Diagnostic, Severity
from setwright.diagnostics.catalogue import FAMILIES, every_code
from setwright.diagnostics.catalogue.names import UNKNOWN_ATHLETE
from setwright.diagnostics.catalogue.reading import BROKEN_PACK, FILE_TOO_LARGE
from setwright.files import LARGEST_FILE, Files
from setwright.pipeline import EVERY_ATHLETE, Compiled, compile
from setwright.render.html import page
from setwright.render.html.club import cautions_left_out
from setwright.render.look import look
from setwright.render.material import Material
from setwright.render.outputs import FaultyTemplateError
from setwright.report.overview import overview
from setwright.report.volume import volume

CODES = every_code()

# What no small file shows: one comes from what was asked on the command line, one from a file of megabytes, one from a
# package that is installed and broken (tests/packs).
WITHOUT_EXAMPLE = (UNKNOWN_ATHLETE, FILE_TOO_LARGE, BROKEN_PACK)
PLAN = 'plan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n'
SHOWN = tuple(code for code in CODES if code not in WITHOUT_EXAMPLE)


@pytest.mark.parametrize("code", SHOWN, ids=lambda code: code.name)
def test_failing_example_fails(code: Code, tmp_path: Path) -> None:
    assert code in found(reported(code, code.failing, tmp_path))


@pytest.mark.parametrize("code", SHOWN, ids=lambda code: code.name)
def test_mended_example_is_mended(code: Code, tmp_path: Path) -> None:
    done = reported(code, code.mended, tmp_path)
    assert [diagnostic.message for diagnostic in done if diagnostic.severity is Severity.ERROR] == []
    assert code not in found(done)


def test_unknown_athlete(tmp_path: Path) -> None:
    (tmp_path / "example.plan").write_text('athlete "Ines"\n', encoding="utf-8")
    done = compile(str(tmp_path / "example.plan"), athletes=("Ine",))
    assert [(diagnostic.code, diagnostic.help) for diagnostic in done.diagnostics] == [
        (UNKNOWN_ATHLETE, "Did you mean `Ines`?")
    ]


def test_file_too_large(tmp_path: Path) -> None:
    (tmp_path / "example.plan").write_bytes(b"#" * (LARGEST_FILE + 1))
    assert found(compile(str(tmp_path / "example.plan")).diagnostics) == {FILE_TOO_LARGE}


@pytest.mark.parametrize("code", CODES, ids=lambda code: code.name)
def test_messages_are_one_line_without_a_full_stop(code: Code) -> None:
    for said in (code.title, code.message):
        assert said
        assert "\n" not in said
        assert not said.endswith(".")
    assert code.text.endswith(".")


def test_numbers_and_names_are_unique() -> None:
    assert len({code.number for code in CODES}) == len(CODES)
    assert len({code.name for code in CODES}) == len(CODES)


def test_numbers_go_up_family_by_family() -> None:
    numbers = [code.number for code in CODES]
    assert numbers == sorted(numbers)
    assert all(re.fullmatch(r"SW\d{4}", number) for number in numbers)
    assert len({number[:4] for number in numbers}) == len(FAMILIES)


def test_names_are_words_with_hyphens() -> None:
    assert [code.name for code in CODES if not re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", code.name)] == []


def reported(code: Code, example: str | bytes, folder: Path) -> tuple[Diagnostic, ...]:
    """What is said of the example among the files it wants; one that is no plan dresses sheets, or goes into a log."""
    for name, text in (("example.plan", PLAN), *code.files):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    content = example if isinstance(example, bytes) else example.encode()
    if code.file.endswith(".csv"):
        log = dict(code.files).get("log.plan", "exercise Squat\n")
        return imported(content, code.file, log.encode(), str(folder / "log.plan")).diagnostics
    (folder / code.file).write_bytes(content)
    done = compile(str(folder / "example.plan"), athletes=(EVERY_ATHLETE,), root=str(folder))
    return done.diagnostics if code.file.endswith(".plan") else dressed(code, done, folder)


def dressed(code: Code, done: Compiled, folder: Path) -> tuple[Diagnostic, ...]:
    """What is said of settings and of a template."""
    problems: list[Diagnostic] = []
    template = str(folder / code.file) if code.file.endswith(".j2") else None
    chosen = look(Files(folder), {"club": "Tarnfell Rowing Club", "template": template}, problems)
    (compilation,) = done.compilations
    material = Material(compilation.plan, volume(compilation.plan, compilation.promise), overview(compilation.plan))
    try:
        made = page(material, chosen)
    except FaultyTemplateError as faulty:
        return (*problems, faulty.diagnostic)
    if chosen.template is not None:
        problems.extend(cautions_left_out(chosen.template, made, material, chosen))
    return tuple(problems)


def found(reports: Iterable[Diagnostic]) -> set[Code]:
    return {diagnostic.code for diagnostic in reports}
