"""Highlighters made from the grammar: that they are up to date, know every word, and read every plan."""

from __future__ import annotations

import json
import re
from importlib.metadata import entry_points
from itertools import chain
from pathlib import Path

import pytest
from pygments.lexers import get_lexer_by_name, get_lexer_for_filename
from pygments.token import Comment, Error, Keyword, Name, Number, String

from setwright.editor.highlighters import files, textmate, words
from setwright.editor.pygments_lexer import PlanLexer
from setwright.syntax import LineReader

ROOT = Path(__file__).parents[2]
TABLE = words()
EVERY_WORD = (*TABLE.starts, *TABLE.units, *TABLE.others)
PLANS = sorted(chain((ROOT / "examples").glob("*/*.plan"), (ROOT / "stdlib").rglob("*.plan")))
RULES = json.loads(textmate())["repository"]


@pytest.mark.parametrize(("file", "text"), files(), ids=[file.name for file, _ in files()])
def test_the_files_are_up_to_date(file: Path, text: str) -> None:
    assert file.read_text(encoding="utf-8") == text, "run `python -m setwright.editor.highlighters`"


def test_the_table_holds_every_word_once() -> None:
    assert sorted(EVERY_WORD) == sorted(LineReader().words)


@pytest.mark.parametrize("word", EVERY_WORD)
def test_both_highlight_every_word(word: str) -> None:
    line = f"3 {word}" if word in TABLE.units else word
    tokens = [(kind, text) for kind, text in PlanLexer().get_tokens(line) if text == word]
    assert tokens
    assert all(kind in Keyword for kind, _ in tokens)
    rules = [RULES[name]["match"] for name in ("unit", "start", "word")]
    assert any((found := re.search(rule, line)) and found[0] == word for rule in rules)


@pytest.mark.parametrize("plan", PLANS, ids=lambda plan: plan.stem)
def test_every_plan_is_read_without_errors_and_without_loss(plan: Path) -> None:
    text = plan.read_text(encoding="utf-8")
    tokens = list(PlanLexer(stripnl=False).get_tokens(text))
    assert [value for kind, value in tokens if kind is Error] == []
    assert "".join(value for _, value in tokens) == text


def test_what_a_line_is_made_of() -> None:
    line = '  must weekly-sets for chest 10-20 "A reason."  # why\n      Back Squat: 3 x 8 @ 70%\n'
    found = {value: kind for kind, value in PlanLexer(stripnl=False).get_tokens(line)}
    assert found["must"] is Keyword.Declaration
    assert found["for"] is Keyword
    assert found["%"] is Keyword.Type
    assert found["20"] is Number.Integer
    assert found['"A reason."'] is String.Double
    assert found["# why"] is Comment.Single
    assert found["Squat"] is Name.Class


@pytest.mark.parametrize("name", ["word", "start", "unit", "number", "operator"])
def test_expressions_that_python_reads_as_well(name: str) -> None:
    re.compile(RULES[name]["match"])


def test_pygments_finds_the_lexer() -> None:
    assert "setwright" in {each.name for each in entry_points(group="pygments.lexers")}
    assert isinstance(get_lexer_by_name("setwright"), PlanLexer)
    assert isinstance(get_lexer_for_filename("winter.plan"), PlanLexer)
