"""SW07: progressions: how they are declared, and the lines that `advance` by one."""

from setwright.diagnostics.model import Code, Severity


def _progression(lines: str, head: str = "steady(step = 2.5 kg)") -> str:
    return f'progression {head}\n{lines}\nplan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n'


def _advance(line: str, more: str = "") -> str:
    return (
        "progression steady(step = 2.5 kg)\n  when all sets >= target: load + step\n\n"
        f'exercise Squat\n\nplan "Pier"\n  block Base: 2 weeks\n    day Mon\n      Squat: {line}\n{more}'
    )


UNKNOWN_PROGRESSION = Code(
    "SW0701",
    "unknown-progression",
    Severity.ERROR,
    title="A progression that nothing declares",
    message="no progression is called `{name}`",
    text="`advance` names a `progression` of this file, of one it uses, or of the shipped library, whose progressions are "
    "known everywhere. `setwright library progression` lists those.",
    failing=_advance("3 x 5 @ 60 kg, advance steadily"),
    mended=_advance("3 x 5 @ 60 kg, advance steady"),
)
UNKNOWN_AMOUNT = Code(
    "SW0702",
    "unknown-amount",
    Severity.ERROR,
    title="A word that a progression does not know",
    message="`{word}` says no amount here",
    text="In a progression stand its own parameters, and `top`, `bottom` and `target`: the ends of the line's range of "
    "repetitions, and what was asked for.",
    failing=_progression("  when all sets >= target: load + stp\n"),
    mended=_progression("  when all sets >= target: load + step\n"),
)
WRONG_AMOUNT = Code(
    "SW0703",
    "wrong-amount",
    Severity.ERROR,
    title="An amount in the wrong unit",
    message="`{found}` is no amount for {what}; write {wanted}",
    text="Load moves by a mass or a percent, repetitions and sets by a count, effort by steps on the RPE scale. A condition "
    "compares repetitions with `top`, `bottom`, `target` or a count, and effort with `target` or an effort.",
    failing=_progression("  when all sets >= target: reps + step\n"),
    mended=_progression("  when all sets >= target: reps + 1\n"),
)
UNREACHABLE_RULE = Code(
    "SW0704",
    "unreachable-rule",
    Severity.WARNING,
    title="A rule after `otherwise`",
    message="no exposure comes to this rule; `otherwise` answers every one before it",
    text="Rules are tried in the order written, and `otherwise` always matches. It stands last.",
    failing=_progression("  otherwise: hold\n  when all sets >= target: load + step\n"),
    mended=_progression("  when all sets >= target: load + step\n  otherwise: hold\n"),
)
NO_RULES = Code(
    "SW0705",
    "no-rules",
    Severity.ERROR,
    title="A progression without rules",
    message="progression `{name}` has no rule; write at least one `when` line under it",
    text="A rule says when it holds and what it does: `when all sets >= target: load + 2.5 kg`.",
    failing=_progression(""),
    mended=_progression("  when all sets >= target: load + step\n"),
)
ADVANCE_AND_TRACK = Code(
    "SW0706",
    "advance-and-track",
    Severity.ERROR,
    title="A track and a progression move the same number",
    message="`{track}` moves the {what} over the weeks, and so does `advance {name}`; only one of them can",
    text="A number that a progression moves is written as it begins, without a track. Numbers that the progression leaves "
    "alone may have one.",
    failing=_advance("3 x 5 @ 60 -> 65 kg, advance steady"),
    mended=_advance("3 x 5 @ 60 kg, advance steady"),
)
ADVANCE_AND_WEEKS = Code(
    "SW0707",
    "advance-and-weeks",
    Severity.ERROR,
    title="A progression on a line that is written week by week",
    message="each week of this line is written out, so `advance {name}` has nothing to move",
    text="Write the first exposure after the colon and let the progression carry on from it, or leave `advance` out.",
    failing=_advance("advance steady", "        weeks 1-2: 3 x 5 @ 60 kg\n"),
    mended=_advance("3 x 5 @ 60 kg, advance steady"),
)
ADVANCE_DOES_NOT_FIT = Code(
    "SW0708",
    "advance-does-not-fit",
    Severity.ERROR,
    title="A progression and a prescription that do not fit",
    message="`advance {name}` {does}, and this line {has}",
    text="A percent of the best moves by percents, a load in kilograms or pounds by either. Repetitions are moved and "
    "compared where they are counted, effort where one is asked for.",
    failing=_advance("3 x 5 @ 80%, advance steady"),
    mended=_advance("3 x 5 @ 60 kg, advance steady"),
)

CODES = (
    UNKNOWN_PROGRESSION,
    UNKNOWN_AMOUNT,
    WRONG_AMOUNT,
    UNREACHABLE_RULE,
    NO_RULES,
    ADVANCE_AND_TRACK,
    ADVANCE_AND_WEEKS,
    ADVANCE_DOES_NOT_FIT,
)
