"""What rules ask of weekly sets, in words for the tables: ranges, and marks where a week lies outside its own.

Comes in: `SubjectTargets`. Goes out: text.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby
from typing import Final

from setwright.check.bounds import Side
from setwright.plan import Plan, WeekKind
from setwright.record import record
from setwright.render import words
from setwright.render.language import Language
from setwright.render.material import Material
from setwright.report.targets import End, SubjectTargets, Target, Targets, targets

# Shapes, not colours: the way it points says where, and hollow says that the plan has said yes to it.
SIGNS: Final = {
    (Side.BELOW, False): "\u25bc",
    (Side.ABOVE, False): "\u25b2",
    (Side.BELOW, True): "\u25bd",
    (Side.ABOVE, True): "\u25b3",
}


@record
class Mark:
    """A sign beside a figure, and what it says to whoever cannot see it: `below the 10-20 asked for`."""

    sign: str
    said: str


def targets_of(material: Material) -> Targets:
    """What the rules ask of the plan, as far as its sheets show it."""
    return targets(material.plan, material.promise) if material.targets is None else material.targets


def marks(of: SubjectTargets, language: Language) -> dict[int, Mark]:
    """The weeks that lie outside what is asked, by their number."""
    return {target.week: _mark(target, language) for target in of.weeks if target.side is not Side.INSIDE}


def ranges(of: SubjectTargets, plan: Plan, language: Language) -> tuple[str, ...]:
    """What is asked, a line for each range; with the weeks it is asked for where it is not all the working ones."""
    found: dict[str, list[int]] = {}
    for target in of.weeks:
        found.setdefault(_range(target, language, with_must=True), []).append(target.week)
    working = {week.number for week in plan.weeks if week.kind is WeekKind.WORKING}
    return tuple(
        text if working and working <= set(weeks) else words.headed(_weeks(weeks, language), text, language)
        for text, weeks in found.items()
    )


def key(of: Targets, language: Language) -> str:
    """What the column of ranges is, and which signs there are; nothing where no rule asks anything."""
    if not of.subjects:
        return ""
    found = {(one.side, one.is_waived) for each in of.subjects for one in each.weeks if one.side is not Side.INSIDE}
    texts = {
        (Side.BELOW, False): language.text("below what the plan\u2019s rules ask for"),
        (Side.ABOVE, False): language.text("above it"),
        (Side.BELOW, True): language.text("below it, and waived"),
        (Side.ABOVE, True): language.text("above it, and waived"),
    }
    said = [f"{sign}{words.NO_BREAK}{texts[which]}" for which, sign in SIGNS.items() if which in found]
    if not said:
        return language.text("No week lies outside what the plan\u2019s rules ask for.")
    return words.clauses(said, language) + "."


def _mark(target: Target, language: Language) -> Mark:
    asked = _range(target, language, with_must=False)
    match target.side, target.is_waived:
        case Side.BELOW, False:
            said = language.text("below the {range} asked for")
        case Side.BELOW, True:
            said = language.text("below the {range} asked for, waived")
        case _, False:
            said = language.text("above the {range} asked for")
        case _:
            said = language.text("above the {range} asked for, waived")
    return Mark(SIGNS[target.side, target.is_waived], said.format(range=asked))


def _range(target: Target, language: Language, *, with_must: bool) -> str:
    """`10-20`, `>= 4`; `must` stands after what has to hold."""
    low, high = target.low, target.high
    if low is None or high is None:
        return _one_ended(low, high, language, with_must=with_must)
    same = low.is_must == high.is_must
    if low.strict or high.strict or (with_must and not same):
        ends = (
            _one_ended(low, None, language, with_must=with_must),
            _one_ended(None, high, language, with_must=with_must),
        )
        return ", ".join(ends)
    ends = (language.number(low.value), language.number(high.value))
    return _with_must(words.EN_DASH.join(dict.fromkeys(ends)), low, language, with_must=with_must)


def _one_ended(low: End | None, high: End | None, language: Language, *, with_must: bool) -> str:
    end = low or high
    assert end is not None  # a bound has at least one
    sign = (">" if end.strict else "\u2265") if end is low else ("<" if end.strict else "\u2264")
    return _with_must(f"{sign}{words.NO_BREAK}{language.number(end.value)}", end, language, with_must=with_must)


def _with_must(text: str, end: End, language: Language, *, with_must: bool) -> str:
    return text + words.NO_BREAK + language.text("must") if with_must and end.is_must else text


def _weeks(numbers: Sequence[int], language: Language) -> str:
    parts = [str(first) if first == last else f"{first}{words.EN_DASH}{last}" for first, last in _stretches(numbers)]
    text = ", ".join(parts)
    return language.text("wk\u00a0{weeks}").format(weeks=text)


def _stretches(numbers: Iterable[int]) -> list[tuple[int, int]]:
    """First and last of each run of weeks that follow each other."""
    runs = [[number for _, number in run] for _, run in groupby(enumerate(numbers), key=lambda pair: pair[1] - pair[0])]
    return [(run[0], run[-1]) for run in runs]
