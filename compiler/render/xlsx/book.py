"""A workbook that takes typed cells: free text that is never a formula, numbers with their unit, formats made once.

Comes in: cells. Goes out: the bytes of the file. The library that writes it is imported here alone.
"""

from __future__ import annotations

import io
import re
from collections.abc import Mapping, Sequence
from datetime import date, datetime
from fractions import Fraction
from typing import Any, Final, TypeAlias

from setwright.plan import Plan
from setwright.render.csv import FORMULA_STARTS
from setwright.render.material import Look

# What the file format allows (ECMA-376, part 1, 18.2.19 and 18.3.1; the applications' own limits for text).
LONGEST_NAME: Final = 31
LONGEST_TEXT: Final = 32_767
LONGEST_FOOTER: Final = 200
HIGHEST: Final = 409  # points, of a row
MOST_LINES: Final = 25
_NOT_IN_NAMES: Final = re.compile(r"[\[\]:*?/\\\x00-\x1f]+")

# The file says when it was made; one plan makes one file, so it is always then.
MADE: Final = datetime(2000, 1, 1)

A4: Final = 9
INK: Final = "#1f2328"
FAINT: Final = "#6a6f76"
LINE: Final = "#b9bec5"
HEAD: Final = "#e8eaed"
OWN: Final = "#fbf6e3"  # cells to write into

Style: TypeAlias = Mapping[str, Any]
Value: TypeAlias = str | int | float | Fraction | date | None

PLAIN: Final[Style] = {"valign": "top"}
WRAPPED: Final[Style] = {"valign": "top", "text_wrap": True}
TITLE: Final[Style] = {"bold": True, "font_size": 16}
STRONG: Final[Style] = {"bold": True, "valign": "top"}
ASIDE: Final[Style] = {"font_color": FAINT, "font_size": 9, "valign": "top", "text_wrap": True}
TOP: Final[Style] = {
    "bold": True,
    "bg_color": HEAD,
    "bottom": 1,
    "bottom_color": LINE,
    "text_wrap": True,
    "valign": "vcenter",
    "align": "center",
    "font_size": 9,
}


class Book:
    """One workbook in the making."""

    def __init__(self, plan: Plan, look: Look) -> None:
        from xlsxwriter import Workbook

        self._out = io.BytesIO()
        self._made = Workbook(
            self._out,
            {
                "in_memory": True,
                "strings_to_formulas": False,
                "strings_to_urls": False,
                "strings_to_numbers": False,
            },
        )
        self._formats: dict[tuple[tuple[str, Any], ...], Any] = {}
        self._names: set[str] = set()
        self.plan = plan
        self.look = look
        self.language = look.language
        self.footer = _footer(plan)
        self._made.set_properties(
            {
                "title": _kept(plan.name),
                "author": _kept(plan.author or ""),
                "subject": _kept(plan.athlete or ""),
                "created": MADE,
            }
        )

    def add(self, wanted: str) -> Page:
        """A sheet with this name, or with one near to it that the format allows."""
        name = sheet_name(wanted, self._names)
        self._names.add(name.casefold())
        sheet = self._made.add_worksheet(name)
        sheet.hide_gridlines(2)
        if self.language.direction == "rtl":
            sheet.right_to_left()
        return Page(self, sheet, name)

    def format(self, style: Style) -> Any:
        """The library's format for a style, the same for the same style."""
        key = tuple(sorted(style.items()))
        if key not in self._formats:
            self._formats[key] = self._made.add_format(dict(style))
        return self._formats[key]

    def closed(self) -> bytes:
        """The file, which opens at the first sheet."""
        self._made.close()
        return self._out.getvalue()


class Page:
    """One sheet of a workbook. Rows and columns count from 0."""

    def __init__(self, book: Book, sheet: Any, name: str) -> None:
        self._book = book
        self._sheet = sheet
        self.name = name

    @property
    def reference(self) -> str:
        """The name as it stands in formulas."""
        return "'" + self.name.replace("'", "''") + "'!"

    def put(self, row: int, column: int, value: Value, style: Style = PLAIN) -> None:
        """A cell of the value's own type: text stays text, whatever it begins with."""
        match value:
            case None:
                self._sheet.write_blank(row, column, None, self._book.format(style))
            case str():
                text = _kept(value)
                guard = {"quote_prefix": True} if text.startswith(FORMULA_STARTS) else {}
                self._sheet.write_string(row, column, text, self._book.format({**style, **guard}))
            case date():
                dated = {**style, "num_format": "yyyy-mm-dd", "align": style.get("align", "left")}
                self._sheet.write_datetime(row, column, value, self._book.format(dated))
            case _:
                self._sheet.write_number(row, column, float(value), self._book.format(style))

    def formula(self, row: int, column: int, text: str, value: Fraction | int, style: Style = PLAIN) -> None:
        """A formula, with the value that viewers show who cannot calculate."""
        self._sheet.write_formula(row, column, text, self._book.format(style), _number(value))

    def across(self, row: int, first: int, last: int, text: str, style: Style, width: int) -> None:
        """Text over several columns, which hold `width` letters a line; the row is made as high as it takes."""
        if first < last:
            self._sheet.merge_range(row, first, row, last, "", self._book.format(style))
        self.put(row, first, text, style)
        self.height(row, lines_of(text, width), style)

    def height(self, row: int, lines: int, style: Style = PLAIN) -> None:
        """A row of so many lines. Applications differ in whether they find the height of wrapped text by themselves."""
        self._sheet.set_row(row, HIGHEST if lines > MOST_LINES else lines * 1.36 * float(style.get("font_size", 11)))

    def link(self, row: int, column: int, page: Page, style: Style) -> None:
        """A sheet's name that leads there."""
        shown = {**style, "font_color": INK, "underline": 1}
        self._sheet.write_url(row, column, f"internal:{page.reference}A1", self._book.format(shown), page.name)

    def widths(self, widths: Sequence[float]) -> None:
        """The columns from the first on, in letters."""
        for column, width in enumerate(widths):
            self._sheet.set_column(column, column, width)

    def freeze(self, row: int, column: int) -> None:
        """What stands above and before this cell stays in sight."""
        self._sheet.freeze_panes(row, column)

    def paper(self, last_column: int, last_row: int, *, head: int | None = None, landscape: bool = False) -> None:
        """A4, as wide as the paper; prints the first columns only, and the row `head` on each page."""
        self._sheet.set_paper(A4)
        if landscape:
            self._sheet.set_landscape()
        self._sheet.fit_to_pages(1, 0)
        self._sheet.set_margins(left=0.4, right=0.4, top=0.5, bottom=0.6)
        self._sheet.set_footer(self._book.footer)
        self._sheet.print_area(0, 0, last_row, last_column)
        if head is not None:
            self._sheet.repeat_rows(head)

    def shaded(self, area: tuple[int, int, int, int]) -> None:
        """A table of figures, the higher the darker."""
        scale = {"type": "2_color_scale", "min_type": "num", "min_value": 0, "min_color": "#ffffff"}
        self._sheet.conditional_format(*area, {**scale, "max_color": "#b7c4cf"})

    def numbers_only(self, area: tuple[int, int, int, int], least: float, most: float, said: str) -> None:
        """Cells that take nothing but numbers in a range; `said` tells a person who types something else."""
        rule = {"validate": "decimal", "criteria": "between", "minimum": least, "maximum": most}
        self._sheet.data_validation(*area, {**rule, "error_message": said[:255], "ignore_blank": True})


def sheet_name(wanted: str, taken: set[str]) -> str:
    """A name that the format allows and that no other sheet has; `taken` holds the others, casefolded."""
    plain = _NOT_IN_NAMES.sub(" ", wanted).strip(" '") or "Sheet"
    name, number = _cut(plain, LONGEST_NAME), 1
    while name.casefold() in taken or name.casefold() == "history":  # a name that one application keeps for itself
        number += 1
        name = f"{_cut(plain, LONGEST_NAME - len(str(number)) - 1)} {number}"
    return name


def lines_of(text: str, width: int) -> int:
    """How many lines a text takes where so many letters stand on one; those of Chinese and the like count twice."""
    return sum(max(1, -(-sum(2 if ord(sign) > 0x2E80 else 1 for sign in line) // width)) for line in text.split("\n"))


def quoted(text: str) -> str:
    """A text as it stands in a number's format."""
    return '"' + text.replace('"', "'") + '"'


def with_unit(unit: str, before: str = "") -> str:
    """The format of a number with its unit: `82.5 kg`."""
    lead = quoted(before) if before else ""
    return f"{lead}General{quoted(unit)}" if unit else f"{lead}General"


def _cut(text: str, most: int) -> str:
    """The start of a text; letters outside the first plane count twice, as the applications count them."""
    while len(text.encode("utf-16-le")) > 2 * most:
        text = text[:-1]
    return text.strip(" '")


def _kept(text: str) -> str:
    return text[:LONGEST_TEXT]


def _number(value: Fraction | int) -> int | float:
    return value.numerator if isinstance(value, Fraction) and value.denominator == 1 else float(value)


def _footer(plan: Plan) -> str:
    who = ", ".join(part for part in (plan.name, plan.athlete) if part)
    # `&` begins a code there, and a number after one would be a size.
    return f"&L&8 {who[:LONGEST_FOOTER].replace('&', '&&')}&R&8 &P / &N"
