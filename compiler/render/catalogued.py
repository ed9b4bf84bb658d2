"""A language other than English: messages from its gettext catalogue, numbers, dates and lists from CLDR by Babel.

Comes in: a tag of `LANGUAGES`. Goes out: a `Language`. Loaded only when such a language is asked for.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date
from fractions import Fraction
from gettext import GNUTranslations
from importlib.resources import files
from typing import Final

from babel import Locale
from babel.dates import format_date, get_day_names
from babel.lists import format_list
from babel.numbers import get_decimal_symbol, get_minus_sign_symbol

from setwright.quantities import plain
from setwright.render.language import Language

CATALOGUE: Final = "locale/{tag}/LC_MESSAGES/sheets.mo"
_NO_BREAK: Final = "\u00a0"
_DAY_AND_MONTH: Final = re.compile(r"(?<=\d|\.) (?=[^\W\d])")


class Catalogued(Language):
    """A language with a catalogue in `compiler/render/locale/`."""

    def __init__(self, tag: str) -> None:
        self.tag = tag
        self._locale = Locale.parse(tag)
        self.direction = self._locale.text_direction
        self.decimal_sign = get_decimal_symbol(self._locale)
        self._signs = str.maketrans({".": self.decimal_sign, "-": get_minus_sign_symbol(self._locale)})
        with files("setwright.render").joinpath(CATALOGUE.format(tag=tag)).open("rb") as catalogue:
            self._messages = GNUTranslations(catalogue)

    def text(self, message: str) -> str:
        """A message; one that is in no catalogue comes back as it is."""
        return self._messages.gettext(message) if message else ""  # the empty message is a catalogue's head

    def count(self, one: str, many: str, number: int) -> str:
        """By the plural rule in the catalogue's head."""
        return self._messages.ngettext(one, many, number)

    def number(self, value: Fraction | int, places: int = 2) -> str:
        """With this language's decimal sign and minus; digits stand ungrouped, as in English."""
        return plain(value, places).translate(self._signs)

    def percent(self, value: Fraction | int) -> str:
        """With the space that this language sets before the sign."""
        pattern = self._locale.percent_formats[None]
        return f"{pattern.prefix[0]}{self.number(value)}{pattern.suffix[0]}"

    def listed(self, parts: Sequence[str]) -> str:
        """By CLDR's pattern for a list that ends in "and"."""
        return format_list(list(parts), locale=self._locale) if parts else ""

    def weekday(self, index: int) -> str:
        """The name, in small letters where the language writes it so."""
        return str(get_day_names("wide", "format", self._locale)[index])

    def month(self, of: date) -> str:
        """CLDR's short month, as it stands alone."""
        return format_date(of, "LLL", self._locale)

    def day(self, of: date, *, year: bool = True) -> str:
        """By CLDR's long date, or its day and month."""
        return self._date(of, "long" if year else str(self._locale.datetime_skeletons["MMMMd"]))

    def days(self, first: date, last: date) -> str:
        """By CLDR's interval of day, short month and year, with the month written out."""
        if first == last:
            return self.day(first)
        field = "y" if first.year != last.year else "M" if first.month != last.month else "d"
        start, end = self._locale.interval_formats["yMMMd"][field]
        return self._date(first, _with_long_month(start)) + self._date(last, _with_long_month(end))

    def _date(self, of: date, pattern: str) -> str:
        return _DAY_AND_MONTH.sub(_NO_BREAK, format_date(of, pattern, self._locale))


def _with_long_month(pattern: str) -> str:
    return pattern.replace("MMM", "MMMM")
