"""The bytes a plan comes in change nothing: line ends, marks, blanks, comments, indentation, composed letters.

Each form of one plan must give the sheet of the plain one, which stands in `names/every_script.csv`.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from pathlib import Path

import pytest

from setwright.pipeline import compile
from setwright.render.csv import rows

PLAIN = Path(__file__).parent / "names" / "every_script.plan"


def commented(text: str) -> str:
    """A comment after every line, on lines of their own at odd columns, and blank lines."""
    return "".join(f'{line}   # said: "3 x 5"\n   # between\n\n' for line in text.splitlines())


def widened(text: str) -> str:
    """Five spaces a level instead of two."""
    return re.sub(r"^(?:  )+", lambda found: " " * (len(found[0]) // 2 * 5), text, flags=re.MULTILINE)


FORMS: dict[str, Callable[[str], str]] = {
    "CRLF": lambda text: text.replace("\n", "\r\n"),
    "CR alone": lambda text: text.replace("\n", "\r"),
    "byte-order mark": lambda text: "\ufeff" + text,
    "no newline at the end": lambda text: text.rstrip("\n"),
    "decomposed letters": lambda text: unicodedata.normalize("NFD", text),
    "trailing blanks": lambda text: text.replace("\n", " \t \n"),
    "no-break spaces": lambda text: re.sub(r"(?<=\S) (?=\S)", "\u00a0", text),
    "comments everywhere": commented,
    "wide indentation": widened,
    "language 1": lambda text: "language 1\n" + text,
    "capitals": lambda text: text.replace("Übung Zug: 3", "ÜBUNG ZUG: 3").replace('"schritt 2": 2', '"SCHRITT 2": 2'),
}


@pytest.mark.parametrize("form", FORMS)
def test_form(form: str, tmp_path: Path) -> None:
    plain = PLAIN.read_text(encoding="utf-8")
    changed = FORMS[form](plain)
    assert changed != plain
    file = tmp_path / "form.plan"
    file.write_bytes(changed.encode())
    assert sheet(file) == sheet(PLAIN)


def sheet(file: Path) -> list[tuple[str, ...]]:
    compiled = compile(str(file))
    assert [str(found.span) + found.message for found in compiled.diagnostics] == []
    return [row for one in compiled.compilations for row in rows(one.plan)]
