"""Did you mean: near names for an unknown one, and lists as a sentence has them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence


def nearest(word: str, known: Iterable[str], most: int = 3) -> list[str]:
    """The known names nearest to `word`, best first; empty where none is near (none is better than a bad one)."""
    from difflib import get_close_matches

    by_folded = {name.casefold(): name for name in known}
    folded = word.casefold()
    close = get_close_matches(folded, by_folded, n=most, cutoff=0.72)
    starts = [name for name in by_folded if name.startswith(folded + " ") or name.endswith(" " + folded)]
    return [by_folded[name] for name in dict.fromkeys([*close, *starts])][:most]


def did_you_mean(word: str, known: Iterable[str]) -> str | None:
    """A help sentence, or None where nothing is near."""
    names = nearest(word, known)
    return f"Did you mean {either([f'`{name}`' for name in names])}?" if names else None


def either(parts: Sequence[str], word: str = "or") -> str:
    """`a`, `a or b`, `a, b or c`."""
    if len(parts) < 2:
        return "".join(parts)
    return f"{', '.join(parts[:-1])} {word} {parts[-1]}"
