"""Sheets as Markdown tables, for places that show the files of a repository.

Comes in: a plan, its volume and overview. Goes out: GitHub-flavoured Markdown in which names cannot become markup.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from setwright.plan import Plan, WeekKind
from setwright.quantities import plain
from setwright.render import keys, words
from setwright.render.cautions import Caution
from setwright.render.effort import telling
from setwright.render.material import PLAIN, Look, Material
from setwright.render.sheet import Row, SessionSheet, Sheet, Station, WeekSheet, sheet
from setwright.render.tables import Grid, Record, minutes_grids, sets_grids
from setwright.report.overview import WeekSummary
from setwright.report.volume import Volume
from setwright.science.effort import EFFORT_KEY

# What is markup anywhere; then what would become a mention, an issue's link or an address.
_SPECIAL: Final = re.compile(r"[\\`*_\[\]<>|~&$]|[@#](?=\w)|(?<=www)\.|:(?=//)", re.IGNORECASE)
_LEADING: Final = re.compile(r"^(?:[-+=](?=\s|$|[-+=])|#+(?=\s|$)|\d+(?=[.)](?:\s|$)))")
_SPACE: Final = re.compile(r"[\s\x00-\x1f\x7f\x85\u2028\u2029]+")
_DASHES: Final = "---"


def rendered(material: Material, look: Look) -> bytes:
    """The text as a file."""
    return text(material, look).encode()


def text(material: Material, look: Look = PLAIN) -> str:
    """The whole plan: overview, cautions, a section a week, keys; ends with a line end."""
    plan, volume, overview = material.plan, material.volume, material.overview
    arranged = sheet(plan, overview)
    lines: list[str] = [f"# {escape(plan.name)}", ""]
    lines += _title(arranged)
    lines += _overview(arranged, plan, volume, overview)
    lines += _cautions(arranged)
    for week in arranged.weeks:
        lines += _week(week)
    lines += _keys()
    return "\n".join(lines).rstrip("\n") + "\n"


def escape(written: str) -> str:
    """A person's text as inline Markdown: one line, shown as written, neither markup nor link nor HTML."""
    flat = _SPACE.sub(" ", written.replace("\u00a0", " ")).strip()
    return _LEADING.sub(_escape_last, _SPECIAL.sub(r"\\\g<0>", flat))


def _escape_last(start: re.Match[str]) -> str:
    # A number is escaped at the mark that follows it, a sign at itself.
    found = start.group()
    return f"{found}\\" if found.isdigit() else f"\\{found}"


def _title(arranged: Sheet) -> Iterator[str]:
    facts = (
        ("Athlete", arranged.athlete),
        ("Written by", arranged.author),
        ("Dates", arranged.dates),
        ("Length", arranged.length),
        *arranged.facts,
    )
    for name, value in facts:
        if value:
            yield f"- {escape(name)}: {escape(value)}"
    yield ""
    for note in arranged.notes:
        yield from (f"> {escape(note)}", "")


def _overview(arranged: Sheet, plan: Plan, volume: Volume, overview: Sequence[WeekSummary]) -> Iterator[str]:
    yield from ("## Overview", "")
    blocks = ((b.name, b.weeks, b.dates or "", ", ".join(b.marked)) for b in arranged.blocks)
    yield from _table(("Block", "Weeks", "Dates", "Marked"), blocks)
    yield from ("### Week by week", "")
    yield from _table(
        ("Week", "Kind", "Sets", "Hardest set", "Mean effort", "Minutes"), map(_summary, telling(plan, overview))
    )
    yield from ("Effort is that of the sets that state one, and is left out where fewer than half do.", "")
    yield from ("### Sets per muscle per week", "")
    yield from ("A set counts in full for the muscles a movement trains first, in part for those that help.", "")
    for grid in sets_grids(plan, volume, overview):
        yield from _grid("Muscle", grid)
    yield from ("### Minutes a session, estimated", "")
    for grid in minutes_grids(plan, overview):
        yield from _grid("Day", grid)


def _summary(week: WeekSummary) -> tuple[str, ...]:
    return (
        str(week.number),
        "" if week.kind is WeekKind.WORKING else words.WEEK_NAMES[week.kind],
        str(week.sets),
        "" if week.highest_effort is None else f"RPE {plain(week.highest_effort, 1)}",
        "" if week.mean_effort is None else f"RPE {plain(week.mean_effort, 1)}",
        plain(week.minutes, 0),
    )


def _grid(corner: str, grid: Grid) -> Iterator[str]:
    head = (corner, *(f"{week.number} {week.letter}".strip() for week in grid.weeks))
    records = (*grid.records, *((grid.foot,) if grid.foot else ()))
    yield from _table(head, map(_record, records), numbers=True)


def _record(record: Record) -> tuple[str, ...]:
    return (record.title, *(cell.text for cell in record.cells))


def _cautions(arranged: Sheet) -> Iterator[str]:
    yield from ("## Cautions", "")
    for caution in arranged.cautions:
        yield f"- {_caution(caution)}"
    yield ""


def _caution(caution: Caution) -> str:
    head, said = caution
    return f"**{head}.** {escape(said)}"


def _week(week: WeekSheet) -> Iterator[str]:
    yield from (f"## Week {week.number}: {escape(week.block)}, {week.place}", "")
    if week.dates:
        yield from (escape(week.dates), "")
    if week.banner:
        yield from (f"> **{week.name}.** {week.banner}", "")
    for caution in week.cautions:
        yield from (f"> {_caution(caution)}", "")
    for note in week.notes:
        yield from (f"> {escape(note)}", "")
    for session in week.sessions:
        yield from _session(session)


def _session(session: SessionSheet) -> Iterator[str]:
    label = f": {escape(session.label)}" if session.label else ""
    yield from (f"### {escape(session.day)}{label}", "")
    about = (words.day(session.date) if session.date else "", session.minutes)
    if any(about):
        yield from (escape(", ".join(part for part in about if part)), "")
    for caution in session.cautions:
        yield from (f"> {_caution(caution)}", "")
    for note in session.notes:
        yield from (f"> {escape(note)}", "")
    head = ("", "Movement", f"Sets {words.TIMES} reps", "Load", "Each side", "How", "Done")
    yield from _table(head, _rows(session), escaped=True)
    yield from _remarks(session)


def _rows(session: SessionSheet) -> Iterator[tuple[str, ...]]:
    for part in session.parts:
        if part.heading:
            yield ("", f"**{escape(part.heading)}**", "", "", "", "", "")
        for station in part.stations:
            yield from _station(station)


def _station(station: Station) -> Iterator[tuple[str, ...]]:
    named = f"**{escape(station.name)}**"
    if station.instead:
        named += f" ({escape(station.instead)})"
    if station.label:
        named += f" {escape(station.label)}"
    if station.optional:
        named += " *(optional)*"
    if station.projected:
        named += " *(projected)*"
    how = escape(", ".join(station.manner))
    number = str(station.order)
    if station.warm_up:
        yield (number, named, f"warm-up: {escape(', '.join(station.warm_up))}", "", "", how, "")
        number, named, how = "", "", ""
    for row in station.rows:
        yield (number, named, _dose(row), _load(row), _discs(row), how, "")
        number, named, how = "", "", ""


def _dose(row: Row) -> str:
    lead = f"{row.lead}: " if row.lead else ""
    effort = f" @ {row.effort}" if row.effort else ""
    dose = row.dose + (words.PER_SIDE if row.per_side else "")
    return escape(f"{lead}{dose}") + (f" {escape(effort)}" if effort else "")


def _load(row: Row) -> str:
    if row.load:
        spread = f" ({row.spread})" if row.spread else ""
        return f"**{escape(row.load)}**{spread}" + (f" {row.aside}" if row.aside else "")
    return f"\\_\\_\\_\\_ {row.blank}" if row.blank else ""


def _discs(row: Row) -> str:
    return escape(" + ".join(disc.number for disc in row.discs))


def _remarks(session: SessionSheet) -> Iterator[str]:
    stations = [station for part in session.parts for station in part.stations if station.remarks]
    for station in stations:
        said = " \u00b7 ".join(
            escape(f"{remark.head}: {remark.text}" if remark.head else remark.text) for remark in station.remarks
        )
        yield f"- {station.order} {escape(station.name)}: {said}"
    if stations:
        yield ""


def _keys() -> Iterator[str]:
    yield from ("## How to read this sheet", "")
    yield from _table(("RPE", "What was left"), EFFORT_KEY)
    yield from _table(("Written", "Means"), keys.NOTATION)


def _table(
    head: Sequence[str], rows: Iterable[Sequence[str]], *, escaped: bool = False, numbers: bool = False
) -> Iterator[str]:
    """A table and a blank line; nothing at all without rows."""
    body = [f"| {' | '.join(cells if escaped else map(escape, cells))} |" for cells in rows]
    if body:
        rule = [_DASHES, *([f"{_DASHES}:" if numbers else _DASHES] * (len(head) - 1))]
        yield from (f"| {' | '.join(head)} |", f"| {' | '.join(rule)} |", *body, "")
