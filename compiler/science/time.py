"""How long sets, rests and lines take.

Comes in: repetitions, a tempo, rests. Goes out: seconds, exact under the conventions that stand below.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final, TypeAlias

# Seconds of lowering, at the bottom, of lifting, at the top; None is X, as fast as possible.
Phases: TypeAlias = tuple[int | None, int | None, int | None, int | None]

# A repetition without a written tempo (common practice, no source).
REPETITION_S: Final = 4

# What an X is taken to last, so that a tempo has a sum (common practice, no source).
FASTEST_S: Final = 1

# A rest that nobody wrote (common practice, no source; for strength, Grgic et al. 2018, Sports Med 48:137-151, find 60
# to 120 s enough for untrained people and more than 120 s better for trained ones).
DEFAULT_REST_S: Final = 120

# Walking over and setting up, once between one movement and the next (common practice, no source).
CHANGEOVER_S: Final = 60


def repetition_seconds(tempo: Phases | None = None) -> Fraction:
    """The seconds one repetition takes: the four phases' sum, X as `FASTEST_S`; `REPETITION_S` without a tempo."""
    if tempo is None:
        return Fraction(REPETITION_S)
    return Fraction(sum(FASTEST_S if phase is None else phase for phase in tempo))


def set_seconds(reps: Fraction, tempo: Phases | None = None) -> Fraction:
    """The seconds under load of a set of `reps` repetitions; for work per side give both sides' repetitions."""
    return reps * repetition_seconds(tempo)


def line_seconds(sets: int, seconds_per_set: Fraction, rest_s: Fraction) -> Fraction:
    """The seconds that `sets` sets and the rests between them take.

    The rest after the last set is not counted: what follows it is `CHANGEOVER_S`, or the way home.
    """
    return sets * seconds_per_set + max(0, sets - 1) * rest_s
