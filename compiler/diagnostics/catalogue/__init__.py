"""Every code there is, one file a family, in the order of their numbers. `explain` prints from here."""

from __future__ import annotations

from importlib import import_module

from setwright.diagnostics.model import Code

FAMILIES = (
    "reading",
    "syntax",
    "names",
    "structure",
    "weeks",
    "athletes",
    "rules",
    "progressions",
    "sheets",
    "logs",
)


def every_code() -> tuple[Code, ...]:
    """All codes, in order."""
    return tuple(code for family in FAMILIES for code in import_module(f"{__name__}.{family}").CODES)
