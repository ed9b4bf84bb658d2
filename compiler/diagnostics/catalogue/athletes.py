"""SW05: athletes, their equipment, and the loads that follow."""

from setwright.diagnostics.model import Code, Severity

_LIBRARY = "equipment barbell\n  loads bar\nequipment sled\nexercise Squat\n  needs barbell\n\n"
_PLAN = 'plan "Pier"\n  block Base: 1 week\n    day Mon\n      Squat: 3 x 5 @ 80%\n'
_TWO_DAYS = _PLAN + "    day Thu like Mon\n"

TOO_FEW_DAYS = Code(
    "SW0501",
    "too-few-days",
    Severity.ERROR,
    title="Fewer days than sessions",
    message="{athlete} has {available}, and week {week} has {sessions} sessions",
    text="Sessions fall on an athlete's available days in order. Where there are fewer days than sessions, two sessions have "
    "to become one: merge days in the plan, or free another day.",
    failing=_LIBRARY + _TWO_DAYS + '\nathlete "Ines"\n  available Mon\n',
    mended=_LIBRARY + _TWO_DAYS + '\nathlete "Ines"\n  available Mon, Fri\n',
)
LOAD_PAST_PLATES = Code(
    "SW0502",
    "load-past-plates",
    Severity.WARNING,
    title="A load past all the plates",
    message="{movement} asks for {asked} in week {week}, and {athlete} can load {most} at most",
    text="The sheet prints the heaviest load that the athlete's equipment can make.",
    failing=_LIBRARY + _PLAN + '\nathlete "Ines"\n  bar 15 kg\n  plates 2x10 kg\n  best Squat: 100 kg\n',
    mended=_LIBRARY + _PLAN + '\nathlete "Ines"\n  bar 15 kg\n  plates 2x20, 2x15 kg\n  best Squat: 100 kg\n',
)
LOAD_BELOW_BAR = Code(
    "SW0503",
    "load-below-bar",
    Severity.WARNING,
    title="A load below the lightest that can be made",
    message="{movement} asks for {asked} in week {week}, and the lightest {athlete} can load is {least}",
    text="The sheet prints the lightest load that the athlete's equipment can make, which is heavier than asked for.",
    failing=_LIBRARY + _PLAN + '\nathlete "Ines"\n  bar 20 kg\n  best Squat: 20 kg\n',
    mended=_LIBRARY + _PLAN + '\nathlete "Ines"\n  bar 10 kg\n  best Squat: 20 kg\n',
)
MISSING_EQUIPMENT = Code(
    "SW0504",
    "missing-equipment",
    Severity.WARNING,
    title="A movement needs what the athlete does not have",
    message="{athlete} has no {equipment} for {movement} in week {week}, and nothing fits in its place",
    text="The athlete's `has` line lists the equipment at hand. What stands in is the first movement of the line's "
    "`swap for` list, or else of the movement's own, that the athlete can do; here there is none.",
    failing=_LIBRARY + _PLAN + '\nathlete "Ines"\n  has sled\n  best Squat: 100 kg\n',
    mended=_LIBRARY + _PLAN + '\nathlete "Ines"\n  has barbell, sled\n  best Squat: 100 kg\n',
)
BEST_UNCLEAR = Code(
    "SW0505",
    "best-unclear",
    Severity.ERROR,
    title="A best that cannot be read",
    message="`{found}` is no best; write `92.5 kg`, or a set: `55 kg x 6 @ RPE 9`",
    text="A best is a tested single, or a set from which it is estimated: load, repetitions, and the effort unless the set "
    "went to failure.",
    failing=_LIBRARY + 'athlete "Ines"\n  best Squat: 5 x 5\n',
    mended=_LIBRARY + 'athlete "Ines"\n  best Squat: 80 kg x 5 @ RPE 9\n',
)
BEST_TWICE = Code(
    "SW0506",
    "best-twice",
    Severity.ERROR,
    title="Two bests in one movement",
    message="{athlete} has two bests in {movement}",
    text="The newest or the more certain of the two is the one to keep.",
    failing=_LIBRARY + 'athlete "Ines"\n  best Squat: 80 kg\n  best Squat: 85 kg\n',
    mended=_LIBRARY + 'athlete "Ines"\n  best Squat: 85 kg\n',
)
EFFORT_TOO_LOW = Code(
    "SW0507",
    "effort-too-low",
    Severity.WARNING,
    title="An effort too low to give a load",
    message="no load follows from {intensity} for {movement}: below RPE 5 the scale counts no repetitions",
    text="The published scale says how many repetitions are left only down to RPE 5, so the sheet leaves the load blank.",
    failing=_LIBRARY + _PLAN.replace("80%", "RPE 4") + '\nathlete "Ines"\n  best Squat: 100 kg\n',
    mended=_LIBRARY + _PLAN.replace("80%", "RPE 6") + '\nathlete "Ines"\n  best Squat: 100 kg\n',
)
BEYOND_MODEL = Code(
    "SW0508",
    "beyond-model",
    Severity.WARNING,
    title="More repetitions than the model covers",
    message="no load follows for {movement}: {reason}",
    text="Repetition-maximum models describe sets of few repetitions and have an end. The sheet leaves the load blank.",
    failing=_LIBRARY + _PLAN.replace("5 @ 80%", "40 @ RPE 8") + '\nathlete "Ines"\n  best Squat: 100 kg\n',
    mended=_LIBRARY + _PLAN.replace("5 @ 80%", "8 @ RPE 8") + '\nathlete "Ines"\n  best Squat: 100 kg\n',
)
BAD_EQUIPMENT = Code(
    "SW0509",
    "bad-equipment",
    Severity.ERROR,
    title="A stock of weights that makes no sense",
    message="{message}",
    text="`plates 2x20, 4x2.5 kg` counts discs; `dumbbells 2-30 kg by 2 kg` or a list names what there is, each hand alike.",
    failing=_LIBRARY + 'athlete "Ines"\n  dumbbells 30-2 kg by 2 kg\n',
    mended=_LIBRARY + 'athlete "Ines"\n  dumbbells 2-30 kg by 2 kg\n',
)
SESSION_WEEKDAY = Code(
    "SW0510",
    "session-weekday",
    Severity.ERROR,
    title="A date and a weekday that disagree",
    message="{date} is a {right}, not a {written}",
    text="One of the two is a slip. The weekday may be left out.",
    failing=_LIBRARY + "session 2027-01-04 Tue\n  Squat: 60 kg x 5, 5\n",
    mended=_LIBRARY + "session 2027-01-04 Mon\n  Squat: 60 kg x 5, 5\n",
)
SESSION_ENTRY = Code(
    "SW0511",
    "session-entry",
    Severity.ERROR,
    title="A set done that cannot be read",
    message="`{found}` is no entry of sets done; write a load and each set's repetitions: `70 kg x 5, 5, 4 @ RPE 8.5`",
    text="An entry is a load (or `bodyweight`), `x`, and the repetitions, seconds or metres of each set; an effort holds "
    "for the sets since the one before it. Without a load and `x` it says that none was written down: `30 s, 30 s`.",
    failing=_LIBRARY + "session 2027-01-04\n  Squat: 3 x 5, rest 2 min\n",
    mended=_LIBRARY + "session 2027-01-04\n  Squat: 60 kg x 5, 5, 5 @ RPE 8\n",
)
AVAILABLE_WITH_MICROCYCLE = Code(
    "SW0512",
    "available-with-microcycle",
    Severity.WARNING,
    title="Available weekdays and a plan without weekdays",
    message="{athlete}'s available weekdays are not used: the plan goes by numbered days",
    text="A plan with `microcycle N days` moves through the week, so weekdays do not place its sessions.",
    failing=_LIBRARY + 'plan "Pier"\n  microcycle 8 days\n  block Base: 1 week\n    day 1\n      Squat: 3 x 5\n'
    '\nathlete "Ines"\n  available Mon\n',
    mended=_LIBRARY + 'plan "Pier"\n  microcycle 8 days\n  block Base: 1 week\n    day 1\n      Squat: 3 x 5\n'
    '\nathlete "Ines"\n  bar 15 kg\n',
)
AVOIDED_MOVEMENT = Code(
    "SW0513",
    "avoided-movement",
    Severity.WARNING,
    title="Nothing stands in for what the athlete avoids",
    message="{athlete} avoids {what}, and nothing fits in the place of {movement} in week {week}",
    text="The movement stays on the sheet with a remark. What stands in is the first movement of the line's `swap for` "
    "list, or else of the movement's own, that the athlete does not avoid, has the equipment for and does not do in "
    "that session anyway. The athlete's own `swap A for B` goes before all of these.",
    failing=_LIBRARY + _PLAN + '\nathlete "Ines"\n  avoid Squat\n',
    mended=_LIBRARY + "exercise Lunge\n\n" + _PLAN + '\nathlete "Ines"\n  avoid Squat\n  swap Squat for Lunge\n',
)
UNRELIABLE = Code(
    "SW0514",
    "unreliable",
    Severity.WARNING,
    title="A best estimated from many repetitions",
    message="{reps} repetitions to failure are many for an estimate: past {most} it gets unreliable",
    text="Formulas that estimate a best from a set are at their best up to about five repetitions and should use no more "
    "than ten, those left in reserve counted (Reynolds, Gordon and Robergs 2006). The loads are computed all the same. A "
    "heavier set of fewer repetitions, or a tested best, makes them surer.",
    failing=_LIBRARY + 'athlete "Ines"\n  best Squat: 60 kg x 12\n',
    mended=_LIBRARY + 'athlete "Ines"\n  best Squat: 75 kg x 5\n',
)
MANY_REPETITIONS = Code(
    "SW0515",
    "many-repetitions",
    Severity.WARNING,
    title="Loads from more repetitions than a model is made for",
    message="loads of {athlete} for {movements} rest on {models} at up to {reps} repetitions to failure: past {most} it "
    "gets unreliable",
    text="The load of a set by effort is worked out at its repetitions and those in reserve: 12 with 2 in reserve are 14 to "
    "failure. Formulas should use no more than ten (Reynolds, Gordon and Robergs 2006). This is told once for a plan and "
    "an athlete, of the movements for which the published formulas disagree by more than a step of what can be loaded; the "
    "sheet prints their range beside the load. Where the best comes from a set of as many repetitions to failure, all "
    "formulas give the load that was lifted.",
    failing=_LIBRARY + _PLAN.replace("5 @ 80%", "12 @ RPE 8") + '\nathlete "Ines"\n  best Squat: 100 kg\n',
    mended=_LIBRARY + _PLAN.replace("5 @ 80%", "12 @ 65%") + '\nathlete "Ines"\n  best Squat: 100 kg\n',
)
TIME_OF_DAY = Code(
    "SW0516",
    "time-of-day",
    Severity.ERROR,
    title="A time that no day has",
    message="`{found}` is no time of day; write hours from 0 to 23 and minutes from 00 to 59: `18:30`",
    text="`at 18:30` says when an athlete's sessions begin, `at Sat 10:00` when those on one weekday do. Calendars show it.",
    failing=_LIBRARY + 'athlete "Ines"\n  at 25:00\n',
    mended=_LIBRARY + 'athlete "Ines"\n  at 18:30\n',
)
YEAR_OF_BIRTH = Code(
    "SW0522",
    "year-of-birth",
    Severity.ERROR,
    title="A year in which no athlete was born",
    message="`{found}` is no year of birth; write one from {first} to {last}",
    text="Sheets say with it who may be under age when a plan begins, so the year is written in full: `born 1994`.",
    failing=_LIBRARY + 'athlete "Ines"\n  born 94\n',
    mended=_LIBRARY + 'athlete "Ines"\n  born 1994\n',
)

SESSION_EFFORT = Code(
    "SW0521",
    "session-effort",
    Severity.ERROR,
    title="The effort of a whole session that cannot be read",
    message="`{found}` is no effort of a whole session; write it on the scale from 0 to 10, with its minutes: "
    "`effort 7 of 10, 65 min`",
    text="How hard the whole session was is asked about half an hour after it, from 0 (rest) to 10 (as hard as can be). "
    "That is another scale than the RPE of a set. With the minutes it gives the session's load. The minutes may be left "
    "out.",
    failing=_LIBRARY + "session 2027-01-04\n  Squat: 60 kg x 5\n  effort 14 of 20, 65 min\n",
    mended=_LIBRARY + "session 2027-01-04\n  Squat: 60 kg x 5\n  effort 7 of 10, 65 min\n",
)

CODES = (
    TOO_FEW_DAYS,
    LOAD_PAST_PLATES,
    LOAD_BELOW_BAR,
    MISSING_EQUIPMENT,
    BEST_UNCLEAR,
    BEST_TWICE,
    EFFORT_TOO_LOW,
    BEYOND_MODEL,
    BAD_EQUIPMENT,
    SESSION_WEEKDAY,
    SESSION_ENTRY,
    AVAILABLE_WITH_MICROCYCLE,
    AVOIDED_MOVEMENT,
    UNRELIABLE,
    MANY_REPETITIONS,
    TIME_OF_DAY,
    SESSION_EFFORT,
    YEAR_OF_BIRTH,
)
