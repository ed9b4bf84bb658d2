"""Which weeks a rule looks at, and how a handful of weeks is written.

Comes in: `Where` and weeks. Goes out: yes or no, and phrases such as `weeks 1-3 and 5`.
"""

from __future__ import annotations

from collections.abc import Iterable

from setwright.plan import Week, WeekKind
from setwright.rules import Where
from setwright.suggest import either

EVERY_KIND = frozenset(WeekKind)
WORKING_ONLY = frozenset({WeekKind.WORKING})


def looks_at(where: Where, week: Week, usual: frozenset[WeekKind] = EVERY_KIND) -> bool:
    """True where a rule speaks of `week`; `usual` are the kinds it looks at when it names no weeks."""
    named = where.weeks is not None or where.every_week
    return is_named(where, week) and (named or week.kind in usual)


def is_named(where: Where, week: Week) -> bool:
    """True where the words after `in` take `week` in. Beside a block, week numbers count from its first week."""
    if where.block is not None and where.block != week.block:
        return False
    number = week.number if where.block is None else week.number_in_block
    return where.weeks is None or number in where.weeks


def phrase(numbers: Iterable[int]) -> str:
    """Week numbers in words: `week 3`, `weeks 1-3 and 5`, `weeks 1, 3 and 5-6`."""
    stretches = _stretches(sorted(set(numbers)))
    texts = [str(first) if first == last else f"{first}-{last}" for first, last in stretches]
    word = "week" if len(texts) == 1 and "-" not in texts[0] else "weeks"
    return f"{word} {either(texts, 'and')}"


def _stretches(numbers: list[int]) -> list[tuple[int, int]]:
    stretches: list[tuple[int, int]] = []
    for number in numbers:
        if stretches and stretches[-1][1] == number - 1:
            stretches[-1] = (stretches[-1][0], number)
        else:
            stretches.append((number, number))
    return stretches
