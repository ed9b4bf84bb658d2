"""File names made from names people chose: they stay in their folder, fit every system, and do not collide.

Comes in: plan and athlete names. Goes out: stems, lower-case, without an extension.
"""

from __future__ import annotations

from typing import TYPE_CHECKING
from unicodedata import category, normalize

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

_LONGEST_STEM = 200  # bytes; file systems take 255 with the extension
# Names Windows keeps for devices, whatever the extension ("Naming Files, Paths, and Namespaces", Microsoft).
_DEVICES = {"con", "prn", "aux", "nul", *(f"{port}{number}" for port in ("com", "lpt") for number in range(10))}


def stems(named: Iterable[tuple[str | None, ...]]) -> list[str]:
    """A stem for each, made of its parts; one that is taken, letter case aside, gets a number."""
    taken: set[str] = set()
    made: list[str] = []
    for parts in named:
        first = stem = slug("-".join(part for part in parts if part))
        number = 2
        while stem in taken:
            stem, number = f"{first}-{number}", number + 1
        taken.add(stem)
        made.append(stem)
    return made


def slug(text: str) -> str:
    """The letters and digits of any script in lower case, everything else a hyphen; never empty."""
    folded = normalize("NFKC", normalize("NFKC", text).casefold())
    stem = "-".join("".join(_kept(folded)).split())
    while len(stem.encode()) > _LONGEST_STEM:
        stem = stem[:-1]
    stem = stem.strip("-") or "plan"
    return f"plan-{stem}" if stem in _DEVICES else stem


def _kept(text: str) -> Iterator[str]:
    """Letters, digits and the marks on them; a mark on anything else, as behind an emoji, cannot be seen alone."""
    on_letter = False
    for character in text:
        kind = category(character)[0]
        on_letter = kind in "LN" or (kind == "M" and on_letter)
        yield character if on_letter else " "
