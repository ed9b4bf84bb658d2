"""What every test stands on: a cache folder of its own, no colour by accident, the same Hypothesis runs in CI.

The browser tests need Chromium and Poppler, which pip cannot bring. A machine without them runs all other tests and
says at the top that it left these out; with `CI` or `SETWRIGHT_BROWSER` set they run, and fail where one is missing.
"""

from __future__ import annotations

import os
import shutil

import pytest
from hypothesis import settings

settings.register_profile("ci", derandomize=True, deadline=None, print_blob=True)
settings.register_profile("here", deadline=None)
settings.load_profile("ci" if os.environ.get("CI") else "here")

BROWSER_TESTS = "browser"
WITH_BROWSER = any(os.environ.get(name) for name in ("CI", "SETWRIGHT_BROWSER")) or all(
    shutil.which(program) for program in ("chromium", "pdftotext")
)
collect_ignore = [] if WITH_BROWSER else [BROWSER_TESTS]


def pytest_report_header() -> str:
    """Say which tests this machine cannot run."""
    return "browser: tested" if WITH_BROWSER else f"browser: chromium or pdftotext is missing, no tests/{BROWSER_TESTS}"


@pytest.fixture(autouse=True)
def own_cache(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    """No test reads or fills the user's own cache; those that start processes pass it on."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
    for name in ("NO_COLOR", "SETWRIGHT_DEBUG"):
        monkeypatch.delenv(name, raising=False)
