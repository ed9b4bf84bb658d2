"""Whole plans side by side: the same figures of each, counted the same way.

Comes in: plans with what they promise, and a ceiling. Goes out: a `Comparison`, plain data that names no winner.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Final

from setwright.check import breaches
from setwright.check.figures.effort import known_effort
from setwright.check.figures.sets import Day, Ledger
from setwright.check.measures import MEASURES
from setwright.diagnostics import Severity
from setwright.plan import Muscle, Plan, Week, WeekKind
from setwright.record import record
from setwright.report.overview import WeekSummary, overview
from setwright.rules import Promise

# Fractional sets for one muscle in one session (common practice, no source).
CEILING: Final = Fraction(10)

HOURS_OF_A_DAY: Final = 24
NONE: Final = Fraction(0)


@record
class Column:
    """A plan to compare, under the heading that tells it from the others.

    `over` are the numbers of the weeks to look at, None for all of them; the others only come before or after.
    """

    heading: str
    plan: Plan
    promise: Promise
    file: str = ""
    over: tuple[int, ...] | None = None


@record
class Average:
    """A figure that differs from week to week or session to session: its mean and its range."""

    mean: Fraction
    low: Fraction
    high: Fraction


@record
class MuscleFigures:
    """What one muscle gets in the working weeks of a plan. Weekly figures mean per 7 days, sets are fractional.

    An exposure is a session with a direct set. `beyond_ceiling` are the sets a week that come after the ceiling of
    their session. `shortest_hours` are the fewest from one exposure to the next, and `weighted_hours` how long after
    the exposure before it a direct set comes, as a mean over the sets; None where there are no two exposures.
    """

    muscle: Muscle
    sets: Average
    largest_session: Fraction
    beyond_ceiling: Average
    exposures: Average
    shortest_hours: int | None
    weighted_hours: Fraction | None


@record
class WeekFigures:
    """One week of any kind, numbered from 1 among those looked at.

    Efforts are RPE over the `stated` of its work sets, those that state one.
    """

    number: int
    kind: WeekKind
    sets: int
    stated: int
    highest_effort: Fraction | None
    mean_effort: Fraction | None


@record
class PlanFigures:
    """One column. All but `weeks` and the breaches are over working weeks; None where the plan has none.

    A breach is what `check` reports once: a rule, a muscle and a day, in however many weeks.
    """

    heading: str
    plan: str
    athlete: str | None
    file: str
    working_weeks: int
    from_rpe: Fraction | None  # easier sets are not counted
    required_only: bool  # optional lines are not counted
    sessions: Average | None  # per 7 days
    session_minutes: Average | None
    week_minutes: Average | None  # per 7 days
    weighted_hours: Fraction | None  # over the sets of all muscles
    must: int
    should: int
    muscles: tuple[MuscleFigures, ...]
    weeks: tuple[WeekFigures, ...]

    def of(self, muscle: str) -> MuscleFigures | None:
        """The figures of a muscle by its word, None where the plan does not train it."""
        return next((figures for figures in self.muscles if figures.muscle.word == muscle), None)


@record
class Comparison:
    """The columns in the order they were asked for, and every muscle that one of them trains."""

    ceiling: Fraction
    columns: tuple[PlanFigures, ...]
    muscles: tuple[Muscle, ...]


@record
class _MuscleDay:
    """A session with the sets it counts for a muscle, by the movement's share and as a prime mover."""

    day: Day
    sets: Fraction
    direct: int


@record
class _Gap:
    """The hours from an exposure to the next, and that one's direct sets."""

    hours: int
    sets: int


def columns(made: Sequence[tuple[str, Plan, Promise]]) -> tuple[Column, ...]:
    """A column for each file and plan, headed by the plan's name; by its file, too, where a name comes twice."""
    names = [f"{plan.name}, for {plan.athlete}" if plan.athlete else plan.name for _, plan, _ in made]
    return tuple(
        Column(f"{name} ({file})" if names.count(name) > 1 else name, plan, promise, file)
        for name, (file, plan, promise) in zip(names, made, strict=True)
    )


def comparison(columns: Iterable[Column], ceiling: Fraction = CEILING) -> Comparison:
    """The figures of every plan; muscles in library order, first those of the first plan's library."""
    looked_at = tuple(columns)
    made = tuple(figures(column, ceiling) for column in looked_at)
    trained = {figures.muscle.word for column in made for figures in column.muscles}
    known = {muscle.word: muscle for column in looked_at for muscle in column.plan.muscles}
    return Comparison(ceiling, made, tuple(muscle for word, muscle in known.items() if word in trained))


def figures(column: Column, ceiling: Fraction = CEILING) -> PlanFigures:
    """The figures of one plan."""
    plan, promise = column.plan, column.promise
    ledger = Ledger(plan, promise)
    looked_at = [week for week in overview(plan) if column.over is None or week.number in column.over]
    working = [week for week in looked_at if week.kind is WeekKind.WORKING]
    numbers = frozenset(week.number for week in working)
    days = {muscle: _days(ledger, muscle) for muscle in ledger.trained} if working else {}
    must, should = _breaches(plan, promise)
    scale = plan.per_seven_days
    return PlanFigures(
        heading=column.heading,
        plan=plan.name,
        athlete=plan.athlete,
        file=column.file,
        working_weeks=len(working),
        from_rpe=promise.from_rpe,
        required_only=promise.required_only,
        sessions=_average([len(week.sessions) * scale for week in working]),
        session_minutes=_average([session.minutes for week in working for session in week.sessions]),
        week_minutes=_average([week.minutes * scale for week in working]),
        weighted_hours=_weighted(gap for found in days.values() for gap in _gaps(found, numbers)),
        must=must,
        should=should,
        muscles=tuple(_muscle(muscle, found, numbers, ceiling, scale) for muscle, found in days.items()),
        weeks=tuple(_week(at, week, summary) for at, (week, summary) in enumerate(_with_weeks(plan, looked_at), 1)),
    )


def _muscle(
    muscle: Muscle, days: Sequence[_MuscleDay], working: frozenset[int], ceiling: Fraction, scale: Fraction
) -> MuscleFigures:
    weeks = {number: [each for each in days if each.day.week.number == number] for number in sorted(working)}
    gaps = _gaps(days, working)
    past = [sum((max(NONE, each.sets - ceiling) for each in week), NONE) for week in weeks.values()]
    return MuscleFigures(
        muscle=muscle,
        sets=_mean([sum((each.sets for each in week), NONE) * scale for week in weeks.values()]),
        largest_session=max((each.sets for week in weeks.values() for each in week), default=NONE),
        beyond_ceiling=_mean([week * scale for week in past]),
        exposures=_mean([sum(each.direct > 0 for each in week) * scale for week in weeks.values()]),
        shortest_hours=min((gap.hours for gap in gaps), default=None),
        weighted_hours=_weighted(gaps),
    )


def _days(ledger: Ledger, muscle: Muscle) -> tuple[_MuscleDay, ...]:
    """The sessions with a counted set for the muscle, in order."""
    found = ((day, day.by_muscle.get(muscle.word, ())) for day in ledger.days)
    return tuple(
        _MuscleDay(
            day,
            sum((share.sets * share.weight for share in shares), NONE),
            sum(share.sets for share in shares if share.weight >= 1),
        )
        for day, shares in found
        if shares
    )


def _gaps(days: Sequence[_MuscleDay], working: frozenset[int]) -> tuple[_Gap, ...]:
    """From each exposure to the next one, where the later lies in a working week; in whole days, across all weeks."""
    return tuple(
        _Gap(HOURS_OF_A_DAY * (after.day.position - before.day.position), after.direct)
        for before, after in pairwise(each for each in days if each.direct)
        if after.day.week.number in working
    )


def _weighted(gaps: Iterable[_Gap]) -> Fraction | None:
    """The mean of hours, each gap weighing as many sets as come after it."""
    weighed = [(gap.hours * gap.sets, gap.sets) for gap in gaps]
    sets = sum(each for _, each in weighed)
    return Fraction(sum(hours for hours, _ in weighed), sets) if sets else None


def _average(values: Sequence[Fraction]) -> Average | None:
    return _mean(values) if values else None


def _mean(values: Sequence[Fraction]) -> Average:
    return Average(sum(values, NONE) / len(values), min(values), max(values))


def _with_weeks(plan: Plan, summaries: Iterable[WeekSummary]) -> Iterator[tuple[Week, WeekSummary]]:
    weeks = {week.number: week for week in plan.weeks}
    return ((weeks[summary.number], summary) for summary in summaries)


def _week(number: int, week: Week, summary: WeekSummary) -> WeekFigures:
    segments = (segment for session in week.sessions for line in session.lines for segment in line.work)
    return WeekFigures(
        number=number,
        kind=week.kind,
        sets=summary.sets,
        stated=sum(segment.sets for segment in segments if known_effort(segment) is not None),
        highest_effort=summary.highest_effort,
        mean_effort=summary.mean_effort,
    )


def _breaches(plan: Plan, promise: Promise) -> tuple[int, int]:
    """How many `must` and how many `should` the plan breaks; waivers are used, and idle ones are not counted."""
    codes = {measure.code.number for measure in MEASURES}
    found = [breach.severity for breach in breaches(plan, promise) if breach.code.number in codes]
    return found.count(Severity.ERROR), found.count(Severity.WARNING)
