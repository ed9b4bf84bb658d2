"""Whose the sessions of a file are, what is written twice, and what entries say of sessions that there are not."""

from __future__ import annotations

from pathlib import Path

import pytest

from setwright.pipeline import Compiled, compile

PLAN = 'exercise Squat\n\nplan "Pier"\n  start 2027-01-04\n  block Base: 2 weeks\n    day Mon\n      Squat: 3 x 5\n'
RUNA = 'athlete "Runa"\n  best Squat: 100 kg\n'
TOVE = 'athlete "Tove"\n  best Squat: 80 kg\n'
MONDAY = "session 2027-01-04\n  Squat: 60 kg x 5, 5\n"
TUESDAY = "session 2027-01-05\n  Squat: 60 kg x 5, 5\n"


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A club's folder: a plan, two athletes, and nothing else yet."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "pier.plan").write_text(PLAN)
    (tmp_path / "runa.plan").write_text(RUNA)
    (tmp_path / "tove.plan").write_text(TOVE)
    return tmp_path


def days(compiled: Compiled) -> dict[str | None, list[str]]:
    """The days of each athlete's log."""
    return {
        one.plan.athlete: [session.day.isoformat() for session in one.log.sessions] for one in compiled.compilations
    }


def codes(compiled: Compiled) -> list[str]:
    """The numbers of all that is said."""
    return [found.code.number for found in compiled.diagnostics]


def test_a_file_that_declares_one_athlete_holds_that_ones_sessions(folder: Path) -> None:
    (folder / "runa.plan").write_text(RUNA + "\n" + MONDAY)
    assert days(compile("pier.plan", athletes=("runa.plan", "tove.plan"))) == {"Runa": ["2027-01-04"], "Tove": []}


def test_a_log_that_uses_the_athletes_file_is_that_athletes(folder: Path) -> None:
    (folder / "one.plan").write_text('use "runa.plan"\n\n' + MONDAY)
    (folder / "two.plan").write_text('use "tove.plan"\n\n' + TUESDAY)
    compiled = compile("pier.plan", athletes=("runa.plan", "tove.plan"), logs=("one.plan", "two.plan"))
    assert codes(compiled) == []
    assert days(compiled) == {"Runa": ["2027-01-04"], "Tove": ["2027-01-05"]}


def test_paths_may_be_written_in_several_ways(folder: Path) -> None:
    (folder / "logs").mkdir()
    (folder / "logs" / "one.plan").write_text('use "../runa.plan"\n\n' + MONDAY)
    compiled = compile("pier.plan", athletes=("./runa.plan",), logs=(str(folder / "logs" / "one.plan"),), root=".")
    assert codes(compiled) == []
    assert days(compiled) == {"Runa": ["2027-01-04"]}


def test_a_log_of_nobody_is_of_the_one_who_was_chosen(folder: Path) -> None:
    (folder / "log.plan").write_text(MONDAY)
    assert days(compile("pier.plan", athletes=("runa.plan",), logs=("log.plan",))) == {"Runa": ["2027-01-04"]}
    assert days(compile("pier.plan", logs=("log.plan",))) == {None: ["2027-01-04"]}


def test_sessions_beside_two_athletes_are_nobodys_and_that_is_said(folder: Path) -> None:
    (folder / "log.plan").write_text('use "runa.plan"\nuse "tove.plan"\n\n' + MONDAY)
    compiled = compile("pier.plan", athletes=("*",), logs=("log.plan",))
    assert codes(compiled) == ["SW1105"]
    assert days(compiled) == {"Runa": [], "Tove": []}


def test_many_files_in_any_order_make_one_log_by_day(folder: Path) -> None:
    (folder / "late.plan").write_text('use "runa.plan"\n\n' + TUESDAY)
    (folder / "early.plan").write_text('use "runa.plan"\n\n' + MONDAY)
    for logs in (("late.plan", "early.plan"), ("early.plan", "late.plan")):
        assert days(compile("pier.plan", athletes=("runa.plan",), logs=logs)) == {"Runa": ["2027-01-04", "2027-01-05"]}


def test_a_session_in_two_files_counts_once_and_both_places_are_named(folder: Path) -> None:
    (folder / "one.plan").write_text('use "runa.plan"\n\n' + MONDAY)
    (folder / "two.plan").write_text('use "runa.plan"\n\n' + MONDAY.replace("\n  ", ' for week 1 Mon\n  note "x"\n  '))
    compiled = compile("pier.plan", athletes=("runa.plan",), logs=("one.plan", "two.plan"))
    (twice,) = compiled.diagnostics
    assert (str(twice.span), str(twice.related[0].span)) == ("two.plan:3:1", "one.plan:3:1")
    (session,) = compiled.compilations[0].log.sessions
    assert (session.week, session.slot, session.notes) == (1, "Mon", ("x",))


@pytest.mark.parametrize(
    "other",
    [
        "session 2027-01-04 for week 2 Mon\n  Squat: 60 kg x 5, 5\n",
        "session 2027-01-04\n  Squat: 60 kg x 5\n",
        'session 2027-01-04\n  Squat "b": 60 kg x 5, 5\n',
        'session 2027-01-04\n  note "Slept badly."\n',
    ],
)
def test_a_session_that_differs_is_another_one(folder: Path, other: str) -> None:
    first = MONDAY.replace("\n", " for week 1 Mon\n", 1)
    (folder / "runa.plan").write_text(RUNA + "\n" + first + "\n" + other)
    compiled = compile("pier.plan", athletes=("runa.plan",))
    assert codes(compiled) == []
    assert days(compiled) == {"Runa": ["2027-01-04"] * 2}


def test_the_order_of_movements_makes_no_other_session(folder: Path) -> None:
    text = "exercise Row\n\n" + RUNA
    text += "\nsession 2027-01-04\n  Squat: 60 kg x 5, 5\n  Row: 40 kg x 8\n"
    text += "\nsession 2027-01-04\n  Row: 40 kg x 8\n  Squat: 60 kg x 5\n  Squat: 60 kg x 5\n"
    (folder / "runa.plan").write_text(text)
    assert codes(compile("pier.plan", athletes=("runa.plan",))) == ["SW1101"]


def test_what_entries_say_is_held_to_the_plan(folder: Path) -> None:
    said = ("2027-01-04 for week 9 Mon", "2027-01-11 for week 2 Tue", "2027-01-12 for week 2 Mon")
    old = ("2020-01-06 for week 1 Mon", "2020-01-07 for week 7 Sun")
    text = "".join(f"\nsession {one}\n  Squat: 60 kg x {at + 1}\n" for at, one in enumerate((*said, *old)))
    (folder / "runa.plan").write_text(RUNA + text)
    compiled = compile("pier.plan", athletes=("runa.plan",))
    assert [(found.code.number, found.message) for found in compiled.diagnostics] == [
        ("SW1103", "Pier has no session in week 9 on Mon: it has 2 weeks"),
        ("SW1103", "Pier has no session in week 2 on Tue: it has Mon"),
        (
            "SW1104",
            "2 sessions are far from Pier, which goes from the week of 2027-01-04 to the week of 2027-01-11: what they "
            "say of week and day is left aside",
        ),
    ]
    assert not compiled.has_errors


def test_a_session_on_no_planned_day_is_no_fault(folder: Path) -> None:
    (folder / "runa.plan").write_text(RUNA + "\n" + TUESDAY.replace("01-05", "01-16"))
    assert codes(compile("pier.plan", athletes=("runa.plan",))) == []


def test_movements_of_a_prefix_are_called_in_the_log_as_on_sheets(folder: Path) -> None:
    (folder / "club.plan").write_text("exercise Squat\nexercise Row\n")
    plan = PLAN.replace("exercise Squat", 'use "club.plan" as club').replace("Squat:", "club.Squat:")
    (folder / "pier.plan").write_text(plan)
    log = 'use "club.plan" as club\n\n' + MONDAY.replace("Squat", "club.Squat")
    (folder / "log.plan").write_text(log)
    compiled = compile("pier.plan", logs=("log.plan",))
    assert codes(compiled) == []
    (one,) = compiled.compilations
    assert one.plan.weeks[0].sessions[0].lines[0].movement.name == "Squat"
    assert one.log.sessions[0].lines[0].movement.name == "Squat"
