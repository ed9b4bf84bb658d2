"""Positions as editors count them, against Python's own encoders."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lsprotocol import types as lsp

from setwright.editor.positions import Positions, column_at, units_before
from setwright.editor.session import line_before
from setwright.source import Source, Span

ENCODERS = {"utf-8": ("utf-8", 1), "utf-16": ("utf-16-le", 2), "utf-32": ("utf-32-le", 4)}
LINES = st.text(
    st.one_of(st.characters(exclude_categories=["Cs"], exclude_characters="\n\r"), st.sampled_from("🛶é\u0301‍👩")),
    max_size=40,
)


@given(line=LINES, data=st.data(), encoding=st.sampled_from(sorted(ENCODERS)))
def test_units_are_those_of_the_encoder(line: str, data: st.DataObject, encoding: str) -> None:
    column = data.draw(st.integers(0, len(line)))
    codec, width = ENCODERS[encoding]
    assert units_before(line, column, encoding) == len(line[:column].encode(codec)) // width


@given(line=LINES, data=st.data(), encoding=st.sampled_from(sorted(ENCODERS)))
def test_there_and_back(line: str, data: st.DataObject, encoding: str) -> None:
    column = data.draw(st.integers(0, len(line)))
    assert column_at(line, units_before(line, column, encoding), encoding) == column


@given(line=LINES, units=st.integers(0, 200), encoding=st.sampled_from(sorted(ENCODERS)))
def test_any_number_of_units_is_a_column(line: str, units: int, encoding: str) -> None:
    column = column_at(line, units, encoding)
    assert 0 <= column <= len(line)
    # within a character it is that character's; past the end it is the end
    assert units_before(line, column, encoding) <= units


@given(lines=st.lists(LINES, min_size=1, max_size=6), data=st.data())
def test_spans_and_ranges(lines: list[str], data: st.DataObject) -> None:
    source = Source("a.plan", "\n".join(lines))
    number = data.draw(st.integers(1, len(lines)))
    start = data.draw(st.integers(0, len(lines[number - 1])))
    end = data.draw(st.integers(start, len(lines[number - 1])))
    found = Positions().range(Span(source, number, start, end))
    assert Positions().place(source, found.start) == (number, start)
    assert Positions().place(source, found.end) == (number, end)


@pytest.mark.parametrize(
    ("line", "column", "units"),
    [("abc", 2, 2), ("🛶b", 1, 2), ("e\u0301b", 2, 2), ("👩‍🚀b", 3, 5), ("é", 1, 1)],
)
def test_by_hand(line: str, column: int, units: int) -> None:
    assert units_before(line, column) == units
    assert column_at(line, units) == column


def test_within_a_pair_of_surrogates_it_is_the_character() -> None:
    assert column_at("🛶b", 1) == 0


def test_a_place_past_the_text_is_its_end() -> None:
    assert Positions().place(Source("a.plan", "abc"), lsp.Position(0, 99)) == (1, 3)
    assert Positions().place(Source("a.plan", "abc"), lsp.Position(7, 3)) == (8, 0)


@given(
    before=st.lists(st.sampled_from("abcd"), max_size=8),
    after=st.lists(st.sampled_from("abcd"), max_size=8),
    data=st.data(),
)
def test_a_line_is_found_again_where_it_is_the_same(before: list[str], after: list[str], data: st.DataObject) -> None:
    old, new = Source("a", "\n".join(before)), Source("a", "\n".join(after))
    line = data.draw(st.integers(1, len(new.lines)))
    found = line_before(old, new, line)
    assert found is None or old.line(found) == new.line(line) or len(old.lines) == len(new.lines)


def test_lines_below_one_that_came_are_found() -> None:
    old, new = Source("a", "a\nb\nc"), Source("a", "a\nx\nb\nc")
    assert [line_before(old, new, line) for line in (1, 2, 3, 4)] == [1, None, 2, 3]
