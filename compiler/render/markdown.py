"""Sheets as Markdown tables, for places that show the files of a repository.

Comes in: a plan, its volume and overview. Goes out: GitHub-flavoured Markdown in which names cannot become markup.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import Final

from setwright.plan import WeekKind
from setwright.render import aims, done, keys, words
from setwright.render.cautions import Caution
from setwright.render.effort import telling
from setwright.render.language import Language
from setwright.render.material import PLAIN, Look, Material
from setwright.render.sheet import Row, SessionSheet, Sheet, Station, WeekSheet
from setwright.render.tables import Grid, Record, counted, minutes_grids, sets_grids
from setwright.report.overview import WeekSummary

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
    language = look.language
    arranged = done.arranged(material, language)
    lines: list[str] = [f"# {escape(arranged.name)}", ""]
    lines += _title(arranged, language)
    lines += _overview(arranged, material, language)
    lines += _cautions(arranged, language)
    for week in arranged.weeks:
        lines += _week(week, language)
    lines += _keys(language)
    return "\n".join(lines).rstrip("\n") + "\n"


def session_text(material: Material, look: Look = PLAIN) -> str:
    """A plan of one session (`gathered.only_session`): what it is of, the session, the cautions, keys."""
    language = look.language
    arranged = done.arranged(material, language)
    whose = (
        words.headed(language.text("Athlete"), language.name(arranged.athlete), language) if arranged.athlete else ""
    )
    lines = [f"# {escape(arranged.name)}", "", *((escape(whose), "") if whose else ())]
    for week in arranged.weeks:
        lines += _week(week, language)
    lines += _cautions(arranged, language)
    lines += _keys(language)
    return "\n".join(lines).rstrip("\n") + "\n"


def escape(written: str) -> str:
    """A person's text as inline Markdown: one line, shown as written, neither markup nor link nor HTML."""
    flat = _SPACE.sub(" ", written.replace("\u00a0", " ")).strip()
    return _LEADING.sub(_escape_last, _SPECIAL.sub(r"\\\g<0>", flat))


def _escape_last(start: re.Match[str]) -> str:
    # A number is escaped at the mark that follows it, a sign at itself.
    found = start.group()
    return f"{found}\\" if found.isdigit() else f"\\{found}"


def _title(arranged: Sheet, language: Language) -> Iterator[str]:
    facts = (
        (language.text("Athlete"), arranged.athlete),
        (language.text("Written by"), arranged.author),
        (language.text("Dates"), arranged.dates),
        (language.text("Length"), arranged.length),
        (language.text("Done so far"), arranged.progress),
        *arranged.facts,
    )
    for name, value in facts:
        if value:
            yield f"- {escape(words.headed(language.name(name), language.name(value), language))}"
    yield ""
    for note in arranged.notes:
        yield from (f"> {escape(note)}", "")


def _overview(arranged: Sheet, material: Material, language: Language) -> Iterator[str]:
    _ = language.text
    plan, overview = material.plan, material.overview
    yield from ("## " + _("Overview"), "")
    blocks = ((b.name, b.weeks, b.dates or "", ", ".join(b.marked)) for b in arranged.blocks)
    yield from _table((_("Block"), _("Weeks"), _("Dates"), _("Marked")), blocks)
    yield from ("### " + _("Week by week"), "")
    head = (_("Week"), _("Kind"), _("Sets"), _("Hardest set"), _("Mean effort"), _("Minutes"))
    yield from _table(head, (_summary(week, language) for week in telling(plan, overview)))
    yield from (_("Effort is that of the sets that state one, and is left out where fewer than half do."), "")
    yield from ("### " + _("Sets per muscle per week"), "")
    yield from (counted(material.promise.counting, language), "")
    targets = aims.targets_of(material)
    if marked := aims.key(targets, language):
        yield from (marked, "")
    for grid in sets_grids(plan, material.volume, overview, language, targets, material.promise.counting):
        yield from _grid(_("Muscle"), grid, language)
    yield from ("### " + _("Minutes a session, estimated"), "")
    for grid in minutes_grids(plan, overview, language):
        yield from _grid(_("Day"), grid, language)


def _summary(week: WeekSummary, language: Language) -> tuple[str, ...]:
    return (
        str(week.number),
        "" if week.kind is WeekKind.WORKING else words.week_name(week.kind, language),
        str(week.sets),
        "" if week.highest_effort is None else f"RPE {language.number(week.highest_effort, 1)}",
        "" if week.mean_effort is None else f"RPE {language.number(week.mean_effort, 1)}",
        language.number(week.minutes, 0),
    )


def _grid(corner: str, grid: Grid, language: Language) -> Iterator[str]:
    aside = () if grid.aside is None else (grid.aside,)
    head = (corner, *aside, *(f"{week.number} {week.letter}".strip() for week in grid.weeks))
    records = (*grid.records, *((grid.foot,) if grid.foot else ()))
    yield from _table(head, (_record(record, grid, language) for record in records), numbers=True)


def _record(record: Record, grid: Grid, language: Language) -> tuple[str, ...]:
    aside = () if grid.aside is None else (words.clauses(record.aside, language),)
    return (record.title, *aside, *(f"{cell.text}{cell.mark.sign if cell.mark else ''}" for cell in record.cells))


def _cautions(arranged: Sheet, language: Language) -> Iterator[str]:
    yield from ("## " + language.text("Cautions"), "")
    for caution in arranged.cautions:
        yield f"- {_caution(caution)}"
    yield ""


def _caution(caution: Caution) -> str:
    head, said = caution
    return f"**{head}.** {escape(said)}"


def _week(week: WeekSheet, language: Language) -> Iterator[str]:
    number = language.text("Week {number}").format(number=week.number)
    yield from (f"## {words.headed(number, f'{escape(language.name(week.block))}, {week.place}', language)}", "")
    if week.dates:
        yield from (escape(week.dates), "")
    if week.banner:
        yield from (f"> **{week.name}.** {week.banner}", "")
    for caution in week.cautions:
        yield from (f"> {_caution(caution)}", "")
    for note in week.notes:
        yield from (f"> {escape(note)}", "")
    for session in week.sessions:
        yield from _session(session, language)
    for extra in week.extras:
        yield from (f"> {escape(extra)}", "")


def _session(session: SessionSheet, language: Language) -> Iterator[str]:
    day = escape(session.day)
    label = escape(language.name(session.label)) if session.label else None
    yield from (f"### {words.headed(day, label, language) if label else day}", "")
    about = (language.day(session.date) if session.date else "", session.minutes)
    if any(about):
        yield from (escape(", ".join(part for part in about if part)), "")
    for said in session.did:
        yield from (f"> {escape(said)}", "")
    for caution in session.cautions:
        yield from (f"> {_caution(caution)}", "")
    for note in session.notes:
        yield from (f"> {escape(note)}", "")
    _ = language.text
    doing = (_("Movement"), _("Sets \u00d7 reps"), _("Load"), _("Each side"), _("How"), _("Done"))
    yield from _table(("", *doing), _rows(session, language), escaped=True)
    yield from _remarks(session, language)


def _rows(session: SessionSheet, language: Language) -> Iterator[tuple[str, ...]]:
    for part in session.parts:
        if part.heading:
            yield ("", f"**{escape(part.heading)}**", "", "", "", "", "")
        for station in part.stations:
            yield from _station(station, language)


def _station(station: Station, language: Language) -> Iterator[tuple[str, ...]]:
    named = f"**{escape(language.name(station.name))}**"
    if station.instead:
        named += f" ({escape(station.instead)})"
    if station.label:
        named += f" {escape(language.name(station.label))}"
    if station.optional:
        named += " *(" + language.text("optional") + ")*"
    if station.projected:
        named += " *(" + language.text("projected") + ")*"
    for said in station.did:
        named += f" *({escape(said)})*"
    how = escape(", ".join(station.manner))
    number = str(station.order)
    if station.warm_up:
        steps = words.headed(language.text("warm-up"), ", ".join(station.warm_up), language)
        yield (number, named, escape(steps), "", "", how, "")
        number, named, how = "", "", ""
    for row in station.rows:
        yield (number, named, _dose(row, language), _load(row), _discs(row), how, escape(", ".join(row.did or ())))
        number, named, how = "", "", ""


def _dose(row: Row, language: Language) -> str:
    dose = f"{row.dose} {words.per_side(language)}" if row.per_side else row.dose
    said = escape(words.headed(row.lead, dose, language) if row.lead else dose)
    return f"{said} {escape(f'@ {row.effort}')}" if row.effort else said


def _load(row: Row) -> str:
    if row.load:
        spread = f" ({row.spread})" if row.spread else ""
        return f"**{escape(row.load)}**{spread}" + (f" {row.aside}" if row.aside else "")
    return f"\\_\\_\\_\\_ {row.blank}" if row.blank else ""


def _discs(row: Row) -> str:
    return escape(" + ".join(disc.number for disc in row.discs))


def _remarks(session: SessionSheet, language: Language) -> Iterator[str]:
    stations = [station for part in session.parts for station in part.stations if station.remarks]
    for station in stations:
        said = " \u00b7 ".join(
            escape(words.headed(remark.head, said, language) if remark.head else said)
            for remark, said in ((remark, language.name(remark.text)) for remark in station.remarks)
        )
        yield f"- {words.headed(f'{station.order} {escape(language.name(station.name))}', said, language)}"
    if stations:
        yield ""


def _keys(language: Language) -> Iterator[str]:
    _ = language.text
    yield from ("## " + _("How to read this sheet"), "")
    yield from _table(("RPE", _("What was left")), keys.effort_key(language))
    yield from _table((_("Written"), _("Means")), keys.translated(keys.NOTATION, language))


def _table(
    head: Sequence[str], rows: Iterable[Sequence[str]], *, escaped: bool = False, numbers: bool = False
) -> Iterator[str]:
    """A table and a blank line; nothing at all without rows."""
    body = [f"| {' | '.join(cells if escaped else map(escape, cells))} |" for cells in rows]
    if body:
        rule = [_DASHES, *([f"{_DASHES}:" if numbers else _DASHES] * (len(head) - 1))]
        yield from (f"| {' | '.join(head)} |", f"| {' | '.join(rule)} |", *body, "")
