"""How soon a sheet is seen: first contentful paint of the twelve-week sheet, to that of a page of as many bytes.

The floor is a page with one line of text and a comment behind it that fills it up to the size of the sheet: Chromium
reads as many bytes, and has next to nothing to lay out. Both are opened cold from the disk, in turn, each in a fresh
context without a cache. Run this file with Python; it wants Chromium.
"""

from __future__ import annotations

import statistics
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from playwright.sync_api import Browser, sync_playwright

from browser.driver import DESK, PHONE, launched
from render import harbour
from setwright.render import html

MOST = 1.5
PAIRS = 15
HEAD = '<!DOCTYPE html>\n<html lang="en"><head><meta charset="utf-8"><title>Blank</title></head>\n<body>\n<p>.</p>\n'
PAINTED = """() => new Promise(told => new PerformanceObserver(list => {
  const found = list.getEntriesByName("first-contentful-paint")[0];
  if (found) told(found.startTime);
}).observe({ type: "paint", buffered: true }))"""


def main() -> None:
    sheet = html.page(harbour())
    blank = f"{HEAD}<!--{' ' * (len(sheet.encode()) - len(HEAD.encode()) - 8)}-->\n"
    assert len(blank.encode()) == len(sheet.encode())
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        pages = [Path(folder) / "sheet.html", Path(folder) / "blank.html"]
        for path, text in zip(pages, (sheet, blank), strict=True):
            path.write_text(text, encoding="utf-8")
        browser = launched(playwright)
        print(f"first contentful paint of {len(sheet.encode()):,} bytes, to a blank page of as many")
        for name, size in (("desk", DESK), ("phone", PHONE)):
            taken = [[painted(browser, path, size) for path in pages] for _ in range(PAIRS + 1)][1:]
            ratio = statistics.median(mine / theirs for mine, theirs in taken)
            mine, theirs = (statistics.median(side) for side in zip(*taken, strict=True))
            print(f"  {name:56} {ratio:5.2f}  (at most {MOST:.1f})   {mine:7.1f} ms to {theirs:7.1f} ms")
        browser.close()


def painted(browser: Browser, path: Path, size: dict[str, int]) -> float:
    """Milliseconds from the start of a navigation to the first paint of any content."""
    context = browser.new_context(viewport=size, offline=True)  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(path.as_uri(), wait_until="commit")
    taken: float = page.evaluate(PAINTED)
    context.close()
    return taken


if __name__ == "__main__":
    main()
