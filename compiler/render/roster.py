"""One athlete's morning in words: the cells of a line.

Comes in: `Morning`. Goes out: text.
"""

from __future__ import annotations

from setwright.plan import WEEKDAYS, Session
from setwright.render.adherence import drift_said
from setwright.report.roster import Morning


def cells(of: Morning) -> tuple[str, ...]:
    """Athlete, plan, today, sessions missed, what is next, effort of late, rules."""
    return of.athlete, of.plan, _today(of), str(of.missed), _next(of), _effort(of), _rules(of)


def _today(of: Morning) -> str:
    if of.done_today:
        return "done"
    return ", ".join(_named(session) for session in of.today) or "-"


def _named(session: Session) -> str:
    at = f"{session.at.strftime('%H:%M')} " if session.at else ""
    first = session.lines[0].movement.name if session.lines else "nothing"
    return at + (session.label or first)


def _next(of: Morning) -> str:
    if of.next is None:
        return "the plan is over"
    session = of.next.session
    when = f"{WEEKDAYS[session.date.weekday()]} {session.date.isoformat()}" if session.date else session.slot
    return f"week {of.next.week.number}, {when}"


def _effort(of: Morning) -> str:
    if of.drift.mean is None:
        return "-"
    return f"{drift_said(of.drift.mean)} ({of.drift.sets})"


def _rules(of: Morning) -> str:
    if of.checked is None:
        return "-"
    if not of.not_kept:
        return "none"
    more = f" (and {len(of.not_kept) - 1} more)" if len(of.not_kept) > 1 else ""
    return f"{of.not_kept[0]}{more}"
