"""The language that a sheet speaks: labels, numbers, dates.

Comes in: messages in English, which are the keys of the catalogues, and values. Goes out: text for people. English
needs no library; every other language is read from its catalogue (`compiler/render/locale/`) and Babel.
"""

from __future__ import annotations

from fractions import Fraction

from setwright.quantities import plain


class Language:
    """English, and what every other language answers in its own way. `tag` is a language tag after BCP 47."""

    tag = "en"

    def text(self, message: str) -> str:
        """A message in this language."""
        return message

    def count(self, one: str, many: str, number: int) -> str:
        """The form of a message that goes with a number; `{number}` in it is not filled in here."""
        return one if number == 1 else many

    def number(self, value: Fraction, places: int = 2) -> str:
        """A number with as few decimals as it needs, halves up."""
        return plain(value, places)


ENGLISH = Language()
