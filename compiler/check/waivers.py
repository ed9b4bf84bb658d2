"""Waivers: the breaches a plan has said yes to.

Comes in: waivers and figures out of bounds. Goes out: the waivers that answer for one, and
a warning about those that answer for none.
"""

from __future__ import annotations

from collections.abc import Iterable

from setwright.check.figures.sets import WHOLE_PLAN, Subject
from setwright.check.weeks import is_named
from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import rules as codes
from setwright.plan import Plan, Week
from setwright.rules import Scope, Waiver


def waiving(waivers: Iterable[Waiver], measure: str, subject: Subject, week: Week, plan: Plan) -> tuple[Waiver, ...]:
    """The waivers that answer for this subject of the measure in that week."""
    return tuple(
        waiver
        for waiver in waivers
        if waiver.measure == measure and _covers(waiver, subject, plan) and is_named(waiver.where, week)
    )


def unused(waiver: Waiver) -> Diagnostic:
    """The warning about a waiver that waives nothing."""
    return codes.UNUSED_WAIVER.at(
        waiver.span,
        measure=waiver.measure,
        help="Take it out, or look whether its muscle and weeks are the ones you meant.",
    )


def _covers(waiver: Waiver, subject: Subject, plan: Plan) -> bool:
    match waiver.scope:
        case Scope.PLAN:  # no `for`: whatever the measure speaks of
            return True
        case Scope.EVERY_MUSCLE:
            return subject != WHOLE_PLAN
        case Scope.MUSCLES | Scope.PATTERNS:
            return any(word == subject.word or subject.word in _members(word, plan) for word in waiver.subjects)
        case Scope.RATIO:
            return subject.word == ":".join(waiver.subjects)


def _members(word: str, plan: Plan) -> tuple[str, ...]:
    return dict(plan.groups).get(word, ())
