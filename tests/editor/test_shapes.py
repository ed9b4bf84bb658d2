"""The shape of a file: outline, folds, style, colours; and how a session ends."""

from __future__ import annotations

from pathlib import Path

import pytest
from lsprotocol import types as lsp

from play_editor import PLAN, Editor, applied
from setwright.source import Source
from setwright.syntax.formatter import Formatter

pytestmark = pytest.mark.asyncio


async def test_symbols_and_folding(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    document = editor.document("winter.plan")
    found = await editor.client.text_document_document_symbol_async(lsp.DocumentSymbolParams(document))
    plan, athlete = found or ()
    assert isinstance(plan, lsp.DocumentSymbol)
    assert (plan.name, athlete.name) == ("Hut 🛶 Winter", "Ylva")
    assert [each.name for each in plan.children or ()] == ["Base", "Peak"]
    base = (plan.children or ())[0]
    assert [each.name for each in base.children or ()] == ["day Mon", "day Thu"]
    folds = await editor.client.text_document_folding_range_async(lsp.FoldingRangeParams(document))
    lines = PLAN.split("\n")
    assert (lines.index('plan "Hut 🛶 Winter"'), lines.index("      Boathouse Squat: 2 x 3 @ 85%")) in [
        (each.start_line, each.end_line) for each in folds or ()
    ]
    assert (0, 1) in [(each.start_line, each.end_line) for each in folds or () if each.kind == "imports"]


async def test_formatting_is_that_of_fmt(editor: Editor, files: Path) -> None:
    untidy = PLAN.replace("3 x 5 @ 70% -> 80%,", "3x5   @ 70%->80% ,")
    await editor.open("winter.plan", untidy)
    options = lsp.FormattingOptions(tab_size=2, insert_spaces=True)
    params = lsp.DocumentFormattingParams(editor.document("winter.plan"), options)
    edits = await editor.client.text_document_formatting_async(params)
    tidy = applied(untidy, list(edits or ()))
    assert tidy == Formatter().formatted(Source("winter.plan", untidy))
    await editor.change("winter.plan", untidy, tidy)
    assert not await editor.client.text_document_formatting_async(params)
    await editor.change("winter.plan", "follow hut", "folow hut")
    assert not await editor.client.text_document_formatting_async(params)


async def test_semantic_tokens_lie_on_their_words(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    params = lsp.SemanticTokensParams(editor.document("winter.plan"))
    found = await editor.client.text_document_semantic_tokens_full_async(params)
    assert found is not None
    provider = editor.capabilities.semantic_tokens_provider
    assert provider is not None
    legend = list(provider.legend.token_types)
    lines, line, start, said = PLAN.split("\n"), 0, 0, set()
    for at in range(0, len(found.data), 5):
        down, along, length, kind, _ = found.data[at : at + 5]
        line, start = line + down, along + (0 if down else start)
        units = lines[line].encode("utf-16-le")
        said.add((units[start * 2 : (start + length) * 2].decode("utf-16-le"), legend[kind]))
    assert {
        ("plan", "keyword"),
        ('"Hut 🛶 Winter"', "string"),
        ("Base", "namespace"),
        ("Élan Row", "class"),
        ("weekly-sets", "property"),
        ("chest", "enumMember"),
        ("70", "number"),
        ("# 🛶 a remark", "comment"),
    } <= said


async def test_the_session_ends_as_it_should(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    assert editor.client.error is None
