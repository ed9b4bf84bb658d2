"""What rendering a sheet costs, to the bare Jinja render of the same bytes; and how large sheets are. Run with Python.

The floor renders the shipped templates, escaping on, with everything already arranged: texts, tables, drawings, the
data of the recording, the hashes of the policy. Against it stands all that `html.page` does with a plan and its
reports: arranging and wording, and then that same render. Time of the processor, garbage collection on, everything
that a process keeps already there.
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable
from pathlib import Path

from setwright.pipeline import Compilation, compile
from setwright.render import html
from setwright.render.gathered import gathered
from setwright.render.material import PLAIN, Material

HARBOUR = Path(__file__).parents[2] / "examples" / "harbour-twelve-weeks"
MOST = 2.0
MOST_BYTES = 400_000
PAIRS = 41
MOVEMENTS = (
    *("Back Squat", "Bench Press", "Deadlift", "Overhead Press", "Barbell Row", "Romanian Deadlift", "Hammer Curl"),
)


def harbour() -> Material:
    """The twelve weeks of five days, for their athlete."""
    made = compile(str(HARBOUR / "harbour-twelve-weeks.plan"), athletes=(str(HARBOUR / "runa.plan"),))
    return reported(made.compilations[0])


def seven_lines() -> Material:
    """Twelve weeks of five days of seven lines each, for an athlete whose loads are known."""
    lines = "".join(f"      {name}: 4 x 6-8 @ RPE 7 -> 9, rest 2-3 min, warm-up 60% x 5\n" for name in MOVEMENTS)
    days = "".join(f"    day {day}\n{lines}" for day in ("Mon", "Tue", "Wed", "Fri", "Sat"))
    bests = "".join(f"  best {name}: 100 kg\n" for name in MOVEMENTS)
    plan = f'plan "Seven"\n  start 2027-01-04\n  block Base: 12 weeks\n{days}'
    athlete = f'athlete "Sunniva"\n  bar 20 kg\n  plates 4x20, 2x10, 2x5, 2x2.5, 2x1.25 kg\n{bests}'
    text = f"use stdlib.exercises\n\n{plan}\n{athlete}"
    return reported(compile("seven.plan", athletes=("Sunniva",), text=text).compilations[0])


def reported(one: Compilation) -> Material:
    """The plan with its reports, as `build` makes them before it renders."""
    return gathered(one.plan, one.promise)


def main() -> None:
    of = harbour()
    arranged = html.given(of, PLAIN)
    assert html.dressed(PLAIN, arranged) == html.page(of)
    print("the twelve-week sheet, to the bare Jinja render of the same bytes")
    compared("  processor time", lambda: html.page(of), lambda: html.dressed(PLAIN, arranged))
    print(f"bytes, at most {MOST_BYTES:,}")
    for name, made in (("the twelve-week example", of), ("seven lines a session", seven_lines())):
        print(f"  {name:56} {len(html.page(made).encode()):,}")


def compared(name: str, work: Callable[[], object], floor: Callable[[], object]) -> None:
    """Print the median ratio of pairs run in turn, after one of each that is not counted."""
    floor(), work()
    taken = [(spent(work), spent(floor)) for _ in range(PAIRS)]
    ratio = statistics.median(mine / theirs for mine, theirs in taken)
    mine, theirs = (statistics.median(side) * 1000 for side in zip(*taken, strict=True))
    print(f"{name:58} {ratio:5.2f}  (at most {MOST:.1f})   {mine:7.1f} ms to {theirs:7.1f} ms")


def spent(work: Callable[[], object]) -> float:
    """Seconds of the processor that one call takes."""
    start = time.process_time()
    work()
    return time.process_time() - start


if __name__ == "__main__":
    main()
