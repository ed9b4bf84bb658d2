"""A whole plan in each language: no English is left in it, and names stay as they were written."""

from __future__ import annotations

import re
from typing import Final

import pytest

from languages import plans
from languages.test_every_text import Texts
from pseudo_language import messages
from setwright.render import csv, html, json, markdown
from setwright.render.language import ENGLISH, LANGUAGES, language
from setwright.render.material import PLAIN, Look

OTHERS: Final = tuple(tag for tag in LANGUAGES if tag != ENGLISH.tag)
_WORD: Final = re.compile(r"\w{2,}")


@pytest.fixture(scope="module", params=OTHERS)
def look(request: pytest.FixtureRequest) -> Look:
    return Look(language=language(request.param))


def english(look: Look) -> set[str]:
    """Messages that read otherwise in the language, without those that are filled in."""
    singles = {form for one in messages() for form in ([one.id] if isinstance(one.id, str) else one.id)}
    return {one for one in singles if "{" not in one and look.language.text(one) != one and _WORD.search(one)}


def left_over(texts: list[str], look: Look) -> list[str]:
    """English messages that stand alone, and those of three words and more that stand anywhere."""
    whole, everything = {text.strip() for text in texts}, "\n".join(texts)
    left = english(look)
    return sorted(one for one in left if one in whole or (len(one.split()) > 2 and one in everything))


def test_html(look: Look) -> None:
    texts = Texts(html.page(plans.material(), look))
    assert left_over([*texts.nodes, *texts.attributes], look) == []


def test_markdown(look: Look) -> None:
    text = markdown.text(plans.material(), look)
    cells = [cell.strip(" #*>-") for line in text.splitlines() for cell in re.split(r"[|:]", line)]
    assert left_over(cells, look) == []


def test_names_stay_as_they_were_written(look: Look) -> None:
    text = markdown.text(plans.material(), look)
    for name in ("תוכנית הנמל", "מועדון החתירה", "נועה", "סקוואט", "מכרעים", "הביאו מים", "חגורה"):
        assert name in text


def test_the_page_says_its_language(look: Look) -> None:
    page = html.page(plans.material(), look)
    assert f'<html lang="{look.language.tag}" dir="{look.language.direction}">' in page


def test_numbers_are_the_languages_own(look: Look) -> None:
    text = markdown.text(plans.material(), look)
    assert "62,5 kg" in text
    assert re.search(r"\d\.\d+ (kg|%)", text) is None


def test_data_is_the_same_in_every_language(look: Look) -> None:
    material = plans.material()
    for output in (csv, json):
        assert output.rendered(material, look) == output.rendered(material, PLAIN)
