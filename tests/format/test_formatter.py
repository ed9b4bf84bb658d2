"""The one style: cases as plain files, and what holds for every file that can be read.

A case is `NAME.plan` beside `NAME.formatted`, read over by a person.
"""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.diagnostics import Severity
from setwright.pipeline import EVERY_ATHLETE, compile
from setwright.render.csv import text as sheet
from setwright.source import Source
from setwright.syntax import LineReader
from setwright.syntax.formatter import Formatter
from setwright.syntax.spacing import written
from setwright.syntax.tables import line_parser

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
CASES = sorted(HERE.glob("*.plan"))
FORMATTER = Formatter()
PARSER = line_parser(None)
READER = LineReader()
READABLE = [
    path
    for path in sorted(
        [*ROOT.glob("examples/*/*.plan"), *ROOT.glob("stdlib/**/*.plan"), *ROOT.glob("tests/language/*/*.plan")]
    )
    if not any(
        found.severity is Severity.ERROR
        for found in READER.read(Source(path.name, path.read_text(encoding="utf-8-sig"))).diagnostics
    )
]


def formatted(text: str) -> str:
    made = FORMATTER.formatted(Source("some.plan", text))
    assert isinstance(made, str), [str(found) for found in made]
    return made


@pytest.mark.parametrize("case", CASES, ids=lambda path: path.stem)
def test_case(case: Path) -> None:
    assert formatted(case.read_text("utf-8")) == case.with_suffix(".formatted").read_text("utf-8")


def test_there_is_enough_to_read() -> None:
    assert len(READABLE) > 150


@pytest.mark.parametrize("path", READABLE, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_formatting_twice_is_formatting_once_and_comments_stay(path: Path) -> None:
    text = path.read_text(encoding="utf-8-sig")
    made = formatted(text)
    assert formatted(made) == made
    assert Counter(comments(made)) == Counter(comments(text))
    assert Counter(strings(made)) == Counter(strings(text))


@pytest.mark.parametrize(
    "path",
    [path for path in READABLE if "stdlib" not in path.parts],
    ids=lambda path: f"{path.parent.name}/{path.stem}",
)
def test_a_plan_means_what_it_meant(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(path.parent)
    text = path.read_text(encoding="utf-8-sig")
    assert meaning(path, formatted(text)) == meaning(path, text)


def test_the_shipped_files_are_in_the_style() -> None:
    shipped = [*ROOT.glob("examples/*/*.plan"), *ROOT.glob("stdlib/**/*.plan")]
    assert [path.name for path in shipped if formatted(path.read_text("utf-8")) != path.read_text("utf-8")] == []


LINES = sorted(
    {
        line.strip()
        for path in READABLE
        for line in path.read_text("utf-8").splitlines()
        if line.strip()[:1] not in ("", "#")
    }
)


@settings(max_examples=300)
@given(st.sampled_from(LINES), st.data())
def test_blanks_between_words_do_not_matter(line: str, data: st.DataObject) -> None:
    text = written(PARSER, line, line)
    tokens = list(PARSER.parse_interactive(line).exhaust_lexer())
    loose = ""
    for token in tokens:
        # Where no blank stands one may change the meaning: `8-10`, `+5`.
        apart = token.start_pos > 0 and line[token.start_pos - 1] == " "
        loose += " " * data.draw(st.integers(1, 3)) * apart + line[token.start_pos : token.end_pos]
    assert written(PARSER, loose, loose).cells == text.cells


@settings(max_examples=30)
@given(
    st.sampled_from([path for path in READABLE if path.parent.parent.name == "examples"]), st.integers(1, 7), st.data()
)
def test_how_deep_a_level_is_and_blank_lines_do_not_matter(path: Path, step: int, data: st.DataObject) -> None:
    tidy = formatted(path.read_text("utf-8"))
    loose = []
    for line in tidy.splitlines():
        depth = (len(line) - len(line.lstrip())) // 2
        loose += [" " * step * depth + line.lstrip() + " " * data.draw(st.integers(0, 2))]
        loose += [" "] * (3 * (not line) * data.draw(st.integers(0, 1)))
    again = formatted("\n\n" + "\n".join(loose))
    assert [line for line in again.splitlines() if line] == [line for line in tidy.splitlines() if line]


# What is added to one day moves nothing in another.
def test_a_longer_name_moves_its_own_day_only() -> None:
    day = "    day {}\n      Dip: 3 x 8\n      Row: 3 x 8\n"
    plan = 'plan "Pier"\n  block Base: 1 week\n' + day.format("Mon") + day.format("Tue")
    longer = plan + "      One-Arm Row: 3 x 8\n"
    before, after = formatted(plan).splitlines(), formatted(longer).splitlines()
    assert after[:5] == before[:5]
    assert after[6:] == ["      Dip:          3 x 8", "      Row:          3 x 8", "      One-Arm Row:  3 x 8"]


def test_a_file_that_cannot_be_read_is_left_alone() -> None:
    found = FORMATTER.formatted(
        Source("some.plan", 'plan "Pier"\n  block Base: 1 week\n   day Mon\n      Dip: 3 sets\n')
    )
    assert not isinstance(found, str)
    assert [diagnostic.span.line for diagnostic in found] == [4]


@pytest.mark.parametrize("text", ["", "\n\n", "# alone\n", "   # alone\n\n\n\n"])
def test_files_without_a_line(text: str) -> None:
    assert formatted(text) == text.strip() + "\n" * bool(text.strip())


def test_names_in_any_script_are_aligned_by_what_is_seen() -> None:
    made = formatted(
        'session 2027-01-04\n  "スクワット": 60 kg x 5\n  "Жим лёжа": 60 kg x 5\n  Cafe\u0301 Row: 60 kg x 5\n'
    )
    assert made == (
        'session 2027-01-04\n  "スクワット": 60 kg x 5\n  "Жим лёжа":   60 kg x 5\n  Café Row:     60 kg x 5\n'
    )


def comments(text: str) -> list[str]:
    """Comments by a reading of their own: what follows a `#` outside quotes."""
    return [
        found.group(1)
        for line in text.splitlines()
        if (found := re.fullmatch(r'(?:[^"#]|"(?:[^"\\]|\\.)*")*(#.*?)\s*', line))
    ]


def strings(text: str) -> list[str]:
    return re.findall(
        r'"(?:[^"\\]|\\.)*"',
        "\n".join(re.sub(r'^((?:[^"#]|"(?:[^"\\]|\\.)*")*)#.*', r"\1", line) for line in text.splitlines()),
    )


def meaning(path: Path, text: str) -> object:
    """What a file comes to: its rows, and its findings by code and message."""
    compiled = compile(path.name, athletes=(EVERY_ATHLETE,), text=text)
    rows = [sheet(one.plan) for one in compiled.compilations]
    return rows, sorted((found.code.number, found.message) for found in compiled.diagnostics)
