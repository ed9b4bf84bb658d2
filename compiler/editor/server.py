"""The language server: what the editor says goes into the session, and what the compiler says goes back.

Comes in: messages of the Language Server Protocol 3.17. Goes out: diagnostics as one types, and the features' answers.
"""

from __future__ import annotations

import asyncio
import gc
from functools import partial
from typing import Any

from lsprotocol import types as lsp
from pygls.lsp.server import LanguageServer

from setwright import __version__
from setwright.editor.features import FEATURES
from setwright.editor.features.diagnostics import published
from setwright.editor.features.places import path_of
from setwright.editor.positions import Positions
from setwright.editor.session import Document, EditorSession

SECTION = "setwright"  # of an editor's settings


class PlanServer(LanguageServer):
    """pygls' server with one session."""

    def __init__(self) -> None:
        super().__init__("setwright", __version__)
        self.session = EditorSession()
        self.told: frozenset[str] = frozenset()  # the files that diagnostics were sent for
        self.waiting = False

    def look_again(self) -> None:
        """Publish soon: once for all the messages that have come in by then, so that only the last text is compiled."""
        if not self.waiting:
            self.waiting = True
            asyncio.get_running_loop().call_soon(self._publish)

    def _publish(self) -> None:
        self.waiting = False
        if self.session.stale() or self.told:
            found = published(self.session)
            for params in found:
                self.text_document_publish_diagnostics(params)
            uris_told = frozenset(params.uri for params in found)
            for uri in self.told - uris_told:
                self.text_document_publish_diagnostics(lsp.PublishDiagnosticsParams(uri, []))
            self.told = uris_told


def server() -> PlanServer:
    """A server with all features, not started yet."""
    made = PlanServer()
    for method, handler in _HANDLERS:
        made.feature(method)(partial(handler, made))
    for feature in FEATURES:
        made.feature(feature.method, feature.options)(partial(feature.answer, made.session))
    return made


def run() -> None:
    """Serve over standard input and output until the editor says `exit`."""
    gc.freeze()  # what is loaded by now stays to the end; collecting it again and again would take time from each key
    server().start_io()


# ---- what the editor says ------------------------------------------------------------------------


def _initialized(server: PlanServer, _: lsp.InitializedParams) -> None:
    """Take the encoding that was agreed on, and ask to be told of plans that change on the disk."""
    encoding = server.workspace.position_encoding or lsp.PositionEncodingKind.Utf16
    server.session.positions = Positions(str(getattr(encoding, "value", encoding)))
    workspace = server.client_capabilities.workspace
    watching = workspace.did_change_watched_files if workspace is not None else None
    if watching is not None and watching.dynamic_registration:
        options = lsp.DidChangeWatchedFilesRegistrationOptions([lsp.FileSystemWatcher("**/*.plan")])
        registration = lsp.Registration("plans", lsp.WORKSPACE_DID_CHANGE_WATCHED_FILES, options)
        server.client_register_capability(lsp.RegistrationParams([registration]))


def _initialize(server: PlanServer, params: lsp.InitializeParams) -> None:
    _settings(server, params.initialization_options)


def _opened(server: PlanServer, params: lsp.DidOpenTextDocumentParams) -> None:
    one = params.text_document
    server.session.put(Document(one.uri, path_of(one.uri), one.text, one.version))
    server.look_again()


def _changed(server: PlanServer, params: lsp.DidChangeTextDocumentParams) -> None:
    uri = params.text_document.uri
    text = server.workspace.get_text_document(uri).source
    server.session.put(Document(uri, path_of(uri), text, params.text_document.version))
    server.look_again()


def _closed(server: PlanServer, params: lsp.DidCloseTextDocumentParams) -> None:
    server.session.close(path_of(params.text_document.uri))
    server.look_again()


def _files_changed(server: PlanServer, params: lsp.DidChangeWatchedFilesParams) -> None:
    for change in params.changes:
        server.session.touched(path_of(change.uri))
    server.look_again()


def _saved(server: PlanServer, params: lsp.DidSaveTextDocumentParams) -> None:
    server.session.touched(path_of(params.text_document.uri))
    server.look_again()


def _configured(server: PlanServer, params: lsp.DidChangeConfigurationParams) -> None:
    if _settings(server, params.settings):
        server.look_again()


def _settings(server: PlanServer, given: Any) -> bool:
    """Take the settings, by themselves or in a section; True where they changed something."""
    section = given.get(SECTION, given) if isinstance(given, dict) else None
    athlete = section.get("athlete") if isinstance(section, dict) else None
    if not isinstance(athlete, str | None) or athlete == server.session.athlete:
        return False
    server.session.athlete = athlete or None
    server.session.forget()
    return True


_HANDLERS = (
    (lsp.INITIALIZE, _initialize),
    (lsp.INITIALIZED, _initialized),
    (lsp.TEXT_DOCUMENT_DID_OPEN, _opened),
    (lsp.TEXT_DOCUMENT_DID_CHANGE, _changed),
    (lsp.TEXT_DOCUMENT_DID_CLOSE, _closed),
    (lsp.TEXT_DOCUMENT_DID_SAVE, _saved),
    (lsp.WORKSPACE_DID_CHANGE_WATCHED_FILES, _files_changed),
    (lsp.WORKSPACE_DID_CHANGE_CONFIGURATION, _configured),
)
