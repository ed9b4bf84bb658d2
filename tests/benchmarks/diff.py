"""What a difference costs: `diff` of two plans of sixteen weeks, to `check` of both, uncached. Run with Python."""

from __future__ import annotations

import os
import re
import sys
import tempfile
from pathlib import Path

from measuring import compared, process

EXAMPLE = Path(__file__).parents[2] / "examples" / "harbour-twelve-weeks" / "harbour-twelve-weeks.plan"
COMMAND = (sys.executable, "-m", "setwright")
PAIRS = 15
MOST = 2.0


def main() -> None:
    old = sixteen_weeks(EXAMPLE.read_text(encoding="utf-8"))
    edited = re.sub(r"(: +)3 x", r"\g<1>4 x", old).replace("RPE 7 -> 8,", "RPE 7.5 -> 8,")
    with tempfile.TemporaryDirectory() as folder:
        sides = [Path(folder, name) for name in ("old.plan", "new.plan")]
        for side, text in zip(sides, (old, edited), strict=True):
            side.write_text(text, encoding="utf-8")
        files = [str(side) for side in sides]
        check = process((*COMMAND, "check", "--no-cache", *files), os.environ)
        print("two plans of sixteen weeks, every day edited, to `check` of both")
        for form in ("text", "markdown", "html", "json"):
            work = process((*COMMAND, "diff", *files, "--format", form), os.environ)
            compared(f"  {form}", work, check, MOST, PAIRS)


def sixteen_weeks(text: str) -> str:
    """The example of twelve weeks with four more before its test; without its `must`, at which `check` would fail."""
    more = "  block Strength Again: 4 weeks like Strength\n    deload week 4: sets 50%, load 90%, effort RPE 6\n\n"
    held = "\n".join(line for line in text.splitlines() if not line.startswith("  must"))
    return held.replace("  block Test Week", f"{more}  block Test Week") + "\n"


if __name__ == "__main__":
    main()
