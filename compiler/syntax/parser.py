"""A source becomes a tree of statements; whatever cannot be read becomes a diagnostic, and reading goes on.

Every line is parsed by itself (the grammar is a grammar of lines) and stacked by its indentation. A line that
cannot be read stays in the tree as `Unread`, so that the lines under it are read too and cause no false alarm.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from typing import cast

from lark.exceptions import UnexpectedInput

from setwright.diagnostics import Diagnostic, Fix, Related
from setwright.diagnostics.catalogue import syntax as codes
from setwright.record import record, replace
from setwright.source import Source, Span
from setwright.suggest import either
from setwright.syntax.builder import Builder
from setwright.syntax.complaints import complaint, keyword_texts
from setwright.syntax.nodes import Node, Statement, Unread
from setwright.syntax.outline import Postponed, outline
from setwright.syntax.plain_entries import plain_line
from setwright.syntax.structure import FILE, HOLDS, called, homes, kind_of
from setwright.syntax.tables import line_parser

LONGEST_LINE = 2000  # characters; longer lines are not written by people


@record
class Parsed:
    """What a file says, as far as it could be read."""

    source: Source
    statements: tuple[Statement, ...]
    diagnostics: tuple[Diagnostic, ...]
    postponed: tuple[Postponed, ...] = ()


@dataclass(slots=True)
class _Open:
    """A line whose block is still being read."""

    indent: int
    kind: str
    node: Node
    body: list[Statement] = field(default_factory=list)


class LineReader:
    """Reads files line by line; it holds the parser, which is made once."""

    def __init__(self) -> None:
        self._builder = Builder()
        self._parser = line_parser(self._builder)

    @cached_property
    def words(self) -> frozenset[str]:
        """Every word of the language."""
        return frozenset(keyword_texts(self._parser).values())

    def read(self, source: Source, numbers: Iterable[int] | None = None, *, is_log: bool = False) -> Parsed:
        """A whole file, or only the lines of some numbers. Never raises for what the file holds.

        In a log, plain entries of sessions are read by a pattern, and become `DoneEntry`s.
        """
        stack = _Stack(source)
        in_session = False
        for number in range(1, len(source.lines) + 1) if numbers is None else numbers:
            line = source.line(number)
            content = line.lstrip(" \t")
            if content and not content.isspace() and content[0] != "#":
                indent = line[: len(line) - len(content)]
                content = content.rstrip()
                if not indent:
                    in_session = is_log and content.startswith("session ")
                node = plain_line(source, number, len(indent), content) if in_session and "\t" not in indent else None
                node = node or self._line(source, number, indent, content, stack.diagnostics)
                stack.push(None if "\t" in indent else len(indent), node)
        return Parsed(source, stack.close(), (*stack.diagnostics, *self._builder.taken_problems()))

    def read_library(self, source: Source) -> Parsed:
        """A file of the shipped library: its exercises are left for when they are asked for."""
        postponed, others = outline(source)
        return replace(self.read(source, others), postponed=postponed)

    def read_postponed(self, postponed: Postponed) -> Statement:
        """An exercise that was left for later."""
        return self.read(postponed.span.source, postponed.lines).statements[0]

    def _line(self, source: Source, number: int, indent: str, content: str, diagnostics: list[Diagnostic]) -> Node:
        whole = Span(source, number, len(indent), len(indent) + len(content))
        if "\t" in indent:
            tabs = Span(source, number, indent.index("\t"), len(indent))
            diagnostics.append(codes.TAB_INDENT.at(tabs, fix=Fix(tabs, tabs.text.replace("\t", "  "))))
        if len(content) > LONGEST_LINE:
            diagnostics.append(codes.LINE_TOO_LONG.at(whole, length=len(content), most=LONGEST_LINE))
            return Unread(whole)
        text, columns = normalised(content, len(indent))
        self._builder.at_line(source, number, columns)
        try:
            return cast("Node", self._parser.parse(text))
        except UnexpectedInput as error:
            diagnostics.append(complaint(error, text, self._builder.span, self._parser))
            return Unread(whole)


def normalised(content: str, shift: int) -> tuple[str, tuple[int, ...] | range]:
    """The text as NFC, with blanks of any kind as spaces, and the file's column of each of its characters."""
    if content.isascii():
        return content, range(shift, shift + len(content) + 1)
    spaced = "".join(" " if character in "\u00a0\u202f\u2009" else character for character in content)
    if unicodedata.is_normalized("NFC", spaced):
        return spaced, range(shift, shift + len(spaced) + 1)
    text, columns = "", []
    for start, end in _clusters(spaced):
        composed = unicodedata.normalize("NFC", spaced[start:end])
        text += composed
        columns.extend([shift + start] * len(composed))
    return text, (*columns, shift + len(spaced))


def _clusters(text: str) -> Iterator[tuple[int, int]]:
    """Stretches of a base character with its combining marks."""
    start = 0
    for index in range(1, len(text)):
        if not unicodedata.combining(text[index]):
            yield start, index
            start = index
    yield start, len(text)


class _Stack:
    """Lines stacked by indentation, checked against `HOLDS` as they come."""

    def __init__(self, source: Source) -> None:
        self.diagnostics: list[Diagnostic] = []
        self._open = [_Open(-1, FILE, Unread(Span(source, 1, 0, 0)))]
        self._step = 2

    def push(self, written: int | None, node: Node) -> None:
        """Place the next line. Where its indentation cannot be measured (None), it goes where its kind belongs."""
        indent = self._likely_indent(kind_of(node)) if written is None else written
        last_indent = self._open[-1].indent
        while self._open[-1].indent >= indent:
            last_indent = self._open[-1].indent
            self._fold()
        uneven = last_indent > indent and self._open[-1].indent != indent and bool(self._open[-1].body)
        if uneven:
            self._complain_of_indent(indent, last_indent, node)
            indent = last_indent  # so that the lines after it line up
        elif 0 <= self._open[-1].indent < indent:
            self._step = indent - self._open[-1].indent
        # Under a line that could not be read nothing is out of place.
        kind = "unread" if self._open[-1].kind == "unread" else kind_of(node)
        if not self._may_stand(kind, node, silent=uneven):
            node, kind = Unread(node.span), "unread"
        self._open.append(_Open(indent, kind, node))

    def close(self) -> tuple[Statement, ...]:
        """All statements of the file."""
        while len(self._open) > 1:
            self._fold()
        return tuple(self._open[0].body)

    def _fold(self) -> None:
        done = self._open.pop()
        self._open[-1].body.append(Statement(done.node, tuple(done.body)))

    def _complain_of_indent(self, indent: int, expected: int, node: Node) -> None:
        if kind_of(node) != "unread":
            self.diagnostics.append(codes.UNEVEN_INDENT.at(node.span, indent=indent, expected=expected))

    def _likely_indent(self, kind: str) -> int:
        for index in range(len(self._open) - 1, -1, -1):
            if kind in HOLDS.get(self._open[index].kind, ()):
                inner = self._open[index + 1 :]
                return inner[0].indent if inner else max(0, self._open[index].indent + self._step)
        return max(0, self._open[-1].indent)

    def _may_stand(self, kind: str, node: Node, *, silent: bool) -> bool:
        """`silent` where the line's place was complained of already."""
        parent = self._open[-1]
        if kind == "unread" or kind in HOLDS.get(parent.kind, ()):
            return True
        if silent:
            return False
        places = homes(kind)
        under = either([called(place) for place in places])
        help_ = f"It stands at the start of a line of {under}." if places == (FILE,) else f"It stands under {under}."
        related = () if parent.kind == FILE else (Related(parent.node.span, "the line it is indented under"),)
        self.diagnostics.append(
            codes.MISPLACED_LINE.at(
                node.span, line=called(kind), parent=called(parent.kind), help=help_, related=related
            )
        )
        return False
