"""Lines of rules, libraries, athletes, logs and progressions."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

from setwright.record import record
from setwright.source import Span
from setwright.syntax.nodes.numbers import Item, Name, RawSegment


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
class DoneEntry:
    """An entry of a session in its plainest form, its parts as written: `70 kg`, `5, 5, 4`, `8.5`."""

    span: Span
    movement: Name
    load: str | None
    reps: str
    effort: str | None


@record
class AwayLine:
    """`away 2027-02-08 to 2027-02-14 "Travel", shift`; a day is None when the calendar has no such day."""

    span: Span
    first: date | None
    last: date | None
    reason: str | None
    shifts: bool


@record
class SessionHead:
    """`session 2027-01-04 Mon`; `week` and `slot` where it says what it was for: `for week 1 Mon`."""

    span: Span
    day: date | None  # None when the calendar has no such day
    weekday: Name | None
    week: int | None = None
    slot: Name | None = None


@record
class Operand:
    """What a result is compared with: a number, an effort, `top`, `target + 1`; `sign` is 0 where nothing is added."""

    span: Span
    mark: Name | None
    sign: int
    item: Item | None


@record
class Condition:
    """`all sets >= top`, `effort >= target + 1`; `subject` is its first word."""

    span: Span
    subject: str
    compare: str
    operand: Operand


@record
class ActionPart:
    """`load + step`, `reps = bottom`, `hold`; `how` is `+`, `-` or a comparison as written."""

    span: Span
    word: str
    how: str = ""
    item: Item | None = None


@record
class ProgressionLine:
    """A `when` line of a progression, or `otherwise`, which has no condition."""

    span: Span
    condition: Condition | None
    times: Item | None
    actions: tuple[ActionPart, ...]
