"""How much is lifted and how the load of sessions runs, week by week.

Comes in: a plan and how it counts. Goes out: `LoadWeek`s, plain data that judges nothing.

Sources: BMJ Military Health 2020;168(4):314-319, table 1 (volume load, mean load, density); Foster C. Med Sci Sports
Exerc 1998;30(7):1164-1168 (session load, monotony, strain); Windt J, Gabbett TJ. Br J Sports Med 2019;53:988 (coupled
ratio); Williams S et al. Br J Sports Med 2017;51:209-210 (moving averages). The functions are in
`science.load_management`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from setwright.check.figures.effort import stated_effort
from setwright.check.figures.session_load import daily_loads
from setwright.check.figures.session_time import session_parts
from setwright.check.figures.sets import Day, Ledger, asked_lines, total
from setwright.plan import Line, Plan, Week, WeekKind
from setwright.quantities import Mass, Unit
from setwright.record import record
from setwright.report.lifted import Lifted, lifted
from setwright.rules import Promise
from setwright.science import load_management as science


@record
class LoadWeek:
    """One week (or microcycle) as it stands, over its work sets; masses in the plan's unit.

    `repetitions` are those of the sets that state some, and `open_sets` may have more of them (`max`, `5+`).
    `known_load` is the volume load of the `sets_with_load`, whose load and repetitions are known, and `mean_load` what
    one of their repetitions lifts (None: no such set).

    `days` are the planned loads of the days, rest days 0, in minutes x planned effort, which `sets_with_effort` state;
    None where a session states no effort. `planned_load` is their sum. That effort is a stand-in from the plan for what
    an athlete says of a whole session afterwards. `strain` is per 7 days, as the rule of that name has it.

    `coupled_ratio` and `moving_ratio` are the last 7 days to the last 28, at the end of the week, by plain means and by
    moving averages; None until 28 days in a row have a known load.
    """

    number: int
    block: str
    kind: WeekKind
    sets: int
    repetitions: Fraction
    open_sets: int
    sets_with_load: int
    known_load: Fraction
    mean_load: Fraction | None
    minutes: Fraction
    sets_with_effort: int
    days: tuple[Fraction, ...] | None
    planned_load: Fraction | None
    monotony: Fraction | None
    strain: Fraction | None
    coupled_ratio: Fraction | None
    moving_ratio: Fraction | None

    @property
    def is_whole(self) -> bool:
        """True where every set is in the volume load, with all its repetitions."""
        return self.sets_with_load == self.sets and not self.open_sets

    @property
    def known_density(self) -> Fraction | None:
        """The known volume load a minute of all the sessions; None where none is known or no time passes."""
        if not self.minutes or (self.sets and not self.sets_with_load):
            return None
        return science.density(self.known_load, self.minutes)


def load_weeks(plan: Plan, promise: Promise = Promise()) -> tuple[LoadWeek, ...]:  # noqa: B008 (frozen)
    """Every week of the plan in order. Optional lines are left out as the promise says, easy sets are not."""
    ledger = Ledger(plan, promise)
    known: list[Fraction] = []  # the days up to now whose loads are known, without a gap
    made: list[LoadWeek] = []
    for week, days in ledger.weeks:
        found = daily_loads(ledger, days)
        loads = None if found is None else found[0]
        known = [] if loads is None else [*known, *loads]
        made.append(_week(ledger, week, days, loads, known))
    return tuple(made)


def _week(
    ledger: Ledger, week: Week, days: Sequence[Day], loads: tuple[Fraction, ...] | None, known: Sequence[Fraction]
) -> LoadWeek:
    lines = [line for day in days for line in asked_lines(day.session, ledger.promise)]
    sets = [each for line in lines for each in lifted(line)]
    triples = list(_with_load(sets))
    strain = None if loads is None else science.strain(loads)
    long_enough = len(known) >= science.CHRONIC_DAYS
    return LoadWeek(
        number=week.number,
        block=week.block,
        kind=week.kind,
        sets=sum(each.sets for each in sets),
        repetitions=sum((each.sets * each.repetitions for each in sets if each.repetitions is not None), Fraction(0)),
        open_sets=sum(each.sets for each in sets if each.open_ended),
        sets_with_load=sum(count for count, _, _ in triples),
        known_load=_in(ledger.plan.unit, science.volume_load(triples)),
        mean_load=None if (mean := science.mean_load(triples)) is None else _in(ledger.plan.unit, mean),
        minutes=sum((total(session_parts(ledger, day.session)) for day in days), Fraction(0)),
        sets_with_effort=_sets_with_effort(lines),
        days=loads,
        planned_load=None if loads is None else science.weekly_load(loads),
        monotony=None if loads is None else science.monotony(loads),
        strain=None if strain is None else strain * ledger.plan.per_seven_days,
        coupled_ratio=science.coupled_ratio(known) if long_enough else None,
        moving_ratio=science.moving_ratio(known) if long_enough else None,
    )


def _with_load(sets: Iterable[Lifted]) -> Iterator[tuple[int, Fraction, Mass]]:
    for each in sets:
        if each.load is not None and each.repetitions is not None:
            yield each.sets, each.repetitions, each.load


def _sets_with_effort(lines: Iterable[Line]) -> int:
    return sum(segment.sets for line in lines for segment in line.work if stated_effort(segment) is not None)


def _in(unit: Unit, kilograms: Fraction) -> Fraction:
    return Mass(kilograms, Unit.KG).to(unit).amount
