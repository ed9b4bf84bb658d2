"""What the changes come to: sets for each muscle, effort, minutes, and rules broken before or after.

Comes in: two plans with their promises and the weeks that answer to each other. Goes out: a `Consequence`.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from fractions import Fraction

from setwright.check.breach import Breach
from setwright.check.promises import broken
from setwright.plan import Plan, WeekKind
from setwright.report.difference.blocks import WeekPair
from setwright.report.difference.days import day_pairs
from setwright.report.difference.model import (
    BreachChange,
    Broken,
    Consequence,
    Figure,
    FigureChange,
    MuscleChange,
    Range,
    Weeks,
)
from setwright.report.difference.pairing import by_key
from setwright.report.overview import SessionSummary, WeekSummary, overview
from setwright.report.volume import Volume, volume
from setwright.rules import Promise

Side = tuple[Plan, Promise]
_Seen = tuple[WeekPair, Fraction | None, Fraction | None]


def consequence(old: Side, new: Side, blocks: Sequence[Sequence[WeekPair]]) -> Consequence:
    """All figures that are another."""
    weeks = [week for block in blocks for week in block]
    before, after = overview(old[0]), overview(new[0])
    by_day = _minutes_of_days(_summaries(old[0], before), _summaries(new[0], after), blocks)
    figures = (*_weekly(before, after, weeks), *by_day)
    return Consequence(tuple(_muscles(old, new, weeks)), figures, tuple(_breaches(old, new, weeks)))


# ---- muscles -------------------------------------------------------------------------------------


def _muscles(old: Side, new: Side, weeks: Sequence[WeekPair]) -> Iterator[MuscleChange]:
    before, after = volume(*old), volume(*new)
    titles = {muscle.word: muscle.title for each in (before, after) for muscle in (each.muscles if each.rows else ())}
    here, there = _sets(before), _sets(after)
    for word in sorted(titles, key=_place_in(new[0], old[0])):
        by_kind: dict[WeekKind, list[tuple[WeekPair, Fraction, Fraction]]] = {}
        for week in weeks:
            one = here.get((week[0].number, word), Fraction(0))
            other = there.get((week[1].number, word), Fraction(0))
            if one != other:
                kind = WeekKind.WORKING if week[0].kind is week[1].kind is WeekKind.WORKING else WeekKind.DELOAD
                by_kind.setdefault(kind, []).append((week, one, other))
        for kind, seen in by_kind.items():
            yield MuscleChange(
                word,
                titles[word],
                kind,
                _numbers(week for week, _, _ in seen),
                _range(one for _, one, _ in seen),
                _range(other for _, _, other in seen),
                _range(other - one for _, one, other in seen),
            )


def _sets(of: Volume) -> Mapping[tuple[int, str], Fraction]:
    return {(row.week, row.muscle.word): row.fractional_sets for row in of.rows}


def _place_in(new: Plan, old: Plan) -> Callable[[str], tuple[int, str]]:
    """Library order, that of the new plan first."""
    places = {muscle.word: at for at, muscle in enumerate((*old.muscles, *new.muscles))}
    return lambda word: (places[word], word)


# ---- weeks and days ------------------------------------------------------------------------------


def _weekly(
    old: Sequence[WeekSummary], new: Sequence[WeekSummary], weeks: Sequence[WeekPair]
) -> Iterator[FigureChange]:
    before = {summary.number: summary for summary in old}
    after = {summary.number: summary for summary in new}
    both = [(week, before[week[0].number], after[week[1].number]) for week in weeks]
    for figure, value in _FIGURES:
        yield from _figure(figure, [(week, value(one), value(other)) for week, one, other in both])


_FIGURES: tuple[tuple[Figure, Callable[[WeekSummary], Fraction | None]], ...] = (
    (Figure.SETS, lambda week: Fraction(week.sets)),
    (Figure.HIGHEST_EFFORT, lambda week: week.highest_effort),
    (Figure.MEAN_EFFORT, lambda week: week.mean_effort),
    (Figure.WEEK_MINUTES, lambda week: week.minutes),
)


def _minutes_of_days(
    before: Mapping[int, SessionSummary], after: Mapping[int, SessionSummary], blocks: Sequence[Sequence[WeekPair]]
) -> Iterator[FigureChange]:
    """By the days of the old and the new plan, over all blocks."""
    seen: dict[tuple[str, str], list[_Seen]] = {}
    for weeks in blocks:
        for pair in day_pairs(weeks):
            here = dict(pair.old.sessions) if pair.old else {}
            there = dict(pair.new.sessions) if pair.new else {}
            for at in here.keys() & there.keys():
                one, other = before[id(here[at])].minutes, after[id(there[at])].minutes
                seen.setdefault((here[at].slot, there[at].slot), []).append((weeks[at], one, other))
    for slots, found in seen.items():
        yield from _figure(Figure.SESSION_MINUTES, sorted(found, key=lambda one: one[0][1].number), *slots)


def _summaries(plan: Plan, weeks: Sequence[WeekSummary]) -> dict[int, SessionSummary]:
    """By the identity of the plan's sessions."""
    both = zip(plan.weeks, weeks, strict=True)
    return {
        id(session): summary
        for week, summaries in both
        for session, summary in zip(week.sessions, summaries.sessions, strict=True)
    }


def _figure(
    figure: Figure, seen: Iterable[_Seen], old: str | None = None, new: str | None = None
) -> Iterator[FigureChange]:
    found = [one for one in seen if one[1] != one[2]]
    if found:
        before = [value for _, value, _ in found if value is not None]
        after = [value for _, _, value in found if value is not None]
        yield FigureChange(
            figure,
            _numbers(week for week, _, _ in found),
            _range(before) if before else None,
            _range(after) if after else None,
            old,
            new,
        )


# ---- rules ---------------------------------------------------------------------------------------


def _breaches(old: Side, new: Side, weeks: Sequence[WeekPair]) -> Iterator[BreachChange]:
    here, there = broken(*old), broken(*new)
    answers = {new: old for old, new in by_key(_keys(here), _keys(there))}
    renumbered = {old.number: new.number for old, new in weeks}
    for at, breach in enumerate(there):
        before = here[answers[at]] if at in answers else None
        if before is None or not _same(before, breach, renumbered):
            yield _breach(before, breach)
    taken = set(answers.values())
    yield from (_breach(breach, None) for at, breach in enumerate(here) if at not in taken)


def _keys(breaches: Sequence[Breach]) -> dict[int, Hashable]:
    return {at: (one.rule.measure, one.rule.scope, one.rule.where, *_whose(one)) for at, one in enumerate(breaches)}


def _whose(breach: Breach) -> tuple[str, str | None]:
    figure = breach.figures[0]
    return figure.subject.word, figure.session.slot if figure.session is not None else None


def _same(old: Breach, new: Breach, renumbered: Mapping[int, int]) -> bool:
    before = [(renumbered.get(figure.week.number), figure.value) for figure in old.figures]
    return before == [(figure.week.number, figure.value) for figure in new.figures]


def _breach(old: Breach | None, new: Breach | None) -> BreachChange:
    one = new or old
    assert one is not None
    slot = _whose(one)[1]
    subject = one.figures[0].subject.title
    return BreachChange(one.measure.code.number, one.measure.name, subject, slot, _broken(old), _broken(new))


def _broken(breach: Breach | None) -> Broken | None:
    if breach is None:
        return None
    weeks = tuple(dict.fromkeys(figure.week.number for figure in breach.figures))
    return Broken(breach.rule, weeks, _range(figure.value for figure in breach.figures))


def _numbers(weeks: Iterable[WeekPair]) -> Weeks:
    return tuple((old.number, new.number) for old, new in weeks)


def _range(values: Iterable[Fraction]) -> Range:
    found = list(values)
    return Range(min(found), max(found))
