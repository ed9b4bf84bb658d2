"""What a line that advances by a progression asks later in its block, if every exposure goes to plan.

Comes in: the first segment as its week has it, and the progression. Goes out: the segment as it would then be asked.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from setwright.expand.lines import Moment
from setwright.expand.tracks import value_in_week
from setwright.link.model import LinkedSegment, Modifiers
from setwright.plan import Cause, Quantity, Segment, Step, StepValue
from setwright.prescription import Effort, Reps
from setwright.progression import Asked, Progression, Standing, advanced, as_asked, begun, in_words
from setwright.progression.model import Moved
from setwright.record import replace


@dataclass(slots=True)
class Course:
    """One segment in one block: where it stands before each exposure so far, and its rules in words."""

    standings: list[Standing] = field(default_factory=list)
    words: dict[tuple[Fraction, Fraction], str] = field(default_factory=dict)  # by the ends of the range


# By the segment's identity and the block's name.
Courses = dict[tuple[int, str], Course]


def projected(
    segment: Segment, linked: LinkedSegment, modifiers: Modifiers, moment: Moment, courses: Courses
) -> tuple[Segment, str]:
    """The segment in the exposure of that week, and the rules in words; a block's first exposure is as written."""
    progression = modifiers.progression
    assert progression is not None
    course = courses.setdefault((id(linked), moment.block.name), Course())
    written = Asked(segment.sets, segment.reps, segment.intensity, segment.reps.low, segment.reps.high)
    ends = (written.bottom, written.top)
    if ends not in course.words:
        course.words[ends] = in_words(progression, written)
    if moment.index == 0:
        return segment, course.words[ends]
    standing = _standing(linked, progression, moment, course.standings)
    asked = _joined(written, standing.asked, progression)
    place = modifiers.advance_span or segment.span
    exposure = (("exposure", Fraction(moment.index + 1)),)
    steps = tuple(
        Step(quantity, Cause.PROGRESSION, before, after, place, exposure)
        for quantity, before, after in _changes(written, asked)
    )
    moved = replace(
        segment, sets=asked.sets, reps=asked.reps, intensity=asked.intensity, steps=(*segment.steps, *steps)
    )
    return moved, course.words[ends]


def _changes(written: Asked, asked: Asked) -> Iterator[tuple[Quantity, StepValue, StepValue]]:
    if asked.sets != written.sets:
        yield Quantity.SETS, written.sets, asked.sets
    if asked.reps != written.reps:
        yield Quantity.REPS, written.reps, asked.reps
    if asked.intensity != written.intensity:
        yield Quantity.INTENSITY, written.intensity, asked.intensity


def _standing(linked: LinkedSegment, progression: Progression, moment: Moment, made: list[Standing]) -> Standing:
    """Where the line stands before that week's exposure, after all those before it in the block."""
    while len(made) <= moment.index:
        asked = _asked_in(linked, len(made), moment.working_weeks)
        if not made:
            made.append(begun(progression, asked))
            continue
        after = advanced(progression, made[-1], as_asked(made[-1].asked))
        made.append(replace(after, asked=_joined(asked, after.asked, progression)))
    return made[moment.index]


def _asked_in(linked: LinkedSegment, index: int, working_weeks: int) -> Asked:
    """What the tracks alone ask in a working week."""
    sets = value_in_week(linked.sets, index, working_weeks) if linked.sets is not None else Fraction(1)
    reps: Reps = value_in_week(linked.reps, index, working_weeks)
    intensity = value_in_week(linked.intensity, index, working_weeks) if linked.intensity is not None else None
    return Asked(int(sets), reps, intensity, reps.low, reps.high)


def _joined(written: Asked, moved: Asked, progression: Progression) -> Asked:
    """What the progression moves from `moved`, everything else as written for the week."""
    by_effort = isinstance(written.intensity, Effort)
    moves_intensity = progression.moves(Moved.EFFORT if by_effort else Moved.LOAD)
    return replace(
        written,
        sets=moved.sets if progression.moves(Moved.SETS) else written.sets,
        reps=moved.reps if progression.moves(Moved.REPS) else written.reps,
        intensity=moved.intensity if moves_intensity else written.intensity,
    )
