"""What could stand at the cursor: words that the grammar takes there, and the names that the files declare."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from typing import Final

from lsprotocol import types as lsp

from setwright.editor.features import proposals as known
from setwright.editor.features.feature import Feature
from setwright.editor.features.places import asked
from setwright.editor.session import EditorSession
from setwright.plan import WEEKDAYS
from setwright.syntax import nodes as n
from setwright.syntax.structure import HOLDS

# Where a line's first word is not what the kind of the line is called, and lines that a name begins.
_FIRST_WORDS: Final = {"rule": ("must", "should"), "movement": (), "week": ("week",), "when": ("when", "otherwise")}
_UNITS: Final = ("KG", "LB", "PERCENT", "RIR", "SECONDS", "MINUTES", "METRES", "HOURS")
_UNITS_AFTER: Final = (
    (re.compile(r"@[^,@]*$"), ("PERCENT", "KG", "LB", "RIR")),
    (re.compile(r"\b(?:rest|pause|every)\s[^,@]*$"), ("SECONDS", "MINUTES")),
    (re.compile(r"\b(?:bar|collars|plates|dumbbells|kettlebells|bodyweight)\s[^@]*$"), ("KG", "LB")),
    (re.compile(r"\bx\s*[^,@]*$"), ("SECONDS", "MINUTES", "METRES")),
)


def _answer(session: EditorSession, params: lsp.CompletionParams) -> lsp.CompletionList:
    place = asked(session, params.text_document, params.position)
    library = session.library(place[0]) if place is not None else None
    if place is None or library is None:
        return lsp.CompletionList(False, [])
    _, source, line, column = place
    before = source.line(line)[:column]
    if _is_in_text(before):
        return lsp.CompletionList(False, [])
    around = _around(session.reader.read(source).statements, line, before)
    at = known.Place(session, source, library, line, before, around)
    unique = {item.label: item for item in _items(at)}
    return lsp.CompletionList(False, list(unique.values()))


def _is_in_text(before: str) -> bool:
    """True within quotes, and within a comment."""
    bare = re.sub(r'"(?:[^"\\]|\\.)*"', "", before)
    return '"' in bare or "#" in bare


def _around(statements: Iterable[n.Statement], line: int, before: str) -> tuple[n.Statement, ...]:
    """The statements that the line is indented under; a line that is being typed may not be in the tree."""
    indent = len(before) - len(before.lstrip())
    found: list[n.Statement] = []
    lines: Iterable[n.Statement] = statements
    while True:
        above = [each for each in lines if each.node.span.line < line and each.node.span.start < indent]
        if not above:
            return tuple(found)
        found.append(above[-1])
        lines = above[-1].body


# ---- what each place takes -----------------------------------------------------------------------


def _items(at: known.Place) -> Iterator[lsp.CompletionItem]:
    for pattern, made in _CONTEXTS:
        match = pattern.match(at.before)
        if match is not None:
            yield from made(at)
            return
    if not at.before.strip() or known.WORD.fullmatch(at.before.strip()) or _is_name_begun(at.before):
        yield from _first_words(at)
    yield from _grammar(at)


def _is_name_begun(before: str) -> bool:
    return re.fullmatch(r"\s*[^\W\d_][\w'’.\- ]*", before) is not None and ":" not in before


def _first_words(at: known.Place) -> Iterator[lsp.CompletionItem]:
    """The words that lines under this one begin with, and movements where they may stand."""
    held = HOLDS.get(at.parent, ())
    for kind in held:
        for word in _FIRST_WORDS.get(kind, (kind,)):
            yield known.item(at, word, lsp.CompletionItemKind.Keyword, known.WORD)
    if "movement" in held:
        yield from known.movements(at)


def _grammar(at: known.Place) -> Iterator[lsp.CompletionItem]:
    """Words of the language that may come next: units after a number, modifiers after a comma; and parameters."""
    begun = known.WORD.search(at.before)
    settled = at.before[: begun.start()] if begun else at.before
    if not settled.strip():
        return
    expected = at.session.tokens.expected(settled)
    units = _units(settled)
    for terminal, word in at.session.tokens.words.items():
        if terminal in expected and terminal not in _UNITS:
            yield known.item(at, word, lsp.CompletionItemKind.Keyword, known.WORD)
        elif terminal in expected and terminal in units:
            yield known.item(at, word, lsp.CompletionItemKind.Unit, known.WORD, first=True)
    if "WEEKDAY" in expected:
        yield from (known.item(at, day, lsp.CompletionItemKind.Event, known.WORD) for day in WEEKDAYS)
    if "WORD" in expected:
        yield from _parameters(at)


def _units(before: str) -> tuple[str, ...]:
    """The units that a number can have where it stands: of a load or effort, of time, or of what a set is."""
    told = next((units for pattern, units in _UNITS_AFTER if pattern.search(before)), None)
    return _UNITS if told is None else told


def _parameters(at: known.Place) -> Iterator[lsp.CompletionItem]:
    """The parameters of the template or progression around."""
    top = at.around[0].node if at.around else None
    if isinstance(top, n.Head) and top.word in ("template", "progression"):
        for each in top.arguments:
            yield known.item(at, each.name.text, lsp.CompletionItemKind.Variable, known.WORD, each.span.text)


def _context(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern + r"[\w'’.\- ]*$")


_CONTEXTS: Final[tuple[tuple[re.Pattern[str], Callable[[known.Place], Iterator[lsp.CompletionItem]]], ...]] = (
    (re.compile(r"\s*use\s+[\w.\-]*$"), known.files),
    (_context(r"\s*block\s+[^:]*?(?::\s*\d+\s+weeks?)?\s+like\s+"), known.blocks),
    (_context(r"\s*day\s+\w+.*\slike\s+"), known.days),
    (_context(r"\s*drop\s+day\s+"), known.days),
    (_context(r"\s*exercise\s+.*\slike\s+"), known.movements),
    (_context(r"\s*(?:must|should|waive)\s+[\w\-]+\s+for\s+(?:[\w.\-]+\s*,\s*)*"), known.subjects),
    (_context(r"\s*(?:must|should|waive)\s.*\sin\s+block\s+"), known.blocks),
    (re.compile(r"\s*(?:must|should|waive)\s+[\w\-]*$"), known.measures),
    (re.compile(r"\s*(?:must|should)\s+balance\s+(?:[\w\-]+\s*:\s*)?[\w\-]*$"), known.subjects),
    (_context(r"\s*swap\s+(?:for\s+(?:[^,]+,\s*)*|.*\sfor\s+)?"), known.movements),
    (_context(r"\s*(?:add|drop|best(?:\s+from)?)\s+"), known.movements),
    (_context(r".*\sof\s+"), known.movements),
    (_context(r".*\s(?:after|before)\s+(?!\d)"), known.movements),
    (_context(r"\s*avoid\s+"), known.movements_and_muscles),
    (re.compile(r"\s*emphasis\s+[\w\-]*$"), known.muscles),
    (re.compile(r"\s*works\s+(?:[\w.\-]+\s+[\d.]+\s*,\s*)*[\w\-]*$"), known.muscles),
    (re.compile(r"\s*group\s+[\w\-]+[^:]*:\s*(?:[\w.\-]+\s*,\s*)*[\w\-]*$"), known.muscles),
    (re.compile(r"\s*(?:has|needs)\s+(?:[\w.\-]+\s*,\s*)*[\w\-]*$"), known.equipment),
    (re.compile(r"\s*follow\s+(?:[\w.\-]+\s*,\s*)*[\w\-]*$"), known.rulesets),
    (re.compile(r'\s*plan\s+"[^"]*"\s+from\s+[\w\-]*$'), known.templates),
    (re.compile(r".*\badvance\s+[\w\-]*$"), known.progressions),
    (re.compile(r"\s*pattern\s+[\w\-]*$"), known.patterns),
    (re.compile(r"\s*model\s+[\w\-]*$"), known.models),
)


FEATURE = Feature(
    lsp.TEXT_DOCUMENT_COMPLETION,
    _answer,
    lsp.CompletionOptions(trigger_characters=[" ", ",", "@", "."]),
)
