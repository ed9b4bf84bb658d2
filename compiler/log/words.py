"""Sets that were done, in words, exactly: a load, what a set was measured in, an effort.

Comes in: a `SetDone`, or a session. Goes out: what an entry of a log writes for it; reading that gives the same again.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from datetime import date
from fractions import Fraction
from itertools import groupby

from setwright.log.model import Load, SetDone
from setwright.plan import WEEKDAYS
from setwright.prescription import Bodyweight, Effort, Reps, RepsKind, Weight

MOST_SETS = 20  # in one entry, and the longest note: lines stay short
LONGEST_NOTE = 900

_PLAIN_NAME = re.compile(r"[A-Z][a-z'-]+(?:[ -][A-Z][a-z'-]+)*")
_CONTROL = re.compile(r"[\x00-\x1f\x7f-\x9f\u2028\u2029]+")


def exact(number: Fraction) -> str:
    """A number as a decimal, with all its places: what was written in decimals comes out so again."""
    places = 0
    while (number * 10**places).denominator != 1 and places < 30:
        places += 1
    digits = str(int(abs(number) * 10**places)).rjust(places + 1, "0")
    sign = "-" if number < 0 else ""
    return f"{sign}{digits[:-places]}.{digits[-places:]}" if places else sign + digits


def load_words(load: Load | None) -> str:
    """`70 kg`, `bodyweight - 12.5 kg`; nothing where none was written down."""
    match load:
        case None:
            return ""
        case Bodyweight(added=added):
            if added is None:
                return "bodyweight"
            sign = "-" if added.amount < 0 else "+"
            return f"bodyweight {sign} {exact(abs(added.amount))} {added.unit.value}"
        case Weight(mass=mass):
            return f"{exact(mass.amount)} {mass.unit.value}"


def reps_words(reps: Reps) -> str:
    """`5`, `40 s`, `1.5 min/side`, `(1+1+1)`."""
    match reps.kind:
        case RepsKind.CLUSTER:
            said = f"({'+'.join(str(part) for part in reps.parts)})"
        case RepsKind.SECONDS:
            said = f"{exact(reps.low / 60)} min" if reps.minutes else f"{exact(reps.low)} s"
        case RepsKind.METRES:
            said = f"{exact(reps.low)} m"
        case _:
            said = exact(reps.low)
    return said + ("/side" if reps.per_side else "")


def effort_words(effort: Effort | None) -> str:
    """`RPE 8.5`, `2 RIR`; nothing where none was written down."""
    if effort is None:
        return ""
    return f"{exact(10 - effort.low)} RIR" if effort.as_reserve else f"RPE {exact(effort.low)}"


def set_words(one: SetDone) -> str:
    """One set as an entry: `70 kg x 5 @ RPE 8`."""
    return next(iter(_entries((one,))))


def session_head(day: date, week: int | None = None, slot: str | None = None) -> str:
    """`session 2027-01-04 Mon for week 1 Mon`."""
    said = f" for week {week} {slot}" if week is not None and slot is not None else ""
    return f"session {day.isoformat()} {WEEKDAYS[day.weekday()]}{said}"


def entry_lines(name: str, label: str | None, sets: Iterable[SetDone], is_test: bool = False) -> Iterator[str]:
    """The entries of one movement, by its name as written: one for each run of sets with one load.

    Another begins where an effort would hold for sets before it that have none.
    """
    head = name + (f" {quoted(label)}" if label else "")
    for said in _entries(tuple(sets)):
        yield f"{head}: {said}" + (", test" if is_test else "")


def note_parts(note: str) -> Iterator[str]:
    """A note as the notes of a log: each of its lines by itself, the longest in pieces."""
    for line in (on_one_line(line).strip() for line in note.splitlines()):
        yield from (line[start : start + LONGEST_NOTE] for start in range(0, len(line), LONGEST_NOTE))


def written_name(name: str) -> str:
    """A movement's name as a log writes it: in quotes where it has more than plain capitalised words."""
    return name if _PLAIN_NAME.fullmatch(name) else quoted(name)


def quoted(text: str) -> str:
    """Text in quotes, on one line."""
    clean = on_one_line(text)
    return '"' + clean.replace("\\", "\\\\").replace('"', '\\"') + '"'


def on_one_line(text: str) -> str:
    """Text whose control characters, line ends among them, are blanks."""
    return _CONTROL.sub(" ", text)


def _entries(sets: tuple[SetDone, ...]) -> Iterator[str]:
    for (load, _), run in groupby(_runs(sets), key=lambda pair: pair[0]):
        written = load_words(load)
        yield (f"{written} x " if written else "") + _sets([one for _, one in run])


def _runs(sets: tuple[SetDone, ...]) -> Iterator[tuple[tuple[Load | None, int], SetDone]]:
    """Each set with its load and the number of its entry: an effort would hold for sets before it that have none."""
    number = 0
    for at, one in enumerate(sets):
        before = sets[at - 1] if at else one
        hides = before.effort is None and one.effort is not None
        if before.load == one.load and (hides or at % MOST_SETS == 0):
            number += 1
        yield (one.load, number), one


def _sets(run: list[SetDone]) -> str:
    said: list[str] = []
    for at, one in enumerate(run):
        following = run[at + 1] if at + 1 < len(run) else None
        is_last = following is None or following.effort != one.effort
        effort = f" @ {effort_words(one.effort)}" if one.effort is not None and is_last else ""
        said.append(reps_words(one.reps) + effort)
    return ", ".join(said)
