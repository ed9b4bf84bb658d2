"""The load of each segment of a line, in order: from percent, effort, weight, or the segment before.

Percent is of the athlete's best. An effort gives the model's share of the best at (repetitions + repetitions in
reserve), with the top of a repetition range and of an effort range, so that the whole range stays at or under the
target. Everything is rounded to what the equipment can make; what `then` changes is the load as it is on the bar.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Any

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import athletes as codes
from setwright.fit.bests import Bests
from setwright.fit.makers import Made, Makers
from setwright.plan import Line, Load, Movement, Segment, SegmentKind, Step
from setwright.prescription import (
    Bodyweight,
    ChangeByMass,
    ChangeByPercent,
    Effort,
    Intensity,
    PercentOfBest,
    Weight,
)
from setwright.quantities import Mass, Unit
from setwright.record import replace
from setwright.science.effort import LOWEST_RPE, reps_in_reserve
from setwright.science.repetitions import BeyondModel, Model, share_of_best, spread

Report = Callable[[Diagnostic], None]
Change = ChangeByPercent | ChangeByMass


class LineLoader:
    """Puts loads into lines. `bests` is None for a plan without an athlete; `who` is whom messages name."""

    def __init__(self, makers: Makers, bests: Bests | None, who: str, report: Report) -> None:
        self._makers = makers
        self._bests = bests
        self._who = who
        self._report = report

    def loaded(self, line: Line, week: int) -> Line:
        """The line with a load in every segment that has one."""
        before: Segment | None = None
        work: list[Segment] = []
        for segment in line.segments:
            if segment.kind is SegmentKind.WARM_UP:
                continue
            if before is not None and _hangs_on_body(before, work) and isinstance(segment.intensity, Change):
                before = self._changed_on_body(segment, segment.intensity, before, line.movement)
            else:
                before = self._loaded(segment, line.movement, before, week)
            work.append(before)
        first = work[0].load if work else None
        warm_ups = [
            self._warm_up(segment, line.movement, first)
            for segment in line.segments
            if segment.kind is SegmentKind.WARM_UP
        ]
        return replace(line, segments=(*warm_ups, *work))

    def _loaded(self, segment: Segment, movement: Movement, before: Segment | None, week: int) -> Segment:
        match segment.intensity:
            case Bodyweight() as bodyweight:
                return self._with_added(segment, bodyweight, movement)
            case Weight(mass=mass, written=written):
                target: Mass | None = mass
            case _:
                target, written = self._target(segment, movement, before), False
        if target is None:
            return segment
        made = self._makers.made(movement, target, written=written, most=_before_deload(segment, target))
        self._warn(made, movement, target, segment, week)
        return _with_load(segment, target, self._by_model(made.load, segment, movement), worked_out=not written)

    def _target(self, segment: Segment, movement: Movement, before: Segment | None) -> Mass | None:
        match segment.intensity:
            case PercentOfBest() | Effort():
                return self._of_best(segment, movement)
            case ChangeByPercent(percent=percent):
                return before.load.mass.times(1 + percent / 100) if before and before.load else None
            case ChangeByMass(mass=mass):
                changed = before.load.mass.plus(mass) if before and before.load else None
                return changed if changed and changed.amount > 0 else None
            case _:
                return None

    def _of_best(self, segment: Segment, movement: Movement, by: Model | None = None) -> Mass | None:
        """What a percent or an effort comes to, exact; `by` is asked in place of the models that apply."""
        match segment.intensity:
            case PercentOfBest(percent=percent, of=of):
                best = self._best(segment, movement, of, by)
                return best.times(percent / 100) if best else None
            case Effort() as effort:
                best = self._best(segment, movement, None, by)
                share = self._share(segment, effort, movement, by) if best else None
                return best.times(share) if best and share else None
            case _:
                return None

    def _by_model(self, load: Load, segment: Segment, movement: Movement) -> Load:
        """The load with the model that it rests on, and what other formulas give where that is more than a step off."""
        model = self._model(segment.intensity, movement)
        if model is None:
            return load

        def load_by(formula: Model) -> Mass:
            target = self._of_best(segment, movement, formula)
            assert target is not None  # every formula goes as far as any model does
            return self._makers.made(movement, target, written=False).load.mass

        least, greatest = spread(load_by)
        ends = (min(least, load.mass, key=_kilograms), max(greatest, load.mass, key=_kilograms))
        apart = any(self._makers.makes_between(movement, load.mass, end) for end in ends)
        return replace(load, model=model.value, spread=ends if apart else None)

    def _model(self, intensity: Intensity | None, movement: Movement) -> Model | None:
        """The model behind a load; None where no number of it was estimated."""
        if self._bests is None:
            return None
        match intensity:
            case Effort():
                return self._bests.model(movement)
            case PercentOfBest(of=of):
                other = self._bests.movement_of(of) if of else movement
                return self._bests.estimated_by(other) if other else None
            case _:
                return None

    def _best(self, segment: Segment, movement: Movement, of: str | None, by: Model | None) -> Mass | None:
        if self._bests is None:
            return None
        other = self._bests.movement_of(of) if of else movement
        try:
            return self._bests.of(other, by) if other else None
        except BeyondModel as error:
            self._report(codes.BEYOND_MODEL.at(segment.span, movement=movement.name, reason=error))
            return None

    def _share(self, segment: Segment, effort: Effort, movement: Movement, by: Model | None) -> Fraction | None:
        """The share of the best; in a deload the least of what its effort and its scaled load allow."""
        if not segment.reps.is_repetitions:
            return None
        share = self._share_at(segment, effort.high, movement, by)
        if share is None:
            return None
        if segment.effort_before is None:
            return share * segment.load_factor
        worked = self._share_at(segment, segment.effort_before, movement, by)
        return min(share, worked * segment.load_factor) if worked else share

    def _share_at(self, segment: Segment, rpe: Fraction, movement: Movement, by: Model | None) -> Fraction | None:
        assert self._bests is not None
        if rpe < LOWEST_RPE:
            self._report(codes.EFFORT_TOO_LOW.at(segment.span, intensity=segment.intensity, movement=movement.name))
            return None
        try:
            return share_of_best(by or self._bests.model(movement), segment.reps.high + reps_in_reserve(rpe))
        except BeyondModel as error:
            self._report(codes.BEYOND_MODEL.at(segment.span, movement=movement.name, reason=error))
            return None

    def _changed_on_body(self, segment: Segment, change: Change, before: Segment, movement: Movement) -> Segment:
        """A mass more or less beside the body's own; a percent of both together is not known."""
        if before.load is None or isinstance(change, ChangeByPercent):
            return segment
        return self._with_added(segment, Bodyweight(before.load.mass.plus(change.mass), written=False), movement)

    def _with_added(self, segment: Segment, bodyweight: Bodyweight, movement: Movement) -> Segment:
        added = bodyweight.added
        if added is None or added.amount == 0:
            return segment
        hung = replace(movement, handling=None)  # on a belt or held, whatever the movement else needs
        mass = Mass(abs(added.amount), added.unit)
        made = self._makers.made(hung, mass, written=bodyweight.written, most=_before_deload(segment, mass))
        load = made.load
        if added.amount < 0:
            load = replace(load, mass=load.mass.times(Fraction(-1)))
        return _with_load(segment, added, load, worked_out=not bodyweight.written)

    def _warm_up(self, segment: Segment, movement: Movement, work: Load | None) -> Segment:
        """A share of the first work set's load, as it is on the bar."""
        if work is None or work.mass.amount <= 0 or not isinstance(segment.intensity, PercentOfBest):
            return segment
        target = work.mass.times(segment.intensity.percent / 100)
        return replace(segment, load=self._makers.made(movement, target, written=False).load)

    def _warn(self, made: Made, movement: Movement, target: Mass, segment: Segment, week: int) -> None:
        asked = Mass(target.to(made.load.mass.unit).amount, made.load.mass.unit)
        facts: dict[str, Any] = {"movement": movement.name, "asked": asked, "athlete": self._who, "week": week}
        if made.too_heavy:
            self._report(codes.LOAD_PAST_PLATES.at(segment.span, most=made.load.mass, **facts))
        if made.too_light:
            self._report(codes.LOAD_BELOW_BAR.at(segment.span, least=made.load.mass, **facts))


def _kilograms(mass: Mass) -> Fraction:
    return mass.to(Unit.KG).amount


def _before_deload(segment: Segment, lighter: Mass) -> Mass | None:
    """The written load that a deload made lighter; None for any other."""
    is_mass = isinstance(segment.intensity, Weight | Bodyweight)
    return lighter.times(1 / segment.load_factor) if is_mass and segment.load_factor < 1 else None


def _hangs_on_body(before: Segment, work: list[Segment]) -> bool:
    """True where the load of the segment before is beside the body's weight, itself or through other changes."""
    stated = next((each for each in reversed(work) if not isinstance(each.intensity, Change)), before)
    return isinstance(stated.intensity, Bodyweight)


def _with_load(segment: Segment, target: Mass, load: Load, *, worked_out: bool) -> Segment:
    exact = str(target.to(load.mass.unit))
    steps = (*segment.steps, Step("load", str(segment.intensity), exact, segment.span))
    if exact != str(load.mass):
        steps = (*steps, Step("rounding", exact, str(load.mass), segment.span))
    intensity = _resolved(segment.intensity, load) if worked_out else segment.intensity
    return replace(segment, intensity=intensity, load=load, steps=steps)


def _resolved(intensity: Intensity | None, load: Load) -> Intensity | None:
    """A load between two that were written, or a deload's, is printed as what can be loaded."""
    match intensity:
        case Weight():
            return replace(intensity, mass=load.mass)
        case Bodyweight():
            return replace(intensity, added=load.mass)
        case _:
            return intensity
