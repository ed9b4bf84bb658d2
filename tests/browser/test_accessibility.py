"""axe-core finds nothing wrong with any page: light, dark, on paper, in forced colours, on a desk and on a phone.

axe-core is Deque's published engine for the WCAG 2.0 to 2.2 rules and for good practice; all its rules are on.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any, Final

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

from browser.driver import DESK, PHONE, visit
from browser.shown_pages import PAGES, page_of

Paths = Callable[[str], Path]

# Chromium's ways to show a page, as Playwright emulates them.
MEDIA: Final[dict[str, dict[str, Any]]] = {
    "light": {"color_scheme": "light"},
    "dark": {"color_scheme": "dark"},
    "paper": {"media": "print"},
    "forced colours": {"forced_colors": "active"},
    "forced colours, dark": {"forced_colors": "active", "color_scheme": "dark"},
}


@pytest.fixture(scope="module")
def paths(tmp_path_factory: pytest.TempPathFactory) -> Paths:
    """Each page, built once."""
    made: dict[str, Path] = {}

    def of(name: str) -> Path:
        if name not in made:
            made[name] = page_of(name, tmp_path_factory.mktemp("page"))
        return made[name]

    return of


@pytest.mark.parametrize("name", PAGES)
def test_a_desk_in_every_light(browser: Browser, paths: Paths, name: str) -> None:
    with visit(browser, viewport=DESK, bypass_csp=True) as seen:
        page = seen.open(paths(name).as_uri())
        assert {media: faults(page, **how) for media, how in MEDIA.items()} == dict.fromkeys(MEDIA, "")


@pytest.mark.parametrize("target", ["", "#week-1", "#week-1-1"], ids=["overview", "week", "session"])
@pytest.mark.parametrize("name", ["sheet", "German, with reasons", "right to left"])
def test_one_thing_at_a_time_on_a_phone(browser: Browser, paths: Paths, name: str, target: str) -> None:
    with visit(browser, viewport=PHONE, bypass_csp=True) as seen:
        page = seen.open(paths(name).as_uri() + target)
        assert faults(page) == ""
        assert faults(page, color_scheme="dark") == ""


@pytest.mark.parametrize("name", ["template", "comparison"])
def test_other_pages_on_a_phone(browser: Browser, paths: Paths, name: str) -> None:
    with visit(browser, viewport=PHONE, bypass_csp=True) as seen:
        assert faults(seen.open(paths(name).as_uri())) == ""


@pytest.mark.parametrize("size", [DESK, PHONE], ids=["desk", "phone"])
@pytest.mark.parametrize("name", ["sheet", "German, with reasons", "right to left"])
def test_a_recording_under_way(browser: Browser, paths: Paths, name: str, size: dict[str, int]) -> None:
    with visit(browser, viewport=size, bypass_csp=True) as seen:
        page = seen.open(paths(name).as_uri() + "#week-1-1")
        session = page.locator("article.session").first
        session.locator("button.rec-open").click()
        for tick in session.locator(".rec-tick").all()[:2]:
            tick.click()
        page.locator("details").evaluate_all("all => all.forEach(one => { one.open = true; })")
        lights = ("light", "dark", "forced colours")
        assert {light: faults(page, **MEDIA[light]) for light in lights} == dict.fromkeys(lights, "")


def faults(page: Page, **media: Any) -> str:
    """What axe-core finds, in its own words; empty where it finds nothing."""
    page.emulate_media(**{"media": "screen", "color_scheme": "light", "forced_colors": "none", **media})
    found = Axe().run(page)
    return found.generate_report() if found.violations_count else ""
