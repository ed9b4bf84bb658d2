"""What can be proposed: the names that the files declare, and the words for what the compiler knows.

Comes in: the place of the cursor. Goes out: items that take the place of what was begun there.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from lsprotocol import types as lsp

from setwright.check.measures import MEASURES
from setwright.editor.features.prescriptions import trains
from setwright.editor.session import EditorSession
from setwright.files import library_folder
from setwright.link.library import Library
from setwright.link.models import MODELS
from setwright.record import record
from setwright.source import Source
from setwright.syntax import nodes as n
from setwright.syntax.structure import FILE, kind_of

WORD: Final = re.compile(r"[^\W\d_][\w\-]*$")
NAME: Final = re.compile(r"[^\W\d_][\w'’.\- ]*$")


@record
class Place:
    """Where the cursor is: what stands before it in the line, and the lines around."""

    session: EditorSession
    source: Source
    library: Library
    line: int
    before: str
    around: tuple[n.Statement, ...]  # outermost first

    @property
    def parent(self) -> str:
        """The kind of line that this one stands under."""
        return kind_of(self.around[-1].node) if self.around else FILE


def movements(at: Place) -> Iterator[lsp.CompletionItem]:
    """Movements by their names, and by their other names, which bring the name that the library declares."""
    asking, library = at.source, at.library
    for key, declared in library.movements.items():
        for name in library.scopes.spoken([(declared.name, declared.span.source)], asking):
            yield item(at, name, lsp.CompletionItemKind.Class, NAME, _about(library, key), quoted=True)
    for other, key in library.aliases.items():
        declared = library.movements[key]
        label = " ".join(word[:1].upper() + word[1:] for word in other.split(" "))
        for name in library.scopes.spoken([(declared.name, declared.span.source)], asking):
            yield item(at, label, lsp.CompletionItemKind.Class, NAME, name, insert=name, quoted=True)


def _about(library: Library, key: str) -> str | None:
    """What a movement trains, where it was linked already: hundreds are not linked for a list."""
    movement = library.linked(key)
    return trains(movement) if movement is not None else None


def muscles(at: Place) -> Iterator[lsp.CompletionItem]:
    """Muscles and groups of them."""
    library = at.library
    words = [(word, library.words[word].source) for word in (*library.muscles, *library.groups)]
    for word in library.scopes.spoken(words, at.source):
        title = library.muscles[word].title if word in library.muscles else None
        yield item(at, word, lsp.CompletionItemKind.EnumMember, WORD, title)


def subjects(at: Place) -> Iterator[lsp.CompletionItem]:
    """Whom a rule may be for."""
    yield item(at, "every muscle", lsp.CompletionItemKind.Keyword, WORD)
    yield from muscles(at)
    yield from patterns(at)


def patterns(at: Place) -> Iterator[lsp.CompletionItem]:
    """Patterns that some movement names."""
    yield from (item(at, word, lsp.CompletionItemKind.Enum, WORD, "pattern") for word in sorted(at.library.patterns()))


def measures(at: Place) -> Iterator[lsp.CompletionItem]:
    """What a rule can bound."""
    for measure in MEASURES:
        yield item(at, measure.name, lsp.CompletionItemKind.Property, WORD, measure.example)


def equipment(at: Place) -> Iterator[lsp.CompletionItem]:
    """Equipment by its words."""
    words = ((word, at.library.words[f"equipment {word}"].source) for word in at.library.equipment)
    for word in at.library.scopes.spoken(words, at.source):
        yield item(at, word, lsp.CompletionItemKind.EnumMember, WORD)


def rulesets(at: Place) -> Iterator[lsp.CompletionItem]:
    """Rule sets that a plan may follow."""
    kept = ((name, each.span.source) for name, each in at.library.rulesets.items())
    for name in at.library.scopes.spoken(kept, at.source):
        yield item(at, name, lsp.CompletionItemKind.Interface, WORD)


def templates(at: Place) -> Iterator[lsp.CompletionItem]:
    """Templates that a plan may be made from."""
    kept = ((name, each.span.source) for name, each in at.library.templates.items())
    for name in at.library.scopes.spoken(kept, at.source):
        yield item(at, name, lsp.CompletionItemKind.Function, WORD)


def progressions(at: Place) -> Iterator[lsp.CompletionItem]:
    """Progressions, the shipped ones among them."""
    every = {**at.library.shipped_progressions(), **at.library.progressions}
    yield from (item(at, name, lsp.CompletionItemKind.Function, WORD) for name in every)


def blocks(at: Place) -> Iterator[lsp.CompletionItem]:
    """The blocks of the plan around: those that a block may be like, and a rule may speak of."""
    for line in at.around[0].body if at.around else ():
        if isinstance(line.node, n.BlockHead) and line.node.span.line != at.line:
            yield item(at, line.node.name.text, lsp.CompletionItemKind.Module, NAME, quoted=True)


def days(at: Place) -> Iterator[lsp.CompletionItem]:
    """The days of the block around, and of those that it is like."""
    for block in at.around[0].body if at.around else ():
        for line in block.body:
            if isinstance(line.node, n.DayHead) and line.node.span.line != at.line:
                yield item(at, line.node.slot.text, lsp.CompletionItemKind.Event, WORD, line.node.label)


def models(at: Place) -> Iterator[lsp.CompletionItem]:
    """Repetition-maximum models."""
    yield from (item(at, name, lsp.CompletionItemKind.Constant, WORD) for name in MODELS)


def files(at: Place) -> Iterator[lsp.CompletionItem]:
    """What a `use` line may name of the shipped library."""
    folder = library_folder()
    for file in sorted(folder.rglob("*.plan")):
        name = ".".join(("stdlib", *file.relative_to(folder).with_suffix("").parts))
        yield item(at, name, lsp.CompletionItemKind.Module, re.compile(r"[\w.\-]*$"))


def movements_and_muscles(at: Place) -> Iterator[lsp.CompletionItem]:
    """What an athlete may avoid."""
    yield from movements(at)
    yield from muscles(at)
    yield from patterns(at)


# ---- one item ------------------------------------------------------------------------------------


def item(
    at: Place,
    label: str,
    kind: lsp.CompletionItemKind,
    begun: re.Pattern[str],
    detail: str | None = None,
    *,
    insert: str | None = None,
    quoted: bool = False,
    first: bool = False,
) -> lsp.CompletionItem:
    """One proposal, which takes the place of what was begun; names that the grammar would not read are quoted."""
    text = insert or label
    if quoted and not _reads_as_name(text):
        text = f'"{text}"'
    match = begun.search(at.before)
    start = _start_of_name(at.before, match.start(), label) if match else len(at.before)
    edit = lsp.TextEdit(
        lsp.Range(
            at.session.positions.position(at.source, at.line, start),
            at.session.positions.position(at.source, at.line, len(at.before)),
        ),
        text,
    )
    return lsp.CompletionItem(
        label, kind=kind, detail=detail, text_edit=edit, sort_text=f"{'0' if first else '1'}{label}"
    )


def _start_of_name(before: str, first: int, label: str) -> int:
    """Where the begun name starts: the longest end of the line that the label, too, begins with."""
    folded = label.casefold()
    for start in range(first, len(before)):
        apart = start == 0 or not before[start - 1].isalnum()
        if apart and before[start:].strip() and folded.startswith(before[start:].casefold()):
            return start
    begun = WORD.search(before)
    return begun.start() if begun else len(before)


def _reads_as_name(text: str) -> bool:
    """True for capitalised words, which need no quotes."""
    _, _, name = text.rpartition(".")
    return all(re.fullmatch(r"[A-ZÀ-ÖØ-Þ][\w'’.\-]*", word) for word in name.split(" "))
