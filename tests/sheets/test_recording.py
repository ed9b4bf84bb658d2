"""What a sheet hands to the script that records on it."""

from __future__ import annotations

import json
import re
from math import exp

import pytest

from setwright.pipeline import compile
from setwright.plan import Plan
from setwright.render.html import recording
from setwright.render.language import ENGLISH
from sheets.sample_plans import hostile

TEXT = """use stdlib.exercises

plan "Jetty"
  model brzycki
  block Base: 1 week
    day Mon
      Back Squat: 3 x 5 @ RPE 7-8 then drop 1 x 8 @ -30%, rest 2-3 min
      Pull-Up: 1 x 5 @ bodyweight + 10 kg then 1 x 5 @ -5 kg then 1 x 5 @ bodyweight - 5 kg
      Bench Press: 6 x 2 @ 60 kg, every 90 s
      superset rest 60 s
        Dumbbell Bench Press: 2 x 8-10 @ 2-3 RIR
        Side Plank: 2 x 30 -> 40 s/side

athlete "Ines"
  best Back Squat: 100 kg
"""


def fitted(text: str = TEXT) -> Plan:
    made = compile("jetty.plan", athletes=("*",), text=text)
    assert not made.has_errors, made.diagnostics
    return made.compilations[0].plan


def test_factors_are_those_of_the_published_formulas() -> None:
    """Brzycki 1993: 36 w / (37 - r). Wathan 1994: 100 w / (48.8 + 53.8 e^(-0.075 r)). One repetition is the best."""
    brzycki = recording.data(fitted(), ENGLISH)["models"]["brzycki"]
    reps = [half / 2 for half in range(2, 21)]
    assert brzycki == [pytest.approx(36 / (37 - r), abs=1e-5) for r in reps]
    made = recording.data(fitted(TEXT.replace("best Back", "model wathan\n  best Back")), ENGLISH)["models"]
    assert made == {"wathan": [1, *(pytest.approx(100 / (48.8 + 53.8 * exp(-0.075 * r)), abs=1e-5) for r in reps[1:])]}


def test_lines_say_what_a_set_as_written_is() -> None:
    made = recording.data(fitted(), ENGLISH)
    [[key, date, day, week, lines]] = made["sessions"]
    assert (key, date, day, week) == ("w1-Mon", "", "Mon", 1)
    sets = [[made["sets"][place] for place in line[3]] for line in lines]
    assert sets[0][0] == [3, "82.5", 0, "kg", "5", "5", "", 0, "8", "RPE", 0]
    assert sets[0][1][-1] == 1
    assert [(one[1], one[2], one[3]) for one in sets[1]] == [("10", 1, "kg"), ("5", 1, "kg"), ("-5", 1, "kg")]
    assert sets[3][0][4:10] == ["8", "10", "", 0, "2", "RIR"]
    assert sets[4][0][4:8] == ["30", "30", "s", 1]
    assert [made["rests"][line[2]] if line[2] >= 0 else None for line in lines] == [
        *([120, 180, 0], None, [90, 90, 1], [60, 60, 0], [60, 60, 0]),
    ]
    assert [line[4:] for line in lines] == [[], [], [], ["A"], ["A"]]
    assert made["movements"][lines[3][0]] == ["Dumbbell Bench Press", "brzycki", 1]


def test_no_text_can_leave_the_block() -> None:
    text = recording.block(hostile(), ENGLISH)
    assert not re.search("[<>\u2028\u2029]", text)
    assert json.loads(text)["plan"] == hostile().name


def test_the_script_has_no_name_twice_and_every_word_that_it_says() -> None:
    script = str(recording.script())
    names = re.findall(r"^(?:async )?function (\w+)|^(?:const|let) (\w+)(?= =|;)", script, re.MULTILINE)
    outermost = [name or other for name, other in names if name or other.isupper()]
    assert sorted(outermost) == sorted(set(outermost))
    said = set(re.findall(r'say\("(\w+)"', script)) | set(re.findall(r'[?:] "(\w+)"', script))
    assert set(re.findall(r'say\("(\w+)"', script)) <= recording.spoken(ENGLISH).keys()
    assert recording.spoken(ENGLISH).keys() - said <= {"full", "blocked", "damaged"}
    assert "</" not in script
    assert "innerHTML" not in script


def test_no_effort_is_filled_in_where_a_deload_scaled_its_load() -> None:
    text = TEXT.replace("Base: 1 week", "Base: 2 weeks\n    deload week 2: load 85%").replace("30 -> 40 s", "30 s")
    made = recording.data(fitted(text), ENGLISH)
    efforts = [[made["sets"][line[3][0]][8:10] for line in lines] for *_, lines in made["sessions"]]
    assert [(efforts[0][0], efforts[0][3]), (efforts[1][0], efforts[1][3])] == [
        (["8", "RPE"], ["2", "RIR"]),
        (["", "RPE"], ["", "RIR"]),
    ]
