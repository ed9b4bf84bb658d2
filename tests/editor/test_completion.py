"""What is proposed where, and what it takes the place of."""

from __future__ import annotations

from pathlib import Path

import pytest
from lsprotocol import types as lsp

from play_editor import PLAN, Editor, applied

pytestmark = pytest.mark.asyncio


async def labels(editor: Editor, name: str, text: str) -> list[lsp.CompletionItem]:
    """What is proposed right behind a text."""
    place = editor.at(name, text, len(text))
    found = await editor.client.text_document_completion_async(lsp.CompletionParams(editor.document(name), place))
    assert isinstance(found, lsp.CompletionList)
    return list(found.items)


@pytest.mark.parametrize(
    ("line", "there", "not_there"),
    [
        ("      ", {"Boathouse Squat", "Hut Squat", "Élan Row", "superset", "add", "note"}, {"block", "must"}),
        ("    ", {"day", "deload", "limit"}, {"author", "Back Squat"}),
        ("  ", {"block", "must", "should", "author", "emphasis"}, {"day"}),
        ("", {"plan", "athlete", "use", "exercise"}, {"block"}),
        ("      Boathouse Sq", {"Boathouse Squat"}, set()),
        ("      Plank: 3 x 5 @ 80", {"%", "kg", "RIR"}, {"min", "m"}),
        ("      Plank: 3 x 5, rest 90 ", {"s", "min"}, {"kg", "%"}),
        ("      Plank: 3 x 40 ", {"s", "m"}, {"kg"}),
        ("      Plank: 3 x 5, ", {"rest", "tempo", "optional", "warm-up"}, {"Back Squat"}),
        ("      Plank: 3 x 5 @ 80% of ", {"Back Squat", "Boathouse Squat"}, {"rest"}),
        ("      swap Plank for ", {"Back Squat"}, {"chest"}),
        ("  must ", {"weekly-sets", "session-time"}, {"chest"}),
        ("  must weekly-sets for ", {"chest", "every muscle", "squat"}, {"weekly-sets"}),
        ("  must weekly-sets for chest, ", {"lats"}, {"weekly-sets"}),
        ("  must effort <= RPE 8 in block ", {"Base", "Peak"}, {"chest"}),
        ("  emphasis ", {"lats"}, {"Base"}),
        ("  follow ", {"hut"}, {"chest"}),
        ("  block Last: 1 week like ", {"Base", "Peak"}, {"Mon"}),
        ("    day Fri like ", {"Mon", "Thu"}, {"Base"}),
        ("      Plank: 3 x 5, advance ", {"hut-climb", "double-climb"}, {"chest"}),
        ("use ", {"stdlib.exercises.squat", "stdlib.muscles"}, {"Back Squat"}),
        ('      note "Boa', set(), {"Boathouse Squat"}),
        ("      # Boa", set(), {"Boathouse Squat"}),
    ],
)
async def test_completion_in_context(
    editor: Editor, files: Path, line: str, there: set[str], not_there: set[str]
) -> None:
    text = PLAN.replace("    day Thu\n", f"{line}\n    day Thu\n") if line else PLAN + "\n"
    await editor.open("winter.plan", text)
    lines = text.split("\n")
    place = lsp.Position(lines.index(line) if line else len(lines) - 1, len(line))
    params = lsp.CompletionParams(editor.document("winter.plan"), place)
    found = await editor.client.text_document_completion_async(params)
    assert isinstance(found, lsp.CompletionList)
    proposed = {item.label for item in found.items}
    assert there <= proposed
    assert not proposed & not_there


async def test_what_is_completed_takes_the_place_of_what_was_begun(editor: Editor, files: Path) -> None:
    text = PLAN.replace("      Bench Press: 4", "      hut sq: 4")
    await editor.open("winter.plan", text)
    (item,) = [each for each in await labels(editor, "winter.plan", "      hut sq") if each.label == "Hut Squat"]
    assert isinstance(item.text_edit, lsp.TextEdit)
    assert "      Boathouse Squat: 4" in applied(text, [item.text_edit])  # another name brings the declared one


async def test_parameters_are_proposed_inside_their_template(editor: Editor, files: Path) -> None:
    text = """use stdlib.exercises
template hut-days(weeks = 3, top = 80%)
  block Base: 3 weeks
    day Mon
      Back Squat: 3 x 5 @"""
    text += " "
    await editor.open("template.plan", text)
    found = await labels(editor, "template.plan", "3 x 5 @ ")
    assert {"weeks", "top"} <= {item.label for item in found}
