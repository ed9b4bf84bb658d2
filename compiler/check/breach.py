"""A breach told to a coach: which weeks, whose figure, which lines make it up, which rule.

Comes in: the figures of one rule and subject that are out of bounds. Goes out: one `Diagnostic`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from setwright.check.bounds import distance, rest_text, written
from setwright.check.measure import Figure, Measure
from setwright.check.weeks import phrase
from setwright.diagnostics import Diagnostic, Related
from setwright.plan import Line, Plan
from setwright.quantities import plain
from setwright.record import record
from setwright.rules import Bound, Rule
from setwright.source import Span
from setwright.suggest import either

LINES_SHOWN = 6
WORDS_SHOWN = 3


@record
class Breach:
    """The figures out of bounds of one subject (and one session slot), in order of weeks; at least one."""

    rule: Rule
    measure: Measure
    figures: tuple[Figure, ...]


@record
class _Written:
    """A line as it was written once, and what it adds to the figures of the weeks it stands in."""

    line: Line
    amounts: list[Fraction]


def told(breach: Breach, plan: Plan) -> Diagnostic:
    """The breach as one diagnostic, at the plan line that contributes most."""
    contributors = _contributors(breach)
    first = contributors[0].line.span if contributors else _place(breach.figures, plan)
    related = (
        *_others(contributors[1:], breach.measure),
        *_inherited(contributors),
        Related(breach.rule.span, _rule_text(breach.rule)),
    )
    code = breach.measure.code
    message = code.message.format(**_facts(breach))
    return Diagnostic(code, breach.rule.severity, message, first, related, breach.rule.reason)


def _facts(breach: Breach) -> dict[str, str]:
    """What the code's message may use, in words."""
    figure = breach.figures[0]
    values = [figure.value for figure in breach.figures]
    return {
        "number": _number(breach),
        "weeks": phrase(figure.week.number for figure in breach.figures),
        "session": _session(figure),
        "whom": f" for {figure.subject.title}" if figure.subject.title else "",
        "bound": breach.rule.bound.text,
        "asked": f"that the rule set {breach.rule.ruleset} asks for" if breach.rule.ruleset else "you asked for",
        **_nouns(values),
    }


def _number(breach: Breach) -> str:
    words = list(dict.fromkeys(figure.words for figure in breach.figures if figure.words is not None))
    told = [*words[:WORDS_SHOWN], *(["more"] if len(words) > WORDS_SHOWN else [])]
    values = [figure.value for figure in breach.figures if figure.words is None]
    return either([*told, *([written(values, breach.rule.bound)] if values else [])], "and")


def _nouns(values: Iterable[Fraction]) -> dict[str, str]:
    is_one = set(values) == {Fraction(1)}
    return {"sets": "set" if is_one else "sets", "sessions": "session" if is_one else "sessions"}


def _session(figure: Figure) -> str:
    if figure.session is None:
        return ""
    slot = figure.session.slot
    return f"day {slot}" if slot.isdecimal() else slot


def _contributors(breach: Breach) -> list[_Written]:
    """The lines behind the figures, each as often as it was written, the greatest contribution first."""
    found: dict[Span, _Written] = {}
    for part in (part for figure in breach.figures for part in figure.parts):
        found.setdefault(part.line.span, _Written(part.line, [])).amounts.append(part.amount)
    weight = _furthest if breach.measure.line_by_line else _most
    return sorted(found.values(), key=lambda line: weight(line.amounts, breach.rule.bound), reverse=True)


def _most(amounts: Iterable[Fraction], _: Bound) -> Fraction:
    return sum(amounts, Fraction(0))


def _furthest(amounts: Iterable[Fraction], bound: Bound) -> Fraction:
    return max(distance(amount, bound) for amount in amounts)


def _place(figures: Sequence[Figure], plan: Plan) -> Span:
    """Where to point when no line contributes: the session, the week's block, or the plan when it spans blocks."""
    first = figures[0]
    if first.session is not None:
        return first.session.span
    return first.week.span if len({figure.week.block for figure in figures}) == 1 else plan.span


def _others(lines: Sequence[_Written], measure: Measure) -> Iterator[Related]:
    for line in lines[:LINES_SHOWN]:
        yield Related(line.line.span, _adds(line.amounts, measure))
    rest = lines[LINES_SHOWN:]
    if rest:
        yield Related(rest[0].line.span, f"and {len(rest)} more {'line' if len(rest) == 1 else 'lines'}")


def _adds(amounts: Sequence[Fraction], measure: Measure) -> str:
    least, most = plain(min(amounts), 1), plain(max(amounts), 1)
    number = least if least == most else f"{least} to {most}"
    rests = list(dict.fromkeys((rest_text(min(amounts)), rest_text(max(amounts)))))
    return measure.part.format(number=number, rest=" to ".join(rests), **_nouns(amounts))


def _inherited(contributors: Sequence[_Written]) -> tuple[Related, ...]:
    """How the greatest contributor that came by `like` came; one place is enough to understand the rest."""
    return next(((line.line.inherited[0],) for line in contributors if line.line.inherited), ())


def _rule_text(rule: Rule) -> str:
    return "the rule stands here" + (f", in the rules `{rule.ruleset}`" if rule.ruleset else "")
