"""A language of the tests: English, with every message of the catalogues in brackets, so that stray text shows.

Comes in: text of a sheet. Goes out: what of it did not go through the language.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Iterator, Sequence
from datetime import date
from functools import cache
from pathlib import Path
from typing import Final

from babel.messages.catalog import Catalog, Message
from babel.messages.extract import DEFAULT_KEYWORDS, extract_from_dir

from setwright.render.language import Language

ROOT: Final = Path(__file__).parent.parent

# What DEVELOPERS.md gives pybabel after `-k`.
KEYWORDS: Final = {"text": None, "message": None, "count": (1, 2), "counted": (1, 2)}

OPEN, CLOSE = "\u27e6", "\u27e7"

# Units, terms of the trade and names of formulas, which are the same in every language.
EVERYWHERE: Final = frozenset({"kg", "lb", "s", "m", "min", "RPE", "RIR", "X", "epley", "CSV"})
_WORD: Final = re.compile(r"[A-Za-z]+")


class Pseudo(Language):
    """Brackets around what a catalogue would translate; a message that extraction does not find stays bare."""

    def text(self, message: str) -> str:
        return f"{OPEN}{message}{CLOSE}" if message in _known() else message

    def count(self, one: str, many: str, number: int) -> str:
        return self.text(one) if number == 1 else f"{OPEN}{many}{CLOSE}" if one in _known() else many

    def listed(self, parts: Sequence[str]) -> str:
        return f"{OPEN}{super().listed(parts)}{CLOSE}"

    def weekday(self, index: int) -> str:
        return f"{OPEN}{super().weekday(index)}{CLOSE}"

    def month(self, of: date) -> str:
        return f"{OPEN}{super().month(of)}{CLOSE}"

    def day(self, of: date, *, year: bool = True) -> str:
        return f"{OPEN}{super().day(of, year=year)}{CLOSE}"


@cache
def extracted() -> Catalog:
    """Every message of the sheets, found as `pybabel extract` finds them."""
    with (ROOT / "pyproject.toml").open("rb") as file:
        mappings = tomllib.load(file)["tool"]["babel"]["mappings"]
    methods = [(one["pattern"], one["method"]) for one in mappings]
    options = {one["pattern"]: {"silent": "false"} for one in mappings}  # a template that cannot be read is told
    found = Catalog()
    for folder in ("compiler", "stdlib"):
        keywords = {**DEFAULT_KEYWORDS, **KEYWORDS}
        for name, line, message, _comments, _context in extract_from_dir(ROOT / folder, methods, options, keywords):
            found.add(message, locations=[(f"{folder}/{name}", line)])
    return found


def messages() -> list[Message]:
    """Those of `extracted`, without the head of the catalogue."""
    return [message for message in extracted() if message.id]


def stray(texts: Iterable[str]) -> list[str]:
    """What stands outside the brackets in texts one after the other and has words, but for those of every language."""
    return [bare.strip() for bare in _outside(texts) if set(_WORD.findall(bare)) - EVERYWHERE]


def _outside(texts: Iterable[str]) -> Iterator[str]:
    depth = 0
    for text in texts:
        bare: list[str] = []
        for sign in text:
            depth += (sign == OPEN) - (sign == CLOSE)
            if depth == 0 and sign != CLOSE:
                bare.append(sign)
        yield "".join(bare)


@cache
def _known() -> frozenset[str]:
    """The keys: a plural message by its singular."""
    return frozenset(message.id if isinstance(message.id, str) else message.id[0] for message in messages())
