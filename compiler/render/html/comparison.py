"""Plans side by side as one HTML file that needs nothing else, like the sheets and in their style.

Comes in: a `Comparison`. Goes out: the text of the page: tables with a bar under each figure, effort by week.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from setwright.quantities import plain
from setwright.record import record
from setwright.render import comparison, keys, words
from setwright.render.comparison import Cell, Section
from setwright.render.html import environment, policy, style
from setwright.render.html.figures import MOST_LABELS, Curve, Tick, curve, scale
from setwright.render.language import ENGLISH
from setwright.report.compare import Average, Comparison, PlanFigures, WeekFigures

STYLES: Final = ("style.css", "comparison.css", "print.css")
FULL: Final = 96  # percent of a cell that its section's longest bar takes; the end of a range wants room


@record
class Bar:
    """A mean as a bar, its range as a line over it, what lies past a mark apart; all in percent across."""

    mean: str
    low: str | None  # None where all weeks are the same
    high: str | None
    mark: str | None
    past: str | None  # the part of the bar past the mark


@record
class Drawn:
    """A cell with its bar, where it has one."""

    text: str
    bar: Bar | None


@record
class DrawnRow:
    """A figure of every plan."""

    title: str
    cells: tuple[Drawn, ...]


@record
class Table:
    """A section with bars."""

    title: str
    note: str
    corner: str
    rows: tuple[DrawnRow, ...]


@record
class Plot:
    """Effort over the weeks of one plan; `said` tells it in words."""

    heading: str
    highest: Curve
    mean: Curve
    ticks: tuple[Tick, ...]
    said: str


def page(of: Comparison) -> str:
    """The whole page: the plans by number, the tables, effort over the weeks, the cautions."""
    sheet = style(STYLES)
    levels, height = scale([effort for plan in of.columns for effort in (*_highest(plan), *_mean(plan))])
    most = max((len(plan.weeks) for plan in of.columns), default=0)
    return (
        environment()
        .get_template("comparison.html.j2")
        .render(
            plans=[(plan.heading, _length(plan)) for plan in of.columns],
            key=_typeset(comparison.KEY),
            tables=[_table(section) for section in comparison.sections(of)],
            plots=[_plot(plan, most) for plan in of.columns] if levels and most > 1 else [],
            levels=levels,
            height=height,
            cautions=keys.CAUTIONS,
            style=sheet,
            policy=policy(sheet),
        )
    )


# ---- tables --------------------------------------------------------------------------------------


def _table(section: Section) -> Table:
    """Muscles share a scale, which takes the mark in; rows of whole plans have many units, and each its own scale."""
    of_all = max((section.mark or Fraction(0), *(_most(row.cells) for row in section.rows)))
    shares = section.corner == "Muscle"
    rows = (
        DrawnRow(
            row.title, tuple(_drawn(cell, of_all if shares else _most(row.cells), section.mark) for cell in row.cells)
        )
        for row in section.rows
    )
    return Table(section.title, section.note, section.corner, tuple(rows))


def _most(cells: Sequence[Cell]) -> Fraction:
    return max((cell.drawn.high for cell in cells if cell.drawn is not None), default=Fraction(0))


def _drawn(cell: Cell, most: Fraction, mark: Fraction | None) -> Drawn:
    bar = _bar(cell.drawn, most, mark) if cell.drawn is not None and most > 0 else None
    return Drawn(_typeset(cell.text), bar)


def _bar(figure: Average, most: Fraction, mark: Fraction | None) -> Bar:
    def across(value: Fraction) -> str:
        return f"{plain(value * FULL / most)}%"

    is_range = figure.low != figure.high
    is_past = mark is not None and figure.mean > mark
    return Bar(
        mean=across(mark if mark is not None and is_past else figure.mean),
        low=across(figure.low) if is_range else None,
        high=across(figure.high) if is_range else None,
        mark=across(mark) if mark is not None else None,
        past=across(figure.mean - mark) if mark is not None and is_past else None,
    )


def _typeset(text: str) -> str:
    """Figures with an en dash, in ranges and where there is nothing."""
    return text.replace("-", words.EN_DASH)


def _length(plan: PlanFigures) -> str:
    return f"{len(plan.weeks)} week{'' if len(plan.weeks) == 1 else 's'}"


# ---- effort --------------------------------------------------------------------------------------


def _plot(plan: PlanFigures, most: int) -> Plot:
    """All plots are as many weeks wide as the longest plan, so that weeks stand under each other."""
    missing = [None] * (most - len(plan.weeks))
    return Plot(
        heading=plan.heading,
        highest=curve([*_highest(plan), *missing], labelled=True, language=ENGLISH),
        mean=curve([*_mean(plan), *missing], labelled=False, language=ENGLISH),
        ticks=tuple(_ticks(plan, most)),
        said=_said(plan),
    )


def _highest(plan: PlanFigures) -> list[Fraction | None]:
    return [week.highest_effort if comparison.tells(week) else None for week in plan.weeks]


def _mean(plan: PlanFigures) -> list[Fraction | None]:
    return [week.mean_effort if comparison.tells(week) else None for week in plan.weeks]


def _ticks(plan: PlanFigures, most: int) -> Iterator[Tick]:
    every = -(-most // MOST_LABELS)
    for at, week in enumerate(plan.weeks):
        letter = words.week_letter(week.kind, ENGLISH)
        if letter or at % every == 0:
            yield Tick(f"{plain(Fraction(100 * (2 * at + 1), 2 * most))}%", letter or str(week.number), bool(letter))


def _said(plan: PlanFigures) -> str:
    told = [_week_said(week) for week in plan.weeks if comparison.tells(week)]
    return f"RPE by week: {'; '.join(told)}." if told else "No week says how hard it is."


def _week_said(week: WeekFigures) -> str:
    kind = words.week_aside(week.kind, ENGLISH)
    aside = f" ({kind})" if kind else ""
    assert week.highest_effort is not None
    assert week.mean_effort is not None
    return f"week {week.number}{aside} hardest {plain(week.highest_effort, 1)}, mean {plain(week.mean_effort, 1)}"
