"""The measures that a rule can bound, in the order of the reference; one file each.

A measure is added by writing its file and naming it here.
"""

from __future__ import annotations

from typing import Final

from setwright.check.measure import Measure
from setwright.check.measures import (
    deload_cut,
    effort,
    frequency,
    recovery,
    session_sets,
    session_time,
    weekly_rise,
    weekly_sets,
)

MEASURES: Final[tuple[Measure, ...]] = (
    weekly_sets.MEASURE,
    session_sets.MEASURE,
    frequency.MEASURE,
    recovery.MEASURE,
    effort.MEASURE,
    weekly_rise.MEASURE,
    deload_cut.MEASURE,
    session_time.MEASURE,
)

# Words of the language that are read and answered with a warning until they have a file of their own.
NOT_YET: Final = ("intensity", "weekly-time", "balance", "monotony", "strain", "lifts-in-zone")
