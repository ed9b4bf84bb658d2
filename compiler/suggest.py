"""Did you mean: near names for an unknown one, and lists as a sentence has them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

NEAR = 0.75  # less alike than this is no suggestion
SPREAD = 0.05  # and neither is what is so much less alike than the best
LONGEST = 120  # characters; longer names are compared with none, since that takes a time that grows with their square


class Suggestion(str):
    """A help sentence that says what could stand in place of `word`: one of `names`, best first."""

    __slots__ = ("names", "word")
    word: str
    names: tuple[str, ...]

    def __new__(cls, sentence: str, word: str, names: Iterable[str]) -> Suggestion:
        """The sentence, which says the same as the names do."""
        made = super().__new__(cls, sentence)
        made.word, made.names = word, tuple(names)
        return made


def nearest(word: str, known: Iterable[str], most: int = 3) -> list[str]:
    """The known names nearest to `word`, best first; empty where none is near (none is better than a bad one)."""
    scored = [(score, name) for name in _perhaps(word, known) if (score := _likeness(word, name)) >= NEAR]
    scored.sort(key=lambda pair: (-pair[0], pair[1]))
    return [name for score, name in scored[:most] if score >= scored[0][0] - SPREAD]


def _perhaps(word: str, known: Iterable[str]) -> Iterator[str]:
    """The names, each once, that share enough letters with `word` to be worth a closer look."""
    from difflib import SequenceMatcher

    if len(word) > LONGEST:
        return
    matcher = SequenceMatcher(None, "", word.casefold())  # what it knows of its second side is kept from name to name
    words = set(word.casefold().split())
    for name in dict.fromkeys(known):
        matcher.set_seq1(name.casefold())
        shared = matcher.real_quick_ratio() >= NEAR and matcher.quick_ratio() >= NEAR
        if len(name) <= LONGEST and (shared or (len(words) > 1 and words < set(name.casefold().split()))):
            yield name


def _likeness(word: str, name: str) -> float:
    """1 for the same letters, nearly 1 where one name holds all words of the other, else how much they share."""
    from difflib import SequenceMatcher

    one, other = word.casefold(), name.casefold()
    matcher = SequenceMatcher(None, one, other)
    words = set(one.split())
    if len(words) > 1 and words < set(other.split()):
        return 0.9 + matcher.ratio() / 20
    return matcher.ratio()


def did_you_mean(word: str, known: Iterable[str]) -> Suggestion | None:
    """A help sentence, or None where nothing is near."""
    return meant(word, nearest(word, known))


def meant(word: str, names: Sequence[str]) -> Suggestion | None:
    """The same of names that are known to be near; None for none."""
    if not names:
        return None
    return Suggestion(f"Did you mean {either([f'`{name}`' for name in names])}?", word, names)


def either(parts: Sequence[str], word: str = "or") -> str:
    """`a`, `a or b`, `a, b or c`."""
    if len(parts) < 2:
        return "".join(parts)
    return f"{', '.join(parts[:-1])} {word} {parts[-1]}"
