"""What is shown without being asked twice: hover, hints, lenses."""

from __future__ import annotations

from pathlib import Path

import pytest
from lsprotocol import types as lsp

from play_editor import LIBRARY, PLAN, Editor, codes, hover

pytestmark = pytest.mark.asyncio


async def test_hover_shows_the_weeks_with_loads(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    shown = await hover(editor, "winter.plan", "Boathouse Squat: 3 x 5", 3)
    # 70, 75 and 80 percent of 100 kg, on a 20 kg bar with pairs of discs down to 1.25 kg
    for row in ("| 1 | 3 × 5 @ 70%, 70 kg |", "| 2 | 3 × 5 @ 75%, 75 kg |", "| 3 | 3 × 5 @ 80%, 80 kg |"):
        assert row in shown.replace("\u00a0", " ")
    assert "quads" in shown
    assert "Loads for Ylva" in shown


async def test_hover_says_what_a_measure_a_muscle_and_a_movement_are(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    assert "Work sets a week" in await hover(editor, "winter.plan", "weekly-sets", 3)
    assert "Chest" in await hover(editor, "winter.plan", "chest 3", 2)
    assert "rules hut" in await hover(editor, "winter.plan", "follow hut", 8)
    assert "**Bench Press**: chest" in await hover(editor, "winter.plan", "best Bench Press", 7)


async def test_half_typed_text_keeps_what_was_known(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    found = await editor.change("winter.plan", 'plan "Hut 🛶 Winter"', 'pla "Hut 🛶 Winter"')
    assert found
    shown = await hover(editor, "winter.plan", "Boathouse Squat: 3 x 5", 3)
    assert "| 1 | 3 × 5 @ 70%, 70 kg |" in shown.replace("\u00a0", " ")


async def test_the_athlete_can_be_set(editor: Editor, files: Path) -> None:
    other = PLAN[PLAN.index('\nathlete "Ylva"') :].replace("Ylva", "Sten").replace("100 kg", "120 kg")
    await editor.open("winter.plan", PLAN + other)
    assert "Loads for Ylva" in await hover(editor, "winter.plan", "Boathouse Squat: 3 x 5", 3)
    settings = lsp.DidChangeConfigurationParams({"setwright": {"athlete": "Sten"}})
    editor.client.workspace_did_change_configuration(settings)
    shown = await hover(editor, "winter.plan", "Boathouse Squat: 3 x 5", 3)
    assert "Loads for Sten" in shown
    assert "@ 75%, 90 kg" in shown.replace("\u00a0", " ")


async def test_the_athlete_may_stand_in_a_file_of_their_own(editor: Editor, files: Path) -> None:
    plan, _, athlete = PLAN.partition('athlete "Ylva"')
    uses = 'use stdlib.exercises\nuse "hut.plan"\n'
    (files / "ylva.plan").write_text(f'{uses}athlete "Ylva"{athlete}', encoding="utf-8")
    editor.client.workspace_did_change_configuration(lsp.DidChangeConfigurationParams({"athlete": "ylva.plan"}))
    assert await editor.open("winter.plan", plan) == []
    shown = await hover(editor, "winter.plan", "Boathouse Squat: 3 x 5", 3)
    assert "Loads for Ylva" in shown
    await editor.open("ylva.plan")
    await editor.change("ylva.plan", "Squat: 100 kg", "Squat: 120 kg")
    shown = await hover(editor, "winter.plan", "Boathouse Squat: 3 x 5", 3)
    assert "75%, 90 kg" in shown.replace("\u00a0", " ")


async def test_a_file_that_was_never_saved_can_be_used(editor: Editor, files: Path) -> None:
    (files / "hut.plan").unlink()
    assert "SW0001" in codes(await editor.open("winter.plan"))
    await editor.open("hut.plan", LIBRARY)
    assert await editor.told_of("winter.plan", "SW0001", gone=True) == []


async def test_inlay_hints(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    everything = lsp.Range(lsp.Position(0, 0), lsp.Position(99, 0))
    params = lsp.InlayHintParams(editor.document("winter.plan"), everything)
    found = await editor.client.text_document_inlay_hint_async(params)
    said = {each.position.line: str(each.label).replace("\u00a0", " ") for each in found or ()}
    lines = PLAN.split("\n")
    assert said[lines.index('    day Mon "Legs"')].startswith("week 1: chest 4, ")
    track = next(line for line in lines if "70% -> 80%" in line)
    assert said[lines.index(track)] == "1: 3 × 5 @ 70%, 70 kg · 2: 3 × 5 @ 75%, 75 kg · 3: 3 × 5 @ 80%, 80 kg"
    assert not any("2 RIR" in text for text in said.values())  # what does not move is not said again


async def test_code_lenses_tell_the_figures_of_a_rule(editor: Editor, files: Path) -> None:
    await editor.open("winter.plan")
    found = await editor.client.text_document_code_lens_async(lsp.CodeLensParams(editor.document("winter.plan")))
    titles = {each.range.start.line: each.command.title for each in found or () if each.command}
    assert titles == {PLAN.split("\n").index("  must weekly-sets for chest 3-12"): "4: all 5 inside"}
