"""Throws broken and extreme plans at the compiler; what it cannot answer is kept. Run with Python.

    python tests/benchmarks/fuzz.py --seed 7 --seconds 60

Comes in: a seed, and how long or how many. Goes out: the number of inputs, how fast, the slowest, and a file for each
failure. An input fails when anything is raised, when the process grows over 300 MiB, when the sheet of a plan without
errors has another number of rows than the plan has segments, or when compiling and rendering take longer than a second
(and a millisecond for each row of the sheets, and three for each kilobyte).
"""

from __future__ import annotations

import argparse
import csv as rows_of
import io
import json as reading
import os
import resource
import signal
import sys
import tempfile
import traceback
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from multiprocessing import get_context
from pathlib import Path
from random import Random
from time import perf_counter, process_time

from hostile_plans import TRICKY, Maker

from setwright.diagnostics.plain import records
from setwright.diagnostics.printers import github, terminal
from setwright.diagnostics.printers import json as found_json
from setwright.pipeline import EVERY_ATHLETE, Compilation, Compiled, compile
from setwright.render import csv, html, json, markdown
from setwright.render.material import Material
from setwright.report.overview import overview
from setwright.report.volume import volume

ROOT = Path(__file__).resolve().parents[2]
FOLDERS = ("examples", "stdlib", "tests/language")
BATCH = 100  # inputs to a process: its peak of memory is then theirs
MOST_SECONDS, SECONDS_A_ROW, SECONDS_A_BYTE = 1.0, 0.001, 0.000_003
MOST_MEBIBYTES = 300
GIVEN_UP = 20  # seconds


@dataclass(frozen=True)
class Outcome:
    """What became of one input; `failure` is empty where all went well."""

    seed: int
    seconds: float
    has_errors: bool
    failure: str = ""
    where: str = ""  # the last line of code before it, so that one mistake is told once


class TooSlowError(BaseException):
    """Raised from outside in whatever runs too long."""


# ---- inputs --------------------------------------------------------------------------------------


def texts() -> tuple[tuple[str, bytes], ...]:
    """All plans of the repository, by their paths."""
    paths = sorted(path for folder in FOLDERS for path in (ROOT / folder).rglob("*.plan"))
    return tuple((str(path), path.read_bytes()) for path in paths)


def made(seed: int, known: tuple[tuple[str, bytes], ...]) -> tuple[str, bytes]:
    """The path and content of one input: damaged, spliced or generated."""
    random = Random(seed)
    path, content = random.choice(known)
    kind = random.random()
    if kind < 0.35:
        return path, damaged(content, random)
    if kind < 0.5:
        return path, spliced(content, random.choice(known)[1], random)
    content = Maker(random).file().encode("utf-8", "surrogatepass")
    path = str(ROOT / "tests" / "generated.plan")
    return path, damaged(content, random) if kind > 0.9 else content


def damaged(content: bytes, random: Random) -> bytes:
    """A few bytes, words, lines or indentations changed."""
    for _ in range(random.choice((1, 1, 2, 3, 8))):
        content = random.choice((changed_bytes, changed_words, changed_lines, changed_indents))(content, random)
    return content


def changed_bytes(content: bytes, random: Random) -> bytes:
    data = bytearray(content)
    for _ in range(random.choice((1, 1, 4))):
        at = random.randrange(len(data) + 1)
        tricky = random.choice(TRICKY).encode("utf-8", "surrogatepass")
        data[at : at + random.choice((0, 0, 1, 3))] = random.choice((b"", bytes([random.randrange(256)]), tricky))
    return bytes(data)


def changed_words(content: bytes, random: Random) -> bytes:
    words = content.split(b" ")
    at, other = random.randrange(len(words)), random.randrange(len(words))
    match random.randrange(4):
        case 0:
            words[at] = words[other]
        case 1:
            words[at], words[other] = words[other], words[at]
        case 2:
            words[at] = b" ".join([words[at]] * random.choice((2, 3, 200)))
        case _:
            extreme = (b"0", b"1", b"99999", b"0.0001", b"104", b"520", b"150%", b"1000", b"-1", b"0-0", b"9999-12-31")
            words[at] = random.choice(extreme)
    return b" ".join(words)


def changed_lines(content: bytes, random: Random) -> bytes:
    lines = content.splitlines(keepends=True) or [b""]
    at, other = sorted((random.randrange(len(lines)), random.randrange(len(lines))))
    match random.randrange(4):
        case 0:
            del lines[at : at + random.choice((1, 1, 5))]
        case 1:
            lines[at], lines[other] = lines[other], lines[at]
        case 2:
            lines[at:at] = lines[at:other] * random.choice((1, 1, 2, 50))
        case _:
            lines[at:at] = [lines[other]] * random.choice((1, 2, 100))
    return b"".join(lines)


def changed_indents(content: bytes, random: Random) -> bytes:
    lines = content.splitlines(keepends=True) or [b""]
    at = random.randrange(len(lines))
    till = at + random.choice((1, 1, 4, len(lines)))
    by = random.choice((b"  ", b"    ", b" ", b"\t", b"", b"\xc2\xa0", b" " * 1500))
    lines[at:till] = [by + (line.lstrip() if random.random() < 0.3 else line) for line in lines[at:till]]
    return b"".join(lines)


def spliced(content: bytes, other: bytes, random: Random) -> bytes:
    """Lines of one file among those of another."""
    lines, more = content.splitlines(keepends=True) or [b""], other.splitlines(keepends=True) or [b""]
    for _ in range(random.choice((1, 2, 5))):
        at, start = random.randrange(len(lines) + 1), random.randrange(len(more))
        lines[at:at] = more[start : start + random.choice((1, 3, 20, len(more)))]
    return b"".join(lines)


# ---- one input -----------------------------------------------------------------------------------


def outcome(seed: int, path: str, content: bytes) -> Outcome:
    """Compile and render one input, and look at what came out."""
    compiled: Compiled | None = None
    failure = where = ""
    rows = 0
    before = _peak()
    signal.alarm(GIVEN_UP)
    began = process_time()
    try:
        compiled = compile(path, athletes=(EVERY_ATHLETE,), text=content.decode("utf-8", "surrogateescape"))
        told(compiled)
        for one in compiled.compilations:
            rows += segments(one) if compiled.has_errors else rendered(one)
    except TooSlowError:
        failure, where = f"gave up after {GIVEN_UP} s\n{traceback.format_exc(limit=-2)}", "time"
    except Exception:
        failure = traceback.format_exc()
        last = traceback.extract_tb(sys.exc_info()[2])[-1]
        where = f"{last.filename}:{last.lineno}"
    finally:
        signal.alarm(0)
    seconds = process_time() - began
    has_errors = compiled is None or compiled.has_errors
    if not failure and seconds > MOST_SECONDS + rows * SECONDS_A_ROW + len(content) * SECONDS_A_BYTE:
        failure, where = f"took {seconds:.2f} s for {rows} rows", "time"
    elif not failure and _peak() > max(before, MOST_MEBIBYTES):
        failure, where = f"needed {_peak():.0f} MiB for {rows} rows", "memory"
    return Outcome(seed, seconds, has_errors, failure, where)


def _peak() -> float:
    """The most memory that this process has had, in MiB."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / (2**20 if sys.platform == "darwin" else 2**10)


def told(compiled: Compiled) -> None:
    """Every finding, as each printer tells it."""
    found = records(compiled.diagnostics)
    for printer in (terminal, found_json, github):
        printer.text(found)


def rendered(one: Compilation) -> int:
    """All sheets of a plan; gives the number of rows."""
    figures, summaries = volume(one.plan, one.promise), overview(one.plan)
    material = Material(one.plan, figures, summaries)
    reading.loads(json.document(one.plan, figures, summaries))
    markdown.text(material)
    html.page(material)
    body = list(rows_of.reader(io.StringIO(csv.text(one.plan), newline="")))[1:]
    if len(body) != segments(one):
        raise AssertionError(f"{len(body)} rows for {segments(one)} segments")
    return len(body)


def segments(one: Compilation) -> int:
    """What the sheet of a plan should have rows for."""
    return sum(len(line.segments) for week in one.plan.weeks for session in week.sessions for line in session.lines)


# ---- many inputs ---------------------------------------------------------------------------------


def batch(seeds: range) -> list[Outcome]:
    """Inputs one after the other in a process of their own; what a first run loads is loaded before."""
    signal.signal(signal.SIGALRM, _give_up)
    known = texts()
    outcome(0, str(ROOT / "tests" / "generated.plan"), Maker(Random(0)).file().encode("utf-8", "surrogatepass"))
    return [outcome(seed, *made(seed, known)) for seed in seeds]


def outcomes(seed: int, count: int | None, seconds: float) -> Iterator[Outcome]:
    """Until so many inputs were tried, or so long."""
    ends = perf_counter() + seconds
    last = seed + count if count else sys.maxsize
    while seed < last and (count or perf_counter() < ends):
        seeds = range(seed, min(seed + BATCH, last))
        with ProcessPoolExecutor(1, get_context("spawn")) as process:
            yield from process.submit(batch, seeds).result()
        seed = seeds.stop


def saved(one: Outcome) -> str:
    """The file that holds the input again."""
    folder = Path(tempfile.gettempdir()) / "setwright-fuzz"
    folder.mkdir(exist_ok=True)
    file = folder / f"{one.seed}.plan"
    path, content = made(one.seed, texts())
    file.write_bytes(content)
    return f"{file} (as {os.path.relpath(path, ROOT)})"


def _give_up(_signal: int, _frame: object) -> None:
    raise TooSlowError


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else None)
    options.add_argument("--seed", type=int, default=1, help="the first input; each has the number after the last")
    options.add_argument("--count", type=int, help="how many inputs, in place of how long")
    options.add_argument("--seconds", type=float, default=60, help="how long")
    asked = options.parse_args()
    began, tried, clean, slowest = perf_counter(), 0, 0, Outcome(asked.seed, 0, True)
    failures: dict[str, int] = {}
    for one in outcomes(asked.seed, asked.count, asked.seconds):
        tried, clean = tried + 1, clean + (not one.has_errors)
        slowest = max(slowest, one, key=lambda each: each.seconds)
        if one.failure:
            failures[one.where] = failures.get(one.where, 0) + 1
            if failures[one.where] == 1 or one.where in ("time", "memory"):
                print(f"seed {one.seed}: {one.failure.rstrip()}\n  kept in {saved(one)}", flush=True)
    took = perf_counter() - began
    print(f"{tried} inputs from seed {asked.seed} in {took:.0f} s, {tried / took:.0f} a second; {clean} without errors")
    print(f"slowest: seed {slowest.seed}, {slowest.seconds:.2f} s")
    print(f"failures: {sum(failures.values())}, in {len(failures)} places")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
