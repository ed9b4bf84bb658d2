"""What comparing costs: `compare` of four plans, to `check` of the same four, both compiling anew. Run with Python."""

from __future__ import annotations

import os
import sys
from pathlib import Path

from measuring import compared, process

EXAMPLES = Path(__file__).parents[2] / "examples"
PLANS = tuple(
    str(EXAMPLES / folder / f"{folder}.plan")
    for folder in ("harbour-twelve-weeks", "fire-crew-eight-days", "quarry-town-test", "lighthouse-dumbbells")
)
COMMAND = (sys.executable, "-m", "setwright")
PAIRS = 15
MOST = 1.5


def main() -> None:
    check = process((*COMMAND, "check", "--no-cache", *PLANS), os.environ)
    print("four plans side by side, to `check` of all four")
    for form in ("table", "csv", "json", "html"):
        work = process((*COMMAND, "compare", *PLANS, "--format", form), os.environ)
        compared(f"  {form}", work, check, MOST, PAIRS)


if __name__ == "__main__":
    main()
