"""The command `setwright` as a person types it, inside the test's own process."""

from __future__ import annotations

from inspect import signature
from typing import Any

from click.testing import CliRunner, Result

from setwright.cli import command

# Until click 8.2 a runner mixed standard error into standard output unless told not to.
_APART: dict[str, Any] = {"mix_stderr": False} if "mix_stderr" in signature(CliRunner).parameters else {}


def run_command(*arguments: str, stdin: str | bytes | None = None) -> Result:
    """Exit code, standard output and standard error."""
    return CliRunner(**_APART).invoke(command, list(arguments), input=stdin)
