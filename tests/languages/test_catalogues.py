"""The catalogues say everything that the sheets say, in whole sentences, and are compiled as they are written."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from importlib.resources import files
from io import BytesIO
from pathlib import Path
from typing import Final

import pytest
from babel.messages.catalog import Catalog, Message
from babel.messages.mofile import read_mo, write_mo
from babel.messages.pofile import read_po

from pseudo_language import KEYWORDS, ROOT, extracted, messages
from setwright.render.language import ENGLISH, LANGUAGES

OTHERS: Final = tuple(tag for tag in LANGUAGES if tag != ENGLISH.tag)
LOCALE: Final = files("setwright.render").joinpath("locale")
_FIGURE: Final = re.compile(r"\d+")
_SLOT: Final = re.compile(r"\{(\w*)\}")


@pytest.fixture(scope="module", params=OTHERS)
def catalogue(request: pytest.FixtureRequest) -> Catalog:
    with LOCALE.joinpath(request.param, "LC_MESSAGES", "sheets.po").open("rb") as file:
        return read_po(file, locale=request.param, abort_invalid=True)


def forms(said: str | tuple[str, ...] | list[str]) -> tuple[str, ...]:
    return (said,) if isinstance(said, str) else tuple(said)


def test_every_message_is_translated(catalogue: Catalog) -> None:
    missing = [message.id for message in messages() if not translated(catalogue.get(message.id))]
    assert missing == []


def translated(message: Message | None) -> bool:
    return message is not None and not message.fuzzy and all(form.strip() for form in forms(message.string))


def test_nothing_is_left_over(catalogue: Catalog) -> None:
    known = extracted()
    assert [message.id for message in catalogue if message.id and message.id not in known] == []
    assert dict(catalogue.obsolete) == {}


def test_values_stand_in_every_form(catalogue: Catalog) -> None:
    """A value that is left out of a translation would be missing on the sheet; one that is misspelt would stop it."""
    wrong = [
        message.id
        for message in catalogue
        if message.id
        and any(
            sorted(_SLOT.findall(form)) != sorted(_SLOT.findall(forms(message.id)[-1]))
            for form in forms(message.string)
        )
    ]
    assert wrong == []


def test_ends_and_spaces_are_as_in_english(catalogue: Catalog) -> None:
    """A sentence ends as one, and a translation begins and ends where its text does."""
    for message in catalogue:
        for said, form in zip(forms(message.id), forms(message.string), strict=False) if message.id else ():
            assert form == form.strip()
            assert form.endswith(".") or not said.endswith("."), form


def test_figures_are_those_of_the_english_text(catalogue: Catalog) -> None:
    """The steps of a test, a rest, an age: nothing of them may change on the way."""
    wrong = [
        form
        for message in catalogue
        if message.id
        for form in forms(message.string)
        if sorted(_FIGURE.findall(form)) != sorted(_FIGURE.findall(forms(message.id)[-1]))
    ]
    assert wrong == []


def test_compiled_catalogue_is_the_written_one(catalogue: Catalog) -> None:
    written = BytesIO()
    write_mo(written, catalogue)
    with LOCALE.joinpath(str(catalogue.locale), "LC_MESSAGES", "sheets.mo").open("rb") as file:
        compiled = read_mo(file)
    again = read_mo(BytesIO(written.getvalue()))
    assert [(one.id, one.string) for one in compiled] == [(one.id, one.string) for one in again]


def test_each_language_has_its_folder_and_no_other() -> None:
    assert sorted(folder.name for folder in LOCALE.iterdir() if folder.is_dir()) == sorted(OTHERS)


def test_extraction_sees_every_call() -> None:
    """Inside an f-string extraction finds nothing, and neither does it where a text is put together in the call."""
    known = {form for message in messages() for form in forms(message.id)}
    modules = sorted((ROOT / "compiler" / "render").rglob("*.py"))
    unseen = [f"{place}: {said}" for path in modules for place, said in said_in(path) if said not in known]
    assert unseen == []


def test_the_recipe_extracts_what_the_tests_do() -> None:
    recipe = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    written = {name: places for name, places in KEYWORDS.items() if f" -k {_written(name, places)} " in recipe}
    assert written == KEYWORDS


def _written(name: str, places: tuple[int, ...] | None) -> str:
    return name if places is None else f"{name}:{','.join(map(str, places))}"


def said_in(path: Path) -> Iterator[tuple[str, str]]:
    """Each literal message in the file, with its place."""
    names = {"_", *KEYWORDS}
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if not isinstance(node, ast.Call):
            continue
        name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
        if name in names:
            wanted = KEYWORDS.get(name) or (1,)
            for argument in node.args[: len(wanted)] if len(node.args) >= len(wanted) else ():
                if isinstance(argument, ast.Constant) and isinstance(argument.value, str):
                    yield f"{path.name}:{node.lineno}", argument.value
                elif isinstance(argument, ast.JoinedStr):
                    yield f"{path.name}:{node.lineno}", ast.unparse(argument)
