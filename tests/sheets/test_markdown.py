"""Markdown: one golden, and names that cannot become markup."""

from __future__ import annotations

import re

import pytest
from markdown_it import MarkdownIt
from markdown_it.token import Token
from syrupy.assertion import SnapshotAssertion

from setwright.plan import Plan
from setwright.render import markdown as sheet
from setwright.render.material import Material
from sheets.sample_plans import hostile, long, reported, small


def text(plan: Plan) -> str:
    made = reported(plan)
    return sheet.text(Material(made.plan, made.volume, made.overview))


def parsed(source: str) -> list[Token]:
    """The text as a CommonMark parser with GitHub's tables and HTML switched on reads it."""
    return MarkdownIt("commonmark", {"html": True}).enable("table").parse(source)


def inline(tokens: list[Token]) -> set[str]:
    return {child.type for token in tokens for child in token.children or ()}


def test_small_plan(markdown_snapshot: SnapshotAssertion) -> None:
    assert text(small()) == markdown_snapshot


@pytest.mark.parametrize(
    "written",
    [
        "<script>alert(1)</script>",
        "a | b",
        "*bold* _em_ `code`",
        "[x](javascript:alert(1))",
        "![x](y)",
        "&lt;b&gt;",
        "# head",
        "- item",
        "+ item",
        "1. item",
        "> quote",
        "---",
        "===",
        "~~gone~~",
        "back\\slash",
        "$x$",
        "@someone #12",
        "https://example.org www.example.org",
        "two\nlines\r\nthree",
    ],
)
def test_a_persons_text_is_shown_as_written(written: str) -> None:
    tokens = parsed(f"- {sheet.escape(written)}\n")
    kinds = [token.type for token in tokens]
    assert kinds == [
        *("bullet_list_open", "list_item_open", "paragraph_open", "inline", "paragraph_close"),
        *("list_item_close", "bullet_list_close"),
    ]
    children = tokens[3].children or []
    assert {child.type for child in children} <= {"text", "text_special"}
    assert "".join(child.content for child in children) == re.sub(r"\s+", " ", written)


def test_hostile_names_break_no_table_and_add_no_html() -> None:
    tokens = parsed(text(hostile()))
    assert not {token.type for token in tokens} & {"html_block", "fence", "code_block"}
    assert inline(tokens) <= {"text", "text_special", "strong_open", "strong_close", "em_open", "em_close"}
    rows = [token.type for token in tokens if token.type in ("tr_open", "td_open", "th_open")]
    assert set(cells_of_session_rows(tokens)) == {7}
    assert rows.count("tr_open") > 30


def test_a_year_of_weeks_has_tables_that_fit() -> None:
    source = text(long(52, 1, 1))
    widths = [line.count("|") for line in source.splitlines() if line.startswith("| Muscle")]
    assert widths == [15, 15, 15, 15]


def cells_of_session_rows(tokens: list[Token]) -> list[int]:
    """How many cells the rows under a `Movement` head have."""
    counts: list[int] = []
    count, wanted, head = 0, False, ""
    for token in tokens:
        match token.type:
            case "table_open":
                head = ""
            case "tr_open":
                count = 0
            case "inline":
                head = head or token.content
            case "th_open" | "td_open":
                count += 1
            case "tr_close" if "Movement" in head:
                wanted = True
                counts.append(count)
    assert wanted
    return counts
