"""What follows the commas of a prescription."""

from __future__ import annotations

from setwright.record import record
from setwright.source import Span
from setwright.syntax.nodes.numbers import Item, Name, RawTrack


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
    """A named value: a template's or progression's parameter with its default, or what is given for it."""

    span: Span
    name: Name
    value: Item | Name | None
