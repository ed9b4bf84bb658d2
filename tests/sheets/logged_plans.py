"""A plan of two weeks with a log in which most things happen that can happen to a session.

Nothing comes in; files and their compilation go out. Today is Friday of the second week.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path

from setwright.pipeline import Compilation, compile
from setwright.render.gathered import gathered
from setwright.render.material import Material

TODAY = date(2027, 1, 15)

PLAN = """\
use stdlib.exercises

plan "Breakwater"
  start 2027-01-04
  block Base: 3 weeks
    day Mon "Long"
      Back Squat: 3 x 5 @ RPE 8
      Chin-Up: 2 x 6-10 @ bodyweight + 5 kg
      Split Squat: 2 x 8/side @ 2 RIR
      Plank: 2 x 40 s
    day Wed
      Deadlift: 1 x 3 @ RPE 8 then 2 x 5 @ -8%
    day Fri
      Bench Press: 3 x 8 @ 60 kg
      Face Pull: 2 x 15 @ 2 RIR
"""

ATHLETE = """\
use "plan.plan"

athlete "Signe"
  best Back Squat: 100 kg
  best Deadlift: 120 kg
"""

LOG = """\
use "signe.plan"

session 2027-01-04
  Back Squat: 80 kg x 5, 5, 4 @ RPE 8.5
  Back Squat: 70 kg x 8 @ 1 RIR
  Chin-Up: bodyweight + 5 kg x 8
  Split Squat: 12 kg x 8/side, 8/side @ 2 RIR
  note "Slept <five> hours."

session 2027-01-07 for week 1 Wed
  Deadlift: 100 kg x 3 @ RPE 8
  Deadlift: 92.5 kg x 5, 0
  Barbell Curl: 30 kg x 12, 12

session 2027-01-08
  Dumbbell Bench Press: 22.5 kg x 8, 8, 8
  Face Pull: 15 kg x 15, 15

session 2027-01-10
  Plank: 50 s

session 2027-01-13
  Deadlift: 225 lb x 3
"""


def compiled(plan: str = PLAN, log: str = LOG, on: date = TODAY, folder: Path | None = None) -> Compilation:
    """The plan for its athlete, with what the log makes of it."""
    assert folder is not None
    for name, text in (("plan.plan", plan), ("signe.plan", ATHLETE), ("log.plan", log)):
        (folder / name).write_text(text, encoding="utf-8")
    made = compile(
        str(folder / "plan.plan"),
        athletes=(str(folder / "signe.plan"),),
        logs=(str(folder / "log.plan"),),
        root=str(folder),
        on=on,
    )
    assert not made.has_errors, made.diagnostics
    return made.compilations[0]


def material(folder: Path, plan: str = PLAN, log: str = LOG, on: date = TODAY) -> Material:
    """What the sheets are made from, with what was done."""
    one = compiled(plan, log, on, folder)
    return gathered(one.plan, one.promise, log=one.log, on=on)
