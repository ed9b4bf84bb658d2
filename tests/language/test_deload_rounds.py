"""A deload takes rounds of a circuit as it takes the sets of its lines, so that a sheet does not contradict itself."""

from __future__ import annotations

from setwright.pipeline import compile

PLAN = """
exercise Push-Up
exercise Row

plan "Harbour Juniors"
  block Base: 3 weeks
    deload week 3: sets 50%
    day Mon
      circuit 4 -> 5 rounds rest 60 s
        Push-Up: 10
        Row: 8
"""


def test_rounds_are_the_sets_of_the_lines() -> None:
    (compilation,) = compile("pier.plan", text=PLAN).compilations
    lines = [line for week in compilation.plan.weeks for session in week.sessions for line in session.lines]
    rounds = [line.group.rounds for line in lines if line.group is not None]
    assert rounds == [4, 4, 5, 5, 3, 3]  # 5 x 50% = 2.5, halves up
    assert rounds == [line.segments[0].sets for line in lines]
