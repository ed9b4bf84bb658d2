"""One line of a day in one working week: tracks read off, limits applied, warm-ups put before the work."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import weeks
from setwright.expand.deloads import limited
from setwright.expand.tracks import OffScaleError, fits, value_in_week
from setwright.link.blocks import counted
from setwright.link.model import (
    LinkedBlock,
    LinkedLine,
    LinkedPlan,
    LinkedSegment,
    Modifiers,
    Track,
    WarmUpStep,
)
from setwright.plan import Group, Line, Segment, SegmentKind, Step
from setwright.prescription import Intensity, PercentOfBest, Reps, Rest
from setwright.record import field_names, record, replace
from setwright.source import Span
from setwright.syntax.nodes import TrackKind

if TYPE_CHECKING:
    from setwright.expand.projections import Courses

Problems = list[Diagnostic]


@record
class Moment:
    """A working week of a block: its number in the block and its place among the working weeks."""

    block: LinkedBlock
    number: int  # in the block, from 1
    index: int  # among the working weeks, from 0
    working_weeks: int


def check_tracks(line: LinkedLine, block: LinkedBlock, working_weeks: int, problems: Problems) -> bool:
    """Report lists that do not fit the block and weeks that have no prescription; False where there are any."""
    before = len(problems)
    for track in _tracks(line):
        if not fits(track, working_weeks):
            spare = f" ({counted(block.weeks - working_weeks, 'deload week')} left out)" if block.deloads else ""
            problems.append(
                weeks.TRACK_LENGTH.at(
                    track.span,
                    length=counted(len(track.values), "value").split()[0],
                    block=block.name,
                    weeks=counted(working_weeks, "working week") + spare,
                    related=line.inherited[-1:] if line.inherited else (),
                )
            )
        _check_steps(track, line, block, working_weeks, problems)
    return len(problems) == before


def worked_line(
    line: LinkedLine, group: Group | None, moment: Moment, plan: LinkedPlan, courses: Courses, problems: Problems
) -> Line | None:
    """The line in one working week, or None where that week has no prescription.

    `courses` keeps what progressions came to in the weeks before.
    """
    form = next((form for form in line.weekly if moment.number in form.weeks), None)
    if line.weekly and form is None:
        return None
    segments = form.segments if form else line.segments
    modifiers = _merged(line.modifiers, form.modifiers) if form else line.modifiers
    rounds = group.rounds if group else None
    work = [_segment(segment, modifiers, rounds, moment) for segment in segments]
    words = None
    if modifiers.progression is not None:
        from setwright.expand.projections import projected  # few plans advance by a progression

        work[0], words = projected(work[0], segments[0], modifiers, moment, courses)
    cap = _cap(modifiers, moment.block)
    if cap is not None:
        work = [limited(segment, *cap) for segment in work]
    return Line(
        movement=line.movement,
        segments=(*_warm_ups(line, modifiers, plan, problems), *work),
        span=form.span if form else line.span,
        label=line.label,
        rest=_at(modifiers.rest, moment) if modifiers.rest else (group.rest if group else None),
        tempo=modifiers.tempo,
        every=modifiers.every,
        pause=modifiers.pause,
        optional=modifiers.optional,
        advance=modifiers.advance,
        advance_words=words,
        projected=words is not None and moment.index > 0,
        notes=line.notes,
        swaps=line.swaps or line.movement.swaps,
        group=group,
        inherited=line.inherited,
    )


# ---- helpers -------------------------------------------------------------------------------------


def _tracks(line: LinkedLine) -> list[Track[object]]:
    found: list[Track[object] | None] = [line.modifiers.rest]  # type: ignore[list-item]
    for segment in line.segments:
        found += [segment.sets, segment.reps, segment.intensity]  # type: ignore[list-item]
    if line.group is not None:
        found += [line.group.rounds, line.group.rest]  # type: ignore[list-item]
    return [track for track in found if track is not None]


def _check_steps(
    track: Track[object], line: LinkedLine, block: LinkedBlock, working_weeks: int, problems: Problems
) -> None:
    if track.kind is not TrackKind.STEPS:
        return
    for index in range(working_weeks):
        try:
            value_in_week(track, index, working_weeks)
        except OffScaleError as error:
            problems.append(weeks.STEPS_OUT_OF_RANGE.at(track.span, value=str(error), week=index + 1, block=block.name))
            return


def _at(track: Track[Rest], moment: Moment) -> Rest:
    return value_in_week(track, moment.index, moment.working_weeks)


def _segment(segment: LinkedSegment, modifiers: Modifiers, rounds: int | None, moment: Moment) -> Segment:
    sets = _sets(segment, rounds, moment)
    reps: Reps = value_in_week(segment.reps, moment.index, moment.working_weeks)
    intensity: Intensity | None = None
    if segment.intensity is not None:
        intensity = value_in_week(segment.intensity, moment.index, moment.working_weeks)
    kind = SegmentKind.DROP if segment.is_drop else SegmentKind.TEST if modifiers.test else SegmentKind.WORK
    return Segment(kind, sets, reps, intensity, segment.span, steps=_steps(segment, sets, reps, intensity))


def _sets(segment: LinkedSegment, rounds: int | None, moment: Moment) -> int:
    written = int(value_in_week(segment.sets, moment.index, moment.working_weeks)) if segment.sets else 1
    return rounds if rounds is not None and written in (1, rounds) else written


def _steps(segment: LinkedSegment, sets: int, reps: Reps, intensity: Intensity | None) -> tuple[Step, ...]:
    """What the tracks came to, for the values that move."""
    came = ((segment.sets, f"{sets} sets"), (segment.reps, str(reps)), (segment.intensity, str(intensity)))
    return tuple(
        Step("track", track.span.text, value, track.span)
        for track, value in came
        if track is not None and track.kind is not TrackKind.FIXED
    )


def _merged(own: Modifiers, week: Modifiers) -> Modifiers:
    changed = {name: value for name in field_names(Modifiers) if (value := getattr(week, name)) not in (None, False)}
    return replace(own, **changed)


def _cap(modifiers: Modifiers, block: LinkedBlock) -> tuple[Fraction, Span] | None:
    caps = [
        (cap, span)
        for cap, span in ((modifiers.limit, modifiers.limit_span), (block.limit, block.limit_span))
        if cap is not None and span is not None
    ]
    return min(caps, key=lambda pair: pair[0]) if caps else None


def _warm_ups(line: LinkedLine, modifiers: Modifiers, plan: LinkedPlan, problems: Problems) -> tuple[Segment, ...]:
    steps: tuple[WarmUpStep, ...] | None = modifiers.warm_up
    if steps is None:
        return ()
    if not steps:
        if plan.warm_up is None:
            diagnostic = weeks.NO_WARM_UP.at(line.span)
            if diagnostic not in problems:
                problems.append(diagnostic)
            return ()
        steps = plan.warm_up
    return tuple(Segment(SegmentKind.WARM_UP, 1, step.reps, PercentOfBest(step.percent), step.span) for step in steps)
