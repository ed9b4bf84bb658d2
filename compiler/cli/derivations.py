"""Derivations for the terminal: under each line a short list of values, reasons and places.

Comes in: a plan and derivations of its lines. Goes out: text.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from setwright.diagnostics.printers.characters import visible
from setwright.plan import Plan
from setwright.render import words
from setwright.render.derivation import entries
from setwright.render.language import ENGLISH
from setwright.report.derivation import Derivation
from setwright.source import Span

INDENT = "  "
NO_BREAK = "\u00a0"


def text(plan: Plan, found: Sequence[Derivation]) -> str:
    """One plan's lines, each under its name and what it comes to."""
    if not found:
        return f"{_heading(plan, None)}nothing is done in that session\n"
    return _heading(plan, found[0]) + "\n".join(_one(one) for one in found)


def _heading(plan: Plan, first: Derivation | None) -> str:
    who = f" for {visible(plan.athlete)}" if plan.athlete else ""
    if first is None:
        return f"{visible(plan.name)}{who}\n"
    session, week = first.session, first.week
    date = f" ({session.date})" if session.date else ""
    day = f"day {session.slot}" if session.slot.isdigit() else session.slot
    return f"{visible(plan.name)}{who}: week {week.number}, block {visible(week.block)}, {day}{date}\n\n"


def _one(one: Derivation) -> str:
    name = f'{one.line.movement.name} "{one.line.label}"' if one.line.label else one.line.movement.name
    doses = _plain(" then ".join(_doses(one)))
    rows = [
        (entry.head, _plain(entry.value), _plain(entry.reason), _place(entry.place)) for entry in entries(one, ENGLISH)
    ]
    return f"{visible(name)}: {doses}\n" + "".join(f"{row}\n" for row in _aligned(rows))


def _doses(one: Derivation) -> Iterator[str]:
    for segment in one.line.work:
        effort = words.asked_effort(segment, ENGLISH)
        load = words.load(segment, ENGLISH)
        dose = words.dose(segment, ENGLISH) + (f" @ {effort}" if effort else "")
        yield f"{dose}, {load}" if load else dose


def _aligned(rows: Iterable[tuple[str, str, str, str]]) -> Iterator[str]:
    """Heads, values and reasons in columns, and the place behind them where it is not that of the entry above."""
    rows = list(rows)
    heads = max(len(row[0]) for row in rows)
    values = max(len(row[1]) for row in rows)
    above = ""
    for head, value, reason, place in rows:
        known = f"{INDENT}{head:<{heads}}{INDENT}{value:<{values}}{INDENT}{reason}"
        yield known if place == above else f"{known}  [{place}]"
        above = place


def _place(span: Span) -> str:
    return visible(f"{span.source.path}:{span.line}")


def _plain(text: str) -> str:
    return visible(text.replace(NO_BREAK, " "))
