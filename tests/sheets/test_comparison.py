"""The page of plans side by side: its tables and drawings, nothing that a name could inject, nothing fetched."""

from __future__ import annotations

import re
from fractions import Fraction
from importlib.resources import files
from itertools import pairwise

import pytest

from setwright.render.html import comparison as sheet
from setwright.report.compare import Comparison, columns, comparison
from setwright.report.spread import spread
from setwright.rules import Promise
from sheets.sample_plans import hostile, long, small
from sheets.test_html import Page, digest

STYLE = "".join(files("setwright.render.html").joinpath(name).read_text() for name in sheet.STYLES)
PROMISE = Promise()


def compared(ceiling: int = 2) -> Comparison:
    plans = [("a.plan", small(), PROMISE), ("b.plan", hostile(), PROMISE), ("c.plan", long(8, 3, 4), PROMISE)]
    return comparison(columns(plans), Fraction(ceiling))


def laid_over_days() -> Comparison:
    return comparison(spread(small(), PROMISE, (1, 2, 3)))


both = pytest.mark.parametrize("made", [compared(), laid_over_days()], ids=["plans", "days"])


@both
def test_names_add_no_element(made: Comparison) -> None:
    read = Page(sheet.page(made))
    assert read.open == []
    assert {tag for tag, _ in read.elements} <= {
        *("html", "head", "meta", "title", "link", "style", "body", "header", "main", "section", "h1", "h2", "h3", "p"),
        *("b", "span", "bdi", "dl", "div", "dt", "dd", "ol", "li", "figure", "svg", "desc", "defs", "pattern", "path"),
        *("circle", "rect", "line", "g", "text", "table", "caption", "thead", "tbody", "tr", "th", "td"),
    }
    assert not [name for _, attributes in read.elements for name in attributes if name.startswith("on")]
    assert '<script>alert("x")</script> & co' in "".join(Page(sheet.page(compared())).text)


@both
def test_nothing_is_fetched_and_the_policy_lets_only_the_style_through(made: Comparison) -> None:
    text = sheet.page(made)
    read = Page(text)
    policy = next(m["content"] for m in read.named("meta") if m.get("http-equiv") == "Content-Security-Policy")
    assert policy == (
        f"default-src 'none'; style-src 'sha256-{digest(STYLE)}'; img-src data:; base-uri 'none'; form-action 'none'"
    )
    assert f"<style>{STYLE}</style>" in text
    assert "style" not in {name for _, attributes in read.elements for name in attributes}
    assert [a["href"] for _, a in read.elements if "href" in a] == ["data:,"]
    assert not [a for _, a in read.elements if "src" in a or "action" in a]
    assert not re.findall(r"url\(|@import", STYLE)


@both
def test_headings_come_in_order_heads_have_a_scope_and_ids_stand_once(made: Comparison) -> None:
    read = Page(sheet.page(made))
    levels = [int(tag[1]) for tag, _ in read.elements if re.fullmatch("h[1-6]", tag)]
    assert (levels[0], levels.count(1)) == (1, 1)
    assert all(after <= before + 1 for before, after in pairwise(levels))
    assert {attributes.get("scope") for attributes in read.named("th")} == {"col", "row"}
    ids = [attributes["id"] for _, attributes in read.elements if "id" in attributes]
    assert len(ids) == len(set(ids))
    assert {one for _, a in read.elements for one in (a.get("aria-labelledby") or "").split()} <= set(ids)


@both
def test_each_table_has_a_caption_and_a_cell_for_every_plan(made: Comparison) -> None:
    text = sheet.page(made)
    tables = re.findall(r'<table class="beside">.*?</table>', text, re.DOTALL)
    assert len(tables) > 5
    for table in tables:
        assert "<caption" in table
        assert table.count('<th scope="col">') == 1 + len(made.columns)
        assert table.count("<td>") == table.count('<th scope="row"') * len(made.columns)


def test_drawings_stand_beside_their_figures_or_are_told_in_words() -> None:
    read = Page(sheet.page(compared()))
    pictures = read.named("svg")
    assert all(each.get("aria-hidden") == "true" or each.get("role") == "img" for each in pictures)
    told = [each for each in pictures if each.get("role") == "img"]
    assert told
    assert len(read.named("desc")) == len(told)
    assert "RPE by week: week 1" in "".join(read.text)


def test_what_lies_past_the_ceiling_is_hatched_and_the_ceiling_drawn() -> None:
    low, high = sheet.page(compared(2)), sheet.page(compared(100))
    assert low.count('class="past"') == low.count('fill="url(#past)"') > 0
    assert 'class="past"' not in high
    assert high.count('class="ceiling"') > 0


def test_bars_stay_in_their_cell() -> None:
    widths = re.findall(r'class="(?:whole|past|range|ceiling)"[^>]*?(?:width|x2)="([\d.]+)%"', sheet.page(compared()))
    assert widths
    assert max(float(width) for width in widths) <= sheet.FULL


def test_one_week_needs_no_plot() -> None:
    assert "<figure" not in sheet.page(laid_over_days())


def test_the_cautions_are_there() -> None:
    assert "Go through a pre-exercise health screening" in sheet.page(compared())
