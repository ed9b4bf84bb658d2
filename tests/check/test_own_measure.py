"""A measure is one file: this one stands outside the package and is held like the others, from a plan's text on."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

import weekly_sessions
from setwright.check import breaches, rule_faults
from setwright.check.measures import MEASURES
from setwright.diagnostics.catalogue.rules import UNKNOWN_MEASURE
from setwright.pipeline import Compilation, compile

if TYPE_CHECKING:
    from pathlib import Path

WITH_OWN = (*MEASURES, weekly_sessions.MEASURE)

TEXT = """use stdlib.exercises

plan "Ferry Lane"
  {rule}
  {waiver}
  block Base: 2 weeks
    day Mon
      Bench Press: 4 x 8 @ RPE 8
    day Thu
      Back Squat: [3, 4] x 5 @ RPE 8
"""


def made(folder: Path, rule: str, waiver: str = "") -> Compilation:
    text = TEXT.format(rule=rule, waiver=waiver)
    compiled = compile(str(folder / "own.plan"), root=str(folder), text=text)
    assert {found.code for found in compiled.diagnostics} <= {UNKNOWN_MEASURE}
    (one,) = compiled.compilations
    return one


@pytest.mark.parametrize(
    ("rule", "told"),
    [
        ("should weekly-sessions for chest >= 2", ["1 session for Chest in weeks 1-2, outside the >= 2 you asked for"]),
        ("should weekly-sessions for triceps >= 1", []),
        ("must weekly-sessions >= 3", ["2 sessions in weeks 1-2, outside the >= 3 you asked for"]),
        ("must weekly-sessions >= 3 in week 2", ["2 sessions in week 2, outside the >= 3 you asked for"]),
    ],
)
def test_it_is_held_to_its_bound(rule: str, told: list[str], tmp_path: Path) -> None:
    one = made(tmp_path, rule)
    assert rule_faults(one.promise, WITH_OWN) == ()
    found = breaches(one.plan, one.promise, WITH_OWN)
    assert [breach.message for breach in found] == told
    assert {breach.code.number for breach in found} <= {"CLUB01"}


def test_its_lines_are_named(tmp_path: Path) -> None:
    one = made(tmp_path, "should weekly-sessions >= 3")
    (found,) = breaches(one.plan, one.promise, WITH_OWN)
    assert found.span.text == "Bench Press: 4 x 8 @ RPE 8"
    assert found.related[0].text == "is done for 3 to 4 sets"


def test_its_waiver_is_used_and_its_misuse_is_told(tmp_path: Path) -> None:
    waived = made(tmp_path, "should weekly-sessions for triceps >= 2", 'waive weekly-sessions for triceps "Fine."')
    assert breaches(waived.plan, waived.promise, WITH_OWN) == ()
    wrong = made(tmp_path, "should weekly-sessions >= 48 h")
    assert [fault.code.name for fault in rule_faults(wrong.promise, WITH_OWN)] == ["bound-unit"]


def test_without_it_the_word_is_unknown(tmp_path: Path) -> None:
    one = made(tmp_path, "should weekly-sessions >= 3")
    assert [fault.code for fault in rule_faults(one.promise)] == [UNKNOWN_MEASURE]
