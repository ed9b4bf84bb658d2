"""One line of the language written in one way: marks, blanks, and the cells that lines may be aligned by.

Comes in: the text of a line that can be read. Goes out: `Written`, whose cells hold the line's tokens with the blanks
between them. Quoted text and comments are left as they are.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import Final, cast

from lark import Lark, Token, Tree

from setwright.record import record

# Signs that stand for others.
_SAID: Final = {"→": "->", "…": "...", "≤": "<=", "≥": ">=", "−": "-", "×": "x"}
_TIGHT_BEFORE: Final = frozenset({"COMMA", "RPAR", "RSQB", "PERCENT", "PER_SIDE", "PER_WEEK", "DOT"})
_TIGHT_AFTER: Final = frozenset({"LPAR", "LSQB", "DOT"})
_CALLED: Final = frozenset({"WORD", "PREFIXED_WORD"})
# Rules in which a sign or a mark joins what stands on both sides of it.
_JOINS: Final = frozenset({"value", "cluster", "plate"})
# Rules in which a sign belongs to the number after it: `@ -8%`, `emphasis lats +2 sets`.
_SIGNS: Final = frozenset({"change", "emphasis"})
# Lines with a name or weeks before a colon, which may be aligned at what follows it.
_NAMED: Final = frozenset({"entry", "add_entry", "week_entry", "best"})


@record
class Written:
    """A line: the rule of the grammar that it follows, its cells by the name of their column, and its comment."""

    rule: str
    cells: tuple[tuple[str, str], ...]
    comment: str


@record
class _Mark:
    """A token with the rules around it, the nearest first."""

    token: Token
    rules: tuple[str, ...]


def written(parser: Lark, text: str, original: str) -> Written:
    """The line that `text` is; `original` is the same line character for character, as the file has it.

    Raises lark's `UnexpectedInput` where the line cannot be read.
    """
    reading = parser.parse_interactive(text)
    tokens = list(reading.exhaust_lexer())
    tree = cast("Tree[Token]", reading.feed_eof())  # type: ignore[no-untyped-call]
    places = dict(_places(tree, ()))
    marks = [_Mark(token, places.get(token.start_pos or 0, ())) for token in tokens]
    line = tree.children[0]
    assert isinstance(line, Tree)
    rule = str(line.data)
    end = tokens[-1].end_pos or 0
    return Written(rule, tuple(_cells(rule, marks, original)), original[end:].strip())


def _places(node: Tree[Token], around: tuple[str, ...]) -> Iterator[tuple[int, tuple[str, ...]]]:
    rules = (str(node.data), *around)
    for child in node.children:
        if isinstance(child, Tree):
            yield from _places(child, rules)
        else:
            yield child.start_pos or 0, rules


def _cells(rule: str, marks: list[_Mark], original: str) -> Iterator[tuple[str, str]]:
    """The line's tokens joined, cut where a run of such lines is aligned."""
    cell, column = "", ""
    for last, mark in pairwise((None, *marks)):
        assert mark is not None
        begun = _column(rule, last, mark, column)
        if last is not None and begun != column:
            yield column, cell
            cell = ""
        elif last is not None and _is_apart(rule, last, mark):
            cell += " "
        column = begun
        cell += _text(mark.token, original)
    yield column, cell


def _column(rule: str, last: _Mark | None, mark: _Mark, column: str) -> str:
    """The column of a run that a token stands in: `column`, that of the token before it, or a new one."""
    if rule in _NAMED:
        # The first colon ends the name; those in brackets come later.
        return "said" if last is not None and last.token.type == "COLON" else column
    return _column_of_rule(mark, column) if rule == "rule" else column


def _column_of_rule(mark: _Mark, column: str) -> str:
    """Severity, measure, whom it is for, bound, where, reason."""
    match mark.token.type, column:
        case "MUST" | "SHOULD", _:
            return "severity"
        case "WORD", "severity":
            return "measure"
        case "STRING", _ if mark.rules[:1] == ("rule",):
            return "reason"
        case "IN" | "AFTER", _:
            return "where"
        case _:
            pass
    if column != "where" and (mark.token.type == "COMPARE" or "bound" in mark.rules):
        return "bound"
    return "subject" if column == "measure" else column


def _is_apart(rule: str, last: _Mark, mark: _Mark) -> bool:
    """Whether a blank stands between two tokens."""
    before, after = last.token.type, mark.token.type
    if after in _TIGHT_BEFORE or before in _TIGHT_AFTER:
        return False
    if after == "LPAR":
        return before not in _CALLED
    if after == "COLON":
        return rule in ("rule", "waive")
    if before in ("PLUS", "MINUS", "X") or after in ("PLUS", "MINUS", "X"):
        return _is_sign_apart(last, mark)
    return True


def _is_sign_apart(last: _Mark, mark: _Mark) -> bool:
    sign = last if last.token.type in ("PLUS", "MINUS", "X") else mark
    rules = sign.rules[1:] if sign.rules[:1] == ("sign",) else sign.rules
    if rules[:1] and rules[0] in _JOINS:
        return False
    return sign is mark or not (rules[:1] and rules[0] in _SIGNS)


def _text(token: Token, original: str) -> str:
    match token.type:
        case "STRING" | "PREFIXED_NAME":
            return original[token.start_pos or 0 : token.end_pos or 0]
        case "NAME":
            return " ".join(token.split())
        case "X":
            return "x"
        case "PER_SIDE" | "PER_WEEK":
            return token.replace(" ", "")
        case _:
            return _SAID.get(str(token), str(token))
