"""SW02: names that nothing declares, or that are declared twice."""

from setwright.diagnostics.model import Code, Severity

_LIBRARY = "exercise Squat\nexercise Row\n\n"
_DAY = 'plan "Pier"\n  block Base: 1 week\n    day Mon\n'

UNKNOWN_MOVEMENT = Code(
    "SW0201",
    "unknown-movement",
    Severity.ERROR,
    title="A movement that nothing declares",
    message="no movement is called `{name}`",
    text="Movements come from a library (`use stdlib.exercises`) or from an `exercise` of your own. Names compare "
    "without regard to capitals; a movement is also known by its `also` names.",
    failing=_LIBRARY + _DAY + "      Squad: 3 x 5\n",
    mended=_LIBRARY + _DAY + "      Squat: 3 x 5\n",
)
UNKNOWN_MUSCLE = Code(
    "SW0202",
    "unknown-muscle",
    Severity.ERROR,
    title="A muscle or group that nothing declares",
    message="no muscle or group is called `{name}`",
    text="Muscles and groups are lower-case words declared by `muscle` and `group`, in `stdlib.muscles` for one.",
    failing="muscle quads\nexercise Squat\n  works quad 1\n",
    mended="muscle quads\nexercise Squat\n  works quads 1\n",
)
UNKNOWN_EQUIPMENT = Code(
    "SW0203",
    "unknown-equipment",
    Severity.ERROR,
    title="Equipment that nothing declares",
    message="no equipment is called `{name}`",
    text="Equipment is declared by `equipment`, in `stdlib.equipment` for one.",
    failing="equipment barbell\nexercise Squat\n  needs barbel\n",
    mended="equipment barbell\nexercise Squat\n  needs barbell\n",
)
UNKNOWN_RULES = Code(
    "SW0204",
    "unknown-rules",
    Severity.ERROR,
    title="A rule set that nothing declares",
    message="no rule set is called `{name}`",
    text="`follow` names a `rules` declaration of this file or of one it uses, such as `use stdlib.rules.strength`.",
    failing='rules gentle\n  should effort <= RPE 7\n\nplan "Pier"\n  follow gentel\n  block Base: 1 week\n'
    '    day Mon\n      note "Walk."\n',
    mended='rules gentle\n  should effort <= RPE 7\n\nplan "Pier"\n  follow gentle\n  block Base: 1 week\n'
    '    day Mon\n      note "Walk."\n',
)
UNKNOWN_BLOCK = Code(
    "SW0205",
    "unknown-block",
    Severity.ERROR,
    title="A block that the plan does not have",
    message="this plan has no block `{name}`",
    text="`like` and `in block` name a block of the same plan.",
    failing=_LIBRARY + _DAY + "      Squat: 3 x 5\n  block Build: 1 week like Bass\n",
    mended=_LIBRARY + _DAY + "      Squat: 3 x 5\n  block Build: 1 week like Base\n",
)
DECLARED_TWICE = Code(
    "SW0206",
    "declared-twice",
    Severity.ERROR,
    title="One name is declared twice",
    message="{what} `{name}` is declared twice",
    text="A name means one thing in a plan and all the files it uses. Give one of the two another name; to change a "
    "library's movement, declare your own `like` it.",
    failing="exercise Squat\nexercise Squat\n",
    mended="exercise Squat\nexercise Pause Squat like Squat\n",
)
UNKNOWN_MODEL = Code(
    "SW0207",
    "unknown-model",
    Severity.ERROR,
    title="There is no such repetition-maximum model",
    message="no repetition-maximum model is called `{name}`",
    text="The models are epley, brzycki, lander, lombardi, mayhew, oconner, wathan, table and mean.",
    failing='plan "Pier"\n  model epli\n  block Base: 1 week\n    day Mon\n      note "Walk."\n',
    mended='plan "Pier"\n  model epley\n  block Base: 1 week\n    day Mon\n      note "Walk."\n',
)
UNKNOWN_WORD = Code(
    "SW0208",
    "unknown-word",
    Severity.ERROR,
    title="A word that has no meaning here",
    message="`{word}` means nothing after `{after}`",
    text="The help line lists the words that can stand here.",
    failing='plan "Pier"\n  round upwards\n  block Base: 1 week\n    day Mon\n      note "Walk."\n',
    mended='plan "Pier"\n  round down\n  block Base: 1 week\n    day Mon\n      note "Walk."\n',
)
PARAMETER_OUTSIDE_TEMPLATE = Code(
    "SW0209",
    "parameter-outside-template",
    Severity.ERROR,
    title="A word stands where a value is needed",
    message="`{word}` is a word; {needed} is needed here",
    text="Lower-case words stand for values only as parameters inside a template. Movement names begin with a "
    "capital or stand in quotes.",
    failing=_LIBRARY + _DAY + "      Squat: lots x 5\n",
    mended=_LIBRARY + _DAY + "      Squat: 6 x 5\n",
)
LIKE_CYCLE = Code(
    "SW0210",
    "like-cycle",
    Severity.ERROR,
    title="Things are like each other in a circle",
    message="{what} are like each other in a circle: {chain}",
    text="Each would have to be known before the other. One of them has to be written out.",
    failing='plan "Pier"\n  block Base: 1 week like Build\n  block Build: 1 week like Base\n',
    mended=_LIBRARY + _DAY + "      Squat: 3 x 5\n  block Build: 1 week like Base\n",
)
UNKNOWN_ATHLETE = Code(
    "SW0211",
    "unknown-athlete",
    Severity.ERROR,
    title="An athlete that no file declares",
    message="no athlete is called `{name}`",
    text="`--athlete` takes the name of an athlete declared in the plan's files, or the path of a file with athletes.",
    failing="",
    mended="",
)
_EMPHASIS = """muscle side-delts
muscle rear-delts
group delts: side-delts, rear-delts

exercise Lateral Raise
  works side-delts 1

plan "Pier"
  emphasis {word} +1 sets per week
  block Base: 1 week
    day Mon
      Lateral Raise: 3 x 12
"""

CREDIT_OUT_OF_RANGE = Code(
    "SW0212",
    "credit-out-of-range",
    Severity.ERROR,
    title="A credit that is no share of a set",
    message="the credit for {muscle} must be above 0 and at most 1",
    text="`works` says how much of a set counts for a muscle: 1 for a prime mover, 0.5 for one that clearly helps.",
    failing="muscle quads\nexercise Squat\n  works quads 2\n",
    mended="muscle quads\nexercise Squat\n  works quads 1\n",
)
UNKNOWN_PATTERN = Code(
    "SW0213",
    "unknown-pattern",
    Severity.ERROR,
    title="Neither a movement nor a pattern",
    message="no movement and no pattern is called `{name}`",
    text="An athlete's `avoid` names a movement, or a pattern: a lower-case word that stands after `pattern` in a "
    "movement of the library, such as `overhead-press`.",
    failing='exercise Press\n  pattern overhead-press\n\nathlete "Ines"\n  avoid overhead-pres\n',
    mended='exercise Press\n  pattern overhead-press\n\nathlete "Ines"\n  avoid overhead-press\n',
)
GROUP_IN_EMPHASIS = Code(
    "SW0214",
    "group-in-emphasis",
    Severity.ERROR,
    title="An emphasis for a group of muscles",
    message="`{name}` is a group, and `emphasis` is for one muscle",
    text="Sets are added on lines that train one muscle and no other directly, so each muscle is asked for by a line of "
    "its own.",
    failing=_EMPHASIS.format(word="delts"),
    mended=_EMPHASIS.format(word="side-delts"),
)

_TEMPLATE = "template short(lift = Squat, base-sets = 3, top = RPE 9)\n  block Base: 2 weeks\n    day Mon\n      lift: base-sets x 5 @ RPE 7 -> top\n\n"

UNKNOWN_TEMPLATE = Code(
    "SW0231",
    "unknown-template",
    Severity.ERROR,
    title="A template that nothing declares",
    message="no template is called `{name}`",
    text="`plan ... from` names a `template` of this file or of one it uses, such as `use stdlib.templates`.",
    failing=_LIBRARY + _TEMPLATE + 'plan "Pier" from shirt\n',
    mended=_LIBRARY + _TEMPLATE + 'plan "Pier" from short\n',
)
UNKNOWN_PARAMETER = Code(
    "SW0232",
    "unknown-parameter",
    Severity.ERROR,
    title="A parameter that the template does not have",
    message="{template} has no parameter `{name}`",
    text="Arguments are given by the names of the template's parameters.",
    failing=_LIBRARY + _TEMPLATE + 'plan "Pier" from short(sets: 4)\n',
    mended=_LIBRARY + _TEMPLATE + 'plan "Pier" from short(base-sets: 4)\n',
)
PARAMETER_TYPE = Code(
    "SW0233",
    "parameter-type",
    Severity.ERROR,
    title="An argument of another type than its parameter",
    message="`{name}` is {wanted}; `{given}` is {found}",
    text="A parameter has the type of its default: a movement, a count, a range, an effort, a percent, a load, a time, a "
    "distance, or a form of repetitions. A range takes a count too.",
    failing=_LIBRARY + _TEMPLATE + 'plan "Pier" from short(top: 80%)\n',
    mended=_LIBRARY + _TEMPLATE + 'plan "Pier" from short(top: RPE 8)\n',
)
MISSING_PARAMETER = Code(
    "SW0234",
    "missing-parameter",
    Severity.ERROR,
    title="A parameter without a value",
    message="`{name}` has to be given",
    text="A parameter that is declared without a default has no value until the plan gives one.",
    failing=_LIBRARY + _TEMPLATE.replace(" = Squat", "") + 'plan "Pier" from short\n',
    mended=_LIBRARY + _TEMPLATE.replace(" = Squat", "") + 'plan "Pier" from short(lift: Row)\n',
)
PARAMETER_TWICE = Code(
    "SW0235",
    "parameter-twice",
    Severity.ERROR,
    title="A parameter stands twice",
    message="`{name}` stands twice",
    text="Each parameter is declared once and given once.",
    failing=_LIBRARY + _TEMPLATE + 'plan "Pier" from short(base-sets: 4, base-sets: 5)\n',
    mended=_LIBRARY + _TEMPLATE + 'plan "Pier" from short(base-sets: 5)\n',
)
RESERVED_PARAMETER = Code(
    "SW0236",
    "reserved-parameter",
    Severity.ERROR,
    title="A parameter named like a word of the language",
    message="`{name}` is a word of the language; a parameter needs another name",
    text="Inside the template the word would keep its own meaning. Words of two parts are free: `base-sets`, `rest-time`.",
    failing=_LIBRARY + _TEMPLATE.replace("base-sets", "sets") + 'plan "Pier" from short\n',
    mended=_LIBRARY + _TEMPLATE + 'plan "Pier" from short\n',
)
EMPTY_NAME = Code(
    "SW0237",
    "empty-name",
    Severity.ERROR,
    title="A plan or athlete without a name",
    message="this {what} has no name",
    text="Sheets and messages are headed with the names of plans and athletes.",
    failing='athlete " "\n',
    mended='athlete "Ines"\n',
)

CODES = (
    UNKNOWN_MOVEMENT,
    UNKNOWN_MUSCLE,
    UNKNOWN_EQUIPMENT,
    UNKNOWN_RULES,
    UNKNOWN_BLOCK,
    DECLARED_TWICE,
    UNKNOWN_MODEL,
    UNKNOWN_WORD,
    PARAMETER_OUTSIDE_TEMPLATE,
    LIKE_CYCLE,
    UNKNOWN_ATHLETE,
    CREDIT_OUT_OF_RANGE,
    UNKNOWN_PATTERN,
    GROUP_IN_EMPHASIS,
    UNKNOWN_TEMPLATE,
    UNKNOWN_PARAMETER,
    PARAMETER_TYPE,
    MISSING_PARAMETER,
    PARAMETER_TWICE,
    RESERVED_PARAMETER,
    EMPTY_NAME,
)
