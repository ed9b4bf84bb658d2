"""`setwright lsp`: the language server, over standard input and output."""

from __future__ import annotations

import click

from setwright.cli.options import examples
from setwright.cli.trouble import Trouble

EXTRA = "lsp"


@click.command(epilog=examples("setwright lsp --check"))
@click.option("--stdio", is_flag=True, help="Standard input and output, which is all there is; some editors say so.")
@click.option("--check", is_flag=True, help="Say whether all that the server needs is installed, and end.")
def command(stdio: bool, check: bool) -> None:
    """The language server that editors start: findings as one types, names, loads on hover.

    Exit code 0: done. 2: the extra is not installed.
    """
    try:
        from setwright.editor.server import run
    except ModuleNotFoundError as error:
        if (error.name or "").partition(".")[0] not in ("pygls", "lsprotocol"):
            raise
        raise Trouble(f"`lsp` needs `pip install 'setwright[{EXTRA}]'`") from error
    if check:
        click.echo("the language server is ready")
        return
    run()
