"""Muscles, equipment, exercises, rules, athletes, logs, templates and progressions."""

from __future__ import annotations

from fractions import Fraction

from lark import Token

from setwright.syntax import nodes as n
from setwright.syntax.building.base import Children, Placed, sign_of, unquoted
from setwright.syntax.nodes import Item, Name


class Libraries(Placed):
    """Callbacks for what plans draw on."""

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

    def away(self, children: Children) -> n.AwayLine:
        tokens = [child for child in children if isinstance(child, Token)]
        days = [self._date(token) for token in tokens if token.type == "DATE"]
        reason = next((unquoted(token) for token in tokens if token.type == "STRING"), None)
        return n.AwayLine(self._whole, days[0], days[-1], reason, any(token.type == "SHIFT" for token in tokens))

    def ease_in(self, children: Children) -> n.EaseInLine:
        days = next(child for child in children if isinstance(child, Item))
        return n.EaseInLine(self._whole, days, tuple(child for child in children if isinstance(child, tuple)))

    def session(self, children: Children) -> n.SessionHead:
        day, *others = children
        weekday = next((self._name(one) for one in others if isinstance(one, Token) and one.type == "WEEKDAY"), None)
        week = next((self._integer(one) for one in others if isinstance(one, Token) and one.type == "INT"), None)
        slot = next((one for one in others if isinstance(one, n.Name)), None)
        return n.SessionHead(self._whole, self._date(day), weekday, week, slot)

    def arguments(self, children: Children) -> tuple[n.Argument, ...]:
        return tuple(children)

    parameters = arguments

    def named(self, children: Children) -> n.Argument:
        return n.Argument(self._over(children), self._name(children[0]), children[-1])

    def parameter(self, children: Children) -> n.Argument:
        value = children[-1] if len(children) > 1 else None
        return n.Argument(self._over(children), self._name(children[0]), value)

    def argument(self, children: Children) -> Item | Name:
        return children[0]  # type: ignore[no-any-return]

    def progression(self, children: Children) -> n.Head:
        arguments = children[1] if len(children) > 1 else ()
        return n.Head(self._whole, "progression", self._name(children[0]), arguments=arguments)

    def when(self, children: Children) -> n.ProgressionLine:
        condition, *others = children
        times = next((child for child in others if isinstance(child, Item)), None)
        actions = tuple(child for child in others if isinstance(child, n.ActionPart))
        return n.ProgressionLine(self._whole, condition, times, actions)

    def otherwise(self, children: Children) -> n.ProgressionLine:
        return n.ProgressionLine(self._whole, None, None, tuple(children))

    def sets_compare(self, children: Children) -> n.Condition:
        subject, *_, compare, operand = children
        return n.Condition(self._over(children), str(subject), str(compare), operand)

    effort_compares = sets_compare

    def operand(self, children: Children) -> n.Operand:
        if len(children) == 1:
            return n.Operand(children[0].span, None, 0, children[0])
        mark, sign, item = children
        return n.Operand(self._over(children), self._name(mark), sign_of(sign), item)

    def hold(self, children: Children) -> n.ActionPart:
        return n.ActionPart(self._of(children[0]), "hold")

    def change_by(self, children: Children) -> n.ActionPart:
        word, sign, item = children
        return n.ActionPart(self._over(children), str(word), "+" if sign_of(sign) > 0 else "-", item)

    def set_to(self, children: Children) -> n.ActionPart:
        word, compare, item = children
        return n.ActionPart(self._over(children), str(word), str(compare), item)
