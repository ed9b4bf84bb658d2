"""Names, and values that may move over the weeks: items, tracks, segments, as written."""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from setwright.record import record
from setwright.source import Source, Span


@record
class Name:
    """A name or word where it was written; `text` is NFC-normalised and without quotes.

    `prefixed` where it was written with the prefix of an import, which `text` then begins with: `club.Back Squat`.
    `home` is the file whose imports it speaks of, where that is not the file that `span` shows (a template's argument);
    `given` is where such an argument stands.
    """

    text: str
    span: Span
    prefixed: bool = False
    home: Source | None = None
    given: Span | None = None


@record
class Given:
    """What a template's word stands for: its value where it is written, and as it reads in the word's place."""

    span: Span
    text: str


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
    given: Given | None = None  # of a template's word, once it has its value


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
