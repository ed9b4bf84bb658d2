"""Every text of ours on a sheet goes through the language: in a language of brackets, none stands outside them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from io import BytesIO

import icalendar
import openpyxl
import pytest
from openpyxl.worksheet.worksheet import Worksheet

from languages import plans
from pseudo_language import Pseudo, stray
from setwright.render import html, ics, markdown, xlsx
from setwright.render.html import recording
from setwright.render.material import Look, Material

LOOK = Look(language=Pseudo())
SPOKEN_ATTRIBUTES = {"alt", "aria-label", "aria-description", "aria-roledescription", "title", "placeholder", "label"}


class Texts(HTMLParser):
    """Text nodes in their order, and apart from them the texts of attributes."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.nodes: list[str] = []
        self.attributes: list[str] = []
        self._silent = False
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._silent = tag in {"style", "script"}
        self.attributes += [value for name, value in attrs if name in SPOKEN_ATTRIBUTES and value]

    def handle_endtag(self, tag: str) -> None:
        self._silent = False

    def handle_data(self, data: str) -> None:
        if not self._silent:
            self.nodes.append(data)


MATERIALS = [
    pytest.param(plans.material(), id="athlete"),
    pytest.param(plans.material(athlete=None), id="nobody"),
    pytest.param(plans.undated(), id="undated"),
]


@pytest.mark.parametrize("material", MATERIALS)
def test_html(material: Material) -> None:
    texts = Texts(html.page(material, LOOK))
    assert stray(texts.nodes) == []
    assert [one for one in texts.attributes if stray([one])] == []


def test_recording() -> None:
    """What the script says. The other texts that it is given are names, and words of the lines that it writes."""
    spoken = recording.data(plans.compiled().plan, LOOK.language)["words"]
    assert len(spoken) > 40
    assert [text for text in spoken.values() if stray([text])] == []


def test_style() -> None:
    """Style sheets put marks before texts and names under pages, and no words of their own."""
    sheets = [html.page(plans.material(), LOOK), *(html.style((name,)) for name in ("paper.css", "club.css"))]
    shown = [text for sheet in sheets for text in re.findall(r'content:[^;}]*?"([^"]*)"', sheet)]
    assert [text for text in map(unescaped, shown) if stray([text])] == []


def unescaped(css: str) -> str:
    """A string of CSS as it is shown."""
    return re.sub(r"\\([0-9a-f]{1,6}) ?", lambda found: chr(int(found[1], 16)), css)


@pytest.mark.parametrize("material", MATERIALS)
def test_markdown(material: Material) -> None:
    lines = [line for line in markdown.text(material, LOOK).splitlines() if not re.fullmatch(r"[| :-]+", line)]
    assert [line for line in lines if stray([line])] == []


def test_calendar() -> None:
    made = icalendar.Calendar.from_ical(ics.rendered(plans.material(), LOOK))
    told = [str(part[name]) for part in made.walk() for name in ("summary", "description", "location") if name in part]
    assert len(told) > 8
    assert [line for text in told for line in text.splitlines() if stray([line])] == []


@pytest.mark.parametrize("material", MATERIALS)
def test_workbook(material: Material) -> None:
    book = openpyxl.load_workbook(BytesIO(xlsx.rendered(material, LOOK)))
    told = [text for page in book.worksheets for text in said_on(page)]
    assert len(told) > 300
    assert [text for text in told if stray([text])] == []


def said_on(page: Worksheet) -> Iterator[str]:
    """The name of a page, its cells but for formulas, what it says to who fills it in, its head and foot in print."""
    yield page.title
    for row in page.iter_rows():
        for cell in row:
            if isinstance(cell.value, str) and cell.data_type != "f":
                yield cell.value
            if cell.comment:
                yield cell.comment.text
    for rule in page.data_validations.dataValidation:
        yield from filter(None, (rule.promptTitle, rule.prompt, rule.errorTitle, rule.error))
    for part in (page.oddHeader, page.oddFooter):
        yield from (re.sub(r"&[A-Z]", "", at.text) for at in (part.left, part.center, part.right) if at.text)
