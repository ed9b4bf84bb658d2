"""Changes of a plan in a coach's words: `3 sets became 4`, `70% -> 75% became 72.5% -> 77.5%`.

Comes in: changes, facts and values of `report.difference`. Goes out: plain English text.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from datetime import date, time
from fractions import Fraction
from typing import Final

from setwright.plan import Group, Load, Segment, WeekKind
from setwright.prescription import (
    Bodyweight,
    ChangeByMass,
    ChangeByPercent,
    Effort,
    PercentOfBest,
    Reps,
    RepsKind,
    Rest,
    Weight,
)
from setwright.quantities import plain
from setwright.record import replace
from setwright.render import words
from setwright.render.language import ENGLISH
from setwright.report.difference.model import Aspect, Change, Easing, Fact, Stretch, Value

TO: Final = " → "
NOTHING: Final = "none"
_OTHER_THAN_COUNTED: Final = (RepsKind.SECONDS, RepsKind.METRES)  # these say themselves what they are
MOST_LISTED: Final = 4  # values that neither climb nor fall are listed, so many of them


def said(change: Change, stretch: Stretch) -> str:
    """What one change is over one stretch of weeks."""
    part = "" if change.part is None else f"{_nth(change.part)} part: "
    special = _SPECIAL.get(change.aspect)
    if special is not None:
        return part + special(stretch.before[0], stretch.after[0])
    before, after = _course(change.aspect, stretch.before), _course(change.aspect, stretch.after)
    if change.aspect is Aspect.SETS:
        one = set(stretch.before) == {1}
        return f"{part}{before} {'set' if one else 'sets'} became {after}"
    timed = any(isinstance(each, Reps) and each.kind in _OTHER_THAN_COUNTED for each in stretch.before)
    return f"{part}{'' if timed else _NAMES[change.aspect]}{before} became {after}"


def fact(of: Fact) -> str:
    """What a plan or movement says once."""
    special = _SPECIAL.get(of.aspect)
    if special is not None:
        return special(of.before, of.after)
    name = _NAMES[of.aspect].rstrip()
    return f"{name}: {value(of.aspect, of.before)} became {value(of.aspect, of.after)}"


def work(segments: Iterable[Segment]) -> str:
    """All sets of a line as it is written: `1 x 3 @ RPE 8 then 3 x 5 @ -8%`."""
    return " then ".join(_segment(segment) for segment in segments) or "no sets"


def value(aspect: Aspect, of: Value) -> str:
    """One value."""
    match of:
        case None:
            return NOTHING
        case bool():
            return "yes" if of else "no"
        case Fraction():
            return _fraction(aspect, of)
        case date():
            return ENGLISH.day(of).replace(words.NO_BREAK, " ")
        case time():
            return f"{of:%H:%M}"
        case Load():
            return _load(of)
        case Group():
            return _group(of)
        case WeekKind():
            return words.week_aside(of, ENGLISH) or "working week"
        case tuple():
            return _several(of)
        case _:
            return str(of)


# ---- courses over the weeks ----------------------------------------------------------------------


def _course(aspect: Aspect, values: Sequence[Value]) -> str:
    """A value that stays, the first and the last of one that climbs or falls, or all of a few that do neither."""
    texts = [value(aspect, each) for each in values]
    if len(set(texts)) == 1:
        return texts[0]
    keys = [_size(each) for each in values]
    known = [key for key in keys if key is not None]
    runs = len(known) < len(keys) or known in (sorted(known), sorted(known, reverse=True))
    if runs or len(texts) > MOST_LISTED:
        return f"{texts[0]}{TO}{texts[-1]}"
    return ", ".join(texts)


def _size(of: Value) -> Fraction | None:
    """A number to tell a climb by, None where there is none."""
    match of:
        case bool():
            return None
        case int() | Fraction():
            return Fraction(of)
        case Reps(low=low):
            return low
        case Effort(high=high):
            return high
        case PercentOfBest(percent=percent) | ChangeByPercent(percent=percent):
            return percent
        case Weight(mass=mass) | Load(mass=mass) | ChangeByMass(mass=mass):
            return mass.amount
        case Bodyweight(added=added):
            return added.amount if added is not None else Fraction(0)
        case _:
            return None


# ---- values --------------------------------------------------------------------------------------


def _fraction(aspect: Aspect, of: Fraction) -> str:
    match aspect:
        case Aspect.LOAD_FACTOR:
            return f"{plain(of * 100)}%"
        case Aspect.COUNT_FROM:
            return f"RPE {plain(of)}"
        case Aspect.EVERY | Aspect.PAUSE:
            return str(Rest(of, of))
        case _:
            return plain(of)


def _load(load: Load) -> str:
    return str(load.mass)


def _group(group: Group) -> str:
    rounds = f" of {group.rounds} rounds" if group.rounds is not None else ""
    return f"{group.kind.value} {group.letter}{rounds}"


def _several(of: Sequence[object]) -> str:
    texts = [_one(each) for each in of]
    return ", ".join(texts) if texts else NOTHING


def _one(of: object) -> str:
    match of:
        case Segment():
            return _segment(of)
        case (str(muscle), Fraction() as share):
            return f"{muscle} {plain(share)}"
        case _:
            return str(of)


def _segment(segment: Segment) -> str:
    said = f"{segment.sets} x {segment.reps}"
    if segment.intensity is not None:
        said += f" @ {segment.intensity}"
    return said + (f" ({segment.load.mass})" if segment.load is not None else "")


def _nth(part: int) -> str:
    names = ("first", "second", "third", "fourth", "fifth")
    return names[part] if part < len(names) else f"{part + 1}th"


# ---- aspects with sentences of their own ---------------------------------------------------------


def _is_work(before: Value, after: Value) -> str:
    return f"{_written(before)} became {_written(after)}"


def _written(of: Value) -> str:
    return work(each for each in of if isinstance(each, Segment)) if isinstance(of, tuple) else NOTHING


def _warm_up(before: Value, after: Value) -> str:
    if not before:
        return f"warm-up added: {_steps(after)}"
    return f"warm-up {_steps(before)} became {_steps(after)}" if after else "warm-up dropped"


def _steps(of: Value) -> str:
    """Warm-ups without their loads, which differ from week to week."""
    return _several([replace(each, load=None) for each in _tuple(of) if isinstance(each, Segment)])


def _tuple(of: Value) -> Sequence[object]:
    return of if isinstance(of, tuple) else ()


def _notes(before: Value, after: Value) -> str:
    old, new = (dict.fromkeys(map(str, _tuple(side))) for side in (before, after))
    gone = [f'note dropped: "{note}"' for note in old if note not in new]
    come = [f'note added: "{note}"' for note in new if note not in old]
    if len(gone) == len(come) == 1:
        return f"note “{next(note for note in old if note not in new)}” became “{next(iter(new.keys() - old.keys()))}”"
    return "; ".join((*gone, *come)) or "notes in another order"


def _swaps(before: Value, after: Value) -> str:
    return _gained("may be swapped for", "no longer swapped for", before, after)


def _needs(before: Value, after: Value) -> str:
    return _gained("needs", "no longer needs", before, after)


def _follows(before: Value, after: Value) -> str:
    return _gained("now follows", "no longer follows", before, after)


def _gained(more: str, less: str, before: Value, after: Value) -> str:
    old, new = ([str(each) for each in _tuple(side)] for side in (before, after))
    come, gone = [each for each in new if each not in old], [each for each in old if each not in new]
    told = [f"{more} {', '.join(come)}"] if come else []
    return "; ".join([*told, *([f"{less} {', '.join(gone)}"] if gone else [])]) or "in another order"


def _optional(_: Value, after: Value) -> str:
    return "now optional" if after else "no longer optional"


def _test(_: Value, after: Value) -> str:
    return "now a test" if after else "no longer a test"


def _order(before: Value, after: Value) -> str:
    """Which one moved where that is clear, else the whole order."""
    old, new = ([str(each) for each in _tuple(side)] for side in (before, after))
    if sorted(old) == sorted(new) and len(set(new)) == len(new):
        changed = [at for at, (one, other) in enumerate(zip(old, new, strict=True)) if one != other]
        if len(changed) == 2 and changed[1] == changed[0] + 1:
            return f"{new[changed[0]]} now comes before {new[changed[1]]}"
        for name in (new[changed[0]], new[changed[-1]]):
            if [one for one in old if one != name] == [one for one in new if one != name]:
                at = new.index(name)
                return f"{name} moved " + (f"behind {new[at - 1]}" if at else "to the start")
    return f"now in the order {', '.join(new)}"


def _block_order(_: Value, after: Value) -> str:
    return f"blocks now follow each other as {', '.join(str(each) for each in _tuple(after))}"


def _week_kind(before: Value, after: Value) -> str:
    return f"was a {value(Aspect.WEEK_KIND, before)}, is now a {value(Aspect.WEEK_KIND, after)}"


def _easing(before: Value, after: Value) -> str:
    assert isinstance(before, Easing)
    assert isinstance(after, Easing)
    told = [] if before.sets == after.sets else [f"{before.sets} sets in all became {after.sets}"]
    if before.load_factor != after.load_factor:
        told.append(f"loads at {_share(before.load_factor)} of the usual became {_share(after.load_factor)}")
    if before.highest_effort != after.highest_effort:
        told.append(f"hardest set {_rpe(before.highest_effort)} became {_rpe(after.highest_effort)}")
    return "; ".join(told)


def _share(of: Fraction | None) -> str:
    return "100%" if of is None else f"{plain(of * 100)}%"


def _rpe(of: Fraction | None) -> str:
    return "without effort" if of is None else f"RPE {plain(of)}"


def _group_change(before: Value, after: Value) -> str:
    if not isinstance(after, Group):
        return f"no longer in {value(Aspect.GROUP, before)}, on its own now"
    if not isinstance(before, Group):
        return f"now in {_group(after)}"
    return f"{_group(before)} became {_group(after)}"


def _progression(before: Value, after: Value) -> str:
    if before is None:
        return f"now progresses by {after}"
    return f"no longer progresses by {before}" if after is None else f"progression {before} became {after}"


def _cue(_: Value, after: Value) -> str:
    return f"cue is now “{after}”" if after else "cue dropped"


def _required(_: Value, after: Value) -> str:
    return "optional lines no longer count" if after else "optional lines count again"


_SPECIAL: dict[Aspect, Callable[[Value, Value], str]] = {
    Aspect.WORK: _is_work,
    Aspect.WARM_UP: _warm_up,
    Aspect.NOTES: _notes,
    Aspect.SWAPS: _swaps,
    Aspect.NEEDS: _needs,
    Aspect.FOLLOWS: _follows,
    Aspect.OPTIONAL: _optional,
    Aspect.TEST: _test,
    Aspect.ORDER: _order,
    Aspect.BLOCK_ORDER: _block_order,
    Aspect.WEEK_KIND: _week_kind,
    Aspect.EASING: _easing,
    Aspect.GROUP: _group_change,
    Aspect.PROGRESSION: _progression,
    Aspect.CUE: _cue,
    Aspect.COUNT_REQUIRED: _required,
}

_NAMES: dict[Aspect, str] = {
    Aspect.NAME: "name ",
    Aspect.AUTHOR: "author ",
    Aspect.START: "start ",
    Aspect.UNITS: "units ",
    Aspect.MICROCYCLE: "days of a microcycle ",
    Aspect.MODEL: "repetition model ",
    Aspect.ROUNDING: "loads rounded ",
    Aspect.COUNTING: "sets counted ",
    Aspect.COUNT_FROM: "sets count from ",
    Aspect.LABEL: "label ",
    Aspect.TIME_OF_DAY: "time of day ",
    Aspect.REPS: "repetitions ",
    Aspect.INTENSITY: "",
    Aspect.LOAD: "load ",
    Aspect.LOAD_FACTOR: "share of the usual load ",
    Aspect.REST: "rest ",
    Aspect.TEMPO: "tempo ",
    Aspect.EVERY: "a set every ",
    Aspect.PAUSE: "pause in the set ",
    Aspect.INSTEAD_OF: "in place of ",
    Aspect.PATTERN: "pattern ",
    Aspect.WORKS: "works ",
}
