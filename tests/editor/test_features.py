"""Every feature answers in every place of texts that are cut, spliced and half typed."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from lsprotocol import types as lsp
from pygls.exceptions import JsonRpcInvalidParams

from setwright.editor.features import FEATURES
from setwright.editor.features.diagnostics import published
from setwright.editor.session import Document, EditorSession

EXAMPLES = Path(__file__).parents[2] / "examples"
FILE = EXAMPLES / "rowing-club-library" / "rowing-club-library.plan"
PIECES = (
    *(line for plan in sorted(EXAMPLES.glob("*/*.plan")) for line in plan.read_text(encoding="utf-8").split("\n")[:40]),
    *(
        "",
        "  ",
        "\t",
        "use",
        '"',
        'use "',
        "plan",
        "block",
        "    day",
        "      Back",
        "@",
        "🛶",
        "e\u0301",
        "[",
        "like ",
        "#",
    ),
)
TEXTS = st.lists(st.sampled_from(PIECES), max_size=12).map("\n".join)
DOCUMENT = lsp.TextDocumentIdentifier(FILE.as_uri())


def question(method: str, place: lsp.Position) -> object:
    whole = lsp.Range(lsp.Position(0, 0), lsp.Position(999, 0))
    match method:
        case lsp.TEXT_DOCUMENT_REFERENCES:
            return lsp.ReferenceParams(lsp.ReferenceContext(include_declaration=True), DOCUMENT, place)
        case lsp.TEXT_DOCUMENT_RENAME:
            return lsp.RenameParams(DOCUMENT, place, "Oar 2")
        case lsp.TEXT_DOCUMENT_CODE_ACTION:
            return lsp.CodeActionParams(DOCUMENT, whole, lsp.CodeActionContext([]))
        case lsp.TEXT_DOCUMENT_INLAY_HINT:
            return lsp.InlayHintParams(DOCUMENT, whole)
        case lsp.TEXT_DOCUMENT_FORMATTING:
            return lsp.DocumentFormattingParams(DOCUMENT, lsp.FormattingOptions(2, True))
        case lsp.TEXT_DOCUMENT_HOVER | lsp.TEXT_DOCUMENT_COMPLETION | lsp.TEXT_DOCUMENT_DEFINITION:
            return lsp.HoverParams(DOCUMENT, place)
        case lsp.TEXT_DOCUMENT_PREPARE_RENAME:
            return lsp.PrepareRenameParams(DOCUMENT, place)
        case _:
            return lsp.DocumentSymbolParams(DOCUMENT)


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(texts=st.lists(TEXTS, min_size=1, max_size=3), line=st.integers(0, 14), column=st.integers(0, 60))
def test_no_feature_fails(texts: list[str], line: int, column: int) -> None:
    session = EditorSession()
    for version, text in enumerate(texts):
        session.put(Document(FILE.as_uri(), str(FILE), text, version))
        assert published(session)
        for feature in FEATURES:
            try:
                feature.answer(session, question(feature.method, lsp.Position(line, column)))
            except JsonRpcInvalidParams:  # a name that cannot be given: said to the person, no fault
                assert feature.method in (lsp.TEXT_DOCUMENT_RENAME, lsp.TEXT_DOCUMENT_PREPARE_RENAME)


@pytest.mark.parametrize("feature", FEATURES, ids=lambda feature: feature.method)
def test_a_file_that_is_not_there_has_nothing_to_say(feature: object, tmp_path: Path) -> None:
    session = EditorSession()
    missing = lsp.TextDocumentIdentifier((tmp_path / "no.plan").as_uri())
    asked = question(feature.method, lsp.Position(0, 0))  # type: ignore[attr-defined]
    asked.text_document = missing  # type: ignore[attr-defined]
    answer = feature.answer(session, asked)  # type: ignore[attr-defined]
    assert not answer or (not getattr(answer, "data", None) and not getattr(answer, "items", None))
