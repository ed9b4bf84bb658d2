"""What the pattern reads of a log, the grammar reads the same: with and without it, logs and findings are alike."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

from hypothesis import example, given, settings
from hypothesis import strategies as st

from setwright.pipeline import compile

HEAD = "exercise Press\nexercise Chin-Up\nexercise Back Squat\n\n"
PLAN = 'plan "Pier"\n  block Base: 1 week\n    day Mon\n      Press: 3 x 5\n'

names = st.sampled_from(("Press", "Chin-Up", "Back Squat", "Back  Squat", "Pres", "press", '"Press"', 'Press "paused"'))
unloaded = st.sampled_from(("", "bodyweight x ", "bodyweight + 5 kg x ", "bodyweight - 12.5 lb x ", "RPE 8 x "))
weights = st.sampled_from(("60 kg", "62.5 kg", "62.50 kg", "135 lb", "0 kg", "1001 kg", "60kg")).map("{} x ".format)
loads = st.one_of(unloaded, weights)
reps = st.lists(st.sampled_from(("5", "0", "12", "05", "999", "1000", "1001", "30 s", "8/side", "5+")), min_size=1).map(
    ", ".join
)
felt = st.sampled_from(
    ("", " @ RPE 8", " @ RPE 8.5", " @ RPE 10", " @ RPE 11", " @ 2 RIR", " @ RPE 0.5", ", test", " # hm")
)
entries = st.builds("  {}: {}{}{}".format, names, loads, reps, felt)
days = st.sampled_from(("2027-01-04", "2027-01-04 Mon", "2027-01-04 Tue", "2027-02-30", "0001-01-01"))
heads = st.one_of(
    days.map("session {}".format),
    st.sampled_from(("session 2027-01-06 for week 1 Mon", " session 2027-01-07", "session  2027-01-08", "Session")),
)
others = st.sampled_from(("", "  # a remark", '  note "Slept."', "  effort 7 of 10, 60 min", "\tPress: 60 kg x 5"))
logs = st.lists(st.one_of(heads, entries, entries, others), max_size=12).map("\n".join)


@settings(max_examples=200, deadline=None)
@given(logs)
@example("session 2027-01-04 Mon\n  Press: 60 kg x 5, 5, 4 @ RPE 8.5\n  Back Squat: bodyweight - 5 kg x 8\n")
def test_a_log_is_read_alike_by_pattern_and_by_grammar(text: str) -> None:
    with TemporaryDirectory() as folder:
        plan, log = Path(folder) / "pier.plan", Path(folder) / "log.plan"
        plan.write_text(HEAD + PLAN, encoding="utf-8")
        log.write_text('use "pier.plan"\n' + text + "\n", encoding="utf-8")
        by_pattern = compile(str(plan), logs=(str(log),))
        with patch("setwright.syntax.parser.plain_line", lambda *_: None):
            by_grammar = compile(str(plan), logs=(str(log),))
    assert by_pattern.diagnostics == by_grammar.diagnostics
    assert [one.log for one in by_pattern.compilations] == [one.log for one in by_grammar.compilations]
