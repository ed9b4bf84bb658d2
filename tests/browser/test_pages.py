"""The page in a real browser: how it breaks over paper, that it needs no sideways scrolling, that it fetches nothing.

Wants Chromium and Poppler on the machine (`apt install chromium poppler-utils`); nothing is downloaded.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from html import unescape
from itertools import groupby
from pathlib import Path

import pytest

from run_command import run_command
from setwright.plan import Plan
from setwright.render import html
from setwright.render.html import comparison as html_comparison
from setwright.render.material import Material
from setwright.report.compare import columns, comparison
from setwright.rules import Promise
from sheets.sample_plans import hostile, long, reported

EXAMPLE = Path(__file__).parents[2] / "examples" / "harbour-twelve-weeks"
BROWSERS = ("chromium", "chromium-browser", "google-chrome")
FLAGS = (
    *("--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--hide-scrollbars"),
    *("--disable-background-networking", "--no-pdf-header-footer"),
)
POLICY = re.compile(r'<meta http-equiv="Content-Security-Policy"[^>]*>')
WEEK = re.compile(r"\s*Week (\d+)\b")
SESSION = re.compile(r"\s*(?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day\b.*\babout \d+ min$")
FIRST_LINE = re.compile(r"\s*1\s+\w")

# A phone, a tablet upright, a desk; 320 pixels is the width of WCAG 2.2, 1.4.10.
WIDTHS = (320, 768, 1280)
FITS = {f"{width}:fits" for width in WIDTHS}
MEASURE = """<script>addEventListener("load", () => {
  const wide = document.documentElement.scrollWidth - innerWidth;
  const late = [...document.body.querySelectorAll("*")].filter(e => e.getBoundingClientRect().right > innerWidth + 1);
  const named = late.slice(-3).map(e => e.outerHTML.slice(0, 80));
  parent.postMessage(innerWidth + ":" + (wide > 0 ? wide + " too wide, " + named : "fits"), "*");
})</script></body>"""
FRAMES = """<!DOCTYPE html><title></title><style>iframe { border: 0 }</style>
<script>addEventListener("message", e => { document.title += e.data + "|" })</script>"""


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("sheets")
    plan, athlete = EXAMPLE / "harbour-twelve-weeks.plan", EXAMPLE / "runa.plan"
    built = run_command("build", str(plan), "--athlete", str(athlete), "-o", str(folder), "--format", "html")
    assert built.exit_code == 0, built.stderr
    return next(folder.glob("*.html"))


@pytest.fixture(scope="module", params=["A4", "Letter"])
def paper(request: pytest.FixtureRequest, page: Path, tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """The text of each printed page; Letter is the file as it is, for a browser without a desktop prints on that."""
    folder = tmp_path_factory.mktemp("paper")
    copy, printed = folder / "copy.html", folder / "printed.pdf"
    text = page.read_text()
    if request.param == "A4":
        text = POLICY.sub("", text).replace("</head>", "<style>@page { size: A4 portrait }</style></head>")
    copy.write_text(text)
    browse(folder, f"--print-to-pdf={printed}", copy.as_uri())
    assert request.param.lower() in run("pdfinfo", str(printed)).lower()
    return run("pdftotext", "-layout", str(printed), "-").removesuffix("\f").split("\f")


def test_each_week_starts_a_page_and_takes_two_at_most(paper: list[str]) -> None:
    weeks = [int(found[1]) if (found := WEEK.match(text)) else None for text in paper]
    assert [week for week in weeks if week is not None] == list(range(1, 13))
    front = weeks.index(1)
    assert front <= 4
    current, held = 0, []
    for week in weeks[front:]:
        current = week or current
        held.append(current)
    pages = {week: len(list(run)) for week, run in groupby(held)}
    assert max(pages.values()) <= 2
    assert pages[12] == 1  # three sessions


def test_no_session_is_split(paper: list[str]) -> None:
    front = next(at for at, text in enumerate(paper) if WEEK.match(text))
    for text in paper[front:]:
        assert WEEK.match(text) or SESSION.match(lines(text)[0])
        starts = [at for at, line in enumerate(lines(text)) if SESSION.match(line)]
        assert starts
        for at in starts:
            assert any(FIRST_LINE.match(line) for line in lines(text)[at + 1 : at + 4]), lines(text)[at]


def test_every_session_is_printed(paper: list[str]) -> None:
    assert sum(bool(SESSION.match(line)) for text in paper for line in lines(text)) == 11 * 5 + 3


@pytest.mark.parametrize("plan", [hostile(), long(52, 3, 4)], ids=["long names", "a year"])
def test_no_plan_scrolls_sideways(plan: Plan, tmp_path: Path) -> None:
    made = reported(plan)
    assert measured(html.page(Material(made.plan, made.volume, made.overview)), tmp_path) == FITS


def test_the_example_does_not_scroll_sideways(page: Path, tmp_path: Path) -> None:
    assert measured(page.read_text(), tmp_path) == FITS


def test_plans_side_by_side_do_not_scroll_sideways(tmp_path: Path) -> None:
    plans = [hostile(), long(52, 3, 4), *(long(8, days, 4) for days in (2, 4, 5, 6))]
    made = comparison(columns([(f"{at}.plan", plan, Promise()) for at, plan in enumerate(plans)]))
    assert measured(html_comparison.page(made), tmp_path) == FITS


def test_the_page_needs_nothing_else(page: Path) -> None:
    text = page.read_text()
    assert not re.findall(r"<script|<iframe|<object|<embed|\bsrc\s*=|@import|\burl\((?!#)|\b\w+://", text)
    assert {link for link in re.findall(r'href="([^"]*)"', text) if not link.startswith("#")} == {"data:,"}


def measured(text: str, folder: Path) -> set[str]:
    """For each width of a frame, `fits` or what stands out of it on the right."""
    (folder / "page.html").write_text(POLICY.sub("", text).replace("</body>", MEASURE))
    frames = "".join(f'<iframe style="width:{width}px;height:800px" src="page.html"></iframe>' for width in WIDTHS)
    (folder / "frames.html").write_text(FRAMES + frames)
    shown = browse(folder, "--virtual-time-budget=5000", "--dump-dom", (folder / "frames.html").as_uri())
    title = re.search("<title>(.*?)</title>", shown, re.DOTALL)
    assert title is not None, shown[:500]
    return set(unescape(title[1]).removesuffix("|").split("|"))


def lines(text: str) -> list[str]:
    return [line for line in text.splitlines() if line.strip()]


def browse(folder: Path, *arguments: str) -> str:
    browser = next((found for name in BROWSERS if (found := shutil.which(name))), None)
    if browser is None:
        pytest.fail(f"no browser: none of {', '.join(BROWSERS)} is installed (apt install chromium)")
    return run(browser, *FLAGS, f"--user-data-dir={folder / 'profile'}", *arguments)


def run(program: str, *arguments: str) -> str:
    if shutil.which(program) is None:
        pytest.fail(f"{program} is not installed (apt install poppler-utils)")
    done = subprocess.run([program, *arguments], capture_output=True, text=True, timeout=60, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout
