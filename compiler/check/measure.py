"""What a measure is: a word of the language, a unit, and a function from a plan's counted sets to figures.

Comes in: a `Ledger` and a rule. Goes out: `Figure`s, fitting or not; holding them to the bound is not a measure's work.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from fractions import Fraction

from setwright.check.figures.sets import WHOLE_PLAN, Ledger, Part, Subject
from setwright.diagnostics import Code
from setwright.plan import Session, Week
from setwright.record import record
from setwright.rules import BoundUnit, Rule, Scope


@record
class Figure:
    """One number that a rule bounds: whose, in which week and session (None: the week's), and the lines behind it."""

    subject: Subject
    week: Week
    session: Session | None
    value: Fraction
    parts: tuple[Part, ...]


@record
class Measure:
    """A measure of the language, with what the reference prints about it.

    `code` is what its breach is reported as, and its message may use `number`, `sets`, `sessions`, `whom`, `weeks`,
    `session` and `bound`. `part` says what a line adds, from `number`, `sets` and `sessions`. `scopes` are the subjects
    it takes; `after_sets` is True where it takes `after 6 sets`.
    """

    name: str
    unit: BoundUnit
    code: Code
    figures: Callable[[Ledger, Rule], Iterable[Figure]]
    scopes: frozenset[Scope]
    part: str
    about: str
    weeks: str
    example: str
    after_sets: bool = False


PLAN_OR_MUSCLES = frozenset({Scope.PLAN, Scope.EVERY_MUSCLE, Scope.MUSCLES})


def subjects(rule: Rule, ledger: Ledger) -> Iterator[Subject]:
    """Whom a rule speaks of, each held by itself; a word that nothing declares is left to the linker's error."""
    match rule.scope:
        case Scope.PLAN:
            yield WHOLE_PLAN
        case Scope.EVERY_MUSCLE:
            for muscle in ledger.trained_directly:
                yield Subject(muscle.word, muscle.title, (muscle.word,))
        case Scope.MUSCLES:
            titles = {muscle.word: muscle.title for muscle in ledger.plan.muscles}
            groups = dict(ledger.plan.groups)
            for word in rule.subjects:
                if word in groups:
                    yield Subject(word, word, groups[word])
                elif word in titles:
                    yield Subject(word, titles[word], (word,))
        case Scope.RATIO:
            return
