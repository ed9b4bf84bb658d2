"""What changes for the athlete, arranged to be read: once for the terminal, for Markdown and for HTML.

Comes in: a `Difference` or `FileDifference`. Goes out: `Part`s of rows in a coach's words.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from setwright.check.weeks import phrase
from setwright.plan import SegmentKind
from setwright.record import record
from setwright.render.difference.consequences import consequence_rows
from setwright.render.difference.rows import Row, Sign
from setwright.render.difference.rules import rule_rows
from setwright.render.difference.words import fact, said, work
from setwright.report.difference.model import (
    BlockChange,
    Day,
    DayWork,
    Difference,
    Fate,
    FileDifference,
    Heading,
    LineChange,
    SessionChange,
    Stretched,
    Weeks,
    Whole,
    Written,
)

NO_CHANGE: Final = "No change for the athlete."
CONSEQUENCE: Final = "What it comes to"


@record
class Part:
    """Rows that are read together, under a heading: 1 a plan, 2 a block, 3 a day."""

    level: int
    title: str
    rows: tuple[Row, ...]


def parts(of: FileDifference) -> tuple[Part, ...]:
    """Everything that changes, plan by plan; nothing where there is no change."""
    changed = (part for pair in of.pairs if not pair.is_empty for part in _pair(pair))
    alone = [
        *(Part(1, _heading(whole.heading), (_whole(whole, Sign.MORE),)) for whole in of.added),
        *(Part(1, _heading(whole.heading), (_whole(whole, Sign.LESS),)) for whole in of.dropped),
    ]
    return (*changed, *alone)


def _pair(of: Difference) -> Iterator[Part]:
    yield Part(1, _heading(of.new), tuple(_plan_rows(of)))
    for block in of.blocks:
        yield Part(2, _block_title(block), tuple(_block_rows(block)))
        yield from (Part(3, _day_title(session), tuple(_session_rows(session))) for session in block.sessions)
    comes_to = tuple(consequence_rows(of.consequence))
    if comes_to:
        yield Part(2, CONSEQUENCE, comes_to)


def _plan_rows(of: Difference) -> Iterator[Row]:
    yield from (Row(Sign.OTHER, "", _capital(fact(each))) for each in of.facts)
    yield from (row for change in of.rules for row in rule_rows(change))
    for movement in of.movements:
        yield Row(Sign.OTHER, "", f"{movement.name}: {'; '.join(fact(each) for each in movement.facts)}")
    if of.shifted:
        yield Row(Sign.OTHER, "", f"Later weeks move: {_shift(of.shifted)}")


def _shift(weeks: Weeks) -> str:
    """`weeks 5-8 are now weeks 6-9`, a clause for each number of weeks by which they move."""
    by_distance: dict[int, list[tuple[int, int]]] = {}
    for old, new in weeks:
        by_distance.setdefault(new - old, []).append((old, new))
    return "; ".join(
        f"{phrase(old for old, _ in found)} {'is' if len(found) == 1 else 'are'} now {phrase(new for _, new in found)}"
        for found in by_distance.values()
    )


# ---- blocks --------------------------------------------------------------------------------------


def _block_title(block: BlockChange) -> str:
    here = block.new or block.old
    assert here is not None
    return f"{here.name}, {_weeks_of(here)}"


def _block_rows(block: BlockChange) -> Iterator[Row]:
    old, new = block.old, block.new
    if old is None or new is None:
        sign, word = (Sign.MORE, "new") if old is None else (Sign.LESS, "dropped")
        here = new or old
        assert here is not None
        yield Row(sign, "", f"The block is {word}: {_count(here.length, 'week')}")
        return
    if old.name != new.name:
        yield Row(Sign.OTHER, "", f"{old.name} is now called {new.name}")
    if old.length != new.length:
        by = abs(new.length - old.length)
        longer = "longer" if new.length > old.length else "shorter"
        yield Row(Sign.OTHER, "", f"{_count(by, 'week')} {longer}: {old.length} became {new.length}")
    if block.added:
        yield Row(Sign.MORE, phrase(block.added), "new")
    if block.dropped:
        yield Row(Sign.LESS, f"{phrase(block.dropped)} as it was", "dropped")
    for change in block.changes:
        for stretch in change.stretches:
            yield Row(Sign.OTHER, _when(stretch.weeks), said(change, stretch))


# ---- days and lines ------------------------------------------------------------------------------


def _day_title(session: SessionChange) -> str:
    here = session.new or session.old
    assert here is not None
    return _day(here)


def _day(day: Day) -> str:
    slot = f"Day {day.slot}" if day.slot.isdecimal() else day.slot
    return f"{slot}, {day.label}" if day.label else slot


def _session_rows(session: SessionChange) -> Iterator[Row]:
    if session.work:
        sign, word = (Sign.MORE, "new") if session.fate is Fate.ADDED else (Sign.LESS, "dropped")
        weeks = phrase(each.week for each in session.work)
        yield Row(sign, weeks, f"{word}: {_work_of_day(session.work[0])}")
    if session.moved and session.old is not None and session.new is not None:
        yield Row(Sign.OTHER, _when(session.weeks), f"moved here from {_slot(session.old.slot)}")
    for change in session.changes:
        for stretch in change.stretches:
            yield Row(Sign.OTHER, _when(stretch.weeks), _capital(said(change, stretch)))
    yield from (row for line in session.lines for row in _line_rows(line))


def _slot(slot: str) -> str:
    return f"day {slot}" if slot.isdecimal() else slot


def _work_of_day(work: DayWork) -> str:
    return ", ".join(f"{name} ({_count(sets, 'set')})" for name, sets in work.lines) or "no movements"


def _line_rows(line: LineChange) -> Iterator[Row]:
    if line.written:
        yield from _alone(line)
        return
    by_weeks: dict[Weeks, list[str]] = {}
    for change in line.changes:
        for stretch in change.stretches:
            by_weeks.setdefault(stretch.weeks, []).append(said(change, stretch))
    name = _name(line)
    if line.fate is Fate.SWAPPED:
        same = by_weeks.pop(line.weeks, [])
        more = f"; {'; '.join(same)}" if same else ", sets and effort as before" if not by_weeks else ""
        yield Row(Sign.OTHER, _when(line.weeks), f"{line.old} swapped for {name}{more}")
    for text, weeks in _merged(by_weeks):
        yield Row(Sign.OTHER, _when(weeks), f"{name}: {text}")


def _merged(by_weeks: dict[Weeks, list[str]]) -> list[tuple[str, Weeks]]:
    """What is said of weeks, once for all weeks of which the same is said; in the order of the weeks."""
    by_text: dict[str, Weeks] = {}
    for weeks, texts in by_weeks.items():
        by_text["; ".join(texts)] = tuple(sorted((*by_text.get("; ".join(texts), ()), *weeks)))
    return sorted(by_text.items(), key=lambda one: one[1])


def _alone(line: LineChange) -> Iterator[Row]:
    """A line of one side: what is done, the first and the last week of a course."""
    sign, word = (Sign.MORE, "added") if line.fate is Fate.ADDED else (Sign.LESS, "dropped")
    yield Row(sign, phrase(each.week for each in line.written), f"{_name(line)} {word}: {_written(line.written)}")


def _written(written: tuple[Written, ...]) -> str:
    texts = [work(segment for segment in one.segments if segment.kind is not SegmentKind.WARM_UP) for one in written]
    first, last = texts[0], texts[-1]
    return first if len(set(texts)) == 1 else f"{first} → {last}"


def _name(line: LineChange) -> str:
    name = line.new or line.old or ""
    return f"{name} ({line.label})" if line.label else name


# ---- words ---------------------------------------------------------------------------------------


def _heading(heading: Heading) -> str:
    return f"{heading.plan}, for {heading.athlete}" if heading.athlete else heading.plan


def _whole(whole: Whole, sign: Sign) -> Row:
    weeks = whole.blocks[-1].last_week if whole.blocks else 0
    blocks = ", ".join(block.name for block in whole.blocks)
    word = "New plan" if sign is Sign.MORE else "The plan is gone"
    sessions, sets = _count(whole.sessions, "session"), _count(whole.sets, "set")
    return Row(sign, "", f"{word}: {_count(weeks, 'week')} ({blocks}), {sessions}, {sets}")


def _weeks_of(block: Stretched) -> str:
    return phrase(range(block.first_week, block.last_week + 1))


def _when(weeks: Weeks) -> str:
    return phrase(new for _, new in weeks)


def _count(number: int, thing: str) -> str:
    return f"{number} {thing}{'' if number == 1 else 's'}"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
