"""One line of a day in one working week: tracks read off, limits applied, warm-ups put before the work."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, TypeVar

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
from setwright.plan import Cause, Fact, Group, Line, Quantity, Segment, SegmentKind, Step, StepValue
from setwright.prescription import Intensity, PercentOfBest, Reps, Rest
from setwright.record import field_names, record, replace
from setwright.source import Span
from setwright.syntax.nodes import TrackKind

if TYPE_CHECKING:
    from setwright.expand.projections import Courses
    from setwright.log.history import History

Problems = list[Diagnostic]
T = TypeVar("T")


@record
class Moment:
    """A working week of a block: its number in the block and its place among the working weeks.

    For lines that answer a log also: which session of the week it is, the plan's weeks that work in this block, and
    what was done.
    """

    block: LinkedBlock
    number: int  # in the block, from 1
    index: int  # among the working weeks, from 0
    working_weeks: int
    position: int = 1  # of the session in its week
    working: tuple[int, ...] = ()  # numbers in the plan
    history: History | None = None


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
    circuit = line.group.rounds if line.group and rounds is not None else None
    work = [_segment(segment, modifiers, circuit, rounds, moment) for segment in segments]
    words, is_projected = None, False
    if modifiers.progression is not None:
        from setwright.expand.projections import projected  # few plans advance by a progression

        work[0], words, is_projected = projected(work[0], segments[0], line.key, modifiers, moment, courses)
    cap = _cap(modifiers, moment.block)
    if cap is not None:
        work = [limited(segment, *cap) for segment in work]
    rest, tempo = _rest(line, modifiers, group, moment), modifiers.tempo
    steps = rest[1]
    if tempo is not None and modifiers.tempo_span is not None:
        steps = (*steps, _read(Quantity.TEMPO, modifiers.tempo_span, tempo))
    if line.named is not None:
        word, place = line.named
        name = Step(Quantity.MOVEMENT, Cause.PARAMETER, word.text, line.movement.name, word, related=(place,))
        steps = (*steps, name)
    return Line(
        movement=line.movement,
        segments=(*_warm_ups(line, modifiers, plan, problems), *work),
        span=form.span if form else line.span,
        label=line.label,
        rest=rest[0],
        tempo=tempo,
        every=modifiers.every,
        pause=modifiers.pause,
        optional=modifiers.optional,
        advance=modifiers.advance,
        advance_words=words,
        projected=is_projected,
        notes=line.notes,
        swaps=line.swaps or line.movement.swaps,
        group=group,
        inherited=line.inherited,
        steps=steps,
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


def _rest(
    line: LinkedLine, modifiers: Modifiers, group: Group | None, moment: Moment
) -> tuple[Rest | None, tuple[Step, ...]]:
    """The line's rest, or its group's, and how it came to be."""
    track = modifiers.rest
    if track is not None:
        rest = value_in_week(track, moment.index, moment.working_weeks)
        return rest, _steps(Quantity.REST, track, rest, moment)
    if group is None or group.rest is None or line.group is None or line.group.rest is None:
        return None, ()
    return group.rest, _steps(Quantity.REST, line.group.rest, group.rest, moment)


def _segment(
    segment: LinkedSegment, modifiers: Modifiers, circuit: Track[Fraction] | None, rounds: int | None, moment: Moment
) -> Segment:
    index, weeks_ = moment.index, moment.working_weeks
    sets, counted_by = _sets(segment, circuit, rounds, moment)
    reps: Reps = value_in_week(segment.reps, index, weeks_)
    by_sets = _steps(Quantity.SETS, counted_by, sets, moment) if counted_by else _one_set(segment.span)
    steps = (*by_sets, *_steps(Quantity.REPS, segment.reps, reps, moment))
    intensity: Intensity | None = None
    if segment.intensity is not None:
        intensity = value_in_week(segment.intensity, index, weeks_)
        steps = (*steps, *_steps(Quantity.INTENSITY, segment.intensity, intensity, moment))
    kind = SegmentKind.DROP if segment.is_drop else SegmentKind.TEST if modifiers.test else SegmentKind.WORK
    return Segment(kind, sets, reps, intensity, segment.span, steps=steps)


def _sets(
    segment: LinkedSegment, circuit: Track[Fraction] | None, rounds: int | None, moment: Moment
) -> tuple[int, Track[Fraction] | None]:
    """How many sets, and the track that says so: a circuit's rounds go before one set that is written."""
    written = int(value_in_week(segment.sets, moment.index, moment.working_weeks)) if segment.sets else 1
    if rounds is not None and written in (1, rounds):
        return rounds, circuit
    return written, segment.sets


def _steps(quantity: Quantity, track: Track[T], value: StepValue, moment: Moment) -> tuple[Step, ...]:
    """From what is written to the value: a template's words filled, then a track read off or a value read."""
    span = track.whole or track.span
    text = track.filled.text if track.filled else span.text
    last = (
        _read(quantity, span, value, text)
        if track.kind is TrackKind.FIXED
        else Step(quantity, Cause.TRACK, text, value, span, _week(moment))
    )
    if track.filled is None:
        return (last,)
    return Step(quantity, Cause.PARAMETER, span.text, text, span, related=track.filled.places), last


def _week(moment: Moment) -> tuple[Fact, ...]:
    return ("week", Fraction(moment.index + 1)), ("of", Fraction(moment.working_weeks))


def _read(quantity: Quantity, span: Span, value: StepValue, text: str | None = None) -> Step:
    return Step(quantity, Cause.WRITTEN, span.text if text is None else text, value, span)


def _one_set(span: Span) -> tuple[Step, ...]:
    """Where no number of sets is written."""
    return (_read(Quantity.SETS, span, 1),)


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
    return tuple(_warm_up(step) for step in steps)


def _warm_up(step: WarmUpStep) -> Segment:
    percent = PercentOfBest(step.percent)
    steps = (
        *_one_set(step.span),
        _read(Quantity.REPS, step.span, step.reps),
        _read(Quantity.INTENSITY, step.span, percent),
    )
    return Segment(SegmentKind.WARM_UP, 1, step.reps, percent, step.span, steps=steps)
