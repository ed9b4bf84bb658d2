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
    """One number that a rule bounds: whose, in which week and session (None: the week's), and the lines behind it.

    `words` stand in its place where the number alone would tell a person too little.
    """

    subject: Subject
    week: Week
    session: Session | None
    value: Fraction
    parts: tuple[Part, ...]
    words: str | None = None


@record
class Measure:
    """A measure of the language, with what the reference prints about it.

    `code` is what its breach is reported as, and its message may use `number`, `sets`, `sessions`, `whom`, `weeks`,
    `session` and `bound`. `part` says what a line adds, from `number`, `sets`, `sessions` and `rest` (of minutes).
    `scopes` are the subjects it takes; `after_sets` is True where it takes `after 6 sets`. `line_by_line` is True where
    each line's number is itself held to the bound, so that the one furthest outside is told first.
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
    line_by_line: bool = False


PLAN_OR_MUSCLES = frozenset({Scope.PLAN, Scope.EVERY_MUSCLE, Scope.MUSCLES})
PLAN_MUSCLES_OR_PATTERNS = PLAN_OR_MUSCLES | {Scope.PATTERNS}  # where a line speaks, and not its counted sets


def subjects(rule: Rule, ledger: Ledger) -> Iterator[Subject]:
    """Whom a rule speaks of, each held by itself; a word that nothing declares is left to the linker's error."""
    match rule.scope:
        case Scope.PLAN:
            yield WHOLE_PLAN
        case Scope.EVERY_MUSCLE:
            for muscle in ledger.trained_directly:
                yield Subject(muscle.word, muscle.title, (muscle.word,))
        case Scope.MUSCLES:
            named = (named_subject(word, ledger) for word in rule.subjects)
            yield from (subject for subject in named if subject is not None)
        case Scope.PATTERNS:
            yield from (named_subject(word, ledger) or Subject(word, word, (), word) for word in rule.subjects)
        case Scope.RATIO:
            return


def named_subject(word: str, ledger: Ledger) -> Subject | None:
    """The group or muscle of that word, None where the plan knows neither."""
    members = dict(ledger.plan.groups).get(word)
    if members is not None:
        return Subject(word, word, members)
    titles = (muscle.title for muscle in ledger.plan.muscles if muscle.word == word)
    return next((Subject(word, title, (word,)) for title in titles), None)
