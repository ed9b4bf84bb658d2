"""The next session alone, in each of the formats that it is shown in.

Comes in: a plan's material, which session, and the day that counts as today. Goes out: text.
"""

from __future__ import annotations

from datetime import date
from typing import Final

from setwright.plan import Plan
from setwright.render import markdown, session_terminal
from setwright.render.gathered import only_session
from setwright.render.language import Language
from setwright.render.material import Look, Material
from setwright.render.sheet import sheet
from setwright.report.coming import Coming

FORMATS: Final = ("text", "md", "html")


def session_text(form: str, material: Material, coming: Coming, on: date, look: Look) -> str:
    """The session in one of `FORMATS`."""
    one = only_session(material, *coming.place)
    if form == "md":
        return markdown.session_text(one, look)
    if form == "html":
        from setwright.render import html

        return html.session_page(one, look)
    language = look.language
    which, nearness = _which(coming, language), _nearness(coming, on, language)
    return session_terminal.text(sheet(one.plan, one.overview, language), which, nearness, language)


def over(plan: Plan, language: Language) -> str:
    """What is said where no session is left."""
    days = [session.date for week in plan.weeks for session in week.sessions if session.date is not None]
    who = f" \u2013 {language.name(plan.athlete)}" if plan.athlete else ""
    name = f"{language.name(plan.name)}{who}"
    if not days:
        return language.text("{plan}: no session is left.").format(plan=name)
    said = language.text("{plan}: no session is left; the last was planned for {day}.")
    return said.format(plan=name, day=language.day(max(days)))


def _which(coming: Coming, language: Language) -> str:
    return language.text("session {number} of {count}").format(number=coming.number, count=coming.of)


def _nearness(coming: Coming, on: date, language: Language) -> str | None:
    """Whether the session's day is today or has passed; a later one speaks for itself."""
    day = coming.session.date
    if day is None or day > on:
        return None
    return language.text("today") if day == on else language.text("its day has passed")
