"""A `progression` as declared: its rules read, with the values of its parameters put in.

Comes in: a statement, and what each parameter stands for. Goes out: a `Progression`, or what is wrong with its lines.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import progressions as codes
from setwright.diagnostics.catalogue.structure import TOO_LARGE
from setwright.link.library import Library
from setwright.link.parameters import Value, bound_parameters
from setwright.link.values import HEAVIEST
from setwright.progression.model import (
    Action,
    Amount,
    Compare,
    Condition,
    How,
    Mark,
    Moved,
    Percent,
    Progression,
    Rule,
    Subject,
)
from setwright.quantities import Mass, Unit
from setwright.record import replace
from setwright.suggest import did_you_mean
from setwright.syntax import nodes as n

Problems = list[Diagnostic]

MOST_TIMES = 100
MOST_RULES = 50
_MARKS = {mark.value: mark for mark in Mark}
_COMPARE = {"≤": "<=", "≥": ">="}
_WANTED = {
    Moved.LOAD: "a mass or a percent (`2.5 kg`, `5 lb`, `5%`)",
    Moved.REPS: "a whole number, or after `=` also `top` or `bottom`",
    Moved.SETS: "a whole number",
    Moved.EFFORT: "a step on the RPE scale (`0.5`), or after `=` an effort (`RPE 8`)",
}
_NUMBERS = "a load, a percent, an effort or a number"


def check_progression(statement: n.Statement, library: Library, problems: Problems) -> None:
    """A declaration by itself, with the defaults of its parameters."""
    head = statement.node
    assert isinstance(head, n.Head)
    stated = tuple(parameter for parameter in head.arguments if parameter.value is not None)
    bindings = bound_parameters(replace(head, arguments=stated), head.name, (), reserved_words(library), problems)
    read_progression(statement, bindings, problems)


def read_progression(
    statement: n.Statement, bindings: Mapping[str, Value] | None, problems: Problems
) -> Progression | None:
    """The rules with the parameters' values put in; None where one has no meaning, or a parameter of it no value."""
    head = statement.node
    assert isinstance(head, n.Head)
    before = len(problems)
    if len(statement.body) > MOST_RULES:  # sheets say all of them under each line
        what = f"rules of {head.name.text}"
        problems.append(TOO_LARGE.at(head.name.span, what=what, count=len(statement.body), most=MOST_RULES))
        return None
    defaults = {parameter.name.text: parameter.value for parameter in head.arguments}
    reader = _Reader(bindings, defaults, problems)
    rules: list[Rule] = []
    closed = False
    for line in statement.body:
        if isinstance(line.node, n.ProgressionLine):
            if closed:
                problems.append(codes.UNREACHABLE_RULE.at(line.node.span))
            rule = reader.rule(line.node)
            rules.extend([rule] if rule is not None and not closed else [])
            closed = closed or line.node.condition is None
    if not statement.body:
        problems.append(codes.NO_RULES.at(head.name.span, name=head.name.text))
    if any(problem.severity.value == "error" for problem in problems[before:]) or not rules:
        return None
    return Progression(head.name.text, tuple(rules))


def reserved_words(library: Library) -> frozenset[str]:
    """What no parameter of a progression may be called."""
    return library.reader.words | _MARKS.keys()


# ---- helpers -------------------------------------------------------------------------------------


class _Reader:
    """Reads the lines of one progression."""

    def __init__(
        self, bindings: Mapping[str, Value] | None, defaults: Mapping[str, Value | None], problems: Problems
    ) -> None:
        self._bindings = bindings
        self._defaults = defaults
        self._problems = problems

    def rule(self, line: n.ProgressionLine) -> Rule | None:
        """One line; None where something in it has no meaning or no value yet."""
        condition = self._condition(line.condition) if line.condition is not None else None
        times = self._count(line.times, "times running", "a whole number", MOST_TIMES) if line.times else 1
        actions = [self._action(part) for part in line.actions if part.word != "hold"]
        kept = tuple(action for action in actions if action is not None)
        if times is None or len(kept) < len(actions) or (condition is None and line.condition is not None):
            return None
        return Rule(condition, int(times), kept)

    def _condition(self, raw: n.Condition) -> Condition | None:
        subject, compare = Subject(raw.subject), Compare(_COMPARE.get(raw.compare, raw.compare))
        operand = raw.operand
        marks = {"target": Mark.TARGET} if subject is Subject.EFFORT else _MARKS
        if operand.mark is None and operand.item is not None and operand.item.word in marks:
            return Condition(subject, compare, marks[operand.item.word], Fraction(0))
        if operand.item is None:
            return None
        if operand.mark is None:
            number = self._compared(operand.item, subject)
            return Condition(subject, compare, None, number) if number is not None else None
        mark = marks.get(operand.mark.text)
        if mark is None:
            self._unknown(operand.mark, operand.mark.text, marks)
        step = self._step(operand.item) if subject is Subject.EFFORT else self._reps(operand.item)
        return Condition(subject, compare, mark, operand.sign * step) if mark is not None and step is not None else None

    def _compared(self, item: n.Item, subject: Subject) -> Fraction | None:
        if subject is Subject.EFFORT:
            return self._effort(item, "a comparison of effort", "`target`, or an effort (`RPE 8`)", ("target",))
        wanted = "`top`, `bottom`, `target` or a whole number"
        return self._count(item, "a comparison of repetitions", wanted, 1000, tuple(_MARKS))

    def _action(self, part: n.ActionPart) -> Action | None:
        moved = Moved(part.word)
        if part.how not in {how.value for how in How}:
            wanted = f"`{part.word} = ...`, `{part.word} + ...` or `{part.word} - ...`"
            self._problems.append(
                codes.WRONG_AMOUNT.at(part.span, found=part.span.text, what="an action", wanted=wanted)
            )
            return None
        how = How(part.how)
        assert part.item is not None
        amount = self._amount(part.item, moved, how)
        return Action(moved, how, amount) if amount is not None else None

    def _amount(self, item: n.Item, moved: Moved, how: How) -> Amount | None:
        match moved:
            case Moved.LOAD:
                return self._load(item)
            case Moved.REPS if how is How.TO and item.word in ("top", "bottom"):
                return _MARKS[item.word]
            case Moved.REPS:
                return self._reps(item)
            case Moved.SETS:
                return self._count(item, "sets", _WANTED[moved], 100)
            case Moved.EFFORT if how is How.TO:
                return self._effort(item, "effort", "an effort (`RPE 8`)", ())
            case Moved.EFFORT:
                return self._step(item)

    def _load(self, item: n.Item) -> Amount | None:
        value = self._value(item, ())
        if value is None:
            return None
        low = value.low or Fraction(0)
        if _is_single(value) and value.unit == "%" and 0 < low <= 100:
            return Percent(low)
        if _is_single(value) and value.unit in HEAVIEST and 0 < low <= HEAVIEST[value.unit]:
            return Mass(low, Unit(value.unit))
        self._wrong(value, item, "load", _WANTED[Moved.LOAD])
        return None

    def _reps(self, item: n.Item) -> Fraction | None:
        return self._count(item, "repetitions", _WANTED[Moved.REPS], 1000)

    def _step(self, item: n.Item) -> Fraction | None:
        value = self._value(item, ())
        if value is None:
            return None
        low = value.low or Fraction(0)
        if _is_single(value) and value.unit is None and 0 < low < 10:
            return low
        self._wrong(value, item, "effort", _WANTED[Moved.EFFORT])
        return None

    def _effort(self, item: n.Item, what: str, wanted: str, also: Iterable[str]) -> Fraction | None:
        value = self._value(item, also)
        if value is None:
            return None
        low = value.low or Fraction(0)
        if _is_single(value) and value.rpe and value.unit is None and 1 <= low <= 10:
            return low
        self._wrong(value, item, what, wanted)
        return None

    def _count(self, item: n.Item, what: str, wanted: str, most: int, also: Iterable[str] = ()) -> Fraction | None:
        value = self._value(item, also)
        if value is None:
            return None
        low = value.low or Fraction(0)
        if _is_single(value) and value.unit is None and not value.rpe and low.denominator == 1 and 0 < low <= most:
            return low
        self._wrong(value, item, what, wanted)
        return None

    def _value(self, item: n.Item, also: Iterable[str]) -> n.Item | None:
        """The item, or what stands for it; None where it is no amount, or a parameter that has no value here."""
        if item.word is None:
            return item
        if item.word not in self._defaults:
            self._unknown(item, item.word, also)
            return None
        given = self._bindings.get(item.word) if self._bindings is not None else None
        if isinstance(given, n.Name):
            related = (Related(item.span, "it is used here"),)
            self._problems.append(
                codes.WRONG_AMOUNT.at(given.span, found=given.text, what="a rule", wanted=_NUMBERS, related=related)
            )
            return None
        return given

    def _unknown(self, at: n.Item | n.Name, word: str, also: Iterable[str]) -> None:
        near = did_you_mean(word, (*self._defaults, *also))
        known = ", ".join(f"`{name}`" for name in (*self._defaults, *also))
        self._problems.append(
            codes.UNKNOWN_AMOUNT.at(at.span, word=word, help=near or (f"It knows {known}." if known else None))
        )

    def _wrong(self, value: n.Item, use: n.Item, what: str, wanted: str) -> None:
        """Told where the value was given, or where the progression itself uses its own default."""
        at, other, why = value, use, "it is used here"
        if use.word is not None and value is self._defaults.get(use.word):
            at, other, why = use, value, "its value stands here"
        related = (Related(other.span, why),) if value is not use else ()
        self._problems.append(
            codes.WRONG_AMOUNT.at(at.span, found=at.span.text, what=what, wanted=wanted, related=related)
        )


def _is_single(item: n.Item) -> bool:
    return item.low is not None and item.low == item.high and not item.at_least and not item.per_side
