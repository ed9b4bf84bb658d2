"""An athlete as data: bests, equipment, days. `link` makes it from a file, `fit` reads it."""

from __future__ import annotations

from datetime import date, time
from fractions import Fraction

from setwright.plan import EaseIn
from setwright.quantities import Mass, Unit
from setwright.record import record
from setwright.rules import Wish
from setwright.source import Span


@record
class Best:
    """A best in one movement: tested when `reps` is None, else to be estimated from a set.

    `reserve` is how many repetitions were left in that set (0 for a set to failure). `on` is the day of a best that a
    log tells of, and `trend_by` the model where it is the value of a trend on that day, not a test.
    """

    movement: str
    mass: Mass
    span: Span
    reps: Fraction | None = None
    reserve: Fraction = Fraction(0)
    on: date | None = None
    trend_by: str | None = None


@record
class Avoided:
    """What an athlete keeps away from: one movement, or every movement of a pattern."""

    what: str
    is_pattern: bool
    span: Span
    reason: str | None = None

    def __str__(self) -> str:
        return f"{self.what} ({self.reason})" if self.reason else self.what


@record
class OwnSwap:
    """An athlete's `swap A for B`, by the names that the library gives the two movements."""

    old: str
    new: str
    span: Span


@record
class Athlete:
    """Who the plan is printed for. Empty tuples mean that nothing was said."""

    name: str
    span: Span
    unit: Unit | None = None
    born: int | None = None
    bodyweight: Mass | None = None
    available: tuple[str, ...] = ()  # weekdays, in calendar order
    available_span: Span | None = None
    times: tuple[tuple[str | None, time], ...] = ()  # when sessions begin: on a weekday, or on all others (None)
    bar: Mass | None = None
    collars: Mass | None = None  # each
    plates: tuple[tuple[int, Mass], ...] = ()  # single discs
    dumbbells: tuple[Mass, ...] = ()
    kettlebells: tuple[Mass, ...] = ()
    has: tuple[str, ...] = ()
    avoids: tuple[Avoided, ...] = ()
    swaps: tuple[OwnSwap, ...] = ()
    bests: tuple[Best, ...] = ()
    bests_from_log: Span | None = None  # the line that says so
    model: str | None = None
    round_down: bool | None = None
    wishes: tuple[Wish, ...] = ()
    notes: tuple[str, ...] = ()
    ease_in: EaseIn | None = None
    lines: tuple[tuple[str, Span], ...] = ()  # where `bar`, `plates`, `dumbbells`, `kettlebells`, `has` are said

    def line_of(self, word: str) -> Span | None:
        """Where the athlete says what they have, by the word that begins the line."""
        return dict(self.lines).get(word)

    def time_on(self, weekday: str | None) -> time | None:
        """When a session on this weekday begins; None for the day or for the answer where it is not known."""
        times = dict(self.times)
        return times.get(weekday, times.get(None))

    @property
    def equipment(self) -> frozenset[str]:
        """The words of all equipment at hand: what `has` lists, and what the lines of bars and weights imply."""
        implied = {
            ("barbell",): bool(self.bar or self.plates),
            ("dumbbell", "dumbbells"): bool(self.dumbbells),
            ("kettlebell", "kettlebells"): bool(self.kettlebells),
        }
        return frozenset(self.has).union(*(words for words, there in implied.items() if there))
