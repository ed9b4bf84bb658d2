"""What other formulas give: the load lies inside, the ends can be loaded, and it is told where a step lies between."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from build_plans import BENCH, line, rpe, segment, stands
from setwright.athlete import Athlete, Best
from setwright.fit.bests import Bests
from setwright.fit.loads import LineLoader
from setwright.fit.makers import Makers
from setwright.plan import Handling, Load
from setwright.quantities import Mass, Unit
from setwright.record import replace
from setwright.science.effort import reps_in_reserve
from setwright.science.repetitions import Model, share_of_best

PRESS = replace(BENCH, handling=Handling.BAR)
KINDS = tuple(Fraction(kind) for kind in ("20", "10", "5", "3", "2.5", "1.25", "0.5"))
FORMULAS = tuple(model for model in Model if model not in (Model.TABLE, Model.MEAN))

pairs = st.lists(st.integers(0, 2), min_size=len(KINDS), max_size=len(KINDS)).filter(any)


def kg(amount: Fraction | int) -> Mass:
    return Mass(Fraction(amount), Unit.KG)


def with_discs(counts: list[int], best: int, model: Model) -> Athlete:
    plates = tuple((2 * count, kg(kind)) for count, kind in zip(counts, KINDS, strict=True) if count)
    return Athlete(
        "Ines",
        stands("Ines"),
        bar=kg(20),
        plates=plates,
        bests=(Best(PRESS.name, kg(best), stands("best")),),
        model=model.value,
    )


def loadable(counts: list[int]) -> set[Fraction]:
    """Every load of a 20 kg bar with these pairs of discs, by trying them all."""
    choices = product(*(range(count + 1) for count in counts))
    return {20 + 2 * sum(number * kind for number, kind in zip(some, KINDS, strict=True)) for some in choices}


def loaded(athlete: Athlete, reps: int, effort: int) -> Load:
    bests = Bests(athlete, None, lambda name: PRESS)
    loader = LineLoader(Makers(athlete, Unit.KG, round_down=False), bests, "Ines", lambda problem: None)
    (done,) = loader.loaded(line(PRESS, segment(3, reps, rpe(effort))), 1).segments
    assert done.load is not None
    return done.load


@given(pairs, st.integers(20, 250), st.sampled_from(FORMULAS), st.integers(1, 12), st.integers(6, 10))
def test_a_range_is_told_exactly_where_an_end_is_more_than_a_step_off(
    counts: list[int], best: int, model: Model, reps: int, effort: int
) -> None:
    made = loaded(with_discs(counts, best, model), reps, effort)
    all_loads = loadable(counts)
    shares = [share_of_best(formula, reps + reps_in_reserve(Fraction(effort))) for formula in FORMULAS]

    def nearest(target: Fraction) -> Fraction:
        return max(all_loads, key=lambda load: (-abs(load - target), load))  # of two equally near, the heavier

    least, greatest = nearest(best * min(shares)), nearest(best * max(shares))
    apart = any(least < load < made.mass.amount or made.mass.amount < load < greatest for load in all_loads)
    assert made.spread == ((kg(least), kg(greatest)) if apart else None)
    assert least <= made.mass.amount <= greatest
    assert made.model == model.value
