"""Expanded plans made by hand, for tests of what reads them.

Comes in: names and numbers as terse as can be. Goes out: `Plan`, `Promise` and their parts. A span's text says whose
it is: the movement's name for a line, the slot for a session, the rule's words for a rule.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from setwright.diagnostics import Severity
from setwright.plan import (
    BlockSpan,
    Group,
    GroupKind,
    Line,
    Movement,
    Muscle,
    Plan,
    Segment,
    SegmentKind,
    Session,
    Week,
    WeekKind,
)
from setwright.prescription import Effort, Intensity, PercentOfBest, Reps, RepsKind, Rest, Tempo
from setwright.quantities import Unit
from setwright.record import replace
from setwright.rules import Bound, BoundUnit, Promise, Rule, Scope, Waiver, Where
from setwright.source import Source, Span

WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


def stands(text: str) -> Span:
    """A place whose text is `text`."""
    return Span(Source("test.plan", text), 1, 0, len(text))


def movement(name: str, **works: float) -> Movement:
    """A movement; `works` by muscle, `_` for `-`."""
    credits = tuple((word.replace("_", "-"), Fraction(weight)) for word, weight in works.items())
    return Movement(name, stands(name), works=credits)


BENCH = movement("Bench Press", chest=1, triceps=0.5, front_delts=0.5)
SQUAT = movement("Back Squat", quads=1, glutes=1)
PUSHDOWN = movement("Triceps Pushdown", triceps=1)
CURL = movement("Barbell Curl", biceps=1)

MUSCLES = tuple(
    Muscle(word, title)
    for word, title in (
        ("chest", "Chest"),
        ("front-delts", "Front deltoids"),
        ("biceps", "Biceps"),
        ("triceps", "Triceps"),
        ("glutes", "Glutes"),
        ("quads", "Quads"),
    )
)
GROUPS = (("arms", ("biceps", "triceps")),)


def rpe(low: float, high: float | None = None) -> Effort:
    """An effort, or a range of it."""
    return Effort(Fraction(low), Fraction(low if high is None else high))


def percent(value: float) -> PercentOfBest:
    """A percent of best."""
    return PercentOfBest(Fraction(value))


def reps(low: int, high: int | None = None, kind: RepsKind = RepsKind.COUNT, **more: Any) -> Reps:
    """A repetition count, range, time or distance."""
    return Reps(kind, Fraction(low), Fraction(low if high is None else high), **more)


def segment(
    sets: int,
    of: Reps | int = 5,
    intensity: Intensity | None = None,
    kind: SegmentKind = SegmentKind.WORK,
) -> Segment:
    """Sets that are alike."""
    return Segment(kind, sets, of if isinstance(of, Reps) else reps(of), intensity, stands("segment"))


def line(movement: Movement, *segments: Segment | int, **more: Any) -> Line:
    """A line; a bare number means so many sets of five."""
    made = tuple(each if isinstance(each, Segment) else segment(each) for each in segments)
    return Line(movement, made, stands(movement.name), **more)


def rest(low: int, high: int | None = None) -> Rest:
    """A rest in seconds."""
    return Rest(Fraction(low), Fraction(low if high is None else high))


def tempo(*phases: int | None) -> Tempo:
    """A tempo, None for X."""
    lowering, bottom, lifting, top = phases
    return Tempo((lowering, bottom, lifting, top))


def superset(letter: str = "A", rest: Rest | None = None) -> Group:
    """A superset for `line(..., group=)`."""
    return Group(GroupKind.SUPERSET, letter, rest)


def day(slot: str, *lines: Line) -> Session:
    """A session on a weekday or a numbered day."""
    offset = WEEKDAYS.index(slot) if slot in WEEKDAYS else int(slot) - 1
    return Session(slot, offset, lines, stands(slot))


def week(*sessions: Session, kind: WeekKind = WeekKind.WORKING, block: str = "Base") -> Week:
    """A week; `plan` numbers it."""
    return Week(0, block, 0, kind, sessions, stands(f"block {block}"))


def deload(*sessions: Session, block: str = "Base") -> Week:
    """A deload week."""
    return week(*sessions, kind=WeekKind.DELOAD, block=block)


def plan(*weeks: Week, microcycle: int = 7, muscles: tuple[Muscle, ...] = MUSCLES) -> Plan:
    """A plan of these weeks, numbered through the plan and through their blocks."""
    numbered: list[Week] = []
    for number, each in enumerate(weeks, 1):
        in_block = 1 + sum(before.block == each.block for before in numbered)
        numbered.append(replace(each, number=number, number_in_block=in_block))
    names = dict.fromkeys(each.block for each in numbered)
    blocks = tuple(_block(name, [each.number for each in numbered if each.block == name]) for name in names)
    return Plan(
        "Test", stands("plan"), Unit.KG, tuple(numbered), blocks, muscles=muscles, groups=GROUPS, microcycle=microcycle
    )


def _block(name: str, numbers: list[int]) -> BlockSpan:
    return BlockSpan(name, numbers[0], numbers[-1], stands(f"block {name}"))


def rule(
    measure: str,
    subjects: str = "",
    low: float | None = None,
    high: float | None = None,
    unit: BoundUnit = BoundUnit.NUMBER,
    *,
    strict: bool = False,
    severity: Severity = Severity.WARNING,
    reason: str | None = None,
    ruleset: str | None = "house",
    **where: Any,
) -> Rule:
    """A rule; `subjects` as after `for` (`every muscle`, `chest, quads`, nothing)."""
    bound = Bound(_number(low), _number(high), unit, _bound_text(low, high, unit, strict), strict)
    scope, words = _scope(subjects)
    return Rule(severity, measure, scope, words, bound, Where(**where), reason, stands(f"rule {measure}"), ruleset)


def waiver(measure: str, subjects: str = "", **where: Any) -> Waiver:
    """A waiver."""
    scope, words = _scope(subjects)
    return Waiver(measure, scope, words, Where(**where), "Travel.", stands(f"waive {measure}"))


def promise(*rules: Rule, waivers: tuple[Waiver, ...] = (), **more: Any) -> Promise:
    """What a plan is held to."""
    return Promise(rules, waivers, **more)


def _number(value: float | None) -> Fraction | None:
    return None if value is None else Fraction(value)


def _scope(subjects: str) -> tuple[Scope, tuple[str, ...]]:
    if subjects == "every muscle":
        return Scope.EVERY_MUSCLE, ()
    if ":" in subjects:
        return Scope.RATIO, tuple(side.strip() for side in subjects.split(":"))
    words = tuple(word.strip() for word in subjects.split(",") if word.strip())
    return (Scope.MUSCLES if words else Scope.PLAN), words


def _bound_text(low: float | None, high: float | None, unit: BoundUnit, strict: bool) -> str:
    lead, tail = ("RPE ", "") if unit is BoundUnit.RPE else ("", unit.value if unit is BoundUnit.PERCENT else "")
    if unit in (BoundUnit.HOURS, BoundUnit.MINUTES):
        tail = f" {unit.value}"
    if low is not None and high is not None:
        return f"{lead}{low}-{high}{tail}"
    sign, end = (">", low) if high is None else ("<", high)
    return f"{sign}{'' if strict else '='} {lead}{end}{tail}"
