"""Days away and easing in where a log says more than the plan: what was trained all the same, gaps, today's date."""

from __future__ import annotations

from datetime import date

from setwright.pipeline import compile
from setwright.plan import Cause, Plan, Quantity
from setwright.prescription import Weight
from setwright.render.ics import uid

PLAN = """exercise Press

plan "Quayside"
  start 2027-01-04
  block Base: 4 weeks
    day Mon
      Press: 4 x 5 @ 60 kg
    day Thu
      Press: 4 x 8 @ 50 kg

athlete "Ines"
"""


def planned(more: str, on: date | None = None) -> Plan:
    compiled = compile("quayside.plan", text=PLAN + more, athletes=("Ines",), on=on)
    assert compiled.diagnostics == ()
    return compiled.compilations[0].plan


def sets(plan: Plan) -> list[list[int]]:
    return [[line.sets for session in week.sessions for line in session.lines] for week in plan.weeks]


def test_what_was_trained_on_a_day_away_is_not_left_out() -> None:
    plan = planned("  away 2027-01-11 to 2027-01-17\n\nsession 2027-01-14\n  Press: 50 kg x 8, 8\n")
    assert [session.left_out for session in plan.weeks[1].sessions] == [True, False]


def test_a_gap_in_the_log_is_eased_without_a_line_for_it() -> None:
    # Trained on 4 January; today is Monday the 18th: thirteen days lie between.
    log = "\nsession 2027-01-04\n  Press: 60 kg x 5, 5, 5, 5\n"
    eased = planned("  ease-in after 13 days: sets 50%, load 90%\n" + log, on=date(2027, 1, 18))
    assert sets(eased) == [[4, 4], [4, 4], [2, 2], [4, 4]]
    lighter = eased.weeks[2].sessions[0].lines[0].segments[0].intensity
    assert isinstance(lighter, Weight)
    assert str(lighter.mass) == "55 kg"  # 54 kg, in steps of 2.5 kg
    assert sets(planned("  ease-in after 14 days: sets 50%\n" + log, on=date(2027, 1, 18))) == [[4, 4]] * 4


def test_nothing_is_eased_in_unasked() -> None:
    assert sets(planned("  away 2027-01-11 to 2027-01-24, shift\n")) == [[4, 4]] * 4


def test_events_of_a_calendar_keep_their_place_and_say_why_they_moved() -> None:
    before, after = planned(""), planned("  away 2027-01-13 to 2027-01-16, shift\n")
    assert after.weeks[1].sessions[1].date == date(2027, 1, 21)
    assert uid(before, 2, 2) == uid(after, 2, 2)
    step = after.weeks[1].sessions[1].steps[-1]
    assert (step.quantity, step.cause, step.before, step.after) == (
        Quantity.DATE,
        Cause.AWAY,
        "2027-01-14",
        "2027-01-21",
    )
    assert after.weeks[2].start == date(2027, 1, 25)
