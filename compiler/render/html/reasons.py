"""Where the numbers come from, under each movement of the page, for whoever asks for it.

Comes in: an arranged sheet and the plan that it was made from. Goes out: the same sheet, its stations with reasons.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import PurePath

from setwright.plan import Plan, Session, Week
from setwright.record import replace
from setwright.render.derivation import entries
from setwright.render.language import Language
from setwright.render.sheet import Part, Reason, SessionSheet, Sheet
from setwright.report.derivation import Derivation, derivation


def with_reasons(arranged: Sheet, plan: Plan, language: Language) -> Sheet:
    """The sheet of all weeks of the plan."""
    weeks = tuple(
        replace(
            made,
            sessions=tuple(
                _session(one, week, session, language)
                for one, session in zip(made.sessions, week.sessions, strict=True)
            ),
        )
        for made, week in zip(arranged.weeks, plan.weeks, strict=True)
    )
    return replace(arranged, weeks=weeks)


def _session(made: SessionSheet, week: Week, session: Session, language: Language) -> SessionSheet:
    def part(one: Part) -> Part:
        stations = (
            replace(station, why=tuple(_reasons(derivation(week, session, station.order, line), language)))
            for station in one.stations
            for line in (session.lines[station.order - 1],)
        )
        return replace(one, stations=tuple(stations))

    return replace(made, parts=tuple(part(one) for one in made.parts))


def _reasons(one: Derivation, language: Language) -> Iterator[Reason]:
    """The place is the file's name alone, and stands only where it is not that of the reason above."""
    above = None
    for entry in entries(one, language):
        place = f"{PurePath(entry.place.source.path).name}:{entry.place.line}"
        said = entry.reason.replace("`", "")  # marks of the terminal
        yield Reason(entry.head, entry.value, said, None if place == above else place)
        above = place
