"""A real browser for the tests: pages that are offline, and say what they asked the network for.

`visit` opens pages in a context of their own; `served` answers the files of a folder on loopback.
"""

from __future__ import annotations

import shutil
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Playwright

BROWSERS = ("chromium", "chromium-browser", "google-chrome")
FLAGS = (
    *("--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"),
    *("--disable-component-update", "--disable-sync", "--autoplay-policy=no-user-gesture-required"),
)
PHONE = {"width": 360, "height": 740}
DESK = {"width": 1280, "height": 900}


def launched(playwright: Playwright) -> Browser:
    """The system's Chromium; nothing is downloaded."""
    path = next((found for name in BROWSERS if (found := shutil.which(name))), None)
    if path is None:
        pytest.fail(f"no browser: none of {', '.join(BROWSERS)} is installed (apt install chromium)")
    return playwright.chromium.launch(executable_path=path, args=list(FLAGS))


class Visit:
    """A browser context with its pages, what they asked for over the network, and what went wrong in them.

    `addresses` are all that was asked for but data and blobs; `errors` what no script caught or a policy refused.
    """

    def __init__(self, context: BrowserContext) -> None:
        self.context = context
        self.addresses: list[str] = []
        self.errors: list[str] = []
        context.on("request", lambda request: self._note(request.url))
        context.on("page", self._watch)

    def open(self, address: str) -> Page:
        """A new page at an address."""
        page = self.context.new_page()
        page.goto(address)
        return page

    def _note(self, url: str) -> None:
        if not url.startswith(("data:", "blob:")):
            self.addresses.append(url)

    def _watch(self, page: Page) -> None:
        page.on("pageerror", lambda error: self.errors.append(str(error)))
        page.on("console", lambda said: self.errors.append(said.text) if said.type == "error" else None)


@contextmanager
def visit(browser: Browser, *, offline: bool = True, **options: object) -> Iterator[Visit]:
    """A fresh context, without a network while `offline`; fails where a page asked for anything but itself."""
    context = browser.new_context(offline=offline, accept_downloads=True, **options)  # type: ignore[arg-type]
    context.set_default_timeout(10_000)
    made = Visit(context)
    yield made
    opened = {page.url.partition("#")[0] for page in context.pages}
    context.close()
    assert not made.errors, made.errors
    assert {address.partition("#")[0] for address in made.addresses} <= opened | {"about:blank"}, made.addresses


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """The address of a server on loopback that answers the files of a folder."""
    handler = partial(_Quiet, directory=str(folder))
    server = ThreadingHTTPServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{server.server_address[1]}"
    server.shutdown()
    thread.join()


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        """No lines between the tests'."""
