"""A movement's line in a day: its segments, modifiers and what is indented under it, typed and checked.

Comes in: an entry and the statements under it. Goes out: a `LinkedLine`, or None where it cannot stand.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import names, structure, weeks
from setwright.link.library import Library
from setwright.link.model import LinkedGroup, LinkedLine, LinkedSegment, Modifiers, Track, WarmUpStep, WeeklyForm
from setwright.link.tracks import intensity_track, reps_track, rest_track, sets_track
from setwright.link.values import percent, rpe, seconds, whole
from setwright.message import Phrase, message
from setwright.plan import GroupKind, Movement
from setwright.prescription import Reps, RepsKind, Tempo
from setwright.record import replace
from setwright.source import Span
from setwright.syntax import nodes as n
from setwright.syntax.habits import decimal_comma, spelled
from setwright.syntax.structure import kind_of

Problems = list[Diagnostic]

LONGEST_BLOCK = 104  # weeks
LONGEST_PLAN = 520
_INTENSE = ("%", "kg", "lb", "RIR")


def linked_line(
    entry: n.Entry, body: Iterable[n.Statement], group: LinkedGroup | None, library: Library, problems: Problems
) -> LinkedLine | None:
    """One line of a day; a placeholder where its prescription is wrong, None where its movement is unknown."""
    if entry.movement.is_word:
        name = entry.movement.name
        help_ = "Movement names begin with a capital, or stand in quotes."
        problems.append(names.PARAMETER_OUTSIDE_TEMPLATE.at(name.span, word=name.text, needed="a movement", help=help_))
        return None
    movement = library.movement(entry.movement.name, problems)
    in_circuit = group is not None and group.kind is GroupKind.CIRCUIT
    segments = _segments(entry.prescription, in_circuit, library, problems)
    modifiers = _modifiers(_all_parts(entry, body), library, problems)
    weekly = _weekly(entry, body, in_circuit, library, problems)
    notes = tuple(line.node.text for line in body if isinstance(line.node, n.NoteLine))
    swaps = _swaps(body, library, problems)
    if movement is None:
        return None
    if segments is None or weekly is None or _is_incomplete(entry, segments, weekly, problems):
        return placeholder(movement, entry.movement.label, entry.span, group)
    _check_pause(modifiers, entry, segments, weekly, problems)
    _check_progressions(modifiers, segments, weekly, group, problems)
    named = _named(entry.movement.name, movement)
    return LinkedLine(
        movement, entry.movement.label, segments, weekly, modifiers, entry.span, notes, swaps, group, named=named
    )


def _named(name: n.Name, movement: Movement) -> tuple[Span, Related] | None:
    if name.given is None:
        return None
    said = Phrase(message("{word} is {value}"), word=name.span.text, value=movement.name)
    return name.span, Related(name.given, said)


def placeholder(movement: Movement, label: str | None, span: Span, group: LinkedGroup | None = None) -> LinkedLine:
    """Holds the place of a line that could not be read, so that an edit of it is no second error."""
    return LinkedLine(movement, label, (), (), Modifiers(), span, group=group)


def warm_up_steps(parts: Iterable[n.Part], problems: Problems) -> tuple[WarmUpStep, ...]:
    """The steps of a warm-up: those of a plan's own line, or of a movement's."""
    steps: list[WarmUpStep] = []
    for part in parts:
        step = part.first if isinstance(part, n.WarmUpPart) else part
        if isinstance(step, n.Loose):
            steps.extend(_warm_up_step(step, problems))
    return tuple(steps)


# ---- helpers -------------------------------------------------------------------------------------


def _is_incomplete(
    entry: n.Entry, segments: tuple[LinkedSegment, ...], weekly: tuple[WeeklyForm, ...], problems: Problems
) -> bool:
    if segments and weekly:
        problems.append(weeks.BOTH_FORMS.at(entry.span, movement=entry.movement.name.text))
    elif not segments and not weekly:
        problems.append(weeks.PRESCRIPTION_MISSING.at(entry.span, movement=entry.movement.name.text))
    else:
        return False
    return True


def _all_parts(entry: n.Entry, body: Iterable[n.Statement]) -> tuple[n.Part, ...]:
    own_lines = (part for line in body if isinstance(line.node, n.ModifierLine) for part in line.node.parts)
    return (*entry.prescription.parts, *own_lines)


def _segments(
    prescription: n.Prescription, in_circuit: bool, library: Library, problems: Problems
) -> tuple[LinkedSegment, ...] | None:
    raws = (_with_known_best(raw, library, problems) for raw in prescription.segments)
    linked = [_segment(raw, index == 0, in_circuit, problems) for index, raw in enumerate(raws)]
    kept = tuple(segment for segment in linked if segment is not None)
    return kept if len(kept) == len(linked) else None


def _with_known_best(raw: n.RawSegment, library: Library, problems: Problems) -> n.RawSegment:
    """The segment with the movement whose best it takes a percent of by the name it is kept under."""
    intensity = raw.intensity
    if not isinstance(intensity, n.RawIntensity) or intensity.of is None:
        return raw
    movement = library.movement(intensity.of, problems)
    if movement is None:
        return replace(raw, intensity=replace(intensity, of=None))
    return replace(raw, intensity=replace(intensity, of=n.Name(movement.name, intensity.of.span)))


def _segment(raw: n.RawSegment, first: bool, in_circuit: bool, problems: Problems) -> LinkedSegment | None:
    before = len(problems)
    sets = sets_track(raw.sets, problems) if raw.sets is not None else None
    if raw.sets is None and not in_circuit:
        problems.append(weeks.SETS_MISSING.at(raw.reps.span, reps=raw.reps.span.text))
    reps = reps_track(raw.reps, problems)
    intensity = intensity_track(raw.intensity, problems, first=first) if raw.intensity is not None else None
    if reps is None or len(problems) > before:
        return None
    return LinkedSegment(sets, reps, intensity, raw.span, raw.is_drop)


def _modifiers(parts: tuple[n.Part, ...], library: Library, problems: Problems) -> Modifiers:
    made = Modifiers()
    seen: set[str] = set()
    last: n.Part | None = None
    for part in parts:
        if isinstance(part, n.Loose):
            if not isinstance(last, n.WarmUpPart):
                problems.append(weeks.STRAY_PART.at(part.span, found=part.span.text, help=_meant(part)))
            else:
                made = replace(made, warm_up=((*(made.warm_up or ()), *_warm_up_step(part, problems))))
            continue
        last = part
        word = kind_of(n.ModifierLine(part.span, (part,)))
        if word in seen:
            problems.append(structure.SETTING_TWICE.at(part.span, word=word))
        seen.add(word)
        made = _with(made, part, library, problems)
    return made


def _with(made: Modifiers, part: n.Part, library: Library, problems: Problems) -> Modifiers:
    match part:
        case n.RestPart():
            return replace(made, rest=rest_track(part, problems))
        case n.TempoPart(phases=(lowering, bottom, lifting, top)):
            return replace(made, tempo=Tempo((lowering, bottom, lifting, top)), tempo_span=part.span)
        case n.WarmUpPart():
            return replace(made, warm_up=tuple(_warm_up_step(part.first, problems)) if part.first else ())
        case n.ItemPart(word="limit" | "limit effort"):
            return replace(made, limit=rpe(part.item, problems, "a limit"), limit_span=part.span)
        case n.ItemPart(word="pause"):
            return replace(made, pause=seconds(part.item, problems))
        case n.ItemPart():
            return replace(made, every=seconds(part.item, problems))
        case n.AdvancePart():
            return _with_progression(made, part, library, problems)
        case n.FlagPart(word="test"):
            return replace(made, test=True)
        case n.FlagPart():
            return replace(made, optional=True)
        case _:
            return made


def _with_progression(made: Modifiers, part: n.AdvancePart, library: Library, problems: Problems) -> Modifiers:
    from setwright.link.advances import as_written, linked_progression  # few plans advance by a progression

    progression = linked_progression(part, library, problems)
    return replace(made, advance=as_written(part), advance_span=part.span, progression=progression)


def _check_progressions(
    modifiers: Modifiers,
    segments: tuple[LinkedSegment, ...],
    weekly: tuple[WeeklyForm, ...],
    group: LinkedGroup | None,
    problems: Problems,
) -> None:
    for asked in (modifiers, *(form.modifiers for form in weekly)):
        if asked.progression is not None and asked.advance_span is not None:
            from setwright.link.advances import check_fit

            check_fit(asked.progression, segments, bool(weekly), group, asked.advance_span, problems)


def _warm_up_step(step: n.Loose, problems: Problems) -> list[WarmUpStep]:
    if step.reps is None or step.first.unit != "%" or step.effort is not None:
        problems.append(weeks.WARM_UP_STEP.at(step.span, found=step.span.text))
        return []
    share = percent(step.first, problems, "a warm-up step", 100)
    count = whole(step.reps, problems, "repetitions (`5`)", 100)
    if share is None or count is None:
        return []
    return [WarmUpStep(share, Reps(RepsKind.COUNT, Fraction(count), Fraction(count)), step.span)]


def _weekly(
    entry: n.Entry, body: Iterable[n.Statement], in_circuit: bool, library: Library, problems: Problems
) -> tuple[WeeklyForm, ...] | None:
    forms: list[WeeklyForm] = []
    seen: set[int] = set()
    complete = True
    for line in body:
        if not isinstance(line.node, n.WeekEntry):
            continue
        numbers = week_numbers(line.node.weeks, problems)
        for number in numbers:
            if number in seen:
                problems.append(weeks.WEEK_TWICE.at(line.node.span, week=number))
        seen.update(numbers)
        _refuse_tracks(line.node.prescription, problems)
        segments = _segments(line.node.prescription, in_circuit, library, problems)
        modifiers = _modifiers(line.node.prescription.parts, library, problems)
        if segments == ():
            problems.append(weeks.PRESCRIPTION_MISSING.at(line.node.span, movement=entry.movement.name.text))
        if segments:
            forms.append(WeeklyForm(numbers, segments, modifiers, line.node.span))
        else:
            complete = False
    return tuple(forms) if complete else None


def _meant(part: n.Loose) -> str | None:
    """Help for a part that belongs to nothing: another spelling, a decimal comma, or an intensity without its mark."""
    span, item = part.span, part.first
    line = span.source.line(span.line)
    if item.word is not None:
        return spelled(item.word)
    before = line[: span.start].rstrip()
    if help_ := decimal_comma(line, len(before) - 1) if before == line[: span.start] else None:
        return help_
    if item.unit in _INTENSE or item.rpe:
        return f"How hard or heavy stands after `@`: `@ {span.text}`."
    return None if item.unit else "Values that follow each other week by week stand in brackets: `[70, 75, 80]%`."


def week_numbers(items: Iterable[n.Item], problems: Problems, most: int = LONGEST_BLOCK) -> tuple[int, ...]:
    """`1, 3-4` as 1, 3, 4."""
    numbers: list[int] = []
    for item in items:
        low, high = item.low, item.high
        if item.word is not None:
            problems.append(names.PARAMETER_OUTSIDE_TEMPLATE.at(item.span, word=item.word, needed="a value"))
        elif (
            low is None or high is None or item.unit or item.rpe or item.at_least
            or low.denominator != 1 or high.denominator != 1 or not 1 <= low <= high <= most
        ):  # fmt: skip
            problems.append(weeks.WRONG_UNIT.at(item.span, found=item.span.text, wanted="weeks (`4`, `3-4`)"))
        else:
            numbers.extend(range(int(low), int(high) + 1))
    return tuple(numbers)


def _refuse_tracks(prescription: n.Prescription, problems: Problems) -> None:
    tracks: list[object] = [part.track for part in prescription.parts if isinstance(part, n.RestPart)]
    for segment in prescription.segments:
        tracks += [segment.sets, segment.reps, segment.intensity.track if segment.intensity is not None else None]
    for track in tracks:
        if isinstance(track, n.RawTrack) and track.kind is not n.TrackKind.FIXED:
            problems.append(weeks.TRACK_IN_WEEK_LINE.at(track.span, track=track.span.text))


def _swaps(body: Iterable[n.Statement], library: Library, problems: Problems) -> tuple[str, ...]:
    found = (
        library.movement(name, problems)
        for line in body
        if isinstance(line.node, n.SwapForLine)
        for name in line.node.names
    )
    return tuple(movement.name for movement in found if movement is not None)


def _check_pause(
    modifiers: Modifiers,
    entry: n.Entry,
    segments: tuple[LinkedSegment, ...],
    weekly: tuple[WeeklyForm, ...],
    problems: Problems,
) -> None:
    every: list[Track[Reps]] = [segment.reps for segment in segments]
    every += [segment.reps for form in weekly for segment in form.segments]
    has_cluster = any(value.kind is RepsKind.CLUSTER for track in every for value in track.values)
    if modifiers.pause is not None and not has_cluster:
        problems.append(weeks.PAUSE_WITHOUT_CLUSTER.at(entry.span))
