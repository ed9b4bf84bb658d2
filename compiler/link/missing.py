"""A line that is missing at the top of a file.

Comes in: a name that nothing declares. Goes out: help that says which `use` may be missing, and the line as a fix.
"""

from __future__ import annotations

from setwright.diagnostics import Fix
from setwright.source import Span
from setwright.syntax.nodes import Name


def missing_use(file: str, name: Name) -> tuple[str, Fix]:
    """Help for a name that a file of the shipped library may declare, and the line that uses the file."""
    source = name.span.source
    first = 2 if source.line(1).startswith("language") else 1
    line = f"use stdlib.{file}"
    return f"Perhaps `{line}` is missing.", Fix(Span(source, first, 0, 0), f"{line}\n")
