"""What changes for the athlete from one plan to another, as plain data: no words, no layout.

Old and new are named as such everywhere, so that the difference from new to old is the same with the sides changed.
"""

from __future__ import annotations

from datetime import date, time
from enum import Enum
from fractions import Fraction
from typing import TypeAlias

from setwright.plan import Group, Load, Segment, WeekKind
from setwright.prescription import Intensity, Reps, Rest, Tempo
from setwright.record import record
from setwright.rules import Rule, Waiver


class Fate(Enum):
    """What became of a block, session or line."""

    ADDED = "added"
    DROPPED = "dropped"
    CHANGED = "changed"
    SWAPPED = "swapped"  # a line, whose place another movement took


class Aspect(Enum):
    """What of a plan, block, session or line is another; the value is its name in JSON."""

    NAME = "name"
    AUTHOR = "author"
    START = "start"
    UNITS = "units"
    MICROCYCLE = "microcycle"
    NOTES = "notes"
    MODEL = "model"
    ROUNDING = "rounding"
    COUNTING = "counting"
    COUNT_FROM = "count-from"
    COUNT_REQUIRED = "count-required"
    FOLLOWS = "follows"
    BLOCK_ORDER = "block-order"
    WEEK_KIND = "week-kind"
    EASING = "easing"
    LABEL = "label"
    TIME_OF_DAY = "time-of-day"
    ORDER = "order"
    WORK = "work"
    SETS = "sets"
    REPS = "reps"
    INTENSITY = "intensity"
    LOAD = "load"
    LOAD_FACTOR = "load-factor"
    WARM_UP = "warm-up"
    TEST = "test"
    REST = "rest"
    TEMPO = "tempo"
    EVERY = "every"
    PAUSE = "pause"
    GROUP = "group"
    OPTIONAL = "optional"
    PROGRESSION = "progression"
    INSTEAD_OF = "instead-of"
    SWAPS = "swaps"
    PATTERN = "pattern"
    NEEDS = "needs"
    WORKS = "works"
    CUE = "cue"


# Whatever of a segment reaches a sheet; a deload that eases otherwise changes all of these at once.
OF_WORK = frozenset(
    {Aspect.WORK, Aspect.SETS, Aspect.REPS, Aspect.INTENSITY, Aspect.LOAD, Aspect.LOAD_FACTOR, Aspect.WARM_UP}
)


@record
class Easing:
    """How easy a week is: its work sets, the share of their load that a deload leaves, the hardest stated RPE."""

    sets: int
    load_factor: Fraction | None  # where it is the same for all loads that were eased
    highest_effort: Fraction | None


Value: TypeAlias = (
    None
    | bool
    | int
    | str
    | Fraction
    | date
    | time
    | tuple[str, ...]
    | tuple[tuple[str, Fraction], ...]
    | tuple[Segment, ...]
    | Reps
    | Intensity
    | Load
    | Rest
    | Tempo
    | Group
    | WeekKind
    | Easing
)

Weeks: TypeAlias = tuple[tuple[int, int], ...]  # the number of a week in the old plan, and in the new one


@record
class Stretch:
    """Weeks of one kind in which something is another: what it was and what it is, a value for each week."""

    kind: WeekKind  # working only where both weeks are
    weeks: Weeks
    before: tuple[Value, ...]
    after: tuple[Value, ...]


@record
class Change:
    """One thing that is another. `part` counts the segments of the work from 0 where there are several."""

    aspect: Aspect
    stretches: tuple[Stretch, ...]
    part: int | None = None


@record
class Fact:
    """Something that is said once of a whole plan or movement, before and after."""

    aspect: Aspect
    before: Value
    after: Value


@record
class Written:
    """The work of a line in one week."""

    week: int
    segments: tuple[Segment, ...]


@record
class LineChange:
    """A movement in one session over the weeks. `old` and `new` are the movements' names, None on the side without.

    `written` is the work of an added or dropped line week by week; `weeks` are those of one that is in both.
    """

    fate: Fate
    old: str | None
    new: str | None
    label: str | None
    weeks: Weeks = ()
    written: tuple[Written, ...] = ()
    changes: tuple[Change, ...] = ()


@record
class Day:
    """A session as one finds it: the day it stands on, and what it is called."""

    slot: str
    label: str | None


@record
class DayWork:
    """A session of one week, of a day that was added or dropped: its movements and their work sets."""

    week: int
    lines: tuple[tuple[str, int], ...]


@record
class SessionChange:
    """A day's training over the weeks of a block."""

    fate: Fate
    old: Day | None
    new: Day | None
    weeks: Weeks = ()
    work: tuple[DayWork, ...] = ()
    changes: tuple[Change, ...] = ()
    lines: tuple[LineChange, ...] = ()

    @property
    def moved(self) -> bool:
        """True where it stands on another day than before."""
        return self.old is not None and self.new is not None and self.old.slot != self.new.slot


@record
class Stretched:
    """A block as a stretch of weeks, by its number and its place among the plan's weeks."""

    name: str
    first_week: int
    last_week: int

    @property
    def length(self) -> int:
        """In weeks."""
        return self.last_week - self.first_week + 1


@record
class BlockChange:
    """A block. `added` are numbers of new weeks that no old one answers to, `dropped` those of old ones."""

    fate: Fate
    old: Stretched | None
    new: Stretched | None
    added: tuple[int, ...] = ()
    dropped: tuple[int, ...] = ()
    changes: tuple[Change, ...] = ()
    sessions: tuple[SessionChange, ...] = ()


@record
class RuleChange:
    """A rule or waiver that came, went, or asks for something else."""

    old: Rule | Waiver | None
    new: Rule | Waiver | None


@record
class MovementChange:
    """A movement of both plans that its library describes otherwise."""

    name: str
    facts: tuple[Fact, ...]


@record
class Range:
    """The least and the greatest of a figure over some weeks."""

    low: Fraction
    high: Fraction


@record
class MuscleChange:
    """Fractional sets per 7 days for one muscle, over the weeks of one kind in which they differ."""

    muscle: str
    title: str
    kind: WeekKind
    weeks: Weeks
    before: Range
    after: Range
    more: Range  # after less before, week by week


class Figure(Enum):
    """A figure of weeks or sessions; the value is its name in JSON."""

    SETS = "week-sets"
    HIGHEST_EFFORT = "highest-effort"
    MEAN_EFFORT = "mean-effort"
    WEEK_MINUTES = "week-minutes"
    SESSION_MINUTES = "session-minutes"


@record
class FigureChange:
    """A figure over the weeks in which it differs; None where no week has it. `old` and `new` are a session's days."""

    figure: Figure
    weeks: Weeks
    before: Range | None
    after: Range | None
    old: str | None = None
    new: str | None = None


@record
class Broken:
    """What is outside a rule's range: in which weeks, between which figures."""

    rule: Rule
    weeks: tuple[int, ...]
    figures: Range


@record
class BreachChange:
    """A rule that is broken for a subject (and day) on one side only, or otherwise than before."""

    code: str  # its number
    measure: str
    subject: str  # a muscle's, group's or pattern's title; empty for the whole plan
    slot: str | None
    old: Broken | None
    new: Broken | None


@record
class Consequence:
    """What the changes come to, over the weeks that both plans have; breaches over all weeks."""

    muscles: tuple[MuscleChange, ...] = ()
    figures: tuple[FigureChange, ...] = ()
    breaches: tuple[BreachChange, ...] = ()


@record
class Heading:
    """Whose plan it is."""

    plan: str
    athlete: str | None


@record
class Difference:
    """Everything that changes from one plan to another; `shifted` are the weeks of both that have another number."""

    old: Heading
    new: Heading
    facts: tuple[Fact, ...] = ()
    rules: tuple[RuleChange, ...] = ()
    movements: tuple[MovementChange, ...] = ()
    blocks: tuple[BlockChange, ...] = ()
    shifted: Weeks = ()
    consequence: Consequence = Consequence()

    @property
    def is_empty(self) -> bool:
        """True where nothing changes for the athlete."""
        told = (self.facts, self.rules, self.movements, self.blocks, self.shifted)
        seen = self.consequence
        return not any((*told, seen.muscles, seen.figures, seen.breaches))


@record
class Whole:
    """A plan that stands on one side only."""

    heading: Heading
    blocks: tuple[Stretched, ...]
    sessions: int
    sets: int


@record
class FileDifference:
    """Two files: the plans that both have, by name, and those that only one has."""

    pairs: tuple[Difference, ...]
    added: tuple[Whole, ...] = ()
    dropped: tuple[Whole, ...] = ()

    @property
    def is_empty(self) -> bool:
        """True where nothing changes for the athlete."""
        return not self.added and not self.dropped and all(pair.is_empty for pair in self.pairs)
