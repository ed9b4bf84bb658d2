"""What was done beside what was asked, for programs: CSV with a figure a row, and JSON.

Comes in: `Adherence`. Goes out: text.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from json import dumps
from typing import Any

from setwright.log.estimates import MovementBests
from setwright.quantities import plain
from setwright.render import csv
from setwright.report.adherence import Adherence, State, WeekDone

HEADER = ("plan", "athlete", "week", "date", "of", "figure", "value")


def csv_text(figures: Iterable[Adherence]) -> str:
    """A row for each figure; `of` is a muscle or movement where it is of one. `figure` ends in the unit of a mass."""
    return csv.table(HEADER, (tuple(csv.guarded(cell) for cell in row) for one in figures for row in _rows(one)))


def json_text(figures: Iterable[Adherence]) -> str:
    """An array with an object a plan and athlete."""
    return dumps([_plan(one) for one in figures], indent=2, ensure_ascii=False) + "\n"


def _rows(of: Adherence) -> Iterator[tuple[str, ...]]:
    who = (of.plan.name, of.plan.athlete or "")
    for week in of.begun:
        start = week.start.isoformat() if week.start else ""
        for name, value in _week(week).items():
            if isinstance(value, int | float):
                yield (*who, str(week.number), start, "", name, plain(Fraction(str(value)), 4))
        for muscle in of.muscles:
            at = week.number - 1
            yield (*who, str(week.number), start, muscle.muscle.word, "muscle_sets_planned", plain(muscle.planned[at]))
            yield (*who, str(week.number), start, muscle.muscle.word, "muscle_sets_done", plain(muscle.done[at]))
    for best in of.bests:
        for one in best.days:
            figure = f"estimated_best_{one.best.unit.value}"
            yield (*who, "", one.day.isoformat(), best.movement.name, figure, plain(one.best.amount))
        for test in best.tested:
            figure = f"tested_best_{test.best.unit.value}"
            yield (*who, "", test.day.isoformat(), best.movement.name, figure, plain(test.best.amount))


def _plan(of: Adherence) -> dict[str, Any]:
    coming = of.next
    return {
        "plan": of.plan.name,
        "athlete": of.plan.athlete,
        "on": of.on.isoformat(),
        "sessions": {state.value: of.sessions(state) for state in State} | {"extra": of.extra, "apart": of.apart},
        "next": None
        if coming is None
        else {
            "week": coming.week.number,
            "day": coming.session.slot,
            "date": coming.session.date.isoformat() if coming.session.date else None,
            "movements": [line.movement.name for line in coming.session.lines],
        },
        "weeks": [_week(week) for week in of.begun],
        "muscles": [
            {
                "muscle": one.muscle.word,
                "planned": [_number(sets) for sets in one.planned[: len(of.begun)]],
                "done": [_number(sets) for sets in one.done[: len(of.begun)]],
            }
            for one in of.muscles
        ],
        "bests": [_best(one) for one in of.bests],
    }


def _week(week: WeekDone) -> dict[str, Any]:
    return {
        "week": week.number,
        "start": week.start.isoformat() if week.start else None,
        "kind": week.kind.value,
        **{f"sessions_{state.value}": week.count(state) for state in State},
        "sessions_extra": week.extra,
        "sets_planned": week.sets_planned,
        "sets_due": week.sets_due,
        "sets_done": week.sets_done,
        "sets_beside": week.sets_beside,
        "effort_difference": _number(week.drift.mean),
        "effort_sets": week.drift.sets,
        "session_load": _number(week.load.load) if week.load.known else None,
        "session_load_known": week.load.known,
        "minutes": _number(week.load.minutes) if week.load.minutes else None,
        "monotony": _number(week.load.monotony),
        "strain": _number(week.load.strain),
    }


def _best(one: MovementBests) -> dict[str, Any]:
    trend = one.trend
    unit = one.unit.value if one.days else one.tested[-1].best.unit.value
    return {
        "movement": one.movement.name,
        "model": one.model.value,
        "unit": unit,
        "trend": None
        if trend is None or one.on_trend is None
        else {
            "on": one.days[-1].day.isoformat(),
            "best": _number(one.on_trend.amount),
            "a_week": _number(trend.slope * 7),
            "low": _number(trend.low * 7),
            "high": _number(trend.high * 7),
            "days": len(one.in_window),
        },
        "days": [{"date": each.day.isoformat(), "best": _number(each.best.amount)} for each in one.days],
        "tested": [{"date": each.day.isoformat(), "best": _number(each.best.amount)} for each in one.tested],
        "sets_left_out": {
            "without_load": one.left_out.without_load,
            "without_effort": one.left_out.without_effort,
            "too_easy": one.left_out.too_easy,
            "too_many_repetitions": one.left_out.too_many,
            "others": one.left_out.others,
        },
    }


def _number(value: Fraction | None) -> float | None:
    return None if value is None else float(plain(value, 4))
