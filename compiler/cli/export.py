"""`setwright export`: the sessions of a log as a table."""

from __future__ import annotations

import click

from setwright.cli.compiling import tell_or_exit
from setwright.cli.findings import compiled, require
from setwright.cli.options import examples, root_option


@click.command(epilog=examples("setwright export examples/mill-club-log/torvi.plan"))
@click.argument("log", type=click.Path(), metavar="LOG.plan")
@root_option
def command(log: str, root: str | None) -> None:
    """The sessions of a LOG as CSV, in UTF-8, one row a set. `import` reads it back."""
    from setwright.cli.importing import sessions_of
    from setwright.log.table import exported

    require(log)
    made = compiled(log, (), root)
    tell_or_exit(made.diagnostics)
    click.echo(exported(sessions_of(made, log)).encode(), nl=False)
