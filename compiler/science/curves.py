"""The shapes that published repetition formulas have, each with its inverse.

Comes in: the constants of a formula. Goes out: a `Curve`, both ways between repetitions and share of the best load.
"""

from __future__ import annotations

from bisect import bisect_left
from fractions import Fraction
from math import exp, log
from typing import TYPE_CHECKING

from setwright.record import record

if TYPE_CHECKING:
    from collections.abc import Callable


@record
class Curve:
    """How the share (0 to 1) of the best load falls as repetitions to failure rise.

    `share` takes repetitions, `reps` is its inverse. Neither minds where the formula stops making sense.
    """

    share: Callable[[Fraction], Fraction]
    reps: Callable[[Fraction], Fraction]


def hyperbola(divisor: Fraction) -> Curve:
    """The curve of best = load (1 + reps / divisor), exact."""
    return Curve(
        share=lambda reps: divisor / (divisor + reps),
        reps=lambda share: divisor * (1 / share - 1),
    )


def line(start: Fraction, fall: Fraction) -> Curve:
    """The curve of share = start - fall x reps, exact."""
    return Curve(
        share=lambda reps: start - fall * reps,
        reps=lambda share: (start - share) / fall,
    )


def power(exponent: float) -> Curve:
    """The curve of share = reps ^ -exponent, in double precision."""
    return Curve(
        share=lambda reps: Fraction(float(reps) ** -exponent),
        reps=lambda share: Fraction(float(share) ** (-1 / exponent)),
    )


def decay(floor: float, height: float, rate: float) -> Curve:
    """The curve of share = floor + height x e^(-rate x reps), in double precision; it never comes down to `floor`."""
    return Curve(
        share=lambda reps: Fraction(floor + height * exp(-rate * float(reps))),
        reps=lambda share: Fraction(-log((float(share) - floor) / height) / rate),
    )


def printed(rows: tuple[tuple[Fraction, Fraction], ...]) -> Curve:
    """The curve through a printed table's rows (repetitions, share), straight between them and exact."""
    from_below = tuple((share, reps) for reps, share in reversed(rows))
    return Curve(
        share=lambda reps: _between(rows, reps),
        reps=lambda share: _between(from_below, share),
    )


def mean(curves: tuple[Curve, ...], until: Fraction) -> Curve:
    """The curve of the plain mean of other curves' shares; its inverse is searched for from 1 up to `until`."""

    def share(reps: Fraction) -> Fraction:
        return sum((curve.share(reps) for curve in curves), Fraction(0)) / len(curves)

    def reps(wanted: Fraction) -> Fraction:
        low, high = Fraction(1), until
        # 48 halvings bring the 36 repetitions between the ends below 1e-12.
        for _ in range(48):
            middle = (low + high) / 2
            low, high = (middle, high) if share(middle) >= wanted else (low, middle)
        return low

    return Curve(share, reps)


def _between(points: tuple[tuple[Fraction, Fraction], ...], x: Fraction) -> Fraction:
    """The height at `x` of the straight lines through `points`, which stand in rising x and enclose it."""
    after = max(1, bisect_left(points, x, key=lambda point: point[0]))
    (x0, y0), (x1, y1) = points[after - 1], points[after]
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
