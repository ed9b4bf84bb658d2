"""Weeks that became easier or harder as a whole: a deload that came, went, or eases otherwise.

Comes in: a block's weeks and the changes found in them. Goes out: what is said of the week, and the changes without it.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from setwright.check.figures.effort import stated_effort
from setwright.plan import Week, WeekKind
from setwright.record import replace
from setwright.report.difference.blocks import WeekPair
from setwright.report.difference.model import OF_WORK, Aspect, Change, Easing, LineChange, SessionChange, Stretch
from setwright.report.difference.stretches import Seen, change

FEWEST_LINES: Final = 2  # one line that changes in a deload alone is told by itself


def eased(
    weeks: Sequence[WeekPair], sessions: Sequence[SessionChange]
) -> tuple[tuple[Change, ...], tuple[SessionChange, ...]]:
    """The changes of whole weeks, and the sessions without the changes of lines that only follow from them."""
    turned = {new.number for old, new in weeks if old.kind is not new.kind and WeekKind.DELOAD in (old.kind, new.kind)}
    easings = {new.number: (week, _easing(old), _easing(new)) for week in weeks for old, new in [week] if _eases(week)}
    deloads = {number for number, (_, before, after) in easings.items() if before != after} - turned
    lines = [line for session in sessions for line in session.lines]
    follow = {id(line) for line in lines if _only_in(line, deloads | turned)}
    whole = turned | {number for number in deloads if _touching(lines, follow, number) >= FEWEST_LINES}
    if not whole:
        return (), tuple(sessions)
    kinds = (Seen(week, week[0].kind, week[1].kind) for week in weeks if week[1].number in turned)
    ease = (Seen(*easings[number]) for number in sorted(whole))
    changes = (*change(Aspect.WEEK_KIND, kinds), *change(Aspect.EASING, ease))
    left = (_without(session, whole & turned, whole, follow) for session in sessions)
    return changes, tuple(session for session in left if session is not None)


def _eases(week: WeekPair) -> bool:
    return WeekKind.DELOAD in (week[0].kind, week[1].kind)


def _only_in(line: LineChange, numbers: set[int]) -> bool:
    """True where the line's work changes in these weeks alone."""
    found = {new for change in line.changes if change.aspect in OF_WORK for s in change.stretches for _, new in s.weeks}
    return bool(found) and found <= numbers


def _touching(lines: Sequence[LineChange], follow: set[int], number: int) -> int:
    return sum(
        any(number == new for change in line.changes for stretch in change.stretches for _, new in stretch.weeks)
        for line in lines
        if id(line) in follow
    )


def _without(session: SessionChange, turned: set[int], whole: set[int], follow: set[int]) -> SessionChange | None:
    lines = [_line_without(line, whole if id(line) in follow else turned, whole) for line in session.lines]
    kept = replace(session, lines=tuple(line for line in lines if line is not None))
    return kept if kept.lines or kept.changes or kept.moved or kept.work else None


def _line_without(line: LineChange, numbers: set[int], whole: set[int]) -> LineChange | None:
    """What the whole week says of the share of loads is not said again of a line."""
    if not line.changes:
        return line
    changes = [
        _change_without(change, whole if change.aspect is Aspect.LOAD_FACTOR else numbers)
        if change.aspect in OF_WORK
        else change
        for change in line.changes
    ]
    kept = replace(line, changes=tuple(change for change in changes if change is not None))
    return kept if kept.changes or kept.old != kept.new else None


def _change_without(change: Change, numbers: set[int]) -> Change | None:
    stretches = [_stretch_without(stretch, numbers) for stretch in change.stretches]
    kept = tuple(stretch for stretch in stretches if stretch.weeks)
    return replace(change, stretches=kept) if kept else None


def _stretch_without(stretch: Stretch, numbers: set[int]) -> Stretch:
    places = [at for at, (_, new) in enumerate(stretch.weeks) if new not in numbers]
    return Stretch(
        stretch.kind,
        tuple(stretch.weeks[at] for at in places),
        tuple(stretch.before[at] for at in places),
        tuple(stretch.after[at] for at in places),
    )


def _easing(week: Week) -> Easing:
    segments = [segment for session in week.sessions for line in session.lines for segment in line.work]
    factors = {segment.load_factor for segment in segments} - {Fraction(1)}
    efforts = [effort for segment in segments if (effort := stated_effort(segment)) is not None]
    sets = sum(segment.sets for segment in segments)
    return Easing(sets, factors.pop() if len(factors) == 1 else None, max(efforts, default=None))
