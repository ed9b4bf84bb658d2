"""Each code's own examples: the failing one yields the code, the mended one does not and has no error."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from setwright.diagnostics import Code
from setwright.diagnostics.catalogue import FAMILIES, every_code
from setwright.diagnostics.catalogue.names import UNKNOWN_ATHLETE
from setwright.diagnostics.catalogue.reading import BROKEN_PACK, FILE_TOO_LARGE
from setwright.files import LARGEST_FILE
from setwright.pipeline import EVERY_ATHLETE, Compiled, compile

CODES = every_code()

# What no small file shows: one comes from what was asked on the command line, one from a file of megabytes, one from a
# package that is installed and broken (tests/packs).
WITHOUT_EXAMPLE = (UNKNOWN_ATHLETE, FILE_TOO_LARGE, BROKEN_PACK)
SHOWN = tuple(code for code in CODES if code not in WITHOUT_EXAMPLE)


@pytest.mark.parametrize("code", SHOWN, ids=lambda code: code.name)
def test_failing_example_fails(code: Code, tmp_path: Path) -> None:
    assert code in found(compiled(code, code.failing, tmp_path))


@pytest.mark.parametrize("code", SHOWN, ids=lambda code: code.name)
def test_mended_example_is_mended(code: Code, tmp_path: Path) -> None:
    done = compiled(code, code.mended, tmp_path)
    assert not done.has_errors, [found.message for found in done.diagnostics]
    assert code not in found(done)


def test_unknown_athlete(tmp_path: Path) -> None:
    (tmp_path / "example.plan").write_text('athlete "Ines"\n', encoding="utf-8")
    done = compile(str(tmp_path / "example.plan"), athletes=("Ine",))
    assert [(diagnostic.code, diagnostic.help) for diagnostic in done.diagnostics] == [
        (UNKNOWN_ATHLETE, "Did you mean `Ines`?")
    ]


def test_file_too_large(tmp_path: Path) -> None:
    (tmp_path / "example.plan").write_bytes(b"#" * (LARGEST_FILE + 1))
    assert found(compile(str(tmp_path / "example.plan"))) == {FILE_TOO_LARGE}


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


def compiled(code: Code, example: str | bytes, folder: Path) -> Compiled:
    """The example, compiled among the files it wants."""
    for name, text in code.files:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    file = folder / "example.plan"
    file.write_bytes(example if isinstance(example, bytes) else example.encode())
    return compile(str(file), athletes=(EVERY_ATHLETE,), root=str(folder))


def found(done: Compiled) -> set[Code]:
    return {diagnostic.code for diagnostic in done.diagnostics}
