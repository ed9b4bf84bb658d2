"""Files, plans, blocks and days, and the settings of all declarations."""

from __future__ import annotations

from datetime import date

from lark import Token

from setwright.syntax import nodes as n
from setwright.syntax.building.base import Children, Placed, sign_of, unquoted
from setwright.syntax.nodes import Item, Name


class Plans(Placed):
    """Callbacks for files, plans and blocks."""

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
