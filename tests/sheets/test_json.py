"""JSON: every plan keeps to the published schema, and the schema lets nothing else in."""

from __future__ import annotations

import json
from collections.abc import Iterator
from importlib.resources import files
from typing import Any

import pytest
from jsonschema import Draft202012Validator, FormatChecker

from setwright.plan import Plan
from setwright.render import json as sheet
from sheets.sample_plans import hostile, long, reported, small

SCHEMA = json.loads(files("setwright.render").joinpath("plan.schema.json").read_text())


def document(plan: Plan) -> Any:
    made = reported(plan)
    return json.loads(sheet.document(made.plan, made.volume, made.overview))


def test_the_schema_is_one() -> None:
    Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("plan", [small(), hostile(), long(5)], ids=["small", "hostile", "long"])
def test_plans_keep_to_the_schema(plan: Plan) -> None:
    checker = Draft202012Validator(SCHEMA, format_checker=FormatChecker())
    assert [error.message for error in checker.iter_errors(document(plan))] == []


def test_every_object_is_closed_and_described() -> None:
    objects = [node for node in nodes(SCHEMA) if node.get("type") == "object"]
    assert len(objects) > 20
    for node in objects:
        assert node["additionalProperties"] is False
        optional = {"log"} if node is SCHEMA else set()  # what was done is there where a log was given
        assert set(node["required"]) == set(node["properties"]) - optional
        for name, of in node["properties"].items():
            assert "description" in of or "$ref" in of, name


def test_a_stray_key_is_refused() -> None:
    made = document(small())
    made["plan"]["weeks"][0]["mood"] = "good"
    assert not Draft202012Validator(SCHEMA).is_valid(made)


def test_numbers_are_numbers_and_folders_stay_at_home() -> None:
    made = document(small())
    lines = made["plan"]["weeks"][0]["sessions"][0]["lines"]
    top = lines[0]["segments"][3]
    assert top["load"] == {
        "amount": 87.5,
        "unit": "kg",
        "handling": "bar",
        "per_side": [25, 5, 2.5, 1.25],
        "bar": {"amount": 20, "unit": "kg"},
        "model": None,
        "spread": None,
    }
    assert top["intensity"] == {"kind": "effort", "text": "RPE 8", "rpe_low": 8, "rpe_high": 8, "scale": "RPE"}
    assert lines[7]["segments"][0]["reps"] == {
        "text": "5+",
        "kind": "at-least",
        "low": 5,
        "high": None,
        "parts": [],
        "per_side": False,
    }
    assert lines[0]["written"] == {"file": "harbour.plan", "line": 1}
    assert [line["projected"] for line in lines[:2]] == [True, False]
    assert lines[0]["advance"] == "advance double-climb(step: 2.5 kg)"
    assert lines[0]["advance_words"].startswith("When every set has")
    assert "/home/" not in json.dumps(made)


def nodes(node: Any) -> Iterator[dict[str, Any]]:
    """Every object of the schema's own text, however deep."""
    if isinstance(node, dict):
        yield node
        for value in node.values():
            yield from nodes(value)
    elif isinstance(node, list):
        for value in node:
            yield from nodes(value)
