"""Single values of the syntax tree, typed: times, efforts, percents, masses, whole numbers.

Each function returns None where the written value has no meaning, after it put the reason into `problems`.
"""

from __future__ import annotations

from fractions import Fraction

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import names, weeks
from setwright.prescription import Effort
from setwright.quantities import Mass, Unit
from setwright.syntax import nodes as n
from setwright.syntax.habits import spelled

Problems = list[Diagnostic]

LONGEST_SET_S = 6 * 3600
HEAVIEST = {"kg": 1000, "lb": 2205}
TIMES = {"s": 1, "min": 60}


def seconds(item: n.Item, problems: Problems) -> Fraction | None:
    """A fixed time in seconds."""
    value = number(item, problems)
    if value is None:
        return None
    if item.unit not in TIMES or item.low != item.high or not 0 < value * TIMES[item.unit] <= LONGEST_SET_S:
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted="a time (`90 s`, `2 min`)"))
        return None
    return value * TIMES[item.unit]


def rpe(item: n.Item, problems: Problems, what: str) -> Fraction | None:
    """A fixed effort on the RPE scale; repetitions in reserve are turned into it."""
    value = number(item, problems)
    if value is None:
        return None
    if item.unit != ("RIR" if not item.rpe else None):
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted=f"an effort for {what} (`RPE 8`)"))
        return None
    effort = effort_of(item, problems, reserve=item.unit == "RIR")
    return effort.high if effort else None


def percent(item: n.Item, problems: Problems, what: str, most: int = 100) -> Fraction | None:
    """A fixed percent, above 0."""
    value = number(item, problems)
    if value is None:
        return None
    if item.unit != "%" or item.low != item.high or not 0 < value <= most:
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted=f"a percent for {what} (`80%`)"))
        return None
    return value


def mass(item: n.Item, problems: Problems, what: str, default: Unit | None = None) -> Mass | None:
    """A fixed mass, above 0."""
    value = number(item, problems)
    if value is None:
        return None
    unit = item.unit or (default.value if default else None)
    if unit not in HEAVIEST or item.rpe or item.low != item.high or not 0 < value <= HEAVIEST[unit]:
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted=f"{what} (`20 kg`, `45 lb`)"))
        return None
    return Mass(value, Unit(unit))


def whole(item: n.Item, problems: Problems, wanted: str, most: int) -> int | None:
    """A plain whole number from 1 to `most`."""
    value = number(item, problems)
    if value is None:
        return None
    if item.unit or item.rpe or item.low != item.high or value.denominator != 1 or not 1 <= value <= most:
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted=wanted))
        return None
    return int(value)


def effort_of(item: n.Item, problems: Problems, *, reserve: bool, is_step: bool = False) -> Effort | None:
    """An effort on the RPE scale; `reserve` where it is written in repetitions in reserve."""
    low, high = item.low or Fraction(0), item.high or Fraction(0)
    if is_step:
        return Effort(low, high, reserve)
    if reserve:
        low, high = 10 - high, 10 - low
    if not 1 <= low <= high <= 10 or item.at_least or item.per_side:
        problems.append(weeks.EFFORT_OUT_OF_RANGE.at(item.span, found=item.span.text))
        return None
    return Effort(low, high, reserve)


def number(item: n.Item, problems: Problems) -> Fraction | None:
    """The low end of a value, or None after saying that it is no number."""
    if item.word is not None:
        problems.append(
            names.PARAMETER_OUTSIDE_TEMPLATE.at(item.span, word=item.word, needed="a value", help=spelled(item.word))
        )
        return None
    if item.low is None:
        problems.append(weeks.NOT_A_NUMBER.at(item.span, found=item.span.text))
    return item.low
