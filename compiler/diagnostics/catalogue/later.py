"""SW09: what is read but not carried out yet. Nothing a file says is ever passed over in silence."""

from setwright.diagnostics.model import Code, Severity

_PLAN = 'plan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Easy walk."\n'

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

CODES = (SESSIONS_NOT_YET,)
