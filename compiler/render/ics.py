"""The sessions as a calendar (RFC 5545): an event each, at the athlete's time of day or for the whole day.

Comes in: a plan with dates. Goes out: an iCalendar file. It is made to be imported again after each change of the plan:

- An event's UID is made from the names of plan and athlete and from the session's place: which week of the plan, which
  session of the week. Dates, days, times, labels and contents are not in it, so events move and change and are never
  doubled. A block or day that is put in between moves what comes after it one place on: each event then takes over
  what now stands in its place, and new events come at the end. Only a plan that gets shorter leaves events behind.
- Times float: 18:30 is 18:30 wherever the athlete is, before and after the clocks change.
- DTSTAMP and LAST-MODIFIED are always the same and SEQUENCE is 0. A compiler keeps no record of earlier builds that it
  could count from; a date of the plan would run backwards when the start moves forward, and a calendar may leave out
  an event that seems older than the one it has. So the same plan makes the same bytes, whatever the clock says.
"""

from __future__ import annotations

import json
import re
import unicodedata
from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta
from fractions import Fraction
from math import ceil
from typing import TYPE_CHECKING, Final
from uuid import UUID, uuid5

from setwright.plan import Plan, Session, Week
from setwright.record import record
from setwright.render import keys, words
from setwright.render.language import Language
from setwright.render.material import Look, Material
from setwright.render.outputs import UnprintableError
from setwright.render.session_text import session_text
from setwright.render.sheet import SessionSheet, sheet
from setwright.report.overview import SessionSummary

if TYPE_CHECKING:
    from icalendar import Calendar, Event

PRODUCT: Final = "-//Setwright//Sheets//EN"
STAMP: Final = datetime(2000, 1, 1, tzinfo=UTC)
ROUNDED_TO: Final = 5  # minutes

# Ours alone, so that no other program makes the same UIDs. Never changes: every calendar would double.
NAMESPACE: Final = UUID("5f0c2b0e-6a43-5d7e-9a86-2d1f4be3c7a1")

# What RFC 5545 keeps out of text (controls but for tab and line feed), and what some readers take for a line's end.
_UNWANTED: Final = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\x85\u2028\u2029]+")


@record
class _Slot:
    """One session in its place."""

    week: Week
    position: int  # in the week, from 1, by days
    session: Session
    arranged: SessionSheet
    minutes: Fraction


def rendered(material: Material, look: Look) -> bytes:
    """The calendar. Raises `UnprintableError` for a plan without a `start`, whose sessions have no dates."""
    from icalendar import Calendar

    plan, language = material.plan, look.language
    if plan.start is None:
        raise UnprintableError(
            f"a calendar needs dates, and {plan.name} has none: write `start 2027-01-04` in the plan"
        )
    title = _titled(plan)
    made = Calendar()
    made.add("prodid", PRODUCT)
    made.add("version", "2.0")
    _say(made, "name", title)  # RFC 7986
    _say(made, "x-wr-calname", title)  # what programs read that do not know it
    _say(made, "description", _about(material, language))
    for slot in _slots(material, language):
        made.add_component(_event(slot, plan, language))
    return bytes(made.to_ical())


def uid(plan: Plan, week: int, position: int) -> str:
    """The UID of a session: the same for as long as plan and athlete keep their names, however those are typed."""
    names = [unicodedata.normalize("NFC", name or "").casefold() for name in (plan.name, plan.athlete)]
    return str(uuid5(NAMESPACE, json.dumps([*names, week, position])))


def _slots(material: Material, language: Language) -> Iterator[_Slot]:
    summaries = {week.number: week.sessions for week in material.overview}
    for week, paper in zip(material.plan.weeks, sheet(material.plan, material.overview, language).weeks, strict=True):
        minutes = summaries.get(week.number, ())
        together = zip(week.sessions, paper.sessions, _minutes(minutes, len(week.sessions)), strict=True)
        in_order = sorted(together, key=lambda each: each[0].offset)
        for position, (session, arranged, length) in enumerate(in_order, 1):
            if not session.left_out:
                yield _Slot(week, position, session, arranged, length)


def _minutes(summaries: tuple[SessionSummary, ...], sessions: int) -> list[Fraction]:
    known = [summary.minutes for summary in summaries]
    return known if len(known) == sessions else [Fraction(0)] * sessions


def _event(slot: _Slot, plan: Plan, language: Language) -> Event:
    from icalendar import Event

    session = slot.session
    assert session.date is not None  # the plan has a start
    made = Event()
    made.add("uid", uid(plan, slot.week.number, slot.position))
    made.add("dtstamp", STAMP)
    made.add("last-modified", STAMP)
    made.add("sequence", 0)
    for name, when in zip(("dtstart", "dtend"), _span(session, session.date, slot.minutes), strict=True):
        made.add(name, when)
    # A day's event leaves the day free for others; one at a time of day takes that time.
    made.add("transp", "OPAQUE" if session.at else "TRANSPARENT")
    _say(made, "summary", f"{slot.arranged.label or slot.arranged.day}, {plan.name}")
    _say(made, "description", _description(slot, language))
    made.add("categories", [_clean(slot.week.block)])
    return made


def _span(session: Session, day: date, minutes: Fraction) -> tuple[date, date]:
    """When it begins and ends: floating times, or the day and the next."""
    if session.at is None:
        return day, day + timedelta(days=1)
    start = datetime.combine(day, session.at)
    return start, start + timedelta(minutes=max(ROUNDED_TO, ROUNDED_TO * ceil(minutes / ROUNDED_TO)))


def _description(slot: _Slot, language: Language) -> str:
    week = language.text("Week {number}").format(number=slot.week.number)
    cautions = (words.headed(*keys.said(each, language), language) for each in keys.CAUTIONS[1:4])
    return "\n".join([f"{week}, {slot.week.block}", session_text(slot.arranged, language), "", *cautions])


def _about(material: Material, language: Language) -> str:
    arranged = sheet(material.plan, material.overview, language)
    cautions = (words.headed(head, said, language) for head, said in arranged.cautions)
    return "\n".join((*arranged.notes, *cautions))


def _titled(plan: Plan) -> str:
    return ", ".join(part for part in (plan.name, plan.athlete) if part)


def _say(made: Calendar | Event, name: str, text: str) -> None:
    from icalendar import vText

    made.add(name, vText(_clean(text)))


def _clean(text: str) -> str:
    return _UNWANTED.sub(" ", text.replace("\r\n", "\n").replace("\r", "\n")).strip()
