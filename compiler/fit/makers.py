"""What makes up a movement's load: a bar and plates, the dumbbells at hand, a stack's steps."""

from __future__ import annotations

from fractions import Fraction

from setwright.athlete import Athlete
from setwright.plan import Handling, Load, Movement
from setwright.quantities import Mass, Unit
from setwright.record import record
from setwright.science.plates import Loading, Rack, Series, usual_steps
from setwright.source import Span

# The federation's bar (IWF: 20 kg) and the usual bar of a gym in pounds, where plates are named and no bar is.
USUAL_BAR = {Unit.KG: Mass(Fraction(20), Unit.KG), Unit.LB: Mass(Fraction(45), Unit.LB)}


@record
class Made:
    """A load as it can be made, and whether what was asked for lies outside what can be made."""

    load: Load
    too_heavy: bool = False
    too_light: bool = False
    by: str = "steps"  # what makes it: the word of the athlete's line, or the usual steps


class Makers:
    """One athlete's equipment; each kind is worked out once."""

    def __init__(self, athlete: Athlete | None, unit: Unit, round_down: bool) -> None:
        self._athlete = athlete
        self._unit = unit
        self._down = round_down
        self._rack = self._made_rack()

    def made(self, movement: Movement, target: Mass, *, written: bool, most: Mass | None = None) -> Made:
        """The load nearest to `target` (or the heaviest not above it) that the equipment can make.

        `most` is a load known to be there: where no weights are named, rounding does not lead above it.
        """
        maker = self._maker(movement)
        if maker is None:
            return self._made_in_steps(movement, target, written, most)
        word = "plates" if isinstance(maker, Rack) else self._word(movement)
        loading = maker.at_most(target) if self._down else maker.nearest(target)
        goal = target.to(loading.total.unit).amount
        return Made(
            self._load(movement, loading),
            too_heavy=goal > maker.heaviest.total.to(loading.total.unit).amount,
            too_light=goal < maker.lightest.total.to(loading.total.unit).amount,
            by=word,
        )

    @property
    def rounds_down(self) -> bool:
        """True where loads are rounded to the heaviest that is not above them."""
        return self._down

    def line_of(self, word: str) -> Span | None:
        """Where the athlete says that they have what makes a load."""
        return self._athlete.line_of(word) if self._athlete is not None else None

    def makes_between(self, movement: Movement, one: Mass, other: Mass) -> bool:
        """True where the equipment makes a load between two that it makes: they lie more than one step apart."""
        middle = one.plus(other).times(Fraction(1, 2))
        found = (self._maker(movement) or usual_steps(one.unit)).nearest(middle).total.to(one.unit).amount
        # Both ends are as far from the middle as can be: whatever lies between them is nearer.
        low, high = sorted((one.amount, other.to(one.unit).amount))
        return low < found < high

    def _made_rack(self) -> Rack | None:
        athlete = self._athlete
        if athlete is None or not (athlete.plates or athlete.bar):
            return None
        unit = athlete.plates[0][1].unit if athlete.plates else self._unit
        bar = athlete.bar or USUAL_BAR[unit]
        return Rack(bar, athlete.plates, athlete.collars)

    def _maker(self, movement: Movement) -> Rack | Series | None:
        if self._athlete is None:
            return None
        match movement.handling:
            case Handling.BAR:
                return self._rack if self._athlete.plates else None
            case Handling.PAIR | Handling.ONE:
                return self._series(movement)
            case _:
                return None

    def _series(self, movement: Movement) -> Series | None:
        """The athlete's dumbbells or kettlebells; nothing is known of sandbags, balls and the like."""
        values = self._stocks().get(self._word(movement))
        return Series(values) if values else None

    def _word(self, movement: Movement) -> str:
        """Which of the athlete's hand weights a movement takes."""
        for word, values in self._stocks().items():
            if values and any(need in (word, word.removesuffix("s")) for need in movement.needs):
                return word
        return ""

    def _stocks(self) -> dict[str, tuple[Mass, ...]]:
        assert self._athlete is not None
        return {"dumbbells": self._athlete.dumbbells, "kettlebells": self._athlete.kettlebells}

    def _bar(self, movement: Movement) -> Mass | None:
        return self._rack.lightest.total if self._rack and movement.handling is Handling.BAR else None

    def _made_in_steps(self, movement: Movement, target: Mass, written: bool, most: Mass | None) -> Made:
        """Where no weights are named: a written load as it is, another in the usual steps, never below the bar."""
        total, bar = self._stepped(target, written), self._bar(movement)
        if most is not None and not 0 < total.amount <= most.to(total.unit).amount:
            below = usual_steps(total.unit).at_most(target).total
            total = below if below.amount > 0 else most
        if bar is not None and bar.to(total.unit).amount > total.amount:
            return Made(Load(bar, movement.handling, bar=bar), too_light=True, by="bar")
        return Made(Load(total, movement.handling, bar=bar))

    def _stepped(self, target: Mass, written: bool) -> Mass:
        if written and (self._athlete is None or target.unit is self._unit):
            return target
        unit = target.unit if self._athlete is None else self._unit
        steps = usual_steps(unit)
        total = (steps.at_most(target) if self._down else steps.nearest(target)).total
        return total if total.amount > 0 else steps.step  # a load is never nothing

    def _load(self, movement: Movement, loading: Loading) -> Load:
        bar = self._bar(movement)
        return Load(loading.total, movement.handling, loading.per_side if bar is not None else None, bar)
