"""Repetitions, volume load and the load of sessions as tables for the terminal.

Comes in: a plan and its `LoadWeek`s. Goes out: text. Only layout happens here; the figures are `report.load`'s.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction

from setwright.cli.figures import DAYS, aligned, title, week_head
from setwright.diagnostics.printers.characters import visible
from setwright.plan import Plan
from setwright.quantities import plain
from setwright.report.load import LoadWeek

_AT_LEAST = ">= "  # as the language writes it
_NOTHING = "Nothing in this plan is lifted or timed."
_LIFTED = (
    "Work sets. Volume load is sets x repetitions x load, over the sets whose load and repetitions are",
    "known, as is the mean load of a repetition. >=: that leaves sets out, or sets may be longer.",
)
_NO_LOADS = "No load is known: most follow from the bests of an athlete, whom `--athlete` names."
_SESSIONS = (
    "Planned session load is minutes x effort. The effort is a stand-in: the mean RPE that the session's",
    "sets state. What an athlete says of the whole session afterwards, from 0 to 10, is another scale, and",
    "loads from a diary are not to be compared with these. Monotony: mean of the days / their standard",
    "deviation (n - 1). Strain: load x monotony. 7:28 is the last 7 days to the last 28, which hold the 7,",
    "by plain means and by moving averages that start at the first day's load; from the 28th day on.",
    "Blank: a session states no effort, or the days before it have no known load.",
)


def table(plan: Plan, weeks: Sequence[LoadWeek]) -> str:
    """Weeks down: first what is lifted, then the load of the sessions."""
    if not any(week.minutes for week in weeks):
        return f"{title(plan)}\n{_NOTHING}\n"
    lifted = _table(weeks, _lifted_head(plan), _lifted_row)
    sessions = _table(weeks, _SESSIONS_HEAD, _session_row)
    return "\n".join([title(plan), *_notes(plan, weeks), "", *lifted, "", *_SESSIONS, "", *sessions]) + "\n"


def _notes(plan: Plan, weeks: Sequence[LoadWeek]) -> Iterator[str]:
    if plan.microcycle != DAYS:
        yield f"A week is the plan's, of {plan.microcycle} days, and is summed as it stands; strain is per 7 days."
    yield from _LIFTED
    if plan.athlete is None and not any(week.sets_with_load for week in weeks):
        yield _NO_LOADS


def _table(weeks: Sequence[LoadWeek], head: tuple[str, ...], row: Callable[[LoadWeek], tuple[str, ...]]) -> list[str]:
    rows = [(_block(weeks, at), week_head(week.number, week.kind), *row(week)) for at, week in enumerate(weeks)]
    return aligned([("block", "week", *head), *rows])


def _block(weeks: Sequence[LoadWeek], at: int) -> str:
    """The block's name beside its first week."""
    return "" if at and weeks[at - 1].block == weeks[at].block else visible(weeks[at].block)


def _lifted_head(plan: Plan) -> tuple[str, ...]:
    unit = plan.unit.value
    return "sets", "repetitions", f"volume load {unit}", "known for", f"mean {unit}", "minutes", f"{unit}/min"


def _lifted_row(week: LoadWeek) -> tuple[str, ...]:
    nothing_known = week.sets > 0 and not week.sets_with_load
    sign = "" if week.is_whole else _AT_LEAST
    density = week.known_density
    return (
        str(week.sets),
        (_AT_LEAST if week.open_sets else "") + plain(week.repetitions, 1),
        "" if nothing_known else sign + plain(week.known_load, 0),
        f"{week.sets_with_load} of {week.sets}",
        _cell(week.mean_load, 1),
        plain(week.minutes, 0),
        "" if density is None else sign + plain(density, 1),
    )


_SESSIONS_HEAD = ("planned load", "effort of", "monotony", "strain", "7:28 means", "7:28 moving")


def _session_row(week: LoadWeek) -> tuple[str, ...]:
    return (
        _cell(week.planned_load, 0),
        f"{week.sets_with_effort} of {week.sets}",
        _cell(week.monotony),
        _cell(week.strain, 0),
        _cell(week.coupled_ratio),
        _cell(week.moving_ratio),
    )


def _cell(value: Fraction | None, places: int = 2) -> str:
    return "" if value is None else plain(value, places)
