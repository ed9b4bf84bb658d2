"""The expanded plan: every week, session, line and segment, each knowing where it was written.

`expand` makes it, `fit` puts loads into it, and `check`, `report` and `render` read it. Frozen data only.
"""

from __future__ import annotations

from datetime import date, time
from enum import Enum
from fractions import Fraction

from setwright.diagnostics import Related
from setwright.prescription import Intensity, Reps, Rest, Tempo
from setwright.quantities import Mass, Unit, plain
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


class Quantity(Enum):
    """Which value of a line or a session a step is about."""

    SETS = "sets"
    REPS = "reps"
    INTENSITY = "intensity"
    LOAD = "load"
    REST = "rest"
    TEMPO = "tempo"
    MOVEMENT = "movement"
    DAY = "day"
    DATE = "date"


class Cause(Enum):
    """What made a value what it is. Each step of a cause follows from its `before` and its `facts` alone."""

    PARAMETER = "parameter"  # a template's words, filled by its call: text to text
    WRITTEN = "written"  # text, read; what is not written counts as one set
    TRACK = "track"  # text over weeks, read off. week, of: which working week of how many
    PROGRESSION = "progression"  # goes on. exposure: which in the block; done, on: the last that was done
    LIMIT = "limit"  # most: the RPE that is not passed
    DELOAD = "deload"  # share: what is left of sets or load; most: as of a limit. `effort_before`: see `Segment`
    EMPHASIS = "emphasis"
    SUBSTITUTION = "substitution"  # another movement, or a load that was chosen for another one
    LOAD = "load"  # a stated load as a mass
    BEST = "best"  # share of best. By effort: reps, to_failure, model. Where the best is no tested one: from a set
    CHANGE = "change"  # against the load of the segment before, as it is on the bar: load_before
    WARM_UP = "warm-up"  # against the load of the first work set: work_load
    ROUNDING = "rounding"  # to what the equipment makes. by, step, down, most
    EQUIPMENT = "equipment"  # the equipment makes no more, or no less
    AVAILABLE = "available"  # the days an athlete has
    AWAY = "away"  # the plan waited: date to date


StepValue = int | Reps | Intensity | Mass | Rest | Tempo | str | None
Fact = tuple[str, StepValue | Fraction]


@record
class Step:
    """One change of one value: what did it, from what, to what, by which line.

    The steps of a quantity are a chain: the first `before` is text as written (of a load: the intensity that it is
    worked out from), every `after` is the next `before`, and the last `after` is the value. They are kept as values,
    since most are never told.
    """

    quantity: Quantity
    cause: Cause
    before: StepValue
    after: StepValue
    span: Span
    facts: tuple[Fact, ...] = ()
    related: tuple[Related, ...] = ()  # where what the facts speak of is written

    @property
    def told_before(self) -> str:
        """`before` as text."""
        return told(self.before)

    @property
    def told_after(self) -> str:
        """`after` as text."""
        return told(self.after)

    def fact(self, name: str) -> StepValue | Fraction:
        """A fact by its name; None where the step has none of that name."""
        return next((value for known, value in self.facts if known == name), None)


def told(value: StepValue | Fraction) -> str:
    """A value of a step as text: `4 sets`, `8-10`, `RPE 8`, `62.5 kg`; `no load` where one was taken out."""
    match value:
        case None:
            return "no load"
        case int():
            return "1 set" if value == 1 else f"{value} sets"
        case Fraction():
            return plain(value)
        case _:
            return str(value)


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
    lightened: Span | None = None  # the deload that left `load_factor`
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
    steps: tuple[Step, ...] = ()  # of its rest, tempo and movement

    @property
    def work(self) -> tuple[Segment, ...]:
        """The segments that count as training: all but warm-ups."""
        return tuple([segment for segment in self.segments if segment.kind is not SegmentKind.WARM_UP])

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
    at: time | None = None  # of day, as the athlete says
    steps: tuple[Step, ...] = ()  # of its day and date, where an athlete has other days or was away
    left_out: bool = False  # the athlete is away, and the plan does not wait


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
class EaseIn:
    """What the first week after so many days without a session is lightened by; None leaves a thing as it is."""

    days: int
    sets: Fraction | None  # share
    load: Fraction | None  # share
    effort: Fraction | None  # RPE cap
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
    athlete_bests: tuple[tuple[str, Mass], ...] = ()  # a movement of the plan and its best, exact, tested or estimated
    notes: tuple[str, ...] = ()
    model: str | None = None  # the repetition-maximum model by name; None for the default
    bests_from_log: Span | None = None  # the line that asks for it
    round_down: bool = False
    ease_in: EaseIn | None = None

    @property
    def per_seven_days(self) -> Fraction:
        """What a count over one microcycle is multiplied by to mean per 7 days."""
        return Fraction(7, self.microcycle)
