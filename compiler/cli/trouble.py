"""What goes wrong outside the plans (a missing file, a full disk, a fault of ours): one line and exit code 2."""

from __future__ import annotations

import errno
import os
import sys
from typing import IO, Any

import click

from setwright.diagnostics.printers.characters import visible


class Trouble(click.ClickException):
    """A usage that cannot work, in the words for it."""

    exit_code = 2

    def show(self, file: IO[Any] | None = None) -> None:
        """One line on standard error."""
        click.echo(f"setwright: {visible(self.format_message())}", file=file or sys.stderr)


def as_trouble(error: Exception) -> Exception:
    """The error as something to show: click's own and a closed pipe go through, everything else becomes one line."""
    if isinstance(error, click.ClickException | click.exceptions.Exit | click.Abort):
        return error
    if isinstance(error, OSError):
        return error if error.errno == errno.EPIPE else Trouble(_of_the_system(error))
    if os.environ.get("SETWRIGHT_DEBUG"):
        return error
    fault = f"{type(error).__name__}: {error}".splitlines()[0]
    return Trouble(f"a fault in setwright itself, not in your plan ({fault}); SETWRIGHT_DEBUG=1 shows where")


def _of_the_system(error: OSError) -> str:
    what = error.strerror or str(error) or type(error).__name__
    return f"{os.fsdecode(error.filename)}: {what}" if isinstance(error.filename, str | bytes) else what
