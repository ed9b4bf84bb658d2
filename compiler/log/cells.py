"""Rows and cells of a table in text, after RFC 4180: commas, semicolons or tabs between, quotation marks around.

Comes in: text with LF line ends. Goes out: rows that know their line; one whose quotation marks do not fit says so.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from setwright.record import record

SEPARATORS = (",", ";", "\t")

# What a spreadsheet could take for a formula gets a quotation mark before it, which is taken off again.
_FORMULA = re.compile("'*[=+\\-@\t\r\n\uff1d\uff0b\uff0d\uff20]")


@record
class Row:
    """A row: the line it begins on, its cells, and its text. `broken` where quotation marks stand inside a cell."""

    line: int
    cells: tuple[str, ...]
    text: str
    broken: bool = False

    @property
    def is_empty(self) -> bool:
        """True where no cell says anything."""
        return not any(cell.strip() for cell in self.cells)


def rows_of(text: str, separator: str) -> Iterator[Row]:
    """Every row. A quoted cell may go over lines; where a quotation mark does not fit, one line is a broken row."""
    part = re.compile(f'(?:[ ]*"((?:[^"]|"")*)"[ ]*|([^"\n{separator}][^\n{separator}]*)?)({separator}|\n|$)')
    at, line = 0, 1
    while at < len(text):
        begun, cells, broken = at, [], False
        while True:
            match = part.match(text, at)
            if match is None:
                broken = True
                break
            whole, bare, end = match.groups()
            cells.append(whole.replace('""', '"') if whole is not None else bare or "")
            at = match.end()
            if end != separator:
                break
        if broken:
            end_of_line = text.find("\n", begun)
            at = len(text) if end_of_line < 0 else end_of_line + 1
            cells = [text[begun:at].rstrip("\n")]
        yield Row(line, tuple(cells), text[begun:at].rstrip("\n"), broken)
        line += text.count("\n", begun, at)


def cell_text(cell: str) -> str:
    """A cell as it is written: in quotation marks where it needs them."""
    return '"' + cell.replace('"', '""') + '"' if re.search('[",;\t\r\n]', cell) or cell != cell.strip() else cell


def guarded(text: str) -> str:
    """Text that no spreadsheet runs."""
    return f"'{text}" if _FORMULA.match(text) else text


def unguarded(text: str) -> str:
    """The same without the guard."""
    return text[1:] if text.startswith("'") and _FORMULA.match(text) else text
