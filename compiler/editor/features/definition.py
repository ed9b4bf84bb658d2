"""From a name to where it is declared, in whichever file that is."""

from __future__ import annotations

import os

from lsprotocol import types as lsp

from setwright.editor.features.feature import Feature
from setwright.editor.features.places import asked, location, uri_of
from setwright.editor.meanings import declaration
from setwright.editor.mentions import Kind
from setwright.editor.session import EditorSession


def _answer(session: EditorSession, params: lsp.DefinitionParams) -> lsp.Location | None:
    place = asked(session, params.text_document, params.position)
    if place is None:
        return None
    path, _, line, column = place
    mention, library = session.mention(path, line, column), session.library(path)
    if mention is None or library is None:
        return None
    if mention.kind is Kind.FILE:
        file = os.path.normpath(os.path.join(os.path.dirname(path), mention.name.text))
        top = lsp.Position(0, 0)
        return lsp.Location(uri_of(session, file), lsp.Range(top, top)) if os.path.isfile(file) else None
    span = declaration(mention, library)
    return location(session, span) if span is not None else None


FEATURE = Feature(lsp.TEXT_DOCUMENT_DEFINITION, _answer)
