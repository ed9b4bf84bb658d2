"""What a plan promises and wishes for: rules, waivers and wishes as data.

`link` makes them, `check` holds plans to the promises, and `emphasis` carries out the wishes.
"""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from setwright.diagnostics import Severity
from setwright.record import record
from setwright.science.counting import Counting
from setwright.source import Span


class BoundUnit(Enum):
    """What a bound is written in."""

    NUMBER = ""
    RPE = "RPE"
    PERCENT = "%"
    MINUTES = "min"
    HOURS = "h"


@record
class Bound:
    """A range, open on either side when None; both ends belong to it unless `strict` (`<`, `>`)."""

    low: Fraction | None
    high: Fraction | None
    unit: BoundUnit
    text: str  # as written: `10-20`, `<= RPE 8`
    strict: bool = False


class Scope(Enum):
    """Whose figure a rule bounds."""

    PLAN = "plan"  # no `for`
    EVERY_MUSCLE = "every muscle"
    MUSCLES = "muscles"  # named muscles or groups, each held by itself
    PATTERNS = "patterns"  # the same with movement patterns among them
    RATIO = "ratio"  # `a : b`


@record
class Where:
    """Which weeks a rule or waiver is about; `weeks` None means those the measure looks at by itself."""

    weeks: tuple[int, ...] | None = None
    every_week: bool = False
    block: str | None = None
    after_sets: Fraction | None = None  # recovery: only after sessions with at least so many sets


@record
class Rule:
    """One promise: severity, measure, subject, bound, where, reason."""

    severity: Severity  # must: ERROR, should: WARNING
    measure: str
    scope: Scope
    subjects: tuple[str, ...]  # muscle, group or pattern words, or the two sides of a ratio
    bound: Bound
    where: Where
    reason: str | None
    span: Span
    ruleset: str | None  # its name, None for a rule written in the plan itself


@record
class Waiver:
    """`waive weekly-sets for calves in week 3 "Travel."`"""

    measure: str
    scope: Scope
    subjects: tuple[str, ...]
    where: Where
    reason: str | None
    span: Span


@record
class Promise:
    """All that a plan is held to, and how sets are counted."""

    rules: tuple[Rule, ...] = ()
    waivers: tuple[Waiver, ...] = ()
    counting: Counting = Counting.FRACTIONAL
    from_rpe: Fraction | None = None  # easier sets are not counted
    required_only: bool = False  # leave out optional lines


@record
class Wish:
    """`emphasis lats +2 sets per week`: sets per 7 days to add (positive) or to take (negative) for one muscle."""

    muscle: str
    sets: int
    span: Span
