"""Values week by week as changes over stretches of weeks.

Comes in: weeks of both plans with a value on either side. Goes out: `Change`s over the weeks where they differ.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from setwright.plan import WeekKind
from setwright.record import record
from setwright.report.difference.blocks import WeekPair
from setwright.report.difference.model import Aspect, Change, Stretch, Value, Weeks


@record
class Seen:
    """One value of one week before and after."""

    week: WeekPair
    before: Value
    after: Value


def stretches(seen: Iterable[Seen]) -> tuple[Stretch, ...]:
    """The weeks with a difference, a stretch for each kind of week, in the order of the weeks."""
    by_kind: dict[WeekKind, list[Seen]] = {}
    for one in seen:
        if one.before != one.after:
            by_kind.setdefault(_kind(one.week), []).append(one)
    return tuple(
        Stretch(
            kind,
            numbers(one.week for one in found),
            tuple(one.before for one in found),
            tuple(one.after for one in found),
        )
        for kind, found in by_kind.items()
    )


def change(aspect: Aspect, seen: Iterable[Seen], part: int | None = None) -> Iterator[Change]:
    """The change of one aspect, if there is one."""
    found = stretches(seen)
    if found:
        yield Change(aspect, found, part)


def numbers(weeks: Iterable[WeekPair]) -> Weeks:
    """The numbers of weeks in the old and in the new plan."""
    return tuple((old.number, new.number) for old, new in weeks)


def over(
    weeks: Sequence[WeekPair], aspect: Aspect, before: Callable[[int], Value], after: Callable[[int], Value]
) -> Iterator[Change]:
    """The change of a value that is asked for by the place of the week."""
    return change(aspect, (Seen(week, before(at), after(at)) for at, week in enumerate(weeks)))


def _kind(week: WeekPair) -> WeekKind:
    """A working week only where it is one in both plans, so that the kind is the same from either side."""
    kinds = {week[0].kind, week[1].kind}
    return next((kind for kind in (WeekKind.DELOAD, WeekKind.TEST) if kind in kinds), WeekKind.WORKING)
