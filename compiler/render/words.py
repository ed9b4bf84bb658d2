"""How a prescription is said to people, once for all sheets.

Comes in: values of a plan and a language. Goes out: plain text, unescaped, with no-break spaces inside quantities.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from fractions import Fraction
from functools import partial, reduce
from typing import Final, assert_never

from setwright.check.figures.effort import is_scaled
from setwright.plan import Group, GroupKind, Handling, Line, Movement, Segment, WeekKind
from setwright.prescription import (
    Bodyweight,
    ChangeByMass,
    ChangeByPercent,
    Effort,
    Intensity,
    PercentOfBest,
    Reps,
    RepsKind,
    Rest,
    Weight,
)
from setwright.quantities import Mass
from setwright.record import replace
from setwright.render.language import Language

NO_BREAK: Final = "\u00a0"
EN_DASH: Final = "\u2013"
TIMES: Final = "\u00d7"
MINUS: Final = "\u2212"

DAYS: Final = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


def week_letter(kind: WeekKind, language: Language) -> str:
    """The letter that stands where colour or pattern might be missed: on time lines and in table heads."""
    match kind:
        case WeekKind.WORKING:
            return ""
        case WeekKind.DELOAD:
            # For translators: one letter for a deload week, as in "D, T" and on the time line.
            return language.text("D")
        case WeekKind.TEST:
            # For translators: one letter for a test week.
            return language.text("T")


def week_name(kind: WeekKind, language: Language) -> str:
    """What a week is for, as a heading."""
    match kind:
        case WeekKind.WORKING:
            return language.text("Working week")
        case WeekKind.DELOAD:
            return language.text("Deload week")
        case WeekKind.TEST:
            return language.text("Test week")


def week_aside(kind: WeekKind, language: Language) -> str:
    """What a week is for, within a sentence; nothing for a working week."""
    match kind:
        case WeekKind.WORKING:
            return ""
        case WeekKind.DELOAD:
            return language.text("deload week")
        case WeekKind.TEST:
            return language.text("test week")


def week_banner(kind: WeekKind, language: Language) -> str | None:
    """What an athlete should know of a week that is not like the others."""
    match kind:
        case WeekKind.WORKING:
            return None
        case WeekKind.DELOAD:
            return language.text("Lighter on purpose, so that the work before it can take hold. Leave it light.")
        case WeekKind.TEST:
            return language.text(
                "Bests are tried this week. Warm up fully, and have spotters or safety bars for every heavy set."
            )


def slot(written: str, language: Language) -> str:
    """A day's name as a heading: `Mon` is Monday, `3` is Day 3."""
    name = slot_within(written, language)
    return name[:1].upper() + name[1:]


def slot_within(written: str, language: Language) -> str:
    """A day's name within a sentence."""
    if written.casefold() in DAYS:
        return language.weekday(DAYS.index(written.casefold()))
    return language.text("Day\u00a0{number}").format(number=written)


def headed(head: str, said: str, language: Language) -> str:
    """What something is, and then the thing."""
    return language.text("{head}: {said}").format(head=head, said=said)


def clauses(said: Sequence[str], language: Language) -> str:
    """Statements in one sentence, one after the other."""
    both = language.text("{first}; {then}")
    return reduce(lambda first, then: both.format(first=first, then=then), said) if said else ""


def dose(segment: Segment, language: Language, *, with_side: bool = True) -> str:
    """Sets and repetitions: `4 x 5`, with a real multiplication sign."""
    each = amount(segment.reps, language) if with_side else _one_side(segment.reps, language)
    return f"{segment.sets}{NO_BREAK}{TIMES}{NO_BREAK}{each}"


def amount(reps: Reps, language: Language) -> str:
    """What one set is: `8-10`, `40 s`, `max`, `(2+2+2)`, `8 per side`."""
    text = _one_side(reps, language)
    return f"{text} {per_side(language)}" if reps.per_side else text


def per_side(language: Language) -> str:
    """What stands after repetitions that are done once for each arm or leg."""
    return language.text("per side").replace(" ", NO_BREAK)


def effort(intensity: Intensity | None, language: Language) -> str | None:
    """How hard a set is, for the place after the @; None where the load alone says it."""
    match intensity:
        case None | Weight() | Bodyweight():
            return None
        case Effort(low, high, as_reserve):
            if as_reserve:
                return f"{_range(10 - high, 10 - low, language)}{NO_BREAK}RIR"
            return f"RPE{NO_BREAK}{_range(low, high, language)}"
        case PercentOfBest(percent, of):
            share = language.percent(percent)
            return (
                language.text("{percent} of {movement}").format(percent=share, movement=language.name(of))
                if of
                else share
            )
        case ChangeByPercent(percent):
            return _change(percent, language.percent(abs(percent)), language)
        case ChangeByMass(change):
            return _change(change.amount, mass(Mass(abs(change.amount), change.unit), language), language)
        case _:
            assert_never(intensity)


def asked_effort(segment: Segment, language: Language) -> str | None:
    """How hard the sets of a segment are; where a deload took a share of an effort's load, what that leaves of it.

    At that load the effort is a ceiling; where no load is known, the share is what a person can go by.
    """
    written = effort(segment.intensity, language)
    if written is None or not is_scaled(segment):
        return written
    if segment.load is not None and isinstance(segment.intensity, Effort):
        top = replace(segment.intensity, low=segment.intensity.high)
        # Repetitions in reserve count the other way round.
        most = language.text("at least {effort}") if top.as_reserve else language.text("at most {effort}")
        return most.format(effort=effort(top, language))
    share = language.percent(segment.load_factor * 100)
    return language.text("{percent} of the load for {effort}").format(percent=share, effort=written)


def load(segment: Segment, language: Language) -> str | None:
    """What to lift: `82.5 kg`, `bodyweight + 5 kg`; None where it is not known."""
    match segment.intensity:
        case Bodyweight(added):
            return bodyweight(segment.load.mass if segment.load is not None else added, language)
        case Weight(written) if segment.load is None:
            return mass(written, language)
    if segment.load is None:
        return None
    return mass(segment.load.mass, language)


def load_aside(segment: Segment, language: Language) -> str | None:
    """How a load is meant where it could be misread: that of one hand, or a bar without discs."""
    if segment.load is None:
        return None
    if segment.load.handling is Handling.PAIR:
        return language.text("in each hand")
    return language.text("empty bar") if segment.load.per_side == () else None


def load_spread(segment: Segment, language: Language) -> str | None:
    """The least and the greatest load by the published formulas, `67.5-75`, where they disagree; in the load's unit."""
    if segment.load is None or segment.load.spread is None:
        return None
    return EN_DASH.join(language.number(end.amount) for end in segment.load.spread)


def known_mass(segment: Segment) -> Mass | None:
    """The load as a number: what equipment makes of it, else what was written; None where it is not known."""
    if segment.load is not None:
        return segment.load.mass
    return segment.intensity.mass if isinstance(segment.intensity, Weight) else None


def wants_load(movement: Movement, segment: Segment) -> bool:
    """True where a load must be chosen that nobody could work out, so that the sheet leaves a blank for it."""
    if known_mass(segment) is not None or isinstance(segment.intensity, Bodyweight):
        return False
    return movement.handling is not None or isinstance(segment.intensity, PercentOfBest | ChangeByMass)


def mass(of: Mass, language: Language) -> str:
    """A mass with its unit."""
    return f"{language.number(of.amount)}{NO_BREAK}{of.unit.value}"


def warm_up(segment: Segment, language: Language) -> str:
    """One warm-up step, compactly: `40 kg x 8`."""
    heft = load(segment, language) or effort(segment.intensity, language)
    each = amount(segment.reps, language)
    if heft:
        each = f"{heft}{NO_BREAK}{TIMES}{NO_BREAK}{each}"
    if segment.sets == 1:
        return each
    return f"{each}{NO_BREAK}({sets(segment.sets, language)})"


def sets(number: int, language: Language) -> str:
    """So many sets."""
    return language.count("{number} set", "{number} sets", number).format(number=number).replace(" ", NO_BREAK)


def rest(of: Rest, language: Language) -> str:
    """Rest between sets: `90 s`, `3 min`, `2-3 min`, `2:30 min`."""
    written, unit = (language.number, "s") if of.low < 120 else (partial(_minutes, language=language), "min")
    low = written(of.low)
    high = low if of.low == of.high else written(of.high)
    return f"{low if low == high else low + EN_DASH + high}{NO_BREAK}{unit}"


def manner(line: Line, language: Language) -> tuple[str, ...]:
    """How a line is done besides its sets: rest, tempo, clock, pause."""
    said: list[str] = []
    if line.every is not None:
        said.append(language.text("a set every {time}").format(time=rest(Rest(line.every, line.every), language)))
    # A group says its rest once, above its lines.
    if line.rest is not None and (line.group is None or line.rest != line.group.rest):
        said.append(language.text("rest {time}").format(time=rest(line.rest, language)))
    if line.tempo is not None:
        said.append(language.text("tempo\u00a0{phases}").format(phases=line.tempo))
    if line.pause is not None:
        seconds = f"{language.number(line.pause)}{NO_BREAK}s"
        said.append(language.text("{time} pause inside the set").format(time=seconds))
    return tuple(said)


def instead_of(planned: str, language: Language) -> str:
    """What stands beside a movement that an athlete does in place of the planned one."""
    return language.text("instead of {movement}").format(movement=language.name(planned))


def together(group: Group, orders: tuple[int, ...], language: Language) -> str:
    """The heading over lines done in turn: `Superset A: 3 and 4 in turn, rest 90 s after each round`."""
    said: list[str] = []
    if len(orders) > 1:
        said.append(language.text("{orders} in turn").format(orders=language.listed([str(order) for order in orders])))
    if group.rounds is not None:
        said.append(language.count("{number} round", "{number} rounds", group.rounds).format(number=group.rounds))
    if group.rest is not None:
        said.append(language.text("rest {time} after each round").format(time=rest(group.rest, language)))
    name = _group(group, language)
    if len(orders) > 1:
        return headed(name, ", ".join(said), language)
    return ", ".join([name, *said])


def minutes(of: Fraction, language: Language) -> str:
    """A session's length, which is an estimate."""
    return language.text("about {minutes}\u00a0min").format(minutes=language.number(of, 0))


def stretch(first: int, last: int, language: Language) -> str:
    """Weeks of a block: `week 9`, `weeks 1-4`."""
    if first == last:
        return language.text("week\u00a0{number}").format(number=first)
    return language.text("weeks\u00a0{first}\u2013{last}").format(first=first, last=last)


def last_day(start: date, microcycle: int) -> date:
    """The last day of a week (or microcycle) that begins on `start`."""
    return start + timedelta(days=microcycle - 1)


def _one_side(reps: Reps, language: Language) -> str:
    match reps.kind:
        case RepsKind.COUNT:
            return _range(reps.low, reps.high, language)
        case RepsKind.AT_LEAST:
            return f"{language.number(reps.low)}+"
        case RepsKind.MAX:
            return language.text("max")
        case RepsKind.SECONDS if reps.minutes and reps.low % 30 == 0 and reps.high % 30 == 0:
            return f"{_range(reps.low / 60, reps.high / 60, language)}{NO_BREAK}min"
        case RepsKind.SECONDS:
            return f"{_range(reps.low, reps.high, language)}{NO_BREAK}s"
        case RepsKind.METRES:
            return f"{_range(reps.low, reps.high, language)}{NO_BREAK}m"
        case RepsKind.CLUSTER:
            return f"({'+'.join(map(str, reps.parts))})"


def _range(low: Fraction, high: Fraction, language: Language) -> str:
    if low is high or low == high:
        return language.number(low)
    return f"{language.number(low)}{EN_DASH}{language.number(high)}"


def _change(change: Fraction, size: str, language: Language) -> str:
    if change == 0:
        return language.text("same load")
    if change > 0:
        return language.text("{size} heavier").format(size=size)
    return language.text("{size} lighter").format(size=size)


def bodyweight(added: Mass | None, language: Language) -> str:
    """The athlete's own weight, with what is added to it or taken off."""
    said = language.text("bodyweight")
    if added is None or added.amount == 0:
        return said
    sign = "+" if added.amount > 0 else MINUS
    return f"{said} {sign}{NO_BREAK}{mass(Mass(abs(added.amount), added.unit), language)}"


def _minutes(seconds: Fraction, language: Language) -> str:
    whole, over = divmod(seconds if seconds.denominator > 1 else seconds.numerator, 60)
    return f"{whole}:{language.number(over, 0).zfill(2)}" if over else str(whole)


def _group(group: Group, language: Language) -> str:
    match group.kind:
        case GroupKind.SUPERSET:
            return language.text("Superset\u00a0{letter}").format(letter=group.letter)
        case GroupKind.CIRCUIT:
            return language.text("Circuit\u00a0{letter}").format(letter=group.letter)
        case _:
            assert_never(group.kind)
