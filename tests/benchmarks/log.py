"""What a log of ten years costs: 1,500 sessions, 30,000 sets, and a plan of twelve weeks. Run this file with Python."""

from __future__ import annotations

import os
import random
import shutil
import sys
import tempfile
from datetime import date, timedelta
from pathlib import Path

from measuring import compared, process

MOVEMENTS = ("Back Squat", "Bench Press", "Barbell Row", "Deadlift", "Overhead Press")
LAST = date(2027, 2, 14)  # six weeks into the plan
PAIRS = 7


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        plan, log = Path(folder) / "harbour.plan", Path(folder) / "log.plan"
        plan.write_text(plan_text(), encoding="utf-8")
        log.write_text(log_text(), encoding="utf-8")
        cache = Path(folder) / "cache"
        environment = {**os.environ, "XDG_CACHE_HOME": str(cache)}
        build = [
            sys.executable,
            "-c",
            "from setwright.cli import main; main()",
            "build",
            str(plan),
            "--athlete",
            "Ines",
        ]
        build += ["--output", str(Path(folder) / "sheets")]
        without, with_log = process(build, environment), process([*build, "--log", str(log)], environment)

        def first() -> None:
            shutil.rmtree(cache, ignore_errors=True)
            with_log()

        print("build of twelve weeks with ten years of sessions, to the same without")
        compared("  first run, nothing cached", first, without, 3.0, PAIRS)
        compared("  second run", with_log, without, 1.3, PAIRS)


def plan_text() -> str:
    """Twelve weeks on three days, of which two lines answer the log."""
    lines = "".join(f"      {name}: 4 x 6-8 @ 60 kg, advance load-each-exposure\n" for name in MOVEMENTS[:2])
    lines += "".join(f"      {name}: 4 x 6-8 @ RPE 8\n" for name in MOVEMENTS[2:])
    days = "".join(f"    day {day}\n{lines}" for day in ("Mon", "Wed", "Fri"))
    blocks = "".join(f"  block Phase {at}: 4 weeks\n{days}" for at in (1, 2, 3))
    return f'use stdlib.exercises\n\nplan "Harbour"\n  start 2027-01-04\n{blocks}\nathlete "Ines"\n  bodyweight 64 kg\n'


def log_text() -> str:
    """1,500 sessions on three days a week, the last ones in the plan; five movements of four sets each."""
    chance = random.Random(7)
    days: list[date] = []
    day = LAST
    while len(days) < 1500:
        if day.weekday() in (0, 2, 4):
            days.append(day)
        day -= timedelta(days=1)
    made = ["use stdlib.exercises", ""]
    for day in reversed(days):
        made.append(f"session {day.isoformat()}")
        for name in MOVEMENTS:
            reps = ", ".join(str(chance.randint(5, 8)) for _ in range(4))
            made.append(
                f"  {name}: {chance.randint(16, 40) * 2.5:g} kg x {reps} @ RPE {chance.choice(('7', '8', '8.5'))}"
            )
        made.append("")
    return "\n".join(made)


if __name__ == "__main__":
    main()
