"""Sets that were done, as an entry of a `session` writes them.

Comes in: an entry. Goes out: a `SetDone` for each set in order, or None where the entry says something else.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from typing import Final

from setwright.link.tracks import FARTHEST_M, MOST_REPS
from setwright.link.values import HEAVIEST, LONGEST_SET_S, TIMES
from setwright.log.model import Load, SetDone
from setwright.prescription import Bodyweight, Effort, Reps, RepsKind, Weight
from setwright.quantities import Mass, Unit
from setwright.record import replace
from setwright.syntax import nodes as n

_MOST_BY_UNIT: Final = {None: MOST_REPS, "m": FARTHEST_M}


def sets_done(prescription: n.Prescription) -> tuple[SetDone, ...] | None:
    """The sets of an entry. An effort holds for the sets since the effort before it: `5, 5 @ RPE 8, 4 @ RPE 9`."""
    parts = tuple(part for part in prescription.parts if not is_test_mark(part))
    if len(prescription.segments) != 1 or not all(isinstance(part, n.Loose) for part in parts):
        return None
    first = prescription.segments[0]
    load = _load(first.sets)
    if first.sets is not None and load is None:
        return None
    made: list[SetDone] = []
    for amount, effort in _written(first, parts):
        reps, felt = _reps(amount), _effort(effort)
        if reps is None or (effort is not None and felt is None):
            return None
        made.append(SetDone(load, reps))
        if felt is not None:
            made = [replace(one, effort=one.effort or felt) for one in made]
    return tuple(made)


@cache
def plain_sets(load: str | None, reps: str, effort: str | None) -> tuple[SetDone, ...]:
    """The sets of a plain entry, whose parts are sound: `70 kg` or `bodyweight - 5 kg`, `5, 5, 4`, `8.5`."""
    done, felt = _plain_load(load), _plain_effort(effort)
    return tuple(SetDone(done, _plain_reps(count), felt) for count in reps.split(", "))


def is_test_mark(part: n.Part) -> bool:
    """True for the word `test`, by which an entry says that its singles were a test of the best."""
    return isinstance(part, n.FlagPart) and part.word == "test"


def impossible(prescription: n.Prescription) -> str | None:
    """What is impossible about an entry that is no sets done, where it is the size of its load."""
    raw = prescription.segments[0].sets if prescription.segments else None
    track = raw.track if isinstance(raw, n.RawBodyweight) else raw
    item = _fixed(track) if track is not None else None
    amount = _exact(item) if item is not None else None
    if item is None or amount is None or item.unit not in HEAVIEST or 0 < amount <= HEAVIEST[item.unit]:
        return None
    return (
        f"A load is more than 0 and at most {HEAVIEST[item.unit]} {item.unit}; of the body alone, write `bodyweight`."
    )


@cache
def _plain_load(text: str | None) -> Load | None:
    if text is None or text == "bodyweight":
        return Bodyweight() if text else None
    sign, number, unit = ("", *text.split()) if text[0].isdigit() else text.split()[1:]
    mass = Mass(Fraction(number), Unit(unit))
    return Bodyweight(mass.times(Fraction(-1 if sign == "-" else 1))) if sign else Weight(mass)


@cache
def _plain_effort(text: str | None) -> Effort | None:
    return Effort(Fraction(text), Fraction(text)) if text else None


@cache
def _plain_reps(text: str) -> Reps:
    return Reps(RepsKind.COUNT, Fraction(text), Fraction(text))


def _written(first: n.RawSegment, parts: tuple[n.Part, ...]) -> Iterator[tuple[n.Item | None, n.Item | None | n.Node]]:
    """What stands for each set: its amount, and its effort where it has one."""
    yield _fixed(first.reps), _stated(first)
    for part in parts:
        assert isinstance(part, n.Loose)
        yield (part.first if part.reps is None else None), part.effort


def _stated(first: n.RawSegment) -> n.Item | None | n.Node:
    """The effort after the first set; what is no effort comes back as it is, and is refused later."""
    intensity = first.intensity
    if isinstance(intensity, n.RawIntensity) and intensity.of is None:
        return _fixed(intensity.track) or n.Unread(intensity.span)
    return None if intensity is None else n.Unread(intensity.span)


def _fixed(track: n.RawTrack) -> n.Item | None:
    return track.items[0] if track.kind is n.TrackKind.FIXED else None


def _load(raw: n.RawTrack | n.RawBodyweight | None) -> Load | None:
    if isinstance(raw, n.RawBodyweight):
        if raw.track is None:
            return Bodyweight()
        added = _mass(raw.track)
        return Bodyweight(added.times(Fraction(raw.sign))) if added else None
    mass = _mass(raw) if raw is not None else None
    return Weight(mass) if mass else None


def _mass(track: n.RawTrack) -> Mass | None:
    item = _fixed(track)
    amount = _exact(item) if item is not None else None
    if item is None or amount is None or item.unit not in HEAVIEST or item.per_side:
        return None
    return Mass(amount, Unit(item.unit)) if 0 < amount <= HEAVIEST[item.unit] else None


def _reps(item: n.Item | None) -> Reps | None:
    if item is None or item.rpe:
        return None
    if item.cluster:
        total = Fraction(sum(item.cluster))
        return Reps(RepsKind.CLUSTER, total, total, item.cluster, item.per_side) if total <= MOST_REPS else None
    amount = _exact(item)
    if amount is None or item.unit not in (None, "m", *TIMES) or (item.unit is None and amount.denominator != 1):
        return None
    amount *= TIMES.get(item.unit or "", 1)
    if amount > _MOST_BY_UNIT.get(item.unit, LONGEST_SET_S):
        return None
    kinds = {None: RepsKind.COUNT, "m": RepsKind.METRES}
    kind = kinds.get(item.unit, RepsKind.SECONDS)
    return Reps(kind, amount, amount, per_side=item.per_side, minutes=item.unit == "min")


def _effort(item: n.Item | None | n.Node) -> Effort | None:
    if not isinstance(item, n.Item) or item.unit not in (None, "RIR") or item.rpe == (item.unit == "RIR"):
        return None
    written = _exact(item)
    if written is None or item.per_side:
        return None
    rpe = 10 - written if item.unit == "RIR" else written
    return Effort(rpe, rpe, as_reserve=item.unit == "RIR") if 1 <= rpe <= 10 else None


def _exact(item: n.Item) -> Fraction | None:
    """A number alone: no range, no `5+`, no `max`, no parameter."""
    alone = item.low is not None and item.low == item.high and not item.at_least
    return item.low if alone else None
