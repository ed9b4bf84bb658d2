"""Files made to hurt: each gets its coded findings on the right lines, within a second, and never a traceback."""

from __future__ import annotations

from pathlib import Path
from time import process_time

import pytest

from setwright.diagnostics import Diagnostic
from setwright.files import library_folder
from setwright.pipeline import compile

PLAN = 'exercise Squat\nplan "Pier"\n  block Base: 1 week\n    day Mon\n'
SQUAT = "      Squat: "

HOSTILE: dict[str, tuple[bytes, tuple[int, str]]] = {
    "levels": ("".join(f'{" " * depth}plan "P{depth}"\n' for depth in range(2000)).encode(), (2, "misplaced-line")),
    "two spaces a level": (
        "".join(f'{"  " * depth}plan "P"\n' for depth in range(2000)).encode(),
        (2, "misplaced-line"),
    ),
    "levels of movements": (
        (PLAN + "".join(f'{" " * (6 + depth)}Squat "{depth}": 3 x 5\n' for depth in range(2000))).encode(),
        (6, "misplaced-line"),
    ),
    "brackets": ((PLAN + SQUAT + "[" * 5000 + "]" * 5000 + "\n").encode(), (5, "line-too-long")),
    "parentheses on many lines": ((PLAN + (SQUAT + "(" * 50 + "\n") * 100).encode(), (5, "unexpected-word")),
    "a list of thousands": ((PLAN + SQUAT + "[" + "3, " * 600 + "3] x 5\n").encode(), (5, "track-length")),
    "a number of thousands of digits": ((PLAN + SQUAT + "9" * 1900 + " x 5\n").encode(), (5, "number-too-large")),
    "a name of thousands of words": ((PLAN + "      " + "Ab " * 600 + ": 3 x 5\n").encode(), (5, "unknown-movement")),
    "combining marks": ((PLAN + SQUAT + "3 x 5 @ " + "a" + "\u0301" * 1900 + "\n").encode(), (5, "unexpected-word")),
    "null bytes": ((PLAN + SQUAT + "3 x \0 5\n").encode(), (5, "unexpected-word")),
    "not text": (b"PK\x03\x04" + bytes(range(256)) * 20, (3, "not-utf8")),
    "not UTF-8 in the middle": ((PLAN + SQUAT + "3 x 5 # caf").encode() + b"\xe9\n", (5, "not-utf8")),
    "UTF-16": (PLAN.encode("utf-16"), (1, "not-utf8")),
    "thousands of mistakes": ((PLAN + "      Sqat: 3 x\n" * 3000).encode(), (3004, "line-ends-early")),
    "thousands of unknown names": (
        (PLAN + "".join(f"      Squatt {number}: 3 x 5\n" for number in range(300))).encode(),
        (304, "unknown-movement"),
    ),
    "a movement like itself a thousand deep": (
        "".join(f'exercise "m{n}" like "m{n + 1}"\n' for n in range(1000)).encode() + b'exercise "m1000" like "m0"\n',
        (1, "like-cycle"),
    ),
    "movements like each other, thousands deep": (
        (
            "".join(f'exercise "m{n}" like "m{n + 1}"\n' for n in range(5000)) + 'exercise "m5000"\n  works q 1\n'
        ).encode(),
        (5002, "unknown-muscle"),
    ),
    "bests taken from each other in a circle of thousands": (
        "".join(f'exercise "m{n}"\n  best from "m{(n + 1) % 3000}" 99%\n' for n in range(3000)).encode(),
        (1, "like-cycle"),
    ),
    "unknown names as long as a line": (
        (PLAN + "".join(f'      "{"S" * 1900}{n}": 3 x 5\n' for n in range(300)))
        .replace("Squat", "S" * 1900, 1)
        .encode(),
        (5, "unknown-movement"),
    ),
    "thousands of blocks, each like the one before": (
        (PLAN + SQUAT + "3 x 5\n" + "".join(f"  block B{n}: 1 week like B{n - 1}\n" for n in range(1, 3000))).encode(),
        (2, "too-large"),
    ),
    "a sheet of hundreds of thousands of rows": (
        (
            'exercise Squat\nplan "Pier"\n  block Base: 104 weeks\n    day Mon\n'
            + "".join(f'      Squat "{n}": 1 x 5{" then 1 x 5" * 100}\n' for n in range(20))
        ).encode(),
        (2, "too-large"),
    ),
    "notes on every line of every week": (
        (PLAN.replace("1 week", "104 weeks") + SQUAT + "3 x 5\n" + f'        note "{"n" * 1900}"\n' * 300).encode(),
        (2, "too-large"),
    ),
    "thousands of rules": ((PLAN + SQUAT + "3 x 5\n" + "  must effort <= RPE 8\n" * 2000).encode(), (2, "too-large")),
    "a progression of hundreds of rules": (
        ("progression climb(step = 2 kg)\n" + "  when all sets >= 500: load + step\n" * 500).encode(),
        (1, "too-large"),
    ),
    "sets added in every week of two years": (
        (
            'muscle quads\nexercise Squat\n  works quads 1\nplan "Pier"\n  microcycle 60 days\n'
            "  emphasis quads +20 sets per week\n"
            "  must monotony <= 9\n  block Base: 104 weeks\n"
            + "".join(f"    day {n}\n      Squat: 3 x 5 @ RPE 7\n" for n in range(1, 61))
        ).encode(),
        (6, "too-large"),
    ),
    "discs of hundreds of masses": (
        (
            'athlete "Ada"\n  bar 20 kg\n  plates ' + ", ".join(f"200x{n / 10}" for n in range(1, 200)) + " kg\n"
        ).encode(),
        (3, "bad-equipment"),
    ),
}


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_file(name: str, tmp_path: Path) -> None:
    content, (line, code) = HOSTILE[name]
    file = tmp_path / "hostile.plan"
    file.write_bytes(content)
    compile(str(file), text="")  # whatever a first run has to load
    began = process_time()
    compiled = compile(str(file))
    took = process_time() - began
    assert compiled.has_errors
    assert (line, code) in {place(found) for found in compiled.diagnostics}
    assert took < 1


def test_a_damaged_file_of_the_shipped_library_is_read_like_any_other() -> None:
    compiled = compile(
        str(library_folder() / "rules" / "strength.plan"), text="  rules strength\n    must effort <= RPE 8\n"
    )
    assert compiled.diagnostics == ()  # whole files may stand further in


def place(found: Diagnostic) -> tuple[int, str]:
    return found.span.line, found.code.name
