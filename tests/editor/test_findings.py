"""Findings as one types: those of `check`, by version, over all files; and the fixes that mend them."""

from __future__ import annotations

from pathlib import Path

import pytest
from lsprotocol import types as lsp

from play_editor import LIBRARY, PLAN, Editor, applied, codes
from setwright import compile
from setwright.diagnostics import Severity

pytestmark = pytest.mark.asyncio


async def test_the_findings_are_those_of_check(editor: Editor, files: Path) -> None:
    text = PLAN.replace("Bench Press: 4 x 8", "Bench Pres: 14 x 8").replace("bar 20 kg", "bar 20 kilos")
    found = await editor.open("winter.plan", text)
    expected = compile(str(files / "winter.plan"), athletes=("*",), text=text).diagnostics
    assert codes(found) == [each.code.number for each in expected]
    assert len(found) >= 2
    severities = {Severity.ERROR: 1, Severity.WARNING: 2, Severity.NOTE: 3}
    for shown, told in zip(found, expected, strict=True):
        assert shown.source == "setwright"
        assert shown.severity == severities[told.severity]
        assert shown.message.split("\n")[0] == told.message
        assert (told.help or "") in shown.message
        assert shown.range.start.line == told.span.line - 1
        assert [each.message for each in shown.related_information or ()] == [each.text for each in told.related]


async def test_findings_carry_the_version_and_follow_the_text(editor: Editor, files: Path) -> None:
    assert await editor.open("winter.plan") == []
    assert codes(await editor.change("winter.plan", "Bench Press: 4", "Bench Prss: 4")) == ["SW0201"]
    assert editor.latest[editor.uri("winter.plan")].version == 2
    assert await editor.change("winter.plan", "Bench Prss: 4", "Bench Press: 4") == []
    assert editor.latest[editor.uri("winter.plan")].version == 3


async def test_many_keys_end_with_the_findings_of_the_last(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    for number in range(1, 12):
        identifier = lsp.VersionedTextDocumentIdentifier(version=number + 1, uri=editor.uri("winter.plan"))
        text = PLAN.replace("4 x 8", "4 x 8" + "x" * (11 - number))
        whole = lsp.TextDocumentContentChangeWholeDocument(text=text)
        editor.client.text_document_did_change(lsp.DidChangeTextDocumentParams(identifier, [whole]))
    editor.versions["winter.plan"] = 12
    assert await editor.told("winter.plan") == []


async def test_a_library_that_is_edited_tells_those_that_use_it(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    await editor.open("hut.plan")
    await editor.change("hut.plan", "exercise Boathouse Squat", "exercise Boathouse Lunge")
    found = await editor.told_of("winter.plan", "SW0201")
    assert "Boathouse Squat" in found[0].message
    await editor.change("hut.plan", "exercise Boathouse Lunge", "exercise Boathouse Squat")
    assert await editor.told_of("winter.plan", "SW0201", gone=True) == []


async def test_a_library_that_is_closed_or_changed_on_the_disk_is_read_from_there(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    await editor.open("hut.plan", LIBRARY.replace("Boathouse Squat", "Boathouse Lunge"))
    await editor.told_of("winter.plan", "SW0201")
    editor.client.text_document_did_close(lsp.DidCloseTextDocumentParams(editor.document("hut.plan")))
    await editor.told_of("winter.plan", "SW0201", gone=True)
    (files / "hut.plan").write_text(LIBRARY.replace("Boathouse Squat", "Boathouse Lunge"), encoding="utf-8")
    change = lsp.FileEvent(editor.uri("hut.plan"), lsp.FileChangeType.Changed)
    editor.client.workspace_did_change_watched_files(lsp.DidChangeWatchedFilesParams([change]))
    await editor.told_of("winter.plan", "SW0201")


async def test_what_is_wrong_in_a_file_that_is_not_open_is_told_there(editor: Editor, files: Path) -> None:
    (files / "hut.plan").write_text(LIBRARY + "exercise Broken like Nothing At All\n", encoding="utf-8")
    await editor.open("winter.plan")
    found = await editor.told_of("hut.plan", "SW0201")
    assert found[0].range.start.line == LIBRARY.count("\n")
    editor.client.text_document_did_close(lsp.DidCloseTextDocumentParams(editor.document("winter.plan")))
    await editor.told_of("hut.plan", "SW0201", gone=True)


async def test_positions_are_utf_16_behind_emoji_and_combining_marks(editor: Editor, files: Path) -> None:
    line = '      "E\u0301lan Row 🛶🛶" "x": 3 x 5 @ 70% oops'
    text = PLAN.replace("      Élan Row: 3 x 8, rest 90 s  # 🛶 a remark", line)
    found = await editor.open("winter.plan", text)
    column = len(line[: line.index("oops")].encode("utf-16-le")) // 2
    wrong = [each for each in found if each.range.start.line == text.split("\n").index(line)]
    assert [(each.range.start.character, each.range.end.character) for each in wrong] == [(column, column + 4)]


@pytest.mark.parametrize(
    ("right", "wrong"),
    [
        ("Bench Press: 4", "Bench Pres: 4"),
        ("rest 3 min", "rest 3 mins"),
        ("@ 2 RIR", "@ 2 rir"),
        ("for chest 3", "for chst 3"),
        ("must weekly-sets", "must weekly-set"),
        ("follow hut", "follow hutt"),
        ('"Legs"', "“Legs”"),
        ("Bench Press: 4 x 8", "Bench Press 4 x 8"),
        ("use stdlib.exercises\nuse", "use stdlib.exercise\nuse"),
    ],
)
async def test_a_quick_fix_mends_the_text(editor: Editor, files: Path, right: str, wrong: str) -> None:
    text = PLAN.replace(right, wrong)
    found = await editor.open("winter.plan", text)
    assert found
    for _ in range(3):
        actions = [action for each in found for action in await fixes(editor, "winter.plan", each.range)]
        if not actions:
            break
        action = actions[0]
        assert isinstance(action, lsp.CodeAction)
        assert action.kind == lsp.CodeActionKind.QuickFix
        assert action.edit is not None
        assert action.edit.changes is not None
        mended = applied(editor.texts["winter.plan"], list(action.edit.changes[editor.uri("winter.plan")]))
        found = await editor.change("winter.plan", editor.texts["winter.plan"], mended)
    assert found == []
    assert editor.texts["winter.plan"] == PLAN


async def fixes(editor: Editor, name: str, place: lsp.Range) -> list[lsp.Command | lsp.CodeAction]:
    context = lsp.CodeActionContext([])
    found = await editor.client.text_document_code_action_async(
        lsp.CodeActionParams(editor.document(name), place, context)
    )
    return list(found or ())


async def test_a_missing_use_line_is_put_in(editor: Editor, files: Path) -> None:
    await editor.open("new.plan", 'language 1\nplan "A"\n  block B: 1 week\n    day Mon\n      Plank: 3 x 30 s\n')
    place = lsp.Range(editor.at("new.plan", "Plank"), editor.at("new.plan", "Plank"))
    (action,) = await fixes(editor, "new.plan", place)
    assert isinstance(action, lsp.CodeAction)
    assert action.title == "Insert `use stdlib.exercises`"
    assert action.edit is not None
    edits = list((action.edit.changes or {})[editor.uri("new.plan")])
    assert applied(editor.texts["new.plan"], edits).startswith('language 1\nuse stdlib.exercises\nplan "A"\n')
