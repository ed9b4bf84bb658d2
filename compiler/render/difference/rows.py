"""What a difference is read as: rows with a sign.

Comes in: nothing. Goes out: `Row` and `Sign`, which the other modules of this folder fill.
"""

from __future__ import annotations

from enum import Enum

from setwright.record import record


class Sign(Enum):
    """More of something, less of it, something else, or a rule that is broken now."""

    MORE = "+"
    LESS = "-"
    OTHER = "~"
    BROKEN = "!"


@record
class Row:
    """One statement, and the weeks (or what else it is about) in front of it."""

    sign: Sign
    when: str
    text: str
