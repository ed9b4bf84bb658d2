"""One plan for one athlete: substitutions, days, loads.

Comes in: an expanded plan and an athlete (or none). Goes out: the plan with loads, and warnings for what does not fit.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.athlete import Athlete
from setwright.diagnostics import Diagnostic
from setwright.fit.bests import Bests, MovementOf
from setwright.fit.days import on_available_days
from setwright.fit.loads import LineLoader, Report
from setwright.fit.makers import Makers
from setwright.fit.substitutions import substituted_plan
from setwright.plan import WEEKDAYS, Plan, Session, Week
from setwright.record import replace

if TYPE_CHECKING:
    from setwright.fit.logged import LoggedBests
    from setwright.log.model import Log


def adapted_plan(plan: Plan, athlete: Athlete, movement_of: MovementOf, problems: list[Diagnostic]) -> Plan:
    """The plan with the movements that the athlete does, on the days that they have."""
    return on_available_days(substituted_plan(plan, athlete, movement_of, problems), athlete, problems)


def fitted_plan(
    plan: Plan, athlete: Athlete | None, movement_of: MovementOf, problems: list[Diagnostic], log: Log | None = None
) -> Plan:
    """An adapted plan with a load wherever one is known. Without an athlete only written loads are.

    Bests are taken from the log where the plan or the athlete asks for that.
    """
    report = _once(problems)
    if athlete is None:
        return _loaded(plan, LineLoader(Makers(None, plan.unit, plan.round_down), None, "", report))
    down = athlete.round_down if athlete.round_down is not None else plan.round_down
    unit = athlete.unit or plan.unit
    bests = Bests(athlete, plan.model, movement_of)
    logged = _logged(plan, athlete, bests, log)
    if logged is not None:
        bests = logged.before(None)
    loader = LineLoader(Makers(athlete, unit, down), bests, athlete.name, report)
    fitted = replace(
        plan,
        athlete=athlete.name,
        athlete_born=athlete.born,
        athlete_facts=bests.facts(plan),
        athlete_bests=bests.known(plan),
        unit=unit,
        model=athlete.model or plan.model,
        notes=(*plan.notes, *athlete.notes),
    )
    loaded = _timed(_loaded(fitted, loader, logged), athlete)
    if loader.rough:
        from setwright.fit.rough import rough_loads

        problems.append(rough_loads(loader.rough, athlete.name, plan.span.source.path))
    return loaded


def _once(problems: list[Diagnostic]) -> Report:
    """A reporter that says the same of the same place only once, for the first week it happens in."""
    seen: set[tuple[str, str]] = set()

    def report(problem: Diagnostic) -> None:
        key = (problem.code.number, str(problem.span))
        if key not in seen:
            seen.add(key)
            problems.append(problem)

    return report


def _logged(plan: Plan, athlete: Athlete, bests: Bests, log: Log | None) -> LoggedBests | None:
    """Nothing where nobody asks for bests from the log; most plans do not, and load nothing for it."""
    if log is None or not (athlete.bests_from_log or plan.bests_from_log):
        return None
    from setwright.fit.logged import LoggedBests

    return LoggedBests(athlete, plan, log, bests)


def _loaded(plan: Plan, loader: LineLoader, logged: LoggedBests | None = None) -> Plan:
    def session(made: Session, week: int) -> Session:
        return replace(made, lines=tuple(loader.loaded(line, week) for line in made.lines))

    def loaded_week(week: Week) -> Week:
        if logged is not None:
            loader.go_by(logged.before(week.start))
        return replace(week, sessions=tuple(session(made, week.number) for made in week.sessions))

    return replace(plan, weeks=tuple(loaded_week(week) for week in plan.weeks))


def _timed(plan: Plan, athlete: Athlete) -> Plan:
    """The plan with the time of day of each session, where the athlete says one."""
    if not athlete.times:
        return plan

    def session(made: Session) -> Session:
        # A microcycle's days bear numbers; which weekday they fall on is known by the date alone.
        weekday = WEEKDAYS[made.date.weekday()] if made.date else made.slot
        return replace(made, at=athlete.time_on(weekday))

    def week(made: Week) -> Week:
        return replace(made, sessions=tuple(session(each) for each in made.sessions))

    return replace(plan, weeks=tuple(week(each) for each in plan.weeks))
