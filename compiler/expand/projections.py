"""What a line that advances by a progression asks later in its block: by what was done, then if all goes to plan.

Comes in: the first segment as its week has it, and the progression. Goes out: the segment as it is then asked.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction

from setwright.expand.lines import Moment
from setwright.expand.tracks import value_in_week
from setwright.link.model import LinkedSegment, Modifiers
from setwright.plan import Cause, Fact, Quantity, Segment, Step, StepValue
from setwright.prescription import Effort, Reps
from setwright.progression import Asked, Progression, Standing, advanced, as_asked, begun, in_words
from setwright.progression.model import Moved
from setwright.record import replace


@dataclass(slots=True)
class Course:
    """One segment in one block: where it stands before each exposure so far, and its rules in words."""

    written: dict[int, Asked] = field(default_factory=dict)  # what the tracks alone ask, by working week
    standings: list[Standing] = field(default_factory=list)
    answers: list[tuple[Fact, ...] | None] = field(default_factory=list)  # see `_taken`
    words: dict[tuple[Fraction, Fraction], str] = field(default_factory=dict)  # by the ends of the range


# By the segment's identity and the block's name.
Courses = dict[tuple[int, str], Course]


def projected(
    segment: Segment,
    linked: LinkedSegment,
    line: tuple[str, str | None],
    modifiers: Modifiers,
    moment: Moment,
    courses: Courses,
) -> tuple[Segment, str, bool]:
    """The segment in the exposure of that week, the rules in words, and whether it is a projection.

    A block's first exposure is as written. It is a projection where an exposure before it had to be assumed.
    """
    progression = modifiers.progression
    assert progression is not None
    course = courses.setdefault((id(linked), moment.block.name), Course())
    written = Asked(segment.sets, segment.reps, segment.intensity, segment.reps.low, segment.reps.high)
    ends = (written.bottom, written.top)
    course.written[moment.index] = written
    if ends not in course.words:
        course.words[ends] = in_words(progression, written)
    if moment.index == 0:
        return segment, course.words[ends], False
    standing = _standing(linked, line, progression, moment, course)
    asked = _joined(written, standing.asked, progression)
    place = modifiers.advance_span or segment.span
    facts = (("exposure", Fraction(moment.index + 1)), *_last_answer(course.answers[: moment.index]))
    steps = tuple(
        Step(quantity, Cause.PROGRESSION, before, after, place, facts)
        for quantity, before, after in _changes(written, asked)
    )
    moved = replace(
        segment, sets=asked.sets, reps=asked.reps, intensity=asked.intensity, steps=(*segment.steps, *steps)
    )
    return moved, course.words[ends], None in course.answers[: moment.index]


def _last_answer(answers: list[tuple[Fact, ...] | None]) -> tuple[Fact, ...]:
    """Of the exposures before, what the last one that was done came to."""
    return next((answer for answer in reversed(answers) if answer), ())


def _changes(written: Asked, asked: Asked) -> Iterator[tuple[Quantity, StepValue, StepValue]]:
    if asked.sets != written.sets:
        yield Quantity.SETS, written.sets, asked.sets
    if asked.reps != written.reps:
        yield Quantity.REPS, written.reps, asked.reps
    if asked.intensity != written.intensity:
        yield Quantity.INTENSITY, written.intensity, asked.intensity


def _standing(
    linked: LinkedSegment, line: tuple[str, str | None], progression: Progression, moment: Moment, course: Course
) -> Standing:
    """Where the line stands before that week's exposure, after all those before it in the block."""
    made = course.standings
    while len(made) <= moment.index:
        index = len(made)
        asked = course.written.get(index) or _asked_in(linked, index, moment.working_weeks)
        if not made:
            made.append(begun(progression, asked))
            continue
        after, answer = _taken(progression, made[-1], index - 1, line, moment)
        course.answers.append(answer)
        made.append(replace(after, asked=_joined(asked, after.asked, progression)))
    return made[moment.index]


def _taken(
    progression: Progression, before: Standing, index: int, line: tuple[str, str | None], moment: Moment
) -> tuple[Standing, tuple[Fact, ...] | None]:
    """Where the line stands after one exposure, and what that came to.

    Facts where it was done, no facts where it was skipped and leaves all as it is, None where it was assumed.
    """
    if moment.history is not None:
        from setwright.log.exposures import answered
        from setwright.log.exposures import in_words as done_in_words

        place = (moment.working[index], moment.position)
        deed = moment.history.deed(place, line)
        if deed is not None:
            asked, done = answered(before.asked, deed.sets)
            facts = ("done", done_in_words(deed.sets)), ("on", deed.day.isoformat())
            return advanced(progression, replace(before, asked=asked), done), facts
        if moment.history.is_known(place):
            return before, ()
    return advanced(progression, before, as_asked(before.asked)), None


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
