"""How a sheet is shown and printed: one thing at a time on a phone, without script; nothing too small for its place."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from browser.driver import visit
from setwright.render import html
from setwright.render.material import Material
from sheets.sample_plans import long, reported

PHONES = ((390, 844), (320, 568))

# Every text that is shown, by the size of its letters in CSS pixels; drawings scale by themselves.
SIZES = """root => {
  const walker = document.createTreeWalker(document.querySelector(root), NodeFilter.SHOW_TEXT);
  const sizes = [];
  for (let node; (node = walker.nextNode());) {
    const on = node.parentElement;
    const hidden = on.closest("svg, .rec-hidden") || !on.checkVisibility() || on.getBoundingClientRect().width < 2;
    if (node.data.trim() && !hidden) sizes.push([parseFloat(getComputedStyle(on).fontSize), node.data.trim()]);
  }
  return sizes;
}"""
POINT = 4 / 3
MILLIMETRE = 96 / 25.4


@pytest.fixture(scope="module")
def sheet(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = reported(long(2, 4, 6))
    path = tmp_path_factory.mktemp("sheet") / "sheet.html"
    path.write_text(html.page(Material(made.plan, made.volume, made.overview)), encoding="utf-8")
    return path


@pytest.mark.parametrize("size", PHONES)
def test_a_phone_shows_one_thing_at_a_time(browser: Browser, sheet: Path, size: tuple[int, int]) -> None:
    with visit(browser, viewport={"width": size[0], "height": size[1]}, java_script_enabled=False) as seen:
        page = seen.open(sheet.as_uri())
        shown = page.locator(".overview:visible, .week:visible, .session:visible, .session table:visible")
        assert [one.get_attribute("class") for one in shown.all()] == ["overview"]
        page.get_by_role("link", name="Week 2", exact=True).click()
        assert shown.count() == 5  # the week, its sessions' heads
        assert page.locator(".session table:visible").count() == 0
        page.get_by_role("link", name="Tuesday Upper").click()
        assert page.url.endswith("#week-2-2")
        assert page.locator(".session:visible").count() == 1
        assert page.locator(".session table:visible").count() == 1
        page.get_by_role("link", name="next Wednesday").click()
        assert page.url.endswith("#week-2-3")
        page.get_by_role("link", name="previous Tuesday").click()
        page.locator(".session:visible .go").get_by_role("link", name="Week 2").click()
        assert page.url.endswith("#week-2")
        page.locator(".go:visible").get_by_role("link", name="Overview").click()
        assert [one.get_attribute("class") for one in shown.all()] == ["overview"]


@pytest.mark.parametrize("target", ["", "#week-1", "#week-1-1", "#week-2-4"])
@pytest.mark.parametrize("size", PHONES)
def test_a_phone_never_scrolls_sideways(browser: Browser, sheet: Path, size: tuple[int, int], target: str) -> None:
    with visit(browser, viewport={"width": size[0], "height": size[1]}) as seen:
        page = seen.open(sheet.as_uri() + target)
        assert page.evaluate("document.documentElement.scrollWidth") <= size[0]


# 44 pixels: WCAG 2.2, 2.5.5 (level AAA).
@pytest.mark.parametrize(
    ("target", "links"), [("", ".weeks li a"), ("#week-1", ".session > header"), ("#week-1-2", ".go a")]
)
def test_what_is_touched_is_large(browser: Browser, sheet: Path, target: str, links: str) -> None:
    with visit(browser, viewport={"width": 320, "height": 568}) as seen:
        page = seen.open(sheet.as_uri() + target)
        boxes = [one.bounding_box() for one in page.locator(f"{links}:visible").all()]
        assert boxes
        assert min(min(box["width"], box["height"]) for box in boxes if box) >= 44


def test_a_desk_shows_all(browser: Browser, sheet: Path) -> None:
    with visit(browser, viewport={"width": 1280, "height": 900}) as seen:
        page = seen.open(sheet.as_uri() + "#week-1-1")
        assert page.locator(".session table:visible").count() == 8
        assert page.locator(".go:visible").count() == 0


def test_paper_is_legible(browser: Browser, sheet: Path) -> None:
    with visit(browser, viewport={"width": 720, "height": 1000}) as seen:
        page = seen.open(sheet.as_uri())
        page.emulate_media(media="print")
        for part in ("#weeks", ".cautions", ".keys", ".movements"):
            small = [found for found in page.evaluate(SIZES, part) if found[0] < 7.5 * POINT - 0.01]
            assert small == []
        for strong in (".dose b", ".dose b + span", ".load b"):
            sizes = page.locator(strong).evaluate_all("all => all.map(e => parseFloat(getComputedStyle(e).fontSize))")
            assert min(sizes) >= 10 * POINT - 0.01
        heights = page.locator(".done i").evaluate_all("all => all.map(e => e.getBoundingClientRect().height)")
        assert min(heights) >= 6 * MILLIMETRE
