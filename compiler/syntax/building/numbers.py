"""Items, tracks and units: everything that is a number, or moves like one."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from lark import Token

from setwright.diagnostics.catalogue import syntax as codes
from setwright.record import replace
from setwright.source import Span
from setwright.syntax.building.base import LARGEST_DIGITS, Children, Placed
from setwright.syntax.nodes import Item, Name, RawTrack, Tail, TrackKind


class Numbers(Placed):
    """Callbacks for words, numbers and tracks."""

    def name(self, children: Children) -> Name:
        return self._name(children[0])

    known = name

    def words(self, children: Children) -> tuple[Name, ...]:
        return tuple(self._name(token) for token in children)

    def number(self, children: Children) -> tuple[Fraction, Span]:
        token = children[0]
        if len(token) > LARGEST_DIGITS:
            self._problems.append(codes.NUMBER_TOO_LARGE.at(self._of(token), digits=len(token)))
            return Fraction(1), self._of(token)  # a value that no later phase complains of
        return Fraction(str(token)), self._of(token)

    def cluster(self, children: Children) -> tuple[tuple[int, ...], Span]:
        tokens = [token for token in children if token.type == "INT"]
        line, first, last = self._source.line(self._line), self._of(tokens[0]), self._of(tokens[-1])
        # The parser keeps no brackets either.
        start, end = line.rfind("(", 0, first.start), line.find(")", last.end) + 1
        return tuple(self._integer(token) for token in tokens), Span(self._source, self._line, start, end)

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
        if isinstance(first[0], tuple):
            return {"span": first[1], "cluster": first[0]}
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
        over = self._with_brackets(self._over(children), items)
        spread = tuple(with_shared(item, shared) for item in items)
        return RawTrack(TrackKind.SERIES, spread, over, tail)

    def _with_brackets(self, over: Span, items: list[Item]) -> Span:
        """The parser keeps no brackets: the span grows to those around the items."""
        line = self._source.line(self._line)
        start, end = line.rfind("[", 0, items[0].span.start), line.find("]", items[-1].span.end)
        return Span(self._source, self._line, min(start, over.start), max(end + 1, over.end))


def with_shared(item: Item, shared: dict[str, Any]) -> Item:
    """An item of a series with the unit that was written once for all."""
    if not shared:
        return item
    kept = {name: value for name, value in shared.items() if name != "unit" or item.unit is None}
    return replace(item, **kept)
