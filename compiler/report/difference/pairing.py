"""Pairs what stands on two sides: by keys in order, and by likeness with ties broken alike from either side.

Comes in: keys or scored candidates by place. Goes out: pairs of places. Each takes n log n of the candidates.
"""

from __future__ import annotations

from collections import defaultdict, deque
from collections.abc import Hashable, Iterable, Mapping

Pairs = list[tuple[int, int]]
Candidate = tuple[int, int, int]  # how alike (more is better), the place on the old side, the place on the new


def by_key(old: Mapping[int, Hashable], new: Mapping[int, Hashable]) -> Pairs:
    """Places with the same key: the first of it with the first, the second with the second."""
    free: dict[Hashable, deque[int]] = defaultdict(deque)
    for at, key in old.items():
        free[key].append(at)
    return [(free[key].popleft(), at) for at, key in new.items() if free.get(key)]


def by_likeness(candidates: Iterable[Candidate]) -> Pairs:
    """The best first; among equals the nearest, then the earliest, which is the same seen from the other side."""
    ordered = sorted(candidates, key=lambda one: (-one[0], abs(one[1] - one[2]), one[1] + one[2], one[1]))
    old_taken: set[int] = set()
    new_taken: set[int] = set()
    pairs: Pairs = []
    for _, old, new in ordered:
        if old not in old_taken and new not in new_taken:
            pairs.append((old, new))
            old_taken.add(old)
            new_taken.add(new)
    return pairs
