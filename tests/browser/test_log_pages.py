"""Sheets with a log in a real browser: on a desk, a phone and paper; recording beside it; one session alone."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browser.driver import DESK, PHONE, visit
from setwright.render import html
from setwright.render.gathered import only_session
from setwright.render.material import Material
from sheets.logged_plans import material

A4 = {"width": 718, "height": 1056}  # between the margins, at 96 pixels an inch


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Material:
    return material(tmp_path_factory.mktemp("log"))


@pytest.fixture(scope="module")
def sheet(made: Material, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("sheet") / "sheet.html"
    path.write_text(html.page(made), encoding="utf-8")
    return path


@pytest.fixture(scope="module")
def alone(made: Material, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("alone") / "session.html"
    path.write_text(html.session_page(only_session(made, 2, 3)), encoding="utf-8")
    return path


def test_a_desk_shows_what_was_done_and_no_boxes(browser: Browser, sheet: Path) -> None:
    with visit(browser, viewport=DESK) as seen:
        page = seen.open(sheet.as_uri())
        first = page.locator("#week-1-1")
        assert first.locator(".done b:visible").count() == 4 + 1 + 2
        assert first.locator("header .did").text_content() == "Done."
        assert page.locator("#week-1 .extra").is_visible()
        assert page.locator(".done i:visible").count() == 0


def test_a_phone_lists_what_became_of_each_session(browser: Browser, sheet: Path) -> None:
    with visit(browser, viewport=PHONE) as seen:
        page = seen.open(f"{sheet.as_uri()}#week-1")
        said = page.locator("#week-1 header .did:visible").all_inner_texts()
        assert [one.replace("\u00a0", " ") for one in said] == ["Done.", "Done on Thursday, 7 January.", "Done."]
        page.goto(f"{sheet.as_uri()}#week-1-1")
        assert page.locator("#week-1-1 .done b:visible").count() == 7
        assert overlaps(page, "#week-1-1 > header :is(h3, p)") == []


def test_paper_has_sets_where_done_and_boxes_where_ahead(browser: Browser, sheet: Path) -> None:
    with visit(browser, viewport=A4) as seen:
        page = seen.open(sheet.as_uri())
        page.emulate_media(media="print")
        assert page.locator("#week-1-1 .done b:visible").count() == 7
        assert page.locator("#week-1-1 .done i:visible").count() == 0
        assert page.locator("#week-2-1 .done i:visible").count() == 3 + 2 + 2 + 2  # missed: it may be caught up with
        assert page.locator("#week-3-1 .done i:visible").count() == 3 + 2 + 2 + 2
        assert overlaps(page, "#week-1 .session > header :is(h3, p), #week-1 .done b, #week-1 tbody th") == []


def test_recording_goes_on_beside_a_log(browser: Browser, sheet: Path) -> None:
    with visit(browser, viewport=DESK) as seen:
        page = seen.open(sheet.as_uri())
        for session in ("#week-1-1", "#week-2-3"):
            page.locator(f"{session} .rec-open").click()
            page.locator(f"{session} .rec-tick").first.click()
            assert page.locator(f"{session} .rec-tick[aria-pressed=true]").count() == 1
        assert page.locator("#week-1-1 .done b:visible").count() == 7  # what the log says stays
        assert page.locator("#week-1-1 .done i:visible").count() == 0
        assert page.locator("#week-2-3 .done i:visible").all_inner_texts() == ["60\u00d78"]


@pytest.mark.parametrize("target", ["", "#week-2-1"])
def test_one_session_alone_is_in_sight_with_its_cautions(target: str, browser: Browser, alone: Path) -> None:
    with visit(browser, viewport=PHONE) as seen:
        page = seen.open(alone.as_uri() + target)
        assert page.locator(".session:visible table").count() == 1
        assert page.locator(".cautions:visible").count() == 1
        assert page.locator(".go:visible, .weeks:visible").count() == 0
        page.locator(".rec-open").click()
        page.locator(".rec-tick").first.click()
        assert page.locator(".rec-tick[aria-pressed=true]").count() == 1
        assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0


def test_one_session_alone_prints_on_one_page(browser: Browser, alone: Path) -> None:
    with visit(browser, viewport=A4) as seen:
        page = seen.open(alone.as_uri())
        assert page.pdf(format="A4", prefer_css_page_size=True).count(b"/Type /Page\n") == 1


def overlaps(page: Page, selector: str) -> list[str]:
    """Texts whose boxes lie over each other, where neither holds the other."""
    return page.evaluate(  # type: ignore[no-any-return]
        """selector => {
          const found = [...document.querySelectorAll(selector)].filter(e => e.checkVisibility());
          const boxes = found.map(e => [e, e.getBoundingClientRect()]);
          const over = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
            Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
          return boxes.flatMap(([one, a], at) => boxes.slice(at + 1)
            .filter(([other, b]) => !one.contains(other) && !other.contains(one) && over(a, b))
            .map(([other]) => one.textContent.trim() + " / " + other.textContent.trim()));
        }""",
        selector,
    )
