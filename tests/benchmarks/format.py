"""What formatting costs: `fmt` of a plan of 1,000 lines, to reading it. Run it with Python."""

from __future__ import annotations

from pathlib import Path

from measuring import compared

from setwright.source import Source
from setwright.syntax import LineReader
from setwright.syntax.formatter import Formatter

EXAMPLE = Path(__file__).parents[2] / "examples" / "harbour-twelve-weeks" / "harbour-twelve-weeks.plan"
LINES = 1000


def main() -> None:
    lines = EXAMPLE.read_text(encoding="utf-8").splitlines()
    head, blocks = lines[:22], lines[22:]
    text = "\n".join([*head, *(blocks * (LINES // len(blocks) + 1))][:LINES]) + "\n"
    formatter, reader = Formatter(), LineReader()
    assert isinstance(formatter.formatted(Source("long.plan", text)), str)
    compared(
        f"fmt of {LINES} lines, to reading them",
        lambda: formatter.formatted(Source("long.plan", text)),
        lambda: reader.read(Source("long.plan", text)),
        most=3.0,
        pairs=9,
    )


if __name__ == "__main__":
    main()
