"""Findings as the editor shows them: the same as `check` prints, by file, with the version of the text they are of."""

from __future__ import annotations

from typing import Final

from lsprotocol import types as lsp

from setwright.diagnostics import Diagnostic, Severity
from setwright.editor.features.places import location, uri_of
from setwright.editor.positions import Positions
from setwright.editor.session import EditorSession
from setwright.record import replace

SOURCE: Final = "setwright"
_SEVERITIES: Final = {
    Severity.ERROR: lsp.DiagnosticSeverity.Error,
    Severity.WARNING: lsp.DiagnosticSeverity.Warning,
    Severity.NOTE: lsp.DiagnosticSeverity.Information,
}


def published(session: EditorSession) -> list[lsp.PublishDiagnosticsParams]:
    """The findings of every open file, and of the files that those use."""
    made = []
    for path, found in by_file(session).items():
        document = session.document(path)
        made.append(
            lsp.PublishDiagnosticsParams(
                uri_of(session, path),
                [shown(session, diagnostic) for diagnostic in found],
                document.version if document is not None else None,
            )
        )
    return made


def by_file(session: EditorSession) -> dict[str, list[Diagnostic]]:
    """What `check` of each open file says, each finding once and under the file that it points into."""
    found: dict[str, dict[tuple[str, str, str], Diagnostic]] = {one.path: {} for one in session.documents}
    for document in session.documents:
        for each in session.analysis(document.path).made.diagnostics:
            path = session.path_of(each.span.source)
            found.setdefault(path, {}).setdefault((str(each.span), each.code.number, each.message), each)
    return {path: list(each.values()) for path, each in found.items()}


def shown(session: EditorSession, diagnostic: Diagnostic) -> lsp.Diagnostic:
    """One finding: its help stands under its message."""
    help_ = f"\n{diagnostic.help}" if diagnostic.help else ""
    return lsp.Diagnostic(
        range=_range(session.positions, diagnostic),
        message=diagnostic.message + help_,
        severity=_SEVERITIES[diagnostic.severity],
        code=diagnostic.code.number,
        source=SOURCE,
        related_information=[
            lsp.DiagnosticRelatedInformation(location(session, related.span), related.text)
            for related in diagnostic.related
        ],
    )


def _range(positions: Positions, diagnostic: Diagnostic) -> lsp.Range:
    """Where it stands; an empty span is shown under one character, since editors draw nothing under none."""
    span = diagnostic.span
    return positions.range(span if span.end > span.start else replace(span, end=span.start + 1))
