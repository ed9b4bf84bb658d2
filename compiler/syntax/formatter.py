"""A file in the one style: two spaces a level, one blank between words, days and rules aligned, comments kept.

Comes in: a `Source`. Goes out: its text in that style, or the diagnostics of what cannot be read. What a file means is
never changed, and a file that is in the style already stays as it is.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import groupby
from typing import Final

from lark import Lark

from setwright.diagnostics import Diagnostic, Severity
from setwright.diagnostics.printers.characters import width
from setwright.record import record, replace
from setwright.source import Source
from setwright.syntax.nodes import Statement
from setwright.syntax.parser import LineReader, normalised
from setwright.syntax.spacing import Written, written
from setwright.syntax.structure import kind_of
from setwright.syntax.tables import line_parser

STEP: Final = "  "
MOST_BLANK: Final = 2  # lines between two others
# Columns stand at multiples of so many characters, so that a name a little longer moves nothing else.
GRID: Final = 4
LONGEST_NAME: Final = 26  # a longer name sticks out and moves nobody
LONGEST_ALIGNED: Final = 116  # characters that a run of rules may take across
LAST_COMMENT_COLUMN: Final = 72

_DAYS: Final = ("day", "session")
_GROUPS: Final = ("superset", "circuit")
_ENTRIES: Final = ("movement", "add")
# Of a rule; where it holds and why follow each other, and are one column.
_COLUMNS: Final = ("severity", "measure", "subject", "bound", "tail")


class Formatter:
    """Holds the parser, which is made once."""

    def __init__(self) -> None:
        self._reader = LineReader()
        self._parser = line_parser(None)

    def formatted(self, source: Source) -> str | tuple[Diagnostic, ...]:
        """The text of the file in the one style; the errors where something cannot be read."""
        parsed = self._reader.read(source)
        wrong = tuple(found for found in parsed.diagnostics if found.severity is Severity.ERROR)
        if wrong:
            return wrong
        places = {place.line: place for place in _places(parsed.statements, 0, "")}
        return _text(_aligned(tuple(_rows(source, places, self._parser))))


@record
class _Place:
    """Where a line stands in the tree; lines of the same `run` are aligned with each other."""

    line: int
    column: int  # as written
    depth: int
    run: str


@record
class _Row:
    """A line to be written: one that can be read, a comment by itself, or a blank (neither)."""

    depth: int
    run: str = ""
    written: Written | None = None
    comment: str = ""
    text: str = ""  # the cells, joined


# ---- where lines stand ---------------------------------------------------------------------------


def _places(statements: Iterable[Statement], depth: int, run: str) -> Iterator[_Place]:
    """Every line of the tree. A day's movements are one run, those of its supersets among them."""
    for statement in statements:
        kind, span = kind_of(statement.node), statement.node.span
        own = run if kind in (*_ENTRIES, "week", "best") else kind if kind == "rule" else ""
        yield _Place(span.line, span.start, depth, own)
        inner = run if kind in _GROUPS else f"{kind} {span.line}"
        yield from _places(statement.body, depth + 1, inner)


def _rows(source: Source, places: Mapping[int, _Place], parser: Lark) -> Iterator[_Row]:
    """The file's lines; a comment by itself goes with the lines that it was written beside."""
    following = _following(source, places)
    above: list[_Place] = []
    for number in range(1, len(source.lines) + 1):
        line = source.line(number)
        content = line.strip()
        place = places.get(number)
        if place is not None:
            above = [*(other for other in above if other.depth < place.depth), place]
            text, _ = normalised(content, 0)
            yield _Row(place.depth, place.run, written(parser, text, _same_length(content, text)))
        elif content.startswith("#"):
            column = len(line) - len(line.lstrip())
            yield _Row(_depth_of_comment(column, above, following.get(number)), comment=content)
        else:
            yield _Row(0)


def _same_length(content: str, text: str) -> str:
    """The line as written; as it was composed where that changed its length."""
    return content if len(content) == len(text) else text


def _following(source: Source, places: Mapping[int, _Place]) -> dict[int, _Place]:
    """For each line without a place the next one that has one."""
    found: dict[int, _Place] = {}
    after: _Place | None = None
    for number in range(len(source.lines), 0, -1):
        if number in places:
            after = places[number]
        elif after is not None:
            found[number] = after
    return found


def _depth_of_comment(column: int, above: Sequence[_Place], after: _Place | None) -> int:
    if after is not None and after.column == column:
        return after.depth
    beside = [place.depth for place in above if place.column <= column]
    return beside[-1] if beside else 0


# ---- columns -------------------------------------------------------------------------------------


def _aligned(rows: Sequence[_Row]) -> tuple[_Row, ...]:
    """Cells joined at the columns of their runs, then comments."""
    columns = _columns_of_names(rows)
    joined: list[_Row] = []
    for is_rule, adjacent in groupby(rows, lambda row: (row.run if row.run == "rule" else "", row.depth)):
        run = tuple(adjacent)
        if is_rule[0] == "rule":
            joined.extend(_rules(run))
        else:
            joined.extend(replace(row, text=_named(row, columns.get(row.run, 0))) for row in run)
    return tuple(_with_comments(joined))


def _columns_of_names(rows: Iterable[_Row]) -> dict[str, int]:
    """For each run of named lines the column of what follows the name, from the left margin."""
    ends: dict[str, list[int]] = {}
    for row in rows:
        if row.run and row.written is not None and len(row.written.cells) > 1 and row.run != "rule":
            name = row.written.cells[0][1]
            if width(name) <= LONGEST_NAME:
                ends.setdefault(row.run, []).append(len(STEP) * row.depth + width(name) + 1)
    return {run: _on_grid(max(found)) for run, found in ends.items() if len(found) > 1}


def _named(row: _Row, column: int) -> str:
    if row.written is None:
        return ""
    texts = [text for _, text in row.written.cells]
    if len(texts) == 1 or not row.run:
        return " ".join(texts)
    start = column - len(STEP) * row.depth
    return f"{_padded(texts[0], start - 1)} {' '.join(texts[1:])}"


def _rules(run: Sequence[_Row]) -> Iterator[_Row]:
    """Rules that follow each other, as a table where it is not too wide."""
    lines = [_columns_of_rule(row.written) for row in run if row.written is not None]
    texts = _table(lines) if len(lines) > 1 else []
    if not texts or max(map(width, texts)) > LONGEST_ALIGNED:
        texts = [" ".join(line.values()) for line in lines]
    for row, text in zip(run, texts, strict=True):
        yield replace(row, text=text)


def _columns_of_rule(line: Written) -> dict[str, str]:
    columns: dict[str, str] = {}
    for name, text in line.cells:
        column = "tail" if name in ("where", "reason") else name
        columns[column] = f"{columns[column]} {text}" if column in columns else text
    return columns


def _table(lines: Sequence[Mapping[str, str]]) -> list[str]:
    made = ["" for _ in lines]
    for column in _COLUMNS:
        if any(column in line for line in lines):
            start = max((width(text) + 1 for text, line in zip(made, lines, strict=True) if text), default=0)
            start = start if column == "measure" else _on_grid(start)
            made = [
                _padded(text, start) + line[column] if column in line else text
                for text, line in zip(made, lines, strict=True)
            ]
    return made


def _with_comments(rows: Sequence[_Row]) -> Iterator[_Row]:
    """Comments after lines that follow each other stand in one column."""
    for _, adjacent in groupby(rows, lambda row: bool(row.written and row.written.comment)):
        run = tuple(adjacent)
        ends = [_on_grid(len(STEP) * row.depth + width(row.text) + 2) for row in run]
        column = max((end for end in ends if end <= LAST_COMMENT_COLUMN), default=0) if len(run) > 1 else 0
        for row in run:
            comment = row.written.comment if row.written else ""
            text = f"{_padded(row.text, column - len(STEP) * row.depth - 2)}  {comment}" if comment else row.text
            yield replace(row, text=text)


def _on_grid(column: int) -> int:
    return -(-column // GRID) * GRID


def _padded(text: str, to: int) -> str:
    return text + " " * (to - width(text))


# ---- the file ------------------------------------------------------------------------------------


def _text(rows: Sequence[_Row]) -> str:
    """The lines with their indentation; no blank line begins or ends the file."""
    lines: list[str] = []
    blank = 0
    for row in rows:
        said = row.text or row.comment
        if not said:
            blank += 1
            continue
        lines += [""] * (min(blank, MOST_BLANK) if lines else 0)
        lines.append(STEP * row.depth + said)
        blank = 0
    return "\n".join(lines) + "\n" if lines else ""
