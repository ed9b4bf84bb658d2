"""SW03: how plans, blocks and days are put together."""

from setwright.diagnostics.model import Code, Severity

_LIBRARY = "exercise Squat\nexercise Row\nexercise Curl\n\n"
_HEAD = _LIBRARY + 'plan "Pier"\n  block Base: 1 week\n'
_BASE = _HEAD + "    day Mon\n      Squat: 3 x 5\n      Row: 3 x 8\n"
_BUILD = _BASE + "  block Build: 1 week like Base\n    day Mon\n"

NOT_IN_DAY = Code(
    "SW0301",
    "not-in-day",
    Severity.ERROR,
    title="An edit of what is not there",
    message="{movement} is not in this day, so it cannot be {edited}",
    text="`drop`, `swap` and a place (`after`, `before`) name a movement that the inherited day holds. Where a day holds a "
    "movement twice, its label says which is meant.",
    failing=_BUILD + "      drop Curl\n",
    mended=_BUILD + "      drop Row\n",
)
WANTS_ADD = Code(
    "SW0302",
    "wants-add",
    Severity.ERROR,
    title="A new movement in an inherited day",
    message="{movement} is new in this inherited day; write `add` before it",
    text="In a day that came by `like` a plain line replaces what is there. `add` says that a new movement is meant, so "
    "that a slip in a name cannot add one by mistake.",
    failing=_BUILD + "      Curl: 3 x 12\n",
    mended=_BUILD + "      add Curl: 3 x 12 after Squat\n",
)
MOVEMENT_TWICE = Code(
    "SW0303",
    "movement-twice",
    Severity.ERROR,
    title="A movement stands twice in a day",
    message="{movement} stands twice in this day; give the second a label",
    text='Two lines of one movement are told apart by a label: `Back Squat "pause": 2 x 3 @ 70%`.',
    failing=_HEAD + "    day Mon\n      Squat: 3 x 5\n      Squat: 2 x 3\n",
    mended=_HEAD + '    day Mon\n      Squat: 3 x 5\n      Squat "pause": 2 x 3\n',
)
DAY_TWICE = Code(
    "SW0304",
    "day-twice",
    Severity.ERROR,
    title="A day stands twice in a block",
    message="{slot} stands twice in this block",
    text="A block has one session a day.",
    failing=_HEAD + "    day Mon\n      Squat: 3 x 5\n    day Mon\n      Row: 3 x 8\n",
    mended=_HEAD + "    day Mon\n      Squat: 3 x 5\n    day Thu\n      Row: 3 x 8\n",
)
UNKNOWN_DAY = Code(
    "SW0305",
    "unknown-day",
    Severity.ERROR,
    title="A day that the block does not have",
    message="this block has no day {slot}",
    text="`day X like Y` and `drop day Y` name a day of the same block, its own or an inherited one.",
    failing=_BASE + "    day Wed like Tue\n",
    mended=_BASE + "    day Wed like Mon\n",
)
BLOCK_TWICE = Code(
    "SW0306",
    "block-twice",
    Severity.ERROR,
    title="Two blocks have one name",
    message="block {name} stands twice in this plan",
    text="Blocks are told apart by their names.",
    failing=_BASE + "  block Base: 1 week like Base\n",
    mended=_BASE + "  block Build: 1 week like Base\n",
)
SLOT_MISMATCH = Code(
    "SW0307",
    "slot-mismatch",
    Severity.ERROR,
    title="A day that the microcycle does not have",
    message="{message}",
    text="Days are weekdays (`Mon` to `Sun`), or numbers when the plan sets `microcycle N days`.",
    failing=_HEAD + "    day 1\n      Squat: 3 x 5\n",
    mended=_LIBRARY + 'plan "Pier"\n  microcycle 8 days\n  block Base: 1 week\n    day 1\n      Squat: 3 x 5\n',
)
NO_SESSIONS = Code(
    "SW0308",
    "no-sessions",
    Severity.ERROR,
    title="A plan or block without a session",
    message="{what} has no sessions",
    text="A plan holds blocks, a block holds days (its own, or another block's by `like`).",
    failing='plan "Pier"\n  units kg\n',
    mended=_BASE,
)
WEEKS_MISSING = Code(
    "SW0309",
    "weeks-missing",
    Severity.ERROR,
    title="A block without its length",
    message="how long is block {name}? write `block {name}: 4 weeks`",
    text="Only where a plan edits a template's block may the length be left out.",
    failing=_LIBRARY + 'plan "Pier"\n  block Base\n    day Mon\n      Squat: 3 x 5\n',
    mended=_BASE,
)
SETTING_TWICE = Code(
    "SW0310",
    "setting-twice",
    Severity.ERROR,
    title="A setting stands twice",
    message="`{word}` stands twice here",
    text="Each setting of a plan, athlete or exercise is given once.",
    failing='plan "Pier"\n  units kg\n  units lb\n  block Base: 1 week\n    day Mon\n      note "Walk."\n',
    mended='plan "Pier"\n  units kg\n  block Base: 1 week\n    day Mon\n      note "Walk."\n',
)
PLAN_TWICE = Code(
    "SW0311",
    "plan-twice",
    Severity.ERROR,
    title="Two plans or athletes have one name",
    message='{what} "{name}" is declared twice',
    text="Sheets are named after plans and athletes, so their names differ.",
    failing=_BASE + _BASE.partition("\n\n")[2],
    mended=_BASE,
)
WANTS_PLACE_IN_GROUP = Code(
    "SW0312",
    "group-wants-add",
    Severity.ERROR,
    title="A new group in an inherited day",
    message="a `{word}` in an inherited day is new; write `add {word}`",
    text="In a day that came by `like`, lines of an inherited group are replaced by plain lines of the day; a new group is "
    "added by `add superset` or `add circuit`.",
    failing=_BUILD + "      superset\n        add Curl: 3 x 12\n",
    mended=_BUILD + "      add superset\n        Curl: 3 x 12\n",
)
EMPTY_GROUP = Code(
    "SW0313",
    "empty-group",
    Severity.ERROR,
    title="A group without movements",
    message="this `{word}` holds no movements",
    text="The movements of a superset or circuit are indented under it.",
    failing=_HEAD + "    day Mon\n      superset rest 90 s\n      Squat: 3 x 5\n",
    mended=_HEAD + "    day Mon\n      superset rest 90 s\n        Squat: 3 x 5\n        Row: 3 x 8\n",
)
TOO_LARGE = Code(
    "SW0314",
    "too-large",
    Severity.ERROR,
    title="A plan larger than anyone writes",
    message="{what}: {count}; the most is {most}",
    text="The limit keeps a damaged or hostile file from holding up the compiler.",
    failing='plan "Pier"\n  microcycle 99 days\n  block Base: 1 week\n    day 1\n      note "Walk."\n',
    mended='plan "Pier"\n  microcycle 9 days\n  block Base: 1 week\n    day 1\n      note "Walk."\n',
)

CODES = (
    NOT_IN_DAY,
    WANTS_ADD,
    MOVEMENT_TWICE,
    DAY_TWICE,
    UNKNOWN_DAY,
    BLOCK_TWICE,
    SLOT_MISMATCH,
    NO_SESSIONS,
    WEEKS_MISSING,
    SETTING_TWICE,
    PLAN_TWICE,
    WANTS_PLACE_IN_GROUP,
    EMPTY_GROUP,
    TOO_LARGE,
)
