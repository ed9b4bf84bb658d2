"""The load of each segment of a line, in order: from percent, effort, weight, or the segment before.

Percent is of the athlete's best. An effort gives the model's share of the best at (repetitions + repetitions in
reserve), with the top of a repetition range and of an effort range, so that the whole range stays at or under the
target. Everything is rounded to what the equipment can make; what `then` changes is the load as it is on the bar.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import athletes as codes
from setwright.fit.bests import Bests
from setwright.fit.makers import Made, Makers
from setwright.plan import Cause, Fact, Line, Load, Movement, Quantity, Segment, SegmentKind, Step
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
from setwright.science.repetitions import RELIABLE_REPS, BeyondModel, Model, share_of_best, spread

if TYPE_CHECKING:
    from setwright.fit.rough import Rough

Report = Callable[[Diagnostic], None]
Change = ChangeByPercent | ChangeByMass


class LineLoader:
    """Puts loads into lines. `bests` is None for a plan without an athlete; `who` is whom messages name."""

    def __init__(self, makers: Makers, bests: Bests | None, who: str, report: Report) -> None:
        self._makers = makers
        self._bests = bests
        self._who = who
        self._report = report
        self._rough: dict[Rough, None] = {}

    def go_by(self, bests: Bests) -> None:
        """Take other bests of the same athlete from here on."""
        self._bests = bests

    @property
    def rough(self) -> tuple[Rough, ...]:
        """The loads so far that rest on a model past what it is made for, each once."""
        return tuple(self._rough)

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
        most = _before_deload(segment, target)
        made = self._makers.made(movement, target, written=written, most=most)
        self._warn(made, movement, target, segment, week)
        load = self._by_model(made.load, segment, movement)
        self._note_rough(load, segment, movement)
        steps = self._worked_out(segment, target, movement, before)
        return self._with_load(segment, replace(made, load=load), steps, worked_out=not written, most=most)

    def _worked_out(
        self, segment: Segment, target: Mass, movement: Movement, before: Segment | None
    ) -> tuple[Step, ...]:
        """The steps from the intensity to the load as it would be exact."""
        asked, cause = segment.intensity, Cause.LOAD
        facts: tuple[Fact, ...] = ()
        related: tuple[Related, ...] = ()
        match asked:
            case PercentOfBest() | Effort():
                return self._from_best(segment, asked, target, movement)
            case ChangeByPercent() | ChangeByMass():
                cause = Cause.CHANGE
                facts = (("load_before", before.load.mass if before and before.load else None),)
                related = (Related(before.span, "the segment before"),) if before else ()
            case _:
                pass
        return (Step(Quantity.LOAD, cause, asked, target, segment.span, facts, related),)

    def _from_best(
        self, segment: Segment, asked: PercentOfBest | Effort, target: Mass, movement: Movement
    ) -> tuple[Step, ...]:
        assert self._bests is not None
        of = asked.of if isinstance(asked, PercentOfBest) else None
        other = (self._bests.movement_of(of) if of else None) or movement
        best = self._bests.of(other)
        assert best is not None
        ground, related = self._bests.ground(other)
        if isinstance(asked, PercentOfBest):
            share: Fraction | None = asked.percent / 100
            by: tuple[Fact, ...] = ()
        else:
            share = self._share_at(segment, asked.high, movement, None)
            reps = segment.reps.high
            by = (
                ("reps", reps),
                ("to_failure", reps + reps_in_reserve(asked.high)),
                ("model", self._bests.model(movement).value),
            )
        assert share is not None
        worked = best.times(share)
        facts: tuple[Fact, ...] = (("best", best), ("share", share), *by, *ground)
        step = Step(Quantity.LOAD, Cause.BEST, asked, worked, segment.span, facts, related)
        if worked == target or segment.lightened is None:
            return (step,)
        lighter: tuple[Fact, ...] = (("share", segment.load_factor),)
        if segment.effort_before is not None and isinstance(asked, Effort):
            was = Effort(segment.effort_before, segment.effort_before, asked.as_reserve)
            lighter = (*lighter, ("effort_before", was))
        return step, Step(Quantity.LOAD, Cause.DELOAD, worked, target, segment.lightened, lighter)

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

    def _note_rough(self, load: Load, segment: Segment, movement: Movement) -> None:
        """Keeps in mind a load of many repetitions that formulas disagree on.

        A deload is made lighter on purpose and goes by the effort of its work week.
        """
        if self._bests is None or load.spread is None or not isinstance(segment.intensity, Effort):
            return
        reps = segment.reps.high + reps_in_reserve(segment.effort_before or segment.intensity.high)
        if reps > RELIABLE_REPS:
            from setwright.fit.rough import Rough

            self._rough[Rough(movement.name, self._bests.model(movement), reps, segment.span)] = None

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
        changed = Bodyweight(before.load.mass.plus(change.mass), written=False)
        return self._with_added(segment, changed, movement, before)

    def _with_added(
        self, segment: Segment, bodyweight: Bodyweight, movement: Movement, before: Segment | None = None
    ) -> Segment:
        added = bodyweight.added
        if added is None or added.amount == 0:
            return segment
        hung = replace(movement, handling=None)  # on a belt or held, whatever the movement else needs
        mass = Mass(abs(added.amount), added.unit)
        most = _before_deload(segment, mass)
        made = self._makers.made(hung, mass, written=bodyweight.written, most=most)
        if added.amount < 0:
            made = replace(made, load=replace(made.load, mass=made.load.mass.times(Fraction(-1))))
        steps = self._worked_out(segment, added, movement, before)
        return self._with_load(segment, made, steps, worked_out=not bodyweight.written, most=most)

    def _warm_up(self, segment: Segment, movement: Movement, work: Load | None) -> Segment:
        """A share of the first work set's load, as it is on the bar."""
        if work is None or work.mass.amount <= 0 or not isinstance(segment.intensity, PercentOfBest):
            return segment
        target = work.mass.times(segment.intensity.percent / 100)
        made = self._makers.made(movement, target, written=False)
        facts = (("work_load", work.mass),)
        step = Step(Quantity.LOAD, Cause.WARM_UP, segment.intensity, target, segment.span, facts)
        return self._with_load(segment, made, (step,), worked_out=False)

    def _with_load(
        self, segment: Segment, made: Made, steps: tuple[Step, ...], *, worked_out: bool, most: Mass | None = None
    ) -> Segment:
        """The segment with the load and the steps to it, the last of which is what the equipment makes of it."""
        load = made.load
        *others, last = steps
        assert isinstance(last.after, Mass)
        exact = last.after.to(load.mass.unit)
        steps = (*segment.steps, *others, last if exact == last.after else replace(last, after=exact))
        if exact != load.mass:
            steps = (*steps, self._rounded(segment, exact, made, most))
        intensity = _resolved(segment.intensity, load) if worked_out else segment.intensity
        if intensity != segment.intensity:
            moved = Step(Quantity.INTENSITY, Cause.ROUNDING, segment.intensity, intensity, segment.span)
            steps = (*steps, moved)
        return replace(segment, intensity=intensity, load=load, steps=steps)

    def _rounded(self, segment: Segment, exact: Mass, made: Made, most: Mass | None) -> Step:
        outside = made.too_heavy or made.too_light
        place = self._makers.line_of(made.by)
        how: tuple[Fact, ...] = (("by", made.by),)
        if self._makers.rounds_down:
            how = (*how, ("down", "yes"))
        if most is not None and made.by == "steps":
            how = (*how, ("most", most))
        return Step(
            Quantity.LOAD,
            Cause.EQUIPMENT if outside else Cause.ROUNDING,
            exact,
            made.load.mass,
            place or segment.span,
            how,
        )

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


def _resolved(intensity: Intensity | None, load: Load) -> Intensity | None:
    """A load between two that were written, or a deload's, is printed as what can be loaded."""
    match intensity:
        case Weight():
            return replace(intensity, mass=load.mass)
        case Bodyweight():
            return replace(intensity, added=load.mass)
        case _:
            return intensity
