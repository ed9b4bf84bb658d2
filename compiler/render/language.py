"""The language that a sheet speaks: labels, numbers, dates.

Comes in: messages in English, which are the keys of the catalogues, and values. Goes out: text for people. English
needs no library; every other language is read from its catalogue (`compiler/render/locale/`) and Babel.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date
from fractions import Fraction
from functools import cache
from typing import Final
from unicodedata import bidirectional

from setwright.message import Phrase, Share, Value
from setwright.quantities import Mass, plain
from setwright.suggest import either, nearest

# Tags after BCP 47: English, and one for each catalogue.
LANGUAGES: Final = ("en", "de", "fr")

# What a person may have written in place of the tag.
_NAMES: Final = {"english": "en", "german": "de", "deutsch": "de", "french": "fr", "français": "fr", "francais": "fr"}

_NO_BREAK: Final = "\u00a0"
_EN_DASH: Final = "\u2013"

# First strong isolate, and its end: Unicode Standard Annex 9, 2.4.
_ISOLATE: Final = "\u2068"
_END_OF_ISOLATE: Final = "\u2069"

_WEEKDAYS: Final = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS: Final = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


class LanguageError(Exception):
    """A language that there is not, or whose library is missing; the text says what to do."""


class Language:
    """English, and what every other language answers in its own way.

    `tag` is a language tag after BCP 47 and `direction` is `ltr` or `rtl`: what HTML calls `lang` and `dir`.
    `decimal_sign` is what `number` writes before the decimals.
    """

    tag: str = "en"
    direction: str = "ltr"
    decimal_sign: str = "."

    def text(self, message: str) -> str:
        """A message in this language; what is no message (a name that a person gave) comes back as it is."""
        return message

    def count(self, one: str, many: str, number: int) -> str:
        """The form of a message that goes with a number; `{number}` in it is not filled in here."""
        return one if number == 1 else many

    def name(self, given: str) -> str:
        """A name within a sentence; one that runs in the other direction is kept apart, so that it moves no number."""
        against = {"R", "AL"} if self.direction == "ltr" else {"L"}
        apart = any(bidirectional(sign) in against for sign in given)
        return f"{_ISOLATE}{given}{_END_OF_ISOLATE}" if apart else given

    def said(self, text: str) -> str:
        """A text of an earlier phase: a phrase is said in this language, a person's own words come back as they are."""
        if not isinstance(text, Phrase):
            return text
        one, many = text.forms[0], text.forms[-1]
        whole = text.number.numerator if text.number.denominator == 1 else 2
        form = self.text(one) if one == many else self.count(one, many, whole)
        return form.format(**{name: self._value(value) for name, value in text.values.items()})

    def number(self, value: Fraction | int, places: int = 2) -> str:
        """A number with as few decimals as it needs, halves up."""
        return plain(value, places)

    def percent(self, value: Fraction | int) -> str:
        """A percent (80 means 80%) with its sign."""
        return f"{self.number(value)}%"

    def listed(self, parts: Sequence[str]) -> str:
        """`a`, `a and b`, `a, b and c`."""
        return either(parts, "and")

    def weekday(self, index: int) -> str:
        """The name of a day, 0 for Monday, as it stands within a sentence."""
        return _WEEKDAYS[index]

    def month(self, of: date) -> str:
        """The month of a date, short, as it stands alone: `Jan`."""
        return _MONTHS[of.month - 1][:3]

    def day(self, of: date, *, year: bool = True) -> str:
        """A date: `4 January 2027`."""
        return f"{of.day}{_NO_BREAK}{_MONTHS[of.month - 1]}" + (f" {of.year}" if year else "")

    def days(self, first: date, last: date) -> str:
        """A stretch of days: `4-10 January 2027`, saying month and year as often as needed."""
        if (first.year, first.month) == (last.year, last.month):
            return f"{first.day}{_EN_DASH}{self.day(last)}"
        return f"{self.day(first, year=first.year != last.year)} {_EN_DASH} {self.day(last)}"

    def _value(self, value: Value) -> str:
        match value:
            case Fraction():
                return self.number(value)
            case Share(percent):
                return self.percent(percent)
            case Mass(amount, unit):
                return f"{self.number(amount)} {unit.value}"
            case tuple():
                return self.listed([self._value(part) for part in value])
            case Phrase():
                return self.said(value)
            case _:
                return self.name(value)


ENGLISH: Final = Language()


@cache
def language(tag: str) -> Language:
    """The language of a tag, in either case; `de-AT` is `de`, by the lookup of RFC 4647, 3.4.

    Raises `LanguageError` for another, and where the library that every language but English needs is not installed.
    """
    found = _looked_up(tag)
    if found is None:
        raise LanguageError(_unknown(tag))
    if found == ENGLISH.tag:
        return ENGLISH
    try:
        from setwright.render.catalogued import Catalogued
    except ModuleNotFoundError as error:
        if error.name is not None and error.name.partition(".")[0] == "babel":
            raise LanguageError(f"the language `{found}` needs `pip install 'setwright[languages]'`") from error
        raise
    return Catalogued(found)


def _looked_up(tag: str) -> str | None:
    """The tag, shortened from its end until it is that of a catalogue."""
    if not re.fullmatch(r"[A-Za-z]{2,8}([-_][A-Za-z0-9]{1,8})*", tag):
        return None
    parts = tag.casefold().replace("_", "-").split("-")
    shorter = ("-".join(parts[:length]) for length in range(len(parts), 0, -1))
    return next((found for found in shorter if found in LANGUAGES), None)


def _unknown(tag: str) -> str:
    names = [_NAMES.get(name, name) for name in nearest(tag.casefold(), (*LANGUAGES, *_NAMES))]
    asked = f" did you mean {either([f'`{name}`' for name in dict.fromkeys(names)])}?" if names else ""
    return f"there is no language `{tag}`;{asked} there are {either([f'`{name}`' for name in LANGUAGES], 'and')}"
