"""Would a changed week break a `must` rule that the plan keeps?

Comes in: a plan, its promise, and one changed week at a time. Goes out: the rule that stands in the way, or none.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from setwright.check.bounds import distance, fits
from setwright.check.faults import is_sound
from setwright.check.figures.sets import WHOLE_PLAN, Day, Ledger
from setwright.check.measure import Figure, Measure
from setwright.check.measures import MEASURES
from setwright.check.waivers import waiving
from setwright.diagnostics import Severity
from setwright.plan import Movement, Plan, Week, WeekKind
from setwright.record import record, replace
from setwright.rules import Promise, Rule, Scope

ASKED_AT_MOST = 200  # changed weeks that one ledger keeps in mind

Place = tuple[int, str, int, int | None]  # which rule, whose figure, which week, which day of it


@record
class _Must:
    """A rule that must be kept, by its place in the promise; one for every muscle names them."""

    number: int
    rule: Rule
    measure: Measure


@record
class _Held:
    """A figure of a rule: where, and how far outside (None: it fits, or the breach is waived)."""

    place: Place
    off: Fraction | None


class Keeper:
    """The `must` rules of a plan, asked about one changed line after the other.

    A figure that fitted has to fit still, and one that was outside may not go further out. Only the weeks whose figures
    hang on the changed one are measured again, and only for the muscles that the line trains, so that a set costs the
    same in a long plan as in a short one.
    """

    def __init__(self, plan: Plan, promise: Promise) -> None:
        self._plan, self._promise = plan, promise
        self._ledger = ledger = Ledger(plan, promise)
        self._asked = 0
        self._rules = list(_must_rules(promise, ledger))
        self._for_movement: dict[str, list[_Must]] = {}
        self._off = {held.place: held.off for held in _figures(self._rules, ledger) if held.off is not None}
        self._reach = _reaches(ledger) if self._rules else [range(at, at + 1) for at in range(len(plan.weeks))]

    def reach(self, at: int) -> range:
        """The places of the weeks whose figures hang together with those of the week at `at`."""
        return self._reach[at]

    def stopping(self, weeks: Sequence[Week], at: int, movement: Movement) -> Rule | None:
        """The first rule that `weeks` would break by a change of `movement`'s sets at `at`; else the change is kept."""
        rules = self._concerned(movement)
        if not rules:
            return None
        reach = self._reach[at]
        found: list[_Held] = []
        for held in _figures(rules, self._ledger_of(tuple(weeks[reach.start : reach.stop]))):
            if held.off is not None and (held.place not in self._off or held.off > self._off[held.place]):
                return self._promise.rules[held.place[0]]
            found.append(held)
        self._remember(found)
        return None

    def _ledger_of(self, weeks: tuple[Week, ...]) -> Ledger:
        self._asked += 1
        if self._asked % ASKED_AT_MOST == 0:
            self._ledger = Ledger(self._plan, self._promise)
        return self._ledger.of(weeks)

    def _remember(self, found: Sequence[_Held]) -> None:
        for held in found:
            if held.off is not None:
                self._off[held.place] = held.off
            else:
                self._off.pop(held.place, None)

    def _concerned(self, movement: Movement) -> list[_Must]:
        """The rules whose figures the movement's sets have a part in, each narrowed to the muscles it trains."""
        known = self._for_movement.get(movement.name)
        if known is None:
            trained = {word for word, _ in movement.works}
            groups = {word for word, members in self._plan.groups if trained.intersection(members)}
            narrowed = (_narrowed(must, trained | groups) for must in self._rules)
            known = self._for_movement[movement.name] = [must for must in narrowed if must is not None]
        return known


def _must_rules(promise: Promise, ledger: Ledger) -> Iterator[_Must]:
    known = {measure.name: measure for measure in MEASURES}
    for number, rule in enumerate(promise.rules):
        measure = known.get(rule.measure)
        if rule.severity is not Severity.ERROR or measure is None or not is_sound(rule, measure):
            continue
        if rule.scope is Scope.EVERY_MUSCLE:
            words = tuple(muscle.word for muscle in ledger.trained_directly)
            rule = replace(rule, scope=Scope.MUSCLES, subjects=words)
        yield _Must(number, rule, measure)


def _narrowed(must: _Must, words: set[str]) -> _Must | None:
    if must.rule.scope is not Scope.MUSCLES:
        return must
    subjects = tuple(word for word in must.rule.subjects if word in words)
    return replace(must, rule=replace(must.rule, subjects=subjects)) if subjects else None


def _figures(rules: Sequence[_Must], ledger: Ledger) -> Iterator[_Held]:
    for must in rules:
        for figure in must.measure.figures(ledger, must.rule):
            day = figure.session.offset if figure.session else None
            place = (must.number, figure.subject.word, figure.week.number, day)
            yield _Held(place, _off(figure, must.rule, ledger))


def _off(figure: Figure, rule: Rule, ledger: Ledger) -> Fraction | None:
    if fits(figure.value, rule.bound):
        return None
    if waiving(ledger.promise.waivers, rule.measure, figure.subject, figure.week, ledger.plan):
        return None
    return distance(figure.value, rule.bound)


def _reaches(ledger: Ledger) -> list[range]:
    """For each week, the stretch of weeks whose figures hang together with its own.

    It begins with the working week before, from which sets rise, and ends with the working week after, or a later one
    where only then all that the week trains is trained again: until then recovery is counted.
    """
    working = [week.kind is WeekKind.WORKING for week, _ in ledger.weeks]
    trained = [_trained(days) for _, days in ledger.weeks]
    return [range(_first(at, working), _last(at, working, trained) + 1) for at in range(len(working))]


def _first(at: int, working: list[bool]) -> int:
    return next((before for before in range(at - 1, -1, -1) if working[before]), 0)


def _last(at: int, working: list[bool], trained: list[frozenset[str]]) -> int:
    waiting = trained[at]
    for after in range(at + 1, len(working)):
        waiting -= trained[after]
        if working[after] and not waiting:
            return after
    return len(working) - 1


def _trained(days: Sequence[Day]) -> frozenset[str]:
    """The muscles with direct sets, and the plan as a whole where there are any sets."""
    words = (word for day in days for word, shares in day.by_muscle.items() if any(s.weight >= 1 for s in shares))
    return frozenset((*words, *(WHOLE_PLAN.word for day in days if day.lines)))
