"""A session with the real server in a workspace of its own, shut down as editors do it."""

from __future__ import annotations

from collections.abc import AsyncIterator
from pathlib import Path

import pytest
import pytest_asyncio
from lsprotocol import types as lsp

from play_editor import LIBRARY, PLAN, SERVER, Editor, Player


@pytest_asyncio.fixture
async def editor(tmp_path: Path) -> AsyncIterator[Editor]:
    (tmp_path / "setwright.toml").write_text("", encoding="utf-8")
    client = await SERVER.start()
    assert isinstance(client, Player)
    said = await client.initialize_session(
        lsp.InitializeParams(
            capabilities=lsp.ClientCapabilities(),
            root_uri=tmp_path.as_uri(),
            initialization_options={"athlete": "Ylva"},
        )
    )
    yield Editor(client, tmp_path, said.capabilities)
    await client.shutdown_session()
    await client.stop()


@pytest.fixture
def files(tmp_path: Path) -> Path:
    """The folder with a plan and the library that it uses."""
    (tmp_path / "hut.plan").write_text(LIBRARY, encoding="utf-8")
    (tmp_path / "winter.plan").write_text(PLAN, encoding="utf-8")
    return tmp_path
