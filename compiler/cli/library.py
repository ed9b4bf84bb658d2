"""`setwright library`: search what plans can name, and show one thing whole."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from setwright.cli.findings import require
from setwright.cli.options import examples
from setwright.cli.terminal import put
from setwright.cli.trouble import Trouble
from setwright.diagnostics.printers.characters import visible, width

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from setwright.cli.entries import Entry


@click.command(epilog=examples('setwright library "Back Squat"'))
@click.argument("words", nargs=-1, metavar="[WORD]...")
@click.option("--in", "file", metavar="FILE", help="Look in this file and its imports too.")
def command(words: tuple[str, ...], file: str | None) -> None:
    """Search movements, muscles, groups, equipment, rule sets, progressions and templates for
    the WORDs together.

    A name, or a single match, is shown whole. Without a WORD everything is listed.
    """
    from setwright.cli.entries import entries
    from setwright.pipeline import library

    if file is not None:
        require(file)
    known = entries(library(file))
    asked = " ".join(" ".join(words).split())
    put("\n".join(visible(line) for line in _answer(known, asked)) + "\n")


_ALSO_CALLED = {"movement": ("exercise", "exercises"), "rule set": ("rule", "rules")}


def _answer(known: Sequence[Entry], asked: str) -> list[str]:
    folded = asked.casefold()
    found = [entry for entry in known if entry.is_about(folded)] or [
        entry
        for entry in known
        if folded in (entry.kind, _heading(entry.kind).casefold(), *_ALSO_CALLED.get(entry.kind, ()))
    ]
    exact = [entry for entry in found if entry.is_called(folded)] or (found if len(found) == 1 else [])
    if exact:
        return [line for entry in exact for line in ("", *entry.whole)][1:]
    if not found:
        from setwright.suggest import did_you_mean

        near = did_you_mean(asked, [entry.name for entry in known]) or "`setwright library` lists everything."
        raise Trouble(f"nothing in the library is about `{asked}`. {near}")
    return list(_listed(found))


def _listed(found: Sequence[Entry]) -> Iterator[str]:
    """A heading a kind, a line an entry, the names in one column."""
    kind = ""
    column = max(width(visible(entry.name)) for entry in found)
    for entry in found:
        if entry.kind != kind:
            yield from ([""] if kind else [])
            kind = entry.kind
            yield _heading(kind)
        gap = " " * (column - width(visible(entry.name)))
        yield f"  {entry.name}{gap}  {entry.brief}".rstrip()


def _heading(kind: str) -> str:
    return {"equipment": "Equipment"}.get(kind, f"{kind.capitalize()}s")
