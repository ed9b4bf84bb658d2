"""Loads by effort past ten repetitions to failure, and the steps by which a load was worked out."""

from __future__ import annotations

from setwright.diagnostics import Diagnostic
from setwright.pipeline import EVERY_ATHLETE, compile
from setwright.plan import Cause, Plan, Quantity

NAMES = ("Squat", "Press", "Row", "Lunge", "Dip", "Pull", "Curl", "Raise")
MOVEMENTS = "".join(f"exercise {name}\n" for name in NAMES)
BESTS = "".join(f"  best {name}: 100 kg\n" for name in NAMES)


def compiled(*lines: str, athletes: str = f'athlete "Ines"\n{BESTS}', weeks: int = 1) -> tuple[Plan, list[Diagnostic]]:
    """The plan of a Monday with these lines, and the warnings of rough loads."""
    body = "".join(f"      {line}\n" for line in lines)
    text = f'{MOVEMENTS}\n{athletes}\nplan "Pier"\n  block Base: {weeks} weeks\n    day Mon\n{body}'
    done = compile("pier.plan", text=text, athletes=(EVERY_ATHLETE,))
    found = [one for one in done.diagnostics if one.code.name == "many-repetitions"]
    assert len(found) == len(done.diagnostics), done.diagnostics
    return done.compilations[0].plan, found


def test_one_warning_for_all_weeks_and_lines() -> None:
    _, (found,) = compiled("Squat: 3 x 10 @ RPE 7 -> 8", 'Squat "again": 3 x 12 @ RPE 8', weeks=10)
    assert found.message == (
        "loads of Ines for Squat rest on epley at up to 14 repetitions to failure: past 10 it gets unreliable"
    )
    assert (found.span.text, found.related) == ("3 x 10 @ RPE 7 -> 8", ())
    assert found.help is not None
    assert "fewer repetitions" in found.help


def test_others_are_related_five_at_most_and_the_rest_a_number() -> None:
    _, (found,) = compiled(*(f"{name}: 3 x {10 + place} @ RPE 8" for place, name in enumerate(NAMES)))
    assert "Squat, Press, Row, Lunge, Dip, Pull and 2 more movements rest on epley at up to 19" in found.message
    assert [other.text for other in found.related] == [
        f"{name}: {12 + place} repetitions to failure by epley" for place, name in enumerate(NAMES[:6]) if place
    ]


def test_each_athlete_is_told_of_their_own_bests() -> None:
    athletes = (
        'athlete "Ines"\n  best Row: 100 kg\nathlete "Tove"\n  model brzycki\n  best Press: 100 kg\nathlete "Nils"\n'
    )
    _, found = compiled("Row: 3 x 10 @ RPE 8", "Press: 3 x 10 @ RPE 8", athletes=athletes)
    assert [one.message.partition(" at ")[0] for one in found] == [
        "loads of Ines for Row rest on epley",
        "loads of Tove for Press rest on brzycki",
    ]


def test_ten_to_failure_are_silent_and_more_warn() -> None:
    """Reynolds, Gordon and Robergs 2006, J Strength Cond Res 20(3):584-592: no more than 10 repetitions."""
    assert compiled("Squat: 3 x 8 @ RPE 8", "Press: 3 x 10 @ RPE 10")[1] == []
    assert len(compiled("Squat: 3 x 8 @ RPE 7.5")[1]) == 1  # 10.5


def test_no_load_no_warning() -> None:
    lines = ("Squat: 3 x 15 @ 60%", "Press: 3 x 15 @ 40 kg", "Row: 3 x max @ RPE 8", "Curl: 3 x 40 s @ RPE 8")
    assert compiled(*lines)[1] == []
    assert compiled("Squat: 3 x 12 @ RPE 8", athletes='athlete "Ines"\n')[1] == []


def test_the_steps_of_a_load_name_its_model() -> None:
    """Epley 1985: 5 @ RPE 8 is 7 to failure, 100 / (1 + 7/30) = 81.08 kg; a best of 100 kg x 6 is 120 kg."""
    athletes = 'athlete "Ines"\n  best Squat: 100 kg\n  best Row: 100 kg x 6\n  best Press: 60 kg\n'
    lines = ("Squat: 3 x 5 @ RPE 8 then 2 x 5 @ -10%", "Row: 3 x 5 @ 80%", "Press: 3 x 5 @ 80%", "Curl: 3 x 8 @ 20 kg")
    made, _ = compiled(*lines, athletes=athletes)
    steps = [
        (line.movement.name, step.cause, step.told_before, step.told_after, step.fact("model"), step.fact("best_model"))
        for line in made.weeks[0].sessions[0].lines
        for segment in line.segments
        for step in segment.steps
        if step.quantity is Quantity.LOAD
    ]
    assert steps == [
        ("Squat", Cause.BEST, "RPE 8", "81.08 kg", "epley", None),
        ("Squat", Cause.ROUNDING, "81.08 kg", "80 kg", None, None),
        ("Squat", Cause.CHANGE, "-10%", "72 kg", None, None),
        ("Squat", Cause.ROUNDING, "72 kg", "72.5 kg", None, None),
        ("Row", Cause.BEST, "80%", "96 kg", None, "epley"),
        ("Row", Cause.ROUNDING, "96 kg", "95 kg", None, None),
        ("Press", Cause.BEST, "80%", "48 kg", None, None),
        ("Press", Cause.ROUNDING, "48 kg", "47.5 kg", None, None),
        ("Curl", Cause.LOAD, "20 kg", "20 kg", None, None),
    ]
