"""A page by a club's own template in a browser: its styles hold, and nothing else that it might try."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from browser.driver import visit
from run_command import run_command

CLUB = Path(__file__).parents[2] / "examples" / "rowing-club-library"

TRIES = """\
<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<title>{{ sheet.name }}</title>
<style>h1 { color: rgb(1, 2, 3); }</style>
</head>
<body onload="document.title = 'ran'">
<h1>{{ sheet.name }}</h1>
<p style="color: rgb(4, 5, 6)">attribute</p>
<img src="x.png" alt="" onerror="document.title = 'ran'">
<img src="http://127.0.0.1:9/x.png" alt="">
<iframe src="http://127.0.0.1:9/"></iframe>
<form action="http://127.0.0.1:9/"><button>send</button></form>
{% include "cautions.html.j2" %}
</body>
</html>
"""


@pytest.fixture
def built(tmp_path: Path) -> Path:
    return tmp_path / "out"


def build(template: Path, folder: Path) -> str:
    answer = run_command(
        "build", str(CLUB / "rowing-club-library.plan"), "--template", str(template), "-o", str(folder)
    )
    assert answer.exit_code == 0, answer.stderr
    (page,) = folder.glob("*.html")
    return page.as_uri()


def test_the_example_of_a_club(browser: Browser, built: Path) -> None:
    address = build(CLUB / "boathouse-wall.html.j2", built)
    with visit(browser) as visitor:
        page = visitor.open(address)
        assert page.locator("section").first.evaluate("e => getComputedStyle(e).borderTopColor") == "rgb(122, 31, 61)"
        assert page.locator("header img").evaluate("e => e.naturalWidth") > 0


def test_the_policy_holds(browser: Browser, built: Path, tmp_path: Path) -> None:
    (tmp_path / "club.html.j2").write_text(TRIES, encoding="utf-8")
    address = build(tmp_path / "club.html.j2", built)
    context = browser.new_context(offline=True)
    asked: list[str] = []
    refused: list[tuple[str, str | None]] = []
    context.on("request", lambda request: asked.append(request.url))
    context.on("requestfailed", lambda request: refused.append((request.url, request.failure)))
    page = context.new_page()
    page.goto(address)
    page.wait_for_load_state()
    assert page.locator("h1").evaluate("e => getComputedStyle(e).color") == "rgb(1, 2, 3)"
    assert page.get_by_text("attribute").evaluate("e => getComputedStyle(e).color") == "rgb(0, 0, 0)"
    assert page.title() != "ran"
    page.locator("form").evaluate("form => form.requestSubmit()")
    assert page.url == address
    context.close()
    # The browser tells of what it would ask for, and that the policy refused it before anything was sent.
    assert {why for _, why in refused} == {"csp"}, refused
    assert [url for url in asked if url not in dict(refused)] == [address]
