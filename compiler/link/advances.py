"""`advance NAME(...)` on a line: the progression that it means, and whether the line gives it something to move.

Comes in: the part and the line's segments. Goes out: a `Progression` whose amounts all have values.
"""

from __future__ import annotations

from collections.abc import Iterable

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import progressions as codes
from setwright.link.library import Library
from setwright.link.model import LinkedGroup, LinkedSegment, Track
from setwright.link.parameters import Value, bound_parameters
from setwright.link.progressions import read_progression, reserved_words
from setwright.prescription import Bodyweight, Effort, Intensity, PercentOfBest, RepsKind, Weight
from setwright.progression.model import How, Moved, Percent, Progression, Subject
from setwright.quantities import Mass, plain
from setwright.source import Span
from setwright.syntax import nodes as n

Problems = list[Diagnostic]

_CALLED = {Moved.LOAD: "load", Moved.REPS: "repetitions", Moved.SETS: "sets", Moved.EFFORT: "effort"}


def linked_progression(part: n.AdvancePart, library: Library, problems: Problems) -> Progression | None:
    """What `advance NAME(...)` means, or None after saying why it means nothing."""
    declared = library.progression(part.rule)
    if declared is None:
        help_ = (
            library.near_progressions(part.rule)
            or "Perhaps a `use` line is missing; `setwright library progression` lists the shipped ones."
        )
        problems.append(codes.UNKNOWN_PROGRESSION.at(part.rule.span, name=part.rule.text, help=help_))
        return None
    statement = library.statement(declared)
    assert isinstance(statement.node, n.Head)
    bindings = bound_parameters(statement.node, part.rule, part.arguments, reserved_words(library), problems)
    return read_progression(statement, bindings, problems) if bindings is not None else None


def as_written(part: n.AdvancePart) -> str:
    """The part as a line has it; what a template's parameter stands for in place of the parameter."""
    given = ", ".join(f"{argument.name.text}: {_text(argument.value)}" for argument in part.arguments)
    return f"advance {part.rule.text}" + (f"({given})" if given else "")


def check_fit(
    progression: Progression,
    segments: tuple[LinkedSegment, ...],
    is_weekly: bool,
    group: LinkedGroup | None,
    span: Span,
    problems: Problems,
) -> None:
    """Whether the line begins with something that the progression can move, and nothing else moves it."""
    if is_weekly:
        problems.append(codes.ADVANCE_AND_WEEKS.at(span, name=progression.name))
    if not segments:
        return
    first = segments[0]
    for moved, track in _tracks(first):
        if progression.moves(moved) and track.kind is not n.TrackKind.FIXED:
            related = (Related(track.span, "the track stands here"),)
            problems.append(
                codes.ADVANCE_AND_TRACK.at(
                    span, track=track.span.text, what=_CALLED[moved], name=progression.name, related=related
                )
            )
    for does, has in _misfits(progression, first, group):
        problems.append(codes.ADVANCE_DOES_NOT_FIT.at(span, name=progression.name, does=does, has=has))


def _text(value: Value | None) -> str:
    if not isinstance(value, n.Item) or value.low is None or any(mark.isdigit() for mark in value.span.text):
        return value.span.text if value is not None else ""
    space = "" if value.unit in (None, "%") else " "
    return f"{'RPE ' if value.rpe else ''}{plain(value.low)}{space}{value.unit or ''}"


# ---- fit -----------------------------------------------------------------------------------------


def _tracks(first: LinkedSegment) -> Iterable[tuple[Moved, Track[object]]]:
    found: list[tuple[Moved, object]] = [(Moved.SETS, first.sets), (Moved.REPS, first.reps)]
    is_effort = any(isinstance(value, Effort) for value in _intensities(first))
    found.append((Moved.EFFORT if is_effort else Moved.LOAD, first.intensity))
    return ((moved, track) for moved, track in found if isinstance(track, Track))


def _intensities(first: LinkedSegment) -> tuple[Intensity, ...]:
    return first.intensity.values if first.intensity is not None else ()


def _misfits(progression: Progression, first: LinkedSegment, group: LinkedGroup | None) -> Iterable[tuple[str, str]]:
    """What the progression does and the line has instead."""
    reps, intensities = first.reps.values, _intensities(first)
    subjects = {condition.subject for condition in progression.conditions}
    if progression.moves(Moved.SETS) and group is not None and group.rounds is not None:
        yield "moves the sets", "stands in a circuit, whose rounds say how many"
    uncounted = next((value for value in reps if not value.is_repetitions), None)
    if uncounted is not None and (progression.moves(Moved.REPS) or subjects - {Subject.EFFORT}):
        yield "counts repetitions", f"asks for `{uncounted}`"
    elif progression.moves(Moved.REPS) and any(value.kind is RepsKind.CLUSTER for value in reps):
        yield "moves the repetitions", "has them in a cluster"
    asks_effort = any(isinstance(value, Effort) for value in intensities)
    if progression.moves(Moved.EFFORT) and not asks_effort:
        yield "moves the effort", "asks for none"
    elif not asks_effort and any(
        condition.subject is Subject.EFFORT and condition.mark is not None for condition in progression.conditions
    ):
        yield "compares the effort with its target", "asks for none"
    loads = [action for rule in progression.rules for action in rule.actions if action.moved is Moved.LOAD]
    by_mass = any(isinstance(action.amount, Mass) for action in loads)
    if by_mass and any(isinstance(value, PercentOfBest) for value in intensities):
        yield "moves the load by a mass", "is a percent of the best"
    to_percent = any(isinstance(action.amount, Percent) and action.how is How.TO for action in loads)
    if to_percent and any(isinstance(value, Weight | Bodyweight) for value in intensities):
        yield "sets the load to a percent of the best", "states a load"
