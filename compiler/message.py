"""Texts of ours that are translated where they are printed: marked, so that extraction finds them, and with values.

Comes in: English messages, which are the keys of the catalogues. Goes out: English text that another language can say.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import TypeAlias

from setwright.quantities import Mass, plain
from setwright.record import record


@record
class Share:
    """A percent: 80 means 80%."""

    percent: Fraction


# What fills a message: a number, a mass, a percent, a text (said in the language if it is a phrase), or several texts.
Value: TypeAlias = Fraction | Mass | Share | str | tuple[str, ...]


def message(text: str) -> str:
    """The text as it is; the call marks it for the catalogues."""
    return text


class Phrase(str):
    """An English text that keeps the message and the values it was made from.

    It is an ordinary text for whoever wants English; `render.language` says it in another language. `forms` is the
    message, or the message for one and for many with the `number` that decides.
    """

    forms: tuple[str, ...]
    number: Fraction
    values: Mapping[str, Value]

    def __new__(cls, *forms: str, number: Fraction = Fraction(1), **values: Value) -> Phrase:
        """`number` also fills `{number}`."""
        told: dict[str, Value] = {"number": number, **values}
        chosen = forms[0] if number == 1 else forms[-1]
        made = super().__new__(cls, chosen.format(**{name: _in_english(value) for name, value in told.items()}))
        made.forms, made.number, made.values = forms, number, told
        return made

    def renamed(self, old: str, new: str) -> Phrase:
        """The same text with another name in its values."""
        values = {
            name: value.replace(old, new) if isinstance(value, str) and not isinstance(value, Phrase) else value
            for name, value in self.values.items()
            if name != "number"
        }
        return Phrase(*self.forms, number=self.number, **values)


def counted(one: str, many: str, number: Fraction) -> Phrase:
    """A message with its `{number}`; the call marks both forms for the catalogues."""
    return Phrase(one, many, number=number)


def sentences(parts: Sequence[str]) -> Phrase:
    """One after the other."""
    values: dict[str, Value] = {f"part{at}": part for at, part in enumerate(parts)}
    return Phrase(" ".join(f"{{{name}}}" for name in values), number=Fraction(1), **values)


def listed(parts: Sequence[str]) -> str:
    """`a`, `a and b`, `a, b and c`."""
    return " and ".join((", ".join(parts[:-1]), parts[-1])) if len(parts) > 1 else "".join(parts)


def _in_english(value: Value) -> str:
    match value:
        case Fraction():
            return plain(value)
        case Share(percent):
            return f"{plain(percent)}%"
        case tuple():
            return listed(value)
        case _:
            return str(value)
