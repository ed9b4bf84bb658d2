"""`bests from log`: never silently, week by week, with where it comes from; and the effort of whole sessions."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest

from setwright.pipeline import Compilation, compile
from setwright.plan import Cause, Quantity, Step

PLAN = """use stdlib.exercises

plan "Weir"
  start 2027-01-04
  {plan}
  block Base: 8 weeks
    day Mon
      Back Squat: 3 x 5 @ 80%
    day Thu
      Bench Press: {bench}

athlete "Ines"
  {athlete}
  best Back Squat: 100 kg
  best Bench Press: 60 kg
"""

# Singles with nothing in reserve are their own estimate.
SQUATS = "".join(
    f"\nsession {day}\n  Back Squat: {load} kg x 1 @ RPE 10\n"
    for day, load in (
        ("2027-01-04", 110),
        ("2027-01-11", 112),
        ("2027-01-18", 114),
        ("2027-01-25", 116),
        ("2027-02-01", 118),
    )
)


def compiled(plan: str = "", athlete: str = "", bench: str = "3 x 5 @ 80%", log: str = SQUATS) -> Compilation:
    lines = PLAN.format(plan=plan, athlete=athlete, bench=bench)
    text = "\n".join(line for line in lines.splitlines() if line.strip() or not line) + "\n" + log
    made = compile("weir.plan", athletes=("Ines",), text=text)
    assert [str(found.message) for found in made.diagnostics if found.severity.value == "error"] == []
    return made.compilations[0]


def load(one: Compilation, week: int, session: int = 0) -> Fraction:
    found = one.plan.weeks[week - 1].sessions[session].lines[0].work[0].load
    assert found is not None
    return found.mass.amount


def facts(one: Compilation) -> dict[str, str]:
    return dict(one.plan.athlete_facts)


def test_it_is_never_done_unasked() -> None:
    one = compiled()
    assert {load(one, week) for week in range(1, 9)} == {80}
    assert facts(one)["Back Squat"] == "100 kg (tested)"


@pytest.mark.parametrize("who", ["plan", "athlete"])
def test_the_plan_or_the_athlete_asks(who: str) -> None:
    """80% of the 100 that is written, until five days are known: 80% of 118 = 94.4, by 2.5 kg."""
    one = compiled(**{who: "bests from log"})
    assert [load(one, week) for week in range(1, 9)] == [*(80,) * 5, *(95,) * 3]
    assert facts(one)["Back Squat"] == "118 kg (estimated from the log by epley: trend on 2027-02-01)"
    assert facts(one)["Bench Press"] == "60 kg (tested); the log has too little for a trend"


def test_a_test_in_the_plan_counts_from_the_next_week_on() -> None:
    """80% of 70 = 56, by 2.5 kg: 55 (56 lies nearer to it than to 57.5)."""
    log = "\nsession 2027-01-07\n  Bench Press: 67.5 kg x 1, 1\n  Bench Press: 70 kg x 1\n"
    one = compiled(athlete="bests from log", bench="1 x 1 @ 80%, test", log=log)
    assert load(one, 1, 1) == Fraction("47.5")  # 80% of 60 = 48
    assert load(one, 2, 1) == 55
    assert facts(one)["Bench Press"] == "70 kg (tested on 2027-01-07, from the log)"


def test_an_entry_may_say_that_it_was_a_test() -> None:
    log = "\nsession 2026-12-20\n  Bench Press: 72.5 kg x 1, test\n"
    assert load(compiled(athlete="bests from log", log=log), 1, 1) == Fraction("57.5")  # 80% of 72.5 = 58


def test_a_step_says_where_the_best_is_from() -> None:
    one = compiled(athlete="bests from log")
    steps = one.plan.weeks[6].sessions[0].lines[0].work[0].steps
    (step,) = (step for step in steps if step.quantity is Quantity.LOAD and step.cause is Cause.BEST)
    assert isinstance(step, Step)
    assert (step.fact("log_day"), step.fact("best_model")) == ("2027-02-01", "epley")
    assert step.related[0].span.text == "Back Squat: 118 kg x 1 @ RPE 10"


def test_the_effort_of_a_whole_session() -> None:
    log = "\nsession 2027-01-04\n  Back Squat: 80 kg x 5 @ RPE 8\n  effort 6.5 of 10, 65 min\n"
    (session,) = compiled(log=log).log.sessions
    assert (session.day, session.effort, session.minutes) == (date(2027, 1, 4), Fraction("6.5"), 65)
    assert session.lines[0].sets[0].effort is not None  # of the set, kept apart


@pytest.mark.parametrize(
    "line",
    [
        "effort 7 of 20",
        "effort 11 of 10",
        "effort RPE 7 of 10",
        "effort 6-7 of 10",
        "effort 7 of 10, 65",
        "effort 7 of 10, 0 min",
    ],
)
def test_an_effort_that_cannot_be_read(line: str) -> None:
    text = f"use stdlib.exercises\n\nsession 2027-01-04\n  Back Squat: 80 kg x 5\n  {line}\n"
    assert [found.code.name for found in compile("log.plan", text=text).diagnostics] == ["session-effort"]
