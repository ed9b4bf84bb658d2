"""How hard a whole session was, and how long: the line `effort 7 of 10, 65 min` under a `session`.

Comes in: a session's lines. Goes out: an effort from 0 to 10 and minutes, None for what is not written.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import athletes as codes
from setwright.diagnostics.catalogue import structure
from setwright.link.values import TIMES
from setwright.science.load_management import HIGHEST_SESSION_EFFORT
from setwright.syntax import nodes as n

LONGEST_MIN: Final = 1440  # a day

Whole = tuple[Fraction | None, Fraction | None]


def whole_session(statement: n.Statement, problems: list[Diagnostic]) -> Whole:
    """The effort of the whole session and its minutes; a line that says something else is reported and left out."""
    found = [line.node for line in statement.body if isinstance(line.node, n.Setting) and line.node.word == "effort"]
    for other in found[1:]:
        problems.append(structure.SETTING_TWICE.at(other.span, word="effort"))
    if not found:
        return None, None
    read = _read(found[0])
    if read is None:
        problems.append(codes.SESSION_EFFORT.at(found[0].span, found=found[0].span.text))
        return None, None
    return read


def _read(line: n.Setting) -> Whole | None:
    felt, scale, *length = line.values
    effort = _exact(felt)
    if not isinstance(scale, n.Name) or effort is None or _unit(felt) is not None:
        return None
    if scale.text != str(HIGHEST_SESSION_EFFORT) or not 0 <= effort <= HIGHEST_SESSION_EFFORT:
        return None
    if not length:
        return effort, None
    amount, unit = _exact(length[0]), _unit(length[0])
    if amount is None or unit not in TIMES:
        return None
    minutes = amount * TIMES[unit] / 60
    return (effort, minutes) if 0 < minutes <= LONGEST_MIN else None


def _exact(value: object) -> Fraction | None:
    plain = isinstance(value, n.Item) and value.low is not None and value.low == value.high
    usual = isinstance(value, n.Item) and not (value.rpe or value.at_least or value.per_side or value.cluster)
    return value.low if plain and usual and isinstance(value, n.Item) else None


def _unit(value: object) -> str | None:
    return value.unit if isinstance(value, n.Item) else None
