"""Effort of a set on the scale of perceived exertion that counts repetitions in reserve.

Comes in: an RPE or repetitions in reserve. Goes out: the other of the two, and the key that sheets print.

Source of the scale: Zourdos MC et al. 2016, J Strength Cond Res 30(1):267-275.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from setwright.message import message

# Under this the published scale speaks of light effort and counts no repetitions.
LOWEST_RPE: Final = Fraction(5)
HIGHEST_RPE: Final = Fraction(10)

# What each point means, in words of our own, after Zourdos et al. 2016. The scale describes 5 to 6 as one band of four
# to six repetitions; to read 6 as four and 5 as five is a convention.
EFFORT_KEY: Final = (
    ("10", message("All out: not one repetition more")),
    ("9.5", message("Not one repetition more, though a little more load might have gone")),
    ("9", message("One more repetition was left")),
    ("8.5", message("One more was left, maybe two")),
    ("8", message("Two more were left")),
    ("7.5", message("Two more were left, maybe three")),
    ("7", message("Three more were left")),
    ("6", message("About four more were left")),
    ("5", message("About five more were left; anything easier is not counted in repetitions")),
)


def reps_in_reserve(rpe: Fraction) -> Fraction:
    """The repetitions left undone at the end of a set of that effort: 10 - RPE (Zourdos et al. 2016).

    By definition for RPE 6 to 10, by convention below. Raises `ValueError` below RPE 5, where the published scale
    gives no count, and above 10, where it ends.
    """
    if not LOWEST_RPE <= rpe <= HIGHEST_RPE:
        raise ValueError(f"the scale counts repetitions from RPE {LOWEST_RPE} to {HIGHEST_RPE}, not at RPE {rpe}")
    return HIGHEST_RPE - rpe


def rpe_from_reserve(rir: Fraction) -> Fraction:
    """The RPE of a set that leaves `rir` repetitions undone: 10 - RIR (Zourdos et al. 2016).

    With more than 5 in reserve the result is below `LOWEST_RPE`: right for comparing efforts, not a point of the
    published scale. Raises `ValueError` for fewer than none.
    """
    if rir < 0:
        raise ValueError(f"repetitions in reserve cannot be fewer than none: {rir}")
    return HIGHEST_RPE - rir
