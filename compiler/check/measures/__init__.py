"""The measures that a rule can bound, in the order of the reference; one file each.

A measure is added by writing its file and naming it here.
"""

from __future__ import annotations

from typing import Final

from setwright.check.measure import Measure
from setwright.check.measures import (
    balance,
    deload_cut,
    effort,
    frequency,
    intensity,
    lifts_in_zone,
    load_rise,
    monotony,
    recovery,
    rest,
    session_sets,
    session_time,
    strain,
    weekly_rise,
    weekly_sets,
    weekly_time,
)

MEASURES: Final[tuple[Measure, ...]] = (
    weekly_sets.MEASURE,
    session_sets.MEASURE,
    frequency.MEASURE,
    recovery.MEASURE,
    rest.MEASURE,
    effort.MEASURE,
    intensity.MEASURE,
    lifts_in_zone.MEASURE,
    weekly_rise.MEASURE,
    load_rise.MEASURE,
    deload_cut.MEASURE,
    balance.MEASURE,
    session_time.MEASURE,
    weekly_time.MEASURE,
    monotony.MEASURE,
    strain.MEASURE,
)
