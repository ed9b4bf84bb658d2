"""The way out: standard output and standard error, whatever they can show, and whether in colour."""

from __future__ import annotations

import os
import sys
from typing import TextIO


def wants_colour(stream: TextIO | None) -> bool:
    """Colour only on a terminal, and never with NO_COLOR (no-color.org: set and not empty). Decided here alone."""
    is_terminal = stream is not None and stream.isatty()
    return is_terminal and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def put(text: str, stream: TextIO | None = None) -> None:
    """Write text, to standard output unless told otherwise; what its encoding lacks becomes an escape."""
    stream = stream or sys.stdout
    if stream is None:  # the shell closed it: `>&-`
        return
    encoding = stream.encoding or "utf-8"
    stream.write(text.encode(encoding, "backslashreplace").decode(encoding))
    stream.flush()


def tell(text: str) -> None:
    """One line on standard error, about what was done."""
    put(text + "\n", sys.stderr)
