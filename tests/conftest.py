"""What every test stands on: a cache folder of its own, no colour by accident, the same Hypothesis runs in CI.

Some folders of tests need programs that pip cannot bring: a browser, an office suite, tools that read PDF. A machine
without them runs all other tests and says at the top which it left out; with `CI` or `SETWRIGHT_PROGRAMS` set they all
run, and fail where something is missing.
"""

from __future__ import annotations

import os
import shutil
from ctypes.util import find_library

import pytest
from hypothesis import settings

settings.register_profile("ci", derandomize=True, deadline=None, print_blob=True)
settings.register_profile("here", deadline=None)
settings.load_profile("ci" if os.environ.get("CI") else "here")

# What a folder needs, as `.ci/run` installs it; a name that begins with `lib` is a library.
NEEDS = {
    "browser": ("chromium", "pdftotext", "java"),
    "office": ("soffice",),
    "paper": ("libpango-1.0", "pdfinfo", "pdftotext"),
}
RUN_ALL = any(os.environ.get(name) for name in ("CI", "SETWRIGHT_PROGRAMS"))


def lacking(folder: str) -> list[str]:
    """What this machine does not have of what the folder's tests need."""
    return [name for name in NEEDS[folder] if not is_there(name)]


def is_there(name: str) -> bool:
    """True where a program stands on the path, or a library where libraries are."""
    return bool(find_library(name.removeprefix("lib")) if name.startswith("lib") else shutil.which(name))


LEFT_OUT = {} if RUN_ALL else {folder: missing for folder in NEEDS if (missing := lacking(folder))}
collect_ignore = list(LEFT_OUT)


def pytest_report_header() -> list[str]:
    """Say which tests this machine cannot run."""
    if not LEFT_OUT:
        return ["programs: all there"]
    return [f"programs: no tests/{folder}, for want of {', '.join(missing)}" for folder, missing in LEFT_OUT.items()]


@pytest.fixture(autouse=True)
def own_cache(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    """No test reads or fills the user's own cache; those that start processes pass it on."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
    for name in ("NO_COLOR", "SETWRIGHT_DEBUG"):
        monkeypatch.delenv(name, raising=False)
