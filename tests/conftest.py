"""What every test stands on: a cache folder of its own, no colour by accident, and the same Hypothesis runs in CI."""

from __future__ import annotations

import os

import pytest
from hypothesis import settings

settings.register_profile("ci", derandomize=True, deadline=None, print_blob=True)
settings.register_profile("here", deadline=None)
settings.load_profile("ci" if os.environ.get("CI") else "here")


@pytest.fixture(autouse=True)
def own_cache(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    """No test reads or fills the user's own cache; those that start processes pass it on."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
    for name in ("NO_COLOR", "SETWRIGHT_DEBUG"):
        monkeypatch.delenv(name, raising=False)
