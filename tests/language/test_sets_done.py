"""What an entry of a log says of each set, and what is no entry."""

from __future__ import annotations

import pytest

from setwright.link.done import sets_done
from setwright.source import Source
from setwright.syntax import LineReader
from setwright.syntax import nodes as n


def entry(text: str) -> n.Prescription:
    parsed = LineReader().read(Source("log.plan", f"session 2027-01-04\n  Squat: {text}\n"))
    assert not parsed.diagnostics
    node = parsed.statements[0].body[0].node
    assert isinstance(node, n.Entry)
    return node.prescription


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("70 kg x 5, 5, 4", ["70 kg, 5", "70 kg, 5", "70 kg, 4"]),
        ("70 kg x 5, 5, 5, 4 @ RPE 8.5", ["70 kg, 5, RPE 8.5"] * 3 + ["70 kg, 4, RPE 8.5"]),
        ("155.5 lb x 5 @ 2 RIR, 5, 3 @ 1 RIR", ["155.5 lb, 5, 2 RIR", "155.5 lb, 5, 1 RIR", "155.5 lb, 3, 1 RIR"]),
        ("bodyweight x 8, 0", ["bodyweight, 8", "bodyweight, 0"]),
        ("bodyweight + 10 kg x 8", ["bodyweight + 10 kg, 8"]),
        ("bodyweight - 12.5 kg x 8/side", ["bodyweight - 12.5 kg, 8/side"]),
        ("60 kg x (1+1+1), 40 s, 30.5 m", ["60 kg, (1+1+1)", "60 kg, 40 s", "60 kg, 30.5 m"]),
        ("30 s/side, 1 min/side @ RPE 7", ["30 s/side, RPE 7", "1 min/side, RPE 7"]),
    ],
)
def test_sets(text: str, read: list[str]) -> None:
    sets = sets_done(entry(text))
    assert sets is not None
    assert [", ".join(str(value) for value in (one.load, one.reps, one.effort) if value) for one in sets] == read


@pytest.mark.parametrize(
    "text",
    [
        *("3 x 5", "70 kg x 5-6", "70 kg x 5+", "70 kg x max", "70 kg x 5 @ 80%", "70 kg x 5 @ RPE 11", "70 kg x 5.5"),
        *("70 kg x 5, rest 2 min", "70 -> 80 kg x 5", "70 kg x 5 then 60 kg x 5", "70 kg x 5, 60 x 5", "1500 kg x 5"),
        *("70 kg x 5 @ 8", "70 kg x 5, 5 kg", "70 kg x 5 @ bodyweight", "70 kg x 5 @ RPE 8 of Squat", "0 kg x 5"),
        *("70 kg/side x 5", "70 kg x 5 @ RPE 7-8", "70 kg x 1001", "70 kg x 7 h"),
    ],
)
def test_no_sets(text: str) -> None:
    assert sets_done(entry(text)) is None
