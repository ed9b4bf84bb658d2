"""A plan's volume as text for the terminal: a table a block, bars, or JSON.

Comes in: a plan and its `Volume`. Goes out: text. Only layout happens here; the figures are `report.volume`'s.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from json import dumps

from setwright.diagnostics.printers.characters import visible, width
from setwright.plan import Muscle, Plan, Week, WeekKind
from setwright.quantities import plain, round_half_up
from setwright.render.json import muscle_week
from setwright.report.volume import MuscleWeek, Volume

_WEEKS_ACROSS = 12  # in one table; a longer block takes several
_BARS = "▁▂▃▄▅▆▇█"
_MARKS = {WeekKind.WORKING: "", WeekKind.DELOAD: "d", WeekKind.TEST: "t"}
_NOTHING = "Nothing in this plan trains a muscle."
_KEY = "Sets a week: each counts for a muscle by its share. d: deload week, t: test week."
_PER_WEEK = " Weekly figures are per 7 days."
DAYS = 7  # of a week


def table(plan: Plan, volume: Volume) -> str:
    """Muscles down, weeks across, and for those weeks the most sets in one session, sessions, and the least rest."""
    if not volume.rows:
        return f"{title(plan)}\n{_NOTHING}\n"
    parts = [title(plan), _KEY + (_PER_WEEK if plan.microcycle != DAYS else "")]
    for heading, weeks in _stretches(plan):
        rows = [_row(muscle, [volume.of(week.number, muscle.word) for week in weeks]) for muscle in volume.muscles]
        header = (
            visible(heading),
            *(week_head(week.number, week.kind) for week in weeks),
            "most/session",
            "sessions",
            "least rest",
        )
        parts += ["", *aligned([header, *rows])]
    return "\n".join(parts) + "\n"


def bars(plan: Plan, volume: Volume) -> str:
    """A line a muscle, a bar a week, a space between blocks, all to one scale."""
    if not volume.rows:
        return f"{title(plan)}\n{_NOTHING}\n"
    highest = max(row.fractional_sets for row in volume.rows)
    rows = []
    for muscle in volume.muscles:
        drawn = [
            "".join(_bar(volume.of(week.number, muscle.word), highest) for week in weeks) for _, weeks in _blocks(plan)
        ]
        rows.append((visible(muscle.title), " ".join(drawn), _range(_sets(volume, plan, muscle))))
    scale = f"A bar a week, a group a block; the highest bar is {plain(highest)} sets a week."
    return "\n".join([title(plan), scale, "", *aligned(rows, left=2)]) + "\n"


def json(figures: Iterable[tuple[Plan, Volume]]) -> str:
    """An array with an object a plan and athlete, its `rows` in the order of the CSV."""
    plans = [
        {"plan": plan.name, "athlete": plan.athlete, "rows": [muscle_week(row) for row in volume.rows]}
        for plan, volume in figures
    ]
    return dumps(plans, indent=2) + "\n"


def aligned(rows: Sequence[tuple[str, ...]], left: int = 1) -> list[str]:
    """Columns as wide as their widest cell: the first `left` flush left, the others flush right."""
    widths = [max(width(row[at]) for row in rows) for at in range(len(rows[0]))] if rows else []
    lines = []
    for row in rows:
        gaps = [" " * (widths[at] - width(cell)) for at, cell in enumerate(row)]
        cells = [cell + gap if at < left else gap + cell for at, (cell, gap) in enumerate(zip(row, gaps, strict=True))]
        lines.append("  ".join(cells).rstrip())
    return lines


def title(plan: Plan) -> str:
    """Whose figures these are: the plan's name, and the athlete's."""
    return visible(f"{plan.name}, for {plan.athlete}" if plan.athlete else plan.name)


def week_head(number: int, kind: WeekKind) -> str:
    """A week's number with the mark of its kind: `4d` for a deload."""
    return f"{number}{_MARKS[kind]}"


def _blocks(plan: Plan) -> Iterator[tuple[str, list[Week]]]:
    for block in plan.blocks:
        yield block.name, [week for week in plan.weeks if block.first_week <= week.number <= block.last_week]


def _stretches(plan: Plan) -> Iterator[tuple[str, list[Week]]]:
    for name, weeks in _blocks(plan):
        for at in range(0, len(weeks), _WEEKS_ACROSS):
            yield name, weeks[at : at + _WEEKS_ACROSS]


def _row(muscle: Muscle, weeks: Sequence[MuscleWeek]) -> tuple[str, ...]:
    rests = [week.rest_h_min for week in weeks if week.rest_h_min is not None]
    return (
        visible(muscle.title),
        *(plain(week.fractional_sets) for week in weeks),
        plain(max(week.max_session_sets for week in weeks)),
        _range([week.sessions for week in weeks]),
        f"{min(rests)} h" if rests else "",
    )


def _sets(volume: Volume, plan: Plan, muscle: Muscle) -> list[Fraction]:
    return [volume.of(week.number, muscle.word).fractional_sets for week in plan.weeks]


def _range(values: Sequence[Fraction | int]) -> str:
    low, high = min(values), max(values)
    return plain(low) if low == high else f"{plain(low)}-{plain(high)}"


def _bar(row: MuscleWeek, highest: Fraction) -> str:
    if not row.fractional_sets:
        return "·"
    eighths = round_half_up(row.fractional_sets * len(_BARS) / highest)
    return _BARS[max(0, int(eighths) - 1)]
