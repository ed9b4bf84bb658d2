"""When two entries of a log are one session that was written down twice.

Comes in: sessions. Goes out: what was done in them as values that can be compared.
"""

from __future__ import annotations

from collections.abc import Iterable

from setwright.log.model import SessionDone, SetDone

Done = tuple[tuple[str, str | None], Iterable[SetDone]]  # a movement and its label, and sets of it


def what_was_done(parts: Iterable[Done]) -> tuple[object, ...]:
    """The sets of each movement and label, in whatever order these are written."""
    sets: dict[tuple[str, str], list[SetDone]] = {}
    for (movement, label), done in parts:
        sets.setdefault((movement, label or ""), []).extend(done)
    return tuple((key, tuple(sets[key])) for key in sorted(sets) if sets[key])


def done_in(session: SessionDone) -> tuple[object, ...]:
    """The same of a whole session."""
    return what_was_done(((line.movement.name, line.label), line.sets) for line in session.lines)


def may_be_one(first: SessionDone, other: SessionDone) -> bool:
    """False where both say what they were for, and it is not the same."""
    return None in (first.week, other.week) or (first.week, first.slot) == (other.week, other.slot)
