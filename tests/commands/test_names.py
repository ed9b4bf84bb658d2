"""File names from plan and athlete names."""

from __future__ import annotations

from unicodedata import normalize

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.cli.names import slug, stems


@pytest.mark.parametrize(
    ("name", "stem"),
    [
        ("Saltmarsh Full Body", "saltmarsh-full-body"),
        ("../../etc/passwd", "etc-passwd"),
        ("..", "plan"),
        ("", "plan"),
        ("///", "plan"),
        ("/abs", "abs"),
        ("C:\\plans\\x", "c-plans-x"),
        (".hidden", "hidden"),
        ("-o", "o"),
        ("a\x00b\nc", "a-b-c"),
        ("Größe & Kraft", "grösse-kraft"),
        ("深蹲 計画", "深蹲-計画"),
        ("Cafe\u0301", "caf\u00e9"),
        ("5 x 5", "5-x-5"),
        ("\U0001f3cb\ufe0f Woche", "woche"),  # an emoji with the mark that makes it coloured
        ("\U0001f3cb\ufe0f", "plan"),
        ("नमस्ते", "नमस्ते"),
    ],
)
def test_a_name_becomes_a_stem(name: str, stem: str) -> None:
    assert slug(name) == stem


# "Naming Files, Paths, and Namespaces" (Microsoft): these name devices with any extension and in any letter case.
@pytest.mark.parametrize("name", ["CON", "prn", "Aux", "nul", "com1", "LPT9", "COM¹"])
def test_a_device_is_not_a_file(name: str) -> None:
    assert slug(name) == f"plan-{normalize('NFKC', name).casefold()}"


def test_names_that_fall_together_are_numbered() -> None:
    named = [("Pier", "Ana"), ("pier", "ANA"), ("Pier", "Ana 2"), ("Pier Ana", None), ("Pier", "ana")]
    assert stems(named) == ["pier-ana", "pier-ana-2", "pier-ana-2-2", "pier-ana-3", "pier-ana-4"]


def test_a_long_name_is_cut_to_what_file_systems_take() -> None:
    long, other = stems([("深" * 300,), ("深" * 301,)])
    assert len(f"{other}.html".encode()) <= 255
    assert long != other


@given(st.lists(st.text(max_size=40), min_size=1, max_size=8))
def test_stems_are_safe_and_never_collide(names: list[str]) -> None:
    made = stems((name,) for name in names)
    assert len({normalize("NFC", stem).casefold() for stem in made}) == len(names)
    for stem in made:
        assert stem == stem.strip("-. ")
        assert not set(stem) & set('/\\:*?"<>|.\0')
        assert stem.isprintable()
