"""A day's lines: segments, parts, entries, groups, edits."""

from __future__ import annotations

from typing import Any

from lark import Token

from setwright.diagnostics.catalogue import syntax as codes
from setwright.record import replace
from setwright.syntax import nodes as n
from setwright.syntax.building.base import Children, Placed, sign_of, unquoted
from setwright.syntax.nodes import Item, RawTrack, TrackKind


class Sessions(Placed):
    """Callbacks for what stands under a day."""

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
        sign, span = sign_of(children[0]), self._over(children)
        if len(children) == 2:
            return n.RawChange(span, sign, children[1])
        # `-10% -> -5%`: the second sign is kept relative to the first.
        first, last = children[1], children[-1]
        turned = sign * sign_of(children[3])
        ramp = RawTrack(TrackKind.RAMP, (first, replace(last, low=last.low and turned * last.low)), span)
        return n.RawChange(span, sign, ramp)

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
