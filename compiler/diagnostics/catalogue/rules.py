"""The family SW06xx: where a plan is outside the ranges it set, and rules that cannot be held as written."""

from __future__ import annotations

from typing import Final

from setwright.diagnostics.model import Code, Severity


def _plan(rule: str, *lines: str, block: str = "Base: 1 week") -> str:
    """A small plan that follows one rule; `lines` stand in its `block`."""
    body = "\n".join(f"    {line}" for line in lines)
    return f"""use stdlib.exercises

rules house
  {rule}

plan "Ferry Lane"
  follow house
  block {block}
{body}
"""


WEEKLY_SETS: Final = Code(
    number="SW0601",
    name="weekly-sets",
    severity=Severity.WARNING,
    title="Weekly sets outside the range a rule sets",
    message="{number} weekly {sets}{whom} in {weeks}, outside the {bound} you asked for",
    text="A rule bounds the work sets a week that count for a muscle, a group, or the whole plan. Warm-up sets never "
    "count. How much of a set counts is said by `count fractional`, `count direct` or `count total`. Deload and test "
    "weeks are left out unless the rule says `in every week` or names them.",
    failing=_plan("should weekly-sets for chest 4-10", "day Mon", "  Bench Press: 3 x 8 @ RPE 8"),
    mended=_plan("should weekly-sets for chest 4-10", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
)

SESSION_SETS: Final = Code(
    number="SW0602",
    name="session-sets",
    severity=Severity.WARNING,
    title="Sets in one session outside the range a rule sets",
    message="{session} of {weeks}: {number} {sets}{whom}, outside the {bound} you asked for",
    text="A rule bounds the work sets that count for a muscle, a group, or everything, in one session. Sessions "
    "without any set for it are not held to the bound.",
    failing=_plan("must session-sets for every muscle <= 5", "day Mon", "  Bench Press: 6 x 5 @ RPE 8"),
    mended=_plan(
        "must session-sets for every muscle <= 5",
        "day Mon",
        "  Bench Press: 3 x 5 @ RPE 8",
        "day Thu",
        "  Bench Press: 3 x 5 @ RPE 8",
    ),
)

FREQUENCY: Final = Code(
    number="SW0603",
    name="frequency",
    severity=Severity.WARNING,
    title="Sessions a week outside the range a rule sets",
    message="{number} {sessions} a week{whom} in {weeks}, outside the {bound} you asked for",
    text="A rule bounds how many sessions a week train a muscle directly, which is with a movement that credits it a "
    "whole set. Deload and test weeks are left out unless the rule says `in every week` or names them.",
    failing=_plan("should frequency for chest >= 2", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
    mended=_plan(
        "should frequency for chest >= 2",
        "day Mon",
        "  Bench Press: 2 x 8 @ RPE 8",
        "day Thu",
        "  Bench Press: 2 x 8 @ RPE 8",
    ),
)

RECOVERY: Final = Code(
    number="SW0604",
    name="recovery",
    severity=Severity.WARNING,
    title="Time between two sessions outside the range a rule sets",
    message="{session} of {weeks}: {number} since the last session{whom}, outside the {bound} you asked for",
    text="A rule bounds the hours, in whole days, from one session with direct sets for a muscle to the next, also "
    "from one week into the next. With `after 6 sets` it speaks only of what follows sessions of that many sets.",
    failing=_plan(
        "should recovery for quads >= 48 h",
        "day Mon",
        "  Back Squat: 3 x 5 @ RPE 8",
        "day Tue",
        "  Back Squat: 3 x 5 @ RPE 7",
    ),
    mended=_plan(
        "should recovery for quads >= 48 h",
        "day Mon",
        "  Back Squat: 3 x 5 @ RPE 8",
        "day Wed",
        "  Back Squat: 3 x 5 @ RPE 7",
    ),
)

EFFORT: Final = Code(
    number="SW0605",
    name="effort",
    severity=Severity.WARNING,
    title="Effort outside the range a rule sets",
    message="{session} of {weeks}: {number}{whom}, outside the {bound} you asked for",
    text="A rule bounds the highest effort that a session asks for: the top of a range, and RPE 10 for `max` or `5+` "
    "without a stated effort. Work by percent or load alone says no effort and is not held to the bound.",
    failing=_plan("must effort <= RPE 8 in week 1", "day Mon", "  Bench Press: 3 x 5 @ RPE 9"),
    mended=_plan("must effort <= RPE 8 in week 1", "day Mon", "  Bench Press: 3 x 5 @ RPE 8"),
)

WEEKLY_RISE: Final = Code(
    number="SW0606",
    name="weekly-rise",
    severity=Severity.WARNING,
    title="Weekly rise outside the range a rule sets",
    message="a weekly rise of {number}{whom} in {weeks}, outside the {bound} you asked for",
    text="A rule bounds by how many percent the counted sets of a week exceed those of the working week before. Deload "
    "and test weeks are stepped over unless the rule says `in every week` or names them.",
    failing=_plan(
        "should weekly-rise for chest <= 30%",
        "day Mon",
        "  Bench Press: [4, 6] x 8 @ RPE 8",
        block="Base: 2 weeks",
    ),
    mended=_plan(
        "should weekly-rise for chest <= 30%",
        "day Mon",
        "  Bench Press: [4, 5] x 8 @ RPE 8",
        block="Base: 2 weeks",
    ),
)

DELOAD_CUT: Final = Code(
    number="SW0607",
    name="deload-cut",
    severity=Severity.WARNING,
    title="Cut of a deload outside the range a rule sets",
    message="the deload in {weeks} cuts {number} of the sets{whom}, outside the {bound} you asked for",
    text="A rule bounds by how many percent the sets of a deload week are fewer than those of the working week before. "
    "Scaled sets are rounded to the nearest whole, halves up, so half of five sets is three, a cut of 40%.",
    failing=_plan(
        "must deload-cut >= 40%",
        "deload week 2: sets 75%",
        "day Mon",
        "  Bench Press: 4 x 8 @ RPE 8",
        block="Base: 2 weeks",
    ),
    mended=_plan(
        "must deload-cut >= 40%",
        "deload week 2: sets 50%",
        "day Mon",
        "  Bench Press: 4 x 8 @ RPE 8",
        block="Base: 2 weeks",
    ),
)

SESSION_TIME: Final = Code(
    number="SW0608",
    name="session-time",
    severity=Severity.WARNING,
    title="Minutes of a session outside the range a rule sets",
    message="{session} of {weeks}: {number}, outside the {bound} you asked for",
    text="A rule bounds the minutes a session takes: warm-up sets, work sets at their tempo, the rests between them, "
    "and the way from one movement to the next. It is an estimate whose conventions the reference lists.",
    failing=_plan("should session-time <= 20 min", "day Mon", "  Bench Press: 8 x 5 @ RPE 7, rest 3 min"),
    mended=_plan("should session-time <= 20 min", "day Mon", "  Bench Press: 8 x 5 @ RPE 7, rest 90 s"),
)

UNKNOWN_MEASURE: Final = Code(
    number="SW0620",
    name="unknown-measure",
    severity=Severity.ERROR,
    title="A measure that does not exist",
    message="no measure is called `{measure}`",
    text="A rule or a waiver begins with the name of a measure, such as `weekly-sets` or `recovery`.",
    failing=_plan("should weekly-set for chest 4-10", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
    mended=_plan("should weekly-sets for chest 4-10", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
)

MEASURE_NOT_YET: Final = Code(
    number="SW0621",
    name="measure-not-yet",
    severity=Severity.WARNING,
    title="A measure that is read but not checked yet",
    message="`{measure}` is read but not checked yet",
    text="The measure belongs to the language, and this version holds no plan to it. The rule may stay where it is.",
    failing=_plan("should monotony <= 2", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
    mended=_plan("should session-sets <= 20", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
)

BOUND_UNIT: Final = Code(
    number="SW0622",
    name="bound-unit",
    severity=Severity.ERROR,
    title="A bound in another unit than the measure's",
    message="`{measure}` is bounded by {wanted}, not by `{bound}`",
    text="Every measure has one unit: sets and sessions are plain numbers, effort is RPE, recovery is hours, rises and "
    "cuts are percents, and times are minutes.",
    failing=_plan("should recovery for chest >= 2", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
    mended=_plan("should recovery for chest >= 48 h", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
)

RULE_SUBJECT: Final = Code(
    number="SW0623",
    name="rule-subject",
    severity=Severity.ERROR,
    title="A measure that cannot be asked for this",
    message="`{measure}` cannot be held for what the rule names",
    text="Most measures take muscles or groups after `for`, or speak of the whole plan without it. The time of a "
    "session belongs to no muscle, and only a measure of balance takes two sides with a colon.",
    failing=_plan("should session-time for chest <= 60 min", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
    mended=_plan("should session-time <= 60 min", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
)

RULE_AFTER_SETS: Final = Code(
    number="SW0624",
    name="rule-after-sets",
    severity=Severity.ERROR,
    title="`after ... sets` beside a measure that does not take it",
    message="`{measure}` does not take `after ... sets`",
    text="Only `recovery` speaks of what comes after a session, and so only it can be narrowed to sessions with a "
    "number of sets.",
    failing=_plan("should frequency for chest >= 1 after 6 sets", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
    mended=_plan("should frequency for chest >= 1", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
)

_WAIVED: Final = """use stdlib.exercises

rules house
  should weekly-sets for chest 4-10

plan "Ferry Lane"
  follow house
  waive weekly-sets for chest in week 2 "Travel."
  block Base: 2 weeks
    day Mon
      Bench Press: {sets} x 8 @ RPE 8
"""

UNUSED_WAIVER: Final = Code(
    number="SW0625",
    name="unused-waiver",
    severity=Severity.WARNING,
    title="A waiver that waives nothing",
    message="this waiver of `{measure}` waives nothing",
    text="The plan keeps the rule in the weeks that the waiver names, or no rule of that measure speaks of its "
    "muscle. A waiver left standing would hide a breach that comes later.",
    failing=_WAIVED.format(sets="4"),
    mended=_WAIVED.format(sets="[4, 2]"),
)

CODES: Final = (
    WEEKLY_SETS,
    SESSION_SETS,
    FREQUENCY,
    RECOVERY,
    EFFORT,
    WEEKLY_RISE,
    DELOAD_CUT,
    SESSION_TIME,
    UNKNOWN_MEASURE,
    MEASURE_NOT_YET,
    BOUND_UNIT,
    RULE_SUBJECT,
    RULE_AFTER_SETS,
    UNUSED_WAIVER,
)
