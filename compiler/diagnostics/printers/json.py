"""Findings for programs: the plain records as a JSON array."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from setwright.diagnostics.plain import Record


def text(records: Sequence[Record]) -> str:
    """The records as an array, in ASCII, ending in a line end."""
    from json import dumps

    return dumps(list(records), indent=2) + "\n"
