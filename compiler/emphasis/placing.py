"""Sets for a muscle, added or taken one by one.

Comes in: an expanded plan, its promise, and wishes. Goes out: the plan with the sets placed, and what found no place.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue.structure import TOO_LARGE
from setwright.emphasis.keeping import Keeper
from setwright.emphasis.moves import Move, moved, moves
from setwright.emphasis.shortfall import Shortfall, told
from setwright.plan import Cause, Plan, Quantity, Session, Step, Week, WeekKind
from setwright.quantities import round_half_up
from setwright.record import replace
from setwright.rules import Promise, Rule, Wish

MOST_PLACED = 2500  # sets; each is tried against the rules


def emphasised(plan: Plan, promise: Promise, wishes: tuple[Wish, ...]) -> tuple[Plan, tuple[Diagnostic, ...]]:
    """The plan with the wished sets in its working weeks, and a warning for each muscle and stretch that fell short.

    Wishes for one muscle are added up first. Each set keeps every `must` rule that the plan kept before it.
    """
    asked = sum(_sets_asked(wish, plan) for wish in summed(wishes))
    working = sum(week.kind is WeekKind.WORKING for week in plan.weeks)
    if asked * working > MOST_PLACED:
        what = "sets that emphasis asks for in all weeks"
        return plan, (TOO_LARGE.at(wishes[-1].span, what=what, count=asked * working, most=MOST_PLACED),)
    problems: list[Diagnostic] = []
    keeper: Keeper | None = None
    for wish in summed(wishes):
        keeper = keeper or Keeper(plan, promise)
        placing = _Placing(plan, promise, keeper, wish)
        placing.place_all()
        problems += told(wish, placing.shortfalls(), plan)
        plan = _with_steps(plan, placing.weeks, wish)
    return plan, tuple(problems)


def summed(wishes: Iterable[Wish]) -> list[Wish]:
    """One wish a muscle, in order of their first lines, at the last line that goes its way; none where they cancel."""
    by_muscle: dict[str, list[Wish]] = {}
    for wish in wishes:
        by_muscle.setdefault(wish.muscle, []).append(wish)
    totals = {muscle: sum(wish.sets for wish in each) for muscle, each in by_muscle.items()}
    return [
        replace([wish for wish in each if wish.sets * totals[muscle] > 0][-1], sets=totals[muscle])
        for muscle, each in by_muscle.items()
        if totals[muscle]
    ]


def _sets_asked(wish: Wish, plan: Plan) -> int:
    """Sets in one week or microcycle."""
    return int(round_half_up(abs(wish.sets) / plan.per_seven_days))


class _Placing:
    """One wish at work: the weeks as they have become, and how many sets each is still short of."""

    def __init__(self, plan: Plan, promise: Promise, keeper: Keeper, wish: Wish) -> None:
        self.weeks = list(plan.weeks)
        self._promise, self._keeper, self._wish = promise, keeper, wish
        self._by = 1 if wish.sets > 0 else -1
        self._asked = _sets_asked(wish, plan)
        self._short = {at: self._asked for at, week in enumerate(plan.weeks) if week.kind is WeekKind.WORKING}
        self._clock = 0
        self._changed = [0] * len(self.weeks)  # when each week was last changed
        self._refused: dict[tuple[int, ...], tuple[int, Rule]] = {}

    def place_all(self) -> None:
        """Set after set, until no week takes another.

        Weeks are gone through forwards and backwards in turn: under a bound on the rise from week to week, a set more
        may have to wait for the week after it, and a set less for the week before it.
        """
        placed = True
        while placed:
            placed = False
            for order in (list(self._short), list(reversed(self._short))):
                for at in order:
                    placed |= self._short[at] > 0 and self._place(at)

    def shortfalls(self) -> list[Shortfall]:
        """What each week that fell short was asked for, and why."""
        return [self._shortfall(at, short) for at, short in self._short.items() if short or not self._asked]

    def _place(self, at: int) -> bool:
        """One set into the week, by the first move that no rule stops."""
        for move in moves(self.weeks[at], self._wish.muscle, self._by, self._promise):
            if self._is_known_to_fail(at, move):
                continue
            before, self.weeks[at] = self.weeks[at], moved(self.weeks[at], move)
            rule = self._keeper.stopping(self.weeks, at, move.movement)
            if rule is None:
                self._short[at] -= 1
                self._clock += 1
                self._changed[at] = self._clock
                return True
            self.weeks[at] = before
            self._refused[_key(at, move)] = (self._clock, rule)
        return False

    def _is_known_to_fail(self, at: int, move: Move) -> bool:
        """True where a rule stopped the move and no week on which its figures hang has changed since."""
        refused = self._refused.get(_key(at, move))
        return refused is not None and all(self._changed[near] <= refused[0] for near in self._keeper.reach(at))

    def _shortfall(self, at: int, short: int) -> Shortfall:
        open_ = moves(self.weeks[at], self._wish.muscle, self._by, self._promise)
        refused = [self._refused[key] for move in open_ if (key := _key(at, move)) in self._refused]
        rules = tuple(dict.fromkeys(rule for _, rule in refused))
        return Shortfall(self.weeks[at], self._asked - short, self._asked, rules)


def _key(at: int, move: Move) -> tuple[int, ...]:
    return at, move.session, move.line, move.sets


def _with_steps(plan: Plan, weeks: Sequence[Week], wish: Wish) -> Plan:
    """The plan with these weeks; each segment that changed keeps what did it."""
    made = (old if old is new else _week(old, new, wish) for old, new in zip(plan.weeks, weeks, strict=True))
    return replace(plan, weeks=tuple(made))


def _week(old: Week, new: Week, wish: Wish) -> Week:
    pairs = zip(old.sessions, new.sessions, strict=True)
    return replace(new, sessions=tuple(a if a is b else _session(a, b, wish) for a, b in pairs))


def _session(old: Session, new: Session, wish: Wish) -> Session:
    lines = []
    for before, after in zip(old.lines, new.lines, strict=True):
        pairs = zip(before.segments, after.segments, strict=True)
        segments = (
            b
            if a.sets == b.sets
            else replace(b, steps=(*b.steps, Step(Quantity.SETS, Cause.EMPHASIS, a.sets, b.sets, wish.span)))
            for a, b in pairs
        )
        lines.append(before if before is after else replace(after, segments=tuple(segments)))
    return replace(new, lines=tuple(lines))
