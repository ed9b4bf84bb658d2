"""The vocabulary of a prescription: repetitions, effort, loads, rest, tempo, as values that know how to be written.

The same values stand in the syntax tree (inside tracks) and in the expanded plan.
"""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from setwright.quantities import Mass, Unit, plain
from setwright.record import record


class RepsKind(Enum):
    """What a set is measured in."""

    COUNT = "count"
    AT_LEAST = "at least"
    MAX = "max"
    SECONDS = "seconds"
    METRES = "metres"
    CLUSTER = "cluster"


@record
class Reps:
    """How long one set is. `low` and `high` are repetitions, seconds or metres by `kind`; 0 for `max`.

    `parts` are a cluster's small sets. `minutes` says that a time was written in minutes.
    """

    kind: RepsKind
    low: Fraction = Fraction(0)
    high: Fraction = Fraction(0)
    parts: tuple[int, ...] = ()
    per_side: bool = False
    minutes: bool = False

    def __str__(self) -> str:
        return self._amount() + ("/side" if self.per_side else "")

    def _amount(self) -> str:
        match self.kind:
            case RepsKind.COUNT:
                return _range(self.low, self.high)
            case RepsKind.AT_LEAST:
                return f"{plain(self.low)}+"
            case RepsKind.MAX:
                return "max"
            case RepsKind.SECONDS if self.minutes and self.low % 30 == 0 and self.high % 30 == 0:
                return _range(self.low / 60, self.high / 60) + " min"
            case RepsKind.SECONDS:
                return _range(self.low, self.high) + " s"
            case RepsKind.METRES:
                return _range(self.low, self.high) + " m"
            case RepsKind.CLUSTER:
                return "(" + "+".join(str(part) for part in self.parts) + ")"

    @property
    def is_repetitions(self) -> bool:
        """True where the set is a known number of repetitions (not time, distance or `max`)."""
        return self.kind in (RepsKind.COUNT, RepsKind.AT_LEAST, RepsKind.CLUSTER)

    @property
    def to_failure(self) -> bool:
        """True where the set goes on as long as it can unless an effort is stated."""
        return self.kind in (RepsKind.MAX, RepsKind.AT_LEAST)


@record
class Effort:
    """A target effort on the RPE scale, low to high; `as_reserve` when written in repetitions in reserve."""

    low: Fraction
    high: Fraction
    as_reserve: bool = False

    def __str__(self) -> str:
        if self.as_reserve:
            return f"{_range(10 - self.high, 10 - self.low)} RIR"
        return f"RPE {_range(self.low, self.high)}"


@record
class PercentOfBest:
    """A percent (80 means 80%) of the athlete's best in this movement, or in the one named."""

    percent: Fraction
    of: str | None = None

    def __str__(self) -> str:
        return f"{plain(self.percent)}%" + (f" of {self.of}" if self.of else "")


@record
class Weight:
    """A load in kilograms or pounds. `written` is False when it was worked out (a ramp, a deload), so it is rounded."""

    mass: Mass
    written: bool = True

    def __str__(self) -> str:
        return str(self.mass)


@record
class Bodyweight:
    """The athlete's own weight, with mass added (positive) or taken off by a machine or band (negative)."""

    added: Mass | None = None
    written: bool = True

    def __str__(self) -> str:
        if self.added is None or self.added.amount == 0:
            return "bodyweight"
        sign = "+" if self.added.amount > 0 else "-"
        return f"bodyweight {sign} {Mass(abs(self.added.amount), self.added.unit)}"


@record
class ChangeByPercent:
    """Relative to the load of the segment before, as it is on the bar: -8 means 8% less."""

    percent: Fraction

    def __str__(self) -> str:
        return f"{_signed(self.percent)}%"


@record
class ChangeByMass:
    """Relative to the load of the segment before: a mass added or taken off."""

    mass: Mass

    def __str__(self) -> str:
        return f"{_signed(self.mass.amount)} {self.mass.unit.value}"


Intensity = Effort | PercentOfBest | Weight | Bodyweight | ChangeByPercent | ChangeByMass


@record
class Rest:
    """Rest between sets, in seconds, low to high."""

    low: Fraction
    high: Fraction

    def __str__(self) -> str:
        if self.low % 30 == 0 and self.high % 30 == 0 and self.low >= 120:
            return f"{_range(self.low / 60, self.high / 60)} min"
        return f"{_range(self.low, self.high)} s"


@record
class Tempo:
    """Seconds lowering, at the bottom, lifting, at the top; None is `X`, as fast as possible."""

    phases: tuple[int | None, int | None, int | None, int | None]

    def __str__(self) -> str:
        return "-".join("X" if phase is None else str(phase) for phase in self.phases)


def _range(low: Fraction, high: Fraction) -> str:
    return plain(low) if low == high else f"{plain(low)}-{plain(high)}"


def _signed(value: Fraction) -> str:
    return ("+" if value >= 0 else "") + plain(value)


__all__ = [
    "Bodyweight",
    "ChangeByMass",
    "ChangeByPercent",
    "Effort",
    "Intensity",
    "PercentOfBest",
    "Reps",
    "RepsKind",
    "Rest",
    "Tempo",
    "Unit",
    "Weight",
]
