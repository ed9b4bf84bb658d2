"""SW06: where a plan is outside the ranges it set (`measures.py`), and rules that cannot be held as they are written."""

from __future__ import annotations

from typing import Final

from setwright.diagnostics.catalogue.measures import BREACHES, plan_with
from setwright.diagnostics.model import Code, Severity

UNKNOWN_MEASURE: Final = Code(
    number="SW0620",
    name="unknown-measure",
    severity=Severity.ERROR,
    title="A measure that does not exist",
    message="no measure is called `{measure}`",
    text="A rule or a waiver begins with the name of a measure, such as `weekly-sets` or `recovery`.",
    failing=plan_with("should weekly-set for chest 4-10", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
    mended=plan_with("should weekly-sets for chest 4-10", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
)

BOUND_UNIT: Final = Code(
    number="SW0622",
    name="bound-unit",
    severity=Severity.ERROR,
    title="A bound in another unit than the measure's",
    message="`{measure}` is bounded by {wanted}, not by `{bound}`",
    text="Every measure has one unit: sets and sessions are plain numbers, effort is RPE, recovery is hours, rises, "
    "cuts and percents of a best are percents, and times are minutes or seconds.",
    failing=plan_with("should recovery for chest >= 2", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
    mended=plan_with("should recovery for chest >= 48 h", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
)

RULE_SUBJECT: Final = Code(
    number="SW0623",
    name="rule-subject",
    severity=Severity.ERROR,
    title="A measure that cannot be asked for this",
    message="`{measure}` cannot be held for what the rule names",
    text="Most measures take muscles or groups after `for`, or speak of the whole plan without it; those that "
    "look at lines, as `rest` and `effort` do, take movement patterns as well. Times, monotony and strain belong to no muscle, and `balance` alone takes two words with a colon.",
    failing=plan_with("should session-time for chest <= 60 min", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
    mended=plan_with("should session-time <= 60 min", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
)

RULE_AFTER_SETS: Final = Code(
    number="SW0624",
    name="rule-after-sets",
    severity=Severity.ERROR,
    title="`after ... sets` beside a measure that does not take it",
    message="`{measure}` does not take `after ... sets`",
    text="Only `recovery` speaks of what comes after a session, and so only it can be narrowed to sessions with a "
    "number of sets.",
    failing=plan_with("should frequency for chest >= 1 after 6 sets", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
    mended=plan_with("should frequency for chest >= 1", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
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

_EMPHASIS: Final = """use stdlib.exercises

plan "Ferry Lane"
  emphasis biceps {sets} sets per week
  must session-sets for biceps <= 4
  block Base: 1 week
    day Mon
      Barbell Curl: 3 x 10 @ RPE 8
"""

EMPHASIS_SHORT: Final = Code(
    number="SW0626",
    name="emphasis-short",
    severity=Severity.WARNING,
    title="An emphasis that could not be carried out whole",
    message="{placed} of {sets} a week for {muscle} could be {done} in {weeks}",
    text="A set is added to, or taken from, a line that trains the muscle and no other one directly, and only where every "
    "`must` rule that was kept is kept still. Widen the rule, add a movement for the muscle, or ask for less.",
    failing=_EMPHASIS.format(sets="+2"),
    mended=_EMPHASIS.format(sets="+1"),
)

UNKNOWN_SIDE: Final = Code(
    number="SW0627",
    name="unknown-side",
    severity=Severity.ERROR,
    title="A side of a balance that nothing declares",
    message="no movement pattern, muscle or group is called `{name}`",
    text="The two sides of a `balance` are movement patterns, as an exercise's `pattern` line has them, or muscles or "
    "groups. A word that is both a muscle and a pattern means the muscle.",
    failing=plan_with(
        "should balance horizontal-push : horizontal-pul 0.7-1.4",
        "day Mon",
        "  Bench Press: 4 x 8 @ RPE 8",
        "  Barbell Row: 4 x 8 @ RPE 8",
    ),
    mended=plan_with(
        "should balance horizontal-push : horizontal-pull 0.7-1.4",
        "day Mon",
        "  Bench Press: 4 x 8 @ RPE 8",
        "  Barbell Row: 4 x 8 @ RPE 8",
    ),
)

CODES: Final = (
    *BREACHES,
    UNKNOWN_MEASURE,
    BOUND_UNIT,
    RULE_SUBJECT,
    RULE_AFTER_SETS,
    UNUSED_WAIVER,
    EMPHASIS_SHORT,
    UNKNOWN_SIDE,
)
