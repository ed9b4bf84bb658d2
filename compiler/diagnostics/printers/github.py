"""Findings as notes on a pull request: GitHub's workflow commands, one a line.

Source of the form and its escapes: GitHub Docs, "Workflow commands for GitHub Actions", and actions/toolkit's
`packages/core/src/command.ts`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.diagnostics.printers.characters import visible

if TYPE_CHECKING:
    from collections.abc import Sequence

    from setwright.diagnostics.plain import Record

_COMMANDS = {"error": "error", "warning": "warning", "note": "notice"}


def text(records: Sequence[Record]) -> str:
    """One command a finding; nothing at all where there is none."""
    return "".join(_command(record) + "\n" for record in records)


def _command(record: Record) -> str:
    properties = {
        "file": visible(record["path"]),
        "line": str(record["line"]),
        "endLine": str(record["line"]),
        "col": str(record["column"]),
        "endColumn": str(record["end_column"]),
        "title": f"{record['code']} {record['name']}",
    }
    listed = ",".join(f"{name}={_property(value)}" for name, value in properties.items())
    return f"::{_COMMANDS[record['severity']]} {listed}::{_data(_message(record))}"


def _message(record: Record) -> str:
    related = [f"{place['path']}:{place['line']}: {place['message']}" for place in record["related"]]
    help_line = [f"help: {record['help']}"] if record["help"] else []
    return "\n".join(visible(part) for part in (record["message"], *related, *help_line))


def _data(value: str) -> str:
    return value.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _property(value: str) -> str:
    return _data(value).replace(":", "%3A").replace(",", "%2C")
