"""Findings in the format that code hosts and editors import: SARIF 2.1.0.

Source of the form: OASIS, "Static Analysis Results Interchange Format (SARIF) Version 2.1.0 Plus Errata 01", 2023.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from collections.abc import Sequence

    from setwright.diagnostics.model import Code
    from setwright.diagnostics.plain import Place, Record

SCHEMA: Final = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
FINGERPRINT: Final = "setwright/v1"
_LEVELS: Final = {"error": "error", "warning": "warning", "note": "note"}


def text(records: Sequence[Record], version: str) -> str:
    """The records as one run of the tool, in ASCII, ending in a line end."""
    from json import dumps

    from setwright.diagnostics.catalogue import every_code

    found = {record["code"] for record in records}
    codes = [code for code in every_code() if code.number in found]
    indices = {code.number: at for at, code in enumerate(codes)}
    driver = {
        "name": "setwright",
        "semanticVersion": version,
        "rules": [_rule(code) for code in codes],
    }
    run = {
        "tool": {"driver": driver},
        "columnKind": "unicodeCodePoints",
        "results": [_result(record, indices[record["code"]]) for record in records],
    }
    return dumps({"$schema": SCHEMA, "version": "2.1.0", "runs": [run]}, indent=2) + "\n"


def _rule(code: Code) -> dict[str, object]:
    return {
        "id": code.number,
        "name": code.name,
        "shortDescription": {"text": code.title},
        "fullDescription": {"text": code.text},
        "help": {"text": f"{code.text}\n\nThe same put right:\n\n{code.mended}"},
        "defaultConfiguration": {"level": _LEVELS[code.severity.value]},
    }


def _result(record: Record, index: int) -> dict[str, object]:
    result: dict[str, object] = {
        "ruleId": record["code"],
        "ruleIndex": index,
        "level": _LEVELS[record["severity"]],
        "message": {"text": _message(record)},
        "locations": [{"physicalLocation": _location(record, record["source"])}],
        "partialFingerprints": {FINGERPRINT: _fingerprint(record)},
    }
    if record["related"]:
        result["relatedLocations"] = [
            {
                "id": at,
                "message": {"text": place["message"]},
                "physicalLocation": _location(place, place["source"]),
            }
            for at, place in enumerate(record["related"], 1)
        ]
    fix = record["fix"]
    if fix is not None:
        replacement = {"deletedRegion": _region(fix), "insertedContent": {"text": fix["replacement"]}}
        result["fixes"] = [
            {"artifactChanges": [{"artifactLocation": {"uri": _uri(fix["path"])}, "replacements": [replacement]}]}
        ]
    return result


def _message(record: Record) -> str:
    return f"{record['message']}\n{record['help']}" if record["help"] else record["message"]


def _location(place: Place, source: str) -> dict[str, object]:
    return {
        "artifactLocation": {"uri": _uri(place["path"])},
        "region": {**_region(place), "snippet": {"text": source[place["column"] - 1 : place["end_column"] - 1]}},
    }


def _region(place: Place) -> dict[str, int]:
    return {"startLine": place["line"], "startColumn": place["column"], "endColumn": place["end_column"]}


def _uri(path: str) -> str:
    """A path as the format wants it: relative ones with slashes, absolute ones under `file:`."""
    from pathlib import PurePath
    from urllib.parse import quote

    pure = PurePath(path)
    return pure.as_uri() if pure.is_absolute() else quote(pure.as_posix())


def _fingerprint(record: Record) -> str:
    """The same finding of the same line keeps it, whatever lines come before."""
    from hashlib import sha256

    said = "\n".join((record["path"], record["code"], record["source"].strip(), record["message"]))
    return sha256(said.encode("utf-8", "surrogatepass")).hexdigest()[:32]
