"""A browser for each file of tests here; each test opens contexts of its own in it (`driver.visit`).

Not one for the whole run: playwright's event loop would still be running when the tests of the editor want theirs.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, sync_playwright

from browser.driver import launched


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """The system's Chromium."""
    with sync_playwright() as playwright:
        made = launched(playwright)
        yield made
        made.close()
