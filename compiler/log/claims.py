"""Whether a plan has the sessions that the entries of a log speak of.

Comes in: a plan with its sessions on the athlete's days, and a `Log`. Goes out: diagnostics, none of them an error.
"""

from __future__ import annotations

from collections.abc import Iterator

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import logs as codes
from setwright.log.matching import PlannedSessions
from setwright.log.model import Log, SessionDone
from setwright.plan import Plan, Week


def unfounded_claims(plan: Plan, log: Log) -> Iterator[Diagnostic]:
    """Entries for a session that there is not, each; and those for the weeks of another plan, once."""
    saying = [session for session in log.sessions if session.week is not None]
    if not saying:
        return
    planned = PlannedSessions(plan)
    weeks = {week.number: week for week in plan.weeks}
    for session in saying:
        if planned.is_near(session.day) and planned.said(session) is None:
            yield codes.NO_SUCH_SESSION.at(
                session.span, plan=plan.name, week=session.week, slot=session.slot, known=_known(session, weeks, plan)
            )
    far = [session for session in saying if not planned.is_near(session.day)]
    if far:
        yield _far(plan, far)


def _known(session: SessionDone, weeks: dict[int, Week], plan: Plan) -> str:
    week = weeks.get(session.week or 0)
    if week is not None:
        return ", ".join(one.slot for one in week.sessions) or "none in that week"
    return "1 week" if len(plan.weeks) == 1 else f"{len(plan.weeks)} weeks"


def _far(plan: Plan, far: list[SessionDone]) -> Diagnostic:
    first, last = plan.weeks[0].start, plan.weeks[-1].start
    assert first is not None
    assert last is not None
    one = len(far) == 1
    return codes.OTHER_WEEKS.at(
        far[0].span,
        sessions="this session is" if one else f"{len(far)} sessions are",
        they="it says" if one else "they say",
        plan=plan.name,
        first=f"from the week of {first}",
        last=f"the week of {last}",
    )
