"""Lines of files, plans, blocks and days; the union of all lines; the statement that holds the lines under one."""

from __future__ import annotations

from datetime import date

from setwright.record import record
from setwright.source import Span
from setwright.syntax.nodes.libraries import (
    AvoidLine,
    AwayLine,
    BarLine,
    BestFromLine,
    BestLine,
    CountLine,
    DoneEntry,
    HandWeightsLine,
    MuscleGroupLine,
    PlatesLine,
    ProgressionLine,
    RuleLine,
    SessionHead,
    WaiveLine,
    WorksLine,
)
from setwright.syntax.nodes.numbers import Item, Name, RawSegment, RawTrack
from setwright.syntax.nodes.parts import Argument, Part, RestPart


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
class EaseInLine:
    """`ease-in after 14 days: sets 60%, load 85%`."""

    span: Span
    days: Item
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
    | EaseInLine
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
    | AwayLine
    | DoneEntry
    | SessionHead
    | ProgressionLine
    | Unread
)


@record
class Statement:
    """A line and the lines indented under it."""

    node: Node
    body: tuple[Statement, ...] = ()
