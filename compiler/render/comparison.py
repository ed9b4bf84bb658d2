"""Plans side by side as figures in words, once for the terminal and for HTML.

Comes in: a `Comparison`. Goes out: `Section`s of rows with a cell a plan.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import Final

from setwright.plan import Muscle
from setwright.quantities import plain
from setwright.record import record
from setwright.render import words
from setwright.render.language import ENGLISH
from setwright.report.compare import Average, Comparison, MuscleFigures, PlanFigures, WeekFigures

NOTHING: Final = "-"  # where a plan has no such figure
PLACES: Final = 1

KEY: Final = (
    "Figures of working weeks: a mean, and in brackets the lowest and highest where they differ. Sets count for a "
    "muscle by its share; weekly figures are per 7 days. A - stands where there is no such figure."
)


@record
class Cell:
    """One figure of one plan as text, and as a number where it can be drawn."""

    text: str
    drawn: Average | None = None


@record
class Row:
    """A figure of every plan."""

    title: str
    cells: tuple[Cell, ...]


@record
class Section:
    """Rows that are read together. `mark` is a number that a drawing of them shows; `corner` says what a row is."""

    title: str
    note: str
    corner: str
    rows: tuple[Row, ...]
    mark: Fraction | None = None


def sections(of: Comparison) -> tuple[Section, ...]:
    """All figures; what each one is, its note says."""
    ceiling = plain(of.ceiling)
    every = (
        _whole_plans(of),
        _muscles(of, "Sets a week", "", lambda one: one.sets),
        _muscles(
            of,
            "Largest session, sets",
            f"The most sets for a muscle in one session. Where they are drawn, the ceiling of {ceiling} is marked.",
            lambda one: _single(one.largest_session),
            mark=of.ceiling,
        ),
        _muscles(
            of,
            f"Sets a week past {ceiling} a session",
            "Those that come after the ceiling of their session. Muscles without any are left out.",
            lambda one: one.beyond_ceiling,
            only_some=True,
        ),
        _muscles(
            of,
            "Exposures a week",
            "Sessions with a direct set: one of a movement that trains the muscle first.",
            lambda one: one.exposures,
        ),
        _muscles(
            of,
            "Shortest hours between exposures",
            "In whole days of 24 hours, also across weeks.",
            lambda one: _single(one.shortest_hours),
        ),
        _muscles(
            of,
            "Hours between exposures, by sets",
            "How long after the exposure before it a direct set comes, as a mean over all sets: a gap weighs as many "
            "sets as come after it.",
            lambda one: _single(one.weighted_hours),
        ),
        _efforts(of),
    )
    return tuple(section for section in every if section.rows)


def tells(week: WeekFigures) -> bool:
    """True where at least half of a week's sets state an effort; a week of percents would look like its easiest set."""
    return week.stated > 0 and 2 * week.stated >= week.sets


def _whole_plans(of: Comparison) -> Section:
    rows = [
        _row(of, "Working weeks", lambda plan: Cell(f"{plan.working_weeks} of {len(plan.weeks)}")),
        _row(of, "Sessions a week", lambda plan: _cell(plan.sessions)),
        _row(of, "Minutes a session", lambda plan: _cell(plan.session_minutes, 0)),
        _row(of, "Minutes a week", lambda plan: _cell(plan.week_minutes, 0)),
        _row(of, "Hours between exposures, by sets", lambda plan: _cell(_single(plan.weighted_hours), 0)),
        _row(of, "Rules broken: must", lambda plan: Cell(str(plan.must))),
        _row(of, "Rules broken: should", lambda plan: Cell(str(plan.should))),
    ]
    if any(plan.from_rpe is not None or plan.required_only for plan in of.columns):
        rows.append(_row(of, "Sets that count", lambda plan: Cell(_counted(plan))))
    note = (
        "Minutes are estimated. A rule counts as broken once for each muscle and day that it is broken for, in however "
        "many weeks."
    )
    return Section("Whole plans", note, "Figure", tuple(rows))


def _counted(plan: PlanFigures) -> str:
    said = [] if plan.from_rpe is None else [f"from RPE {plain(plan.from_rpe)}"]
    return ", ".join([*said, *(["required"] if plan.required_only else [])]) or "all"


def _muscles(
    of: Comparison,
    title: str,
    note: str,
    figure: Callable[[MuscleFigures], Average | None],
    mark: Fraction | None = None,
    only_some: bool = False,
) -> Section:
    """A row a muscle that has the figure in some plan; with `only_some`, where it is more than nothing."""
    places = 0 if "hours" in title.casefold() else PLACES

    def cell(plan: PlanFigures, muscle: Muscle) -> Cell:
        found = plan.of(muscle.word)
        return _cell(figure(found), places) if found else Cell(NOTHING)

    made = (Row(muscle.title, tuple(cell(plan, muscle) for plan in of.columns)) for muscle in of.muscles)
    rows = tuple(row for row in made if any(_tells_something(one, only_some) for one in row.cells))
    nobody = Row("Every muscle", tuple(Cell("0" if plan.muscles else NOTHING) for plan in of.columns))
    return Section(title, note, "Muscle", rows or ((nobody,) if only_some else ()), mark)


def _tells_something(cell: Cell, only_some: bool) -> bool:
    return cell.drawn is not None and (cell.drawn.high > 0 or not only_some)


def _efforts(of: Comparison) -> Section:
    most = max((len(plan.weeks) for plan in of.columns), default=0)
    rows = (Row(f"Week {at + 1}", tuple(_effort(plan, at) for plan in of.columns)) for at in range(most))
    note = (
        "RPE of the hardest set that states one, then the mean of those sets. D: a deload week, T: a test week. A week "
        "where fewer than half of the sets state an effort has neither."
    )
    return Section("Effort by week: highest, mean", note, "Week", tuple(rows))


def _effort(plan: PlanFigures, at: int) -> Cell:
    if at >= len(plan.weeks):
        return Cell("")
    week = plan.weeks[at]
    said = NOTHING
    if week.highest_effort is not None and week.mean_effort is not None and tells(week):
        said = f"{plain(week.highest_effort, PLACES)}, {plain(week.mean_effort, PLACES)}"
    return Cell(f"{said} {words.week_letter(week.kind, ENGLISH)}".rstrip())


def _row(of: Comparison, title: str, cell: Callable[[PlanFigures], Cell]) -> Row:
    return Row(title, tuple(cell(plan) for plan in of.columns))


def _cell(figure: Average | None, places: int = PLACES) -> Cell:
    if figure is None:
        return Cell(NOTHING)
    mean, low, high = (plain(value, places) for value in (figure.mean, figure.low, figure.high))
    return Cell(mean if low == high else f"{mean} ({low}-{high})", figure)


def _single(value: Fraction | int | None) -> Average | None:
    return None if value is None else Average(Fraction(value), Fraction(value), Fraction(value))
