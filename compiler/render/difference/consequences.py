"""What the changes come to, in words: sets a muscle, effort, minutes, broken rules.

Comes in: a `Consequence`. Goes out: rows.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.check.bounds import with_unit
from setwright.check.weeks import phrase
from setwright.plan import WeekKind
from setwright.quantities import plain
from setwright.render.difference.rows import Row, Sign
from setwright.report.difference.model import (
    BreachChange,
    Broken,
    Consequence,
    Figure,
    FigureChange,
    MuscleChange,
    Range,
    Weeks,
)
from setwright.rules import BoundUnit

PLACES: Final = 1


def consequence_rows(of: Consequence) -> Iterator[Row]:
    """Muscles first, in library order, working weeks before the others."""
    ordered = sorted(of.muscles, key=lambda muscle: muscle.kind is not WeekKind.WORKING)
    yield from (_muscle(muscle) for muscle in ordered)
    yield from (_figure(figure) for figure in of.figures if _shows(figure))
    yield from (_breach(breach) for breach in of.breaches)


def _muscle(of: MuscleChange) -> Row:
    more = f"{_signed(of.more.low)} to {_signed(of.more.high)}" if of.more.low != of.more.high else _signed(of.more.low)
    sign = Sign.MORE if of.more.low > 0 else Sign.LESS if of.more.high < 0 else Sign.OTHER
    light = "" if of.kind is WeekKind.WORKING else " (deload or test)"
    return Row(
        sign,
        _when(of.weeks),
        f"{of.title}: {_sets(of.before)} a week became {_range(of.after)} ({more}){light}",
    )


def _sets(of: Range) -> str:
    return f"{_range(of)} {'set' if of.low == of.high == 1 else 'sets'}"


def _shows(of: FigureChange) -> bool:
    """Half a minute of an estimate is nothing to tell."""
    return _text(of, of.before) != _text(of, of.after)


def _figure(of: FigureChange) -> Row:
    name = _NAMES[of.figure]
    if of.figure is Figure.SESSION_MINUTES:
        name = f"{of.new} takes" if of.old == of.new else f"{of.new} (was {of.old}) takes"
    unit = " min" if of.figure in (Figure.SESSION_MINUTES, Figure.WEEK_MINUTES) else ""
    before = _text(of, of.before)
    return Row(Sign.OTHER, _when(of.weeks), f"{name} {before}{unit}, now {_text(of, of.after)}{unit}")


_NAMES: Final = {
    Figure.SETS: "All sets of the week:",
    Figure.HIGHEST_EFFORT: "Hardest set:",
    Figure.MEAN_EFFORT: "Mean effort:",
    Figure.WEEK_MINUTES: "The week takes",
    Figure.SESSION_MINUTES: "",
}


def _text(of: FigureChange, side: Range | None) -> str:
    if side is None:
        return "none stated"
    match of.figure:
        case Figure.HIGHEST_EFFORT | Figure.MEAN_EFFORT:
            return f"RPE {_range(side)}"
        case Figure.SESSION_MINUTES | Figure.WEEK_MINUTES:
            return _range(side, 0)
        case Figure.SETS:
            return _range(side)


def _breach(of: BreachChange) -> Row:
    whom = f" for {of.subject}" if of.subject else ""
    day = "" if of.slot is None else f", {'day ' if of.slot.isdecimal() else ''}{of.slot}"
    what = f"{of.code} {of.measure}{whom}{day}"
    old, new = of.old, of.new
    if new is None and old is not None:
        return Row(Sign.OTHER, phrase(old.weeks), f"{what}: no longer outside {_asked(old)}")
    assert new is not None
    if old is None:
        return Row(Sign.BROKEN, phrase(new.weeks), f"{what}: now {_figures(new)}, outside {_asked(new)}")
    was = f"was {_figures(old)} in {phrase(old.weeks)}" if old.weeks != new.weeks else f"was {_figures(old)}"
    return Row(Sign.OTHER, phrase(new.weeks), f"{what}: {_figures(new)}, outside {_asked(new)} ({was})")


def _asked(of: Broken) -> str:
    return f"the {of.rule.bound.text} asked for"


def _figures(of: Broken) -> str:
    places = 2 if of.rule.bound.unit is BoundUnit.NUMBER else PLACES
    return with_unit(_range(of.figures, places), of.rule.bound.unit)


def _range(of: Range, places: int = PLACES) -> str:
    low, high = plain(of.low, places), plain(of.high, places)
    return low if low == high else f"{low}-{high}"


def _signed(value: Fraction) -> str:
    return ("+" if value > 0 else "") + plain(value, PLACES)


def _when(weeks: Weeks) -> str:
    return phrase(new for _, new in weeks)
