"""A plan in which every word that a person wrote is Hebrew, and which brings out nearly every text that a sheet has.

Nothing comes in; what an output is made from goes out. The muscles are the shipped ones, so their titles are ours.
"""

from __future__ import annotations

from typing import Final

from setwright.pipeline import Compilation, compile
from setwright.render.material import Material
from setwright.report.overview import overview
from setwright.report.volume import volume

# A harbour's rowing club, as its coach would write it: squat, press, row, plank, lunge.
TEXT: Final = """\
use stdlib.muscles
use stdlib.equipment

exercise "סקוואט"
  pattern squat
  needs barbell, rack
  works quads 1, glutes 1, adductors 0.5, erectors 0.5
  swap for "מכרעים"
  cue "דחפו את הרצפה"
exercise "לחיצה"
  pattern horizontal-push
  needs barbell, bench
  works chest 1, front-delts 0.5, triceps 0.5
  best from "סקוואט" 60%
exercise "חתירה"
  pattern horizontal-pull
  needs dumbbells
  works lats 1, upper-back 1, biceps 0.5, rear-delts 0.5
exercise "מתח"
  pattern vertical-pull
  needs pull-up-bar
  works lats 1, biceps 0.5, forearms 0.5
exercise "מכרעים"
  pattern lunge
  needs dumbbells
  works quads 1, glutes 1
exercise "פלאנק"
  works abs 1, obliques 0.5
exercise "הליכה"
  needs dumbbells
  works traps 1, forearms 1
exercise "שכיבות"
  pattern horizontal-push
  works chest 1, triceps 0.5
exercise "מקבילים"
  pattern vertical-push
  needs dip-bars
  works triceps 1, side-delts 0.5

progression climb(step = 2.5 kg, back = 10%)
  when all sets >= top: load + step, reps = bottom
  when any set < bottom 2 times running: load - back
  when last set >= target 3 times running: reps + 2
  when effort > RPE 9: hold
  otherwise: reps + 1

athlete "נועה"
  born 2011
  bodyweight 58.5 kg
  bar 20 kg
  plates 4x20, 2x10, 2x5, 2x2.5, 2x1.25 kg
  dumbbells 4-30 kg by 2 kg
  avoid "מקבילים"
  swap "מתח" for "שכיבות"
  best "סקוואט": 82.5 kg
  best "חתירה": 14 kg x 8 @ RPE 8
  note "לא בימי גשם"

plan "תוכנית הנמל"
  author "מועדון החתירה"
  start 2027-01-25
  should weekly-sets for quads, lats 10-20 "מעט מדי"
  should weekly-sets for chest 25-30
  should weekly-sets for triceps <= 2 "המרפק"
  must weekly-sets for glutes <= 40
  waive weekly-sets for chest in block "בסיס" "רק בהתחלה"
  warm-up 40% x 8, 60% x 5
  note "הביאו מים"
  block "בסיס": 3 weeks
    limit effort RPE 9
    deload week 3: sets 50%, load 90%, effort RPE 6
    note "לאט"
    day Mon "כבד"
      note "בלי מוזיקה"
      "סקוואט": 4 x 5 @ 75% then 2 x 8 @ -8% then drop 1 x max @ -20%, rest 2:30, tempo 3-1-X-0, warm-up
        note "חגורה"
      superset rest 90 s
        "לחיצה": 3 x 8-10 @ RPE 9
        "מתח": 3 x 5+ @ bodyweight + 5 kg
      circuit 3 rounds rest 2 min
        "מכרעים": 10/side @ 3 RIR
        "שכיבות": 10
      "לחיצה" "שוב": 2 x (2+2+2) @ 60%, pause 20 s, rest 2-3 min
      "פלאנק": 2 x 40 s/side, optional
      "הליכה": 2 x 30 m
    day Tue "קל"
      "סקוואט" "קפיצה": 6 x 2 @ RPE 9, every 90 s
      "חתירה": 3 x 8/side @ 1 RIR, rest 75 s
      "לחיצה": 3 x 6-8 @ 40 kg, advance climb
      "מקבילים": 3 x 6 @ bodyweight - 10 kg
      "פלאנק": 1 x 2 min
  block "שיא": 1 week
    day Mon
      "סקוואט": 1 x 1 @ 100% then 1 x 1 @ +2.5 kg, rest 5 min, test
        warm-up 30% x 6, 50% x 4, 75% x 2
      "לחיצה": 2 x 3 @ 80% of "סקוואט", rest 3 min
    day Thu
      "לחיצה": 1 x 1 @ 95%, test
"""

ATHLETE: Final = "נועה"


def compiled(text: str = TEXT, athlete: str | None = ATHLETE) -> Compilation:
    """The plan, for its athlete or for nobody."""
    made = compile("harbour.plan", athletes=(athlete,) if athlete else (), text=text)
    assert [found.message for found in made.diagnostics if found.severity.value == "error"] == []
    return made.compilations[0]


def material(text: str = TEXT, athlete: str | None = ATHLETE) -> Material:
    """What its sheets are made from."""
    made = compiled(text, athlete)
    return Material(made.plan, volume(made.plan, made.promise), overview(made.plan), made.promise)


def undated() -> Material:
    """The same for nobody, in days by number, without dates."""
    text = TEXT.replace("  start 2027-01-25\n", "  microcycle 8 days\n")
    for weekday, number in (("Mon", "1"), ("Tue", "2"), ("Thu", "5")):
        text = text.replace(f"day {weekday}", f"day {number}")
    return material(text, None)
