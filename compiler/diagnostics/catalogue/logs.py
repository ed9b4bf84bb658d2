"""SW11: sessions that were done, and tables of them that are taken into a log."""

from setwright.diagnostics.model import Code, Severity

_LIBRARY = "exercise Squat\n\n"
_PLAN = 'exercise Squat\n\nplan "Pier"\n  start 2027-01-04\n  block Base: 4 weeks\n    day Mon\n      Squat: 3 x 5\n\n'
_ATHLETE = 'athlete "Ines"\n\n'
_SETS = "  Squat: 60 kg x 5, 5, 5\n"

SESSION_TWICE = Code(
    "SW1101",
    "session-twice",
    Severity.WARNING,
    title="The same session twice",
    message="this session of {date} is written twice, with the same sets; it counts once",
    text="Two sessions of one athlete on one day with the same sets are one that was put into the log a second time. Take "
    "one of them out. Where both were done, say what they were for (`for week 3 Mon`, `for week 3 Tue`).",
    failing=_LIBRARY + "session 2027-01-04\n" + _SETS + "\nsession 2027-01-04\n" + _SETS,
    mended=_LIBRARY + "session 2027-01-04\n" + _SETS + "\nsession 2027-01-06\n" + _SETS,
)
SESSION_DATE = Code(
    "SW1102",
    "session-date",
    Severity.ERROR,
    title="A date that no session has",
    message="{date} lies {where}: a session's date is from {first} to {last}",
    text="Such a date is a slip, mostly of one digit of the year.",
    failing=_LIBRARY + "session 0027-01-04\n" + _SETS,
    mended=_LIBRARY + "session 2027-01-04\n" + _SETS,
)
NO_SUCH_SESSION = Code(
    "SW1103",
    "no-such-session",
    Severity.WARNING,
    title="A session that the plan does not have",
    message="{plan} has no session in week {week} on {slot}: it has {known}",
    text="What an entry says of its session goes before its date. Where the plan has no such session the entry counts as "
    "one that says nothing: by its date, or by the movements it shares with a session of its week.",
    failing=_PLAN + _ATHLETE + "session 2027-01-04 for week 9 Mon\n" + _SETS,
    mended=_PLAN + _ATHLETE + "session 2027-01-04 for week 1 Mon\n" + _SETS,
)
OTHER_WEEKS = Code(
    "SW1104",
    "other-weeks",
    Severity.NOTE,
    title="Sessions of another plan's weeks",
    message="{sessions} far from {plan}, which goes {first} to {last}: what {they} of week and day is left aside",
    text="A log goes on for years, and `for week 3 Mon` speaks of the plan of its time. From {days} days before a plan "
    "begins to as many after it ends it is taken as said of that plan. If these were sessions of this plan, their dates "
    "are a slip.".replace("{days}", "28"),
    failing=_PLAN + _ATHLETE + "session 2025-01-06 for week 1 Mon\n" + _SETS,
    mended=_PLAN + _ATHLETE + "session 2027-01-06 for week 1 Mon\n" + _SETS,
)
WHOSE_SESSION = Code(
    "SW1105",
    "whose-session",
    Severity.WARNING,
    title="Sessions of nobody",
    message="it is not clear whose sessions these are: this file declares or uses {athletes}",
    text="The sessions of a file are those of the one athlete that it declares, or that a file which it uses declares. "
    "Write each athlete's sessions into a file of their own.",
    failing=_LIBRARY + _ATHLETE + 'athlete "Tove"\n\nsession 2027-01-04\n' + _SETS,
    mended=_LIBRARY + _ATHLETE + "session 2027-01-04\n" + _SETS,
)

TABLE_REFUSED = Code(
    "SW1106",
    "table-refused",
    Severity.ERROR,
    title="A table that is not taken in",
    message="this table is not taken in: {reason}",
    text="Nothing was written. The first row of a table names its columns, among them `date`, `exercise` and `reps`; dates "
    "begin with the year, or all with the day, or all with the month, and at least one has to show which.",
    failing="date,exercise,weight\n2027-01-04,Squat,60 kg\n",
    mended="date,exercise,weight,reps\n2027-01-04,Squat,60 kg,5\n",
    file="rows.csv",
)
ROW_NOT_READ = Code(
    "SW1107",
    "row-not-read",
    Severity.WARNING,
    title="A row that was not understood",
    message="this row was kept as a comment: {reason}",
    text="What an import cannot read it puts into the log as a comment, `# not read: `, beside the session it belongs to. "
    "Mend it there by hand, or mend the table and import it again: what is in the log already is not added twice.",
    failing="date,exercise,load,reps\n2027-01-04,Squat,60 kg,five\n",
    mended="date,exercise,load,reps\n2027-01-04,Squat,60 kg,5\n",
    file="rows.csv",
)
UNKNOWN_COLUMN = Code(
    "SW1108",
    "unknown-column",
    Severity.NOTE,
    title="A column that nobody knows",
    message="what stands under `{name}` was kept as comments: no such column is known",
    text="The names that are understood are in the chapter on logs of the reference.",
    failing="date,exercise,load,reps,mood\n2027-01-04,Squat,60 kg,5,fine\n",
    mended="date,exercise,load,reps,note\n2027-01-04,Squat,60 kg,5,fine\n",
    file="rows.csv",
)
GUESSED_ENCODING = Code(
    "SW1109",
    "guessed-encoding",
    Severity.NOTE,
    title="A table in an old encoding",
    message="this is no UTF-8; it was read as Windows-1252",
    text="Look at names and notes with letters outside English. Where they are wrong, save the table as UTF-8.",
    failing="date,exercise,load,reps,note\n2027-01-04,Squat,60 kg,5,caf\u00e9\n".encode("cp1252"),
    mended="date,exercise,load,reps,note\n2027-01-04,Squat,60 kg,5,caf\u00e9\n",
    file="rows.csv",
)
SETS_DIFFER = Code(
    "SW1110",
    "sets-differ",
    Severity.WARNING,
    title="Other sets than the log has",
    message="this row was kept as a comment: the log has other sets of {movement} on {date}",
    text="A log is not changed by an import, and sets are not added to those that they may stand for. Look at both and "
    "keep what is right.",
    failing="date,exercise,load,reps\n2027-01-04,Squat,62.5 kg,5\n",
    mended="date,exercise,load,reps\n2027-01-04,Squat,60 kg,5\n",
    files=(("log.plan", "exercise Squat\n\nsession 2027-01-04\n  Squat: 60 kg x 5\n"),),
    file="rows.csv",
)

CODES = (
    SESSION_TWICE,
    SESSION_DATE,
    NO_SUCH_SESSION,
    OTHER_WEEKS,
    WHOSE_SESSION,
    TABLE_REFUSED,
    ROW_NOT_READ,
    UNKNOWN_COLUMN,
    GUESSED_ENCODING,
    SETS_DIFFER,
)
