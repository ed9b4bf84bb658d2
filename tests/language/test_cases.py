"""Every `NAME.plan` in a folder here says what it should come to: in `NAME.csv`, in `NAME.errors`, or in both.

The expected files are written by hand from the language's reference; this runner writes nothing. A `.csv` names in its
header the columns that the case is about. Without an `.errors` beside it a case must be free of findings.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from setwright.diagnostics import Diagnostic
from setwright.pipeline import EVERY_ATHLETE, Compiled, compile
from setwright.render.csv import COLUMNS, rows

HERE = Path(__file__).parent
CASES = sorted(path for path in HERE.glob("*/*.plan") if path.parent.name != "first_examples")


@pytest.mark.parametrize("plan", CASES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_case(plan: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(plan.parent)
    sheet, errors = plan.with_suffix(".csv"), plan.with_suffix(".errors")
    assert sheet.exists() or errors.exists(), f"{plan.name} has no {sheet.name} and no {errors.name} beside it"
    compiled = compile(plan.name, athletes=(EVERY_ATHLETE,))
    expected = errors.read_text(encoding="utf-8").splitlines() if errors.exists() else []
    assert [_finding(diagnostic, plan.name) for diagnostic in compiled.diagnostics] == expected
    if sheet.exists():
        header, *body = csv.reader(sheet.read_text(encoding="utf-8").splitlines())
        assert _sheet(compiled, header) == body


def _finding(diagnostic: Diagnostic, file: str) -> str:
    code, place = diagnostic.code, str(diagnostic.span).removeprefix(f"{file}:")
    near = f" ({diagnostic.help})" if diagnostic.help and diagnostic.help.startswith("Did you mean") else ""
    return f"{place} {diagnostic.severity.value} {code.number} {code.name}: {diagnostic.message}{near}"


def _sheet(compiled: Compiled, columns: list[str]) -> list[list[str]]:
    places = [COLUMNS.index(column) for column in columns]
    return [[row[place] for place in places] for one in compiled.compilations for row in rows(one.plan)]
