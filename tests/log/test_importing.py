"""Taking a table into a log: what is added, what is not, what a person reads about it, and what lies beside it then."""

from __future__ import annotations

from pathlib import Path

import pytest

from run_command import run_command
from setwright.cli.importing import imported
from setwright.syntax import LineReader

READER = LineReader()
LOG = b'exercise Squat\n  also "Kneebend"\nexercise Row\n'
HEAD = "date,slot,exercise,load,reps,effort,note\n"


def take(rows: str, log: bytes = LOG, head: str = HEAD) -> tuple[str, list[str]]:
    """What is put at the log's end, and the codes of what is said."""
    taken = imported((head + rows).encode(), "rows.csv", log, "log.plan", reader=READER)
    assert taken.after is not None
    assert taken.after.startswith(log)
    return taken.after[len(log) :].decode(), [found.code.number for found in taken.diagnostics]


def test_sets_of_one_load_make_one_entry_and_the_note_stands_once() -> None:
    rows = "2027-01-04,w1-Mon,Squat,60 kg,5,8,Slept well.\n2027-01-04,w1-Mon,Squat,60 kg,5,9,\n"
    rows += "2027-01-04,w1-Mon,Squat,50 kg,8,,\n2027-01-04,w1-Mon,Row,40 kg,8,,Slept well.\n"
    assert take(rows) == (
        "\nsession 2027-01-04 Mon for week 1 Mon\n"
        "  Squat: 60 kg x 5 @ RPE 8, 5 @ RPE 9\n"
        "  Squat: 50 kg x 8\n"
        "  Row: 40 kg x 8\n"
        '  note "Slept well."\n',
        [],
    )


def test_an_effort_does_not_reach_back_to_sets_that_had_none() -> None:
    rows = "2027-01-04,,Squat,60 kg,5,,\n2027-01-04,,Squat,60 kg,5,9,\n"
    assert "  Squat: 60 kg x 5\n  Squat: 60 kg x 5 @ RPE 9\n" in take(rows)[0]


def test_another_name_of_a_movement_is_the_movement() -> None:
    log = LOG + b"\nsession 2027-01-04\n  Squat: 60 kg x 5\n"
    assert take("2027-01-04,,kneebend,60 kg,5,,\n", log) == ("", [])
    assert "  Squat: 60 kg x 5\n" in take("2027-01-05,,kneebend,60 kg,5,,\n", log)[0]


def test_only_the_sets_that_the_log_lacks_are_added() -> None:
    log = LOG + b"\nsession 2027-01-04\n  Squat: 60 kg x 5, 5 @ 2 RIR\n"
    rows = "".join(f"2027-01-04,,Squat,60 kg,5,{effort},\n" for effort in ("8", "8", "9"))
    assert take(rows, log) == ("\nsession 2027-01-04 Mon\n  Squat: 60 kg x 5 @ RPE 9\n", [])


def test_other_sets_on_the_same_day_are_kept_as_comments() -> None:
    log = LOG + b"\nsession 2027-01-04\n  Squat: 60 kg x 5, 5\n"
    added, said = take("2027-01-04,,Squat,62.5 kg,5,,\n2027-01-04,,Row,40 kg,8,,\n", log)
    assert said == ["SW1110"]
    assert "  Row: 40 kg x 8\n  # not read: 2027-01-04,,Squat,62.5 kg,5,, (the log has other sets)\n" in added
    again, said = take("2027-01-04,,Squat,62.5 kg,5,,\n2027-01-04,,Row,40 kg,8,,\n", log + added.encode())
    assert (again, said) == ("", ["SW1110"])


def test_a_set_more_that_would_count_as_the_session_before_is_a_comment() -> None:
    log = LOG + b"\nsession 2027-01-04\n  Squat: 60 kg x 5\n"
    added, said = take("2027-01-04,,Squat,60 kg,5,,\n2027-01-04,,Squat,60 kg,5,,\n", log)
    assert said == ["SW1110"]
    assert added.startswith("\n# not read: 2027-01-04,,Squat,60 kg,5,, ")


def test_morning_and_evening_are_two_sessions() -> None:
    rows = "2027-01-04,w1-Mon,Squat,60 kg,5,,\n2027-01-04,w1-Tue,Squat,60 kg,5,,\n"
    added, said = take(rows)
    assert (added.count("session "), said) == (2, [])
    assert take(rows, LOG + added.encode()) == ("", [])


def test_comments_of_a_day_without_a_session_stand_alone() -> None:
    added, said = take("2027-01-04,,Sqat,60 kg,5,,\n,,Squat,60 kg,5,,\n")
    assert said == ["SW1107", "SW1107"]
    assert added.startswith(
        "\n# not read: 2027-01-04,,Sqat,60 kg,5,, (there is no movement `Sqat`; did you mean `Squat`?)\n"
    )
    assert added.endswith("# not read: ,,Squat,60 kg,5,, (there is no date)\n")


def test_comments_that_a_sheet_kept_stay_comments() -> None:
    added, said = take(",,,,,,# not read: Sqat: 60 kg x 5\n2027-01-04,,Squat,60 kg,5,,\n")
    assert said == []
    assert added.endswith("\n# not read: Sqat: 60 kg x 5\n")


def test_no_line_of_a_comment_becomes_a_line_of_the_log() -> None:
    added, _ = take(f',,,,,,"# not read: a\nathlete ""X""\n{"b" * 1000}"\n')
    assert added.startswith('\n# not read: a\n# athlete "X"\n# bbb')
    assert max(map(len, added.splitlines())) < 1000


def test_a_log_keeps_its_line_ends_and_its_last_line() -> None:
    log = LOG.rstrip().replace(b"\n", b"\r\n")
    added, _ = take("2027-01-04,,Squat,60 kg,5,,\n", log)
    assert added == "\r\n\r\nsession 2027-01-04 Mon\r\n  Squat: 60 kg x 5\r\n"


def test_the_effort_of_the_whole_session() -> None:
    head = HEAD.rstrip() + ",test,session_effort,session_min\n"
    added, said = take("2027-01-04,,Squat,100 kg,1,,,yes,7.5,65\n", head=head)
    assert said == []
    assert added == "\nsession 2027-01-04 Mon\n  Squat: 100 kg x 1, test\n  effort 7.5 of 10, 65 min\n"
    assert take("2027-01-04,,Squat,100 kg,1,,,yes,7.5,65\n", LOG + added.encode(), head) == ("", [])


def test_a_log_with_an_error_is_left_alone() -> None:
    taken = imported((HEAD + "2027-01-04,,Squat,60 kg,5,,\n").encode(), "rows.csv", LOG + b"sesion 2027\n", "log.plan")
    assert taken.after is None
    assert any(found.span.source.path == "log.plan" for found in taken.diagnostics)


# ---- the verbs -----------------------------------------------------------------------------------


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a table and an athlete."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "rows.csv").write_text(HEAD + "2027-01-04,,Back Squat,60 kg,5,8,\n")
    (tmp_path / "runa.plan").write_text('use stdlib.exercises\n\nathlete "Runa"\n  best Back Squat: 100 kg\n')
    return tmp_path


def test_a_log_is_begun_and_whose_it_is_stands_in_it(folder: Path) -> None:
    done = run_command("import", "rows.csv", "--into", "runa-log.plan", "--athlete-file", "runa.plan")
    assert (done.exit_code, done.stderr) == (0, "runa-log.plan: 1 set added, 0 there already\n")
    assert (folder / "runa-log.plan").read_text() == (
        'use stdlib.exercises\nuse "runa.plan"\n\nsession 2027-01-04 Mon\n  Back Squat: 60 kg x 5 @ RPE 8\n'
    )
    assert run_command("check", "runa-log.plan").exit_code == 0
    assert sorted(path.name for path in folder.iterdir()) == ["rows.csv", "runa-log.plan", "runa.plan"]


def test_each_change_keeps_the_log_as_it_was(folder: Path) -> None:
    texts = []
    for day in ("04", "05", "06"):
        (folder / "rows.csv").write_text(HEAD + f"2027-01-{day},,Back Squat,60 kg,5,8,\n")
        done = run_command("import", "rows.csv", "--into", "log.plan")
        assert done.exit_code == 0
        texts.append((folder / "log.plan").read_text())
    assert "the file as it was is log.plan.before-2" in done.stderr
    assert (folder / "log.plan.before").read_text() == texts[0]
    assert (folder / "log.plan.before-2").read_text() == texts[1]
    again = run_command("import", "rows.csv", "--into", "log.plan")
    assert again.stderr == "log.plan: nothing to add, 1 set there already\n"
    assert not (folder / "log.plan.before-3").exists()


def test_a_refused_table_changes_nothing(folder: Path) -> None:
    (folder / "log.plan").write_bytes(LOG)
    (folder / "rows.csv").write_text("a,b\n1,2\n")
    done = run_command("import", "rows.csv", "--into", "log.plan")
    assert done.exit_code == 1
    assert "SW1106" in done.stderr
    assert (folder / "log.plan").read_bytes() == LOG
    assert sorted(path.name for path in folder.iterdir()) == ["log.plan", "rows.csv", "runa.plan"]


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("rows.csv", "--into", "log.txt"), "a log's name ends in .plan"),
        (("none.csv", "--into", "log.plan"), "no such file"),
        (("rows.csv", "--into", "none/log.plan"), "no such folder"),
        (("rows.csv", "--into", "runa.plan", "--athlete-file", "runa.plan"), "is there already"),
        (("rows.csv",), "Missing option"),
    ],
)
def test_wrong_usage(folder: Path, arguments: tuple[str, ...], said: str) -> None:
    done = run_command("import", *arguments)
    assert done.exit_code == 2
    assert said in done.stderr


def test_standard_input_and_export(folder: Path) -> None:
    done = run_command("import", "-", "--into", "log.plan", stdin=(folder / "rows.csv").read_bytes())
    assert done.exit_code == 0
    table = run_command("export", "log.plan")
    assert table.stdout_bytes.decode() == (
        "date,slot,exercise,exercise_label,set,load,unit,reps,effort,note,test,session_effort,session_min\r\n"
        "2027-01-04,,Back Squat,,1,60,kg,5,RPE 8,,,,\r\n"
    )


def test_a_link_stays_a_link(folder: Path) -> None:
    (folder / "real.plan").write_text("use stdlib.exercises\n")
    (folder / "log.plan").symlink_to("real.plan")
    assert run_command("import", "rows.csv", "--into", "log.plan").exit_code == 0
    assert (folder / "log.plan").is_symlink()
    assert "session 2027-01-04" in (folder / "real.plan").read_text()
    assert (folder / "log.plan.before").read_text() == "use stdlib.exercises\n"
