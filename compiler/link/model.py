"""A plan after linking: names are things, blocks hold their days whole, numbers are typed but still tracks.

`link` makes it, `expand` lays it out in weeks. Frozen data only.
"""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from typing import TYPE_CHECKING, Generic, TypeVar

from setwright.diagnostics import Related
from setwright.plan import EaseIn, GroupKind, Movement
from setwright.prescription import Intensity, Reps, Rest, Tempo
from setwright.quantities import Unit
from setwright.record import record
from setwright.source import Span
from setwright.syntax.nodes import Tail, TrackKind

if TYPE_CHECKING:
    from setwright.progression import Progression

T = TypeVar("T")


@record
class Filled:
    """What a template's words came to: the text with the values of its call, and where those are given."""

    text: str
    places: tuple[Related, ...]


@record
class Track(Generic[T]):
    """A value over the working weeks of a block. RAMP holds first and last, STEPS the first and the step a week."""

    kind: TrackKind
    values: tuple[T, ...]
    span: Span
    tail: Tail = Tail.NONE
    whole: Span | None = None  # where more is written than the track: a sign, another movement's name
    filled: Filled | None = None  # in a template


@record
class LinkedSegment:
    """Sets that are alike, over the weeks. `sets` is None inside a circuit: the rounds say how many."""

    sets: Track[Fraction] | None
    reps: Track[Reps]
    intensity: Track[Intensity] | None
    span: Span
    is_drop: bool = False


@record
class WarmUpStep:
    """`60% x 5`: a percent of the first work set's load, and repetitions."""

    percent: Fraction
    reps: Reps
    span: Span


@record
class Modifiers:
    """What follows the commas. `warm_up` is None where none was asked for, empty where the plan's own is meant."""

    rest: Track[Rest] | None = None
    tempo: Tempo | None = None
    tempo_span: Span | None = None
    warm_up: tuple[WarmUpStep, ...] | None = None
    limit: Fraction | None = None  # RPE
    limit_span: Span | None = None
    pause: Fraction | None = None  # seconds
    every: Fraction | None = None  # seconds
    advance: str | None = None  # as written
    advance_span: Span | None = None
    progression: Progression | None = None
    test: bool = False
    optional: bool = False


@record
class WeeklyForm:
    """One line of the week-by-week form: the weeks of the block it is for, and what it prescribes."""

    weeks: tuple[int, ...]
    segments: tuple[LinkedSegment, ...]
    modifiers: Modifiers
    span: Span


@record
class LinkedGroup:
    """A superset or circuit; lines of one group share the object."""

    kind: GroupKind
    rounds: Track[Fraction] | None
    rest: Track[Rest] | None
    span: Span


@record
class LinkedLine:
    """A movement in a day. Either `segments` or `weekly` says what to do."""

    movement: Movement
    label: str | None
    segments: tuple[LinkedSegment, ...]
    weekly: tuple[WeeklyForm, ...]
    modifiers: Modifiers
    span: Span
    notes: tuple[str, ...] = ()
    swaps: tuple[str, ...] = ()
    group: LinkedGroup | None = None
    inherited: tuple[Related, ...] = ()
    named: tuple[Span, Related] | None = None  # the template's word for the movement, and what its call gives for it

    @property
    def key(self) -> tuple[str, str | None]:
        """What tells the lines of one day apart."""
        return self.movement.name, self.label


@record
class LinkedDay:
    """A day with all its lines, inherited ones included."""

    slot: str
    offset: int  # days from the first of the week
    label: str | None
    lines: tuple[LinkedLine, ...]
    notes: tuple[str, ...]
    span: Span


@record
class Deload:
    """How a week is lightened; None leaves a thing as it is."""

    sets: Fraction | None  # share: 1/2 for 50%
    load: Fraction | None
    effort: Fraction | None  # RPE cap
    span: Span


@record
class LinkedBlock:
    """A block with its days in order. `deloads` pairs a week of the block with its deload."""

    name: str
    weeks: int
    days: tuple[LinkedDay, ...]
    deloads: tuple[tuple[int, Deload], ...]
    limit: Fraction | None  # RPE
    limit_span: Span | None
    notes: tuple[str, ...]
    span: Span
    like: Related | None = None  # the place where it inherits its days
    weeks_known: bool = True  # False where a mistake leaves open which weeks are working ones


@record
class LinkedPlan:
    """One plan, still by block."""

    name: str
    span: Span
    unit: Unit
    blocks: tuple[LinkedBlock, ...]
    author: str | None = None
    start: date | None = None
    microcycle: int = 7
    deload_every: tuple[int, Deload] | None = None
    warm_up: tuple[WarmUpStep, ...] | None = None
    model: str | None = None
    round_down: bool = False
    notes: tuple[str, ...] = ()
    ease_in: EaseIn | None = None
    bests_from_log: Span | None = None
    sound: bool = True  # False where linking found errors: it is checked on, but not laid out
