"""Times things fairly on a noisy machine: the two sides in turn, medians, and the ratio of each pair."""

from __future__ import annotations

import statistics
import subprocess
import time
from collections.abc import Callable, Mapping, Sequence


def seconds(work: Callable[[], object]) -> float:
    """How long one call takes."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def process(command: Sequence[str], environment: Mapping[str, str]) -> Callable[[], object]:
    """A whole process, start to end, as work to time; it has to succeed."""
    return lambda: subprocess.run(command, env=dict(environment), check=True, capture_output=True)


def compared(name: str, work: Callable[[], object], floor: Callable[[], object], most: float, pairs: int) -> None:
    """Print the median ratio of `work` to `floor`, run in turn `pairs` times after one of each that is not counted."""
    floor(), work()
    taken = [(seconds(work), seconds(floor)) for _ in range(pairs)]
    ratio = statistics.median(mine / theirs for mine, theirs in taken)
    mine, theirs = (statistics.median(side) * 1000 for side in zip(*taken, strict=True))
    print(f"{name:58} {ratio:5.2f}  (at most {most:.1f})   {mine:7.1f} ms to {theirs:7.1f} ms")
