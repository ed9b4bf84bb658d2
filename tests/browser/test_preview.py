"""The preview in a browser: the newest sheet where it was read, errors over it, and no page but its own."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Event, Thread

from playwright.sync_api import Browser, Page, expect

from browser.driver import DESK
from setwright.cli.watch import follow
from setwright.preview.building import Wanted
from setwright.preview.server import Server
from setwright.preview.stage import Stage

PLAN = """use stdlib.exercises

plan "Pier"
  block Base: 6 weeks
    day Mon
      Back Squat: {sets} x 5 @ RPE 7
"""


@contextmanager
def watched(path: Path) -> Iterator[str]:
    """The address of a preview of the file, kept up to date."""
    stage, stop = Stage(), Event()
    server = Server(stage)
    threads = (
        Thread(target=server.serve_forever, daemon=True),
        Thread(target=follow, args=(Wanted(str(path)), stage, stop), daemon=True),
    )
    for thread in threads:
        thread.start()
    yield server.address
    stop.set()
    server.close()
    for thread in threads:
        thread.join(10)


def test_a_save_is_shown_where_one_was_reading(browser: Browser, tmp_path: Path) -> None:
    path = tmp_path / "pier.plan"
    path.write_text(PLAN.format(sets=3), encoding="utf-8")
    with watched(path) as address, browser.new_context(viewport=DESK) as context:
        asked: list[str] = []
        context.on("request", lambda request: asked.append(request.url))
        page = context.new_page()
        complaints: list[str] = []
        page.on("console", lambda said: complaints.append(said.text) if said.type == "error" else None)
        page.goto(address)
        sheet = page.frame_locator("#sheet")
        expect(sheet.locator("#week-4-1")).to_contain_text("3 × 5")
        page.frames[1].evaluate("scrollTo(0, 900)")

        path.write_text(PLAN.format(sets=4), encoding="utf-8")
        expect(sheet.locator("#week-4-1")).to_contain_text("4 × 5", timeout=15_000)
        page.wait_for_function("document.getElementById('sheet').contentWindow.scrollY === 900")

        path.write_text(PLAN.format(sets="4 sets"), encoding="utf-8")
        expect(page.locator("#found li.error")).to_contain_text(f"{path}:6:", timeout=15_000)
        expect(page.get_by_role("status")).to_have_text("1 error: the sheet is the last one that could be built")
        expect(sheet.locator("#week-4-1")).to_contain_text("4 × 5")
        assert place(page) == 900

        path.unlink()
        expect(page.locator("#found li.error")).to_contain_text("SW0001", timeout=15_000)
        path.write_text(PLAN.format(sets=5), encoding="utf-8")
        expect(sheet.locator("#week-4-1")).to_contain_text("5 × 5", timeout=15_000)
        expect(page.locator("#found")).to_be_hidden()
        assert complaints == []
        assert {url.split("/")[2] for url in asked if not url.startswith("data:")} == {address.split("/")[2]}


def place(page: Page) -> object:
    return page.evaluate("document.getElementById('sheet').contentWindow.scrollY")


def test_several_sheets_can_be_chosen(browser: Browser, tmp_path: Path) -> None:
    path = tmp_path / "two.plan"
    path.write_text(PLAN.format(sets=3) + PLAN.format(sets=5).replace("Pier", "Quay").split("\n", 2)[2], "utf-8")
    with watched(path) as address, browser.new_context(viewport=DESK) as context:
        page = context.new_page()
        page.goto(address)
        sheet = page.frame_locator("#sheet")
        expect(sheet.get_by_role("heading", name="Pier")).to_be_visible()
        page.get_by_role("button", name="Quay").press("Enter")
        expect(sheet.get_by_role("heading", name="Quay")).to_be_visible()
        expect(page.get_by_role("button", name="Quay")).to_have_attribute("aria-current", "true")


def test_another_site_cannot_show_or_read_it(browser: Browser, tmp_path: Path) -> None:
    path = tmp_path / "pier.plan"
    path.write_text(PLAN.format(sets=3), encoding="utf-8")
    stranger = Server(Stage())  # another port is another origin
    Thread(target=stranger.serve_forever, daemon=True).start()
    with watched(path) as address, browser.new_context() as context:
        page = context.new_page()
        page.goto(f"{stranger.address}shell.css")
        read = "(url) => fetch(url).then((answer) => answer.status, () => 'refused')"
        assert page.evaluate(read, f"{address}sheets/1") == "refused"
        page.set_content(f'<iframe src="{address}sheets/1"></iframe>')
        page.wait_for_timeout(500)
        assert "Pier" not in page.frames[-1].content()
    stranger.close()
