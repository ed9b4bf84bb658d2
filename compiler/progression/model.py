"""A progression as data: rules in order, each a condition and what it does. All parameters have their values.

`link` makes it from a declaration and a call; the engine runs it.
"""

from __future__ import annotations

from enum import Enum
from fractions import Fraction

from setwright.quantities import Mass
from setwright.record import record


class Moved(Enum):
    """What an action moves."""

    LOAD = "load"
    REPS = "reps"
    SETS = "sets"
    EFFORT = "effort"


class How(Enum):
    """How an action moves it."""

    MORE = "+"
    LESS = "-"
    TO = "="


class Subject(Enum):
    """What a condition looks at: repetitions of sets, or the effort that was reported."""

    ALL = "all"
    ANY = "any"
    LAST = "last"
    EFFORT = "effort"


class Compare(Enum):
    """How it compares."""

    LESS = "<"
    AT_MOST = "<="
    EQUAL = "="
    AT_LEAST = ">="
    MORE = ">"


class Mark(Enum):
    """A number that the line itself states: the ends of its range of repetitions, or what was asked for."""

    TOP = "top"
    BOTTOM = "bottom"
    TARGET = "target"


@record
class Percent:
    """A share of a load, or points of a percent: 10 means 10%."""

    value: Fraction


Amount = Fraction | Mass | Percent | Mark


@record
class Condition:
    """`all sets >= target + 1`: a mark and what is added to it, or a number alone."""

    subject: Subject
    compare: Compare
    mark: Mark | None
    number: Fraction


@record
class Action:
    """`load + 2.5 kg`, `reps = bottom`. Repetitions and sets take numbers, effort steps of RPE."""

    moved: Moved
    how: How
    amount: Amount


@record
class Rule:
    """What happens when its condition held so many exposures running; no condition is `otherwise`, no action `hold`."""

    condition: Condition | None
    times: int
    actions: tuple[Action, ...]


@record
class Progression:
    """Rules of which the first that matches is carried out; where none matches, nothing changes."""

    name: str
    rules: tuple[Rule, ...]

    def moves(self, moved: Moved) -> bool:
        """True where some rule moves it."""
        return any(action.moved is moved for rule in self.rules for action in rule.actions)

    @property
    def conditions(self) -> tuple[Condition, ...]:
        """Every condition there is."""
        return tuple(rule.condition for rule in self.rules if rule.condition is not None)
