"""SW04: numbers, units, tracks and deloads: what a week's figures come from."""

from setwright.diagnostics.model import Code, Severity


def _plan(line: str, weeks: str = "4 weeks", deload: str = "", more: str = "") -> str:
    return f'exercise Squat\n\nplan "Pier"\n  block Base: {weeks}\n{deload}    day Mon\n      Squat: {line}\n{more}'


NOT_A_COUNT = Code(
    "SW0401",
    "not-a-count",
    Severity.ERROR,
    title="Sets are a whole number",
    message="`{found}` is no count of sets; sets are a whole number from 1 to 100",
    text="Before `x` stands how many sets: `3 x 8`, `3 -> 5 x 8`, `[3, 4, 5] x 8`.",
    failing=_plan("2.5 x 8"),
    mended=_plan("3 x 8"),
)
NOT_A_NUMBER = Code(
    "SW0402",
    "not-a-number",
    Severity.ERROR,
    title="A number is needed",
    message="`{found}` is no number; one is needed here",
    text="`max` and clusters are forms of repetitions; sets, effort and loads are numbers.",
    failing=_plan("max x 8"),
    mended=_plan("3 x max"),
)
REPS_OUT_OF_RANGE = Code(
    "SW0403",
    "reps-out-of-range",
    Severity.ERROR,
    title="Repetitions nobody could mean",
    message="`{found}` is no amount of repetitions, time or distance",
    text="Repetitions are whole numbers from 1 to 1000, a range goes from low to high, a set lasts six hours at most.",
    failing=_plan("3 x 12-8"),
    mended=_plan("3 x 8-12"),
)
EFFORT_OUT_OF_RANGE = Code(
    "SW0404",
    "effort-out-of-range",
    Severity.ERROR,
    title="An effort off the scale",
    message="`{found}` is off the scale, which goes from RPE 1 to RPE 10 (9 to 0 RIR), low to high",
    text="RPE 10 is the hardest set one can do, RPE 8 leaves two repetitions in reserve (2 RIR).",
    failing=_plan("3 x 8 @ RPE 11"),
    mended=_plan("3 x 8 @ RPE 10"),
)
LOAD_OUT_OF_RANGE = Code(
    "SW0405",
    "load-out-of-range",
    Severity.ERROR,
    title="A load nobody could mean",
    message="`{found}` is no load; one value is needed, above 0, at most 150% or 1000 kg",
    text="A percent or a load is one value a week; a range of loads is written as an effort (`RPE 7-8`).",
    failing=_plan("3 x 8 @ 800%"),
    mended=_plan("3 x 8 @ 80%"),
)
MISSING_UNIT = Code(
    "SW0406",
    "missing-unit",
    Severity.ERROR,
    title="A number without its unit",
    message="`{found}` needs a unit",
    text="After `@` a bare number could be an effort, a percent or a load.",
    failing=_plan("3 x 8 @ 8"),
    mended=_plan("3 x 8 @ RPE 8"),
)
WRONG_UNIT = Code(
    "SW0407",
    "wrong-unit",
    Severity.ERROR,
    title="A value in a unit that does not fit",
    message="`{found}` does not fit; this takes {wanted}",
    text="Each place in a line takes its own kind of value; the message names the kind and shows it.",
    failing=_plan("3 x 8, rest 90 kg"),
    mended=_plan("3 x 8, rest 90 s"),
)
CHANGE_WITHOUT_BEFORE = Code(
    "SW0408",
    "change-without-before",
    Severity.ERROR,
    title="A change of nothing",
    message="`{found}` changes the load of the segment before, and this is the first",
    text="`-8%` and `+5 kg` stand after `then`: `1 x 5 @ RPE 8 then 3 x 5 @ -8%`.",
    failing=_plan("3 x 5 @ -8%"),
    mended=_plan("1 x 5 @ RPE 8 then 3 x 5 @ -8%"),
)
MIXED_TRACK = Code(
    "SW0409",
    "mixed-track",
    Severity.ERROR,
    title="A ramp between things of different kinds",
    message="`{track}` cannot move evenly: both ends must be numbers of one kind",
    text="A ramp goes from a number to a number. For `max`, clusters or a change of kind write a list: `[5, 3, max]`.",
    failing=_plan("3 x 5 -> max"),
    mended=_plan("3 x [5, 4, 3, max]"),
)
TRACK_LENGTH = Code(
    "SW0410",
    "track-length",
    Severity.ERROR,
    title="A list that does not fit its block",
    message="this list has {length} values, and block {block} has {weeks}",
    text="A list gives one value to each working week of its block (deload weeks take none). End it in `...` to hold the "
    "last value or in `repeat` to start over.",
    failing=_plan("[3, 4] x 8"),
    mended=_plan("[3, 4, ...] x 8"),
)
STEPS_OUT_OF_RANGE = Code(
    "SW0411",
    "steps-out-of-range",
    Severity.ERROR,
    title="Steps that lead off the scale",
    message="these steps reach {value} in week {week} of block {block}",
    text="A step a week must stay within what can be prescribed, to the last working week of the block.",
    failing=_plan("3 x 8 @ RPE 8 + 1/week"),
    mended=_plan("3 x 8 @ RPE 7 + 1/week"),
)
WEEK_OUTSIDE_BLOCK = Code(
    "SW0412",
    "week-outside-block",
    Severity.ERROR,
    title="A week that the block does not have",
    message="block {block} has {weeks}; there is no week {week}",
    text="Weeks are counted from the first of their block.",
    failing=_plan("3 x 8", deload="    deload week 5: sets 50%\n"),
    mended=_plan("3 x 8", deload="    deload week 4: sets 50%\n"),
)
WEEK_TWICE = Code(
    "SW0413",
    "week-twice",
    Severity.ERROR,
    title="A week is prescribed twice",
    message="week {week} is given twice",
    text="Each week of a block has one deload and one prescription a line.",
    failing=_plan("", weeks="2 weeks", more="        week 1: 3 x 5\n        weeks 1-2: 3 x 3\n"),
    mended=_plan("", weeks="2 weeks", more="        week 1: 3 x 5\n        week 2: 3 x 3\n"),
)
WEEK_MISSING = Code(
    "SW0414",
    "week-missing",
    Severity.ERROR,
    title="A working week has no prescription",
    message="nothing is prescribed for {weeks} of block {block}",
    text="The week-by-week form gives a prescription to every working week of the block; deload weeks need none.",
    failing=_plan("", weeks="2 weeks", more="        week 1: 3 x 5\n"),
    mended=_plan("", weeks="2 weeks", more="        week 1: 3 x 5\n        week 2: 3 x 3\n"),
)
TRACK_IN_WEEK_LINE = Code(
    "SW0415",
    "track-in-week-line",
    Severity.ERROR,
    title="A track inside a week line",
    message="`{track}` moves over weeks, but this line is for single weeks",
    text="The week-by-week form writes each week's values; a value that moves over the block stands on the movement's line.",
    failing=_plan("", weeks="2 weeks", more="        weeks 1-2: 3 x 5 @ 80% -> 85%\n"),
    mended=_plan("3 x 5 @ 80% -> 85%", weeks="2 weeks"),
)
DELOAD_FROM_NOTHING = Code(
    "SW0416",
    "deload-from-nothing",
    Severity.ERROR,
    title="A deload before any work",
    message="week {week} is a deload, but no working week comes before it",
    text="A deload lightens the working week before it, and this is the plan's first week.",
    failing=_plan("3 x 8", deload="    deload week 1: sets 50%\n"),
    mended=_plan("3 x 8", deload="    deload week 4: sets 50%\n"),
)
TOO_MANY_WEEKS = Code(
    "SW0417",
    "too-many-weeks",
    Severity.ERROR,
    title="A plan longer than anyone plans",
    message="{what} has {weeks} weeks; the most is {most}",
    text="A block has at most 104 weeks and a plan at most 520: ten years.",
    failing=_plan("3 x 8", weeks="100000000000 weeks"),
    mended=_plan("3 x 8", weeks="10 weeks"),
)
PRESCRIPTION_MISSING = Code(
    "SW0418",
    "prescription-missing",
    Severity.ERROR,
    title="A movement with nothing to do",
    message="{movement} has no sets and repetitions",
    text="After the colon stands what to do (`3 x 8 @ RPE 8`), or week lines are indented under it.",
    failing=_plan("rest 2 min"),
    mended=_plan("3 x 8, rest 2 min"),
)
SETS_MISSING = Code(
    "SW0419",
    "sets-missing",
    Severity.ERROR,
    title="Repetitions without sets",
    message="how many sets? write `3 x {reps}`",
    text="Only inside a circuit are the sets left out, since the rounds say how many.",
    failing=_plan("8 @ RPE 8"),
    mended=_plan("3 x 8 @ RPE 8"),
)
SETS_IN_CIRCUIT = Code(
    "SW0420",
    "sets-in-circuit",
    Severity.ERROR,
    title="Sets that do not match a circuit's rounds",
    message="a circuit does each movement once a round; leave the sets out, or write as many as rounds",
    text="In a circuit of three rounds `Push-Up: 10` means three sets of ten.",
    failing='exercise Squat\n\nplan "Pier"\n  block Base: 1 week\n    day Mon\n      circuit 3 rounds\n        Squat: 2 x 8\n',
    mended='exercise Squat\n\nplan "Pier"\n  block Base: 1 week\n    day Mon\n      circuit 3 rounds\n        Squat: 8\n',
)
BOTH_FORMS = Code(
    "SW0421",
    "both-forms",
    Severity.ERROR,
    title="A prescription and week lines",
    message="{movement} has a prescription on its line and week lines under it; one of them must go",
    text="The week-by-week form replaces the prescription after the colon, where only modifiers may then stand.",
    failing=_plan("3 x 8", weeks="1 week", more="        week 1: 3 x 5\n"),
    mended=_plan("rest 2 min", weeks="1 week", more="        week 1: 3 x 5\n"),
)
STRAY_PART = Code(
    "SW0422",
    "stray-part",
    Severity.ERROR,
    title="A part that belongs to nothing",
    message="`{found}` belongs to nothing before it",
    text="After a comma stands a modifier (`rest 2 min`, `tempo 3-1-1-0`, `warm-up`, `limit RPE 9`, `test`, `optional`, "
    "`every 90 s`, `pause 20 s`); further warm-up steps follow `warm-up`.",
    failing=_plan("3 x 8, 60% x 5"),
    mended=_plan("3 x 8, warm-up 60% x 5"),
)
WARM_UP_STEP = Code(
    "SW0423",
    "warm-up-step",
    Severity.ERROR,
    title="A warm-up step is a percent and repetitions",
    message="`{found}` is no warm-up step; write a percent of the work load and repetitions, as `60% x 5`",
    text="The percent is of the load of the line's first work set.",
    failing=_plan("3 x 8, warm-up 40 kg x 5"),
    mended=_plan("3 x 8, warm-up 60% x 5"),
)
NO_WARM_UP = Code(
    "SW0424",
    "no-warm-up",
    Severity.ERROR,
    title="A bare `warm-up` and no plan-wide one",
    message="this `warm-up` says no steps, and the plan has no `warm-up` line",
    text="A bare `warm-up` means the plan's own: a line such as `warm-up 40% x 8, 60% x 5, 75% x 3` under `plan`.",
    failing=_plan("3 x 8, warm-up"),
    mended=_plan("3 x 8, warm-up 40% x 8, 70% x 3"),
)
UNUSED_WEEK_LINE = Code(
    "SW0425",
    "unused-week-line",
    Severity.WARNING,
    title="A week line for a deload week",
    message="week {week} of block {block} is a deload; its prescription comes from the working week before",
    text="The line is not used, because a deload lightens the week before it. Remove the line, or the deload.",
    failing=_plan(
        "",
        weeks="2 weeks",
        deload="    deload week 2: sets 50%\n",
        more="        week 1: 3 x 5\n        week 2: 3 x 3\n",
    ),
    mended=_plan("", weeks="2 weeks", deload="    deload week 2: sets 50%\n", more="        week 1: 3 x 5\n"),
)
PAUSE_WITHOUT_CLUSTER = Code(
    "SW0426",
    "pause-without-cluster",
    Severity.ERROR,
    title="A pause without a cluster",
    message="`pause` is the rest inside a cluster, and this line has none",
    text="A cluster is written `3 x (2+2+2)`; between sets one writes `rest`.",
    failing=_plan("3 x 6, pause 20 s"),
    mended=_plan("3 x (2+2+2), pause 20 s"),
)
WEEK_OUTSIDE_PLAN = Code(
    "SW0427",
    "week-outside-plan",
    Severity.WARNING,
    title="A rule or waiver for a week that the plan does not have",
    message="there is no week {week} in {what}",
    text="Weeks of a rule or waiver are counted from the plan's first, or beside `in block` from the block's first. One that "
    "does not come holds nothing.",
    failing=_plan("3 x 8").replace('"Pier"\n', '"Pier"\n  should effort <= RPE 8 in week 9\n'),
    mended=_plan("3 x 8").replace('"Pier"\n', '"Pier"\n  should effort <= RPE 8 in week 3\n'),
)

_DATED = _plan("3 x 8").replace('"Pier"\n', '"Pier"\n  start 2027-01-04\n')
_INES = '\nathlete "Ines"\n  away '
AWAY_REVERSED = Code(
    "SW0428",
    "away-reversed",
    Severity.ERROR,
    title="Days away that end before they begin",
    message="these days away end on {last}, before they begin on {first}",
    text="The first day away stands first, and the last one after `to`; both are among the days away.",
    failing=_DATED + _INES + "2027-02-14 to 2027-02-08\n",
    mended=_DATED + _INES + "2027-02-08 to 2027-02-14\n",
)
AWAY_TWICE = Code(
    "SW0429",
    "away-twice",
    Severity.ERROR,
    title="Days away that overlap",
    message="{date} is among other days away already",
    text="Two lines for the same day may say different things of the plan. Write one line for the whole time.",
    failing=_DATED + _INES + "2027-02-08 to 2027-02-14\n  away 2027-02-12\n",
    mended=_DATED + _INES + "2027-02-08 to 2027-02-14\n  away 2027-02-15\n",
)
AWAY_WITHOUT_DATES = Code(
    "SW0430",
    "away-without-dates",
    Severity.WARNING,
    title="Days away and a plan without dates",
    message="plan {plan} has no dates, so days away change nothing in it",
    text="A plan has dates when it says on which day it begins: `start 2027-01-04`.",
    failing=_plan("3 x 8") + _INES + "2027-02-08\n",
    mended=_DATED + _INES + "2027-02-08\n",
)
AWAY_MOVES_NOTHING = Code(
    "SW0431",
    "away-moves-nothing",
    Severity.WARNING,
    title="Days away that move nothing",
    message="no session of plan {plan} stands on these days, so `shift` moves nothing",
    text="The plan moves where a session of it falls on the days away. Perhaps a year or a month is a slip.",
    failing=_DATED + _INES + "2026-01-04 to 2026-01-10, shift\n",
    mended=_DATED + _INES + "2027-01-04 to 2027-01-10, shift\n",
)
EFFORT_BETWEEN_HALVES = Code(
    "SW0432",
    "effort-between-halves",
    Severity.ERROR,
    title="An effort between the halves of the scale",
    message="`{found}` is finer than the scale, which goes in halves",
    text="Nobody can tell RPE 8.3 from RPE 8.5 while lifting. A plan asks for whole or half points of effort, in RPE or "
    "RIR. What was done may be written down as it was felt.",
    failing=_plan("3 x 8 @ RPE 8.3"),
    mended=_plan("3 x 8 @ RPE 8.5"),
)
OUTSIDE_SIZES = Code(
    "SW0433",
    "outside-sizes",
    Severity.ERROR,
    title="A value of the right kind, too large or too small",
    message="`{found}` is out of range for {what}: {sizes}",
    text="The kind of value fits the place, but not its size. Often a digit too many was written, or another unit meant.",
    failing=_plan("3 x 8", deload="    deload week 4: sets 150%\n"),
    mended=_plan("3 x 8", deload="    deload week 4: sets 50%\n"),
)

CODES = (
    NOT_A_COUNT,
    NOT_A_NUMBER,
    REPS_OUT_OF_RANGE,
    EFFORT_OUT_OF_RANGE,
    LOAD_OUT_OF_RANGE,
    MISSING_UNIT,
    WRONG_UNIT,
    CHANGE_WITHOUT_BEFORE,
    MIXED_TRACK,
    TRACK_LENGTH,
    STEPS_OUT_OF_RANGE,
    WEEK_OUTSIDE_BLOCK,
    WEEK_TWICE,
    WEEK_MISSING,
    TRACK_IN_WEEK_LINE,
    DELOAD_FROM_NOTHING,
    TOO_MANY_WEEKS,
    PRESCRIPTION_MISSING,
    SETS_MISSING,
    SETS_IN_CIRCUIT,
    BOTH_FORMS,
    STRAY_PART,
    WARM_UP_STEP,
    NO_WARM_UP,
    UNUSED_WEEK_LINE,
    PAUSE_WITHOUT_CLUSTER,
    WEEK_OUTSIDE_PLAN,
    AWAY_REVERSED,
    AWAY_TWICE,
    AWAY_WITHOUT_DATES,
    AWAY_MOVES_NOTHING,
    EFFORT_BETWEEN_HALVES,
    OUTSIDE_SIZES,
)
