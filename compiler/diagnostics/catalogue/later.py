"""SW09: what is read but not carried out yet. Nothing a file says is ever passed over in silence."""

from setwright.diagnostics.model import Code, Severity

_PLAN = 'plan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n'

ADVANCE_NOT_YET = Code(
    "SW0903",
    "advance-not-yet",
    Severity.WARNING,
    title="A progression is asked for",
    message="`advance {rule}` is printed on the sheet, but loads do not follow it yet",
    text="The sheet states the rule's name; this version does not compute later weeks from it.",
    failing='exercise Squat\n\nplan "Pier"\n  block Base: 1 week\n    day Mon\n      Squat: 3 x 5, advance steady\n',
    mended='exercise Squat\n\nplan "Pier"\n  block Base: 1 week\n    day Mon\n      Squat: 3 x 5\n',
)
PROGRESSION_NOT_YET = Code(
    "SW0904",
    "progression-not-yet",
    Severity.WARNING,
    title="A progression is declared",
    message="progression `{name}` is read, but not applied yet",
    text="This version checks the form of a progression's lines and goes no further.",
    failing="progression steady(step = 2.5 kg)\n  when all sets >= target: load + step\n" + _PLAN,
    mended=_PLAN,
)
EMPHASIS_NOT_YET = Code(
    "SW0905",
    "emphasis-not-yet",
    Severity.WARNING,
    title="An emphasis is asked for",
    message="`emphasis` is read, but no sets are added or taken yet",
    text="Until it is carried out, write the sets into the prescriptions.",
    failing='muscle lats\n\nplan "Pier"\n  emphasis lats +2 sets per week\n  block Base: 1 week\n    day Mon\n      note "Walk."\n',
    mended='plan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Walk."\n',
)
SUBSTITUTION_NOT_YET = Code(
    "SW0906",
    "substitution-not-yet",
    Severity.WARNING,
    title="An athlete's swap or avoidance",
    message="`{word}` for an athlete is read, but the sheets do not follow it yet",
    text="Until it is carried out, edit the plan's days for this athlete.",
    failing='exercise Dip\nexercise Push-Up\n\nathlete "Ines"\n  swap Dip for Push-Up\n',
    mended='exercise Dip\nexercise Push-Up\n\nathlete "Ines"\n  best Dip: 80 kg\n',
)
SESSIONS_NOT_YET = Code(
    "SW0907",
    "sessions-not-yet",
    Severity.NOTE,
    title="A log of sessions",
    message="sessions are checked for names and numbers; sheets do not use them yet",
    text="A log stays valid: its movements, loads and dates are checked, and a later version computes from it.",
    failing="exercise Squat\n\nsession 2027-01-04 Mon\n  Squat: 60 kg x 5, 5, 5\n",
    mended=_PLAN,
)
PREFIX_NOT_YET = Code(
    "SW0908",
    "prefix-not-yet",
    Severity.ERROR,
    title="An import under a prefix, or from a pack",
    message="{what} cannot be used yet",
    text="This version imports files of the workspace and the shipped library, under their own names.",
    failing='use "library.plan" as club\n' + _PLAN,
    mended='use "library.plan"\n' + _PLAN,
    files=(("library.plan", "exercise Squat\n"),),
)

CODES = (
    ADVANCE_NOT_YET,
    PROGRESSION_NOT_YET,
    EMPHASIS_NOT_YET,
    SUBSTITUTION_NOT_YET,
    SESSIONS_NOT_YET,
    PREFIX_NOT_YET,
)
