"""Sets a muscle a week, in the three ways of counting, with sessions and rest between them.

Comes in: a plan and how it counts. Goes out: `Volume`, plain rows.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from itertools import pairwise

from setwright.check.figures.sets import Day, Ledger, Subject, direct_parts, total
from setwright.plan import Muscle, Plan
from setwright.record import record
from setwright.rules import Promise
from setwright.science.counting import Counting


@record
class MuscleWeek:
    """What one muscle gets in one week.

    `direct_sets`, `fractional_sets` and `total_sets` mean per 7 days; `sessions` are those of the week with a direct
    set; `max_session_sets` is the most fractional sets in one session; `rest_h_min` is the fewest hours, in whole
    days, from a session with direct sets to the one of this week that follows it (None: no such pair).
    """

    week: int
    muscle: Muscle
    direct_sets: Fraction
    fractional_sets: Fraction
    total_sets: Fraction
    sessions: int
    max_session_sets: Fraction
    rest_h_min: int | None

    def sets(self, counting: Counting) -> Fraction:
        """The sets by one way of counting."""
        match counting:
            case Counting.DIRECT:
                return self.direct_sets
            case Counting.FRACTIONAL:
                return self.fractional_sets
            case Counting.TOTAL:
                return self.total_sets


@dataclass(frozen=True)
class Volume:
    """Weeks in order, and in each the muscles that the plan trains at all, in library order."""

    rows: tuple[MuscleWeek, ...]

    def of(self, week: int, muscle: str) -> MuscleWeek:
        """The row of a week for a muscle's word. `KeyError` for a muscle that the plan does not train."""
        return self._places[week, muscle]

    @property
    def muscles(self) -> tuple[Muscle, ...]:
        """The muscles that have rows, in library order."""
        return tuple(row.muscle for row in self.rows if row.week == self.rows[0].week)

    @cached_property
    def _places(self) -> dict[tuple[int, str], MuscleWeek]:
        return {(row.week, row.muscle.word): row for row in self.rows}


def volume(plan: Plan, promise: Promise = Promise()) -> Volume:  # noqa: B008 (frozen)
    """The sets of every week and muscle, easy and optional sets left out as the promise says."""
    ledger = Ledger(plan, promise)
    by_muscle = [list(_weeks(ledger, muscle)) for muscle in ledger.trained]
    return Volume(tuple(row for week in zip(*by_muscle, strict=True) for row in week))


def _weeks(ledger: Ledger, muscle: Muscle) -> Iterable[MuscleWeek]:
    subject = Subject(muscle.word, muscle.title, (muscle.word,))
    last: int | None = None
    for week, days in ledger.weeks:
        positions = [day.position for day in days if direct_parts(day, subject)]
        earlier = positions if last is None else [last, *positions]
        direct, fractional, every = (_sets(ledger, days, subject, counting) for counting in Counting)
        scale = ledger.plan.per_seven_days
        yield MuscleWeek(
            week=week.number,
            muscle=muscle,
            direct_sets=sum(direct, Fraction(0)) * scale,
            fractional_sets=sum(fractional, Fraction(0)) * scale,
            total_sets=sum(every, Fraction(0)) * scale,
            sessions=len(positions),
            max_session_sets=max(fractional, default=Fraction(0)),
            rest_h_min=_least_rest(earlier),
        )
        last = positions[-1] if positions else last


def _sets(ledger: Ledger, days: Sequence[Day], subject: Subject, counting: Counting) -> list[Fraction]:
    return [total(ledger.parts(day, subject, counting)) for day in days]


def _least_rest(positions: Sequence[int]) -> int | None:
    return min((24 * (after - before) for before, after in pairwise(positions)), default=None)
