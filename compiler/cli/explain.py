"""`setwright explain`: what a diagnostic means, an example that fails, and the same one mended."""

from __future__ import annotations

from textwrap import fill
from typing import TYPE_CHECKING

import click

from setwright.cli.options import examples
from setwright.cli.terminal import put
from setwright.cli.trouble import Trouble
from setwright.diagnostics.printers.characters import visible

if TYPE_CHECKING:
    from setwright.diagnostics import Code

_WIDTH = 100


@click.command(epilog=examples("setwright explain unknown-movement"))
@click.argument("code", required=False)
@click.option("--list", "listing", is_flag=True, help="Every code, its name and title.")
def command(code: str | None, listing: bool) -> None:
    """The long text of a diagnostic, by its CODE (SW0201) or its name (unknown-movement)."""
    from setwright.diagnostics.catalogue import every_code

    if listing:
        put("".join(f"{one.number}  {one.severity.value:<7}  {one.name}: {one.title}\n" for one in every_code()))
    elif code:
        put(explanation(_named(code)))
    else:
        raise click.UsageError("Name a code, or ask for --list.")


def explanation(code: Code) -> str:
    """The page of one code."""
    parts = [f"{code.number} {code.name} ({code.severity.value})", code.title, *_paragraphs(code.text)]
    parts += [f"This fails{_where(code)}:", _example(code.failing)]
    parts += [f"Beside it, {name}:\n\n{_example(text)}" for name, text in code.files]
    parts += ["This is the same, mended:", _example(code.mended)]
    return "\n\n".join(parts) + "\n"


def _where(code: Code) -> str:
    """The name of the file that an example stands in, where it is no plan."""
    return "" if code.file.endswith(".plan") else f", in {code.file}"


def _named(asked: str) -> Code:
    from setwright.diagnostics.catalogue import every_code
    from setwright.suggest import did_you_mean

    folded = asked.strip().casefold()
    for code in every_code():
        if folded in (code.number.casefold(), code.name):
            return code
    known = [word for code in every_code() for word in (code.number, code.name)]
    near = did_you_mean(asked, known) or "`setwright explain --list` lists them."
    raise Trouble(f"no diagnostic is called `{asked}`. {near}")


def _paragraphs(text: str) -> list[str]:
    return [fill(" ".join(paragraph.split()), _WIDTH) for paragraph in text.strip().split("\n\n")]


def _example(text: str | bytes) -> str:
    """Indented lines; bytes that are no text, and what cannot be seen, as escapes; a long example cut short."""
    written = text.decode("utf-8", "surrogateescape") if isinstance(text, bytes) else text
    lines = [visible(line.replace("\t", "\\t")) for line in written.strip("\n").split("\n")]
    shown = [line if len(line) <= _WIDTH else line[: _WIDTH - 1] + "…" for line in lines[:40]]
    more = [f"(and {len(lines) - 40} lines more)"] if len(lines) > 40 else []
    return "\n".join(f"    {line}".rstrip() for line in [*shown, *more])
