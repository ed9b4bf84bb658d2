"""The shipped progressions: each is sound, says where it comes from, and its rules can be read off a sheet."""

from __future__ import annotations

import re

import pytest

from setwright.files import library_folder
from setwright.link.library import Library
from setwright.link.progressions import check_progression
from setwright.source import Source
from setwright.syntax import LineReader
from setwright.syntax.nodes import Head, Statement

TEXT = (library_folder() / "progressions.plan").read_text(encoding="utf-8")
READER = LineReader()
STATEMENTS = READER.read(Source("stdlib/progressions.plan", TEXT)).statements


def name(statement: Statement) -> str:
    assert isinstance(statement.node, Head)
    return statement.node.name.text


@pytest.mark.parametrize("statement", STATEMENTS, ids=name)
def test_it_is_sound(statement: Statement) -> None:
    problems: list[object] = []
    check_progression(statement, Library(READER), problems)  # type: ignore[arg-type]
    assert problems == []


def test_each_says_where_it_comes_from() -> None:
    for comment, called in re.findall(r"((?:^#.*\n)+)progression ([\w-]+)", TEXT, re.MULTILINE):
        assert re.search(r"no source|Baechle and Earle|Ratamess|Field Manual", comment), called


def test_all_common_methods_are_there() -> None:
    assert [name(statement) for statement in STATEMENTS] == [
        "load-each-exposure",
        "two-over-in-two",
        "all-over-in-two",
        "double-climb",
        "top-in-every-set",
        "sets-then-load",
        "effort-steps",
        "effort-waves",
        "percent-steps",
        "percent-waves",
    ]
