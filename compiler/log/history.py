"""What progressions run on: what was done of each planned line, which sessions are over, and which do not count.

Comes in: a plan with its sessions on the athlete's days, and a `Log`. Goes out: a `History` that knows lines as the
plan has them, so that the plan can be laid out again with it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date

from setwright.log.matching import Place, lines_done, matched
from setwright.log.model import Log, SessionDone, SetDone
from setwright.plan import Line, Plan, Session
from setwright.record import record

# A place, the movement that the plan asks for there, and the line's label.
LinePlace = tuple[Place, str, str | None]


@record
class Deed:
    """What was done of one line, and on which day."""

    day: date
    sets: tuple[SetDone, ...]


@record
class History:
    """`over` is the last place whose session is over; `left_out` are those that count for no progression.

    What is over and was not done was skipped. What is not over is still to come.
    """

    deeds: Mapping[LinePlace, Deed]
    over: Place = (0, 0)
    left_out: frozenset[Place] = frozenset()

    def deed(self, place: Place, line: tuple[str, str | None]) -> Deed | None:
        """What was done of a line, by its movement as planned and its label; None where nothing that counts was."""
        return None if place in self.left_out else self.deeds.get((place, *line))

    def is_known(self, place: Place) -> bool:
        """True where nothing is to be assumed of that session any more."""
        return place <= self.over or place in self.left_out


def history(plan: Plan, log: Log, on: date | None = None, left_out: frozenset[Place] = frozenset()) -> History:
    """All that progressions need. Sessions before the last done one are over, and so are those before the day `on`.

    Where a log holds no session at all none is kept, and nothing is taken for skipped.
    """
    matching = matched(plan, log)
    on = on if log.sessions else None
    deeds: dict[LinePlace, Deed] = {}
    over = (0, 0)
    for week in plan.weeks:
        for position, session in enumerate(week.sessions, 1):
            place = (week.number, position)
            done = matching.done(*place)
            if done or (on is not None and session.date is not None and session.date < on):
                over = place
            deeds.update(((place, *_as_planned(line)), deed) for line, deed in _deeds(session, done))
    return History(deeds, over, left_out)


def _deeds(session: Session, done: tuple[SessionDone, ...]) -> Iterator[tuple[Line, Deed]]:
    if not done:
        return
    for line in session.lines:
        sets = lines_done(line, done, session.lines)
        if sets:
            yield line, Deed(done[-1].day, sets)


def _as_planned(line: Line) -> tuple[str, str | None]:
    return line.instead_of or line.movement.name, line.label
