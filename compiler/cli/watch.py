"""`setwright watch`: builds on save and shows the newest sheet in a browser on this machine."""

from __future__ import annotations

import sys
from datetime import datetime
from threading import Event, Thread
from time import perf_counter
from typing import TYPE_CHECKING

import click

from setwright.cli.dress import dress_options
from setwright.cli.findings import require
from setwright.cli.options import EXAMPLE, athlete_option, day, examples, log_option, on_option, root_option
from setwright.cli.terminal import put, tell, wants_colour
from setwright.cli.trouble import Trouble

if TYPE_CHECKING:
    from setwright.preview.building import Built, Wanted
    from setwright.preview.stage import Stage


@click.command(epilog=examples(f"setwright watch {EXAMPLE} --once"))
@click.argument("file", type=click.Path())
@athlete_option
@log_option
@on_option
@click.option(
    "--port", type=click.IntRange(0, 65535), default=0, help="The port on this machine; any free one by itself."
)
@click.option("--open", "opens", is_flag=True, help="Open the page in the browser.")
@click.option("--once", is_flag=True, help="Build once, say what was found, and end: to try it out.")
@dress_options
@root_option
def command(
    file: str,
    athletes: tuple[str, ...],
    logs: tuple[str, ...],
    on: datetime | None,
    port: int,
    opens: bool,
    once: bool,
    root: str | None,
    **dress: str | None,
) -> None:
    """Keep a sheet of FILE open in the browser: every save builds it again, and it stays where you read it.

    The page is for this machine alone (127.0.0.1). Errors stand over the last sheet that could be built. Ctrl+C ends.
    """
    for path in (file, *logs):
        require(path)
    if file == "-":
        raise Trouble("`watch` wants a file: standard input cannot be saved again")
    _require_extra()
    from setwright.preview.building import Wanted
    from setwright.preview.server import Server
    from setwright.preview.stage import Stage

    stage, stop = Stage(), Event()
    try:
        server = Server(stage, port)
    except OSError as error:
        raise Trouble(f"port {port}: {error.strerror or error}") from error
    Thread(target=server.serve_forever, daemon=True).start()
    try:
        tell(f"{server.address} shows {file}")
        if opens:
            import webbrowser

            webbrowser.open(server.address)
        follow(Wanted(file, athletes, root, tuple(dress.items()), logs, day(on)), stage, stop, once=once)
    except KeyboardInterrupt:
        tell("")
    finally:
        stop.set()
        server.close()


def _require_extra() -> None:
    try:
        import watchfiles  # noqa: F401
    except ModuleNotFoundError as missing:
        raise Trouble("`watch` needs `pip install 'setwright[watch]'`") from missing


def follow(wanted: Wanted, stage: Stage, stop: Event, *, once: bool = False) -> None:
    """Build, show and report, and again on every change, until told to stop."""
    from setwright.preview.building import built
    from setwright.preview.changes import wait_for_change

    made = None
    while True:
        begun = perf_counter()
        made = built(wanted, made.states if made else ())
        stage.show(made)
        _report(made, perf_counter() - begun)
        if once or not wait_for_change(made.states, stop):
            return


def _report(made: Built, seconds: float) -> None:
    from setwright.diagnostics.printers import terminal

    if made.found:
        put(terminal.text(list(made.found), colour=wants_colour(sys.stderr)), sys.stderr)
    count = len(made.pages)
    tell(f"built {count} sheet{'' if count == 1 else 's'} in {seconds:.1f} s" if count else "no sheet: see the errors")
