"""How much training is done, and how evenly: volume load, session load, monotony, strain, recent against usual load.

Comes in: sets, masses, minutes, efforts, daily loads. Goes out: exact numbers (roots to 18 places), or None where a
figure is not defined. All of them describe what was planned or done; none says whether that is too much.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import isqrt
from typing import Final

from setwright.quantities import Mass, Unit

ACUTE_DAYS: Final = 7
CHRONIC_DAYS: Final = 28
HIGHEST_SESSION_EFFORT: Final = Fraction(10)

_ROOT_SCALE: Final = 10**18


# ---- what was lifted -----------------------------------------------------------------------------


def volume_load(sets: Iterable[tuple[int, Fraction, Mass]]) -> Fraction:
    """The sum of sets x repetitions x load, in kilograms (a repetition lifts the load once).

    `sets` are triples of a number of sets, the repetitions of each and the load. Source: BMJ Military Health
    2020;168(4):314-319, table 1.
    """
    return sum((count * reps * load.to(Unit.KG).amount for count, reps, load in sets), Fraction(0))


def mean_load(sets: Iterable[tuple[int, Fraction, Mass]]) -> Fraction | None:
    """The load of the average repetition in kilograms: volume load / repetitions; None without repetitions.

    Source: BMJ Military Health 2020;168(4):314-319, table 1.
    """
    parts = tuple(sets)
    repetitions = sum((count * reps for count, reps, _ in parts), Fraction(0))
    return volume_load(parts) / repetitions if repetitions else None


def relative_intensity(load: Mass, best: Mass) -> Fraction:
    """A load as a share of the best for one repetition (1 is the best itself); units may differ.

    Raises `ValueError` for a best of nothing. Source: BMJ Military Health 2020;168(4):314-319, table 1.
    """
    if best.amount <= 0:
        raise ValueError("a best is more than nothing")
    return load.to(Unit.KG).amount / best.to(Unit.KG).amount


def density(volume_kg: Fraction, minutes: Fraction) -> Fraction:
    """Volume load a minute, in kilograms a minute (the source calls the unit arbitrary).

    Raises `ValueError` where no time passes. Source: BMJ Military Health 2020;168(4):314-319, table 1.
    """
    if minutes <= 0:
        raise ValueError("a session takes more than no time")
    return volume_kg / minutes


# ---- how hard a week is, and how even ------------------------------------------------------------


def session_load(minutes: Fraction, session_effort: Fraction) -> Fraction:
    """Minutes x the effort of the whole session, in arbitrary units.

    `session_effort` is on the 0 to 10 scale of a whole session, asked for about half an hour after it. That is another
    scale than the RPE of a set, which counts repetitions in reserve. Raises `ValueError` off that scale and for fewer
    than no minutes. Source: Foster C. Med Sci Sports Exerc 1998;30(7):1164-1168; Foster C et al. J Strength Cond Res
    2001;15(1):109-115.
    """
    if not 0 <= session_effort <= HIGHEST_SESSION_EFFORT:
        raise ValueError(f"the effort of a session is 0 to {HIGHEST_SESSION_EFFORT}, not {session_effort}")
    if minutes < 0:
        raise ValueError(f"a session does not take {minutes} minutes")
    return minutes * session_effort


def weekly_load(daily: Iterable[Fraction]) -> Fraction:
    """The sum of the days' loads, in their unit. A day's load is the sum of its sessions' (Foster 1998)."""
    return sum(daily, Fraction(0))


def sample_deviation(daily: Sequence[Fraction]) -> Fraction | None:
    """The standard deviation of the days' loads with n - 1 in the denominator; None for fewer than two days.

    The abstract of Foster 1998 does not say which deviation is meant. With n it would be smaller, and the monotony of
    seven days greater by the root of 7/6. Exact where the root is a fraction, else to 18 places.
    """
    if len(daily) < 2:
        return None
    mean = weekly_load(daily) / len(daily)
    return _root(sum(((load - mean) ** 2 for load in daily), Fraction(0)) / (len(daily) - 1))


def monotony(daily: Sequence[Fraction]) -> Fraction | None:
    """The mean of the days' loads / their standard deviation (n - 1); days of rest stand as 0.

    None where every day is the same, a week of rest included: then nothing can be divided by. Source: Foster 1998.
    """
    deviation = sample_deviation(daily)
    return weekly_load(daily) / len(daily) / deviation if deviation else None


def strain(daily: Sequence[Fraction]) -> Fraction | None:
    """The week's load x its monotony, in the unit of load; None where monotony is not defined. Source: Foster 1998."""
    even = monotony(daily)
    return None if even is None else weekly_load(daily) * even


# ---- recent load against usual load --------------------------------------------------------------
#
# These describe how load changed, and nothing else. They foretell no injury: Impellizzeri et al. 2020, Sports Med, doi
# 10.1007/s40279-020-01378-6.


def coupled_ratio(daily: Sequence[Fraction]) -> Fraction | None:
    """The mean load of the last 7 days / that of the last 28, which hold the 7.

    None for fewer than 28 days and after 28 days of rest. A change of load, not a risk. Source: Windt J, Gabbett TJ. Br
    J Sports Med 2019;53:988.
    """
    if len(daily) < CHRONIC_DAYS:
        return None
    return _ratio(_mean(daily[-ACUTE_DAYS:]), _mean(daily[-CHRONIC_DAYS:]))


def uncoupled_ratio(daily: Sequence[Fraction]) -> Fraction | None:
    """The mean load of the last 7 days / that of the 21 before them.

    None for fewer than 28 days and where those 21 are rest. A change of load, not a risk. Source: as `coupled_ratio`;
    Gabbett TJ et al. Int J Sports Med 2019;40:597-600.
    """
    if len(daily) < CHRONIC_DAYS:
        return None
    return _ratio(_mean(daily[-ACUTE_DAYS:]), _mean(daily[-CHRONIC_DAYS:-ACUTE_DAYS]))


def coupled_from_uncoupled(uncoupled: Fraction) -> Fraction:
    """The coupled ratio of the same four weeks: 4u / (u + 3), by algebra. It stays below 4."""
    return 4 * uncoupled / (uncoupled + 3)


def moving_loads(daily: Iterable[Fraction], days: int) -> tuple[Fraction, ...]:
    """Exponentially weighted moving averages, one a day: today x k + yesterday's average x (1 - k), k = 2 / (days + 1).

    The first day's average is its load, a convention. `days` is 7 for recent load and 28 for usual. Source: Williams S
    et al. Br J Sports Med 2017;51:209-210.
    """
    weight = Fraction(2, days + 1)
    averages: list[Fraction] = []
    for load in daily:
        before = averages[-1] if averages else load
        averages.append(load * weight + before * (1 - weight))
    return tuple(averages)


def moving_ratio(daily: Sequence[Fraction]) -> Fraction | None:
    """The moving average over 7 days / that over 28, on the last of the days; None without days and before any load.

    A week that repeats does not give 1. A change of load, not a risk. Source: Williams et al. 2017.
    """
    if not daily:
        return None
    return _ratio(moving_loads(daily, ACUTE_DAYS)[-1], moving_loads(daily, CHRONIC_DAYS)[-1])


def _mean(loads: Sequence[Fraction]) -> Fraction:
    return weekly_load(loads) / len(loads)


def _ratio(recent: Fraction, usual: Fraction) -> Fraction | None:
    return recent / usual if usual else None


def _root(value: Fraction) -> Fraction:
    """The square root, exact for squares of fractions, else cut after 18 places: the same on every machine."""
    top, bottom = isqrt(value.numerator), isqrt(value.denominator)
    if top * top == value.numerator and bottom * bottom == value.denominator:
        return Fraction(top, bottom)
    return Fraction(isqrt(value.numerator * _ROOT_SCALE**2 // value.denominator), _ROOT_SCALE)
