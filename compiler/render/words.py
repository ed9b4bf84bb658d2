"""How a prescription is said to people, once for all sheets.

Comes in: values of a plan. Goes out: plain text, unescaped, with no-break spaces inside quantities.
"""

from __future__ import annotations

from datetime import date, timedelta
from fractions import Fraction
from typing import Final, assert_never

from setwright.plan import Group, GroupKind, Handling, Line, Movement, Segment, WeekKind
from setwright.prescription import (
    Bodyweight,
    ChangeByMass,
    ChangeByPercent,
    Effort,
    Intensity,
    PercentOfBest,
    Reps,
    Rest,
    Weight,
)
from setwright.quantities import Mass, plain
from setwright.record import replace

NO_BREAK: Final = "\u00a0"
EN_DASH: Final = "\u2013"
TIMES: Final = "\u00d7"
MINUS: Final = "\u2212"
PER_SIDE: Final = f" per{NO_BREAK}side"

MONTHS: Final = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)

WEEKDAYS: Final = {
    "mon": "Monday",
    "tue": "Tuesday",
    "wed": "Wednesday",
    "thu": "Thursday",
    "fri": "Friday",
    "sat": "Saturday",
    "sun": "Sunday",
}

# The letter stands where colour or pattern might be missed: on time lines and in table heads.
WEEK_LETTERS: Final = {WeekKind.WORKING: "", WeekKind.DELOAD: "D", WeekKind.TEST: "T"}

WEEK_NAMES: Final = {WeekKind.WORKING: "Working week", WeekKind.DELOAD: "Deload week", WeekKind.TEST: "Test week"}

WEEK_BANNERS: Final = {
    WeekKind.WORKING: None,
    WeekKind.DELOAD: "Lighter on purpose, so that the work before it can take hold. Leave it light.",
    WeekKind.TEST: "Bests are tried this week. Warm up fully, and have spotters or safety bars for every heavy set.",
}


def slot(written: str) -> str:
    """A day's name: `Mon` is Monday, `3` is Day 3."""
    return WEEKDAYS.get(written.casefold()) or f"Day{NO_BREAK}{written}"


def dose(segment: Segment) -> str:
    """Sets and repetitions: `4 x 5`, with a real multiplication sign."""
    return f"{segment.sets}{NO_BREAK}{TIMES}{NO_BREAK}{amount(segment.reps)}"


def amount(reps: Reps) -> str:
    """What one set is: `8-10`, `40 s`, `max`, `(2+2+2)`, `8 per side`."""
    text = _typeset(str(replace(reps, per_side=False)))
    return text + PER_SIDE if reps.per_side else text


def effort(intensity: Intensity | None) -> str | None:
    """How hard a set is, for the place after the @; None where the load alone says it."""
    match intensity:
        case None | Weight() | Bodyweight():
            return None
        case Effort() | PercentOfBest():
            return _typeset(str(intensity), of=intensity.of if isinstance(intensity, PercentOfBest) else None)
        case ChangeByPercent(percent):
            return _change(percent, f"{plain(abs(percent))}%")
        case ChangeByMass(change):
            return _change(change.amount, mass(Mass(abs(change.amount), change.unit)))
        case _:
            assert_never(intensity)


def load(segment: Segment) -> str | None:
    """What to lift: `82.5 kg`, `bodyweight + 5 kg`; None where it is not known."""
    match segment.intensity:
        case Bodyweight(added):
            return _bodyweight(segment.load.mass if segment.load is not None else added)
        case Weight(written) if segment.load is None:
            return mass(written)
    if segment.load is None:
        return None
    return mass(segment.load.mass)


def load_aside(segment: Segment) -> str | None:
    """How a load is meant where it could be misread: that of one hand, or a bar without discs."""
    if segment.load is None:
        return None
    if segment.load.handling is Handling.PAIR:
        return "in each hand"
    return "empty bar" if segment.load.per_side == () else None


def load_spread(segment: Segment) -> str | None:
    """The least and the greatest load by the published formulas, `67.5-75`, where they disagree; in the load's unit."""
    if segment.load is None or segment.load.spread is None:
        return None
    return EN_DASH.join(plain(end.amount) for end in segment.load.spread)


def known_mass(segment: Segment) -> Mass | None:
    """The load as a number: what equipment makes of it, else what was written; None where it is not known."""
    if segment.load is not None:
        return segment.load.mass
    return segment.intensity.mass if isinstance(segment.intensity, Weight) else None


def wants_load(movement: Movement, segment: Segment) -> bool:
    """True where a load must be chosen that nobody could work out, so that the sheet leaves a blank for it."""
    if load(segment) is not None or isinstance(segment.intensity, Bodyweight):
        return False
    return movement.handling is not None or isinstance(segment.intensity, PercentOfBest | ChangeByMass)


def mass(of: Mass) -> str:
    """A mass with its unit."""
    return f"{plain(of.amount)}{NO_BREAK}{of.unit.value}"


def warm_up(segment: Segment) -> str:
    """One warm-up step, compactly: `40 kg x 8`."""
    heft = load(segment) or effort(segment.intensity)
    each = f"{heft}{NO_BREAK}{TIMES}{NO_BREAK}{amount(segment.reps)}" if heft else amount(segment.reps)
    return each if segment.sets == 1 else f"{each}{NO_BREAK}({segment.sets}{NO_BREAK}sets)"


def rest(of: Rest) -> str:
    """Rest between sets: `90 s`, `3 min`, `2-3 min`, `2:30 min`."""
    if of.low < 120:
        low, high, unit = plain(of.low), plain(of.high), "s"
    else:
        low, high, unit = _minutes(of.low), _minutes(of.high), "min"
    return f"{low if low == high else low + EN_DASH + high}{NO_BREAK}{unit}"


def manner(line: Line) -> tuple[str, ...]:
    """How a line is done besides its sets: rest, tempo, clock, pause."""
    said: list[str] = []
    if line.every is not None:
        said.append(f"a set every {rest(Rest(line.every, line.every))}")
    # A group says its rest once, above its lines.
    if line.rest is not None and (line.group is None or line.rest != line.group.rest):
        said.append(f"rest {rest(line.rest)}")
    if line.tempo is not None:
        said.append(f"tempo{NO_BREAK}{line.tempo}")
    if line.pause is not None:
        said.append(f"{plain(line.pause)}{NO_BREAK}s pause inside the set")
    return tuple(said)


def instead_of(planned: str) -> str:
    """What stands beside a movement that an athlete does in place of the planned one."""
    return f"instead of {planned}"


def together(group: Group, orders: tuple[int, ...]) -> str:
    """The heading over lines done in turn: `Superset A: 3 and 4 in turn, rest 90 s after each round`."""
    match group.kind:
        case GroupKind.SUPERSET:
            name = f"Superset{NO_BREAK}{group.letter}"
        case GroupKind.CIRCUIT:
            name = f"Circuit{NO_BREAK}{group.letter}"
        case _:
            assert_never(group.kind)
    said = f"{name}: {_listed(orders)} in turn" if len(orders) > 1 else name
    if group.rounds is not None:
        said += f", {group.rounds} rounds" if group.rounds != 1 else ", 1 round"
    return said + (f", rest {rest(group.rest)} after each round" if group.rest is not None else "")


def minutes(of: Fraction) -> str:
    """A session's length, which is an estimate."""
    return f"about {plain(of, 0)}{NO_BREAK}min"


def day(of: date, *, year: bool = True) -> str:
    """A date without a locale: `4 January 2027`."""
    return f"{of.day}{NO_BREAK}{MONTHS[of.month - 1]}" + (f" {of.year}" if year else "")


def days(first: date, last: date) -> str:
    """A stretch of days: `4-10 January 2027`, saying month and year as often as needed."""
    if (first.year, first.month) == (last.year, last.month):
        return f"{first.day}{EN_DASH}{day(last)}"
    return f"{day(first, year=first.year != last.year)} {EN_DASH} {day(last)}"


def stretch(first: int, last: int) -> str:
    """Weeks of a block: `week 9`, `weeks 1-4`."""
    return f"week{NO_BREAK}{first}" if first == last else f"weeks{NO_BREAK}{first}{EN_DASH}{last}"


def last_day(start: date, microcycle: int) -> date:
    """The last day of a week (or microcycle) that begins on `start`."""
    return start + timedelta(days=microcycle - 1)


def _typeset(text: str, *, of: str | None = None) -> str:
    """Ranges with an en dash, units held to their numbers; a movement's name is left as it is."""
    if of is not None:
        return f"{text.removesuffix(f' of {of}')} of {of}"
    return text.replace("-", EN_DASH).replace(" ", NO_BREAK)


def _change(change: Fraction, size: str) -> str:
    if change == 0:
        return "same load"
    return f"{size} {'heavier' if change > 0 else 'lighter'}"


def _bodyweight(added: Mass | None) -> str:
    if added is None or added.amount == 0:
        return "bodyweight"
    return f"bodyweight {'+' if added.amount > 0 else MINUS}{NO_BREAK}{mass(Mass(abs(added.amount), added.unit))}"


def _minutes(seconds: Fraction) -> str:
    whole, over = divmod(seconds, 60)
    return f"{whole}:{plain(over, 0).zfill(2)}" if over else str(whole)


def _listed(orders: tuple[int, ...]) -> str:
    first = [str(order) for order in orders[:-1]]
    return f"{', '.join(first)} and {orders[-1]}"
