"""An editor that is played: pytest-lsp starts the real server and speaks the protocol with it."""

from __future__ import annotations

import asyncio
import sys
from pathlib import Path

from lsprotocol import types as lsp
from pygls.protocol import default_converter
from pytest_lsp import ClientServerConfig, LanguageClient
from pytest_lsp.client import DEFAULT_CLIENT_FEATURES, register_lsp_features

# Ylva's rowers are made up, and so is their hut.
LIBRARY = """use stdlib.exercises

exercise Boathouse Squat like Back Squat
  also "Hut Squat"
exercise "Élan Row" like Barbell Row
rules hut
  should weekly-sets for quads 2-20 "A set is a set."
progression hut-climb(step = 2.5 kg)
  when all sets >= top: load + step
"""
PLAN = """use stdlib.exercises
use "hut.plan"

plan "Hut 🛶 Winter"
  units kg
  follow hut
  must weekly-sets for chest 3-12
  block Base: 3 weeks
    day Mon "Legs"
      Boathouse Squat: 3 x 5 @ 70% -> 80%, rest 3 min
      Bench Press: 4 x 8 @ 2 RIR
    day Thu
      Élan Row: 3 x 8, rest 90 s  # 🛶 a remark
  block Peak: 2 weeks like Base
    day Mon
      Boathouse Squat: 2 x 3 @ 85%

athlete "Ylva"
  bar 20 kg
  plates 4x20, 4x10, 4x5, 4x2.5, 4x1.25 kg
  has barbell, rack, bench
  best Boathouse Squat: 100 kg
  best Bench Press: 60 kg
"""


class Player(LanguageClient):
    """pytest-lsp's client, which also keeps the version that findings are of."""

    def __init__(self) -> None:
        super().__init__(converter_factory=default_converter)
        self.published: dict[str, lsp.PublishDiagnosticsParams] = {}
        register_lsp_features(self, {**DEFAULT_CLIENT_FEATURES, lsp.TEXT_DOCUMENT_PUBLISH_DIAGNOSTICS: _keep})


def _keep(client: Player, params: lsp.PublishDiagnosticsParams) -> None:
    client.published[params.uri] = params


SERVER = ClientServerConfig([sys.executable, "-m", "setwright", "lsp"], Player)


class Editor:
    """A client with files open in it, whose diagnostics are waited for by version."""

    def __init__(self, client: Player, root: Path, capabilities: lsp.ServerCapabilities) -> None:
        self.client = client
        self.capabilities = capabilities
        self.root = root
        self.texts: dict[str, str] = {}
        self.versions: dict[str, int] = {}

    def uri(self, name: str) -> str:
        return (self.root / name).as_uri()

    def document(self, name: str) -> lsp.TextDocumentIdentifier:
        return lsp.TextDocumentIdentifier(self.uri(name))

    async def open(self, name: str, text: str | None = None) -> list[lsp.Diagnostic]:
        """Open a file, with a text that is not saved where one is given."""
        self.texts[name] = (self.root / name).read_text(encoding="utf-8") if text is None else text
        self.versions[name] = 1
        item = lsp.TextDocumentItem(self.uri(name), "setwright", 1, self.texts[name])
        self.client.text_document_did_open(lsp.DidOpenTextDocumentParams(item))
        return await self.told(name)

    async def change(self, name: str, old: str, new: str) -> list[lsp.Diagnostic]:
        """Type: one text in place of another, as a change of a range in UTF-16."""
        text = self.texts[name]
        assert text.count(old) == 1, text
        start = text.index(old)
        place = lsp.Range(position(text, start), position(text, start + len(old)))
        self.texts[name] = text.replace(old, new)
        self.versions[name] += 1
        identifier = lsp.VersionedTextDocumentIdentifier(version=self.versions[name], uri=self.uri(name))
        change = lsp.TextDocumentContentChangePartial(range=place, text=new)
        self.client.text_document_did_change(lsp.DidChangeTextDocumentParams(identifier, [change]))
        return await self.told(name)

    async def told(self, name: str) -> list[lsp.Diagnostic]:
        """What was published of the version that is open."""
        for _ in range(400):
            latest = self.latest.get(self.uri(name))
            if latest is not None and latest.version == self.versions[name]:
                return list(latest.diagnostics)
            await asyncio.sleep(0.025)
        raise AssertionError(f"nothing was told of {name}")

    async def told_of(self, name: str, code: str, *, gone: bool = False) -> list[lsp.Diagnostic]:
        """What was published of a file once a code is among it, or is no longer."""
        for _ in range(400):
            latest = self.latest.get(self.uri(name))
            if latest is not None and (code in [each.code for each in latest.diagnostics]) is not gone:
                return list(latest.diagnostics)
            await asyncio.sleep(0.025)
        raise AssertionError(f"{code} in {name}: {self.latest.get(self.uri(name))}")

    @property
    def latest(self) -> dict[str, lsp.PublishDiagnosticsParams]:
        return self.client.published

    def at(self, name: str, text: str, offset: int = 0) -> lsp.Position:
        """The position of the first occurrence of a text, and so many characters on."""
        return position(self.texts[name], self.texts[name].index(text) + offset)


def position(text: str, index: int) -> lsp.Position:
    """Where a character stands, in UTF-16."""
    before = text[:index]
    line = before.rpartition("\n")[2]
    return lsp.Position(before.count("\n"), len(line.encode("utf-16-le")) // 2)


def applied(text: str, edits: list[lsp.TextEdit]) -> str:
    """A text with edits carried out, as an editor does it."""
    lines = text.split("\n")

    def index(place: lsp.Position) -> int:
        line = lines[place.line]
        units = line.encode("utf-16-le")[: place.character * 2]
        return sum(len(each) + 1 for each in lines[: place.line]) + len(units.decode("utf-16-le"))

    for edit in sorted(edits, key=lambda each: (each.range.start.line, each.range.start.character), reverse=True):
        text = text[: index(edit.range.start)] + edit.new_text + text[index(edit.range.end) :]
    return text


def codes(found: list[lsp.Diagnostic]) -> list[str]:
    return [str(each.code) for each in found]


async def hover(editor: Editor, name: str, text: str, offset: int = 0) -> str:
    params = lsp.HoverParams(editor.document(name), editor.at(name, text, offset))
    found = await editor.client.text_document_hover_async(params)
    assert found is not None
    assert isinstance(found.contents, lsp.MarkupContent)
    return found.contents.value
