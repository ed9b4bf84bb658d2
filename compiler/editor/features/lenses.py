"""Code lenses: over each rule of a plan the figures that it bounds, the least and the greatest."""

from __future__ import annotations

from collections.abc import Iterator

from lsprotocol import types as lsp

from setwright.check.bounds import fits, with_unit
from setwright.check.faults import is_sound
from setwright.check.figures.sets import Ledger
from setwright.check.measure import Figure
from setwright.check.measures import MEASURES
from setwright.editor.features.feature import Feature
from setwright.editor.features.places import path_of
from setwright.editor.session import EditorSession
from setwright.pipeline import Compilation
from setwright.quantities import plain
from setwright.rules import Rule


def _answer(session: EditorSession, params: lsp.CodeLensParams) -> list[lsp.CodeLens]:
    path = path_of(params.text_document.uri)
    analysis = session.analysis(path)
    first: dict[str, Compilation] = {}
    for made in analysis.made.compilations:
        first.setdefault(str(made.plan.span), made)  # rules speak of the plan, whoever does it
    return [lens for made in first.values() for lens in _lenses(session, path, made)]


def _lenses(session: EditorSession, path: str, made: Compilation) -> Iterator[lsp.CodeLens]:
    ledger = Ledger(made.plan, made.promise)
    for rule in made.promise.rules:
        if rule.span.source.path == path:
            title = _title(ledger, rule)
            if title is not None:
                # An empty command: there is nothing to do, only something to read.
                yield lsp.CodeLens(session.positions.range(rule.span), command=lsp.Command(title, ""))


def _title(ledger: Ledger, rule: Rule) -> str | None:
    measure = next((each for each in MEASURES if each.name == rule.measure), None)
    if measure is None or not is_sound(rule, measure):
        return None
    figures: list[Figure] = list(measure.figures(ledger, rule))
    if not figures:
        return "nothing to count"
    least, most = min(figure.value for figure in figures), max(figure.value for figure in figures)
    number = plain(least, 1) if least == most else f"{plain(least, 1)} to {plain(most, 1)}"
    outside = sum(not fits(figure.value, rule.bound) for figure in figures)
    told = f"{outside} of {len(figures)} outside the range you asked for" if outside else f"all {len(figures)} inside"
    return f"{with_unit(number, rule.bound.unit)}: {told}"


FEATURE = Feature(lsp.TEXT_DOCUMENT_CODE_LENS, _answer)
