"""Cuts a line into tokens: one scan for all terminals, and the parser's state where a word could be several things.

Lark's own contextual lexer compiles an expression for each of some eighty parser states, and that takes longer than
reading a plan. Here every terminal is in one expression. A word of the language is one only where the parser can take
it there; a match that the parser cannot take is tried again among those that it can.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from typing import Any

from lark import Token
from lark.common import LexerConf
from lark.exceptions import UnexpectedCharacters
from lark.lexer import Lexer, LexerState, TerminalDef


class LineLexer(Lexer):
    """Takes the place of lark's contextual lexer; `states` says which terminals each parser state accepts."""

    def __init__(
        self, conf: LexerConf, states: dict[int, Collection[str]], always_accept: Collection[str] = ()
    ) -> None:
        self._accepts = {state: frozenset(accepted) for state, accepted in states.items()}
        self._ignored = frozenset(conf.ignore)
        self._words = {each.pattern.value: each.name for each in conf.terminals if _is_word(each)}
        self._patterns = [(each.name, each.pattern.to_regexp()) for each in _in_order(conf.terminals)]
        alternatives = (f"(?P<{name}>{pattern})" for name, pattern in self._patterns)
        self._scan = re.compile("|".join(alternatives)).match

    def lex(self, lexer_state: LexerState, parser_state: Any) -> Iterator[Token]:
        """The tokens of a line, each cut when the parser asks for it."""
        text = lexer_state.text.text
        position = 0
        while position < len(text):
            match = self._scan(text, position)
            if match is None:
                accepted = self._accepts[parser_state.position]
                raise UnexpectedCharacters(  # type: ignore[no-untyped-call]
                    text, position, 1, position + 1, allowed=set(accepted), state=parser_state
                )
            name, end = match.lastgroup or "", match.end()
            if name not in self._ignored:
                accepted = self._accepts[parser_state.position]
                name, end = self._resolved(text, position, name, end, accepted)
                token = Token(name, text[position:end], position, 1, position + 1, 1, end + 1, end)
                lexer_state.last_token = token
                yield token
            position = end

    def _resolved(self, text: str, start: int, name: str, end: int, accepted: frozenset[str]) -> tuple[str, int]:
        """The terminal and its end: the word of the language that the text is, the match itself, or another match."""
        word = self._words.get(text[start:end])
        if word in accepted:
            return word or name, end
        if name in accepted:
            return name, end
        return next(self._others(text, start, accepted), (word or name, end))

    def _others(self, text: str, start: int, accepted: frozenset[str]) -> Iterator[tuple[str, int]]:
        for value, name in self._words.items():
            if name in accepted and re.compile(rf"{re.escape(value)}(?![\w-])").match(text, start):
                yield name, start + len(value)
        for name, pattern in self._patterns:
            if name in accepted and (match := re.compile(pattern).match(text, start)):
                yield name, match.end()


def _is_word(terminal: TerminalDef) -> bool:
    return terminal.pattern.type == "str" and terminal.pattern.value[0].isalpha()


def _in_order(terminals: Collection[TerminalDef]) -> list[TerminalDef]:
    """Those that are no words, in the order in which lark tries them."""
    marks = [terminal for terminal in terminals if not _is_word(terminal)]
    return sorted(
        marks, key=lambda each: (-each.priority, -each.pattern.max_width, -len(each.pattern.value), each.name)
    )
