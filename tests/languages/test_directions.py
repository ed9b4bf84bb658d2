"""Names in any script in a sheet of either direction: each stands apart, so that it moves nothing around it."""

from __future__ import annotations

import re
from html.parser import HTMLParser
from typing import Final
from unicodedata import bidirectional

import pytest

from languages import plans
from setwright.render import html, markdown
from setwright.render.language import ENGLISH, Language
from setwright.render.material import Look

VOID: Final = {"meta", "link", "br", "path", "circle", "rect", "line", "input", "img", "use", "wbr", "hr"}

# What a browser shows by itself, one text to a place, with nothing beside it.
ALONE: Final = {"title", "text", "script", "style"}

_ISOLATED: Final = re.compile("\u2068[^\u2069]*\u2069")


class FromRightToLeft(Language):
    """English words in the direction of Hebrew: enough to see what a page makes of it."""

    tag = "he"
    direction = "rtl"


class Unguarded(HTMLParser):
    """Texts that hold right-to-left letters and stand in no element that gives them a direction of their own."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self._open: list[tuple[str, bool]] = []
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag not in VOID:
            guards = tag in ALONE or tag == "bdi" or ("dir", "auto") in attrs or ("class", "about") in attrs
            self._open.append((tag, guards or (bool(self._open) and self._open[-1][1])))

    def handle_endtag(self, tag: str) -> None:
        if tag not in VOID:
            self._open.pop()

    def handle_data(self, data: str) -> None:
        bare = _ISOLATED.sub("", data)
        if any(bidirectional(sign) in {"R", "AL"} for sign in bare) and not self._open[-1][1]:
            self.found.append(data)


def test_every_name_of_a_page_has_a_direction_of_its_own() -> None:
    assert Unguarded(html.page(plans.material())).found == []
    assert ".about p { unicode-bidi: plaintext; }" in html.style(("style.css",))  # remarks, many times over, by style


@pytest.mark.parametrize("language", [ENGLISH, FromRightToLeft()], ids=["ltr", "rtl"])
def test_the_page_runs_as_its_language_does(language: Language) -> None:
    page = html.page(plans.material(), Look(language=language))
    assert f'<html lang="{language.tag}" dir="{language.direction}">' in page


def test_names_beside_numbers_are_kept_apart_in_markdown() -> None:
    for line in markdown.text(plans.material()).splitlines():
        bare = _ISOLATED.sub("", line)
        if line.startswith("- ") and any(bidirectional(sign) in {"R", "AL"} for sign in bare):
            pytest.fail(line)
