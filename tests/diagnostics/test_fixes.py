"""Fixes: what is one, and that those of the catalogue's own examples mend what they are for."""

from __future__ import annotations

from pathlib import Path
from unicodedata import normalize

import pytest

from setwright import compile
from setwright.diagnostics import Code, Diagnostic, Fix, Severity
from setwright.diagnostics.catalogue import every_code
from setwright.source import Source, Span
from setwright.suggest import Suggestion, did_you_mean

UNKNOWN = Code("SW0201", "unknown-movement", Severity.ERROR, "", "no movement is called `{name}`", "", "", "")
SHOWN = tuple(code for code in every_code() if isinstance(code.failing, str) and code.file.endswith(".plan"))


def at(line: str, text: str, help: str | None) -> Diagnostic:
    start = line.index(text)
    return UNKNOWN.at(Span(Source("a.plan", line), 1, start, start + len(text)), name=text, help=help)


def test_one_near_name_is_the_fix() -> None:
    found = at("  Bak Squat: 3 x 5", "Bak Squat", did_you_mean("Bak Squat", ["Back Squat", "Plank"]))
    assert found.fix == Fix(found.span, "Back Squat")
    assert found.fixes == (found.fix,)


def test_of_several_near_names_a_person_chooses() -> None:
    found = at("  Row", "Row", Suggestion("Did you mean `Bow` or `Raw`?", "Row", ("Bow", "Raw")))
    assert found.fix is None
    assert [fix.replacement for fix in found.fixes] == ["Bow", "Raw"]


def test_quotes_stay_and_other_encodings_of_a_letter_are_the_same() -> None:
    found = at('  "E\u0301lan Ro"', '"E\u0301lan Ro"', did_you_mean(normalize("NFC", "E\u0301lan Ro"), ["Élan Row"]))
    assert found.fix is not None
    assert found.fix.replacement == '"Élan Row"'


def test_a_name_that_is_not_all_of_the_span_is_not_replaced() -> None:
    assert at("  must seets 3", "must seets 3", did_you_mean("seets", ["sets"])).fixes == ()
    assert at("  Bak Squat", "Bak Squat", "Write another.").fixes == ()


@pytest.mark.parametrize("code", SHOWN, ids=lambda code: code.name)
def test_a_fix_mends_what_it_is_for(code: Code, tmp_path: Path) -> None:
    for name, text in code.files:
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    assert isinstance(code.failing, str)
    before = found(code.failing, tmp_path)
    for diagnostic in before:
        for fix in diagnostic.fixes:
            if fix.span.source.path.endswith("example.plan"):
                after = found(applied(code.failing, fix), tmp_path)
                places = [(each.code, each.span.line, each.span.start) for each in after]
                assert (diagnostic.code, diagnostic.span.line, diagnostic.span.start) not in places
                assert errors(after) <= errors(before)


def found(text: str, folder: Path) -> tuple[Diagnostic, ...]:
    return compile(str(folder / "example.plan"), athletes=("*",), root=str(folder), text=text).diagnostics


def errors(diagnostics: tuple[Diagnostic, ...]) -> int:
    return sum(each.severity is Severity.ERROR for each in diagnostics)


def applied(text: str, fix: Fix) -> str:
    lines = text.split("\n")
    line = lines[fix.span.line - 1]
    lines[fix.span.line - 1] = line[: fix.span.start] + fix.replacement + line[fix.span.end :]
    return "\n".join(lines)
