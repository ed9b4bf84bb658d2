"""What a workbook computes with: for each set row of a week, whether it counts and what its sets lift.

Comes in: a week, its plan and the promise. Goes out: records in the order of the sheet.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from setwright.check.figures.sets import asked_lines, counted_sets
from setwright.plan import Handling, Line, Plan, Segment, SegmentKind, Session, Week
from setwright.quantities import Mass, Unit
from setwright.record import record, replace
from setwright.render.words import known_mass, wants_load
from setwright.report.lifted import Lifted, lifted
from setwright.rules import Promise


@record
class Counted:
    """One segment. `counts` says that its sets are in the volume, `asked` that its line is (volume load).

    `repetitions` are those of one set, None where none are known or where nothing that has a mass is lifted.
    `factor` turns the load on the sheet into what one repetition lifts, in the plan's unit: 2 for one in each hand.
    `load` is what one repetition lifts, in the plan's unit.
    """

    segment: Segment
    line: Line
    counts: bool
    asked: bool
    repetitions: Fraction | None
    factor: Fraction
    load: Fraction | None

    @property
    def is_work(self) -> bool:
        """True for all but warm-ups."""
        return self.segment.kind is not SegmentKind.WARM_UP

    @property
    def volume_load(self) -> Fraction | None:
        """Sets x repetitions x load, in the plan's unit; None where there is none, however much is filled in."""
        if self.repetitions is None or not self.asked:
            return None
        return self.segment.sets * self.repetitions * (self.load or 0)


def counted_week(week: Week, plan: Plan, promise: Promise) -> tuple[tuple[Counted, ...], ...]:
    """For each session of a week, in order, its segments in order."""
    return tuple(tuple(_session(session, plan, promise)) for session in week.sessions)


def _session(session: Session, plan: Plan, promise: Promise) -> Iterator[Counted]:
    asked = {id(line) for line in asked_lines(session, promise)}
    for line in session.lines:
        lifts = iter(lifted(line))
        for segment in line.segments:
            is_work = segment.kind is not SegmentKind.WARM_UP
            lift = next(lifts) if is_work else None
            counts = is_work and id(line) in asked and counted_sets(replace(line, segments=(segment,)), promise) > 0
            yield _counted(segment, line, counts, id(line) in asked, lift, plan.unit)


def _counted(segment: Segment, line: Line, counts: bool, asked: bool, lift: Lifted | None, unit: Unit) -> Counted:
    mass = known_mass(segment)
    own = mass.unit if mass is not None else unit
    hands = 2 if _handling(segment, line) is Handling.PAIR else 1
    return Counted(
        segment=segment,
        line=line,
        counts=counts,
        asked=asked,
        repetitions=lift.repetitions if lift is not None and _has_mass(lift, segment, line) else None,
        factor=hands * Mass(Fraction(1), own).to(unit).amount,
        load=lift.load.to(unit).amount if lift is not None and lift.load is not None else None,
    )


def _has_mass(lift: Lifted, segment: Segment, line: Line) -> bool:
    """False where the body is lifted: the mass that is added or taken off is then not what a repetition lifts."""
    return lift.load is not None or wants_load(line.movement, segment)


def _handling(segment: Segment, line: Line) -> Handling | None:
    return segment.load.handling if segment.load is not None else line.movement.handling
