"""What was done beside what was asked, in the terminal: what one wants to know first, tables, bests drawn in a line.

Comes in: `Adherence`. Goes out: text. Only layout happens here.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from textwrap import wrap

from setwright.cli.figures import aligned
from setwright.diagnostics.printers.characters import visible
from setwright.log.estimates import MovementBests
from setwright.quantities import plain, round_half_up
from setwright.render import adherence as said
from setwright.report.adherence import Adherence, WeekDone

_LINE = 100
_UNBROKEN = "\u00a0"  # a space of print, which copies badly out of a terminal
_WEEKS_ACROSS = 10
_BARS = "▁▂▃▄▅▆▇█"
_WIDEST = 20  # characters of a bar


def text(of: Adherence) -> str:
    """The whole report."""
    lines = [visible(said.title(of)), *aligned([(name, visible(value)) for name, value in said.summary(of)], left=2)]
    for table in said.tables(of):
        lines += ["", table.title, *wrap(table.note, _LINE, initial_indent="  ", subsequent_indent="  ")]
        lines += _figures(table)
        if table.title == "Estimated bests":
            lines += _drawn(of)
        elif table.title == "Sessions and sets":
            lines += _bars(of)
    if len(lines) <= len(said.summary(of)) + 1:
        lines += ["", "Nothing of this plan is over yet, and the log has nothing of it."]
    return "\n".join(lines).replace(_UNBROKEN, " ") + "\n"


def _figures(table: said.Table) -> Iterator[str]:
    """A table with many weeks across goes on below."""
    head, *rows = [tuple(visible(cell) for cell in row) for row in (table.head, *table.rows)]
    if table.title != "Sets for muscles" or len(head) <= _WEEKS_ACROSS + 1:
        yield from aligned([head, *rows], left=table.left)
        return
    for at in range(1, len(head), _WEEKS_ACROSS):
        yield from aligned([(row[0], *row[at : at + _WEEKS_ACROSS]) for row in (head, *rows)], left=table.left)


def _bars(of: Adherence) -> Iterator[str]:
    """A line a week, as long as its planned sets: what was done, what is missing of what was due, what is to come."""
    most = max((week.sets_planned for week in of.begun), default=0)
    if most:
        yield f"  Sets a week: █ done, ░ due and not done, · to come; the longest is {most}"
        yield from aligned([(f"  {said.week_name(week)}", _bar(week, most)) for week in of.begun], left=2)


def _bar(week: WeekDone, most: int) -> str:
    done, due, all_ = (_long(sets, most) for sets in (week.sets_done, week.sets_due, week.sets_planned))
    return "█" * done + "░" * (due - done) + "·" * (all_ - due)


def _long(sets: int, most: int) -> int:
    return int(round_half_up(Fraction(sets * _WIDEST, most)))


def _drawn(of: Adherence) -> Iterator[str]:
    """The estimates of each movement's days, lowest to highest."""
    rows = [(f"  {visible(one.movement.name)}", _line(one), _ends(one)) for one in of.bests if len(one.in_window) > 1]
    if rows:
        yield "  Estimates day by day, each from its lowest to its highest:"
        yield from aligned(rows, left=3)


def _line(one: MovementBests) -> str:
    amounts = [each.best.to(one.unit).amount for each in one.in_window][-2 * _WIDEST :]
    low, high = min(amounts), max(amounts)
    if low == high:
        return _BARS[3] * len(amounts)
    return "".join(_BARS[int((amount - low) * (len(_BARS) - 1) / (high - low))] for amount in amounts)


def _ends(one: MovementBests) -> str:
    amounts = [each.best.to(one.unit).amount for each in one.in_window]
    return f"{plain(min(amounts), 1)}-{plain(max(amounts), 1)} {one.unit.value}"
