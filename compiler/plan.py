"""The expanded plan: every week, session, line and segment, each knowing where it was written.

`expand` makes it, `fit` puts loads into it, and `check`, `report` and `render` read it. Frozen data only.
"""

from __future__ import annotations

from datetime import date
from enum import Enum
from fractions import Fraction

from setwright.diagnostics import Related
from setwright.prescription import Intensity, Reps, Rest, Tempo
from setwright.quantities import Mass, Unit
from setwright.record import record
from setwright.source import Span

WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


@record
class Muscle:
    """A muscle the plan counts sets for: its word in the language and its name on sheets."""

    word: str
    title: str


@record
class Movement:
    """An exercise as its library declares it. `works` pairs a muscle's word with the share of a set it is credited."""

    name: str
    span: Span
    pattern: str | None = None
    needs: tuple[str, ...] = ()
    works: tuple[tuple[str, Fraction], ...] = ()
    swaps: tuple[str, ...] = ()
    cue: str | None = None
    best_from: tuple[str, Fraction] | None = None  # another movement and the percent of its best
    model: str | None = None
    handling: Handling | None = None  # how its load is made, by the equipment it needs


class Handling(Enum):
    """How a load is made up and what the number on the sheet means."""

    BAR = "bar"  # the athlete's bar and pairs of plates
    OTHER_BAR = "other-bar"  # a bar whose own mass no line states, and pairs of plates
    PAIR = "pair"  # one in each hand; the load is per hand
    ONE = "one"  # a single dumbbell or kettlebell
    STACK = "stack"  # a machine's or cable's stack


class SegmentKind(Enum):
    """What a segment is for."""

    WORK = "work"
    WARM_UP = "warm-up"
    DROP = "drop"
    TEST = "test"


@record
class Step:
    """One change a number went through after it was written: what did it, from what, to what, by which line."""

    what: str  # "track", "deload", "limit", "emphasis", "substitution", "load", "rounding"
    before: str
    after: str
    span: Span


@record
class Load:
    """What to put on: the mass as it is handled (per hand for PAIR) and, for a bar, the discs on one side.

    `model` names the repetition-maximum model that the mass rests on; None where it was written, or is a percent of a
    tested best. `spread` is the least and the greatest load by the published formulas, as they can be loaded, where one
    of them lies more than one step from the mass.
    """

    mass: Mass
    handling: Handling | None = None
    per_side: tuple[Fraction, ...] | None = None  # heaviest first, in `mass.unit`; None where no discs are known
    bar: Mass | None = None  # with its collars
    model: str | None = None
    spread: tuple[Mass, Mass] | None = None


@record
class Segment:
    """Sets that are alike: `3 x 5 @ 80%`. `load` is None until an athlete is fitted, or when it stays unknown.

    `load_factor` is the share of its load that a deload left (1 elsewhere); an effort's load is scaled by it.
    """

    kind: SegmentKind
    sets: int
    reps: Reps
    intensity: Intensity | None
    span: Span
    load_factor: Fraction = Fraction(1)
    effort_before: Fraction | None = None  # the RPE before a deload lowered it; its load times the factor is a ceiling
    load: Load | None = None
    steps: tuple[Step, ...] = ()


class GroupKind(Enum):
    """How lines of a session are done together."""

    SUPERSET = "superset"
    CIRCUIT = "circuit"


@record
class Group:
    """A superset or circuit in one session: its letter, and rest after each round."""

    kind: GroupKind
    letter: str
    rest: Rest | None = None
    rounds: int | None = None  # of a circuit


@record
class Line:
    """One movement in one session of one week.

    `segments` holds warm-ups first, then work in order. `rest` falls back to the group's.
    `inherited` names the places through which the line came (`like`), nearest first.
    """

    movement: Movement
    segments: tuple[Segment, ...]
    span: Span
    label: str | None = None
    rest: Rest | None = None
    tempo: Tempo | None = None
    every: Fraction | None = None  # seconds; a set starts each
    pause: Fraction | None = None  # seconds inside a cluster
    optional: bool = False
    advance: str | None = None  # the progression as written
    advance_words: str | None = None  # the progression's rule in plain words
    projected: bool = False  # what follows if all goes to plan, not what was written for this week
    instead_of: str | None = None  # the movement that the plan asked for, where an athlete does another
    notes: tuple[str, ...] = ()
    swaps: tuple[str, ...] = ()
    group: Group | None = None
    inherited: tuple[Related, ...] = ()

    @property
    def work(self) -> tuple[Segment, ...]:
        """The segments that count as training: all but warm-ups."""
        return tuple(segment for segment in self.segments if segment.kind is not SegmentKind.WARM_UP)

    @property
    def sets(self) -> int:
        """Work sets, warm-ups left out."""
        return sum(segment.sets for segment in self.work)

    @property
    def is_test(self) -> bool:
        """True where the line tests a best."""
        return any(segment.kind is SegmentKind.TEST for segment in self.segments)


@record
class Session:
    """One day's training. `slot` is as written (`Mon`, `3`); `offset` counts days from the week's first."""

    slot: str
    offset: int
    lines: tuple[Line, ...]
    span: Span
    label: str | None = None
    date: date | None = None
    notes: tuple[str, ...] = ()


class WeekKind(Enum):
    """What a week is for; rules leave deload and test weeks out of weekly figures."""

    WORKING = "working"
    DELOAD = "deload"
    TEST = "test"


@record
class Week:
    """One week (or one microcycle, when the plan sets another length), numbered from 1 through the whole plan."""

    number: int
    block: str
    number_in_block: int
    kind: WeekKind
    sessions: tuple[Session, ...]
    span: Span
    start: date | None = None
    notes: tuple[str, ...] = ()  # the block's notes, in its first week only


@record
class BlockSpan:
    """A block as a stretch of weeks, for time lines."""

    name: str
    first_week: int
    last_week: int
    span: Span


@record
class Plan:
    """A whole plan, expanded; after `fit` it belongs to one athlete and carries loads."""

    name: str
    span: Span
    unit: Unit
    weeks: tuple[Week, ...]
    blocks: tuple[BlockSpan, ...]
    muscles: tuple[Muscle, ...]  # all known muscles, in library order
    groups: tuple[tuple[str, tuple[str, ...]], ...]  # group word and its muscles' words
    author: str | None = None
    start: date | None = None
    microcycle: int = 7  # days
    athlete: str | None = None
    athlete_born: int | None = None  # the year
    athlete_facts: tuple[tuple[str, str], ...] = ()  # "Back Squat best", "92.5 kg (tested)": printed on the overview
    notes: tuple[str, ...] = ()
    model: str | None = None  # the repetition-maximum model by name; None for the default
    round_down: bool = False

    @property
    def per_seven_days(self) -> Fraction:
        """What a count over one microcycle is multiplied by to mean per 7 days."""
        return Fraction(7, self.microcycle)
