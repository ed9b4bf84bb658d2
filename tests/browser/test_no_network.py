"""Every page is sealed: a strict policy, which nothing in it offends, and not one request but for the file itself."""

from __future__ import annotations

import re
from collections.abc import Callable
from html import unescape
from pathlib import Path
from typing import Final

import pytest
from playwright.sync_api import Browser, Page

from browser.driver import visit
from browser.shown_pages import PAGES, page_of

# Before the page's own script, so that nothing is missed. The list is kept on the window.
WATCH: Final = """window.refused = [];
addEventListener("securitypolicyviolation", e => refused.push(e.violatedDirective + " " + e.blockedURI), true);"""
HASH: Final = r"'sha256-[A-Za-z0-9+/]{43}='"
STRICT: Final = re.compile(
    rf"default-src 'none';( script-src {HASH};)? style-src {HASH}( {HASH})*; img-src data:; "
    r"base-uri 'none'; form-action 'none'"
)
RECORDED: Final = ("sheet", "German, with reasons", "right to left")


@pytest.mark.parametrize("name", PAGES)
def test_the_policy_is_strict(name: str, tmp_path: Path) -> None:
    text = page_of(name, tmp_path).read_text(encoding="utf-8")
    (policy,) = re.findall(r'<meta http-equiv="Content-Security-Policy" content="([^"]*)">', text)
    assert STRICT.fullmatch(unescape(policy)), unescape(policy)
    # What stands before the policy is not held to it.
    assert text.index("<meta http-equiv") < min(text.index(mark) for mark in ("<style", "<link", "<body"))


@pytest.mark.parametrize("name", PAGES)
def test_opened_and_printed(browser: Browser, name: str, tmp_path: Path) -> None:
    def work(page: Page) -> None:
        page.emulate_media(media="print")
        page.pdf()

    assert refused(browser, page_of(name, tmp_path), work) == []


@pytest.mark.parametrize("name", RECORDED)
def test_recorded_and_exported(browser: Browser, name: str, tmp_path: Path) -> None:
    def work(page: Page) -> None:
        session = page.locator("article.session").first
        session.locator("button.rec-open").click()
        for tick in session.locator(".rec-tick").all()[:3]:
            tick.click()
        for at in (1, 2):  # plain lines, CSV
            with page.expect_download():
                page.locator("#records > .rec-ways button").nth(at).click()
        page.reload()
        assert page.locator("article.session").first.locator(".rec-tick[aria-pressed=true]").count() == 3

    assert refused(browser, page_of(name, tmp_path), work) == []


def refused(browser: Browser, path: Path, work: Callable[[Page], None]) -> list[str]:
    """What the policy refused while somebody worked on the page; `visit` fails where it asked for anything else."""
    with visit(browser) as seen:
        seen.context.add_init_script(WATCH)
        page = seen.open(path.as_uri())
        work(page)
        found: list[str] = page.evaluate("window.refused")
        assert {address.partition("#")[0] for address in seen.addresses} == {path.as_uri()}
        return found
