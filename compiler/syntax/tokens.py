"""The tokens of a line that may be half typed, and what the grammar takes after them.

Comes in: the text of a line. Goes out: its tokens as far as it can be read, and the words that could come next.
"""

from __future__ import annotations

import re
from functools import cached_property, lru_cache

from lark.exceptions import UnexpectedInput

from setwright.record import record
from setwright.syntax.complaints import keyword_texts
from setwright.syntax.parser import normalised
from setwright.syntax.tables import line_parser

_MOST_KEPT = 4096
_COMMENT = re.compile(r'(?:[^"#]|"(?:[^"\\]|\\.)*")*(#.*)')


@record
class LineToken:
    """A terminal of the grammar, and its first and last column in the line as it was written."""

    terminal: str
    start: int
    end: int


class TokenReader:
    """Holds a parser that builds nothing, which is made once."""

    def __init__(self) -> None:
        self._parser = line_parser(None)
        self.tokens = lru_cache(_MOST_KEPT)(self._tokens)  # lines that were not touched are not read again

    @cached_property
    def words(self) -> dict[str, str]:
        """The text of each terminal that is a fixed word, and of the signs for percents."""
        return {**keyword_texts(self._parser), "PERCENT": "%"}

    def _tokens(self, line: str) -> tuple[LineToken, ...]:
        """The tokens of the line up to where it cannot be read, and its comment."""
        content = line.lstrip(" \t")
        text, columns = normalised(content, len(line) - len(content))
        found: list[LineToken] = []
        reading = self._parser.parse_interactive(text)
        try:
            for token in reading.iter_parse():
                found.append(LineToken(token.type, columns[token.start_pos or 0], columns[token.end_pos or 0]))
        except UnexpectedInput:
            pass
        comment = _COMMENT.match(line)
        return (*found, LineToken("COMMENT", comment.start(1), len(line))) if comment else tuple(found)

    def expected(self, before: str) -> frozenset[str]:
        """The terminals that may follow the beginning of a line; none where it cannot be read."""
        reading = self._parser.parse_interactive(normalised(before.strip(), 0)[0])
        try:
            reading.exhaust_lexer()
        except UnexpectedInput:
            return frozenset()
        return frozenset(reading.accepts())  # type: ignore[no-untyped-call]
