"""What an athlete's best in a movement is: tested, estimated from a set, or taken from another movement's."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from setwright.athlete import Athlete, Best
from setwright.plan import Movement, Plan
from setwright.quantities import Mass, plain, round_half_up
from setwright.record import record
from setwright.science.repetitions import BeyondModel, Model, estimated_best

MovementOf = Callable[[str], Movement | None]


@record
class Bests:
    """Look-ups of one athlete's bests, each by the model that applies to the movement."""

    athlete: Athlete
    plan_model: str | None
    movement_of: MovementOf

    def model(self, movement: Movement) -> Model:
        """The nearest model named: the movement's, the athlete's, the plan's; Epley where none is."""
        return Model(movement.model or self.athlete.model or self.plan_model or Model.EPLEY.value)

    def of(self, movement: Movement) -> Mass | None:
        """The best in a movement, exact; None where nothing is known. Raises `BeyondModel` for a set of too many."""
        share = Fraction(1)
        seen: set[str] = set()
        found: Movement | None = movement
        while found is not None and found.name not in seen:
            seen.add(found.name)
            best = self._own(found.name)
            if best is not None:
                return self._value(best, found).times(share)
            if found.best_from is None:
                return None
            source, percent = found.best_from
            share *= percent / 100
            found = self.movement_of(source)
        return None

    def facts(self, plan: Plan) -> tuple[tuple[str, str], ...]:
        """Each best that the plan's loads rest on, in words."""
        names = dict.fromkeys(line.movement.name for week in plan.weeks for s in week.sessions for line in s.lines)
        used = (self._own(name) for name in names)
        return tuple((best.movement, self._in_words(best)) for best in used if best is not None)

    def _own(self, name: str) -> Best | None:
        return next((best for best in self.athlete.bests if best.movement == name), None)

    def _value(self, best: Best, movement: Movement) -> Mass:
        if best.reps is None:
            return best.mass
        return estimated_best(self.model(movement), best.mass, best.reps + best.reserve)

    def _in_words(self, best: Best) -> str:
        movement = self.movement_of(best.movement)
        if best.reps is None or movement is None:
            return f"{best.mass} (tested)"
        effort = f" @ RPE {plain(10 - best.reserve)}" if best.reserve else ""
        done = f"{best.mass} x {plain(best.reps)}{effort}"
        try:
            value = self._value(best, movement)
        except BeyondModel:
            return f"{done} (too many repetitions for an estimate by {self.model(movement).value})"
        shown = Mass(round_half_up(value.amount, Fraction(1, 10)), value.unit)
        return f"{shown} (estimated by {self.model(movement).value} from {done})"
