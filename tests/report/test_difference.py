"""What changes from plan to plan, on shipped examples and on plans made for it."""

from __future__ import annotations

from pathlib import Path

import pytest

from setwright.pipeline import compile
from setwright.plan import Plan
from setwright.report.difference import difference
from setwright.report.difference.model import Aspect, Difference, Fate
from setwright.rules import Promise

EXAMPLES = Path(__file__).parents[2] / "examples"
HARBOUR = (EXAMPLES / "harbour-twelve-weeks" / "harbour-twelve-weeks.plan").read_text(encoding="utf-8")


def side(text: str) -> tuple[Plan, Promise]:
    compiled = compile("test.plan", text=text)
    (made,) = compiled.compilations
    return made.plan, made.promise


def between(old: str, new: str) -> Difference:
    return difference(side(old), side(new))


def test_two_plans_of_one_template_differ_by_their_edits_alone() -> None:
    head = "use stdlib.exercises\nuse stdlib.templates.three-days-full-body\n\n"
    plain = head + 'plan "Mine" from three-days-full-body\n'
    first = side(plain)[0]
    block, day = first.blocks[0].name, first.weeks[0].sessions[0]
    name = day.lines[0].movement.name
    edit = f"{plain}  block {block}\n    day {day.slot}\n      {name}: 7 x 4 @ RPE 6, rest 6 min\n"
    found = between(plain, edit)
    lines = [line for of in found.blocks for session in of.sessions for line in session.lines]
    assert {of.old.name for of in found.blocks if of.old} >= {block}
    assert {session.new.slot for of in found.blocks for session in of.sessions if session.new} == {day.slot}
    assert {(line.old, line.new) for line in lines} == {(name, name)}
    assert (found.facts, found.rules, found.movements, found.shifted) == ((), (), (), ())


def test_a_template_taken_out_is_no_change() -> None:
    body = "  block Base: 3 weeks\n    day Mon\n      Back Squat: {} x 5 @ RPE 7 -> 8, rest 3 min\n"
    head = "use stdlib.exercises\n\n"
    written = f'{head}plan "Mine"\n{body.format(4)}'
    taken_out = f'{head}template squats(many = 3)\n{body.format("many")}\nplan "Mine" from squats(many: 4)\n'
    assert between(written, taken_out).is_empty


def test_a_longer_block_moves_the_later_weeks_and_changes_nothing_in_them() -> None:
    old = 'exercise Row\n\nplan "Mine"\n' + "".join(
        f"  block {name}: {weeks} weeks\n    day Mon\n      Row: 3 x 5 @ RPE 8\n"
        for name, weeks in (("A", 2), ("B", 3))
    )
    found = between(old, old.replace("block A: 2", "block A: 3"))
    assert found.shifted == ((3, 4), (4, 5), (5, 6))
    (block,) = found.blocks
    assert (block.new and block.new.name, block.added, block.dropped, block.sessions) == ("A", (3,), (), ())


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("block Peak: 3 weeks like Strength", "block Sharpen: 3 weeks like Strength", {"Sharpen"}),
        ("block Build-Up: 4 weeks", "block Build-Up: 4 weeks", set()),
    ],
)
def test_a_block_that_is_called_otherwise(old: str, new: str, said: set[str]) -> None:
    found = between(HARBOUR, HARBOUR.replace(old, new))
    assert {of.new.name for of in found.blocks if of.new} == said
    assert all(not of.sessions for of in found.blocks)


def test_days_that_change_places_are_seen_to_have_moved() -> None:
    swapped = HARBOUR.replace("day Tue", "day Nil").replace("day Fri", "day Tue").replace("day Nil", "day Fri")
    found = between(HARBOUR, swapped)
    moves = {
        (session.old.slot, session.new.slot)
        for of in found.blocks
        for session in of.sessions
        if session.old and session.new and session.moved
    }
    assert moves == {("Tue", "Fri"), ("Fri", "Tue")}
    assert all(not session.lines for of in found.blocks for session in of.sessions)


def test_another_deload_is_said_once_of_the_week() -> None:
    found = between(HARBOUR, HARBOUR.replace("sets 50%, load 90%, effort RPE 6", "sets 75%, load 90%, effort RPE 6"))
    assert [change.aspect for of in found.blocks for change in of.changes] == [Aspect.EASING, Aspect.EASING]
    assert not [line for of in found.blocks for session in of.sessions for line in session.lines]


def test_a_movement_described_otherwise_is_named_beside_what_it_comes_to() -> None:
    library = 'muscle back "Back"\n\nexercise Row\n  works back {}\n\n'
    text = library + 'plan "Mine"\n  block A: 2 weeks\n    day Mon\n      Row: 4 x 5\n'
    found = between(text.format("1"), text.format("0.5"))
    assert [movement.name for movement in found.movements] == ["Row"]
    (muscle,) = found.consequence.muscles
    assert (muscle.before.high, muscle.after.high, muscle.more.low) == (4, 2, -2)
    assert not found.blocks


def test_one_of_two_alike_lines_is_dropped() -> None:
    head = 'exercise Row\n\nplan "Mine"\n  block A: 2 weeks\n    day Mon\n'
    text = f'{head}      Row "heavy": 6 x 3\n      Row "light": 3 x 9\n'
    found = between(text, text.replace('      Row "heavy": 6 x 3\n', ""))
    (line,) = found.blocks[0].sessions[0].lines
    assert (line.fate, line.old, line.label) == (Fate.DROPPED, "Row", "heavy")
