"""How a finding reads in a terminal, to a program and on a pull request."""

from __future__ import annotations

import json

import pytest

from setwright.diagnostics import Code, Diagnostic, Fix, Related, Severity
from setwright.diagnostics.plain import Record, has_errors, ordered, records, strict
from setwright.diagnostics.printers import github, terminal
from setwright.diagnostics.printers import json as json_printer
from setwright.diagnostics.printers.characters import cut, visible, visible_lines, width
from setwright.source import Source, Span

UNKNOWN = Code("SW0201", "unknown-movement", Severity.ERROR, "", "no movement is called `{name}`", "", "", "")
BREACH = Code("SW0601", "weekly-sets", Severity.WARNING, "", "{muscle} gets {sets} sets", "", "", "")

PLAN = Source("quay.plan", 'plan "Quay"\n  block Base: 1 week\n    day Mon\n      Bak Squat: 3 x 5\n')
LIBRARY = Source("lib/moves.plan", "# ours\nexercise Back Squat\n")


def found(line: str, start: int, end: int, path: str = "quay.plan") -> Record:
    """The record of an unknown movement at `line[start:end]`."""
    (record,) = records([UNKNOWN.at(Span(Source(path, line), 1, start, end), name="x")])
    return record


def unknown_movement() -> Diagnostic:
    return UNKNOWN.at(
        Span(PLAN, 4, 6, 15),
        name="Bak Squat",
        related=(Related(Span(LIBRARY, 2, 9, 19), "declared here"),),
        help="Did you mean `Back Squat`?",
        fix=Fix(Span(PLAN, 4, 6, 15), "Back Squat"),
    )


def too_many() -> Diagnostic:
    return BREACH.at(Span(PLAN, 2, 2, 12), muscle="Chest", sets=22)


def test_a_finding_shows_its_line_the_other_place_and_the_help() -> None:
    assert terminal.text(records([unknown_movement(), too_many()])) == (
        "quay.plan:2:3: warning[SW0601 weekly-sets]: Chest gets 22 sets\n"
        "  2 |   block Base: 1 week\n"
        "    |   ^^^^^^^^^^\n"
        "\n"
        "quay.plan:4:7: error[SW0201 unknown-movement]: no movement is called `Bak Squat`\n"
        "  4 |       Bak Squat: 3 x 5\n"
        "    |       ^^^^^^^^^\n"
        "  lib/moves.plan:2:10: declared here\n"
        "  2 | exercise Back Squat\n"
        "    |          ^^^^^^^^^^\n"
        "  help: Did you mean `Back Squat`?\n"
        "\n"
        "1 error, 1 warning\n"
    )


def test_colour_changes_nothing_but_the_colour() -> None:
    plain_records = records([unknown_movement()])
    coloured = terminal.text(plain_records, colour=True)
    assert "\x1b[1;31merror[SW0201 unknown-movement]\x1b[0m" in coloured
    for code in ("\x1b[1;31m", "\x1b[36m", "\x1b[1m", "\x1b[0m"):
        coloured = coloured.replace(code, "")
    assert coloured == terminal.text(plain_records)


@pytest.mark.parametrize(
    ("counts", "said"),
    [
        ((0, 0), "no errors, no warnings"),
        ((1, 0), "1 error"),
        ((2, 1), "2 errors, 1 warning"),
        ((0, 2), "2 warnings"),
    ],
)
def test_the_summary_counts(counts: tuple[int, int], said: str) -> None:
    errors = [found("Bak", at, at + 1) for at in range(counts[0])]
    warnings = [{**found("Bak", at, at + 1), "severity": "warning"} for at in range(counts[1])]
    assert terminal.summary([*errors, *warnings]) == said  # type: ignore[list-item]


# Widths by Unicode Standard Annex #11, East Asian Width: W and F take two cells, combining marks none.
@pytest.mark.parametrize(
    ("line", "word", "before", "under"),
    [
        ("深蹲: 3 x 5", "深蹲", 0, 4),
        ("深蹲: 3 y 5", "y", 8, 1),
        ("Press 💪 hard: y", "y", 15, 1),
        ("Ｂench: y", "y", 8, 1),
        ("Re\u0301mi: y", "y", 6, 1),
        ("Re\u0301mi: y", "Re\u0301mi", 0, 4),
        ("각\u1112\u1161\u11ab: y", "y", 6, 1),
        ("\tday Mon", "day", 4, 3),
        ("\tday Mon", "\t", 0, 4),
        ("Bench\u202e: y", "y", 13, 1),
    ],
)
def test_the_underline_stands_under_the_word(line: str, word: str, before: int, under: int) -> None:
    start = line.index(word)
    shown = terminal.text([found(line, start, start + len(word))]).splitlines()
    assert shown[2] == "    | " + " " * before + "^" * under


def test_an_empty_span_still_has_a_mark() -> None:
    assert terminal.text([found("plan", 4, 4)]).splitlines()[2] == "    |     ^"


def test_a_line_without_text_is_not_shown() -> None:
    assert terminal.text([found("", 0, 0)]).startswith(
        "quay.plan:1:1: error[SW0201 unknown-movement]: no movement is called `x`\n\n1 error\n"
    )


def test_of_a_very_long_line_the_part_around_the_span_is_shown() -> None:
    line = "深" * 4000 + "HERE" + "x" * 4000
    excerpt, marks = terminal.text([found(line, 4000, 4004)]).splitlines()[1:3]
    assert width(excerpt) <= 170
    assert marks.index("^") == width(excerpt[: excerpt.index("HERE")])
    assert marks.count("^") == 4


def test_a_span_longer_than_the_line_shown_is_cut() -> None:
    excerpt, marks = terminal.text([found("(" * 5000, 0, 5000)]).splitlines()[1:3]
    assert width(excerpt) <= 170
    assert width(marks) <= 170


def test_nothing_a_plan_says_can_command_the_terminal() -> None:
    hostile = 'note "\x1b[2J\x1b]0;x\x07\u202eevil\u2066\u200f\x9b31m\u2028\udc80"'
    diagnostic = UNKNOWN.at(
        Span(Source("\x1b[31m.plan", hostile), 1, 0, 4),
        name=hostile,
        help=hostile,
        related=(Related(Span(Source("b\n.plan", hostile), 1, 0, 1), hostile),),
    )
    shown = terminal.text(records([diagnostic]))
    assert all(character.isprintable() for character in shown.replace("\n", ""))
    assert r"\x1b[2J" in shown
    assert r"\u202eevil" in shown
    assert r"\x80" in shown
    assert shown.count("\n") == terminal.text(records([too_many()])).count("\n") + 4


def test_visible_keeps_what_scripts_need() -> None:
    for text in ("Kniebeuge für Ärzte", "می\u200cخواهم", "👩\u200d🏫", "深蹲", "é"):
        assert visible(text) == text
    assert visible_lines("a\r\nb\x07\n") == "a\nb\\x07\n"


def test_cut_never_passes_the_cells() -> None:
    assert cut("深蹲x", 3) == "深"
    assert cut("abc", 3) == "abc"


def test_json_has_places_in_lines_characters_and_bytes() -> None:
    source = Source("ü.plan", "深蹲\nRé: y\n")
    (record,) = json.loads(json_printer.text(records([UNKNOWN.at(Span(source, 2, 4, 5), name="y")])))
    whole = source.text.encode()
    assert whole[record["byte_start"] : record["byte_end"]] == b"y"
    assert (record["line"], record["column"], record["end_column"]) == (2, 5, 6)
    assert record["source"] == "Ré: y"
    assert (record["code"], record["name"], record["severity"]) == ("SW0201", "unknown-movement", "error")
    assert (record["related"], record["help"], record["fix"]) == ([], None, None)


def test_json_carries_the_fix_and_the_related_place() -> None:
    (record,) = json.loads(json_printer.text(records([unknown_movement()])))
    assert record["fix"]["replacement"] == "Back Squat"
    assert (record["fix"]["line"], record["fix"]["column"], record["fix"]["end_column"]) == (4, 7, 16)
    assert (record["related"][0]["path"], record["related"][0]["source"]) == ("lib/moves.plan", "exercise Back Squat")
    assert json_printer.text([]) == "[]\n"


# The escapes are those of `escapeData` and `escapeProperty` in actions/toolkit, packages/core/src/command.ts.
def test_github_escapes_its_properties_and_its_message() -> None:
    source = Source("a,b:c%.plan", "x")
    diagnostic = UNKNOWN.at(Span(source, 1, 0, 1), name="50%: a,b", help="Say it.")
    assert github.text(records([diagnostic])) == (
        "::error file=a%2Cb%3Ac%25.plan,line=1,endLine=1,col=1,endColumn=2,title=SW0201 unknown-movement"
        "::no movement is called `50%25: a,b`%0Ahelp: Say it.\n"
    )


def test_github_cannot_be_given_another_command() -> None:
    hostile = "x\r\n::set-output name=a::b\n::error::c"
    shown = github.text(records([UNKNOWN.at(Span(Source(hostile, "x"), 1, 0, 1), name=hostile, help=hostile)]))
    assert shown.count("\n") == 1
    assert shown.startswith("::error file=")


def test_findings_stand_in_the_order_of_their_places_each_once() -> None:
    late, early = found("abc", 2, 3, "b.plan"), found("abc", 0, 1, "b.plan")
    other = found("abc", 1, 2, "a.plan")
    assert ordered([late, early, other, late]) == [other, early, late]


def test_strict_makes_errors_of_warnings() -> None:
    warned = records([too_many()])
    assert not has_errors(warned)
    assert has_errors(strict(warned))
    assert terminal.text(strict(warned)).endswith("1 error\n")
    assert warned[0]["severity"] == "warning"
