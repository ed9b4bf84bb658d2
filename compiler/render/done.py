"""What was done, in words, put into an arranged sheet beside what was asked.

Comes in: a sheet, the plan that it was made from, and its outcomes. Goes out: the same sheet with what was done.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from itertools import groupby
from typing import Final

from setwright.log.model import LineDone, SessionDone, SetDone
from setwright.plan import Line, Plan, Session
from setwright.prescription import Bodyweight, Effort, Weight
from setwright.quantities import Mass, Unit
from setwright.record import replace
from setwright.render import words
from setwright.render.language import Language
from setwright.render.material import Material
from setwright.render.sheet import Part, SessionSheet, Sheet, Station, WeekSheet, sheet
from setwright.report.outcomes import LineOutcome, Outcomes, SessionOutcome, State

_RPE: Final = "RPE"


def arranged(material: Material, language: Language) -> Sheet:
    """The sheet of the plan, with what was done where its log is known."""
    made = sheet(material.plan, material.overview, language)
    return made if material.outcomes is None else with_outcomes(made, material.plan, material.outcomes, language)


def with_outcomes(made: Sheet, plan: Plan, outcomes: Outcomes, language: Language) -> Sheet:
    """The sheet of all weeks of the plan."""
    weeks = tuple(
        replace(
            paper,
            sessions=tuple(
                _session(one, session, outcomes.of(week.number, position), plan.unit, language)
                for position, (one, session) in enumerate(zip(paper.sessions, week.sessions, strict=True), 1)
            ),
            extras=tuple(_extra(extra, plan.unit, language) for extra in outcomes.extras_in(week.number)),
        )
        for paper, week in zip(made.weeks, plan.weeks, strict=True)
    )
    return replace(made, weeks=_with_the_rest(weeks, plan, outcomes, language), progress=_progress(outcomes, language))


def set_words(one: SetDone, unit: Unit, scale: str, language: Language) -> str:
    """One set in a box: `80 x 5 @ 8`, in the plan's unit and on the scale of what is asked, unless said."""
    load = _load(one, unit, language)
    amount = words.amount(replace(one.reps, per_side=False), language)
    heft = f"{load}{words.NO_BREAK}{words.TIMES}{words.NO_BREAK}" if load else ""
    return f"{heft}{amount}" + (
        f"{words.NO_BREAK}@{words.NO_BREAK}{_felt(one.effort, scale, language)}" if one.effort else ""
    )


def entry_words(entry: LineDone, language: Language) -> str:
    """A movement and its sets: `Face Pull 20 kg x 15, 15 @ RPE 8`."""
    label = f" {language.name(entry.label)}" if entry.label else ""
    return f"{language.name(entry.movement.name)}{label} {sets_words(entry.sets, language)}"


def sets_words(sets: Sequence[SetDone], language: Language) -> str:
    """Sets one after the other, each load said once."""
    return "; ".join(
        _alike(tuple(alike), language) for _, alike in groupby(sets, key=lambda one: (one.load, one.reps.kind))
    )


def _alike(sets: tuple[SetDone, ...], language: Language) -> str:
    first = sets[0]
    heft = ""
    if first.load is not None:
        heft = f"{_whole_load(first, language)}{words.NO_BREAK}{words.TIMES}{words.NO_BREAK}"
    said: list[str] = []
    for at, one in enumerate(sets):
        last_of_effort = at + 1 == len(sets) or sets[at + 1].effort != one.effort
        effort = f" @ {words.effort(one.effort, language)}" if one.effort and last_of_effort else ""
        said.append(words.amount(one.reps, language) + effort)
    return heft + ", ".join(said)


def _session(
    made: SessionSheet, session: Session, outcome: SessionOutcome, unit: Unit, language: Language
) -> SessionSheet:
    if outcome.state is State.AHEAD:
        return made
    parts = tuple(
        Part(part.heading, tuple(_station(one, session, outcome, unit, language) for one in part.stations))
        for part in made.parts
    )
    return replace(made, parts=parts, state=outcome.state.value, did=tuple(_said(session, outcome, language)))


def _station(made: Station, session: Session, outcome: SessionOutcome, unit: Unit, language: Language) -> Station:
    if outcome.state is not State.DONE:
        return made  # it may still be caught up with: the boxes stay
    line, of = session.lines[made.order - 1], outcome.lines[made.order - 1]
    rows = tuple(
        replace(row, did=tuple(set_words(one, unit, _scale(segment.intensity), language) for one in sets), blanks=0)
        for row, segment, sets in zip(made.rows, line.work, of.segments, strict=True)
    )
    return replace(made, rows=rows, did=tuple(_of_line(line, of, language)))


def _of_line(line: Line, of: LineOutcome, language: Language) -> Iterator[str]:
    if not of.sets:
        yield language.text("not done")
        return
    if of.instead is not None:
        yield language.text("{movement} in its place").format(movement=language.name(of.instead))
    if of.more > 0:
        said = language.count("{number} set more than asked", "{number} sets more than asked", of.more)
        yield said.format(number=of.more)
    elif of.more < 0:
        said = language.count("{number} set fewer than asked", "{number} sets fewer than asked", -of.more)
        yield said.format(number=-of.more)


def _said(session: Session, outcome: SessionOutcome, language: Language) -> Iterator[str]:
    """What a session comes to, a sentence each; the athlete's own words last."""
    match outcome.state:
        case State.MISSED:
            yield language.text("Not done.")
        case State.AWAY:
            pass  # its own note says so
        case _:
            yield _when(session.date, outcome.days, language)
    whole = [
        *(language.text("effort {effort} of 10").format(effort=language.number(each)) for each in outcome.efforts),
        *([f"{language.number(outcome.minutes, 0)}{words.NO_BREAK}min"] if outcome.minutes is not None else []),
    ]
    if whole:
        yield words.headed(language.text("The whole session"), ", ".join(whole), language)
    if outcome.beside:
        also = "; ".join(entry_words(entry, language) for entry in outcome.beside)
        yield words.headed(language.text("Besides"), also, language)
    for note in outcome.notes:
        yield language.text("\u201c{note}\u201d").format(note=language.name(note))


def _when(planned: date | None, days: tuple[date, ...], language: Language) -> str:
    if planned is not None and days == (planned,):
        return language.text("Done.")
    return language.text("Done on {days}.").format(days=language.listed([_day(day, language) for day in days]))


def _extra(session: SessionDone, unit: Unit, language: Language) -> str:
    head = language.text("Outside the plan, on {day}").format(day=_day(session.day, language))
    notes = [language.text("\u201c{note}\u201d").format(note=language.name(note)) for note in session.notes]
    return words.headed(head, "; ".join([*(entry_words(one, language) for one in session.lines), *notes]), language)


def _day(of: date, language: Language) -> str:
    day = language.day(of, year=False)
    return language.text("{weekday}, {day}").format(weekday=language.weekday(of.weekday()), day=day)


def _with_the_rest(
    weeks: tuple[WeekSheet, ...], plan: Plan, outcomes: Outcomes, language: Language
) -> tuple[WeekSheet, ...]:
    """In a plan without dates what goes past its sessions has no week; it stands under the last."""
    rest = tuple(_extra(extra, plan.unit, language) for extra in outcomes.extras_in(None))
    return (*weeks[:-1], replace(weeks[-1], extras=(*weeks[-1].extras, *rest))) if rest and weeks else weeks


def _progress(outcomes: Outcomes, language: Language) -> str | None:
    if not outcomes.due:
        return None
    said = language.count("{done} of {due} session", "{done} of {due} sessions", outcomes.due)
    return said.format(done=outcomes.done, due=outcomes.due)


def _scale(intensity: object) -> str:
    return "RIR" if isinstance(intensity, Effort) and intensity.as_reserve else _RPE


def _felt(effort: Effort, scale: str, language: Language) -> str:
    """An effort on the scale beside it as a number alone."""
    own = "RIR" if effort.as_reserve else _RPE
    amount = language.number(10 - effort.high if effort.as_reserve else effort.high)
    if own == scale:
        return amount
    return f"{amount}{words.NO_BREAK}{own}" if effort.as_reserve else f"{own}{words.NO_BREAK}{amount}"


def _load(one: SetDone, unit: Unit, language: Language) -> str:
    """The load as short as it can be: `80`, `+5`; with its unit where that is not the plan's."""
    match one.load:
        case Weight(mass):
            return _short(mass, unit, language)
        case Bodyweight(added) if added is not None and added.amount:
            sign = "+" if added.amount > 0 else words.MINUS
            return sign + _short(Mass(abs(added.amount), added.unit), unit, language)
        case _:
            return ""


def _short(mass: Mass, unit: Unit, language: Language) -> str:
    return language.number(mass.amount) if mass.unit is unit else words.mass(mass, language)


def _whole_load(one: SetDone, language: Language) -> str:
    match one.load:
        case Weight(mass):
            return words.mass(mass, language)
        case Bodyweight(added):
            return words.bodyweight(added, language)
        case _:
            return ""
