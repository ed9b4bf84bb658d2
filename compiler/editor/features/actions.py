"""Quick fixes: the edits that a finding's help speaks of."""

from __future__ import annotations

from collections.abc import Iterator

from lsprotocol import types as lsp

from setwright.diagnostics import Diagnostic, Fix
from setwright.editor.features.diagnostics import by_file, shown
from setwright.editor.features.feature import Feature
from setwright.editor.features.places import path_of, uri_of
from setwright.editor.session import EditorSession


def _answer(session: EditorSession, params: lsp.CodeActionParams) -> list[lsp.CodeAction]:
    first, last = params.range.start.line + 1, params.range.end.line + 1
    found = by_file(session).get(path_of(params.text_document.uri), [])
    return [action for each in found if first <= each.span.line <= last for action in _actions(session, each)]


def _actions(session: EditorSession, diagnostic: Diagnostic) -> Iterator[lsp.CodeAction]:
    for fix in diagnostic.fixes:
        uri = uri_of(session, session.path_of(fix.span.source))
        edit = lsp.TextEdit(session.positions.range(fix.span), fix.replacement)
        yield lsp.CodeAction(
            title=_title(fix),
            kind=lsp.CodeActionKind.QuickFix,
            diagnostics=[shown(session, diagnostic)],
            edit=lsp.WorkspaceEdit(changes={uri: [edit]}),
            is_preferred=len(diagnostic.fixes) == 1,
        )


def _title(fix: Fix) -> str:
    written, wanted = fix.span.text.strip(), fix.replacement.strip()
    if not wanted:
        return f"Take out `{written}`" if written else "Write spaces in place of tabs"
    return f"Write `{wanted}` in place of `{written}`" if written else f"Insert `{wanted}`"


FEATURE = Feature(
    lsp.TEXT_DOCUMENT_CODE_ACTION, _answer, lsp.CodeActionOptions(code_action_kinds=[lsp.CodeActionKind.QuickFix])
)
