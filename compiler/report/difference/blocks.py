"""Which block and week of the old plan answers to which of the new one.

Comes in: two plans. Goes out: `BlockPair`s with their weeks; a block that became longer keeps all weeks that it had.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Hashable, Iterable, Sequence

from setwright.plan import BlockSpan, Plan, Week
from setwright.record import record
from setwright.report.difference.alike import week_print, week_shape

WeekPair = tuple[Week, Week]


@record
class BlockPair:
    """A block on either side, None where it is missing there, with its weeks."""

    old: BlockSpan | None
    new: BlockSpan | None
    old_weeks: tuple[Week, ...]
    new_weeks: tuple[Week, ...]
    weeks: tuple[WeekPair, ...]


def block_pairs(old: Plan, new: Plan) -> tuple[BlockPair, ...]:
    """By name; what is left by the whole content, then by the days and movements. New order, dropped blocks last."""
    left, right = _blocks(old), _blocks(new)
    found: dict[int, int] = {}  # new block to old block, by place
    for key in (_name, _content, _skeleton):
        _pair(left, right, key, found)
    made = [_paired(left[found[at]], block) if at in found else _alone(None, block) for at, block in enumerate(right)]
    return (*made, *(_alone(block, None) for at, block in enumerate(left) if at not in found.values()))


_Block = tuple[BlockSpan, tuple[Week, ...]]


def _blocks(plan: Plan) -> list[_Block]:
    return [(block, plan.weeks[block.first_week - 1 : block.last_week]) for block in plan.blocks]


def _pair(
    left: Sequence[_Block], right: Sequence[_Block], key: Callable[[_Block], Hashable], found: dict[int, int]
) -> None:
    """Add the blocks with the same key that have no answer yet, in order."""
    taken = set(found.values())
    free: dict[Hashable, list[int]] = defaultdict(list)
    for at, block in enumerate(left):
        if at not in taken:
            free[key(block)].append(at)
    if not free:
        return
    for at, block in enumerate(right):
        if at not in found:
            answers = free.get(key(block))
            if answers:
                found[at] = answers.pop(0)


def _name(block: _Block) -> Hashable:
    return block[0].name


def _content(block: _Block) -> Hashable:
    return tuple(week_print(week) for week in block[1])


def _skeleton(block: _Block) -> Hashable:
    return tuple(week_shape(week) for week in block[1])


def _paired(old: _Block, new: _Block) -> BlockPair:
    return BlockPair(old[0], new[0], old[1], new[1], tuple(_weeks(old[1], new[1])))


def _alone(old: _Block | None, new: _Block | None) -> BlockPair:
    left, right = old or (None, ()), new or (None, ())
    return BlockPair(left[0], right[0], left[1], right[1], ())


def _weeks(old: Sequence[Week], new: Sequence[Week]) -> Iterable[WeekPair]:
    """By number where the block is as long as before; else the deload at the end stays the deload at the end."""
    if len(old) == len(new):
        return zip(old, new, strict=True)
    shorter = min(len(old), len(new))
    start = next((at for at in range(shorter) if old[at].kind is not new[at].kind), shorter)
    end = next((at for at in range(shorter - start) if old[-1 - at].kind is not new[-1 - at].kind), shorter - start)
    middle = _by_kind(old[start : len(old) - end], new[start : len(new) - end])
    return (
        *zip(old[:start], new[:start], strict=True),
        *middle,
        *zip(old[len(old) - end :], new[len(new) - end :], strict=True),
    )


def _by_kind(old: Sequence[Week], new: Sequence[Week]) -> list[WeekPair]:
    """The first working week with the first, the second with the second, and so with the other kinds."""
    free: dict[Hashable, list[Week]] = defaultdict(list)
    for week in old:
        free[week.kind].append(week)
    return [(free[week.kind].pop(0), week) for week in new if free[week.kind]]
