"""One name for another, in every file of the workspace.

Names compare without regard to case and to how accents are encoded; another name of a movement (`also`) stays as it is.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final
from unicodedata import normalize

from lsprotocol import types as lsp
from pygls.exceptions import JsonRpcInvalidParams

from setwright.editor.features.feature import Feature
from setwright.editor.features.places import asked, uri_of
from setwright.editor.features.references import meant, mentions_of
from setwright.editor.meanings import declaration
from setwright.editor.mentions import Kind, Mention
from setwright.editor.session import EditorSession
from setwright.files import find_root, library_folder
from setwright.record import replace
from setwright.source import Source, Span
from setwright.syntax import nodes as n

_QUOTED: Final = (Kind.ATHLETE, Kind.PLAN)
_WORDS: Final = (
    Kind.MUSCLE,
    Kind.EQUIPMENT,
    Kind.RULES,
    Kind.TEMPLATE,
    Kind.PROGRESSION,
    Kind.PARAMETER,
)


def _prepare(session: EditorSession, params: lsp.PrepareRenameParams) -> lsp.PrepareRenamePlaceholder | None:
    found = _found(session, params.text_document, params.position)
    if found is None:
        return None
    mention = found[1]
    return lsp.PrepareRenamePlaceholder(session.positions.range(_own(mention)), _plain(mention))


def _answer(session: EditorSession, params: lsp.RenameParams) -> lsp.WorkspaceEdit | None:
    found = _found(session, params.text_document, params.position)
    if found is None:
        return None
    path, mention, target = found
    new = normalize("NFC", params.new_name.strip().strip('"'))
    text = _written(session, mention.kind, new)
    _refuse_taken(session, path, mention, target, new)
    old = _plain(mention).casefold()
    changes: dict[str, dict[Span, lsp.TextEdit]] = {}
    for each in mentions_of(session, path, target):
        if _plain(each).casefold() == old:
            span = _own(each)
            uri = uri_of(session, session.path_of(span.source))
            changes.setdefault(uri, {})[span] = lsp.TextEdit(session.positions.range(span), text)
    return lsp.WorkspaceEdit(changes={uri: list(edits.values()) for uri, edits in changes.items()})


def _found(
    session: EditorSession, document: lsp.TextDocumentIdentifier, position: lsp.Position
) -> tuple[str, Mention, Span] | None:
    """The file, the name under the cursor and where it is declared; None where it is not for a person to rename."""
    place = asked(session, document, position)
    found = meant(session, place[0], *place[2:]) if place is not None else None
    if place is None or found is None or found[0].kind is Kind.DAY:
        return None
    mention, target = found
    file = Path(session.path_of(target.source))
    if file.is_relative_to(library_folder()) or not file.is_relative_to(find_root(Path(place[0]))):
        raise JsonRpcInvalidParams(f"`{_plain(mention)}` is declared in {target.source.path}, which is not yours")
    return place[0], mention, target


def _plain(mention: Mention) -> str:
    """The name without its prefix."""
    return mention.name.text.partition(".")[2] if mention.name.prefixed else mention.name.text


def _own(mention: Mention) -> Span:
    """The place of the name without its prefix."""
    span = mention.name.span
    return replace(span, start=span.start + span.text.find(".") + 1) if mention.name.prefixed else span


def _written(session: EditorSession, kind: Kind, new: str) -> str:
    """The new name as a line would have it; quoted where it has to be."""
    quoted = '"' + new.replace("\\", "\\\\").replace('"', '\\"') + '"'
    if not new or "\n" in new:
        raise JsonRpcInvalidParams("a name is one line, and not empty")
    if kind in _QUOTED:
        return quoted
    if kind in _WORDS:
        if not _is_word(session, new):
            raise JsonRpcInvalidParams(f"`{new}` is no word; write small letters, digits and hyphens")
        return new
    # A number at the end is part of a name only where the name ends there, which it does not in every line.
    return new if _is_name(session, new) and not re.search(r" \d+$", new) else quoted


def _is_word(session: EditorSession, new: str) -> bool:
    return new not in session.reader.words and _read_as(session, f"rules {new}") == new


def _is_name(session: EditorSession, new: str) -> bool:
    return _read_as(session, f"exercise {new}") == new


def _read_as(session: EditorSession, line: str) -> str | None:
    """The name that a line declares."""
    read = session.reader.read(Source("", line), (1,))
    node = read.statements[0].node if read.statements else None
    return node.name.text if isinstance(node, n.Head) else None


def _refuse_taken(session: EditorSession, path: str, mention: Mention, target: Span, new: str) -> None:
    library = session.library(path)
    other = replace(mention, name=replace(mention.name, text=new, prefixed=False))
    found = declaration(other, library) if library is not None else None
    if found is not None and found != target and found != mention.name.span:
        raise JsonRpcInvalidParams(f"there is a {mention.kind.value} `{new}` already: {found}")


PREPARE = Feature(lsp.TEXT_DOCUMENT_PREPARE_RENAME, _prepare)
FEATURE = Feature(lsp.TEXT_DOCUMENT_RENAME, _answer, lsp.RenameOptions(prepare_provider=True))
