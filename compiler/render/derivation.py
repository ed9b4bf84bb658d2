"""A derivation in words: a short list of values, reasons and places, for the terminal, the sheet and the editor.

Comes in: a `Derivation` and a language. Goes out: `Entry`s in order. What each cause says is one function.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from typing import assert_never

from setwright.plan import Cause, Quantity, SegmentKind, Step, StepValue, told
from setwright.prescription import Bodyweight, ChangeByMass, ChangeByPercent, Effort, PercentOfBest, Reps, Rest, Weight
from setwright.quantities import Mass
from setwright.record import record, replace
from setwright.render import words
from setwright.render.language import Language
from setwright.report.derivation import Derivation, Number, PartOfLine
from setwright.source import Span


@record
class Entry:
    """One step in words. `head` says what the value is, once; `value` is what the step came to, if anything."""

    head: str
    value: str
    reason: str
    place: Span


def entries(one: Derivation, language: Language) -> tuple[Entry, ...]:
    """The whole list of a line: the line itself, how it came here, rest and tempo, the work, the warm-ups for it."""
    parts = sorted(one.parts, key=lambda part: part.segment.kind is SegmentKind.WARM_UP)
    return (*_line(one, language), *(entry for part in parts for entry in _part(part, one, language)))


def of_segment(part: PartOfLine, one: Derivation, language: Language) -> tuple[Entry, ...]:
    """The list of one segment alone."""
    return tuple(_part(part, one, language))


# ---- the parts of a list -------------------------------------------------------------------------


def _line(one: Derivation, language: Language) -> Iterator[Entry]:
    written = " ".join(one.line.span.source.line(one.line.span.line).split())  # lines of a day stand in columns
    yield Entry(language.text("line"), "", written, one.line.span)
    for came in one.line.inherited:
        yield Entry("", "", language.said(came.text), came.span)
    for number in one.numbers:
        yield from _number(number, one, language)


def _part(part: PartOfLine, one: Derivation, language: Language) -> Iterator[Entry]:
    if part.segment.kind is SegmentKind.WARM_UP:
        yield from _warm_up(part, one, language)
        return
    for number in part.numbers:
        yield from _number(number, one, language)


def _warm_up(part: PartOfLine, one: Derivation, language: Language) -> Iterator[Entry]:
    """One entry for what is written, since nothing moves it, then the load."""
    segment = part.segment
    share = words.effort(segment.intensity, language) or ""
    reason = _written(segment.span.text, language)
    yield Entry(language.text("warm-up"), f"{share} × {words.amount(segment.reps, language)}", reason, segment.span)
    for number in part.numbers:
        if number.quantity is Quantity.LOAD:
            yield from _number(number, one, language)


def _number(number: Number, one: Derivation, language: Language) -> Iterator[Entry]:
    head = _head(number, language)
    for step in _told_apart(number):
        yield Entry(head, _value(step.after, number.quantity, language), _reason(step, one, language), step.span)
        head = ""
        yield from _grounds(step, language)


def _told_apart(number: Number) -> Iterator[Step]:
    """The steps worth an entry, or several in one.

    A stated load that needs no rounding is told by the intensity; what a template's word came to is read at once.
    """
    filled: Step | None = None
    for step in number.steps:
        if step.cause is Cause.PARAMETER and step is not number.steps[-1]:
            filled = step
        elif step.cause is Cause.WRITTEN and filled is not None:
            yield replace(filled, after=step.after)
            filled = None
        elif step.cause is not Cause.LOAD or step.after != number.value:
            yield from (step,) if filled is None else (filled, step)
            filled = None


def _grounds(step: Step, language: Language) -> Iterator[Entry]:
    """Where what the reason speaks of is written: an athlete's best, a template's argument."""
    for place in step.related:
        match step.cause:
            case Cause.BEST:
                yield Entry("", "", _best(step, language), place.span)
            case Cause.CHANGE:
                pass  # the segment before stands just above
            case _:
                yield Entry("", "", language.said(place.text), place.span)


def _head(number: Number, language: Language) -> str:
    match number.quantity:
        case Quantity.SETS:
            return language.text("sets")
        case Quantity.REPS:
            return _head_of_reps(number.value, language)
        case Quantity.INTENSITY:
            first = number.steps[0].after if number.value is None else number.value
            return language.text("load") if isinstance(first, Weight | Bodyweight) else language.text("intensity")
        case Quantity.LOAD:
            return language.text("load")
        case Quantity.REST:
            return language.text("rest")
        case Quantity.TEMPO:
            return language.text("tempo")
        case Quantity.MOVEMENT:
            return language.text("movement")
        case Quantity.DAY:
            return language.text("day")
        case Quantity.DATE:
            return language.text("date")
        case _:
            assert_never(number.quantity)


def _head_of_reps(value: StepValue, language: Language) -> str:
    if isinstance(value, Reps) and not value.is_repetitions and not value.to_failure:
        return language.text("each set")
    return language.text("repetitions")


# ---- reasons -------------------------------------------------------------------------------------


def _reason(step: Step, one: Derivation, language: Language) -> str:
    match step.cause:
        case Cause.WRITTEN if step.quantity is Quantity.SETS and step.before == step.span.text and step.after == 1:
            return _one_set(step, language)
        case Cause.WRITTEN:
            return _written(str(step.before), language)
        case Cause.PARAMETER:
            return language.text("the template's {words}, filled in").format(words=_code(step.before))
        case Cause.TRACK:
            return language.text("working week {number} of {count} in {track}").format(
                number=_told(step, "week", language), count=_told(step, "of", language), track=_code(step.before)
            )
        case Cause.PROGRESSION:
            return _progression(step, one, language)
        case Cause.LIMIT:
            return language.text("limit: at most {effort}").format(effort=_most(step, language))
        case Cause.DELOAD:
            return _deload(step, language)
        case Cause.EMPHASIS:
            return language.text("by {line}, as far as the rules allow").format(line=_code(step.span.text))
        case Cause.SUBSTITUTION:
            return _substitution(step, language)
        case Cause.LOAD:
            return language.text("the load as it is stated")
        case Cause.BEST:
            return _of_best(step, language)
        case Cause.CHANGE:
            change, load = _value(step.before, step.quantity, language), _of_mass(step, "load_before", language)
            return language.text("{change} against the {load} of the sets before").format(change=change, load=load)
        case Cause.WARM_UP:
            percent, load = _value(step.before, step.quantity, language), _of_mass(step, "work_load", language)
            return language.text("{percent} of the {load} of the first work set").format(percent=percent, load=load)
        case Cause.ROUNDING | Cause.EQUIPMENT:
            return _made(step, language)
        case Cause.AVAILABLE:
            return language.text("moved from {day} to a day that the athlete has").format(
                day=words.slot(str(step.before), language)
            )
        case Cause.AWAY:
            return language.text("the plan waited for {line}").format(line=_code(step.span.text))
        case _:
            assert_never(step.cause)


def _written(text: str, language: Language) -> str:
    return language.text("as written: {text}").format(text=_code(text))


def _one_set(step: Step, language: Language) -> str:
    if str(step.before).strip() == "1":
        return _written("1", language)
    return language.text("one set, as no number is written")


def _progression(step: Step, one: Derivation, language: Language) -> str:
    number, rule = _told(step, "exposure", language), _code(one.line.advance or "")
    done, on = step.fact("done"), step.fact("on")
    if not isinstance(done, str) or not isinstance(on, str):
        said = language.text("exposure {number} of the block by {rule}, if all goes to plan")
        return said.format(number=number, rule=rule)
    day = language.day(date.fromisoformat(on))
    if one.line.projected:
        said = language.text("exposure {number} of the block by {rule}, after {done} on {day}, if all goes to plan")
    else:
        said = language.text("exposure {number} of the block by {rule}, after {done} on {day}")
    return said.format(number=number, rule=rule, done=_code(done), day=day)


def _deload(step: Step, language: Language) -> str:
    if step.span.text.startswith("ease-in"):
        return _easing(step, language)
    if step.fact("most") is not None:
        return language.text("deload: at most {effort}").format(effort=_most(step, language))
    share = _share(step.fact("share"), language)
    before = step.fact("effort_before")
    if isinstance(before, Effort):
        said = language.text("deload: at most {percent} of what {effort} gives")
        return said.format(percent=share, effort=_value(before, Quantity.INTENSITY, language))
    value = _value(step.before, step.quantity, language)
    return language.text("deload: {percent} of {value}").format(percent=share, value=value)


def _easing(step: Step, language: Language) -> str:
    """The same arithmetic, by another line."""
    if step.fact("most") is not None:
        return language.text("easing in: at most {effort}").format(effort=_most(step, language))
    value = _value(step.before, step.quantity, language)
    return language.text("easing in: {percent} of {value}").format(
        percent=_share(step.fact("share"), language), value=value
    )


def _substitution(step: Step, language: Language) -> str:
    if step.quantity is not Quantity.MOVEMENT:
        return language.text("{load} was chosen for another movement").format(
            load=_value(step.before, step.quantity, language)
        )
    planned, what = language.name(str(step.before)), str(step.fact("what") or "")
    match step.fact("reason"):
        case "avoid":
            said = language.text("in place of {movement}: the athlete avoids {what}")
        case "missing":
            said = language.text("in place of {movement}: the athlete has no {what}")
        case _:
            said = language.text("in place of {movement}: the athlete's own swap")
    return said.format(movement=planned, what=what)


def _of_best(step: Step, language: Language) -> str:
    share, best = _share(step.fact("share"), language), _of_mass(step, "best", language)
    if not isinstance(step.before, Effort):
        return language.text("{percent} of the best, {best}").format(percent=share, best=best)
    said = language.text("{reps} @ {effort} is {count} to failure: by {model} {percent} of the best, {best}")
    effort = _value(Effort(step.before.high, step.before.high, step.before.as_reserve), Quantity.INTENSITY, language)
    reps, count = _told(step, "reps", language), _told(step, "to_failure", language)
    return said.format(reps=reps, effort=effort, count=count, model=step.fact("model"), percent=share, best=best)


def _best(step: Step, language: Language) -> str:
    """How the best is known, at its own place."""
    done, logged = _mass(step, "set"), step.fact("log_day")
    if isinstance(logged, str):
        known = _from_log(step, language.day(date.fromisoformat(logged)), language)
    elif done is None:
        known = language.text("tested")
    else:
        reserve = step.fact("set_reserve")
        said = f"{_value(done, Quantity.LOAD, language)} × {_told(step, 'set_reps', language)}"
        if isinstance(reserve, Fraction) and reserve:
            rpe = 10 - reserve
            said = f"{said} @ {_value(Effort(rpe, rpe), Quantity.INTENSITY, language)}"
        known = language.text("estimated by {model} from {done}").format(model=step.fact("best_model"), done=said)
    if step.fact("of") is None:
        return language.text("the best: {known}").format(known=known)
    return language.text("taken as {percent} of the best in {movement}: {known}").format(
        percent=_share(step.fact("of_share"), language), movement=language.name(str(step.fact("of"))), known=known
    )


def _from_log(step: Step, day: str, language: Language) -> str:
    model = step.fact("best_model")
    if model is None:
        return language.text("tested on {day}, from the log").format(day=day)
    return language.text("estimated from the log by {model}: trend on {day}").format(model=model, day=day)


def _made(step: Step, language: Language) -> str:
    if step.quantity is not Quantity.LOAD:
        return language.text("as it can be loaded")
    if step.cause is Cause.EQUIPMENT:
        heavier = isinstance(step.before, Mass) and isinstance(step.after, Mass)
        more = heavier and step.after.amount < step.before.amount  # type: ignore[union-attr]
        return language.text("there is no more to load") if more else language.text("there is nothing lighter")
    down = step.fact("down") is not None
    match step.fact("by"):
        case "plates":
            said = language.text("what bar and plates make")
        case "dumbbells":
            said = language.text("the dumbbells there are")
        case "kettlebells":
            said = language.text("the kettlebells there are")
        case _:
            said = language.text("the usual steps")
    form = language.text("rounded down to {steps}") if down else language.text("rounded to {steps}")
    return form.format(steps=said)


# ---- values --------------------------------------------------------------------------------------


def _value(value: StepValue, quantity: Quantity, language: Language) -> str:
    match value:
        case int():
            return words.sets(value, language)
        case Mass():
            return words.mass(value, language)
        case Reps():
            return words.amount(value, language)
        case Rest():
            return words.rest(value, language)
        case Weight(mass):
            return words.mass(mass, language)
        case Effort() | PercentOfBest():
            return words.effort(value, language) or ""
        case ChangeByPercent(percent):
            return _sign(percent) + language.percent(abs(percent))
        case ChangeByMass(mass):
            return _sign(mass.amount) + words.mass(Mass(abs(mass.amount), mass.unit), language)
        case None:
            return language.text("no load")
        case str() if quantity is Quantity.DATE:
            return language.day(date.fromisoformat(value))
        case str() if quantity is Quantity.DAY:
            return words.slot(value, language)
        case _:
            return told(value)


def _sign(value: Fraction) -> str:
    return words.MINUS if value < 0 else "+"


def _told(step: Step, name: str, language: Language) -> str:
    value = step.fact(name)
    return language.number(value) if isinstance(value, Fraction) else told(value)


def _share(value: StepValue | Fraction, language: Language) -> str:
    return language.percent(value * 100) if isinstance(value, Fraction) else ""


def _most(step: Step, language: Language) -> str:
    most = step.fact("most")
    assert isinstance(most, Fraction)
    is_reserve = isinstance(step.before, Effort) and step.before.as_reserve
    return _value(Effort(most, most, is_reserve), Quantity.INTENSITY, language)


def _mass(step: Step, name: str) -> Mass | None:
    found = step.fact(name)
    return found if isinstance(found, Mass) else None


def _of_mass(step: Step, name: str, language: Language) -> str:
    return _value(_mass(step, name), Quantity.LOAD, language)


def _code(text: StepValue) -> str:
    """Words of a file, set apart from ours."""
    return f"`{text}`"
