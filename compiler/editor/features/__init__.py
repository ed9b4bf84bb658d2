"""What the editor can ask for, a file each. Diagnostics are not asked for: the server sends them."""

from typing import Final

from setwright.editor.features import (
    actions,
    completion,
    definition,
    folding,
    formatting,
    highlighting,
    hints,
    hover,
    lenses,
    references,
    renaming,
    symbols,
)
from setwright.editor.features.feature import Feature

FEATURES: Final[tuple[Feature, ...]] = (
    completion.FEATURE,
    hover.FEATURE,
    actions.FEATURE,
    definition.FEATURE,
    references.FEATURE,
    renaming.PREPARE,
    renaming.FEATURE,
    symbols.FEATURE,
    folding.FEATURE,
    formatting.FEATURE,
    highlighting.FEATURE,
    hints.FEATURE,
    lenses.FEATURE,
)
