"""Repetition models: how heavy a load is that one can lift so many times, as a share of one's best.

Comes in: a model, repetitions to failure (repetitions done plus those in reserve). Goes out: shares, estimated bests.
"""

from __future__ import annotations

from enum import Enum
from fractions import Fraction
from typing import TYPE_CHECKING, Final

from setwright.science.curves import Curve, decay, hyperbola, line, mean, power, printed

if TYPE_CHECKING:
    from collections.abc import Callable

    from setwright.quantities import Mass

# Estimates from more repetitions than this get unreliable (Reynolds, Gordon & Robergs 2006, J Strength Cond Res
# 20(3):584-592: linear equations should use no more than 10).
RELIABLE_REPS: Final = Fraction(10)

# No formula is asked at or past this: Brzycki has its pole here, Lander just after, and none was made for such sets.
LIMIT_REPS: Final = Fraction(37)

# Past its last row a printed table says nothing, and to hold that row would prescribe loads that are too heavy.
LAST_TABLE_REPS: Final = Fraction(15)


class Model(Enum):
    """A published relation of load w, repetitions to failure r and the best for one repetition.

    The values are the language's words. At r = 1 most formulas would give more than w; here every model gives w
    (see `share_of_best`), so that a best is its own estimate.
    """

    EPLEY = "epley"
    """best = w (1 + r/30). Epley B. Poundage chart. Lincoln, NE: Body Enterprises; 1985. Some books print 0.033 for
    1/30, which gives 299.25 for 225 x 10 instead of 300."""

    BRZYCKI = "brzycki"
    """best = 36 w / (37 - r). Brzycki M. J Phys Educ Recreat Dance 1993;64:88-90, printed as w / (1.0278 - 0.0278 r),
    which is the same rounded."""

    LANDER = "lander"
    """best = 100 w / (101.3 - 2.67123 r). Lander J. NSCA Journal 1985;6:60-61."""

    LOMBARDI = "lombardi"
    """best = w r^0.10. Lombardi VP. Beginning Weight Training. Dubuque, IA: W.C. Brown; 1989."""

    MAYHEW = "mayhew"
    """best = 100 w / (52.2 + 41.9 e^(-0.055 r)). Mayhew JL et al. J Appl Sport Sci Res 1992;6:200-206."""

    OCONNER = "oconner"
    """best = w (1 + r/40). O'Conner B, Simmons J, O'Shea P. Weight Training Today. St Paul, MN: West; 1989."""

    WATHAN = "wathan"
    """best = 100 w / (48.8 + 53.8 e^(-0.075 r)). Wathan D. Load assignment. In: Baechle TR (ed.), Essentials of
    Strength Training and Conditioning. Human Kinetics; 1994:435-446."""

    TABLE = "table"
    """The printed table of Haff GG, Triplett NT (eds.), Essentials of Strength Training and Conditioning, 4th ed.,
    Human Kinetics; 2016. Between rows (13 and 14 are not printed) a straight line; past 15 repetitions no answer.
    The textbook has 67% for 12 repetitions, where the same association's one-page chart prints 70%."""

    MEAN = "mean"
    """The mean of the shares that the seven formulas give (not the table). A mean of estimates may err less: Mayhew
    et al. 1995, J Sports Med Phys Fitness 35:108-113, of two equations."""


class BeyondModel(ValueError):  # noqa: N818  # said of a set, as "beyond the model"
    """Raised where a model gives no answer; the message says which model and how far it goes."""


def share_of_best(model: Model, reps: Fraction) -> Fraction:
    """The share (0 to 1) of one's best that can be lifted `reps` times to failure.

    Exactly 1 for one repetition or fewer; fractional `reps` are fine. Exact for Epley, Brzycki, Lander, O'Conner and
    the table, in double precision for the others. Raises `BeyondModel` from `LIMIT_REPS` on, for the table past
    `LAST_TABLE_REPS`. Sources stand with `Model`.
    """
    if reps <= 1:
        return Fraction(1)
    past_end = reps > LAST_TABLE_REPS if model is Model.TABLE else reps >= LIMIT_REPS
    if past_end:
        raise BeyondModel(_end_of(model))
    return _curve(model).share(reps)


def reps_at_share(model: Model, share: Fraction) -> Fraction:
    """The repetitions to failure that a load of `share` (0 to 1) of one's best allows: the inverse of `share_of_best`.

    At least 1: shares between a formula's value at one repetition and 1 allow one. Raises `BeyondModel` above 1 (more
    than the best) and where the answer would be past the model's end, so also at or below the level that Mayhew and
    Wathan never reach.
    """
    if share > 1:
        raise BeyondModel(f"{model.value}: no repetition is expected above the best")
    curve = _curve(model)
    past_end = share < curve.share(LAST_TABLE_REPS) if model is Model.TABLE else share <= curve.share(LIMIT_REPS)
    if past_end:
        raise BeyondModel(_end_of(model))
    return max(Fraction(1), curve.reps(share))


def estimated_best(model: Model, load: Mass, reps: Fraction) -> Mass:
    """The best for one repetition, in the load's unit, of someone who lifts `load` for `reps` to failure.

    Raises `BeyondModel` as `share_of_best` does; less reliable above `RELIABLE_REPS`.
    """
    return load.times(1 / share_of_best(model, reps))


def spread(load_by: Callable[[Model], Mass]) -> tuple[Mass, Mass]:
    """The least and the greatest of the loads that the seven formulas come to; `load_by` works one out by a formula.

    What a load could be if another formula had been named; the printed table and the mean are not asked. All loads are
    in one unit. What `load_by` raises is passed on.
    """
    loads = sorted((load_by(model) for model in _FORMULAS), key=lambda load: load.amount)
    return loads[0], loads[-1]


_FORMULAS: Final[dict[Model, Curve]] = {
    Model.EPLEY: hyperbola(Fraction(30)),
    Model.BRZYCKI: line(Fraction(37, 36), Fraction(1, 36)),
    Model.LANDER: line(Fraction("1.013"), Fraction("0.0267123")),
    Model.LOMBARDI: power(0.10),
    Model.MAYHEW: decay(0.522, 0.419, 0.055),
    Model.OCONNER: hyperbola(Fraction(40)),
    Model.WATHAN: decay(0.488, 0.538, 0.075),
}

_TABLE_PERCENT: Final = (
    *((1, 100), (2, 95), (3, 93), (4, 90), (5, 87), (6, 85)),
    *((7, 83), (8, 80), (9, 77), (10, 75), (11, 70), (12, 67), (15, 65)),
)

_TABLE: Final = printed(tuple((Fraction(reps), Fraction(percent, 100)) for reps, percent in _TABLE_PERCENT))

_MEAN: Final = mean(tuple(_FORMULAS.values()), LIMIT_REPS)


def _curve(model: Model) -> Curve:
    match model:
        case Model.TABLE:
            return _TABLE
        case Model.MEAN:
            return _MEAN
        case _:
            return _FORMULAS[model]


def _end_of(model: Model) -> str:
    if model is Model.TABLE:
        return f"{model.value}: the printed table ends at {LAST_TABLE_REPS} repetitions"
    return f"{model.value}: no estimate from {LIMIT_REPS} repetitions on"
