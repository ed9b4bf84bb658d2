"""What stands before the weeks besides tables: what the loads rest on, and how each movement is done or replaced.

Comes in: a plan. Goes out: records of text, in the plan's order.
"""

from __future__ import annotations

from setwright.plan import Line, Plan
from setwright.record import record
from setwright.render import words
from setwright.render.language import Language


@record
class Fact:
    """Something known of the athlete: `31.2 kg`, and in `known` how: `tested`, `estimated from 24 kg x 8`."""

    name: str
    value: str
    known: str | None


@record
class Entry:
    """A movement with its cue and what may stand in for it anywhere in the plan."""

    name: str
    cue: str | None
    swaps: str | None


def facts(plan: Plan, language: Language) -> tuple[Fact, ...]:
    """The athlete's facts; what stands in brackets after a value says how it is known."""
    return tuple(_fact(name, value, language) for name, value in plan.athlete_facts)


def movements(plan: Plan) -> tuple[Entry, ...]:
    """Every movement that has a cue or a swap, once, where it first comes up."""
    found: dict[str, list[Line]] = {}
    for week in plan.weeks:
        for session in week.sessions:
            for line in session.lines:
                found.setdefault(line.movement.name, []).append(line)
    entries = (_entry(lines) for lines in found.values())
    return tuple(entry for entry in entries if entry.cue or entry.swaps)


def _fact(name: str, value: str, language: Language) -> Fact:
    said = language.said(value)
    if not said.endswith(")") or " (" not in said:
        return Fact(name, said, None)
    first, _, known = said.removesuffix(")").partition(" (")
    return Fact(name, first.replace(" ", words.NO_BREAK), known.replace(" x ", f" {words.TIMES} "))


def _entry(lines: list[Line]) -> Entry:
    movement = lines[0].movement
    swaps = dict.fromkeys((*(swap for line in lines for swap in line.swaps), *movement.swaps))
    return Entry(movement.name, movement.cue, ", ".join(swaps) or None)
