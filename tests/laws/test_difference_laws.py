"""What holds for every difference: nothing from a plan to itself, the same from either side, all differing is told."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from laws.test_plan_laws import HEAD, Block, blocks, compile_text, deloads, plans, prescriptions
from setwright.plan import Plan
from setwright.record import field_names, replace
from setwright.report.difference import difference
from setwright.report.difference.alike import segment_print
from setwright.report.difference.model import OF_WORK, BlockChange, Change, Day, Difference, Fate
from setwright.rules import Promise
from setwright.source import Source
from setwright.syntax.formatter import Formatter

few = settings(max_examples=60)


def text_of(blocks: list[Block]) -> str:
    made = ['plan "Quay"', *(line for number, block in enumerate(blocks) for line in block.lines(f"B{number}"))]
    return HEAD + "\n".join(made) + "\n"


@st.composite
def edited(draw: st.DrawFn) -> tuple[str, str]:
    """A plan, and the same with the line of one day, the length or the deload of one block written anew."""
    made = draw(st.lists(blocks, min_size=1, max_size=2))
    at = draw(st.integers(0, len(made) - 1))
    block = made[at]
    match draw(st.sampled_from(["line", "weeks", "deload"])):
        case "line":
            day = draw(st.integers(0, len(block.days) - 1))
            days = (*block.days[:day], draw(prescriptions), *block.days[day + 1 :])
            other = replace(block, days=days)
        case "weeks":
            other = replace(block, weeks=draw(st.integers(2, 6)))
        case _:
            other = replace(block, deload=draw(st.none() | deloads))
    return text_of(made), text_of([*made[:at], other, *made[at + 1 :]])


pairs = st.tuples(plans, plans) | edited()
Side = tuple[Plan, Promise]


@few
@given(plans)
def test_nothing_changes_from_a_plan_to_itself(text: str) -> None:
    assert between(text, text).is_empty


@few
@given(plans)
def test_formatting_is_no_change(text: str) -> None:
    made = Formatter().formatted(Source("law.plan", text))
    assert isinstance(made, str)
    assert between(text, made).is_empty


@few
@given(plans)
def test_comments_and_the_order_of_declarations_are_no_change(text: str) -> None:
    head, plan = text.split("\n\nathlete", 1)[0], text[text.index("plan ") :]
    athlete = text[len(head) : text.index("plan ")]
    assert between(text, f"# Another order.\n{plan}{athlete}\n{head}\n").is_empty


@few
@given(pairs)
def test_the_difference_is_the_same_from_either_side(both: tuple[str, str]) -> None:
    old, new = both
    assert canonical(mirrored(between(old, new))) == canonical(between(new, old))


@few
@given(pairs)
def test_what_differs_is_told_and_nothing_else(both: tuple[str, str]) -> None:
    old, new = both
    found = between(old, new)
    here, there = segments(one(old)[0]), segments(one(new)[0])
    differing = {place for place in here.keys() | there.keys() if here.get(place) != there.get(place)}
    numbers = {week.number: (week.block, week.number_in_block) for week in one(new)[0].weeks}
    whole = {name for block in found.blocks if is_whole(block) for name in names(block)}
    told = {place for block in found.blocks if not is_whole(block) for place in places(block, numbers)}
    eased = {week for block in found.blocks for change in block.changes for week in weeks_of(change, numbers)}
    # Of a session that moved to another day, both days are told by the move.
    moved = {slot for block in found.blocks for slot in moved_slots(block)}
    differing, told = ({place for place in side if (place[0], place[2]) not in moved} for side in (differing, told))
    assert {place for place in differing if place[0] not in whole and place[:2] not in eased} <= told
    assert told <= differing


# ---- reading a difference ------------------------------------------------------------------------

Place = tuple[str, int, str, str]  # block, number in it, day, movement; a generated day has one line
Numbers = dict[int, tuple[str, int]]  # of a week of the new plan: its block, and its number there


def segments(plan: Plan) -> dict[Place, tuple[object, ...]]:
    """What the sheet shows of every line."""
    return {
        (week.block, week.number_in_block, session.slot, line.movement.name): tuple(map(segment_print, line.segments))
        for week in plan.weeks
        for session in week.sessions
        for line in session.lines
    }


def is_whole(block: BlockChange) -> bool:
    """True where weeks or the block itself came or went, so that a number in it may mean another week."""
    return block.fate is not Fate.CHANGED or bool(block.added or block.dropped)


def moved_slots(block: BlockChange) -> Iterator[tuple[str, str]]:
    for session in block.sessions:
        if session.moved:
            yield from ((name, side.slot) for name in names(block) for side in (session.old, session.new) if side)


def names(block: BlockChange) -> set[str]:
    return {side.name for side in (block.old, block.new) if side is not None}


def places(block: BlockChange, numbers: Numbers) -> Iterator[Place]:
    """Where the work of a line is said to be another."""
    for session in block.sessions:
        for side in (session.old, session.new):
            for line in session.lines if side is not None else ():
                changes = [change for change in line.changes if change.aspect in OF_WORK]
                for week in {week for change in changes for week in weeks_of(change, numbers)}:
                    yield (*week, side.slot, line.new or line.old or "")
        slot = (session.new or session.old or Day("", None)).slot
        for work in session.work:
            # The blocks are as long as each other, so that a week has one number in both.
            at = work.week - (block.new if session.fate is Fate.ADDED else block.old).first_week + 1  # type: ignore[union-attr]
            yield from ((block.new.name, at, slot, movement) for movement, _ in work.lines)  # type: ignore[union-attr]


def weeks_of(change: Change, numbers: Numbers) -> set[tuple[str, int]]:
    return {numbers[new] for stretch in change.stretches for _, new in stretch.weeks}


# ---- the other side ------------------------------------------------------------------------------

OPPOSITE = {Fate.ADDED: Fate.DROPPED, Fate.DROPPED: Fate.ADDED}
SIDES = {"old": "new", "new": "old", "before": "after", "after": "before", "added": "dropped", "dropped": "added"}


def mirrored(of: Any, field: str = "") -> Any:
    """The same with the sides changed."""
    if isinstance(of, Fate):
        return OPPOSITE.get(of, of)
    if field in ("weeks", "shifted") and isinstance(of, tuple) and all(isinstance(each, tuple) for each in of):
        return tuple((new, old) for old, new in of)
    if field == "more":
        return replace(of, low=-of.high, high=-of.low)
    if isinstance(of, tuple):
        return tuple(mirrored(each) for each in of)
    if type(of).__module__.endswith("difference.model") and hasattr(type(of), "__match_args__"):
        values = {name: mirrored(getattr(of, name), name) for name in field_names(type(of))}
        return type(of)(**{SIDES.get(name, name): value for name, value in values.items()})
    return of


def canonical(of: Difference) -> Counter[str]:
    """All that is told, without the order in which it is."""
    return Counter(leaves(of))


def leaves(of: Any, path: str = "") -> list[str]:
    if isinstance(of, tuple):
        return [leaf for each in of for leaf in leaves(each, path)]
    if type(of).__module__.endswith("difference.model") and hasattr(type(of), "__match_args__"):
        names = field_names(type(of))
        return [leaf for name in names for leaf in leaves(getattr(of, name), f"{path}.{name}")]
    return [f"{path}={of!r}"]


def between(old: str, new: str) -> Difference:
    return difference(one(old), one(new))


def one(text: str) -> Side:
    compiled = compile_text(text)
    assert not compiled.has_errors, [f"{found.span}: {found.message}" for found in compiled.diagnostics]
    (made,) = compiled.compilations
    return made.plan, made.promise
