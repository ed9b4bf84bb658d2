"""The page in a real browser: how it breaks over paper, that it needs no sideways scrolling, that it fetches nothing.

Wants Chromium and Poppler on the machine (`apt install chromium poppler-utils`); nothing is downloaded.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from collections import Counter
from html import unescape
from pathlib import Path

import pytest

from run_command import run_command
from setwright.plan import Plan, Session
from setwright.record import replace
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
# Small print at the head and the foot of each session, so that the text of a printed page tells what stands on it.
ARTICLE = re.compile(r'(<article class="session[^"]*" id="week-([\d-]+)"[^>]*>)(.*?)(?=</article>)', re.DOTALL)
MARKED = r'\1<b class="mark">head-\2.</b>\3<b class="mark foot">foot-\2.</b>'
MARKS = """<style>.session { position: relative }
.mark { position: absolute; font: 2pt/1 sans-serif } .foot { bottom: 0 }
@page { size: PAPER portrait }</style></head>"""

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


def noted(weeks: int) -> Plan:
    """Five days of every form a prescription can take, supersets and circuits among them, and a long note a line."""
    plan = long(weeks, 5, 6)
    note = "Leave the bar on the pins between sets, breathe, and write down what the last one felt like."

    def with_notes(session: Session) -> Session:
        return replace(session, lines=tuple(replace(line, notes=(note, note)) for line in session.lines))

    return replace(
        plan,
        weeks=tuple(replace(week, sessions=tuple(map(with_notes, week.sessions))) for week in plan.weeks),
    )


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("sheets")
    plan, athlete = EXAMPLE / "harbour-twelve-weeks.plan", EXAMPLE / "runa.plan"
    built = run_command("build", str(plan), "--athlete", str(athlete), "-o", str(folder), "--format", "html")
    assert built.exit_code == 0, built.stderr
    return next(folder.glob("*.html"))


@pytest.fixture(scope="module", params=["A4", "Letter"])
def paper(request: pytest.FixtureRequest, page: Path, tmp_path_factory: pytest.TempPathFactory) -> list[set[str]]:
    """What begins and ends on each printed page: `head-3-1` is the head of the first session of week 3."""
    return printed(page.read_text(), str(request.param), tmp_path_factory.mktemp("paper"))


def test_each_week_starts_a_page_and_takes_two_at_most(paper: list[set[str]]) -> None:
    for text in paper:
        assert len({week_of(mark) for mark in text}) <= 1
    weeks = [week_of(next(iter(text))) for text in paper if text]
    assert list(dict.fromkeys(weeks)) == list(range(1, 13))
    assert max(weeks.count(week) for week in weeks) == 2
    assert weeks.count(12) == 1  # three sessions


def test_what_stands_before_the_weeks_takes_three_pages_and_nothing_follows_them(paper: list[set[str]]) -> None:
    assert [bool(text) for text in paper[:4]] == [False, False, False, True]
    assert all(paper[3:])


def test_no_session_is_split(paper: list[set[str]]) -> None:
    for text in paper:
        assert {mark.removeprefix("head-") for mark in text if mark.startswith("head")} == {
            mark.removeprefix("foot-") for mark in text if mark.startswith("foot")
        }


def test_every_session_is_printed(paper: list[set[str]]) -> None:
    assert sum(mark.startswith("head") for text in paper for mark in text) == 11 * 5 + 3


@pytest.mark.parametrize("size", ["A4", "Letter"])
def test_four_sessions_of_six_lines_take_one_page(size: str, page: Path, tmp_path: Path) -> None:
    # The twelve weeks without their fifth day: what is left has six lines a session, in the test week fewer.
    text = re.sub(r'<article class="session[^"]*" id="week-\d+-5".*?</article>', "", page.read_text(), flags=re.DOTALL)
    weeks = [{week_of(mark) for mark in marks} for marks in printed(text, size, tmp_path) if marks]
    assert weeks == [{week} for week in range(1, 13)]


@pytest.mark.parametrize("size", ["A4", "Letter"])
@pytest.mark.parametrize(
    ("plan", "most"),
    [(long(4, 5, 6), 2), (long(4, 6, 6), 3), (noted(4), 3), (long(52, 3, 4), 1)],
    ids=["five days", "six days", "groups and long notes", "a year"],
)
def test_weeks_start_a_page_and_sessions_stay_whole(plan: Plan, most: int, size: str, tmp_path: Path) -> None:
    made = reported(plan)
    pages = printed(html.page(Material(made.plan, made.volume, made.overview)), size, tmp_path)
    weeks = [{week_of(mark) for mark in marks} for marks in pages if marks]
    assert all(len(found) == 1 for found in weeks)
    counts = Counter(number for found in weeks for number in found)
    assert list(counts) == [week.number for week in plan.weeks]
    assert max(counts.values()) <= most
    for marks in pages:
        heads = {mark.removeprefix("head-") for mark in marks if mark.startswith("head")}
        assert heads == {mark.removeprefix("foot-") for mark in marks if mark.startswith("foot")}


def test_the_foot_of_a_page_says_whose_it_is(page: Path, tmp_path: Path) -> None:
    browse(tmp_path, f"--print-to-pdf={tmp_path / 'printed.pdf'}", page.as_uri())
    pages = run("pdftotext", "-layout", str(tmp_path / "printed.pdf"), "-").removesuffix("\f").split("\f")
    feet = [re.split(r"\s{2,}", lines(text)[-1].strip()) for text in pages]
    assert feet[0] == ["Lanternquay Winter Twelve \u2013 Runa", "1"]
    assert feet[4] == ["Lanternquay Winter Twelve \u2013 Runa", "Week 1", "5"]


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


def test_the_twelve_weeks_stay_small(page: Path) -> None:
    assert page.stat().st_size < 400_000


def test_the_page_needs_nothing_else(page: Path) -> None:
    text = page.read_text()
    assert text.count("<script") == 2  # the data of the recording, which is no script, and the recording
    assert not re.findall(r"<iframe|<object|<embed|\bsrc\s*=|@import|\burl\((?!#)|\b\w+://", text)
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


def printed(text: str, size: str, folder: Path) -> list[set[str]]:
    """The marks on each page of a copy of the sheet."""
    copy = folder / "copy.html"
    marked = POLICY.sub("", ARTICLE.sub(MARKED, text)).replace("</head>", MARKS.replace("PAPER", size.lower()), 1)
    copy.write_text(marked)
    browse(folder, f"--print-to-pdf={folder / 'printed.pdf'}", copy.as_uri())
    assert size.lower() in run("pdfinfo", str(folder / "printed.pdf")).lower()
    pages = run("pdftotext", str(folder / "printed.pdf"), "-").removesuffix("\f").split("\f")
    return [set(re.findall(r"\b((?:head|foot)-\d+-\d+)\.", page)) for page in pages]


def week_of(mark: str) -> int:
    return int(mark.split("-")[1])


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
