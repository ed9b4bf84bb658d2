"""SW0601 to SW0619: where a plan is outside a range that it set, one code a measure. `rules.py` lists them."""

from __future__ import annotations

from typing import Final

from setwright.diagnostics.model import Code, Severity


def plan_with(rule: str, *lines: str, block: str = "Base: 1 week") -> str:
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
    message="{number} weekly {sets}{whom} in {weeks}, outside the {bound} {asked}",
    text="A rule bounds the work sets a week that count for a muscle, a group, or the whole plan. Warm-up sets never "
    "count. How much of a set counts is said by `count fractional`, `count direct` or `count total`. Deload and test "
    "weeks are left out unless the rule says `in every week` or names them.",
    failing=plan_with("should weekly-sets for chest 4-10", "day Mon", "  Bench Press: 3 x 8 @ RPE 8"),
    mended=plan_with("should weekly-sets for chest 4-10", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
)

SESSION_SETS: Final = Code(
    number="SW0602",
    name="session-sets",
    severity=Severity.WARNING,
    title="Sets in one session outside the range a rule sets",
    message="{session} of {weeks}: {number} {sets}{whom}, outside the {bound} {asked}",
    text="A rule bounds the work sets that count for a muscle, a group, or everything, in one session. Sessions "
    "without any set for it are not held to the bound.",
    failing=plan_with("must session-sets for every muscle <= 5", "day Mon", "  Bench Press: 6 x 5 @ RPE 8"),
    mended=plan_with(
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
    message="{number} {sessions} a week{whom} in {weeks}, outside the {bound} {asked}",
    text="A rule bounds how many sessions a week train a muscle directly, which is with a movement that credits it a "
    "whole set. Deload and test weeks are left out unless the rule says `in every week` or names them.",
    failing=plan_with("should frequency for chest >= 2", "day Mon", "  Bench Press: 4 x 8 @ RPE 8"),
    mended=plan_with(
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
    message="{session} of {weeks}: {number} since the last session{whom}, outside the {bound} {asked}",
    text="A rule bounds the hours, in whole days, from one session with direct sets for a muscle to the next, also "
    "from one week into the next. With `after 6 sets` it speaks only of what follows sessions of that many sets.",
    failing=plan_with(
        "should recovery for quads >= 48 h",
        "day Mon",
        "  Back Squat: 3 x 5 @ RPE 8",
        "day Tue",
        "  Back Squat: 3 x 5 @ RPE 7",
    ),
    mended=plan_with(
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
    message="{session} of {weeks}: {number}{whom}, outside the {bound} {asked}",
    text="A rule bounds the highest effort that a session asks for: the top of a range, and RPE 10 for `max` or `5+` "
    "without a stated effort. Work by percent or load alone says no effort and is not held to the bound.",
    failing=plan_with("must effort <= RPE 8 in week 1", "day Mon", "  Bench Press: 3 x 5 @ RPE 9"),
    mended=plan_with("must effort <= RPE 8 in week 1", "day Mon", "  Bench Press: 3 x 5 @ RPE 8"),
)

WEEKLY_RISE: Final = Code(
    number="SW0606",
    name="weekly-rise",
    severity=Severity.WARNING,
    title="Weekly rise outside the range a rule sets",
    message="a weekly rise of {number}{whom} in {weeks}, outside the {bound} {asked}",
    text="A rule bounds by how many percent the counted sets of a week exceed those of the working week before. Deload "
    "and test weeks are stepped over unless the rule says `in every week` or names them.",
    failing=plan_with(
        "should weekly-rise for chest <= 30%",
        "day Mon",
        "  Bench Press: [4, 6] x 8 @ RPE 8",
        block="Base: 2 weeks",
    ),
    mended=plan_with(
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
    message="the deload in {weeks} cuts {number} of the sets{whom}, outside the {bound} {asked}",
    text="A rule bounds by how many percent the sets of a deload week are fewer than those of the working week before. "
    "Scaled sets are rounded to the nearest whole, halves up, so half of five sets is three, a cut of 40%.",
    failing=plan_with(
        "must deload-cut >= 40%",
        "deload week 2: sets 75%",
        "day Mon",
        "  Bench Press: 4 x 8 @ RPE 8",
        block="Base: 2 weeks",
    ),
    mended=plan_with(
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
    message="{session} of {weeks}: {number}, outside the {bound} {asked}",
    text="A rule bounds the minutes a session takes: warm-up sets, work sets at their tempo, the rests between them, "
    "and the way from one movement to the next. It is an estimate whose conventions the reference lists.",
    failing=plan_with("should session-time <= 20 min", "day Mon", "  Bench Press: 8 x 5 @ RPE 7, rest 3 min"),
    mended=plan_with("should session-time <= 20 min", "day Mon", "  Bench Press: 8 x 5 @ RPE 7, rest 90 s"),
)

INTENSITY: Final = Code(
    number="SW0609",
    name="intensity",
    severity=Severity.WARNING,
    title="Percent of a best outside the range a rule sets",
    message="{session} of {weeks}: {number} of a best{whom}, outside the {bound} {asked}",
    text="A rule bounds the highest percent of a best that a session asks for, as the plan writes it. Work by effort or "
    "load says no percent and is not held to the bound.",
    failing=plan_with("should intensity <= 85%", "day Mon", "  Back Squat: 3 x 3 @ 87.5%"),
    mended=plan_with("should intensity <= 85%", "day Mon", "  Back Squat: 3 x 3 @ 85%"),
)

WEEKLY_TIME: Final = Code(
    number="SW0610",
    name="weekly-time",
    severity=Severity.WARNING,
    title="Minutes of a week outside the range a rule sets",
    message="{number} a week in {weeks}, outside the {bound} {asked}",
    text="A rule bounds the minutes that all sessions of a week take. It is an estimate whose conventions the reference "
    "lists.",
    failing=plan_with("should weekly-time <= 20 min", "day Mon", "  Bench Press: 8 x 5 @ RPE 7, rest 3 min"),
    mended=plan_with("should weekly-time <= 20 min", "day Mon", "  Bench Press: 8 x 5 @ RPE 7, rest 90 s"),
)

BALANCE: Final = Code(
    number="SW0611",
    name="balance",
    severity=Severity.WARNING,
    title="Sets of one kind for each set of another outside the range a rule sets",
    message="a balance of {number}{whom} in {weeks}, outside the {bound} {asked}",
    text="A rule bounds the sets of one movement pattern, muscle or group for each set of another. `8 : 0` are eight sets "
    "against none, which no bound allows that has an upper end. Deload and test weeks are left out unless the rule says "
    "`in every week` or names them.",
    failing=plan_with(
        "should balance horizontal-push : horizontal-pull 0.7-1.4",
        "day Mon",
        "  Bench Press: 5 x 8 @ RPE 8",
        "  Barbell Row: 3 x 8 @ RPE 8",
    ),
    mended=plan_with(
        "should balance horizontal-push : horizontal-pull 0.7-1.4",
        "day Mon",
        "  Bench Press: 4 x 8 @ RPE 8",
        "  Barbell Row: 4 x 8 @ RPE 8",
    ),
)

MONOTONY: Final = Code(
    number="SW0612",
    name="monotony",
    severity=Severity.WARNING,
    title="Monotony outside the range a rule sets",
    message="a monotony of {number} (sample deviation, n - 1) in {weeks}, outside the {bound} {asked}",
    text="A rule bounds how alike the days of a week are: the mean of their planned loads divided by the standard "
    "deviation, with n - 1 and rest days as 0 (Foster 1998). A planned load is minutes times the mean RPE that a "
    "session's sets state, which is not the rating from 0 to 10 that an athlete gives a whole session afterwards.",
    failing=plan_with(
        "should monotony <= 0.5",
        "day Mon",
        "  Back Squat: 3 x 5 @ RPE 8",
        "day Thu",
        "  Back Squat: 3 x 5 @ RPE 8",
    ),
    mended=plan_with("should monotony <= 0.5", "day Mon", "  Back Squat: 3 x 5 @ RPE 8"),
)

STRAIN: Final = Code(
    number="SW0613",
    name="strain",
    severity=Severity.WARNING,
    title="Strain outside the range a rule sets",
    message="a strain of {number} (sample deviation, n - 1) in {weeks}, outside the {bound} {asked}",
    text="A rule bounds a week's planned load times its monotony (Foster 1998). A planned load is minutes times the mean "
    "RPE that a session's sets state, which is not the rating from 0 to 10 that an athlete gives a whole session "
    "afterwards.",
    failing=plan_with("should strain <= 30", "day Mon", "  Back Squat: 6 x 5 @ RPE 8"),
    mended=plan_with("should strain <= 30", "day Mon", "  Back Squat: 3 x 5 @ RPE 8"),
)

LIFTS_IN_ZONE: Final = Code(
    number="SW0614",
    name="lifts-in-zone",
    severity=Severity.WARNING,
    title="Lifts in a zone of the best outside the range a rule sets",
    message="{session} of {weeks}: {number}{whom}; outside the {bound} of that range {asked}",
    text="A rule bounds where the repetitions of one movement in one zone of its best lie in the range of the published "
    "table: 0% are its fewest, 100% its most. The table comes from weightlifters' main lifts.",
    failing=plan_with("should lifts-in-zone 0-100%", "day Mon", "  Back Squat: 5 x 5 @ 75%"),
    mended=plan_with("should lifts-in-zone 0-100%", "day Mon", "  Back Squat: 6 x 3 @ 75%"),
)

LOAD_RISE: Final = Code(
    number="SW0615",
    name="load-rise",
    severity=Severity.WARNING,
    title="Rise of a load outside the range a rule sets",
    message="a load rise of {number}{whom} in {weeks}, outside the {bound} {asked}",
    text="A rule bounds by how many percent the heaviest load of a movement, or percent of a best, exceeds that of the "
    "last working week that had one. Deload and test weeks are stepped over unless the rule says `in every week` or "
    "names them.",
    failing=plan_with(
        "should load-rise <= 10%",
        "day Mon",
        "  Bench Press: 3 x 8 @ [40, 45] kg",
        block="Base: 2 weeks",
    ),
    mended=plan_with(
        "should load-rise <= 10%",
        "day Mon",
        "  Bench Press: 3 x 8 @ [40, 42.5] kg",
        block="Base: 2 weeks",
    ),
)

REST: Final = Code(
    number="SW0616",
    name="rest",
    severity=Severity.WARNING,
    title="Rest between sets outside the range a rule sets",
    message="a rest of {number}{whom} in {weeks}, outside the {bound} {asked}",
    text="A rule bounds the rest between sets as lines write it: the shortest of a week, and the longest where the bound "
    "has an upper end. In a superset or circuit it is the rest after the round. A line that writes no rest is not held "
    "to the bound.",
    failing=plan_with("should rest for squat >= 2 min", "day Mon", "  Back Squat: 3 x 5 @ RPE 8, rest 90 s"),
    mended=plan_with("should rest for squat >= 2 min", "day Mon", "  Back Squat: 3 x 5 @ RPE 8, rest 2-3 min"),
)

BREACHES: Final = (
    WEEKLY_SETS,
    SESSION_SETS,
    FREQUENCY,
    RECOVERY,
    EFFORT,
    WEEKLY_RISE,
    DELOAD_CUT,
    SESSION_TIME,
    INTENSITY,
    WEEKLY_TIME,
    BALANCE,
    MONOTONY,
    STRAIN,
    LIFTS_IN_ZONE,
    LOAD_RISE,
    REST,
)
