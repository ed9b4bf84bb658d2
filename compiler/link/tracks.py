"""Tracks of the syntax tree, typed: sets, repetitions, intensities, rest. Units are checked here.

Each function returns None where the written value has no meaning, after it put the reason into `problems`.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from typing import TypeVar

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import weeks
from setwright.link.model import Filled, Track
from setwright.link.values import HEAVIEST, LONGEST_SET_S, TIMES, effort_of, number
from setwright.message import Phrase, message
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
from setwright.quantities import Mass, Unit
from setwright.record import replace
from setwright.source import Span
from setwright.suggest import Suggestion, either
from setwright.syntax import nodes as n
from setwright.syntax.habits import decimal_comma

T = TypeVar("T")
Problems = list[Diagnostic]

MOST_SETS = 100
MOST_REPS = 1000
FARTHEST_M = 50_000
MOST_PERCENT = 150


def sets_track(raw: n.RawTrack | n.RawBodyweight, problems: Problems) -> Track[Fraction] | None:
    """Counts of sets (or rounds)."""
    if isinstance(raw, n.RawBodyweight):
        problems.append(weeks.NOT_A_COUNT.at(raw.span, found=raw.span.text))
        return None
    return _track(raw, lambda item, is_step: _count(item, problems, is_step))


def reps_track(raw: n.RawTrack, problems: Problems) -> Track[Reps] | None:
    """Repetitions, seconds, metres or clusters."""
    unit = _shared_unit(raw)
    per_side = any(item.per_side for item in raw.items)
    track = _track(raw, lambda item, is_step: _reps(item, _unit(item, unit), per_side, problems, is_step))
    if track and _is_mixed(track, lambda value: value.kind):
        problems.append(weeks.MIXED_TRACK.at(raw.span, track=raw.span.text))
        return None
    if track and track.kind is not n.TrackKind.SERIES and len(track.values) > 1 and not _can_move(track.values[0]):
        problems.append(weeks.MIXED_TRACK.at(raw.span, track=raw.span.text))
        return None
    return track


def intensity_track(
    raw: n.RawIntensity | n.RawBodyweight | n.RawChange, problems: Problems, *, first: bool
) -> Track[Intensity] | None:
    """An intensity; `first` is False after `then`, where a change of the segment before may stand."""
    track: Track[Intensity] | None
    match raw:
        case n.RawIntensity():
            track = _stated(raw, problems)
            return track if raw.of is None else _whole(track, raw)
        case n.RawBodyweight():
            return _whole(_bodyweight(raw, problems), raw)
        case n.RawChange():
            if first:
                problems.append(weeks.CHANGE_WITHOUT_BEFORE.at(raw.span, found=raw.span.text))
                return None
            return _whole(_change(raw, problems), raw)


def rest_track(part: n.RestPart, problems: Problems) -> Track[Rest] | None:
    """Rest in seconds."""
    if part.track is None:
        seconds = Fraction(part.clock_seconds or 0)
        return Track(n.TrackKind.FIXED, (Rest(seconds, seconds),), part.span)
    unit = _shared_unit(part.track)
    return _track(part.track, lambda item, is_step: _rest(item, _unit(item, unit), problems))


# ---- helpers, in the order of the functions above ------------------------------------------------


def _track(raw: n.RawTrack, typed: Callable[[n.Item, bool], T | None]) -> Track[T] | None:
    values = [typed(item, raw.kind is n.TrackKind.STEPS and index == 1) for index, item in enumerate(raw.items)]
    kept = tuple(value for value in values if value is not None)
    if len(kept) != len(values):
        return None
    return Track(raw.kind, kept, raw.span, raw.tail, filled=_filled(raw, raw.span))


def _whole(
    track: Track[Intensity] | None, raw: n.RawIntensity | n.RawBodyweight | n.RawChange
) -> Track[Intensity] | None:
    """The track with the whole of what is written: a sign before it, another movement after it."""
    if track is None or raw.track is None:
        return track
    return replace(track, whole=raw.span, filled=_filled(raw.track, raw.span))


def _filled(raw: n.RawTrack, whole: Span) -> Filled | None:
    """What `whole` reads with the values of a template's words in it; None where it holds none."""
    text = whole.text
    places: list[Related] = []
    for item in reversed(raw.items):
        if item.given is not None:
            start, end = item.span.start - whole.start, item.span.end - whole.start
            text = text[:start] + item.given.text + text[end:]
            said = Phrase(message("{word} is {value}"), word=item.span.text, value=item.given.span.text)
            places.insert(0, Related(item.given.span, said))
    return Filled(text, tuple(places)) if places else None


def _own_unit(item: n.Item) -> str | None:
    return "RPE" if item.rpe else item.unit


def _shared_unit(raw: n.RawTrack) -> str | None:
    """What bare numbers of a track are in: the one unit that others of it bear (`60 -> 70 kg`)."""
    units = {unit for item in raw.items if (unit := _own_unit(item))}
    return units.pop() if len(units) == 1 else None


def _unit(item: n.Item, shared: str | None) -> str | None:
    return _own_unit(item) or shared


def _is_mixed(track: Track[T], kind: Callable[[T], object]) -> bool:
    """True where a track would have to move from one kind of value to another; a list may change kinds."""
    return track.kind is not n.TrackKind.SERIES and len({kind(value) for value in track.values}) > 1


def _count(item: n.Item, problems: Problems, is_step: bool) -> Fraction | None:
    value = number(item, problems)
    if value is None:
        return None
    plain_number = not (item.unit or item.rpe or item.per_side or item.at_least) and item.low == item.high
    if not plain_number or not (is_step or value.denominator == 1) or not 0 < value <= MOST_SETS:
        help_ = f"The load stands after `@`: `3 x 5 @ {item.span.text}`." if item.unit in HEAVIEST else None
        problems.append(weeks.NOT_A_COUNT.at(item.span, found=item.span.text, help=help_))
        return None
    return value


def _can_move(value: Reps) -> bool:
    return value.kind not in (RepsKind.MAX, RepsKind.CLUSTER)


def _reps(item: n.Item, unit: str | None, per_side: bool, problems: Problems, is_step: bool) -> Reps | None:
    if item.is_max:
        return Reps(RepsKind.MAX, per_side=per_side)
    if item.cluster:
        return _cluster(item, per_side, problems)
    low = number(item, problems)
    if low is None:
        return None
    high = item.high if item.high is not None else low
    if item.rpe or unit not in (None, "s", "min", "m"):
        problems.append(
            weeks.WRONG_UNIT.at(
                item.span,
                found=item.span.text,
                wanted="repetitions, a time or a distance (`5`, `8-10`, `40 s`, `30 m`)",
            )
        )
        return None
    factor = TIMES.get(unit or "", 1)
    most = {None: MOST_REPS, "m": FARTHEST_M}.get(unit, LONGEST_SET_S)
    whole_number = unit is not None or is_step or (low.denominator == 1 and high.denominator == 1)
    if not whole_number or not low * factor > 0 or high * factor > most or low > high:
        help_ = f"Write `{_turned(item.span.text)}`, low to high." if low > high > 0 else None
        problems.append(weeks.REPS_OUT_OF_RANGE.at(item.span, found=item.span.text, help=help_))
        return None
    kind = {None: RepsKind.AT_LEAST if item.at_least else RepsKind.COUNT, "m": RepsKind.METRES}
    return Reps(kind.get(unit, RepsKind.SECONDS), low * factor, high * factor, per_side=per_side, minutes=unit == "min")


def _turned(text: str) -> str:
    """`15-12 s` with its ends exchanged."""
    return re.sub(r"([\d.]+)( *[-−] *)([\d.]+)", r"\3\2\1", text)


def _cluster(item: n.Item, per_side: bool, problems: Problems) -> Reps | None:
    total = sum(item.cluster)
    if not all(0 < part <= MOST_REPS for part in item.cluster) or total > MOST_REPS:
        problems.append(weeks.REPS_OUT_OF_RANGE.at(item.span, found=item.span.text))
        return None
    return Reps(RepsKind.CLUSTER, Fraction(total), Fraction(total), item.cluster, per_side)


def _stated(raw: n.RawIntensity, problems: Problems) -> Track[Intensity] | None:
    shared = _shared_unit(raw.track)
    of = raw.of.text if raw.of else None
    if of and shared != "%":
        problems.append(
            weeks.WRONG_UNIT.at(raw.track.span, found=raw.track.span.text, wanted=f"a percent of {of} (`80%`)")
        )
        return None
    if all(item.low is not None and not _own_unit(item) for item in raw.track.items):
        problems.append(_missing_unit(raw.track))
        return None

    def typed(item: n.Item, is_step: bool) -> Intensity | None:
        if number(item, problems) is None:
            return None
        unit = _unit(item, shared)
        if unit in ("RPE", "RIR") and not (item.rpe and item.unit):
            return effort_of(item, problems, reserve=unit == "RIR", is_step=is_step)
        if unit == "%":
            value = _within(item, MOST_PERCENT, problems)
            return PercentOfBest(value, of) if value is not None else None
        if unit in HEAVIEST:
            value = _within(item, HEAVIEST[unit], problems)
            return Weight(Mass(value, Unit(unit))) if value is not None else None
        wanted = "an effort, a percent or a load (`RPE 8`, `2 RIR`, `80%`, `60 kg`)"
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted=wanted))
        return None

    return _unmixed(_track(raw.track, typed), problems)


def _unmixed(track: Track[Intensity] | None, problems: Problems) -> Track[Intensity] | None:
    """The track, or None after saying that it moves between kinds: a step of effort also keeps to its scale."""

    def kind(value: Intensity) -> object:
        is_steps = track is not None and track.kind is n.TrackKind.STEPS
        return type(value), is_steps and isinstance(value, Effort) and value.as_reserve

    if track is not None and _is_mixed(track, kind):
        problems.append(weeks.MIXED_TRACK.at(track.span, track=track.span.text))
        return None
    return track


def _missing_unit(track: n.RawTrack) -> Diagnostic:
    """Which units the number could have: no effort is above 10."""
    found, line = track.span.text, track.span.source.line(track.span.line)
    if comma := decimal_comma(line, track.span.end):
        return weeks.MISSING_UNIT.at(track.span, found=found, help=comma)
    efforts = [f"RPE {found}", f"{found} RIR"] if all((item.high or 0) <= 10 for item in track.items) else []
    written = (*efforts, f"{found}%", f"{found} kg", f"{found} lb")
    sentence = f"Write {either([f'`{text}`' for text in written])}."
    # What moves may be written in several ways with a unit: only of a single number is it plain how.
    help_ = Suggestion(sentence, found, written if track.kind is n.TrackKind.FIXED else ())
    return weeks.MISSING_UNIT.at(track.span, found=found, help=help_)


def _within(item: n.Item, most: int, problems: Problems) -> Fraction | None:
    if item.low is None or item.low != item.high or item.at_least or item.per_side or not 0 < item.low <= most:
        problems.append(weeks.LOAD_OUT_OF_RANGE.at(item.span, found=item.span.text))
        return None
    return item.low


def _bodyweight(raw: n.RawBodyweight, problems: Problems) -> Track[Intensity] | None:
    if raw.track is None:
        return Track(n.TrackKind.FIXED, (Bodyweight(),), raw.span)
    unit = _shared_unit(raw.track)
    return _track(raw.track, lambda item, is_step: _added(item, _unit(item, unit), raw.sign, problems))


def _added(item: n.Item, unit: str | None, sign: int, problems: Problems) -> Intensity | None:
    value = number(item, problems)
    if value is None:
        return None
    if unit not in HEAVIEST or item.rpe or item.low != item.high or not 0 <= value <= HEAVIEST[unit]:
        problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted="a load (`10 kg`, `25 lb`)"))
        return None
    return Bodyweight(Mass(sign * value, Unit(unit)))


def _change(raw: n.RawChange, problems: Problems) -> Track[Intensity] | None:
    shared = _shared_unit(raw.track)

    def typed(item: n.Item, is_step: bool) -> Intensity | None:
        value = number(item, problems)
        if value is None:
            return None
        unit = _unit(item, shared)
        is_single = item.high is not None and abs(value) == item.high
        if unit == "%" and is_single and abs(value) < 100:
            return ChangeByPercent(raw.sign * value)
        if unit in HEAVIEST and is_single and abs(value) <= HEAVIEST[unit]:
            return ChangeByMass(Mass(raw.sign * value, Unit(unit)))
        problems.append(
            weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted="a percent or a load (`-8%`, `+5 kg`)")
        )
        return None

    return _unmixed(_track(raw.track, typed), problems)


def _rest(item: n.Item, unit: str | None, problems: Problems) -> Rest | None:
    low = number(item, problems)
    if low is None:
        return None
    factor = TIMES.get(unit or "")
    high = item.high if item.high is not None else low
    if factor is None or item.rpe or item.at_least or low > high or high * factor > LONGEST_SET_S:
        problems.append(
            weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted="a time to rest (`90 s`, `2-3 min`)")
        )
        return None
    return Rest(low * factor, high * factor)
