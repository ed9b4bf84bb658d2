"""A second reading of progressions on a log, written from the reference's two tables and not from the compiler.

Comes in: rules as text, what a line asks first, and what became of each exposure. Goes out: what each of them asks.
"""

from __future__ import annotations

import operator
import re
from dataclasses import dataclass, field, replace
from fractions import Fraction
from math import floor

COMPARE = {"<": operator.lt, "<=": operator.le, "=": operator.eq, ">=": operator.ge, ">": operator.gt}


@dataclass(frozen=True)
class Ask:
    """`load` is in kg, or what is added to bodyweight; None for a line by effort, whose `rpe` it then is."""

    sets: int
    low: Fraction
    high: Fraction
    load: Fraction | None = None
    rpe: Fraction | None = None
    is_rounded: bool = False  # a percent moved the load


@dataclass(frozen=True)
class Happened:
    """One exposure: `kind` is done, skipped or coming. Sets are (load or None, repetitions), `rpes` those reported."""

    kind: str
    sets: tuple[tuple[Fraction | None, int], ...] = ()
    rpes: tuple[Fraction | None, ...] = ()


@dataclass
class Reader:
    """Goes through the exposures of one line in one block."""

    rules: list[str]
    first: Ask
    history: list[list[bool]] = field(default_factory=list)  # of each rule: did its condition hold, since carried out

    def read(self, exposures: list[Happened]) -> list[tuple[Ask, bool]]:
        """What each exposure asks, and whether that is a projection."""
        self.history = [[] for _ in self.rules]
        ask, assumed, found = self.first, False, []
        for happened in exposures:
            found.append((ask, assumed))
            if happened.kind == "skipped":
                continue  # it does not count, and what was asked stays
            if happened.kind == "coming":
                assumed = True
                reps = [int(ask.low)] * ask.sets
                ask = self.after(ask, reps, ask.rpe)
                continue
            counted = happened.sets[: ask.sets]  # sets past those asked do not count
            used = {load for load, _ in counted}
            moves_load = any("load" in rule.partition(":")[2] for rule in self.rules)
            if moves_load and ask.load is not None and len(used) == 1 and None not in used:
                ask = replace(ask, load=used.pop(), is_rounded=False)
            reps = [count for _, count in counted] + [0] * (ask.sets - len(counted))
            efforts = [rpe for rpe in happened.rpes[: len(counted)] if rpe is not None]
            ask = self.after(ask, reps, max(efforts) if efforts else None)
        return found

    def after(self, ask: Ask, reps: list[int], rpe: Fraction | None) -> Ask:
        for rule, held in zip(self.rules, self.history, strict=True):
            held.append(self.holds(rule, ask, reps, rpe))
        for rule, held in zip(self.rules, self.history, strict=True):
            times = int(found[1]) if (found := re.search(r"(\d+) times running", rule)) else 1
            if len(held) >= times and all(held[-times:]):
                held.clear()
                for action in rule.partition(":")[2].split(","):
                    ask = self.carried_out(action.strip(), ask)
                break
        if any("reps" in rule.partition(":")[2] for rule in self.rules):
            ask = replace(ask, high=ask.low)  # one number, once they are moved
        return ask

    def holds(self, rule: str, ask: Ask, reps: list[int], rpe: Fraction | None) -> bool:
        if rule.startswith("otherwise"):
            return True
        found = re.match(r"when (all|any|last|effort)(?: sets?)? ([<>=]+) (.+?)(?: \d+ times running)?:", rule)
        assert found is not None
        who, compare, text = found.groups()
        if who == "effort":
            wanted = Fraction(text[4:]) if text.startswith("RPE") else self.marked(text, ask, effort=True)
            return rpe is not None and wanted is not None and COMPARE[compare](rpe, wanted)
        wanted = self.marked(text, ask, effort=False)
        each = [COMPARE[compare](count, wanted) for count in reps]
        return {"all": all(each), "any": any(each), "last": each[-1]}[who]

    def marked(self, text: str, ask: Ask, *, effort: bool) -> Fraction | None:
        word, *more = text.split()
        if word.isdigit():
            return Fraction(word)
        marks = {"top": self.first.high, "bottom": self.first.low, "target": ask.rpe if effort else ask.low}
        base = marks[word]
        if base is None or not more:
            return base
        return base + int(more[1]) * (1 if more[0] == "+" else -1)

    def carried_out(self, action: str, ask: Ask) -> Ask:
        if action == "hold":
            return ask
        what, how, text = action.split(" ", 2)
        if what == "load":
            return ask if ask.load is None else self.with_load(ask, how, text)
        if what == "sets":
            sets = {"+": ask.sets + int(text), "-": ask.sets - int(text), "=": int(text)}[how] if text.isdigit() else 1
            return replace(ask, sets=min(max(sets, 1), 100))
        if what == "effort":
            assert ask.rpe is not None
            by = Fraction(text.removeprefix("RPE "))
            moved = {"+": ask.rpe + by, "-": ask.rpe - by, "=": by}[how]
            return replace(ask, rpe=min(max(moved, Fraction(1)), Fraction(10)))
        bottom, top = self.first.low, self.first.high
        if text in ("top", "bottom"):
            count = {"top": top, "bottom": bottom}[text]
        elif how == "=":
            count = Fraction(text)
        else:
            count = ask.low + int(text) * (1 if how == "+" else -1)
            count = min(max(count, bottom), top) if bottom < top else max(count, Fraction(1))
        return replace(ask, low=count, high=count)

    def with_load(self, ask: Ask, how: str, text: str) -> Ask:
        assert ask.load is not None
        number, unit = re.fullmatch(r"([\d.]+) ?(kg|%)", text).groups()  # type: ignore[union-attr]
        by = Fraction(number)
        if unit == "%":
            by = ask.load * by / 100
            moved = ask.load + by if how == "+" else ask.load - by
            return replace(ask, load=moved, is_rounded=True)
        moved = {"+": ask.load + by, "-": ask.load - by, "=": by}[how]
        return replace(ask, load=moved)


def shown(ask: Ask) -> Fraction | None:
    """The load on the sheet: in steps of 2.5 kg where a percent moved it."""
    if ask.load is None or not ask.is_rounded:
        return ask.load
    return floor(ask.load / Fraction(5, 2) + Fraction(1, 2)) * Fraction(5, 2)
