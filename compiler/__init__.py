"""Setwright: strength-training plans as plain text, compiled.

The public names are fetched when first asked for, so that importing the package costs nothing.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from setwright.diagnostics import Diagnostic, Severity
    from setwright.pipeline import Compilation, Compiled, compile, library
    from setwright.plan import Line, Plan, Segment, Session, Week
    from setwright.source import Source, Span

__version__ = "0.1.0"

__all__ = [
    "Compilation",
    "Compiled",
    "Diagnostic",
    "Line",
    "Plan",
    "Segment",
    "Session",
    "Severity",
    "Source",
    "Span",
    "Week",
    "__version__",
    "compile",
    "library",
]

_HOMES = {
    "setwright.pipeline": ("Compilation", "Compiled", "compile", "library"),
    "setwright.plan": ("Line", "Plan", "Segment", "Session", "Week"),
    "setwright.diagnostics": ("Diagnostic", "Severity"),
    "setwright.source": ("Source", "Span"),
}


def __getattr__(name: str) -> object:
    from importlib import import_module

    for module, names in _HOMES.items():
        if name in names:
            return getattr(import_module(module), name)
    raise AttributeError(f"module 'setwright' has no attribute {name!r}")


def __dir__() -> list[str]:
    return sorted({*globals(), *__all__})
