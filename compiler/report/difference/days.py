"""Which day's training of an old block answers to which of the new one, also where it moved to another day.

Comes in: the weeks of a block that are in both plans. Goes out: `DayPair`s with the sessions of each week.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from setwright.plan import Session, Week
from setwright.record import record
from setwright.report.difference.alike import session_print
from setwright.report.difference.blocks import WeekPair
from setwright.report.difference.pairing import by_key, by_likeness


@record
class Days:
    """The sessions of one side that stand on one day, by the place of their week among the pairs."""

    slot: str
    sessions: tuple[tuple[int, Session], ...]

    @property
    def movements(self) -> frozenset[str]:
        """All movements of these sessions."""
        return frozenset(line.movement.name for _, session in self.sessions for line in session.lines)


@record
class DayPair:
    """A day of the old block and the day of the new one that answers to it; None where there is none."""

    old: Days | None
    new: Days | None


def day_pairs(weeks: Sequence[WeekPair]) -> tuple[DayPair, ...]:
    """By day where the training is the same, then the same training on another day, then by day, then by likeness."""
    left, right = _days(old for old, _ in weeks), _days(new for _, new in weeks)
    found: dict[int, int] = {}  # new day to old day
    _same_training(left, right, found, with_slot=True)
    _same_training(left, right, found, with_slot=False)
    free_old, free_new = _free(left, right, found)
    same_day = by_key({at: left[at].slot for at in free_old}, {at: right[at].slot for at in free_new})
    _add([(old, new) for old, new in same_day if _share(left[old], right[new])], found)
    free_old, free_new = _free(left, right, found)
    likeness = ((_share(left[old], right[new]), old, new) for old in free_old for new in free_new)
    _add(by_likeness(one for one in likeness if one[0] >= 50), found)
    free_old, free_new = _free(left, right, found)
    _add(by_key({at: left[at].slot for at in free_old}, {at: right[at].slot for at in free_new}), found)
    pairs = [DayPair(left[found[at]] if at in found else None, day) for at, day in enumerate(right)]
    return (*pairs, *(DayPair(day, None) for at, day in enumerate(left) if at not in found.values()))


def _days(weeks: Iterable[Week]) -> list[Days]:
    """In order of the week; a day that stands twice in a week is two days."""
    made: dict[tuple[str, int], list[tuple[int, Session]]] = {}
    offsets: dict[tuple[str, int], int] = {}
    for at, week in enumerate(weeks):
        seen: dict[str, int] = {}
        for session in week.sessions:
            key = (session.slot, seen.get(session.slot, 0))
            seen[session.slot] = key[1] + 1
            made.setdefault(key, []).append((at, session))
            offsets.setdefault(key, session.offset)
    return [Days(key[0], tuple(made[key])) for key in sorted(made, key=lambda key: (offsets[key], key))]


def _same_training(left: Sequence[Days], right: Sequence[Days], found: dict[int, int], *, with_slot: bool) -> None:
    free_old, free_new = _free(left, right, found)
    _add(
        by_key(
            {at: (_training(left[at]), left[at].slot if with_slot else "") for at in free_old if left[at].movements},
            {at: (_training(right[at]), right[at].slot if with_slot else "") for at in free_new if right[at].movements},
        ),
        found,
    )


def _training(days: Days) -> tuple[object, ...]:
    return tuple((at, session_print(session)) for at, session in days.sessions)


def _free(left: Sequence[Days], right: Sequence[Days], found: dict[int, int]) -> tuple[list[int], list[int]]:
    taken = set(found.values())
    return [at for at in range(len(left)) if at not in taken], [at for at in range(len(right)) if at not in found]


def _add(pairs: Iterable[tuple[int, int]], found: dict[int, int]) -> None:
    found.update((new, old) for old, new in pairs)


def _share(old: Days, new: Days) -> int:
    """How many of all movements are in both, in percent."""
    one, other = old.movements, new.movements
    return 100 * len(one & other) // len(one | other) if one or other else 0
