"""`setwright fmt`: files in the one style; written over, checked, or shown as a difference."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

import click

from setwright.cli.findings import STDIN, STDIN_SHOWN, require
from setwright.cli.folder import replace_file
from setwright.cli.options import EXAMPLE, examples
from setwright.cli.terminal import put, tell, wants_colour
from setwright.diagnostics.printers.characters import visible_lines

if TYPE_CHECKING:
    from setwright.diagnostics import Diagnostic
    from setwright.syntax.formatter import Formatter

_COLOURS = {"-": "red", "+": "green", "@": "cyan"}


@click.command(epilog=examples(f"setwright fmt --check {EXAMPLE}"))
@click.argument("files", nargs=-1, required=True, type=click.Path(), metavar="FILE...")
@click.option("--check", is_flag=True, help="Write nothing; name the files that would change, and exit with 1.")
@click.option("--diff", is_flag=True, help="Write nothing; show what would change.")
def command(files: tuple[str, ...], check: bool, diff: bool) -> None:
    """One style for all: the FILEs are written over where they are not in it; `-` goes from input to output.

    Two spaces a level; a day's movements, and rules that follow each other, in columns. Comments and blank lines stay,
    and what a plan means is not touched. A file with a line that cannot be read is left alone.

    Exit code 0: done. 1: a file cannot be read, or with --check is not in the style. 2: wrong usage.
    """
    from setwright.syntax.formatter import Formatter

    for file in files:
        require(file)
    formatter = Formatter()
    wrong: list[Diagnostic] = []
    untidy = False
    for file in dict.fromkeys(files):
        before = _bytes(file)
        after = _formatted(file, before, formatter)
        if isinstance(after, tuple):
            wrong.extend(after)
            continue
        untidy |= after != before
        if diff:
            put(_difference(file, before, after))
        if check:
            _tell_untidy(file, before, after)
        elif not diff:
            _write(file, before, after)
    _tell_wrong(wrong)
    sys.exit(1 if wrong or (check and untidy) else 0)


def _bytes(file: str) -> bytes:
    if file == STDIN:
        return sys.stdin.buffer.read()
    with open(file, "rb") as stream:
        return stream.read()


def _formatted(file: str, before: bytes, formatter: Formatter) -> bytes | tuple[Diagnostic, ...]:
    from setwright.files import decoded
    from setwright.source import Source

    source = decoded(before, _shown(file))
    if not isinstance(source, Source):
        return (source,)
    made = formatter.formatted(source)
    return made if isinstance(made, tuple) else made.encode()


def _shown(file: str) -> str:
    return STDIN_SHOWN if file == STDIN else file


def _write(file: str, before: bytes, after: bytes) -> None:
    if file == STDIN:
        put(after.decode())
    elif after != before:
        replace_file(file, after)
        tell(f"wrote {visible_lines(file)}")


def _tell_untidy(file: str, before: bytes, after: bytes) -> None:
    if after != before:
        tell(f"{visible_lines(_shown(file))}: not in the one style")


def _difference(file: str, before: bytes, after: bytes) -> str:
    """A unified difference; colours only on a terminal."""
    from difflib import unified_diff

    shown, colour = visible_lines(_shown(file)), wants_colour(sys.stdout)
    old, new = (text.decode("utf-8", "replace").splitlines() for text in (before, after))
    lines = [visible_lines(line) for line in unified_diff(old, new, shown, f"{shown} (formatted)", lineterm="")]
    if not lines and before != after:
        lines = [f"{shown}: only line ends, or what no editor shows, would change"]
    return "".join(f"{click.style(line, fg=_COLOURS.get(line[:1])) if colour else line}\n" for line in lines)


def _tell_wrong(wrong: list[Diagnostic]) -> None:
    if wrong:
        from setwright.diagnostics import plain
        from setwright.diagnostics.printers import terminal

        put(terminal.text(plain.records(tuple(wrong)), colour=wants_colour(sys.stderr)), sys.stderr)
