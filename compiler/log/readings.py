"""Single cells of a table: dates, loads, repetitions, efforts, as people and programs write them.

Comes in: the text of a cell. Goes out: its value; what cannot be told raises `UnclearCellError` with the reason.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date
from enum import Enum
from fractions import Fraction

from setwright.log.model import Load
from setwright.plan import WEEKDAYS
from setwright.prescription import Bodyweight, Effort, Reps, RepsKind, Weight
from setwright.quantities import Mass, Unit

MOST_ALIKE = 50  # sets in one row
_UNITS = {"kg": Unit.KG, "kgs": Unit.KG, "lb": Unit.LB, "lbs": Unit.LB}
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")

_NUMBER = re.compile(r"[0-9]+(?:[.,][0-9]+)?")
_GROUPED = re.compile(r"[0-9]{1,3}(?:[.,' \u00a0\u202f’][0-9]{3})+(?:[.,][0-9]+)?")
_LOAD = re.compile(r"(?P<body>body ?weight|bw)?\s*(?P<sign>[+\-−])?\s*(?P<number>[0-9][0-9.,]*)?\s*(?P<unit>[a-z]+)?")
_REPS = re.compile(r"(?P<number>[0-9][0-9.,]*)\s*(?P<unit>s|sec|min|m)?\s*(?P<side>/\s*side)?")
_CLUSTER = re.compile(r"\(?\s*([0-9]+(?:\s*\+\s*[0-9]+)+)\s*\)?\s*(/\s*side)?")
_EFFORT = re.compile(r"@?\s*(?P<before>rpe|rir)?\s*(?P<number>[0-9][0-9.,]*)\s*(?P<after>rpe|rir)?")
_ISO = re.compile(r"([0-9]{4})([-/.])([0-9]{1,2})\2([0-9]{1,2})")
_THREE = re.compile(r"([0-9]{1,2})([-/.])([0-9]{1,2})\2([0-9]{4})")
_NAMED = re.compile(r"(?:([0-9]{1,2})[. -]+([a-z]{3,9})|([a-z]{3,9})\.? ([0-9]{1,2}),?)[., -]+([0-9]{4})")
_TIME = re.compile(r"(.*?[0-9])[ t]+[0-9]{1,2}:[0-9]{2}.*", re.IGNORECASE)
_SLOT = re.compile(r"(?:w|week )?([0-9]+)[- ]+(\w+)", re.IGNORECASE)
_COMMA = re.compile(r"(?<![0-9.,])[0-9]+,(?:[0-9]{1,2})(?![0-9.,])")


class UnclearCellError(ValueError):
    """What a cell says cannot be told; the text says why."""


class DateOrder(Enum):
    """How a column writes dates that do not begin with the year."""

    DAY_FIRST = "day-first"
    MONTH_FIRST = "month-first"


def has_decimal_commas(cells: Iterable[str]) -> bool:
    """True where a number of the table has one or two places after a comma."""
    return any(_COMMA.search(cell) for cell in cells)


def number(text: str, *, commas: bool) -> Fraction:
    """A number with a decimal point or comma. Where its places could be thousands it is refused."""
    if text.startswith("="):
        raise UnclearCellError(f"`{text}` is a formula: put in what it comes to")
    point, comma = "." in text, "," in text
    thousands = _GROUPED.fullmatch(text) and (not point or comma or commas or text.count(".") > 1)
    if thousands:
        raise UnclearCellError(f"`{text}` may have a mark for thousands: write it without one")
    if not _NUMBER.fullmatch(text):
        raise UnclearCellError(f"`{text}` is no number")
    return Fraction(text.replace(",", "."))


def load(text: str, unit: str | None, *, commas: bool) -> Load | None:
    """`72.5`, `60 kg`, `bodyweight + 10`; None where the cell is empty. `unit` is what the row or the header gives."""
    plain = text.strip()
    if not plain:
        return None
    if plain.startswith("="):
        raise UnclearCellError(f"`{plain}` is a formula: put in what it comes to")
    match = _LOAD.fullmatch(plain.casefold())
    if match is None or (match["sign"] and not match["number"]) or (match["unit"] and match["unit"] not in _UNITS):
        number(plain, commas=commas)  # says it better where there are figures
        raise UnclearCellError(f"`{plain}` is no load")
    if match["number"] is None:
        if match["body"] is None:
            raise UnclearCellError(f"`{plain}` is no load")
        return Bodyweight()
    amount = number(match["number"], commas=commas)
    mass = Mass(amount, _unit(match["unit"], unit, plain))
    if match["body"] is None:
        if match["sign"] or amount == 0:
            raise UnclearCellError(f"`{plain}` is no load; of the body alone, write `bodyweight`")
        return Weight(mass)
    if match["sign"] is None:
        raise UnclearCellError(f"`{plain}`: write `bodyweight + 10 kg`, or `- 10 kg`")
    if amount == 0:
        return Bodyweight()
    return Bodyweight(mass if match["sign"] == "+" else mass.times(Fraction(-1)))


def _unit(own: str | None, given: str | None, text: str) -> Unit:
    stated = given.strip().casefold() if given else None
    if stated and stated not in _UNITS:
        raise UnclearCellError(f"`{given}` is no unit: kg or lb")
    if own and stated and _UNITS[own] is not _UNITS[stated]:
        raise UnclearCellError(f"`{text}` and the unit `{given}` disagree")
    found = own or stated
    if found is None:
        raise UnclearCellError(f"`{text}` has no unit: kg or lb")
    return _UNITS[found]


def reps(text: str, *, commas: bool) -> Reps:
    """`5`, `40 s`, `1 min/side`, `20 m`, `(1+1+1)`."""
    plain = text.strip().casefold()
    if cluster := _CLUSTER.fullmatch(plain):
        parts = tuple(int(part) for part in cluster[1].split("+"))
        total = Fraction(sum(parts))
        return Reps(RepsKind.CLUSTER, total, total, parts, cluster[2] is not None)
    match = _REPS.fullmatch(plain)
    if match is None:
        raise UnclearCellError(f"`{text.strip()}` is no number of repetitions" if plain else "there are no repetitions")
    amount = number(match["number"], commas=commas)
    side = match["side"] is not None
    match match["unit"]:
        case None if amount.denominator == 1:
            return Reps(RepsKind.COUNT, amount, amount, per_side=side)
        case None:
            raise UnclearCellError(f"`{text.strip()}` is no whole number of repetitions")
        case "m":
            return Reps(RepsKind.METRES, amount, amount, per_side=side)
        case "min":
            return Reps(RepsKind.SECONDS, amount * 60, amount * 60, per_side=side, minutes=True)
        case _:
            return Reps(RepsKind.SECONDS, amount, amount, per_side=side)


def effort(text: str, scale: str | None, *, commas: bool) -> Effort | None:
    """`8.5`, `RPE 8`, `2 RIR`; None where the cell is empty. `scale` is that of numbers alone: RPE where it is None."""
    plain = text.strip().casefold()
    if not plain:
        return None
    match = _EFFORT.fullmatch(plain)
    if match is None or (match["before"] and match["after"]):
        raise UnclearCellError(f"`{text.strip()}` is no effort: `RPE 8`, `2 RIR`")
    written = number(match["number"], commas=commas)
    own = (match["before"] or match["after"] or "").upper()
    is_reserve = (own or scale) == "RIR"
    rpe = 10 - written if is_reserve else written
    if not 1 <= rpe <= 10:
        raise UnclearCellError(f"`{text.strip()}` is no effort: RPE goes from 1 to 10, RIR from 0 to 9")
    return Effort(rpe, rpe, as_reserve=is_reserve)


def alike(text: str) -> int:
    """How many sets alike a row stands for."""
    plain = text.strip()
    if not re.fullmatch("[0-9]+", plain) or not 1 <= int(plain[:9]) <= MOST_ALIKE:
        raise UnclearCellError(f"`{plain}` is no number of sets from 1 to {MOST_ALIKE}")
    return int(plain)


def slot(text: str) -> tuple[int, str] | None:
    """`w3-Mon`, `week 3 Mon`, `3 Mon`: week and day of the plan; None where it is nothing of the kind."""
    match = _SLOT.fullmatch(text.strip())
    if match is None or len(match[1]) > 4:
        return None
    day = match[2].capitalize()
    return (int(match[1]), day) if day in WEEKDAYS or day.isdecimal() else None


# ---- dates ---------------------------------------------------------------------------------------


def without_time(text: str) -> tuple[str, bool]:
    """A date without the time of day that some programs write after it, and whether there was one."""
    match = _TIME.fullmatch(text.strip())
    return (match[1], True) if match else (text.strip(), False)


def day(text: str, order: DateOrder | None) -> date:
    """A date: with the year first, with the month's English name, or in the order that the column has."""
    plain = without_time(text)[0].casefold()
    if not plain:
        raise UnclearCellError("there is no date")
    for value in _readings(plain, order):
        try:
            return date(*value)
        except ValueError:
            raise UnclearCellError(f"`{text.strip()}` is no day of the calendar") from None
    raise UnclearCellError(f"`{text.strip()}` is no date that can be told: write `2027-01-04`")


def _readings(text: str, order: DateOrder | None) -> Iterable[tuple[int, int, int]]:
    if iso := _ISO.fullmatch(text):
        yield int(iso[1]), int(iso[3]), int(iso[4])
    elif named := _NAMED.fullmatch(text):
        month = (named[2] or named[3])[:3]
        if month in _MONTHS:
            yield int(named[5]), _MONTHS.index(month) + 1, int(named[1] or named[4])
    elif (three := _THREE.fullmatch(text)) and order is not None:
        first, second, year = int(three[1]), int(three[3]), int(three[4])
        yield (year, second, first) if order is DateOrder.DAY_FIRST else (year, first, second)


def possible_orders(cells: Iterable[str]) -> tuple[DateOrder, ...]:
    """The orders in which every date of a column is one.

    Both where either fits and gives the same days; none where some dates fit only one and some only the other.
    Where the orders give different days and nothing decides, `AmbiguousDatesError` names a date.
    """
    fits = dict.fromkeys(DateOrder, True)
    doubtful: str | None = None
    for cell in cells:
        plain = without_time(cell)[0]
        readings = {order: _calendar_day(plain, order) for order in DateOrder if _THREE.fullmatch(plain)}
        if not any(readings.values()):
            continue
        for order, found in readings.items():
            fits[order] = fits[order] and found is not None
        if len({*readings.values()}) == 2 and all(readings.values()):
            doubtful = doubtful or plain
    if doubtful is not None and all(fits.values()):
        raise AmbiguousDatesError(doubtful)
    return tuple(order for order in DateOrder if fits[order])


class AmbiguousDatesError(ValueError):
    """A column of dates that may begin with the day or with the month; the text is one of them."""


def _calendar_day(text: str, order: DateOrder) -> date | None:
    try:
        return day(text, order)
    except UnclearCellError:
        return None
