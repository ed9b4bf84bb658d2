"""The running page: what its script says goes through the language as well, and a German one is German."""

from __future__ import annotations

from pathlib import Path
from typing import cast

import pytest
from playwright.sync_api import Browser, Page

from browser.driver import PHONE, visit
from languages import plans
from pseudo_language import Pseudo, stray
from setwright.render import html
from setwright.render.language import Language, language
from setwright.render.material import Look

TEXTS = """() => {
    const texts = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode())
        if (!walk.currentNode.parentElement.closest("script, style, pre, textarea")) texts.push(walk.currentNode.data);
    return texts;
}"""
LABELS = """() => [...document.querySelectorAll("*")].flatMap((each) =>
    ["aria-label", "aria-description", "aria-valuetext", "title", "placeholder", "alt"]
        .map((name) => each.getAttribute(name)).filter(Boolean))"""


def written(language: Language, folder: Path) -> str:
    page = folder / "sheet.html"
    page.write_text(html.page(plans.material(), Look(language=language)), encoding="utf-8")
    return page.as_uri()


def all_opened(page: Page) -> None:
    """A session that is being recorded, a set done with the rest running, every fold open."""
    session = page.locator("article.session").first
    session.locator("button").first.click()
    for tick in session.locator(".rec-tick").all()[:2]:
        tick.click()
    for fold in page.locator("details").all():
        fold.evaluate("(fold) => { fold.open = true; }")


def test_no_text_goes_past_the_language(browser: Browser, tmp_path: Path) -> None:
    with visit(browser) as seen:
        page = seen.open(written(Pseudo(), tmp_path))
        before = len(page.evaluate(TEXTS))
        all_opened(page)
        texts = cast(list[str], page.evaluate(TEXTS))
        assert len(texts) > before + 20
        assert stray(texts) == []
        assert [label for label in page.evaluate(LABELS) if stray([label])] == []


@pytest.mark.parametrize("tag", ["de", "fr"])
def test_longer_words_fit_the_narrowest_phone(browser: Browser, tmp_path: Path, tag: str) -> None:
    """WCAG 2.2, 1.4.10 Reflow: nothing scrolls sideways at 320 CSS pixels."""
    with visit(browser, viewport={**PHONE, "width": 320}) as seen:
        page = seen.open(written(language(tag), tmp_path))
        assert page.evaluate("document.documentElement.scrollWidth") <= 320
        page.goto(f"{page.url.partition('#')[0]}#week-1-1")
        all_opened(page)
        assert page.evaluate("document.documentElement.scrollWidth") <= 320


def test_decimals_are_typed_and_shown_as_the_language_writes_them(browser: Browser, tmp_path: Path) -> None:
    with visit(browser) as seen:
        page = seen.open(written(language("de"), tmp_path))
        all_opened(page)
        values = [each.input_value() for each in page.locator("article.session").first.locator("input").all()]
        assert "62,5" in values
        assert not any("." in value for value in values)
