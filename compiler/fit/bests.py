"""What an athlete's best in a movement is: tested, estimated from a set, or taken from another movement's."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable
from fractions import Fraction

from setwright.athlete import Athlete, Best
from setwright.diagnostics import Related
from setwright.message import Phrase, Value, message
from setwright.plan import Fact, Movement, Plan, Segment
from setwright.prescription import Effort, PercentOfBest
from setwright.quantities import Mass, round_half_up
from setwright.record import record
from setwright.science.repetitions import BeyondModel, Model, estimated_best

MovementOf = Callable[[str], Movement | None]


@record
class _Source:
    """An athlete's own best, the movement it was set in, and the share of it that is meant."""

    best: Best
    movement: Movement
    share: Fraction


@record
class Bests:
    """Look-ups of one athlete's bests, each by the model that applies to the movement."""

    athlete: Athlete
    plan_model: str | None
    movement_of: MovementOf
    asks_log: bool = False  # a log was asked for bests; those that it has none for are as written

    def model(self, movement: Movement) -> Model:
        """The nearest model named: the movement's, the athlete's, the plan's; Epley where none is."""
        return Model(movement.model or self.athlete.model or self.plan_model or Model.EPLEY.value)

    def of(self, movement: Movement, by: Model | None = None) -> Mass | None:
        """The best in a movement, exact; None where nothing is known. Raises `BeyondModel` for a set of too many.

        `by` estimates in place of the model that applies.
        """
        source = self._source(movement)
        return self._value(source.best, by or self.model(source.movement)).times(source.share) if source else None

    def estimated_by(self, movement: Movement) -> Model | None:
        """The model that the best in a movement is estimated by; None where it was tested or is not known."""
        source = self._source(movement)
        if source is None:
            return None
        by_set = self.model(source.movement) if source.best.reps is not None else None
        return Model(source.best.trend_by) if source.best.trend_by else by_set

    def ground(self, movement: Movement) -> tuple[tuple[Fact, ...], tuple[Related, ...]]:
        """What the best in a movement is taken from, for the steps of a load; no facts for its own, tested one.

        `of`: the movement it was set in, of whose best `of_share` is meant. `set`, `set_reps`, `set_reserve`: the set
        that it is estimated from, by `best_model`. `log_day`: the day of a best that the log tells of; with
        `best_model` it is the trend's value on that day.
        """
        source = self._source(movement)
        if source is None:
            return (), ()
        best = source.best
        facts: list[Fact] = []
        if source.movement is not movement and source.movement.name != movement.name:
            facts += [("of", source.movement.name), ("of_share", source.share)]
        if best.reps is not None:
            facts += [("set", best.mass), ("set_reps", best.reps), ("set_reserve", best.reserve)]
            facts.append(("best_model", self.model(source.movement).value))
        if best.on is not None:
            facts.append(("log_day", best.on.isoformat()))
            facts += [("best_model", best.trend_by)] if best.trend_by else []
        return tuple(facts), (Related(best.span, f"the best in {source.movement.name}"),)

    def facts(self, plan: Plan) -> tuple[tuple[str, str], ...]:
        """Each best that the plan's loads rest on, in words, with the models that loads by effort take from it."""
        used: dict[str, _Source] = {}
        models: dict[str, dict[str, None]] = defaultdict(dict)
        for line in (line for week in plan.weeks for session in week.sessions for line in session.lines):
            for segment in line.work:
                source = self._rested_on(line.movement, segment)
                if source is not None:
                    used.setdefault(source.best.movement, source)
                    if isinstance(segment.intensity, Effort):
                        models[source.best.movement][self.model(line.movement).value] = None
        return tuple((name, self._in_words(source, tuple(models[name]))) for name, source in used.items())

    def known(self, plan: Plan) -> tuple[tuple[str, Mass], ...]:
        """The best in each of the plan's movements that has one, in the order in which they come up."""
        lines = (line for week in plan.weeks for session in week.sessions for line in session.lines)
        found = (
            (name, self._if_known(each)) for name, each in {line.movement.name: line.movement for line in lines}.items()
        )
        return tuple((name, best) for name, best in found if best is not None)

    def _if_known(self, movement: Movement) -> Mass | None:
        try:
            return self.of(movement)
        except BeyondModel:
            return None

    def _rested_on(self, movement: Movement, segment: Segment) -> _Source | None:
        """The best that a percent or an effort is taken from."""
        match segment.intensity:
            case Effort() if segment.reps.is_repetitions:
                return self._source(movement)
            case PercentOfBest(of=of):
                other = self.movement_of(of) if of else movement
                return self._source(other) if other else None
            case _:
                return None

    def _source(self, movement: Movement) -> _Source | None:
        """The best that a movement's is taken from: its own, or through `best from` another's."""
        share = Fraction(1)
        seen: set[str] = set()
        found: Movement | None = movement
        while found is not None and found.name not in seen:
            seen.add(found.name)
            best = self._own(found.name)
            if best is not None:
                return _Source(best, found, share)
            if found.best_from is None:
                return None
            other, percent = found.best_from
            share *= percent / 100
            found = self.movement_of(other)
        return None

    def _own(self, name: str) -> Best | None:
        return next((best for best in self.athlete.bests if best.movement == name), None)

    def _value(self, best: Best, model: Model) -> Mass:
        if best.reps is None:
            return best.mass
        return estimated_best(model, best.mass, best.reps + best.reserve)

    def _in_words(self, source: _Source, models: tuple[str, ...]) -> str:
        if source.best.on is not None:
            return _of_log(source.best, models)
        if self.asks_log:
            return _fact_of_written(self._as_written(source, models))
        return self._as_written(source, models)

    def _as_written(self, source: _Source, models: tuple[str, ...]) -> str:
        best, model = source.best, self.model(source.movement)
        if best.reps is None:
            return _fact(best.mass, _with_efforts(Phrase(message("tested")), models))
        done = _done(best.mass, best.reps, best.reserve)
        try:
            value = self._value(best, model)
        except BeyondModel:
            return _fact(done, Phrase(message("too many repetitions for an estimate by {model}"), model=model.value))
        shown = Mass(round_half_up(value.amount, Fraction(1, 10)), value.unit)
        others = models if set(models) - {model.value} else ()
        known = Phrase(message("estimated by {model} from {done}"), model=model.value, done=done)
        return _fact(shown, _with_efforts(known, others))


def _of_log(best: Best, models: tuple[str, ...]) -> Phrase:
    """A best from a log: a test, or the value of a trend."""
    shown = Mass(round_half_up(best.mass.amount, Fraction(1, 10)), best.mass.unit)
    day = best.on.isoformat() if best.on else ""
    if best.trend_by is None:
        return _fact(shown, _with_efforts(Phrase(message("tested on {day}, from the log"), day=day), models))
    others = models if set(models) - {best.trend_by} else ()
    known = Phrase(message("estimated from the log by {model}: trend on {day}"), model=best.trend_by, day=day)
    return _fact(shown, _with_efforts(known, others))


def _fact_of_written(fact: str) -> Phrase:
    return Phrase(message("{best}; the log has too little for a trend"), best=fact)


def _fact(value: Value, known: Phrase) -> Phrase:
    return Phrase("{value} ({known})", value=value, known=known)


def _done(mass: Mass, reps: Fraction, reserve: Fraction) -> Phrase:
    if not reserve:
        return Phrase("{mass} x {reps}", mass=mass, reps=reps)
    return Phrase("{mass} x {reps} @ RPE {effort}", mass=mass, reps=reps, effort=10 - reserve)


def _with_efforts(known: Phrase, models: tuple[str, ...]) -> Phrase:
    if not models:
        return known
    return Phrase(message("{known}; efforts by {models}"), known=known, models=", ".join(models))
