"""Single values of the syntax tree, typed: times, efforts, percents, masses, whole numbers.

Each function returns None where the written value has no meaning, after it put the reason into `problems`.
"""

from __future__ import annotations

from fractions import Fraction
from math import floor

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import names, syntax, weeks
from setwright.prescription import Effort
from setwright.quantities import Mass, Unit, plain
from setwright.source import Span
from setwright.suggest import Suggestion, either
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
    if item.unit not in TIMES or item.low != item.high:
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted="a time (`90 s`, `2 min`)"))
        return None
    if not 0 < value * TIMES[item.unit] <= LONGEST_SET_S:
        problems.append(outside_sizes(item, "a time", "above 0, at most 6 hours"))
        return None
    return value * TIMES[item.unit]


def rpe(item: n.Item, problems: Problems, what: str, *, as_felt: bool = False) -> Fraction | None:
    """A fixed effort on the RPE scale; repetitions in reserve are turned into it."""
    value = number(item, problems)
    if value is None:
        return None
    if item.unit != ("RIR" if not item.rpe else None):
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted=f"an effort for {what} (`RPE 8`)"))
        return None
    effort = effort_of(item, problems, reserve=item.unit == "RIR", as_felt=as_felt)
    return effort.high if effort else None


def percent(item: n.Item, problems: Problems, what: str, most: int = 100) -> Fraction | None:
    """A fixed percent, above 0."""
    value = number(item, problems)
    if value is None:
        return None
    if item.unit != "%" or item.low != item.high:
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted=f"a percent for {what} (`80%`)"))
        return None
    if not 0 < value <= most:
        problems.append(outside_sizes(item, what, f"above 0%, at most {most}%"))
        return None
    return value


def mass(
    item: n.Item, problems: Problems, what: str, default: Unit | None = None, example: str = "`20 kg`, `45 lb`"
) -> Mass | None:
    """A fixed mass, above 0."""
    value = number(item, problems)
    if value is None:
        return None
    unit = item.unit or (default.value if default else None)
    if unit not in HEAVIEST or item.rpe or item.low != item.high:
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted=f"{what} ({example})"))
        return None
    if not 0 < value <= HEAVIEST[unit]:
        problems.append(outside_sizes(item, what, f"above 0, at most {HEAVIEST[unit]} {unit}"))
        return None
    return Mass(value, Unit(unit))


def whole(item: n.Item, problems: Problems, wanted: str, most: int) -> int | None:
    """A plain whole number from 1 to `most`."""
    value = number(item, problems)
    if value is None:
        return None
    if item.unit or item.rpe or item.low != item.high or value.denominator != 1:
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted=wanted))
        return None
    if not 1 <= value <= most:
        problems.append(
            outside_sizes(item, wanted.partition(" (")[0].removesuffix(f" from 1 to {most}"), f"1 to {most}")
        )
        return None
    return int(value)


def outside_sizes(item: n.Item, what: str, sizes: str) -> Diagnostic:
    """The diagnostic for a value of the right kind and the wrong size, with the value a template was given for it."""
    found = item.span.text if item.given is None else item.given.span.text
    return weeks.OUTSIDE_SIZES.at(item.span, found=found, what=what, sizes=sizes)


def effort_of(
    item: n.Item, problems: Problems, *, reserve: bool, is_step: bool = False, as_felt: bool = False
) -> Effort | None:
    """An effort on the RPE scale; `reserve` where it is written in repetitions in reserve.

    A plan asks for whole or half points; what was done may be written down `as_felt`.
    """
    low, high = item.low or Fraction(0), item.high or Fraction(0)
    if is_step:
        return Effort(low, high, reserve)
    if reserve:
        low, high = 10 - high, 10 - low
    if not 1 <= low <= high <= 10 or item.at_least or item.per_side:
        problems.append(weeks.EFFORT_OUT_OF_RANGE.at(item.span, found=item.span.text))
        return None
    if not as_felt and not _in_halves(low, high):
        problems.append(_between_halves(item))
        return None
    return Effort(low, high, reserve)


def _in_halves(*efforts: Fraction) -> bool:
    return all((2 * effort).denominator == 1 for effort in efforts)


def _between_halves(item: n.Item) -> Diagnostic:
    """With the nearest halves below and above, where one value is written."""
    found, low = item.span.text, item.low
    if low is None or low != item.high or item.given is not None:
        return weeks.EFFORT_BETWEEN_HALVES.at(item.span, found=found)
    below = Fraction(floor(2 * low), 2)
    near = [found.replace(plain(low, 9), plain(half)) for half in (below, below + Fraction(1, 2))]
    help_ = Suggestion(f"Write {either([f'`{text}`' for text in near])}.", found, near)
    return weeks.EFFORT_BETWEEN_HALVES.at(item.span, found=found, help=help_)


def stray_word(span: Span, word: str) -> Diagnostic:
    """A word where a value is needed: one that spells it otherwise (`RPE8`), or a stray parameter."""
    if habit := spelled(word):
        return syntax.UNEXPECTED_WORD.at(span, found=word, help=habit)
    return names.PARAMETER_OUTSIDE_TEMPLATE.at(span, word=word, needed="a value")


def number(item: n.Item, problems: Problems) -> Fraction | None:
    """The low end of a value, or None after saying that it is no number."""
    if item.word is not None:
        problems.append(stray_word(item.span, item.word))
        return None
    if item.low is None:
        problems.append(weeks.NOT_A_NUMBER.at(item.span, found=item.span.text))
    return item.low
