"""What an athlete does in place of what the plan asks for: what is said of it, on sheets and where nothing fits."""

from __future__ import annotations

import csv
import io
import json

import pytest

from setwright.diagnostics import Diagnostic
from setwright.pipeline import Compilation, Compiled, compile
from setwright.render import csv as table
from setwright.render import html, markdown
from setwright.render import json as data
from setwright.render.material import Material
from setwright.report.overview import overview
from setwright.report.volume import volume

LIBRARY = """\
muscle chest
muscle delts
equipment barbell
  loads bar
equipment cable
  loads stack
equipment dip-bars
exercise Overhead Press
  pattern overhead-press
  needs barbell
  works delts 1
  swap for Pike Press, Raise
exercise Pike Press
  pattern overhead-press
  works delts 1
exercise Raise
  pattern raise
  works delts 1
  swap for Overhead Press, Fly, Pike Press
exercise Dip
  needs dip-bars
  works chest 1
  swap for Fly, Push-Up
exercise Push-Up
  works chest 1
  swap for Dip, Fly
exercise Fly
  needs cable
  works chest 1
"""

PLAN = """
plan "Lock Street"
  note "Wipe the bars."
  block Base: 1 week
    day Mon
      Overhead Press: 4 x 5 @ 40 kg
        note "Heels down."
      Dip "slow": 3 x 8 @ RPE 8
"""

ODA = """
athlete "Oda"
  has barbell, cable
  avoid overhead-press "Shoulder."
  swap Dip for Push-Up
"""


def compiled(athlete: str, *, plan: str = PLAN, name: str = "Oda") -> Compiled:
    return compile("lock-street.plan", athletes=(name,), text=LIBRARY + plan + athlete)


def the_one(made: Compiled) -> Compilation:
    (compilation,) = made.compilations
    return compilation


def the_finding(made: Compiled) -> Diagnostic:
    (finding,) = made.diagnostics
    return finding


@pytest.fixture(scope="module")
def oda() -> Compilation:
    made = compiled(ODA)
    assert made.diagnostics == ()
    return the_one(made)


def test_csv_says_it_before_all_notes(oda: Compilation) -> None:
    rows = list(csv.DictReader(io.StringIO(table.text(oda.plan), newline="")))
    assert [(row["exercise"], row["exercise_label"], row["load"], row["notes"]) for row in rows] == [
        ("Raise", "", "", "instead of Overhead Press; Overhead Press: Heels down."),
        ("Push-Up", "slow", "", "instead of Dip"),
    ]


def test_markdown_says_it_beside_the_name(oda: Compilation) -> None:
    text = markdown.text(Material(oda.plan, volume(oda.plan, oda.promise), overview(oda.plan)))
    assert "**Raise** (instead of Overhead Press)" in text
    assert "**Push-Up** (instead of Dip) slow" in text
    assert "> Oda avoids overhead-press (Shoulder.)" in text


def test_html_says_it_beside_the_name(oda: Compilation) -> None:
    text = html.page(Material(oda.plan, volume(oda.plan, oda.promise), overview(oda.plan)))
    assert '<bdi>Raise</bdi> <bdi class="label">(instead of Overhead Press)</bdi>' in text
    assert "Oda avoids overhead-press (Shoulder.)" in text


def test_json_names_what_was_planned(oda: Compilation) -> None:
    made = json.loads(data.document(oda.plan, volume(oda.plan, oda.promise), overview(oda.plan)))
    (session,) = made["plan"]["weeks"][0]["sessions"]
    assert [(line["exercise"], line["instead_of"]) for line in session["lines"]] == [
        ("Raise", "Overhead Press"),
        ("Push-Up", "Dip"),
    ]
    steps = session["lines"][0]["segments"][0]["steps"]
    assert [(step["what"], step["before"], step["after"]) for step in steps] == [("substitution", "40 kg", "no load")]


def test_volume_is_of_what_is_done(oda: Compilation) -> None:
    rows = volume(oda.plan, oda.promise).rows
    assert {row.muscle.word: int(row.direct_sets) for row in rows} == {"delts": 4, "chest": 3}


def test_sheets_offer_only_what_the_athlete_can_do(oda: Compilation) -> None:
    """She avoids both overhead presses and swaps dips away; the raise and the push-up are done already."""
    raise_, push_up = oda.plan.weeks[0].sessions[0].lines
    assert raise_.swaps == ()
    assert raise_.movement.swaps == ("Fly",)
    assert push_up.swaps == push_up.movement.swaps == ("Fly",)


def test_notes_of_the_plan_stay_before_what_is_avoided(oda: Compilation) -> None:
    assert oda.plan.notes == ("Wipe the bars.", "Oda avoids overhead-press (Shoulder.)")


def test_who_avoids_swaps_and_lacks_nothing_does_the_plan() -> None:
    made = compiled('\nathlete "Oda"\n  bodyweight 60 kg\n')
    lines = the_one(made).plan.weeks[0].sessions[0].lines
    assert [(line.movement.name, line.instead_of, line.swaps) for line in lines] == [
        ("Overhead Press", None, ("Pike Press", "Raise")),
        ("Dip", None, ("Fly", "Push-Up")),
    ]


def test_a_warning_says_why_each_of_the_list_did_not_fit() -> None:
    plan = PLAN + '      Push-Up "slow": 2 x 8\n'
    finding = the_finding(compiled('\nathlete "Oda"\n  has barbell\n', plan=plan))
    assert finding.message == "Oda has no dip-bars for Dip in week 1, and nothing fits in its place"
    assert finding.help == (
        "Fly needs cable; Push-Up stands in that session already. "
        "The line can name more in `swap for`, or Oda can `swap Dip for` another."
    )


def test_a_warning_shows_what_is_avoided() -> None:
    finding = the_finding(compiled('\nathlete "Oda"\n  avoid overhead-press\n  avoid Raise\n'))
    assert finding.message == "Oda avoids overhead-press, and nothing fits in the place of Overhead Press in week 1"
    assert finding.help is not None
    assert finding.help.startswith("Pike Press is avoided; Raise is avoided. ")
    assert [(place.span.text, place.text) for place in finding.related] == [("avoid overhead-press", "avoided here")]


def test_a_swap_of_their_own_is_not_swapped_on() -> None:
    finding = the_finding(compiled('\nathlete "Oda"\n  has barbell, dip-bars\n  swap Dip for Fly\n'))
    assert finding.message == "Oda has no cable for Fly in week 1, and nothing fits in its place"
    assert finding.help == "Swap Dip for a movement that Oda can do."
    assert [place.text for place in finding.related] == ["it was brought in here"]


def test_a_movement_swapped_away_stands_in_for_nothing() -> None:
    made = compiled('\nathlete "Oda"\n  has barbell, cable\n  swap Fly for Raise\n')
    assert made.diagnostics == ()
    lines = the_one(made).plan.weeks[0].sessions[0].lines
    assert [line.movement.name for line in lines] == ["Overhead Press", "Push-Up"]


def test_check_says_nothing_of_an_athlete_nobody_asked_for() -> None:
    made = compile("lock-street.plan", text=LIBRARY + PLAN + '\nathlete "Oda"\n  avoid Dip\n  avoid overhead-press\n')
    assert made.diagnostics == ()
