"""What the plan's rules ask of weekly sets, week by week, and where the plan lies outside it.

Comes in: a plan and its promise. Goes out: `Targets`, plain data. The figures are those that the measure `weekly-sets`
gives to `check`, so that a mark on a sheet and a breach are the same thing.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator
from fractions import Fraction

from setwright.check.bounds import Side, side
from setwright.check.faults import is_sound
from setwright.check.figures.sets import Ledger, Subject
from setwright.check.measure import Figure
from setwright.check.measures import weekly_sets
from setwright.check.waivers import waiving
from setwright.diagnostics import Severity
from setwright.plan import Plan
from setwright.record import record
from setwright.rules import Promise, Rule


@record
class End:
    """One end of a range: a number of sets that belongs to it unless `strict`. `is_must` says that a `must` asks it."""

    value: Fraction
    strict: bool
    is_must: bool


@record
class Target:
    """What is asked of one subject in one week: the tightest of each end, None where nothing is.

    `value` is the figure held to it: sets per 7 days, counted as the promise counts. `side` is where it lies by the
    first rule that it breaks, `must` before `should`; `is_waived` says that the plan has said yes to that.
    """

    week: int
    value: Fraction
    low: End | None
    high: End | None
    side: Side
    is_waived: bool


@record
class SubjectTargets:
    """A muscle, a group or the whole plan, with the weeks that some rule concerns, in order."""

    subject: Subject
    weeks: tuple[Target, ...]

    @property
    def is_muscle(self) -> bool:
        """True for a muscle by itself, whose figures the volume has, too."""
        return self.subject.members == (self.subject.word,)


@record
class Targets:
    """Everything that rules ask of weekly sets, in the order in which the rules first speak of it."""

    subjects: tuple[SubjectTargets, ...] = ()

    def of(self, muscle: str) -> SubjectTargets | None:
        """What is asked of a muscle by its word, None where no rule speaks of it."""
        return next((found for found in self.subjects if found.is_muscle and found.subject.word == muscle), None)

    def within(self, weeks: Container[int]) -> Targets:
        """The same for these weeks only; what nothing is asked of in any of them is left out."""
        kept = (
            SubjectTargets(found.subject, tuple(target for target in found.weeks if target.week in weeks))
            for found in self.subjects
        )
        return Targets(tuple(found for found in kept if found.weeks))


def targets(plan: Plan, promise: Promise) -> Targets:
    """What every sound rule about `weekly-sets` asks of each subject and week that it looks at."""
    measure = weekly_sets.MEASURE
    rules = [rule for rule in promise.rules if rule.measure == measure.name and is_sound(rule, measure)]
    if not rules:
        return Targets()
    ledger = Ledger(plan, promise)
    found: dict[Subject, dict[int, list[tuple[Rule, Figure]]]] = {}
    for rule in rules:
        for figure in measure.figures(ledger, rule):
            found.setdefault(figure.subject, {}).setdefault(figure.week.number, []).append((rule, figure))
    return Targets(
        tuple(
            SubjectTargets(subject, tuple(_target(weeks[number], plan, promise) for number in sorted(weeks)))
            for subject, weeks in found.items()
        )
    )


def _target(asked: list[tuple[Rule, Figure]], plan: Plan, promise: Promise) -> Target:
    figure = asked[0][1]  # the same for all of them: a subject's sets in one week
    by_weight = sorted((rule for rule, _ in asked), key=lambda rule: rule.severity is not Severity.ERROR)
    sides = (side(figure.value, rule.bound) for rule in by_weight)
    answering = waiving(promise.waivers, weekly_sets.MEASURE.name, figure.subject, figure.week, plan)
    return Target(
        week=figure.week.number,
        value=figure.value,
        low=max(_ends(by_weight, low=True), key=lambda end: (end.value, end.strict, end.is_must), default=None),
        high=min(
            _ends(by_weight, low=False), key=lambda end: (end.value, not end.strict, not end.is_must), default=None
        ),
        side=next((found for found in sides if found is not Side.INSIDE), Side.INSIDE),
        is_waived=bool(answering),
    )


def _ends(rules: Iterable[Rule], *, low: bool) -> Iterator[End]:
    for rule in rules:
        value = rule.bound.low if low else rule.bound.high
        if value is not None:
            yield End(value, rule.bound.strict, rule.severity is Severity.ERROR)
