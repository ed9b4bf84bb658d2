"""The grammar by itself: free of conflicts, its tables current, each of its words sayable to a coach."""

from __future__ import annotations

import json
from importlib.resources import files

import pytest
from lark import Lark

from setwright.syntax.builder import Builder
from setwright.syntax.complaints import PLAIN_WORDS, keyword_texts
from setwright.syntax.tables import GRAMMAR, TABLES, fingerprint, line_parser

FOLDER = files("setwright.grammar")
TEXT = FOLDER.joinpath(GRAMMAR).read_text(encoding="utf-8")
TERMINALS = {terminal.name: terminal for terminal in Lark(TEXT, parser="lalr").terminals}

# Never expected: what is left out while reading, and parts of other terminals.
UNSAID = {"COMMENT", "__IGNORE_0", "CAPITAL", "REST_OF_WORD", "NUMBER_AT_END"}


def test_tables_are_of_this_grammar() -> None:
    kept = json.loads(FOLDER.joinpath(TABLES).read_text(encoding="utf-8"))
    assert kept["grammar"] == fingerprint(TEXT), "run `python -m setwright.syntax.tables`"


def test_grammar_has_no_conflict() -> None:
    """`strict` (with interegular) also refuses terminals that could match the same text in one state."""
    Lark(TEXT, parser="lalr", lexer="contextual", strict=True)


@pytest.mark.parametrize("name", sorted(TERMINALS.keys() - UNSAID))
def test_each_terminal_has_plain_words(name: str) -> None:
    """A word of the language is shown as it is, anything else has an entry of its own."""
    is_said = name in PLAIN_WORDS or name in keyword_texts(line_parser(Builder()))
    assert is_said, f"{name} would be shown by its name"


def test_plain_words_are_of_terminals_that_exist() -> None:
    assert PLAIN_WORDS.keys() - {"$END"} <= TERMINALS.keys()
