"""SARIF against its schema, for every code of the catalogue and for what `check` prints.

Source of `sarif-schema-2.1.0.json`: the schema of SARIF 2.1.0 (rtm.5) as the npm package @microsoft/jest-sarif
1.0.0-beta.0 carries it (lib/schemas/sarif-2.1.0-rtm.5.json, MIT licence); white space between its tokens is left out.
What the schema cannot say is from OASIS, "Static Analysis Results Interchange Format (SARIF) Version 2.1.0 Plus Errata
01", 2023, by the section.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft4Validator

from run_command import run_command
from setwright import __version__, compile
from setwright.diagnostics import Code
from setwright.diagnostics.catalogue import every_code
from setwright.diagnostics.plain import Record, records
from setwright.diagnostics.printers import sarif

SCHEMA = json.loads(Path(__file__).with_name("sarif-schema-2.1.0.json").read_text(encoding="utf-8"))
# Codes that a plan shows; those of the sheets come from what dresses them.
SHOWN = tuple(code for code in every_code() if code.failing and code.file.endswith(".plan"))
PLAN = """use stdlib.exercises
plan "Pier"
  block Base: 1 week
    day Mon
      Bak Squat: 3 x 5
      Bench Press 3 x 8
"""


def problems(log: dict[str, Any]) -> list[str]:
    return [f"{error.json_path}: {error.message}" for error in Draft4Validator(SCHEMA).iter_errors(log)]


def found(code: Code, folder: Path) -> list[Record]:
    for name, text in code.files:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    file = folder / code.file
    file.write_bytes(code.failing if isinstance(code.failing, bytes) else code.failing.encode())
    return records(compile(str(file), athletes=("*",), root=str(folder)).diagnostics)


def test_the_schema_is_one_and_would_refuse_other_things() -> None:
    Draft4Validator.check_schema(SCHEMA)
    assert problems({"version": "2.1.0", "runs": [{"results": []}]}) == ["$.runs[0]: 'tool' is a required property"]


@pytest.mark.parametrize("code", SHOWN, ids=lambda code: code.name)
def test_every_code_is_valid_sarif(code: Code, tmp_path: Path) -> None:
    told = found(code, tmp_path)
    log = json.loads(sarif.text(told, __version__))
    assert problems(log) == []
    (run,) = log["runs"]
    rules = run["tool"]["driver"]["rules"]
    assert len(run["results"]) == len(told)
    for result, record in zip(run["results"], told, strict=True):
        # 3.27.6: ruleIndex is the place of the rule among the driver's rules
        assert rules[result["ruleIndex"]]["id"] == result["ruleId"] == record["code"]
        assert result["level"] == record["severity"]
        for place in result["locations"]:
            held(place["physicalLocation"])
        for number, place in enumerate(result.get("relatedLocations", ()), 1):
            assert place["id"] == number  # 3.28.2: unique within the result
            held(place["physicalLocation"])
    # 3.19.23: the driver's rules are distinct
    assert len({rule["id"] for rule in rules}) == len(rules)


def held(place: dict[str, Any]) -> None:
    """3.30.5 to 3.30.8: lines and columns count from 1, and the end lies not before the start."""
    region = place["region"]
    assert region["startLine"] >= 1
    assert 1 <= region["startColumn"] <= region["endColumn"]


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    file = tmp_path / "pier plan.plan"
    file.write_text(PLAN, encoding="utf-8")
    return file


def test_check_prints_it(plan: Path) -> None:
    done = run_command("check", str(plan), "--format", "sarif")
    assert done.exit_code == 1
    log = json.loads(done.stdout)
    assert problems(log) == []
    assert log["version"] == "2.1.0"
    (run,) = log["runs"]
    first, second = run["results"]
    assert first["fixes"][0]["artifactChanges"][0]["replacements"][0]["insertedContent"]["text"] == "Back Squat"
    assert second["fixes"][0]["artifactChanges"][0]["replacements"][0]["insertedContent"]["text"] == ":"
    # 3.4.3: a URI, so a blank is written %20
    uri = first["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]
    assert uri == plan.as_uri()


def test_without_findings_there_are_no_results(tmp_path: Path) -> None:
    file = tmp_path / "pier.plan"
    file.write_text('plan "Pier"\n  block Base: 1 week\n    day Mon\n      note "Walk."\n', encoding="utf-8")
    log = json.loads(run_command("check", str(file), "--format", "sarif").stdout)
    assert problems(log) == []
    assert log["runs"][0]["results"] == []  # 3.14.23: empty where a scan found nothing


def test_check_prints_workflow_commands_for_github(plan: Path) -> None:
    done = run_command("check", str(plan), "--format", "github")
    assert done.exit_code == 1
    lines = [line for line in done.stdout.splitlines() if line.startswith("::error ")]
    assert len(lines) == 2
    assert "line=5,endLine=5,col=7,endColumn=16" in lines[0]
    assert "Bak Squat" in lines[0]
