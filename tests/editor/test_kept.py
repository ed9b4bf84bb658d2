"""Work that is kept between keystrokes changes nothing of what is found."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from setwright import compile
from setwright.editor.kept import REREAD, EditorFiles, KeptReader, KeptSources
from setwright.editor.session import Document, EditorSession
from setwright.files import find_root
from setwright.pipeline import compiled

EXAMPLES = Path(__file__).parents[2] / "examples"
PLAN = EXAMPLES / "rowing-club-library" / "rowing-club-library.plan"
TEXT = PLAN.read_text(encoding="utf-8")


def told(path: str, text: str) -> list[tuple[str, str, str]]:
    found = compile(path, athletes=("*",), text=text).diagnostics
    return [(str(each.span), each.code.number, each.message) for each in found]


@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
@given(
    edits=st.lists(st.tuples(st.integers(0, len(TEXT) - 1), st.sampled_from(["", "x", "\n", " ", "9", '"', ":", "#"])))
)
def test_a_session_of_edits_finds_what_a_fresh_run_finds(edits: list[tuple[int, str]]) -> None:
    sources, reader, text = KeptSources(), KeptReader(), TEXT
    for at, put in edits:
        text = text[: at % max(1, len(text))] + put + text[at % max(1, len(text)) + (not put) :]
        files = EditorFiles(find_root(PLAN), {str(PLAN): text}, sources)
        made = compiled(str(PLAN), files, reader, athletes=("*",))
        found = [(str(each.span), each.code.number, each.message) for each in made.diagnostics]
        assert found == told(str(PLAN), text)


def test_lines_are_read_again_from_time_to_time() -> None:
    sources, reader = KeptSources(), KeptReader()
    for number in range(REREAD + 2):
        files = EditorFiles(find_root(PLAN), {str(PLAN): TEXT + f"# {number}\n"}, sources)
        source = files.read(PLAN, str(PLAN))
        read = reader.read(source)  # type: ignore[arg-type]
    texts = {statement.node.span.source.text for statement in read.statements}
    assert len(texts) == 1


@pytest.mark.parametrize("plan", sorted(EXAMPLES.glob("*/*.plan")), ids=lambda plan: plan.stem)
def test_an_editor_shows_what_check_prints(plan: Path) -> None:
    session = EditorSession()
    session.put(Document(plan.as_uri(), str(plan), plan.read_text(encoding="utf-8"), 1))
    found = session.analysis(str(plan)).made.diagnostics
    assert [(each.code.number, each.message) for each in found] == [
        (each.code.number, each.message) for each in compile(str(plan), athletes=("*",)).diagnostics
    ]
