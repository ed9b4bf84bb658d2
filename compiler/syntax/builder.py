"""Turns what the parser reduces into syntax nodes, one line at a time.

Comes in: lark's tokens, with columns within the line. Goes out: a node of `nodes`, with spans in the file.
"""

# Lark calls a method for each rule of the grammar with the list of what the rule was made of.

from __future__ import annotations

from datetime import date
from fractions import Fraction
from typing import Any

from lark import Token, Transformer

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import syntax as codes
from setwright.record import replace
from setwright.source import Source, Span
from setwright.syntax import nodes as n
from setwright.syntax.nodes import Item, Name, RawTrack, Tail, TrackKind

LARGEST_DIGITS = 12  # more digits than any count, load or year; keeps arithmetic on hostile input small

Children = list[Any]


class Builder(Transformer[Token, n.Node]):
    """Callbacks for each rule. `at_line` says which line the columns belong to."""

    def __init__(self) -> None:
        super().__init__(visit_tokens=False)
        self._problems: list[Diagnostic] = []
        self._source = Source("", "")
        self._line = 1
        self._columns: tuple[int, ...] | range = range(0)

    def at_line(self, source: Source, line: int, columns: tuple[int, ...] | range) -> None:
        """What follows stands in `line` of `source`; `columns` maps a column of the parsed text to the file's."""
        self._source, self._line, self._columns = source, line, columns

    def taken_problems(self) -> tuple[Diagnostic, ...]:
        """What was found wrong with values since the last call."""
        taken, self._problems = tuple(self._problems), []
        return taken

    def span(self, first: int, end: int) -> Span:
        """The span of the parsed text's columns `first` to `end`."""
        return Span(self._source, self._line, self._columns[first], self._columns[end])

    def _of(self, token: Token) -> Span:
        return self.span(token.start_pos or 0, token.end_pos or 0)

    def _over(self, children: Children) -> Span:
        spans = [span for child in children if (span := self._span_of(child)) is not None]
        return Span(self._source, self._line, spans[0].start, spans[-1].end)

    def _span_of(self, child: Any) -> Span | None:
        if isinstance(child, Token):
            return self._of(child)
        if isinstance(child, list):
            return self._over(child) if child else None
        return getattr(child, "span", None)

    @property
    def _whole(self) -> Span:
        return self.span(0, len(self._columns) - 1)

    def _name(self, token: Token) -> Name:
        return Name(unquoted(token) if token.type == "STRING" else str(token), self._of(token))

    def _integer(self, token: Token) -> int:
        if len(token) > LARGEST_DIGITS:
            self._problems.append(codes.NUMBER_TOO_LARGE.at(self._of(token), digits=len(token)))
            return 0
        return int(token)

    def _date(self, token: Token) -> date | None:
        try:
            return date.fromisoformat(str(token))
        except ValueError:
            self._problems.append(codes.NO_SUCH_DATE.at(self._of(token), date=str(token)))
            return None

    # ---- words and numbers -----------------------------------------------------------------------

    def start(self, children: Children) -> n.Node:
        return children[0]  # type: ignore[no-any-return]

    def name(self, children: Children) -> Name:
        return self._name(children[0])

    def words(self, children: Children) -> tuple[Name, ...]:
        return tuple(self._name(token) for token in children)

    def number(self, children: Children) -> tuple[Fraction, Span]:
        token = children[0]
        if len(token) > LARGEST_DIGITS:
            self._problems.append(codes.NUMBER_TOO_LARGE.at(self._of(token), digits=len(token)))
            return Fraction(0), self._of(token)
        return Fraction(str(token)), self._of(token)

    def cluster(self, children: Children) -> tuple[int, ...]:
        return tuple(self._integer(token) for token in children if token.type == "INT")

    def value(self, children: Children) -> dict[str, Any]:
        first = children[0]
        if isinstance(first, Token):
            span = self._of(first)
            match first.type:
                case "AT_LEAST":
                    low = Fraction(self._integer(Token("INT", first[:-1], first.start_pos, end_pos=first.end_pos)))
                    return {"span": span, "low": low, "high": low, "at_least": True}
                case "MAX":
                    return {"span": span, "is_max": True}
                case _:
                    return {"span": span, "word": str(first)}
        if isinstance(first[0], int):
            return {"span": self._whole, "cluster": first}
        low, low_span = first
        high, high_span = children[-1]
        return {"span": Span(self._source, self._line, low_span.start, high_span.end), "low": low, "high": high}

    def unit(self, children: Children) -> Token:
        return children[0]  # type: ignore[no-any-return]

    def sign(self, children: Children) -> Token:
        return children[0]  # type: ignore[no-any-return]

    def item(self, children: Children) -> Item:
        facts: dict[str, Any] = {}
        tokens: list[Token] = []
        for child in children:
            if isinstance(child, dict):
                facts = child
                continue
            tokens.append(child)
            match child.type:
                case "RPE":
                    facts_rpe = True
                    facts = {**facts, "rpe": facts_rpe}
                case "PER_SIDE":
                    facts = {**facts, "per_side": True}
                case _:
                    facts = {**facts, "unit": str(child)}
        if tokens and tokens[0].type == "RPE":
            facts = {**facts, "rpe": True}
        spans = [facts["span"], *(self._of(token) for token in tokens)]
        start, end = min(span.start for span in spans), max(span.end for span in spans)
        return Item(**{**facts, "span": Span(self._source, self._line, start, end)})

    def fixed(self, children: Children) -> RawTrack:
        return RawTrack(TrackKind.FIXED, (children[0],), children[0].span)

    def ramp(self, children: Children) -> RawTrack:
        first, _, last = children
        return RawTrack(TrackKind.RAMP, (first, last), self._over(children))

    def steps(self, children: Children) -> RawTrack:
        return RawTrack(TrackKind.STEPS, (children[0], children[2]), self._over(children))

    def series(self, children: Children) -> RawTrack:
        items = [child for child in children if isinstance(child, Item)]
        tokens = {child.type: child for child in children if isinstance(child, Token)}
        shared: dict[str, Any] = {}
        if "RPE" in tokens:
            shared["rpe"] = True
        if "PER_SIDE" in tokens:
            shared["per_side"] = True
        for type_, token in tokens.items():
            if type_ not in ("RPE", "PER_SIDE", "ELLIPSIS", "REPEAT"):
                shared["unit"] = str(token)
        tail = Tail.HOLD if "ELLIPSIS" in tokens else Tail.REPEAT if "REPEAT" in tokens else Tail.NONE
        over = self._over(children)
        spread = tuple(with_shared(item, shared) for item in items)
        return RawTrack(TrackKind.SERIES, spread, over, tail)

    # ---- prescriptions ---------------------------------------------------------------------------

    def sets(self, children: Children) -> Any:
        return children[0]

    def reps(self, children: Children) -> Any:
        return children[0]

    def segment(self, children: Children) -> n.RawSegment:
        parts = [child for child in children if not isinstance(child, Token)]
        has_sets = any(isinstance(child, Token) and child.type == "X" for child in children)
        sets = parts.pop(0) if has_sets else None
        reps, *rest = parts
        return n.RawSegment(self._over(children), sets, reps, rest[0] if rest else None)

    def later(self, children: Children) -> n.RawSegment:
        segment: n.RawSegment = children[-1]
        if len(children) == 1:
            return segment
        return n.RawSegment(self._over(children), segment.sets, segment.reps, segment.intensity, is_drop=True)

    def intensity(self, children: Children) -> n.RawIntensity | n.RawBodyweight | n.RawChange:
        first = children[0]
        if isinstance(first, RawTrack):
            return n.RawIntensity(self._over(children), first, children[1] if len(children) > 1 else None)
        return first  # type: ignore[no-any-return]

    def bodyweight(self, children: Children) -> n.RawBodyweight:
        signed = [child for child in children if not (isinstance(child, Token) and child.type == "BODYWEIGHT")]
        if not signed:
            return n.RawBodyweight(self._whole if not children else self._over(children))
        return n.RawBodyweight(self._over(children), sign_of(signed[0]), signed[1])

    def change(self, children: Children) -> n.RawChange:
        return n.RawChange(self._over(children), sign_of(children[0]), children[1])

    def loose(self, children: Children) -> n.Loose:
        items = [child for child in children if isinstance(child, Item)]
        has_reps = any(isinstance(child, Token) and child.type == "X" for child in children)
        first, *rest = items
        reps = rest.pop(0) if has_reps else None
        return n.Loose(self._over(children), first, reps, rest[0] if rest else None)

    def part(self, children: Children) -> n.Part:
        return children[0]  # type: ignore[no-any-return]

    def modifier(self, children: Children) -> n.Part:
        return children[0]  # type: ignore[no-any-return]

    def rest(self, children: Children) -> n.RestPart:
        first = children[0]
        if isinstance(first, Token):
            minutes, seconds = str(first).split(":")
            if len(minutes) > 3:
                self._problems.append(codes.NUMBER_TOO_LARGE.at(self._of(first), digits=len(minutes)))
                minutes = "0"
            return n.RestPart(self._of(first), None, int(minutes) * 60 + int(seconds))
        return n.RestPart(first.span, first)

    def tempo(self, children: Children) -> n.TempoPart:
        token = children[0]
        phases = (None if phase in "xX" else self._phase(token, phase) for phase in str(token).split("-"))
        return n.TempoPart(self._of(token), tuple(phases))

    def _phase(self, token: Token, digits: str) -> int:
        if len(digits) > 3:
            self._problems.append(codes.NUMBER_TOO_LARGE.at(self._of(token), digits=len(digits)))
            return 0
        return int(digits)

    def warm_up(self, children: Children) -> n.WarmUpPart:
        return n.WarmUpPart(self._over(children) if children else self._whole, children[0] if children else None)

    def limit(self, children: Children) -> n.ItemPart:
        word = "limit effort" if len(children) > 1 else "limit"
        return n.ItemPart(self._over(children), word, children[-1])

    def pause(self, children: Children) -> n.ItemPart:
        return n.ItemPart(children[0].span, "pause", children[0])

    def every(self, children: Children) -> n.ItemPart:
        return n.ItemPart(children[0].span, "every", children[0])

    def advance(self, children: Children) -> n.AdvancePart:
        return n.AdvancePart(self._over(children), self._name(children[0]), children[1] if len(children) > 1 else ())

    def flag(self, children: Children) -> n.FlagPart:
        return n.FlagPart(self._of(children[0]), str(children[0]))

    def prescription(self, children: Children) -> n.Prescription:
        segments = tuple(child for child in children if isinstance(child, n.RawSegment))
        parts = tuple(child for child in children if not isinstance(child, n.RawSegment))
        return n.Prescription(self._over(children), segments, parts)

    # ---- a day's lines ---------------------------------------------------------------------------

    def movement(self, children: Children) -> n.MovementName:
        first = children[0]
        is_word = isinstance(first, Token)
        name = self._name(first) if is_word else first
        label = unquoted(children[1]) if len(children) > 1 else None
        return n.MovementName(name, label, self._over(children), is_word)

    def place(self, children: Children) -> n.Place:
        return n.Place(str(children[0]), children[1])

    def entry(self, children: Children, *, added: bool = False) -> n.Entry:
        movement: n.MovementName = children[0]
        prescription = next((child for child in children if isinstance(child, n.Prescription)), None)
        place = next((child for child in children if isinstance(child, n.Place)), None)
        return n.Entry(self._whole, movement, prescription or n.Prescription(movement.span), added, place)

    def add_entry(self, children: Children) -> n.Entry:
        return self.entry(children, added=True)

    def week_entry(self, children: Children) -> n.WeekEntry:
        return n.WeekEntry(self._whole, children[0], children[1])

    def on_weeks(self, children: Children) -> tuple[Item, ...]:
        return tuple(children)

    def every_weeks(self, children: Children) -> Item:
        return next(child for child in children if isinstance(child, Item))

    def drop(self, children: Children) -> n.DropLine:
        return n.DropLine(self._whole, children[-1])

    def drop_day(self, children: Children) -> n.DropLine:
        return n.DropLine(self._whole, None, children[-1])

    def swap(self, children: Children) -> n.SwapLine:
        return n.SwapLine(self._whole, children[0], children[1])

    def swap_for(self, children: Children) -> n.SwapForLine:
        return n.SwapForLine(self._whole, tuple(children))

    def group(self, children: Children) -> n.GroupHead:
        return children[0]  # type: ignore[no-any-return]

    def superset(self, children: Children) -> n.GroupHead:
        return n.GroupHead(self._whole, "superset", None, children[0] if children else None)

    def circuit(self, children: Children) -> n.GroupHead:
        return n.GroupHead(self._whole, "circuit", children[0], children[1] if len(children) > 1 else None)

    def add_group(self, children: Children) -> n.GroupHead:
        group: n.GroupHead = children[0]
        place = children[1] if len(children) > 1 else None
        return n.GroupHead(group.span, group.word, group.rounds, group.rest, added=True, place=place)

    def modifier_line(self, children: Children) -> n.ModifierLine:
        return n.ModifierLine(self._whole, tuple(children))

    def note(self, children: Children) -> n.NoteLine:
        return n.NoteLine(self._whole, unquoted(children[0]))

    # ---- plans -----------------------------------------------------------------------------------

    def language(self, children: Children) -> n.LanguageLine:
        return n.LanguageLine(self._whole, self._integer(children[0]))

    def use(self, children: Children) -> n.UseLine:
        first = children[0]
        prefix = self._name(children[1]) if len(children) > 1 else None
        if isinstance(first, Token):
            return n.UseLine(self._whole, self._name(first), None, prefix)
        return n.UseLine(self._whole, None, first, prefix)

    def path(self, children: Children) -> Name:
        return Name(".".join(str(token) for token in children), self._over(children))

    def plan(self, children: Children) -> n.Head:
        source = self._name(children[1]) if len(children) > 1 else None
        arguments = children[2] if len(children) > 2 else ()
        return n.Head(self._whole, "plan", self._name(children[0]), source=source, arguments=arguments)

    def template(self, children: Children) -> n.Head:
        arguments = children[1] if len(children) > 1 else ()
        return n.Head(self._whole, "template", self._name(children[0]), arguments=arguments)

    def block(self, children: Children) -> n.BlockHead:
        name, *others = children
        weeks = next((child for child in others if isinstance(child, Item)), None)
        like = next((child for child in others if isinstance(child, Name)), None)
        return n.BlockHead(self._whole, name, weeks, like)

    def slot(self, children: Children) -> Name:
        token = children[0]
        text = str(self._integer(token)) if token.type == "INT" else str(token)
        return Name(text, self._of(token))

    def day(self, children: Children) -> n.DayHead:
        slot, *others = children
        label = next((unquoted(child) for child in others if isinstance(child, Token)), None)
        like = next((child for child in others if isinstance(child, Name)), None)
        return n.DayHead(self._whole, slot, label, like)

    def deload(self, children: Children) -> n.DeloadLine:
        weeks = next((child for child in children if isinstance(child, tuple) and isinstance(child[0], Item)), ())
        every = next((child for child in children if isinstance(child, Item)), None)
        scalings = tuple(child for child in children if isinstance(child, tuple) and isinstance(child[0], str))
        return n.DeloadLine(self._whole, weeks, every, scalings)

    def scaling(self, children: Children) -> tuple[str, Item]:
        return str(children[0]), children[1]

    def follow(self, children: Children) -> n.FollowLine:
        return n.FollowLine(self._whole, children[0])

    def emphasis(self, children: Children) -> n.EmphasisLine:
        muscle, sign, sets = (child for child in children if not (isinstance(child, Token) and child.type == "SETS"))
        return n.EmphasisLine(self._whole, self._name(muscle), sign_of(sign), sets)

    def setting(self, children: Children) -> n.Setting:
        keyword, *values = children
        return n.Setting(self._whole, str(keyword), tuple(self._setting_values(values)))

    def _setting_values(self, values: Children) -> list[Name | Item | date]:
        plain: list[Name | Item | date] = []
        for value in values:
            if isinstance(value, tuple):
                plain.extend(value)
            elif not isinstance(value, Token):
                plain.append(value)
            elif value.type == "DATE":
                day = self._date(value)
                plain.extend([day] if day else [])
            else:
                plain.append(self._name(value))
        return plain

    # ---- libraries -------------------------------------------------------------------------------

    def muscle(self, children: Children) -> n.Head:
        return self._titled("muscle", children)

    def equipment(self, children: Children) -> n.Head:
        return self._titled("equipment", children)

    def _titled(self, word: str, children: Children) -> n.Head:
        title = unquoted(children[1]) if len(children) > 1 else None
        return n.Head(self._whole, word, self._name(children[0]), title=title)

    def muscle_group(self, children: Children) -> n.MuscleGroupLine:
        title = unquoted(children[1]) if isinstance(children[1], Token) else None
        return n.MuscleGroupLine(self._whole, self._name(children[0]), title, children[-1])

    def exercise(self, children: Children) -> n.Head:
        return n.Head(self._whole, "exercise", children[0], like=children[1] if len(children) > 1 else None)

    def works(self, children: Children) -> n.WorksLine:
        return n.WorksLine(self._whole, tuple(children))

    def credit(self, children: Children) -> tuple[Name, Fraction]:
        return self._name(children[0]), children[1][0]

    def best_from(self, children: Children) -> n.BestFromLine:
        return n.BestFromLine(self._whole, children[0], children[1])

    # ---- rules -----------------------------------------------------------------------------------

    def rules(self, children: Children) -> n.Head:
        return n.Head(self._whole, "rules", self._name(children[0]))

    def every_muscle(self, children: Children) -> n.SubjectPart:
        return n.SubjectPart("every")

    def some_muscles(self, children: Children) -> n.SubjectPart:
        return n.SubjectPart("some", children[0])

    def ratio(self, children: Children) -> n.SubjectPart:
        return n.SubjectPart("ratio", tuple(self._name(token) for token in children))

    def bound(self, children: Children) -> tuple[str | None, Item]:
        return (str(children[0]) if len(children) > 1 else None), children[-1]

    def in_weeks(self, children: Children) -> n.WherePart:
        return n.WherePart("weeks", children[-1])

    def in_every_week(self, children: Children) -> n.WherePart:
        return n.WherePart("every")

    def in_block(self, children: Children) -> n.WherePart:
        return n.WherePart("block", block=children[-1])

    def after_sets(self, children: Children) -> n.WherePart:
        return n.WherePart("after", tuple(child for child in children if isinstance(child, Item)))

    def rule(self, children: Children) -> n.RuleLine:
        word, measure, *others = children
        compare, bound = next(child for child in others if isinstance(child, tuple))
        return n.RuleLine(
            self._whole,
            str(word),
            self._name(measure),
            next((child for child in others if isinstance(child, n.SubjectPart)), None),
            compare,
            bound,
            tuple(child for child in others if isinstance(child, n.WherePart)),
            next((unquoted(child) for child in others if isinstance(child, Token)), None),
        )

    def waive(self, children: Children) -> n.WaiveLine:
        measure, *others = children
        return n.WaiveLine(
            self._whole,
            self._name(measure),
            next((child for child in others if isinstance(child, n.SubjectPart)), None),
            tuple(child for child in others if isinstance(child, n.WherePart)),
            next((unquoted(child) for child in others if isinstance(child, Token)), None),
        )

    def count_as(self, children: Children) -> n.CountLine:
        return n.CountLine(self._whole, self._name(children[0]), None)

    def count_from(self, children: Children) -> n.CountLine:
        return n.CountLine(self._whole, None, children[-1])

    def count(self, children: Children) -> n.CountLine:
        return children[0]  # type: ignore[no-any-return]

    # ---- athletes --------------------------------------------------------------------------------

    def athlete(self, children: Children) -> n.Head:
        return n.Head(self._whole, "athlete", self._name(children[0]))

    def bar(self, children: Children) -> n.BarLine:
        return n.BarLine(self._whole, children[0], children[1] if len(children) > 1 else None)

    def plates(self, children: Children) -> n.PlatesLine:
        return n.PlatesLine(self._whole, tuple(children))

    def plate(self, children: Children) -> tuple[int, Fraction, str | None]:
        count, _, (size, _), *unit = children
        return self._integer(count), size, str(unit[0]) if unit else None

    def hand_weights(self, children: Children) -> n.HandWeightsLine:
        word, *others = children
        return n.HandWeightsLine(self._whole, str(word), *self._list_and_step(others))

    def _list_and_step(self, children: Children) -> tuple[tuple[Item, ...], Item | None]:
        by = next((child for child in children if isinstance(child, tuple)), None)
        return tuple(child for child in children if isinstance(child, Item)), by[0] if by else None

    def step_by(self, children: Children) -> tuple[Item]:
        return (children[-1],)

    def best(self, children: Children) -> n.BestLine:
        return n.BestLine(self._whole, children[0], children[1])

    def avoid(self, children: Children) -> n.AvoidLine:
        what = children[0] if isinstance(children[0], Name) else self._name(children[0])
        return n.AvoidLine(self._whole, what, unquoted(children[1]) if len(children) > 1 else None)

    def session(self, children: Children) -> n.SessionHead:
        weekday = self._name(children[1]) if len(children) > 1 else None
        return n.SessionHead(self._whole, self._date(children[0]), weekday)

    # ---- templates and progressions --------------------------------------------------------------

    def arguments(self, children: Children) -> tuple[n.Argument, ...]:
        return tuple(children)

    parameters = arguments

    def named(self, children: Children) -> n.Argument:
        return n.Argument(self._over(children), self._name(children[0]), children[-1])

    parameter = named

    def argument(self, children: Children) -> Item | Name:
        return children[0]  # type: ignore[no-any-return]

    def progression(self, children: Children) -> n.Head:
        arguments = children[1] if len(children) > 1 else ()
        return n.Head(self._whole, "progression", self._name(children[0]), arguments=arguments)

    def when(self, children: Children) -> n.ProgressionLine:
        return n.ProgressionLine(self._whole, self._whole.text)

    otherwise = when


def unquoted(token: Token) -> str:
    """The text of a string literal; a backslash keeps the character after it."""
    text = str(token)[1:-1]
    if "\\" not in text:
        return text
    kept: list[str] = []
    characters = iter(text)
    for character in characters:
        kept.append(next(characters, "") if character == "\\" else character)
    return "".join(kept)


def sign_of(token: Token) -> int:
    """+1 or -1."""
    return 1 if token.type == "PLUS" else -1


def with_shared(item: Item, shared: dict[str, Any]) -> Item:
    """An item of a series with the unit that was written once for all."""
    if not shared:
        return item
    kept = {name: value for name, value in shared.items() if name != "unit" or item.unit is None}
    return replace(item, **kept)
