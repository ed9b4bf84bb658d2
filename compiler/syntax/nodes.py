"""The syntax tree: one frozen node a line, as written, with spans. No names are looked up here.

`builder` makes the nodes, `parser` stacks them into `Statement`s by indentation, `link` reads them.
"""

from __future__ import annotations

from datetime import date
from enum import Enum
from fractions import Fraction

from setwright.record import record
from setwright.source import Span


@record
class Name:
    """A name or word where it was written; `text` is NFC-normalised and without quotes."""

    text: str
    span: Span


# ---- numbers -------------------------------------------------------------------------------------


@record
class Item:
    """One value as written: `8`, `8-10`, `5+`, `max`, `(2+2+2)`, `RPE 7.5`, `60 kg`, or a template's word."""

    span: Span
    low: Fraction | None = None
    high: Fraction | None = None
    at_least: bool = False
    is_max: bool = False
    cluster: tuple[int, ...] = ()
    word: str | None = None
    rpe: bool = False
    unit: str | None = None
    per_side: bool = False


class TrackKind(Enum):
    """How a value moves over the working weeks of its block."""

    FIXED = "fixed"
    RAMP = "ramp"
    STEPS = "steps"
    SERIES = "series"


class Tail(Enum):
    """What a series does past its last value."""

    NONE = ""
    HOLD = "..."
    REPEAT = "repeat"


@record
class RawTrack:
    """A track of items; RAMP holds first and last, STEPS the first value and the step a week."""

    kind: TrackKind
    items: tuple[Item, ...]
    span: Span
    tail: Tail = Tail.NONE


@record
class RawBodyweight:
    """`bodyweight`, or with a signed track added to it."""

    span: Span
    sign: int = 0
    track: RawTrack | None = None


@record
class RawChange:
    """`-8%` or `+5 kg`: relative to the segment before."""

    span: Span
    sign: int
    track: RawTrack


@record
class RawIntensity:
    """A track as an intensity, `of` another movement's best where said."""

    span: Span
    track: RawTrack
    of: Name | None = None


@record
class RawSegment:
    """`4 x 8 @ 75%`; without `sets` inside a circuit; `sets` is a load in a session entry or a best."""

    span: Span
    sets: RawTrack | RawBodyweight | None
    reps: RawTrack
    intensity: RawIntensity | RawBodyweight | RawChange | None
    is_drop: bool = False


# ---- parts of a prescription ---------------------------------------------------------------------


@record
class Loose:
    """A part that belongs to the part before it: a warm-up step `60% x 5`, or a set's repetitions in a log."""

    span: Span
    first: Item
    reps: Item | None = None
    effort: Item | None = None


@record
class RestPart:
    """`rest 2-3 min`, `rest 2:30`."""

    span: Span
    track: RawTrack | None
    clock_seconds: int | None = None


@record
class TempoPart:
    """`tempo 3-1-1-0`: lowering, bottom, lifting, top; None for X."""

    span: Span
    phases: tuple[int | None, ...]


@record
class WarmUpPart:
    """`warm-up`, alone or with its first step; more steps follow as `Loose` parts."""

    span: Span
    first: Loose | None


@record
class ItemPart:
    """`limit RPE 9`, `limit effort RPE 8`, `pause 20 s`, `every 90 s`, by `word`."""

    span: Span
    word: str
    item: Item


@record
class AdvancePart:
    """`advance double-climb(step: 2.5 kg)`."""

    span: Span
    rule: Name
    arguments: tuple[Argument, ...] = ()


@record
class FlagPart:
    """`test` or `optional`."""

    span: Span
    word: str


Part = Loose | RestPart | TempoPart | WarmUpPart | ItemPart | AdvancePart | FlagPart


@record
class Argument:
    """A named value: a template's or progression's parameter, or what is given for it."""

    span: Span
    name: Name
    value: Item | Name


# ---- lines ---------------------------------------------------------------------------------------


@record
class Setting:
    """A keyword with plain values: `author "..."`, `units kg`, `start 2027-01-04`, `has barbell, rack`."""

    span: Span
    word: str
    values: tuple[Name | Item | date, ...]


@record
class LanguageLine:
    span: Span
    version: int


@record
class UseLine:
    """`use "file.plan"` or `use stdlib.rules.strength`; exactly one of `file` and `path` is set."""

    span: Span
    file: Name | None
    path: Name | None
    prefix: Name | None = None


@record
class Head:
    """A declaration that opens with a word and a name: `plan`, `template`, `athlete`, `rules`, `muscle`, `equipment`,
    `exercise`, `progression`. `like` is an exercise's model, `title` a muscle's or equipment's display name, `source`
    the template of a plan."""

    span: Span
    word: str
    name: Name
    like: Name | None = None
    title: str | None = None
    source: Name | None = None
    arguments: tuple[Argument, ...] = ()


@record
class BlockHead:
    span: Span
    name: Name
    weeks: Item | None
    like: Name | None


@record
class DayHead:
    span: Span
    slot: Name
    label: str | None
    like: Name | None


@record
class GroupHead:
    """`superset` or `circuit N rounds`; `added` inside an inherited day."""

    span: Span
    word: str
    rounds: RawTrack | None
    rest: RestPart | None
    added: bool = False
    place: Place | None = None


@record
class MovementName:
    """A movement with its label where one was written; `is_word` marks a template's parameter."""

    name: Name
    label: str | None
    span: Span
    is_word: bool = False


@record
class Place:
    """`after NAME` or `before NAME`."""

    word: str
    movement: MovementName


@record
class Prescription:
    """What stands after the colon: segments joined by `then`, and parts after commas."""

    span: Span
    segments: tuple[RawSegment, ...] = ()
    parts: tuple[Part, ...] = ()


@record
class Entry:
    """`Back Squat: 4 x 5 @ 80%, rest 3 min`, with `add` and a place inside inherited days."""

    span: Span
    movement: MovementName
    prescription: Prescription
    added: bool = False
    place: Place | None = None


@record
class WeekEntry:
    """`weeks 3-4: 3 x 3 @ 85%` under an entry."""

    span: Span
    weeks: tuple[Item, ...]
    prescription: Prescription


@record
class DropLine:
    """`drop Plank`, or `drop day Wed` with `slot`."""

    span: Span
    movement: MovementName | None
    slot: Name | None = None


@record
class SwapLine:
    """`swap A for B`."""

    span: Span
    old: Name
    new: Name


@record
class SwapForLine:
    """`swap for A, B`: what may stand in."""

    span: Span
    names: tuple[Name, ...]


@record
class ModifierLine:
    """A modifier on a line of its own, with what belongs to it."""

    span: Span
    parts: tuple[Part, ...]


@record
class NoteLine:
    span: Span
    text: str


@record
class DeloadLine:
    """`deload week 4: sets 50%, load 90%, effort RPE 6`; `every` for a plan's `deload every 4 weeks`."""

    span: Span
    weeks: tuple[Item, ...]
    every: Item | None
    scalings: tuple[tuple[str, Item], ...]


@record
class FollowLine:
    span: Span
    names: tuple[Name, ...]


@record
class EmphasisLine:
    span: Span
    muscle: Name
    sign: int
    sets: Item


@record
class SubjectPart:
    """Whom a rule is for: `every muscle`, named ones, or a ratio `a : b`."""

    kind: str  # "every", "some", "ratio"
    names: tuple[Name, ...] = ()


@record
class WherePart:
    """`in weeks 1-2`, `in every week`, `in block Build`, `after 6 sets`."""

    kind: str  # "weeks", "every", "block", "after"
    items: tuple[Item, ...] = ()
    block: Name | None = None


@record
class RuleLine:
    span: Span
    word: str
    measure: Name
    subject: SubjectPart | None
    compare: str | None
    bound: Item
    where: tuple[WherePart, ...]
    reason: str | None


@record
class WaiveLine:
    span: Span
    measure: Name
    subject: SubjectPart | None
    where: tuple[WherePart, ...]
    reason: str | None


@record
class CountLine:
    """`count fractional` or `count from RPE 6`."""

    span: Span
    how: Name | None
    start: Item | None


@record
class MuscleGroupLine:
    span: Span
    name: Name
    title: str | None
    members: tuple[Name, ...]


@record
class WorksLine:
    span: Span
    credits: tuple[tuple[Name, Fraction], ...]


@record
class BestFromLine:
    span: Span
    source: Name
    percent: Item


@record
class BarLine:
    span: Span
    mass: Item
    collars: Item | None


@record
class PlatesLine:
    """`plates 2x20, 4x2.5 kg`: count, size, and unit where one was written."""

    span: Span
    plates: tuple[tuple[int, Fraction, str | None], ...]


@record
class HandWeightsLine:
    """`dumbbells 2-30 kg by 2 kg`, or a list."""

    span: Span
    word: str
    items: tuple[Item, ...]
    by: Item | None


@record
class BestLine:
    span: Span
    movement: Name
    segment: RawSegment


@record
class AvoidLine:
    span: Span
    what: Name
    reason: str | None


@record
class SessionHead:
    span: Span
    day: date | None  # None when the calendar has no such day
    weekday: Name | None


@record
class ProgressionLine:
    """A `when` or `otherwise` line of a progression; read, not applied yet."""

    span: Span
    text: str


@record
class Unread:
    """A line that could not be read; it keeps its place so that lines under it are still read."""

    span: Span


Node = (
    Setting
    | LanguageLine
    | UseLine
    | Head
    | BlockHead
    | DayHead
    | GroupHead
    | Entry
    | WeekEntry
    | DropLine
    | SwapLine
    | SwapForLine
    | ModifierLine
    | NoteLine
    | DeloadLine
    | FollowLine
    | EmphasisLine
    | RuleLine
    | WaiveLine
    | CountLine
    | MuscleGroupLine
    | WorksLine
    | BestFromLine
    | BarLine
    | PlatesLine
    | HandWeightsLine
    | BestLine
    | AvoidLine
    | SessionHead
    | ProgressionLine
    | Unread
)


@record
class Statement:
    """A line and the lines indented under it."""

    node: Node
    body: tuple[Statement, ...] = ()
