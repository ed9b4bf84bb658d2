"""The overview in a real browser: two pages on paper, numbers that do not run into each other, names for the charts."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from browser.driver import visit
from run_command import run_command

EXAMPLE = Path(__file__).parents[2] / "examples" / "harbour-twelve-weeks"
OVERLAPS = """() => [...document.querySelectorAll('.lift g')].flatMap(strip => {
  const boxes = [...strip.querySelectorAll('text:not(.unit, .none)')].map(text => [text.textContent, text.getBBox()]);
  return boxes.slice(1).filter(([, box], at) => {
    const before = boxes[at][1];
    return box.x < before.x + before.width && box.y < before.y + before.height && before.y < box.y + box.height;
  }).map(([text]) => text);
})"""
LEAVES = """() => [...document.querySelectorAll('.overview .grid :is(td, th)')]
  .filter(cell => cell.getClientRects().length && cell.scrollWidth > cell.clientWidth + 1)
  .map(cell => cell.textContent)"""


@pytest.fixture(scope="module")
def sheet(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Twelve weeks, five main lifts, twenty muscles."""
    folder = tmp_path_factory.mktemp("sheets")
    plan, athlete = EXAMPLE / "harbour-twelve-weeks.plan", EXAMPLE / "runa.plan"
    built = run_command("build", str(plan), "--athlete", str(athlete), "-o", str(folder), "--format", "html")
    assert built.exit_code == 0, built.stderr
    return next(folder.glob("*.html"))


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_overview_takes_two_pages(browser: Browser, sheet: Path, tmp_path: Path, paper: str) -> None:
    printed = tmp_path / "printed.pdf"
    with visit(browser) as made:
        made.open(sheet.as_uri()).pdf(path=printed, format=paper, prefer_css_page_size=False)
    pages = subprocess.run(
        ["pdftotext", "-layout", str(printed), "-"], capture_output=True, text=True, check=True
    ).stdout.split("\f")
    for heading in ("What the loads rest on", "Blocks and effort", "Main lifts"):
        assert heading in pages[0]
    for heading in ("Sets per muscle per week", "Minutes a session", "The week"):
        assert heading in pages[1]


@pytest.mark.parametrize("width", [320, 390, 1280])
def test_numbers_stand_clear_of_each_other(browser: Browser, sheet: Path, width: int) -> None:
    with visit(browser, viewport={"width": width, "height": 900}) as made:
        page = made.open(sheet.as_uri())
        assert page.evaluate(OVERLAPS) == []
        assert page.evaluate(LEAVES) == []


def test_every_drawing_has_a_name_and_words(browser: Browser, sheet: Path) -> None:
    with visit(browser) as made:
        page = made.open(sheet.as_uri())
        names = [named(page, at) for at in range(page.locator(".overview svg[role=img]").count())]
        assert names[0].startswith("Blocks, weeks and effort RPE by week")
        assert [name.partition(" Highest percent")[0] for name in names[1:]] == [
            "Bench Press",
            "Back Squat",
            "Overhead Press",
            "Deadlift",
            "Pause Squat",
        ]


def named(page: Page, at: int) -> str:
    """What a screen reader is given for a drawing: the texts that `aria-labelledby` names."""
    drawing = page.locator(".overview svg[role=img]").nth(at)
    places = (drawing.get_attribute("aria-labelledby") or "").split()
    return " ".join(page.locator(f"[id='{place}']").text_content() or "" for place in places)
