"""What every callback needs: where the line stands, names, whole numbers, dates."""

from __future__ import annotations

from datetime import date
from typing import Any

from lark import Token, Transformer

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import syntax as codes
from setwright.source import Source, Span
from setwright.suggest import Suggestion
from setwright.syntax import nodes as n
from setwright.syntax.nodes import Name

LARGEST_DIGITS = 12  # more digits than any count, load or year; keeps arithmetic on hostile input small

Children = list[Any]


class Placed(Transformer[Token, n.Node]):
    """The place of the line being read, and what is read off single tokens."""

    def __init__(self) -> None:
        super().__init__(visit_tokens=False)
        self._problems: list[Diagnostic] = []
        self._source = Source("", "")
        self._line = 1
        self._columns: tuple[int, ...] | range = range(0)

    def at_line(self, source: Source, line: int, columns: tuple[int, ...] | range) -> None:
        """What follows stands in `line` of `source`; `columns` maps a column of the parsed text to the file's."""
        self._source, self._line, self._columns = source, line, columns

    def taken_problems(self) -> tuple[Diagnostic, ...]:
        """What was found wrong with values since the last call."""
        taken, self._problems = tuple(self._problems), []
        return taken

    def start(self, children: Children) -> n.Node:
        """The line's node, whichever rule made it."""
        return children[0]  # type: ignore[no-any-return]

    def span(self, first: int, end: int) -> Span:
        """The span of the parsed text's columns `first` to `end`."""
        return Span(self._source, self._line, self._columns[first], self._columns[end])

    def _of(self, token: Token) -> Span:
        return self.span(token.start_pos or 0, token.end_pos or 0)

    def _over(self, children: Children) -> Span:
        spans = [span for child in children if (span := self._span_of(child)) is not None]
        return Span(self._source, self._line, spans[0].start, spans[-1].end)

    def _span_of(self, child: Any) -> Span | None:
        if isinstance(child, Token):
            return self._of(child)
        if isinstance(child, list):
            return self._over(child) if child else None
        return getattr(child, "span", None)

    @property
    def _whole(self) -> Span:
        return self.span(0, len(self._columns) - 1)

    def _name(self, token: Token) -> Name:
        if token.type.startswith("PREFIXED"):
            prefix, _, rest = str(token).partition(".")
            name = unquoted(Token("STRING", rest)) if rest.startswith('"') else rest
            return Name(f"{prefix}.{name}", self._of(token), prefixed=True)
        return Name(unquoted(token) if token.type == "STRING" else str(token), self._of(token))

    def _integer(self, token: Token) -> int:
        if len(token) > LARGEST_DIGITS:
            self._problems.append(codes.NUMBER_TOO_LARGE.at(self._of(token), digits=len(token)))
            return 1
        return int(token)

    def _date(self, token: Token) -> date | None:
        try:
            return date.fromisoformat(str(token))
        except ValueError:
            help_ = _turned_date(str(token))
            self._problems.append(codes.NO_SUCH_DATE.at(self._of(token), date=str(token), help=help_))
            return None


def _turned_date(text: str) -> str | None:
    """Help for a date whose month and day stand in the wrong order."""
    year, month, day = text.split("-")
    try:
        turned = date.fromisoformat(f"{year}-{day}-{month}")
    except ValueError:
        return None
    return Suggestion(f"A date is written year, month, day: `{turned}`.", text, [str(turned)])


def unquoted(token: Token) -> str:
    """The text of a string literal; a backslash keeps the character after it."""
    text = str(token)[1:-1]
    if "\\" not in text:
        return text
    kept: list[str] = []
    characters = iter(text)
    for character in characters:
        kept.append(next(characters, "") if character == "\\" else character)
    return "".join(kept)


def sign_of(token: Token) -> int:
    """+1 or -1."""
    return 1 if token.type == "PLUS" else -1
