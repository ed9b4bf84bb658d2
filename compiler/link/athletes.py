"""An athlete's declaration as an `Athlete`: bests, equipment and days read and checked."""

from __future__ import annotations

from datetime import time
from fractions import Fraction

from setwright.athlete import Athlete, Avoided, Best, OwnSwap
from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import athletes as codes
from setwright.diagnostics.catalogue import names, structure
from setwright.link.absences import linked_ease_in
from setwright.link.library import Declared, Library
from setwright.link.models import ROUNDING, known_model, known_word
from setwright.link.values import HEAVIEST, mass, rpe
from setwright.link.wishes import linked_wish
from setwright.plan import WEEKDAYS
from setwright.quantities import Mass, Unit, plain
from setwright.record import replace
from setwright.science.repetitions import RELIABLE_REPS
from setwright.suggest import did_you_mean
from setwright.syntax import nodes as n
from setwright.syntax.structure import kind_of

Problems = list[Diagnostic]

MOST_WEIGHTS = 200
MOST_DISCS = 200
MOST_TO_ESTIMATE = 30  # repetitions of a set
EARLIEST_BIRTH, LATEST_BIRTH = 1900, 2099
MOST_KINDS = 24  # of discs; sums of more kinds are too many to go through
_EQUIPMENT = ("bar", "plates", "dumbbells", "kettlebells", "has")
_REPEATED = ("at", "best", "avoid", "swap", "emphasis", "away", "note", "unread")


def linked_athlete(declared: Declared, library: Library, problems: Problems) -> Athlete:
    """One athlete; what cannot be read is reported and left out."""
    made = Athlete(declared.name, declared.span)
    seen: set[str] = set()
    for line in library.statement(declared).body:
        word = kind_of(line.node)
        if word in seen and word not in _REPEATED:
            problems.append(structure.SETTING_TWICE.at(line.node.span, word=word))
        seen.add(word)
        made = _with(made, line.node, library, problems)
        if word in _EQUIPMENT:
            made = replace(made, lines=(*made.lines, (word, line.node.span)))
    return replace(made, bests=_single_bests(made, problems))


def _with(made: Athlete, node: n.Node, library: Library, problems: Problems) -> Athlete:
    match node:
        case n.Setting(word="at"):
            return replace(made, times=_times(node, made, problems))
        case n.Setting():
            return _with_setting(made, node, library, problems)
        case n.BarLine():
            bar = mass(node.mass, problems, "a bar's mass")
            collars = (
                mass(node.collars, problems, "a collar's mass", example="`2.5 kg`, `5 lb`") if node.collars else None
            )
            return replace(made, bar=bar, collars=collars)
        case n.PlatesLine():
            return replace(made, plates=_plates(node, problems))
        case n.HandWeightsLine(word="dumbbells"):
            return replace(made, dumbbells=_hand_weights(node, problems))
        case n.HandWeightsLine():
            return replace(made, kettlebells=_hand_weights(node, problems))
        case n.BestLine():
            best = _best(node, library, problems)
            return replace(made, bests=(*made.bests, best)) if best else made
        case n.SwapLine():
            swap = _own_swap(node, made, library, problems)
            return replace(made, swaps=(*made.swaps, swap)) if swap else made
        case n.AvoidLine():
            avoided = _avoided(node, library, problems)
            return replace(made, avoids=(*made.avoids, avoided)) if avoided else made
        case n.EmphasisLine():
            wish = linked_wish(node, made.wishes, library, problems)
            return replace(made, wishes=(*made.wishes, wish)) if wish else made
        case n.EaseInLine():
            return replace(made, ease_in=linked_ease_in(node, problems))
        case n.NoteLine(text=text):
            return replace(made, notes=(*made.notes, text))
        case _:
            pass
    return made


def _with_setting(made: Athlete, node: n.Setting, library: Library, problems: Problems) -> Athlete:
    first = node.values[0] if node.values else None
    match node.word, first:
        case "units", n.Name(text=text):
            return replace(made, unit=Unit(text))
        case "born", n.Name(text=text) as first:
            return replace(made, born=_year(first, text, problems))
        case "bodyweight", n.Item() as item:
            return replace(made, bodyweight=mass(item, problems, "a body weight", made.unit))
        case "available", _:
            days = {value.text for value in node.values if isinstance(value, n.Name)}
            ordered = tuple(day for day in WEEKDAYS if day in days)
            return replace(made, available=ordered, available_span=node.span)
        case "has", _:
            return replace(made, has=tuple(_equipment(node, library, problems)))
        case "bests", _:
            return replace(made, bests_from_log=node.span)
        case "model", n.Name() as name:
            return replace(made, model=known_model(name, problems))
        case "round", n.Name() as name:
            return replace(made, round_down=known_word(name, "round", ROUNDING, problems) == "down")
        case _:
            return made


def _year(written: n.Name, text: str, problems: Problems) -> int | None:
    year = int(text)
    if EARLIEST_BIRTH <= year <= LATEST_BIRTH:
        return year
    # `born 94` is a habit, and of two hundred years the one in which most athletes were born.
    help_ = f"Write the year in full: `born {1900 + year}`." if len(text) == 2 else None
    problems.append(
        codes.YEAR_OF_BIRTH.at(written.span, found=text, first=EARLIEST_BIRTH, last=LATEST_BIRTH, help=help_)
    )
    return None


def _times(node: n.Setting, made: Athlete, problems: Problems) -> tuple[tuple[str | None, time], ...]:
    *days, clock = (value for value in node.values if isinstance(value, n.Name))
    day = days[0].text if days else None
    hours, minutes = (int(part) if len(part) <= 2 else 99 for part in clock.text.split(":"))
    if hours > 23 or minutes > 59:
        problems.append(codes.TIME_OF_DAY.at(clock.span, found=clock.text))
        return made.times
    if day in dict(made.times):
        problems.append(structure.SETTING_TWICE.at(node.span, word=f"at {day}" if day else "at"))
        return made.times
    return (*made.times, (day, time(hours, minutes)))


def _equipment(node: n.Setting, library: Library, problems: Problems) -> list[str]:
    kept: list[str] = []
    for value in node.values:
        if not isinstance(value, n.Name):
            continue
        known = library.known_equipment(value, problems) if library.equipment else value.text
        if known is not None:
            kept.append(known)
    return kept


def _plates(node: n.PlatesLine, problems: Problems) -> tuple[tuple[int, Mass], ...]:
    unit = next((unit for _, _, unit in reversed(node.plates) if unit), None)
    if unit is None:
        problems.append(codes.BAD_EQUIPMENT.at(node.span, message="these plates need a unit at the end: `kg` or `lb`"))
        return ()
    made: list[tuple[int, Mass]] = []
    if len({(size, own or unit) for _, size, own in node.plates}) > MOST_KINDS:
        message = f"there are discs of at most {MOST_KINDS} masses"
        problems.append(codes.BAD_EQUIPMENT.at(node.span, message=message))
        return ()
    for count, size, own in node.plates:
        if not 0 < count <= MOST_DISCS or not 0 < size <= 100:
            message = f"a plate weighs up to 100 kg or lb, and there are 1 to {MOST_DISCS} of a kind"
            problems.append(codes.BAD_EQUIPMENT.at(node.span, message=message))
            return ()
        made.append((count, Mass(size, Unit(own or unit))))
    return tuple(made)


def _hand_weights(node: n.HandWeightsLine, problems: Problems) -> tuple[Mass, ...]:
    unit = next((item.unit for item in reversed(node.items) if item.unit), None) or (node.by.unit if node.by else None)
    if unit not in HEAVIEST:
        message = f"these {node.word} need a unit: `kg` or `lb`"
        problems.append(codes.BAD_EQUIPMENT.at(node.span, message=message))
        return ()
    values: set[Fraction] = set()
    for item in node.items:
        found = _spread(item, node, problems)
        if found is None:
            return ()
        values.update(found)
    return tuple(Mass(value, Unit(unit)) for value in sorted(values))


def _spread(item: n.Item, node: n.HandWeightsLine, problems: Problems) -> list[Fraction] | None:
    low, high, by = item.low, item.high, node.by.low if node.by else None
    message = None
    if low is None or high is None or not 0 < low <= high <= 200:
        message = f"`{item.span.text}` is no range of {node.word}, lightest to heaviest"
    elif low != high and not by:
        message = f"a range of {node.word} needs its step: `{item.span.text} by 2 kg`"
    elif low != high and by and (high - low) / by > MOST_WEIGHTS:
        message = f"more than {MOST_WEIGHTS} {node.word} in one range"
    if message is not None or low is None or high is None:
        problems.append(codes.BAD_EQUIPMENT.at(item.span, message=message))
        return None
    if not by:
        return [low]
    return [low + by * index for index in range(int((high - low) / by) + 1)]


def _own_swap(node: n.SwapLine, made: Athlete, library: Library, problems: Problems) -> OwnSwap | None:
    old, new = library.movement(node.old, problems), library.movement(node.new, problems)
    if old is None or new is None:
        return None
    first = next((swap for swap in made.swaps if swap.old == old.name), None)
    if first is not None:
        related = (Related(first.span, "it is swapped here already"),)
        problems.append(structure.SETTING_TWICE.at(node.span, word=f"swap {old.name}", related=related))
        return None
    return OwnSwap(old.name, new.name, node.span)


def _avoided(node: n.AvoidLine, library: Library, problems: Problems) -> Avoided | None:
    """A lower-case word is a pattern before it is a movement's other name; a name, or a text in quotes, a movement."""
    word, quoted = node.what.text, node.what.span.text.startswith('"')
    if word in library.patterns() and not quoted:
        return Avoided(word, True, node.span, node.reason)
    if library.movement_key(node.what) is not None:
        movement = library.movement(node.what, problems)
        return Avoided(movement.name, False, node.span, node.reason) if movement else None
    help_ = library.near_movements(node.what) or did_you_mean(word, library.patterns())
    if word == word.lower():
        help_ = did_you_mean(word, library.patterns()) or help_
    if word in library.muscles or word in library.groups:
        help_ = f"`{word}` is a muscle or a group of muscles; name a movement, or a pattern such as `overhead-press`."
    elif not library.movements:
        help_ = "Perhaps `use stdlib.exercises` is missing."
    problems.append(names.UNKNOWN_PATTERN.at(node.what.span, name=word, help=help_))
    return None


def _best(node: n.BestLine, library: Library, problems: Problems) -> Best | None:
    movement = library.movement(node.movement, problems)
    raw = node.segment
    load = raw.sets if raw.sets is not None else raw.reps
    items = load.items if isinstance(load, n.RawTrack) and load.kind is n.TrackKind.FIXED else ()
    if not items or items[0].unit not in HEAVIEST:
        problems.append(codes.BEST_UNCLEAR.at(raw.span, found=raw.span.text))
        return None
    weight = mass(items[0], problems, "a best's load")
    if raw.sets is None:
        if raw.intensity is not None:
            problems.append(codes.BEST_UNCLEAR.at(raw.span, found=raw.span.text))
            return None
        return Best(movement.name, weight, node.span) if movement and weight else None
    set_done = _set_done(raw, problems)
    if set_done is None or movement is None or weight is None:
        return None
    if sum(set_done) > RELIABLE_REPS:
        reps = plain(sum(set_done, Fraction(0)))
        problems.append(codes.UNRELIABLE.at(node.span, reps=reps, most=RELIABLE_REPS))
    return Best(movement.name, weight, node.span, *set_done)


def _set_done(raw: n.RawSegment, problems: Problems) -> tuple[Fraction, Fraction] | None:
    item = raw.reps.items[0]
    plain_count = raw.reps.kind is n.TrackKind.FIXED and item.low == item.high and not (item.unit or item.rpe)
    if not plain_count or item.low is None or item.low.denominator != 1 or not 1 <= item.low <= MOST_TO_ESTIMATE:
        is_size = plain_count and item.low is not None and item.low > MOST_TO_ESTIMATE
        help_ = f"A best is estimated from at most {MOST_TO_ESTIMATE} repetitions." if is_size else None
        problems.append(codes.BEST_UNCLEAR.at(raw.span, found=raw.span.text, help=help_))
        return None
    if raw.intensity is None:
        return item.low, Fraction(0)
    if not isinstance(raw.intensity, n.RawIntensity) or raw.intensity.track.kind is not n.TrackKind.FIXED:
        problems.append(codes.BEST_UNCLEAR.at(raw.span, found=raw.span.text))
        return None
    effort = rpe(raw.intensity.track.items[0], problems, "the set", as_felt=True)
    if effort is None:
        return None
    if effort < 5:
        problems.append(codes.BEST_UNCLEAR.at(raw.span, found=raw.span.text))
        return None
    return item.low, 10 - effort


def _single_bests(made: Athlete, problems: Problems) -> tuple[Best, ...]:
    kept: dict[str, Best] = {}
    for best in made.bests:
        first = kept.setdefault(best.movement, best)
        if first is not best:
            problems.append(codes.BEST_TWICE.at(best.span, athlete=made.name, movement=best.movement))
    return tuple(kept.values())
