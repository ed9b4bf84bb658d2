"""Names over all files: where they are declared, where they stand, and other ones for them."""

from __future__ import annotations

from pathlib import Path

import pytest
from lsprotocol import types as lsp
from pygls.exceptions import JsonRpcException

from play_editor import LIBRARY, PLAN, Editor, applied
from setwright import compile

pytestmark = pytest.mark.asyncio


async def test_definition_leads_to_other_files(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    for text, offset, name, target in (
        ("Boathouse Squat: 3", 2, "hut.plan", "Boathouse Squat like"),
        ("Élan Row: 3", 2, "hut.plan", '"Élan Row"'),
        ("follow hut", 8, "hut.plan", "hut\n"),
        ("like Base", 6, "winter.plan", "Base: 3 weeks"),
        ('use "hut.plan"', 6, "hut.plan", "use"),
    ):
        params = lsp.DefinitionParams(editor.document("winter.plan"), editor.at("winter.plan", text, offset))
        found = await editor.client.text_document_definition_async(params)
        assert isinstance(found, lsp.Location)
        assert found.uri == editor.uri(name)
        content = LIBRARY if name == "hut.plan" else PLAN
        before = content[: content.index(target)]
        assert found.range.start == lsp.Position(before.count("\n"), len(before.rpartition("\n")[2]))
    params = lsp.DefinitionParams(editor.document("winter.plan"), editor.at("winter.plan", "chest 3"))
    found = await editor.client.text_document_definition_async(params)
    assert isinstance(found, lsp.Location)
    assert Path(found.uri).name == "muscles.plan"


async def test_references(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    context = lsp.ReferenceContext(include_declaration=True)
    place = editor.at("winter.plan", "Boathouse Squat: 3", 2)
    params = lsp.ReferenceParams(context, editor.document("winter.plan"), place)
    found = await editor.client.text_document_references_async(params)
    places = sorted((Path(each.uri).name, each.range.start.line) for each in found or ())
    numbers = [number for number, line in enumerate(PLAN.split("\n")) if "Boathouse Squat" in line]
    assert places == [("hut.plan", 2), ("hut.plan", 3), *(("winter.plan", number) for number in numbers)]


@pytest.mark.parametrize(
    ("text", "offset", "new", "plan", "library"),
    [
        (
            "Boathouse Squat: 3",
            2,
            "Knee Bend 2",
            PLAN.replace("Boathouse Squat", '"Knee Bend 2"'),
            LIBRARY.replace("Boathouse Squat", '"Knee Bend 2"'),
        ),
        (
            "Élan Row: 3",
            1,
            "Oar Row",
            PLAN.replace("Élan Row", "Oar Row"),
            LIBRARY.replace('"Élan Row"', "Oar Row"),
        ),
        (
            "follow hut",
            8,
            "loft",
            PLAN.replace("follow hut", "follow loft"),
            LIBRARY.replace("rules hut", "rules loft"),
        ),
        ("like Base", 6, "Build", PLAN.replace("Base", "Build"), LIBRARY),
        ('athlete "Ylva"', 10, "Ylva B.", PLAN.replace('"Ylva"', '"Ylva B."'), LIBRARY),
    ],
)
async def test_rename_in_every_file(
    editor: Editor, files: Path, text: str, offset: int, new: str, plan: str, library: str
) -> None:
    await editor.open("winter.plan")
    place = editor.at("winter.plan", text, offset)
    params = lsp.RenameParams(editor.document("winter.plan"), place, new)
    found = await editor.client.text_document_rename_async(params)
    assert found is not None
    changes = dict(found.changes or {})
    assert applied(PLAN, list(changes.get(editor.uri("winter.plan"), ()))) == plan
    assert applied(LIBRARY, list(changes.get(editor.uri("hut.plan"), ()))) == library
    (files / "hut.plan").write_text(library, encoding="utf-8")
    assert compile(str(files / "winter.plan"), athletes=("*",), text=plan).diagnostics == ()


async def test_a_name_that_is_taken_or_not_ones_own_is_not_given(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    document = editor.document("winter.plan")
    for text, new, why in (
        ("Boathouse Squat: 3", "Back Squat", "already"),
        ("follow hut", "Two Words", "no word"),
        ("Bench Press: 4", "Bench", "not yours"),
    ):
        place = editor.at("winter.plan", text, 8)
        with pytest.raises(JsonRpcException, match=why):
            await editor.client.text_document_rename_async(lsp.RenameParams(document, place, new))


async def test_parameters_are_renamed_where_they_are_given(editor: Editor, files: Path) -> None:
    text = """use stdlib.exercises
template hut-days(top = 80%)
  block Base: 3 weeks
    day Mon
      Back Squat: 3 x 5 @ top
plan "A" from hut-days(top: 75%)
"""
    await editor.open("template.plan", text)
    place = editor.at("template.plan", "@ top", 3)
    params = lsp.RenameParams(editor.document("template.plan"), place, "peak")
    found = await editor.client.text_document_rename_async(params)
    assert found is not None
    edits = list((found.changes or {})[editor.uri("template.plan")])
    assert applied(text, edits) == text.replace("top", "peak")


async def test_names_behind_a_prefix_and_in_other_letters_are_renamed(editor: Editor, files: Path) -> None:
    text = PLAN.replace('use "hut.plan"', 'use "hut.plan" as hut').replace("follow hut", "follow hut.hut")
    text = text.replace("Boathouse Squat: 3 x 5", "hut.Boathouse Squat: 3 x 5")
    text = text.replace("Boathouse Squat: 2 x 3", 'hut."BOATHOUSE SQUAT": 2 x 3')
    text = text.replace("best Boathouse Squat", "best hut.Boathouse Squat").replace("Élan Row", 'hut."E\u0301lan Row"')
    assert await editor.open("winter.plan", text) == []
    for old, offset, new, spellings in (
        ("hut.Boathouse Squat: 3", 6, "Loft Squat", ("Boathouse Squat", '"BOATHOUSE SQUAT"')),
        ('hut."E\u0301lan Row"', 8, "Oar Row", ('"E\u0301lan Row"',)),
        ("follow hut.hut", 12, "loft", ("hut.hut",)),
    ):
        place = editor.at("winter.plan", old, offset)
        params = lsp.RenameParams(editor.document("winter.plan"), place, new)
        found = await editor.client.text_document_rename_async(params)
        assert found is not None
        expected = text
        for spelling in spellings:
            expected = expected.replace(spelling, "hut.loft" if new == "loft" else new)
        changes = dict(found.changes or {})
        assert applied(text, list(changes[editor.uri("winter.plan")])) == expected
        assert editor.uri("hut.plan") in changes


async def test_a_file_with_other_line_ends(editor: Editor, files: Path) -> None:
    found = await editor.open("winter.plan", PLAN.replace("Bench Press: 4", "Bench Pres: 4").replace("\n", "\r\n"))
    line = PLAN.split("\n").index("      Bench Press: 4 x 8 @ 2 RIR")
    assert [(each.code, each.range.start, each.range.end) for each in found] == [
        ("SW0201", lsp.Position(line, 6), lsp.Position(line, 16))
    ]
