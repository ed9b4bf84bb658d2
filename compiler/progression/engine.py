"""From what was asked and what was done to what is asked next.

Comes in: a progression, where it stands, and the last exposure. Goes out: where it stands then. Every value stays on
its scale; the same exposures always lead to the same place.
"""

from __future__ import annotations

from fractions import Fraction

from setwright.prescription import Bodyweight, Effort, Intensity, PercentOfBest, Reps, Weight
from setwright.progression.model import (
    Action,
    Amount,
    Compare,
    Condition,
    How,
    Mark,
    Moved,
    Percent,
    Progression,
    Rule,
    Subject,
)
from setwright.quantities import Mass, Unit
from setwright.record import record, replace

# The scales that a written prescription has too; a load that moves stays above nothing.
SETS = (Fraction(1), Fraction(100))
REPS = (Fraction(1), Fraction(1000))
RPE = (Fraction(1), Fraction(10))
PERCENT = (Fraction(1, 2), Fraction(150))
LOAD = {Unit.KG: (Fraction(1, 2), Fraction(1000)), Unit.LB: (Fraction(1), Fraction(2205))}


@record
class Asked:
    """What one exposure asks: sets alike. `bottom` and `top` are the ends of the range of repetitions as written."""

    sets: int
    reps: Reps
    intensity: Intensity | None
    bottom: Fraction
    top: Fraction

    @property
    def target(self) -> Fraction:
        """The repetitions asked of each set; the bottom of a range."""
        return self.reps.low

    @property
    def effort(self) -> Fraction | None:
        """The effort asked for (RPE), or None where none is stated."""
        return self.intensity.high if isinstance(self.intensity, Effort) else None


@record
class Done:
    """What one exposure came to: the repetitions of each set in order, and the effort reported (RPE)."""

    reps: tuple[Fraction, ...]
    effort: Fraction | None = None


@record
class Standing:
    """Where a line stands: what its next exposure asks, and for how many exposures running each rule has matched."""

    asked: Asked
    running: tuple[int, ...]


def begun(progression: Progression, asked: Asked) -> Standing:
    """Before the first exposure."""
    return Standing(asked, (0,) * len(progression.rules))


def as_asked(asked: Asked) -> Done:
    """The exposure that goes to plan: every set done as asked, at the effort asked."""
    return Done((asked.target,) * asked.sets, asked.effort)


def advanced(progression: Progression, standing: Standing, done: Done) -> Standing:
    """Where the line stands after an exposure: the first rule that matched often enough is carried out."""
    running = _counted(progression.rules, standing, done)
    asked = standing.asked
    for index, rule in enumerate(progression.rules):
        if running[index] >= rule.times:
            running[index] = 0  # what was answered is not counted again
            for action in rule.actions:
                asked = _applied(action, asked)
            break
    if progression.moves(Moved.REPS):
        asked = replace(asked, reps=_single(asked.reps, asked.target))
    return Standing(asked, tuple(running))


# ---- conditions ----------------------------------------------------------------------------------


def _counted(rules: tuple[Rule, ...], standing: Standing, done: Done) -> list[int]:
    return [
        count + 1 if rule.condition is None or _holds(rule.condition, standing.asked, done) else 0
        for rule, count in zip(rules, standing.running, strict=True)
    ]


def _holds(condition: Condition, asked: Asked, done: Done) -> bool:
    wanted = _wanted(condition, asked)
    if wanted is None:
        return False
    reps = (*done.reps, *(Fraction(0) for _ in range(asked.sets - len(done.reps))))  # a set left out has none
    match condition.subject:
        case Subject.ALL:
            return all(_compares(condition.compare, each, wanted) for each in reps)
        case Subject.ANY:
            return any(_compares(condition.compare, each, wanted) for each in reps)
        case Subject.LAST:
            return _compares(condition.compare, reps[-1], wanted)
        case Subject.EFFORT:
            return done.effort is not None and _compares(condition.compare, done.effort, wanted)


def _wanted(condition: Condition, asked: Asked) -> Fraction | None:
    match condition.mark:
        case None:
            return condition.number
        case Mark.TOP:
            return asked.top + condition.number
        case Mark.BOTTOM:
            return asked.bottom + condition.number
        case Mark.TARGET if condition.subject is Subject.EFFORT:
            return None if asked.effort is None else asked.effort + condition.number
        case Mark.TARGET:
            return asked.target + condition.number


def _compares(compare: Compare, value: Fraction, wanted: Fraction) -> bool:
    match compare:
        case Compare.LESS:
            return value < wanted
        case Compare.AT_MOST:
            return value <= wanted
        case Compare.EQUAL:
            return value == wanted
        case Compare.AT_LEAST:
            return value >= wanted
        case Compare.MORE:
            return value > wanted


# ---- actions -------------------------------------------------------------------------------------


def _applied(action: Action, asked: Asked) -> Asked:
    match action.moved:
        case Moved.LOAD:
            return replace(asked, intensity=_with_load(asked.intensity, action))
        case Moved.REPS:
            return replace(asked, reps=_single(asked.reps, _repetitions(asked, action)))
        case Moved.SETS:
            return replace(asked, sets=int(_within(_moved(Fraction(asked.sets), action), SETS)))
        case Moved.EFFORT:
            return replace(asked, intensity=_with_effort(asked.intensity, action))


def _repetitions(asked: Asked, action: Action) -> Fraction:
    """Steps stay within a range that was written; a number that is set may lie outside."""
    match action.amount:
        case Mark.TOP:
            return asked.top
        case Mark.BOTTOM:
            return asked.bottom
        case _:
            moved = _moved(asked.target, action)
    has_range = asked.bottom < asked.top and action.how is not How.TO
    return _within(moved, (asked.bottom, asked.top) if has_range else REPS)


def _single(reps: Reps, count: Fraction) -> Reps:
    return replace(reps, low=count, high=count)


def _with_effort(intensity: Intensity | None, action: Action) -> Intensity | None:
    if not isinstance(intensity, Effort):
        return intensity
    low, high = (_within(_moved(end, action), RPE) for end in (intensity.low, intensity.high))
    return replace(intensity, low=low, high=high)


def _with_load(intensity: Intensity | None, action: Action) -> Intensity | None:
    """The load moved; an effort, or a load in other terms than the action's, stays as it is."""
    worked_out = isinstance(action.amount, Percent)
    match intensity:
        case Weight(mass=mass, written=written):
            moved = _moved_mass(mass, action, LOAD[mass.unit])
            return Weight(moved, written and not worked_out) if moved != mass else intensity
        case Bodyweight(added=added, written=written):
            if added is None and not isinstance(action.amount, Mass):
                return intensity
            start = added or Mass(Fraction(0), _unit_of(action.amount))
            most = LOAD[start.unit][1]
            moved = _moved_mass(start, action, (-most, most))
            return Bodyweight(moved, written and not worked_out) if moved != start else intensity
        case PercentOfBest(percent=percent) if isinstance(action.amount, Percent):
            return replace(intensity, percent=_within(_moved(percent, action), PERCENT))
        case _:
            return intensity


def _unit_of(amount: Amount) -> Unit:
    return amount.unit if isinstance(amount, Mass) else Unit.KG


def _moved_mass(mass: Mass, action: Action, scale: tuple[Fraction, Fraction]) -> Mass:
    match action.amount:
        case Mass() as by:
            amount = _signed(mass.amount, by.to(mass.unit).amount, action.how)
        case Percent(value=percent) if action.how is not How.TO:
            amount = _signed(mass.amount, abs(mass.amount) * percent / 100, action.how)
        case _:
            return mass
    return Mass(_within(amount, scale), mass.unit)


def _moved(value: Fraction, action: Action) -> Fraction:
    match action.amount:
        case Fraction() as by:
            return _signed(value, by, action.how)
        case Percent(value=by):
            return _signed(value, by, action.how)
        case _:
            return value


def _signed(value: Fraction, by: Fraction, how: How) -> Fraction:
    match how:
        case How.MORE:
            return value + by
        case How.LESS:
            return value - by
        case How.TO:
            return by


def _within(value: Fraction, scale: tuple[Fraction, Fraction]) -> Fraction:
    return min(max(value, scale[0]), scale[1])
