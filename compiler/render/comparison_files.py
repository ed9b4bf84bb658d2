"""Plans side by side for spreadsheets and programs.

Comes in: a `Comparison`. Goes out: the text of a CSV or JSON file.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from json import dumps

from setwright.quantities import plain
from setwright.render import csv
from setwright.render.comparison import tells
from setwright.render.json_values import Object, number
from setwright.report.compare import Average, Comparison, MuscleFigures, PlanFigures, WeekFigures


def csv_text(of: Comparison) -> str:
    """A row a figure, a column a plan; blank where a plan has no such figure."""
    header = ("figure", "of", "value", "unit", *(csv.guarded(column.heading) for column in of.columns))
    return csv.table(header, _csv_rows(of))


def json_text(of: Comparison) -> str:
    """The ceiling, and an object a plan."""
    plans = [_plan_object(column) for column in of.columns]
    return dumps({"ceiling": number(of.ceiling), "plans": plans}, indent=2) + "\n"


def _csv_rows(of: Comparison) -> Iterator[tuple[str, ...]]:
    yield from _averages("sessions", "", "per week", [plan.sessions for plan in of.columns])
    yield from _averages("session_minutes", "", "min", [plan.session_minutes for plan in of.columns])
    yield from _averages("week_minutes", "", "min per week", [plan.week_minutes for plan in of.columns])
    yield ("working_weeks", "", "", "weeks", *(str(plan.working_weeks) for plan in of.columns))
    yield ("weighted_hours", "", "", "h", *(_text(plan.weighted_hours) for plan in of.columns))
    yield ("ceiling", "", "", "sets per session", *(_text(of.ceiling) for _ in of.columns))
    yield ("broken_must", "", "", "rules", *(str(plan.must) for plan in of.columns))
    yield ("broken_should", "", "", "rules", *(str(plan.should) for plan in of.columns))
    for muscle in of.muscles:
        yield from _csv_muscle(muscle.word, [plan.of(muscle.word) for plan in of.columns])
    for at in range(max((len(plan.weeks) for plan in of.columns), default=0)):
        weeks = [plan.weeks[at] if at < len(plan.weeks) else None for plan in of.columns]
        named = f"week {at + 1}"
        yield ("kind", named, "", "", *(week.kind.value if week else "" for week in weeks))
        yield (
            "effort",
            named,
            "highest",
            "RPE",
            *(_text(week.highest_effort if week and tells(week) else None) for week in weeks),
        )
        yield (
            "effort",
            named,
            "mean",
            "RPE",
            *(_text(week.mean_effort if week and tells(week) else None) for week in weeks),
        )


def _csv_muscle(word: str, found: Sequence[MuscleFigures | None]) -> Iterator[tuple[str, ...]]:
    def averages(title: str, unit: str, figure: Callable[[MuscleFigures], Average]) -> Iterator[tuple[str, ...]]:
        return _averages(title, word, unit, [figure(one) if one else None for one in found])

    def row(title: str, unit: str, figure: Callable[[MuscleFigures], Fraction | int | None]) -> tuple[str, ...]:
        return (title, word, "", unit, *(_text(figure(one) if one else None) for one in found))

    yield from averages("sets", "per week", lambda one: one.sets)
    yield row("largest_session", "sets", lambda one: one.largest_session)
    yield from averages("beyond_ceiling", "sets per week", lambda one: one.beyond_ceiling)
    yield from averages("exposures", "per week", lambda one: one.exposures)
    yield row("shortest_hours", "h", lambda one: one.shortest_hours)
    yield row("weighted_hours", "h", lambda one: one.weighted_hours)


def _averages(title: str, of: str, unit: str, found: Sequence[Average | None]) -> Iterator[tuple[str, ...]]:
    yield (title, of, "mean", unit, *(_text(one.mean if one else None) for one in found))
    yield (title, of, "low", unit, *(_text(one.low if one else None) for one in found))
    yield (title, of, "high", unit, *(_text(one.high if one else None) for one in found))


def _text(value: Fraction | int | None) -> str:
    return "" if value is None else plain(value)


def _plan_object(plan: PlanFigures) -> Object:
    return {
        "heading": plan.heading,
        "plan": plan.plan,
        "athlete": plan.athlete,
        "file": plan.file,
        "working_weeks": plan.working_weeks,
        "from_rpe": _number(plan.from_rpe),
        "required_only": plan.required_only,
        "sessions": _average(plan.sessions),
        "session_minutes": _average(plan.session_minutes),
        "week_minutes": _average(plan.week_minutes),
        "weighted_hours": _number(plan.weighted_hours),
        "broken": {"must": plan.must, "should": plan.should},
        "muscles": [_muscle_object(figures) for figures in plan.muscles],
        "weeks": [_week_object(week) for week in plan.weeks],
    }


def _muscle_object(figures: MuscleFigures) -> Object:
    return {
        "muscle": figures.muscle.word,
        "title": figures.muscle.title,
        "sets": _average(figures.sets),
        "largest_session": number(figures.largest_session),
        "beyond_ceiling": _average(figures.beyond_ceiling),
        "exposures": _average(figures.exposures),
        "shortest_hours": figures.shortest_hours,
        "weighted_hours": _number(figures.weighted_hours),
    }


def _week_object(week: WeekFigures) -> Object:
    return {
        "week": week.number,
        "kind": week.kind.value,
        "sets": week.sets,
        "sets_with_effort": week.stated,
        "highest_effort": _number(week.highest_effort),
        "mean_effort": _number(week.mean_effort),
    }


def _average(figure: Average | None) -> Object | None:
    if figure is None:
        return None
    return {"mean": number(figure.mean), "low": number(figure.low), "high": number(figure.high)}


def _number(value: Fraction | None) -> int | float | None:
    return None if value is None else number(value)
