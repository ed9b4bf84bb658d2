"""One browser for the tests of this folder; each test opens contexts of its own in it (`driver.visit`)."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, sync_playwright

from browser.driver import launched


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The system's Chromium."""
    with sync_playwright() as playwright:
        made = launched(playwright)
        yield made
        made.close()
