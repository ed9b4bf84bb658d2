"""Templates as people choose them: what each is for, its parameters with their defaults, its lines.

Comes in: the compiler's `Library`. Goes out: a `Template` for each that it declares.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.link.parameters import type_of
from setwright.record import record
from setwright.syntax.nodes import BlockHead, DayHead, Head

if TYPE_CHECKING:
    from collections.abc import Iterator

    from setwright.link.library import Declared, Library
    from setwright.source import Span
    from setwright.syntax.nodes import Argument, Statement


@record
class Parameter:
    """One gap of a template: its default as it is written, and what kind of value that is; None without a default."""

    name: str
    default: str | None
    kind: str | None

    def __str__(self) -> str:
        return self.name if self.default is None else f"{self.name} = {self.default}"


@record
class Template:
    """A template; `about` is the first line of the comment over it, `first_day` its first block and day."""

    name: str
    about: str
    parameters: tuple[Parameter, ...]
    first_day: tuple[str, str]
    span: Span


def templates(library: Library) -> tuple[Template, ...]:
    """All that the library declares, in its order."""
    return tuple(_template(declared, library.statement(declared)) for declared in library.templates.values())


def comment_over(span: Span) -> tuple[str, ...]:
    """The lines of the comment that stands right over a declaration."""
    above = span.source.lines[: span.line - 1]
    start = len(above)
    while start and above[start - 1].startswith("#"):
        start -= 1
    return tuple(above[start:])


def _template(declared: Declared, statement: Statement) -> Template:
    head = statement.node
    assert isinstance(head, Head)
    over = comment_over(declared.span)
    about = over[0].lstrip("# ") if over else ""
    return Template(
        declared.name, about, tuple(map(_parameter, head.arguments)), next(_days(statement), ("", "")), declared.span
    )


def _parameter(parameter: Argument) -> Parameter:
    value = parameter.value
    if value is None:
        return Parameter(parameter.name.text, None, None)
    return Parameter(parameter.name.text, value.span.text, type_of(value))


def _days(statement: Statement) -> Iterator[tuple[str, str]]:
    for block in statement.body:
        if isinstance(block.node, BlockHead):
            for day in block.body:
                if isinstance(day.node, DayHead):
                    yield block.node.name.text, day.node.slot.text
