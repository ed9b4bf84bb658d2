"""Repetitions, volume load and the load of sessions for spreadsheets and programs.

Comes in: plans with their `LoadWeek`s. Goes out: the text of a CSV or JSON file.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from json import dumps
from typing import Final

from setwright.plan import Plan
from setwright.quantities import plain
from setwright.render import csv
from setwright.render.json_values import Object, number
from setwright.report.load import LoadWeek

COLUMNS: Final = (
    *("week", "kind", "sets", "repetitions", "open_sets", "sets_with_load", "known_load", "volume_load", "mean_load"),
    *("unit", "minutes", "density", "sets_with_effort", "planned_load", "monotony", "strain"),
    *("coupled_ratio", "moving_ratio"),
)


def csv_text(plan: Plan, weeks: Iterable[LoadWeek]) -> str:
    """A row a week; blank where there is no such figure, and where a sum would be of some sets only."""
    return csv.table(COLUMNS, (_row(plan, week) for week in weeks))


def json_text(figures: Iterable[tuple[Plan, Sequence[LoadWeek]]]) -> str:
    """An array with an object a plan and athlete, its `rows` in the order of the CSV, each with its days as well."""
    plans = [
        {"plan": plan.name, "athlete": plan.athlete, "unit": plan.unit.value, "rows": [_object(week) for week in weeks]}
        for plan, weeks in figures
    ]
    return dumps(plans, indent=2) + "\n"


def _row(plan: Plan, week: LoadWeek) -> tuple[str, ...]:
    return (
        str(week.number),
        week.kind.value,
        str(week.sets),
        plain(week.repetitions),
        str(week.open_sets),
        str(week.sets_with_load),
        _text(_known_load(week)),
        _text(_whole(week, week.known_load)),
        _text(week.mean_load),
        plan.unit.value,
        plain(week.minutes),
        _text(_whole(week, week.known_density)),
        str(week.sets_with_effort),
        _text(week.planned_load),
        _text(week.monotony, 4),
        _text(week.strain),
        _text(week.coupled_ratio, 4),
        _text(week.moving_ratio, 4),
    )


def _object(week: LoadWeek) -> Object:
    return {
        "week": week.number,
        "block": week.block,
        "kind": week.kind.value,
        "sets": week.sets,
        "repetitions": number(week.repetitions),
        "open_sets": week.open_sets,
        "sets_with_load": week.sets_with_load,
        "known_load": _number(_known_load(week)),
        "volume_load": _number(_whole(week, week.known_load)),
        "mean_load": _number(week.mean_load),
        "minutes": number(week.minutes),
        "density": _number(_whole(week, week.known_density)),
        "sets_with_effort": week.sets_with_effort,
        "planned_load": _number(week.planned_load),
        "planned_load_by_day": None if week.days is None else [number(load) for load in week.days],
        "monotony": _number(week.monotony),
        "strain": _number(week.strain),
        "coupled_ratio": _number(week.coupled_ratio),
        "moving_ratio": _number(week.moving_ratio),
    }


def _known_load(week: LoadWeek) -> Fraction | None:
    """Nothing known is no load of nothing."""
    return week.known_load if week.sets_with_load or not week.sets else None


def _whole(week: LoadWeek, figure: Fraction | None) -> Fraction | None:
    return figure if week.is_whole else None


def _text(value: Fraction | None, places: int = 2) -> str:
    return "" if value is None else plain(value, places)


def _number(value: Fraction | None) -> int | float | None:
    return None if value is None else number(value)
