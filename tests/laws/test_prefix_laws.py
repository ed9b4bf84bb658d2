"""What holds for every plan: a prefix changes how its author writes names, and nothing that comes out."""

from __future__ import annotations

from pathlib import Path
from string import Template

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.pipeline import EVERY_ATHLETE, Compiled, compile
from setwright.render.csv import rows

NAMES = ("Row", "Step-Up", "Keg Carry", '"5-second hang"')

LIBRARY = """\
muscle back
equipment keg
  loads one

exercise Row
  works back 1
  swap for Keg Carry
exercise Step-Up like Row
  best from Row 50%
exercise Keg Carry
  needs keg
  works back 0.5
exercise "5-second hang"
  works back 1
  swap for Row, Step-Up

rules steady
  should weekly-sets for back >= 4
"""

# `$p` stands before every name that the library declares.
PLAN = """\
plan "Any"
  follow ${p}steady
  should session-sets for ${p}back <= 3
  block Base: 2 weeks
    day Mon
$lines
    day Thu like Mon
      swap ${p}$old for ${p}$new

athlete "Maro"
  has ${p}keg
  best ${p}Row: 90 kg
  swap ${p}Step-Up for ${p}Row
"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("work")
    (made / "club.plan").write_text(LIBRARY, encoding="utf-8")
    return made


line = st.tuples(st.sampled_from(NAMES), st.integers(1, 5), st.sampled_from(["80%", "70% of ${p}Row", "RPE 8"]))
day = st.lists(line, min_size=1, max_size=3, unique_by=lambda line: line[0])


@settings(max_examples=40)
@given(day, st.data())
def test_a_prefix_changes_nothing_that_comes_out(
    folder: Path, day: list[tuple[str, int, str]], data: st.DataObject
) -> None:
    old = data.draw(st.sampled_from([name for name, _, _ in day]))
    new = data.draw(st.sampled_from([name for name in NAMES if name not in [other for other, _, _ in day]]))
    lines = "\n".join(f"      ${{p}}{name}: {sets} x 5 @ {intensity}" for name, sets, intensity in day)
    text = PLAN.replace("$lines", lines).replace("$old", old).replace("$new", new)
    plain = compiled(folder, 'use "club.plan"\n' + Template(text).substitute(p=""))
    prefixed = compiled(folder, 'use "club.plan" as club\n' + Template(text).substitute(p="club."))
    assert sheets(plain) == sheets(prefixed)
    assert codes(plain) == codes(prefixed)
    assert not plain.has_errors, [found.message for found in plain.diagnostics]


def compiled(folder: Path, text: str) -> Compiled:
    return compile(str(folder / "any.plan"), athletes=(EVERY_ATHLETE,), root=str(folder), text=text)


def sheets(done: Compiled) -> list[list[list[str]]]:
    return [list(rows(one.plan)) for one in done.compilations]


def codes(done: Compiled) -> list[tuple[str, int]]:
    return [(found.code.number, found.span.line) for found in done.diagnostics]
