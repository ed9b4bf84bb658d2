"""What is set for the sheets of a folder: the table `[sheets]` of its `setwright.toml`.

Comes in: the file, as text. Goes out: `Setting`s that know their line, and diagnostics.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from typing import Final

from setwright.diagnostics import Diagnostic
from setwright.diagnostics.catalogue import sheets as codes
from setwright.record import record
from setwright.source import Source, Span
from setwright.suggest import did_you_mean

TABLE: Final = "sheets"
SETTINGS: Final = ("club", "logo", "colour", "language", "template")
LONGEST: Final = 200  # characters


@record
class Setting:
    """One setting as written, and where; `typed` on the command line or not."""

    text: str
    span: Span
    typed: bool


def given(options: Mapping[str, str | None], problems: list[Diagnostic]) -> dict[str, Setting]:
    """Those of the command line, which stand in messages as `--club` and what was typed."""
    written = {name: text for name, text in options.items() if text is not None}
    spans = {name: Span(Source(f"--{name}", text), 1, 0, len(text)) for name, text in written.items()}
    return _checked({name: (text, spans[name]) for name, text in written.items()}, problems, typed=True)


def read(source: Source, problems: list[Diagnostic]) -> dict[str, Setting]:
    """Those of the file; a wrong one is a problem, and left out."""
    try:
        tables = tomllib.loads(source.text)
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        problems.append(_no_toml(source, error))
        return {}
    problems.extend(_unknown(source, name, (TABLE,), "") for name in tables if name != TABLE)
    table = tables.get(TABLE, {})
    if not isinstance(table, dict):
        problems.append(codes.UNKNOWN_SETTING.at(_line_of(source, TABLE, ""), name=TABLE, help="Write `[sheets]`."))
        return {}
    problems.extend(_unknown(source, name, SETTINGS, TABLE) for name in table if name not in SETTINGS)
    known = {name: (value, _line_of(source, name, TABLE)) for name, value in table.items() if name in SETTINGS}
    return _checked(known, problems, typed=False)


def _checked(
    written: Mapping[str, tuple[object, Span]], problems: list[Diagnostic], *, typed: bool
) -> dict[str, Setting]:
    """Each has to be a line of text that can be seen."""
    kept: dict[str, Setting] = {}
    for name, (value, span) in written.items():
        if isinstance(value, str) and value.strip() and value.isprintable() and len(value) <= LONGEST:
            kept[name] = Setting(value.strip(), span, typed)
        else:
            problems.append(codes.SETTING_WITHOUT_TEXT.at(span, name=name))
    return kept


def _unknown(source: Source, name: str, known: tuple[str, ...], table: str) -> Diagnostic:
    return codes.UNKNOWN_SETTING.at(_line_of(source, name, table), name=name, help=did_you_mean(name, known))


def _no_toml(source: Source, error: Exception) -> Diagnostic:
    """tomllib ends its messages with `(at line 2, column 8)`."""
    said, _, place = str(error).partition(" (at ")
    numbers = [int(number) for number in re.findall(r"\d+", place)]
    line, column = numbers if len(numbers) == 2 else (len(source.lines), 1)
    return codes.BROKEN_SETTINGS.at(Span(source, line, column - 1, column), reason=said[:1].lower() + said[1:])


def _line_of(source: Source, name: str, table: str) -> Span:
    """The line that sets a name. tomllib keeps no places, so lines are looked through; the first where in doubt."""
    wanted, heading = [table, name] if table else [name], [""]
    for number, line in enumerate(source.lines, 1):
        key, _, value = line.partition("=")
        if line.lstrip().startswith("["):
            heading, key = _parts(line.strip().strip("[]")), ""
        path = [part for part in (*heading, *_parts(key)) if part]
        inline = path == [table] and re.search(rf"\b{re.escape(name)}\b", value)
        if path[: len(wanted)] == wanted or inline:
            return Span(source, number, len(line) - len(line.lstrip()), len(line.rstrip()))
    return Span(source, 1, 0, len(source.line(1)))


def _parts(key: str) -> list[str]:
    """The names of a dotted key."""
    return [part.strip(" \t\"'") for part in key.split(".")]
