"""A small second reading of the steps of a derivation, written from the reference and not from the compiler.

Comes in: a step, what it may lean on. Goes out: the value that it must come to.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction
from itertools import product
from math import floor

from setwright.athlete import Athlete
from setwright.plan import Cause, Quantity, Step, StepValue
from setwright.prescription import (
    Bodyweight,
    ChangeByMass,
    ChangeByPercent,
    Effort,
    PercentOfBest,
    Reps,
    RepsKind,
    Rest,
    Tempo,
    Weight,
)
from setwright.quantities import Mass, Unit
from setwright.science.repetitions import Model, estimated_best, share_of_best

SECONDS = {"s": 1, "min": 60}
NUMBER = r"(\d+(?:\.\d+)?)"


def replayed(step: Step, before: Step | None, athlete: Athlete | None) -> StepValue:
    """What the step must come to; `before` is the step before it in its chain."""
    match step.cause:
        case Cause.WRITTEN:
            return read(step.quantity, str(step.before))
        case Cause.PARAMETER:
            return filled(step)
        case Cause.TRACK:
            return in_week(step)
        case Cause.LIMIT:
            return capped(step.before, fraction(step, "most"))
        case Cause.DELOAD:
            return deloaded(step, before)
        case Cause.SUBSTITUTION:
            return swapped(step)
        case Cause.LOAD:
            return step.before.mass if isinstance(step.before, Weight) else step.before.added  # type: ignore[union-attr]
        case Cause.BEST:
            return of_best(step)
        case Cause.CHANGE:
            return changed(mass(step, "load_before"), step.before)
        case Cause.WARM_UP:
            assert isinstance(step.before, PercentOfBest)
            return mass(step, "work_load").times(step.before.percent / 100)
        case Cause.ROUNDING | Cause.EQUIPMENT if isinstance(step.before, Mass) and isinstance(step.after, Mass):
            return made(step.before, step, step.after.unit, athlete)
        case Cause.PROGRESSION:
            return climbed(step)
        case Cause.EMPHASIS:
            return emphasised(step)
        case Cause.AVAILABLE:
            return next(day for day in step.span.text.removeprefix("available ").split(", ") if day == step.after)
        case _:
            return step.after  # an intensity that became what can be loaded: the chain of the load ends in the same


def climbed(step: Step) -> StepValue:
    """`load-each-exposure` if all goes to plan: its step after each exposure."""
    written = step.span.source.line(step.span.line)
    found = re.search(rf"load-each-exposure\(step: {NUMBER} kg\)", written)
    assert found is not None
    assert isinstance(step.before, Weight)
    more = Fraction(found[1]) * (fraction(step, "exposure") - 1)
    return Weight(step.before.mass.plus(Mass(more, Unit.KG)))


def emphasised(step: Step) -> StepValue:
    """So many sets more or less as the line allows at most; where they fit is for the laws of emphasis."""
    found = re.search(r"([+-])(\d+) sets", step.span.text)
    assert found is not None
    assert isinstance(step.before, int)
    assert isinstance(step.after, int)
    moved = (step.after - step.before) * (1 if found[1] == "+" else -1)
    assert 0 < moved <= int(found[2])
    return step.after


# ---- text ----------------------------------------------------------------------------------------


def read(quantity: Quantity, text: str) -> StepValue:
    """Text as written, with one value for all weeks."""
    match quantity:
        case Quantity.SETS:
            alone = re.fullmatch(NUMBER, text.strip())
            return int(text) if alone else 1
        case Quantity.REPS:
            return repetitions(text.partition(" x ")[2] if "%" in text else text)
        case Quantity.REST:
            numbers, unit = re.fullmatch(r"([\d.-]+) ?(s|min)", text).groups()  # type: ignore[union-attr]
            ends = [Fraction(number) * SECONDS[unit] for number in numbers.split("-")]
            return Rest(ends[0], ends[-1])
        case Quantity.TEMPO:
            phases = text.removeprefix("tempo").strip().split("-")
            return Tempo(tuple(None if phase == "X" else int(phase) for phase in phases))  # type: ignore[arg-type]
        case _:
            return intensity(text.partition(" x ")[0] if " x " in text else text)


def repetitions(text: str) -> Reps:
    text, _, side = text.partition("/")
    per_side = side == "side"
    if text == "max":
        return Reps(RepsKind.MAX, per_side=per_side)
    if text.startswith("("):
        parts = tuple(int(part) for part in text.strip("()").split("+"))
        return Reps(RepsKind.CLUSTER, Fraction(sum(parts)), Fraction(sum(parts)), parts, per_side)
    if text.endswith("+"):
        return Reps(RepsKind.AT_LEAST, Fraction(text[:-1]), Fraction(text[:-1]), per_side=per_side)
    kind = {"s": RepsKind.SECONDS, "m": RepsKind.METRES}.get(text[-1], RepsKind.COUNT)
    ends = [Fraction(number) for number in text.rstrip(" sm").split("-")]
    return Reps(kind, ends[0], ends[-1], per_side=per_side)


def intensity(text: str) -> StepValue:
    if text == "bodyweight":
        return Bodyweight()
    if text.startswith("bodyweight"):
        added = intensity(text.removeprefix("bodyweight "))
        return Bodyweight(added.mass)  # type: ignore[union-attr]
    of = re.fullmatch(rf"{NUMBER}% of (.+)", text)
    if of:
        return PercentOfBest(Fraction(of[1]), of[2].strip('"'))
    sign, unit = {"-": -1, "+": 1}.get(text[0], 0), text.split()[-1]
    numbers = [Fraction(number) for number in re.findall(NUMBER, text)]
    if "RPE" in text:
        return Effort(numbers[0], numbers[-1])
    if unit == "RIR":
        return Effort(10 - numbers[-1], 10 - numbers[0], as_reserve=True)
    if text.endswith("%"):
        return ChangeByPercent(sign * numbers[0]) if sign else PercentOfBest(numbers[0])
    amount = Mass(numbers[0] * (sign or 1), Unit(unit))
    return ChangeByMass(amount) if sign else Weight(amount)


def filled(step: Step) -> str:
    """The template's words, each with the value that its related place gives it."""
    text = str(step.before)
    for place in step.related:
        word, value = str(place.text).split(" is ", 1)
        text = text.replace(word, value)
    return text


def in_week(step: Step) -> StepValue:
    """A track's value: lists by their place, ramps and steps by arithmetic, rounded as the reference says."""
    text, index, count = str(step.before), int(fraction(step, "week")) - 1, int(fraction(step, "of"))
    sign = re.match(r"(bodyweight [+-] )?", text)[0]  # type: ignore[index]
    if "[" in text:
        inside, unit = re.fullmatch(r"\[(.*)\](.*)", text).groups()  # type: ignore[union-attr]
        items = [item.strip() for item in inside.split(",")]
        repeats, holds = items[-1] == "repeat", items[-1] == "..."
        items = items[:-1] if repeats or holds else items
        item = items[index % len(items)] if repeats else items[min(index, len(items) - 1)]
        return read(step.quantity, f"{item}{unit}")
    if "/week" in text:
        first, move, step_text = re.fullmatch(r"(.+) ([+-]) (.+)/week", text).groups()  # type: ignore[union-attr]
        by = Fraction(re.search(NUMBER, step_text)[0]) * (1 if move == "+" else -1) * index  # type: ignore[index]
        whole = step.quantity in (Quantity.SETS, Quantity.REPS)
        return with_numbers(step, first, lambda low: rounded(low + by, Fraction(1)) if whole else low + by)
    first, last = (part.strip() for part in text.removeprefix(sign).split("->"))
    ends = [re.findall(NUMBER, part) for part in (first, last)]
    share = Fraction(index, count - 1) if count > 1 else Fraction(0)
    values = [Fraction(a) + (Fraction(b) - Fraction(a)) * share for a, b in zip(*ends, strict=True)]
    whole = step.quantity in (Quantity.SETS, Quantity.REPS, Quantity.REST)
    grain = Fraction(1) if whole else None if re.search("kg|lb", text) else Fraction(1, 2)
    moved = iter(rounded(value, grain) if grain else value for value in values)
    return with_numbers(step, f"{sign}{last if len(last) > len(first) else first}", lambda _: next(moved))


def with_numbers(step: Step, text: str, change) -> StepValue:
    """The value of a text whose numbers are changed; exact, where decimals could not say it."""
    return read(step.quantity, re.sub(NUMBER, lambda found: _exact(change(Fraction(found[0]))), text))


def _exact(value: Fraction) -> str:
    """A decimal number, which the amounts of these plans always are."""
    assert (value * 10**9).denominator == 1, value
    return f"{float(value):.9f}".rstrip("0").rstrip(".")


# ---- numbers -------------------------------------------------------------------------------------


def rounded(value: Fraction, grain: Fraction) -> Fraction:
    return floor(value / grain + Fraction(1, 2)) * grain


def capped(value: StepValue, most: Fraction) -> Effort:
    assert isinstance(value, Effort)
    return Effort(min(value.low, most), min(value.high, most), value.as_reserve)


def deloaded(step: Step, before: Step | None) -> StepValue:
    if step.fact("most") is not None:
        return capped(step.before, fraction(step, "most"))
    share = fraction(step, "share")
    match step.before:
        case int() as sets:
            return max(1, int(rounded(sets * share, Fraction(1))))
        case PercentOfBest(percent, of):
            return PercentOfBest(percent * share, of)
        case Weight(load):
            return Weight(load.times(share), written=False)
        case Bodyweight(Mass() as added):
            return Bodyweight(added.times(share), written=False)
    assert isinstance(step.before, Mass)
    worked = step.fact("effort_before")
    if not isinstance(worked, Effort):
        return step.before.times(share)
    assert before is not None
    reps = fraction(before, "reps") + 10 - worked.high
    heavy = mass(before, "best").times(share_of_best(Model(before.fact("model")), reps))
    return Mass(min(step.before.amount, heavy.amount * share), step.before.unit)


def swapped(step: Step) -> StepValue:
    if step.quantity is Quantity.INTENSITY:
        return None
    found = re.search(r"swap (.+) for (.+?)(?: *#.*)?$", step.span.source.line(step.span.line))
    return found[2] if found and step.fact("reason") == "swap" else step.after


def of_best(step: Step) -> Mass:
    best = mass(step, "best")
    if step.fact("set") is not None:
        done = mass(step, "set")
        reps = fraction(step, "set_reps") + fraction(step, "set_reserve")
        share = fraction(step, "of_share") if step.fact("of_share") is not None else Fraction(1)
        assert best == estimated_best(Model(step.fact("best_model")), done, reps).times(share)
    if isinstance(step.before, PercentOfBest):
        return best.times(step.before.percent / 100)
    assert isinstance(step.before, Effort)
    to_failure = fraction(step, "reps") + 10 - step.before.high
    assert to_failure == fraction(step, "to_failure")
    return best.times(share_of_best(Model(step.fact("model")), to_failure))


def changed(load: Mass, change: StepValue) -> Mass:
    if isinstance(change, ChangeByPercent):
        return load.times(1 + change.percent / 100)
    assert isinstance(change, ChangeByMass)
    return load.plus(change.mass)


# ---- what can be loaded ---------------------------------------------------------------------------


def made(target: Mass, step: Step, unit: Unit, athlete: Athlete | None) -> Mass:
    """Brute force: all that can be made, and the nearest of it, or the greatest that is not above."""
    sign = -1 if target.amount < 0 else 1
    wanted, down = abs(target.to(unit).amount), step.fact("down") is not None
    there = list(makes(step, unit, wanted, athlete))
    below = [each for each in there if each <= wanted]
    chosen = min(there, key=lambda each: (abs(each - wanted), -each))
    if down:
        chosen = max(below, default=min(there))
    most = step.fact("most")
    if isinstance(most, Mass) and not 0 < chosen <= abs(most.to(unit).amount):
        chosen = max((each for each in below if each > 0), default=abs(most.to(unit).amount))
    return Mass(sign * chosen, unit)


def makes(step: Step, unit: Unit, wanted: Fraction, athlete: Athlete | None) -> Iterable[Fraction]:
    match step.fact("by"):
        case "plates":
            assert athlete is not None
            assert athlete.bar is not None
            empty = athlete.bar.amount + 2 * (athlete.collars.amount if athlete.collars else 0)
            sides = (range(count // 2 + 1) for count, _ in athlete.plates)
            for numbers in product(*sides):
                side = sum(number * disc.amount for number, (_, disc) in zip(numbers, athlete.plates, strict=True))
                yield empty + 2 * side
        case "dumbbells":
            assert athlete is not None
            yield from (each.to(unit).amount for each in athlete.dumbbells)
        case "bar":
            assert athlete is not None
            assert athlete.bar is not None
            yield athlete.bar.amount
        case _:
            grain = Fraction(5, 2) if unit is Unit.KG else Fraction(5)
            least = floor(wanted / grain)
            yield from (each * grain for each in (least, least + 1) if each > 0)


# ---- facts ---------------------------------------------------------------------------------------


def fraction(step: Step, name: str) -> Fraction:
    found = step.fact(name)
    assert isinstance(found, Fraction), (name, step.facts)
    return found


def mass(step: Step, name: str) -> Mass:
    found = step.fact(name)
    assert isinstance(found, Mass), (name, step.facts)
    return found
