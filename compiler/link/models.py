"""Words with a closed set of values: repetition-maximum models, ways to round, units."""

from __future__ import annotations

from collections.abc import Collection

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import names
from setwright.science.repetitions import Model
from setwright.suggest import Suggestion, did_you_mean, either
from setwright.syntax.nodes import Name

MODELS = tuple(model.value for model in Model)
ROUNDING = ("nearest", "down")


def known_model(name: Name, problems: list[Diagnostic]) -> str | None:
    """The model's word, or None after saying that there is none."""
    if name.text in MODELS:
        return name.text
    help_ = did_you_mean(name.text, MODELS) or f"The models are {either(MODELS, 'and')}."
    problems.append(names.UNKNOWN_MODEL.at(name.span, name=name.text, help=help_))
    return None


def known_word(name: Name, after: str, words: Collection[str], problems: list[Diagnostic]) -> str | None:
    """One of a few words, or None after saying which they are."""
    if name.text in words:
        return name.text
    listed = f"It takes {either([f'`{word}`' for word in words])}."
    help_ = did_you_mean(name.text, words) or Suggestion(listed, name.text, words)
    problems.append(names.UNKNOWN_WORD.at(name.span, word=name.text, after=after, help=help_))
    return None
