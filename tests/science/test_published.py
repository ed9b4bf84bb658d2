"""Every published example of a built feature has its test: `published.md` names it.

A row whose test is gone fails, and what is left out says why.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

HERE = Path(__file__).parent
TEXT = (HERE / "published.md").read_text(encoding="utf-8")
TESTS = HERE.parent

HELD, LEFT_OUT = (
    [tuple(cell.strip() for cell in row.strip("|").split(" | ")) for row in part.splitlines() if row.startswith("| ")]
    for part in TEXT.split("\n## Left out\n")
)
HELD = [row for row in HELD if row[0] not in ("From", "---")]
LEFT_OUT = [row for row in LEFT_OUT if row[0] not in ("What", "---")]


@pytest.mark.parametrize(("source", "example", "held_by"), HELD, ids=[f"{row[0]}: {row[1]}" for row in HELD])
def test_each_has_its_test(source: str, example: str, held_by: str) -> None:
    assert source
    assert example
    path, _, name = held_by.strip("`").partition("::")
    if name:
        assert re.search(rf"^def {name}\(", (TESTS / path).read_text(encoding="utf-8"), re.MULTILINE)
    else:  # a plan with what it comes to beside it
        assert (TESTS / path).exists()
        assert (TESTS / path).with_suffix(".csv").exists()


def test_none_is_named_twice_and_what_is_left_out_says_why() -> None:
    assert len(HELD) > 60
    assert len(set(HELD)) == len(HELD)
    assert all(what and why for what, why in LEFT_OUT)
