"""What found no place, told to a coach: how many of how many sets, in which weeks, and what stopped them.

Comes in: a wish and the weeks that fell short. Goes out: a diagnostic for each stretch of weeks with one answer.
"""

from __future__ import annotations

from collections.abc import Iterable

from setwright.check.weeks import phrase
from setwright.diagnostics import Diagnostic, Related
from setwright.diagnostics.catalogue import rules as codes
from setwright.emphasis.moves import trains_alone
from setwright.plan import Plan, Week
from setwright.record import record
from setwright.rules import Rule, Scope, Wish
from setwright.suggest import either


@record
class Shortfall:
    """One week: sets placed of those asked for, and the rules that stopped the rest (none: no line could take one)."""

    week: Week
    placed: int
    asked: int
    rules: tuple[Rule, ...]


def told(wish: Wish, shortfalls: Iterable[Shortfall], plan: Plan) -> list[Diagnostic]:
    """The shortfalls of one wish, weeks with the same answer together."""
    title = next((muscle.title for muscle in plan.muscles if muscle.word == wish.muscle), wish.muscle)
    alike: dict[tuple[int, int, tuple[Rule, ...], str], list[int]] = {}
    for short in shortfalls:
        answer = (short.placed, short.asked, short.rules, _reason(short, wish, title, plan))
        alike.setdefault(answer, []).append(short.week.number)
    return [
        codes.EMPHASIS_SHORT.at(
            wish.span,
            placed=placed,
            sets=f"{asked} set" if asked == 1 else f"{asked} sets",
            muscle=title,
            done="added" if wish.sets > 0 else "taken",
            weeks=phrase(weeks),
            help=reason,
            related=tuple(Related(rule.span, _place(rule)) for rule in rules),
        )
        for (placed, asked, rules, reason), weeks in alike.items()
    ]


def _reason(short: Shortfall, wish: Wish, title: str, plan: Plan) -> str:
    if not short.asked:
        return f"That is less than half a set in a microcycle of {plan.microcycle} days."
    if short.rules:
        named = either([f"`{_words(rule)}`" for rule in short.rules], "and")
        return f"One set {'more' if wish.sets > 0 else 'less'} would break {named}."
    if not any(trains_alone(line, wish.muscle) for session in short.week.sessions for line in session.lines):
        return f"No line there trains {title} and no other muscle directly (weight 1)."
    kept = "rounds of a circuit, tests, and sets that the plan does not count are left as they are"
    return f"{'' if wish.sets > 0 else 'No line goes below one set; '}{kept}.".capitalize()


def _words(rule: Rule) -> str:
    whom = {
        Scope.PLAN: "",
        Scope.EVERY_MUSCLE: " for every muscle",
        Scope.MUSCLES: f" for {', '.join(rule.subjects)}",
        Scope.PATTERNS: f" for {', '.join(rule.subjects)}",
        Scope.RATIO: f" for {' : '.join(rule.subjects)}",
    }
    return f"must {rule.measure}{whom[rule.scope]} {rule.bound.text}"


def _place(rule: Rule) -> str:
    return "this rule stopped it" + (f", in the rules `{rule.ruleset}`" if rule.ruleset else "")
