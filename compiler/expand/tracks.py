"""A track's value in one working week of its block, rounded as the language says.

Sets and repetitions go to the nearest whole number, effort and percent to 0.5, halves up; loads stay exact until an
athlete's equipment is known.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TypeVar

from setwright.link.model import Track
from setwright.prescription import (
    Bodyweight,
    ChangeByMass,
    ChangeByPercent,
    Effort,
    PercentOfBest,
    Reps,
    Rest,
    Weight,
)
from setwright.quantities import Mass, round_half_up
from setwright.syntax.nodes import Tail, TrackKind

T = TypeVar("T")
HALF = Fraction(1, 2)


class OffScaleError(ValueError):
    """Steps that reach a value which cannot be prescribed; the message is that value as written."""


def fits(track: Track[T], working_weeks: int) -> bool:
    """True where a list is as long as it must be."""
    if track.kind is not TrackKind.SERIES or track.tail is not Tail.NONE:
        return True
    return len(track.values) == working_weeks


def value_in_week(track: Track[T], index: int, working_weeks: int) -> T:
    """The value in working week `index` (from 0) of `working_weeks`."""
    match track.kind:
        case TrackKind.FIXED:
            return track.values[0]
        case TrackKind.SERIES if track.tail is Tail.REPEAT:
            return track.values[index % len(track.values)]
        case TrackKind.SERIES:
            return track.values[min(index, len(track.values) - 1)]
        case TrackKind.RAMP:
            return _between(track.values[0], track.values[1], index, working_weeks)
        case TrackKind.STEPS:
            return _stepped(track.values[0], track.values[1], index)


def _between(first: T, last: T, index: int, working_weeks: int) -> T:
    if index == 0 or working_weeks < 2:
        return first
    if index >= working_weeks - 1:
        return last
    return _mixed(first, last, Fraction(index, working_weeks - 1))


def _mixed(first: T, last: T, share: Fraction) -> T:
    """The value `share` of the way from `first` to `last`."""

    def at(low: Fraction, high: Fraction) -> Fraction:
        return low + (high - low) * share

    mixed: object
    match first, last:
        case Fraction(), Fraction():
            mixed = round_half_up(at(first, last))
        case Reps(), Reps():
            low, high = round_half_up(at(first.low, last.low)), round_half_up(at(first.high, last.high))
            mixed = Reps(first.kind, low, high, (), first.per_side, first.minutes)
        case Effort(as_reserve=True), Effort():
            # Rounded on the scale it is written in: halves go up in repetitions in reserve.
            most = round_half_up(10 - at(first.low, last.low), HALF)
            least = round_half_up(10 - at(first.high, last.high), HALF)
            mixed = Effort(10 - most, 10 - least, as_reserve=True)
        case Effort(), Effort():
            mixed = Effort(round_half_up(at(first.low, last.low), HALF), round_half_up(at(first.high, last.high), HALF))
        case PercentOfBest(), PercentOfBest():
            mixed = PercentOfBest(round_half_up(at(first.percent, last.percent), HALF), first.of)
        case ChangeByPercent(), ChangeByPercent():
            mixed = ChangeByPercent(round_half_up(at(first.percent, last.percent), HALF))
        case Weight(), Weight():
            mixed = Weight(_mixed_mass(first.mass, last.mass, share), written=False)
        case ChangeByMass(), ChangeByMass():
            mixed = ChangeByMass(_mixed_mass(first.mass, last.mass, share))
        case Bodyweight(added=Mass() as low_mass), Bodyweight(added=Mass() as high_mass):
            mixed = Bodyweight(_mixed_mass(low_mass, high_mass, share), written=False)
        case Rest(), Rest():
            mixed = Rest(round_half_up(at(first.low, last.low)), round_half_up(at(first.high, last.high)))
        case _:
            raise TypeError(f"no way from {first!r} to {last!r}")
    return mixed  # type: ignore[return-value]


def _mixed_mass(first: Mass, last: Mass, share: Fraction) -> Mass:
    other = last.to(first.unit)
    return Mass(first.amount + (other.amount - first.amount) * share, first.unit)


def _stepped(first: T, step: T, index: int) -> T:
    """`first` and `index` times the step, exactly."""
    stepped: object
    match first, step:
        case Fraction(), Fraction():
            stepped = _on_scale(round_half_up(first + step * index), Fraction(1), Fraction(100))
        case Reps(), Reps():
            low, high = first.low + round_half_up(step.low * index), first.high + round_half_up(step.low * index)
            stepped = Reps(
                first.kind, _on_scale(low, Fraction(1), Fraction(50_000)), high, (), first.per_side, first.minutes
            )
        case Effort(as_reserve=True), Effort():
            low, high = first.low - step.low * index, first.high - step.low * index
            stepped = Effort(_on_scale(low, Fraction(1), Fraction(10)), high, as_reserve=True)
        case Effort(), Effort():
            low, high = first.low + step.low * index, first.high + step.low * index
            stepped = Effort(low, _on_scale(high, Fraction(1), Fraction(10)))
        case PercentOfBest(), PercentOfBest():
            value = _on_scale(first.percent + step.percent * index, Fraction(1, 100), Fraction(150))
            stepped = PercentOfBest(value, first.of)
        case ChangeByPercent(), ChangeByPercent():
            stepped = ChangeByPercent(_on_scale(first.percent + step.percent * index, Fraction(-99), Fraction(99)))
        case Weight(), Weight():
            stepped = Weight(first.mass.plus(step.mass.times(Fraction(index))))
        case ChangeByMass(), ChangeByMass():
            stepped = ChangeByMass(first.mass.plus(step.mass.times(Fraction(index))))
        case Bodyweight(added=Mass() as mass), Bodyweight(added=Mass() as step_mass):
            stepped = Bodyweight(mass.plus(step_mass.times(Fraction(index))))
        case Rest(), Rest():
            stepped = Rest(first.low + step.low * index, first.high + step.low * index)
        case _:
            raise TypeError(f"no steps from {first!r} by {step!r}")
    return stepped  # type: ignore[return-value]


def _on_scale(value: Fraction, least: Fraction, most: Fraction) -> Fraction:
    if not least <= value <= most:
        raise OffScaleError(str(value) if value.denominator == 1 else f"{float(value):g}")
    return value
