"""Logs made by hand, and a plan for them: three days a week for two weeks, with and without dates.

Comes in: names and numbers as terse as can be. Goes out: `Log`, `SessionDone` and a compiled `Plan`.
"""

from __future__ import annotations

from datetime import date
from fractions import Fraction

from setwright.log.model import LineDone, Log, SessionDone, SetDone
from setwright.pipeline import compile
from setwright.plan import Movement, Plan
from setwright.prescription import Reps, RepsKind, Weight
from setwright.quantities import Mass, Unit
from setwright.source import Source, Span

HERE = Span(Source("log.plan", ""), 1, 0, 0)

PIER = """\
exercise Squat
exercise Bench
exercise Row
exercise Press
exercise Pull
exercise Curl

plan "Pier"
  {start}
  block Base: 2 weeks
    day Mon
      Squat: 3 x 5
      Bench: 3 x 5
    day Wed
      Row: 3 x 8
      Press "light": 2 x 8
      Press: 3 x 5
    day Fri
      Squat: 2 x 5
      Pull: 3 x 5
"""


def pier(start: str = "start 2027-01-04", athlete: str = "") -> Plan:
    """The plan, which begins on a Monday; `athlete` are the lines of one."""
    text = PIER.replace("  {start}\n", f"  {start}\n" if start else "")
    if athlete:
        text += f'\nathlete "Runa"\n  {athlete}\n'
    compiled = compile("pier.plan", text=text, athletes=("*",) if athlete else ())
    assert not compiled.has_errors
    return compiled.compilations[0].plan


def sets(*reps: int, kg: int = 60) -> tuple[SetDone, ...]:
    """Sets of one load."""
    return tuple(SetDone(Weight(Mass(Fraction(kg), Unit.KG)), _count(one)) for one in reps)


def _count(number: int) -> Reps:
    return Reps(RepsKind.COUNT, Fraction(number), Fraction(number))


def done(day: str, *movements: str, at: str | None = None) -> SessionDone:
    """A session of a day of January 2027 (or another, written out); `at` is what the entry says, `1 Mon`."""
    week, slot = at.split() if at else (None, None)
    lines = tuple(_line(name) for name in movements)
    whole = day if "-" in day else f"2027-01-{day}"
    return SessionDone(date.fromisoformat(whole), lines, HERE, int(week) if week else None, slot)


def _line(name: str) -> LineDone:
    movement, _, label = name.partition("/")
    return LineDone(Movement(movement, HERE), label or None, sets(5, 5), HERE)


def log(*sessions: SessionDone) -> Log:
    """A log of sessions as they come."""
    return Log(sessions)
