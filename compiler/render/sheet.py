"""A plan arranged as sheets: weeks, sessions, numbered movements, what stands where; markdown and html print it.

Comes in: a plan, its overview and a language. Goes out: `Sheet`, in which everything a person reads is text.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from fractions import Fraction
from functools import lru_cache
from itertools import groupby
from typing import Final

from setwright.plan import BlockSpan, Line, Plan, Segment, SegmentKind, Session, Week, WeekKind
from setwright.quantities import Mass, Unit
from setwright.record import record
from setwright.render import cautions, words
from setwright.render.cautions import Caution
from setwright.render.language import Language
from setwright.report.overview import SessionSummary, WeekSummary
from setwright.science.discs import colour_of

# A sheet has room to write so many sets down; more are written beside.
MOST_BLANKS: Final = 12

# Discs of so many kilograms are drawn higher than those below.
_HEIGHTS: Final = ("1.5", "4", "9", "19")


@record
class Disc:
    """One disc on a side: the number printed on it, the federation's colour or None, its drawn height (1 to 5)."""

    number: str
    colour: str | None
    height: int


@record
class Row:
    """One segment; `lead` says how it joins the one before."""

    lead: str | None
    dose: str
    per_side: bool  # stands after the dose, and smaller where there is room for that
    effort: str | None
    load: str | None
    spread: str | None  # "67.5-75", where the formulas disagree
    aside: str | None  # "in each hand"
    blank: str | None  # the unit beside a blank for an unknown load
    discs: tuple[Disc, ...]  # of one side; none also where there is no bar
    blanks: int  # sets that there is room to write down
    did: tuple[str, ...] | None = None  # the sets that were done; None where the session is still ahead


@record
class Remark:
    """A short text under a movement; `kind` is note, cue, swap or progression, `head` stands before the text."""

    kind: str
    head: str | None
    text: str


@record
class Reason:
    """One step on the way to a number; `head` says of which, `place` is the line of a file, each where it is new."""

    head: str
    value: str
    text: str
    place: str | None


@record
class Station:
    """One movement as it stands in a session."""

    order: int
    name: str
    instead: str | None  # "instead of Dip"
    label: str | None
    optional: bool
    projected: bool
    warm_up: tuple[str, ...]
    rows: tuple[Row, ...]
    manner: tuple[str, ...]
    remarks: tuple[Remark, ...]
    why: tuple[Reason, ...] = ()  # on demand
    did: tuple[str, ...] = ()  # how what was done differs: "2 sets more than asked"


@record
class Part:
    """A movement by itself (`heading` None), or those of a superset or circuit."""

    heading: str | None
    stations: tuple[Station, ...]


@record
class SessionSheet:
    """One session; `slot` is its day as the plan writes it, `when` its date in words."""

    slot: str
    day: str
    label: str | None
    date: date | None
    when: str | None
    minutes: str
    cautions: tuple[Caution, ...]
    notes: tuple[str, ...]
    parts: tuple[Part, ...]
    state: str = ""  # done, missed or away, where the log says so
    did: tuple[str, ...] = ()  # what a session that has passed came to


@record
class WeekSheet:
    """One week."""

    number: int
    block: str
    place: str  # "week 3 of 4"
    kind: WeekKind
    letter: str
    name: str
    banner: str | None
    dates: str | None
    cautions: tuple[Caution, ...]
    notes: tuple[str, ...]
    sessions: tuple[SessionSheet, ...]
    extras: tuple[str, ...] = ()  # sessions that were done outside the plan


@record
class WeekMark:
    """A week as a list of weeks shows it."""

    number: int
    letter: str
    name: str


@record
class BlockSheet:
    """One block, as the overview lists it."""

    name: str
    weeks: str
    dates: str | None
    marked: tuple[str, ...]  # "deload week 4"
    marks: tuple[WeekMark, ...]


@record
class Sheet:
    """The whole plan."""

    name: str
    author: str | None
    athlete: str | None
    dates: str | None
    length: str
    facts: tuple[tuple[str, str], ...]
    cautions: tuple[Caution, ...]
    notes: tuple[str, ...]
    blocks: tuple[BlockSheet, ...]
    weeks: tuple[WeekSheet, ...]
    progress: str | None = None  # "12 of 14 sessions", where the log is known


def sheet(plan: Plan, overview: Sequence[WeekSummary], language: Language) -> Sheet:
    """The plan as sheets; `overview` is that of the same plan, for the minutes."""
    lengths = {
        (block.name, number): block.last_week - block.first_week + 1
        for block in plan.blocks
        for number in range(block.first_week, block.last_week + 1)
    }
    summaries = {week.number: week for week in overview}
    return Sheet(
        name=plan.name,
        author=plan.author,
        athlete=plan.athlete,
        dates=_dates(plan.weeks, plan.microcycle, language),
        length=_length(plan, language),
        facts=tuple((name, language.said(value)) for name, value in plan.athlete_facts),
        cautions=cautions.of_plan(plan, language),
        notes=tuple(language.said(note) for note in plan.notes),
        blocks=_blocks(plan, language),
        weeks=tuple(
            _week(week, plan, lengths.get((week.block, week.number), 1), summaries.get(week.number), language)
            for week in plan.weeks
        ),
    )


def _length(plan: Plan, language: Language) -> str:
    count = len(plan.weeks)
    if plan.microcycle == 7:
        return language.count("{number} week", "{number} weeks", count).format(number=count)
    said = language.count("{number} round of {days} days", "{number} rounds of {days} days", count)
    return said.format(number=count, days=plan.microcycle)


def _dates(weeks: Sequence[Week], microcycle: int, language: Language) -> str | None:
    if not weeks or weeks[0].start is None or weeks[-1].start is None:
        return None
    planned = [session.date for session in weeks[-1].sessions if session.date is not None]  # later, after days away
    return language.days(weeks[0].start, max([words.last_day(weeks[-1].start, microcycle), *planned]))


def _blocks(plan: Plan, language: Language) -> tuple[BlockSheet, ...]:
    weeks = {week.number: week for week in plan.weeks}
    return tuple(
        _block(
            block,
            [weeks[number] for number in range(block.first_week, block.last_week + 1) if number in weeks],
            plan,
            language,
        )
        for block in plan.blocks
    )


def _block(block: BlockSpan, weeks: Sequence[Week], plan: Plan, language: Language) -> BlockSheet:
    """A block as far as the plan still holds its weeks: a sheet may be of one week alone."""
    marks = tuple(
        WeekMark(week.number, words.week_letter(week.kind, language), words.week_aside(week.kind, language))
        for week in weeks
    )
    whole = len(weeks) == block.last_week - block.first_week + 1
    return BlockSheet(
        name=block.name,
        weeks=words.stretch(block.first_week, block.last_week, language),
        dates=_dates(weeks, plan.microcycle, language) if whole else None,
        marked=tuple(f"{mark.name}{words.NO_BREAK}{mark.number}" for mark in marks if mark.letter),
        marks=marks,
    )


def _week(week: Week, plan: Plan, length: int, summary: WeekSummary | None, language: Language) -> WeekSheet:
    minutes = summary.sessions if summary is not None else ()
    return WeekSheet(
        number=week.number,
        block=week.block,
        place=language.text("week {number} of {length}").format(number=week.number_in_block, length=length),
        kind=week.kind,
        letter=words.week_letter(week.kind, language),
        name=words.week_name(week.kind, language),
        banner=words.week_banner(week.kind, language),
        dates=_dates((week,), plan.microcycle, language),
        cautions=cautions.of_week(summary, language) if summary is not None else (),
        notes=week.notes,
        sessions=tuple(
            _session(session, plan.unit, minutes[at] if at < len(minutes) else None, warned, language)
            for at, (session, warned) in enumerate(
                zip(week.sessions, cautions.of_sessions(week, language), strict=True)
            )
        ),
    )


def _session(
    session: Session, unit: Unit, summary: SessionSummary | None, warned: tuple[Caution, ...], language: Language
) -> SessionSheet:
    return SessionSheet(
        slot=session.slot,
        day=words.slot(session.slot, language),
        label=session.label,
        date=session.date,
        when=language.day(session.date, year=False) if session.date else None,
        minutes=words.minutes(summary.minutes, language) if summary is not None else "",
        cautions=warned,
        notes=session.notes,
        parts=tuple(_parts(session, unit, language)),
    )


def _parts(session: Session, unit: Unit, language: Language) -> Iterator[Part]:
    # Without a group every line is a part of its own, so its order is the key.
    for _, numbered in groupby(
        enumerate(session.lines, 1), key=lambda pair: pair[1].group.letter if pair[1].group else pair[0]
    ):
        lines = tuple(numbered)
        group = lines[0][1].group
        heading = words.together(group, tuple(order for order, _ in lines), language) if group is not None else None
        yield Part(heading, tuple(_station(order, line, unit, language) for order, line in lines))


def _station(order: int, line: Line, unit: Unit, language: Language) -> Station:
    warm_up = tuple(words.warm_up(part, language) for part in line.segments if part.kind is SegmentKind.WARM_UP)
    return Station(
        order=order,
        name=line.movement.name,
        instead=words.instead_of(line.instead_of, language) if line.instead_of else None,
        label=line.label,
        optional=line.optional,
        projected=line.projected,
        warm_up=warm_up,
        rows=tuple(_row(line, segment, at, unit, language) for at, segment in enumerate(line.work)),
        manner=words.manner(line, language),
        remarks=tuple(_remarks(line, language)),
    )


def _row(line: Line, segment: Segment, at: int, unit: Unit, language: Language) -> Row:
    made = segment.load
    return Row(
        lead=_lead(segment, at, language),
        dose=words.dose(segment, language, with_side=False),
        per_side=segment.reps.per_side,
        effort=words.asked_effort(segment, language),
        load=words.load(segment, language),
        spread=words.load_spread(segment, language),
        aside=words.load_aside(segment, language),
        blank=unit.value if words.wants_load(line.movement, segment) else None,
        discs=tuple(_disc(disc, made.mass.unit, language) for disc in made.per_side or ()) if made else (),
        blanks=min(segment.sets, MOST_BLANKS),
    )


def _lead(segment: Segment, at: int, language: Language) -> str | None:
    match segment.kind:
        case SegmentKind.TEST:
            # For translators: stands before the sets and repetitions of a line, as the next two do.
            return language.text("test")
        case SegmentKind.DROP:
            return language.text("drop")
        case _:
            return language.text("then") if at else None


@lru_cache(maxsize=512)  # the same few discs make every load
def _disc(amount: Fraction, unit: Unit, language: Language) -> Disc:
    mass = Mass(amount, unit)
    kilograms = mass.to(Unit.KG).amount
    height = 1 + sum(kilograms >= Fraction(least) for least in _HEIGHTS)
    return Disc(language.number(amount), colour_of(mass), height)


def _remarks(line: Line, language: Language) -> Iterator[Remark]:
    for note in line.notes:
        yield Remark("note", None, language.said(note))
    if line.advance is not None:
        rule = language.said(line.advance_words or line.advance.removeprefix("advance "))
        yield Remark("progression", language.text("Progression"), rule)
    if line.movement.cue is not None:
        yield Remark("cue", None, line.movement.cue)
    swaps = line.swaps or line.movement.swaps
    if swaps:
        yield Remark("swap", language.text("Swap for"), ", ".join(swaps))
