"""SW01: lines that cannot be read, or stand where they may not."""

from setwright.diagnostics.model import Code, Severity

UNEXPECTED_WORD = Code(
    "SW0101",
    "unexpected-word",
    Severity.ERROR,
    title="Something stands where it does not fit",
    message="`{found}` does not fit here",
    text="The line made sense up to this point. The help line lists what could stand here.",
    failing='plan "Pier"\n  block Base: 1 week\n    day Mon\n      Squat: 3 y 5\n',
    mended='exercise Squat\n\nplan "Pier"\n  block Base: 1 week\n    day Mon\n      Squat: 3 x 5\n',
)
LINE_ENDS_EARLY = Code(
    "SW0102",
    "line-ends-early",
    Severity.ERROR,
    title="A line ends before it is complete",
    message="the line ends too early",
    text="Something is still missing at the end of this line. The help line lists what could stand there.",
    failing='plan "Pier"\n  start\n',
    mended='plan "Pier"\n  start 2027-01-04\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n',
)
MISSING_COLON = Code(
    "SW0103",
    "missing-colon",
    Severity.ERROR,
    title="A colon is missing",
    message="a `:` is missing before `{found}`",
    text="A colon stands between a name and what is prescribed for it.",
    failing='plan "Pier"\n  block Base: 1 week\n    day Mon\n      Squat "high bar" 3 x 5\n',
    mended='exercise Squat\n\nplan "Pier"\n  block Base: 1 week\n    day Mon\n      Squat "high bar": 3 x 5\n',
)
OPEN_QUOTE = Code(
    "SW0104",
    "open-quote",
    Severity.ERROR,
    title="A quotation is not closed",
    message="this quotation is never closed",
    text='Quoted text ends with `"` on the line it began on. Write `\\"` for a quotation mark inside.',
    failing='plan "Pier\n',
    mended='plan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n',
)
CURLY_QUOTE = Code(
    "SW0105",
    "curly-quote",
    Severity.ERROR,
    title="A typographic quotation mark",
    message='`{found}` is a typographic mark; text stands between plain `"` marks',
    text="Word processors turn straight quotation marks into curly ones. The language reads only straight ones.",
    failing="plan \u201cPier\u201d\n",
    mended='plan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n',
)
TAB_INDENT = Code(
    "SW0106",
    "tab-indent",
    Severity.ERROR,
    title="A tab in the indentation",
    message="a tab in the indentation; use spaces",
    text="Tabs are as wide as each editor likes, so structure by tabs reads differently on every screen. "
    "Indent with spaces, two a level.",
    failing='plan "Pier"\n\tstart 2027-01-04\n',
    mended='plan "Pier"\n  start 2027-01-04\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n',
)
UNEVEN_INDENT = Code(
    "SW0107",
    "uneven-indent",
    Severity.ERROR,
    title="A line does not line up with its neighbours",
    message="this line is indented by {indent}, its neighbours by {expected}",
    text="Lines of one level start in one column. This line steps back to a column in which nothing stands.",
    failing='plan "Pier"\n    start 2027-01-04\n  units kg\n',
    mended='plan "Pier"\n  start 2027-01-04\n  units kg\n  block Base: 1 week\n    day Mon\n      note "Walk."\n',
)
MISPLACED_LINE = Code(
    "SW0108",
    "misplaced-line",
    Severity.ERROR,
    title="A line stands where it has no meaning",
    message="{line} cannot stand under {parent}",
    text="Each kind of line has its place: blocks under a plan, days under a block, movements under a day.",
    failing='day Mon\n  note "Easy walk."\n',
    mended='plan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n',
)
LINE_TOO_LONG = Code(
    "SW0109",
    "line-too-long",
    Severity.ERROR,
    title="A line is too long to read",
    message="this line has {length} characters; the most is {most}",
    text="No line that a person writes is so long; the limit keeps a damaged file from holding up the compiler.",
    failing="# a comment may be long\n" + "(" * 2001 + "\n",
    mended='plan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n',
)
NUMBER_TOO_LARGE = Code(
    "SW0110",
    "number-too-large",
    Severity.ERROR,
    title="A number with too many digits",
    message="a number of {digits} digits is more than any plan needs",
    text="Counts, loads and times have at most twelve digits.",
    failing='plan "Pier"\n  block Base: 99999999999999 weeks\n    day Mon\n      note "Walk."\n',
    mended='plan "Pier"\n  block Base: 9 weeks\n    day Mon\n      note "Walk."\n',
)
NO_SUCH_DATE = Code(
    "SW0111",
    "no-such-date",
    Severity.ERROR,
    title="A date that the calendar does not have",
    message="there is no {date} in the calendar",
    text="Dates are written year, month, day: `2027-01-04`.",
    failing='plan "Pier"\n  start 2027-02-30\n  block Base: 1 week\n    day Mon\n      note "Walk."\n',
    mended='plan "Pier"\n  start 2027-02-28\n  block Base: 1 week\n    day Mon\n      note "Walk."\n',
)

CODES = (
    UNEXPECTED_WORD,
    LINE_ENDS_EARLY,
    MISSING_COLON,
    OPEN_QUOTE,
    CURLY_QUOTE,
    TAB_INDENT,
    UNEVEN_INDENT,
    MISPLACED_LINE,
    LINE_TOO_LONG,
    NUMBER_TOO_LARGE,
    NO_SUCH_DATE,
)
