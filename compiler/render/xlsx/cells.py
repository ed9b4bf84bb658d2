"""A prescription as typed cells: a number with its unit in the format where it is one number, else the sheet's words.

Comes in: values of a plan. Goes out: a value and the format of its cell.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TypeAlias

from setwright.check.figures.effort import is_scaled
from setwright.plan import Segment
from setwright.prescription import Bodyweight, Effort, PercentOfBest, Reps, RepsKind
from setwright.quantities import Unit
from setwright.render import words
from setwright.render.language import Language
from setwright.render.xlsx.book import Style, Value, quoted, with_unit

Cell: TypeAlias = tuple[Value, Style]


def repetitions(reps: Reps, language: Language) -> Cell:
    """`5` and `5 per side` are numbers, and so are `40 s`, `30 m` and `5+`; ranges, clusters and `max` are text."""
    aside = f" {words.per_side(language)}" if reps.per_side else ""
    single = reps.low == reps.high
    match reps.kind:
        case RepsKind.COUNT if single:
            return reps.low, {"num_format": with_unit(aside)}
        case RepsKind.AT_LEAST:
            return reps.low, {"num_format": with_unit(f"+{aside}")}
        case RepsKind.SECONDS if single and reps.minutes and reps.low % 30 == 0:
            return reps.low / 60, {"num_format": with_unit(f" min{aside}")}
        case RepsKind.SECONDS if single:
            return reps.low, {"num_format": with_unit(f" s{aside}")}
        case RepsKind.METRES if single:
            return reps.low, {"num_format": with_unit(f" m{aside}")}
        case _:
            return words.amount(reps, language), {}


def effort(segment: Segment, language: Language) -> Cell:
    """An RPE, repetitions in reserve and a percent are numbers; ranges, changes and what a deload eased are text."""
    match segment.intensity:
        case Effort() if is_scaled(segment):
            return words.asked_effort(segment, language), {}
        case Effort(low, high, as_reserve) if low == high:
            if as_reserve:
                return 10 - low, {"num_format": with_unit(" RIR")}
            return low, {"num_format": with_unit("", "RPE ")}
        case PercentOfBest(percent, None):
            places = "" if percent.denominator == 1 else ".0" if (percent * 10).denominator == 1 else ".00"
            return percent / 100, {"num_format": f"0{places}%"}
        case _:
            return words.effort(segment.intensity, language), {}


def load(segment: Segment, unit: Unit, language: Language) -> Cell:
    """The mass as a number with its unit; `+ 5 kg` is what is added to the body, and `bodyweight` alone is text."""
    if isinstance(segment.intensity, Bodyweight):
        added = segment.load.mass if segment.load is not None else segment.intensity.added
        if added is None or added.amount == 0:
            return words.load(segment, language), {}
        after = quoted(f" {added.unit.value}")
        return added.amount, {"num_format": f'"+ "General{after};"{words.MINUS} "General{after}'}
    mass = words.known_mass(segment)
    own = mass.unit if mass is not None else unit
    return (mass.amount if mass is not None else None), {"num_format": with_unit(f" {own.value}")}


def made_of(segment: Segment, language: Language) -> str | None:
    """What the load is made of: the discs of one side, or how it is meant where it could be misread."""
    if isinstance(segment.intensity, Bodyweight):
        added = segment.load.mass if segment.load is not None else segment.intensity.added
        return language.text("with the body") if added is not None and added.amount != 0 else None
    if segment.load is not None and segment.load.per_side:
        return " + ".join(language.number(Fraction(disc)) for disc in segment.load.per_side)
    return words.load_aside(segment, language)
