"""What holds for every athlete: whatever they avoid, swap or lack, each session keeps its lines and their sets."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.pipeline import Compiled, compile
from setwright.plan import Line

EQUIPMENT = ("bar", "cable", "bench")
PATTERNS = ("push", "pull")
# Name, pattern, equipment: each names the next two after `swap for`.
MOVEMENTS = tuple(
    (f"Lift {letter}", PATTERNS[number % 2], EQUIPMENT[number % 4 : number % 4 + 1])
    for number, letter in enumerate("ABCDEFGH")
)
NAMES = tuple(name for name, _, _ in MOVEMENTS)
NEEDS = {name: needs for name, _, needs in MOVEMENTS}
PATTERN = {name: pattern for name, pattern, _ in MOVEMENTS}


def library() -> str:
    lines = [f"equipment {word}" for word in EQUIPMENT]
    for at, (name, pattern, needs) in enumerate(MOVEMENTS):
        lines += [f"exercise {name}", f"  pattern {pattern}"]
        lines += [f"  needs {', '.join(needs)}"] if needs else []
        lines += [f"  swap for {NAMES[(at + 1) % 8]}, {NAMES[(at + 3) % 8]}"]
    return "\n".join(lines) + "\n"


def plan(days: list[list[str]]) -> str:
    lines = ['plan "Any"', "  block Base: 1 week"]
    for slot, movements in zip(("Mon", "Wed"), days, strict=True):
        lines += [f"    day {slot}", *(f"      {name}: {at + 1} x 5 @ RPE 8" for at, name in enumerate(movements))]
    return "\n".join(lines) + "\n"


days = st.lists(st.lists(st.sampled_from(NAMES), min_size=1, max_size=5, unique=True), min_size=2, max_size=2)
avoided = st.lists(st.sampled_from((*PATTERNS, *NAMES)), max_size=3, unique=True)
owned = st.lists(st.sampled_from(EQUIPMENT), max_size=3, unique=True)
swapped = st.dictionaries(st.sampled_from(NAMES), st.sampled_from(NAMES), max_size=2)


@settings(max_examples=40)
@given(days, avoided, owned, swapped)
def test_lines_keep_their_places_and_sets(
    days: list[list[str]], avoids: list[str], has: list[str], swaps: dict[str, str]
) -> None:
    made = fitted(days, avoids, has, swaps)
    warned = " ".join(finding.message for finding in made.diagnostics)
    own = {old: new for old, new in swaps.items() if old != new}
    for planned, done in zip(days, lines(made), strict=True):
        assert [line.sets for line in done] == list(range(1, len(planned) + 1))
        assert [line.instead_of or line.movement.name for line in done] == planned
        for line in done:
            if line.instead_of in own:
                assert line.movement.name == own[line.instead_of]
            elif cannot(line.movement.name, avoids, has):
                assert line.instead_of is None
                assert f" {line.movement.name} in week 1" in warned
        chosen = [line.movement.name for line in done if line.instead_of not in own]
        assert len(chosen) == len(set(chosen))


@settings(max_examples=20)
@given(days, avoided, owned)
def test_who_can_do_a_movement_does_it(days: list[list[str]], avoids: list[str], has: list[str]) -> None:
    for planned, done in zip(days, lines(fitted(days, avoids, has, {})), strict=True):
        for name, line in zip(planned, done, strict=True):
            assert (line.instead_of is None) or cannot(name, avoids, has)


def cannot(name: str, avoids: list[str], has: list[str]) -> bool:
    return name in avoids or PATTERN[name] in avoids or bool(has and not set(NEEDS[name]) <= set(has))


def fitted(days: list[list[str]], avoids: list[str], has: list[str], swaps: dict[str, str]) -> Compiled:
    athlete = ['athlete "Tove"', *(f"  avoid {what}" for what in avoids)]
    athlete += [f"  has {', '.join(has)}"] if has else []
    athlete += [f"  swap {old} for {new}" for old, new in swaps.items()]
    text = library() + plan(days) + "\n".join(athlete) + "\n"
    made = compile("any.plan", athletes=("Tove",), text=text)
    assert not made.has_errors, [finding.message for finding in made.diagnostics]
    return made


def lines(made: Compiled) -> list[tuple[Line, ...]]:
    return [session.lines for session in made.compilations[0].plan.weeks[0].sessions]
