"""`volume`: the same figures as a table, bars, CSV and JSON."""

from __future__ import annotations

import csv
import json
from collections.abc import Callable
from pathlib import Path

from click.testing import Result

Run = Callable[..., Result]

# By hand from `pier.plan`: Monday 3 sets of a quads movement; Thursday 2, then 3 sets of a chest movement that counts
# half for the quads. From Monday to Thursday and on to Monday no quads are trained directly but on Mondays: 168 hours.
CSV = """\
week,muscle,direct_sets,fractional_sets,sessions,max_session_sets,rest_h_min
1,quads,3,4,1,3,
1,chest,2,2,1,2,
2,quads,3,4.5,1,3,168
2,chest,3,3,1,3,168
"""


def test_csv(club: Path, run: Run) -> None:
    assert run("volume", "pier.plan", "--format", "csv").stdout.replace("\r\n", "\n") == CSV


def test_json_has_the_rows_of_the_csv(club: Path, run: Run) -> None:
    (plan,) = json.loads(run("volume", "pier.plan", "--format", "json", "--athlete", "Ines").stdout)
    assert (plan["plan"], plan["athlete"]) == ("Pier", "Ines")
    for row, expected in zip(plan["rows"], csv.DictReader(CSV.splitlines()), strict=True):
        shown = {name: "" if row[name] is None else str(row[name]) for name in expected}
        assert shown == expected


def test_table(club: Path, run: Run) -> None:
    assert run("volume", "pier.plan").stdout == (
        "Pier\n"
        "Sets a week: each counts for a muscle by its share. d: deload week, t: test week.\n"
        "\n"
        "Base        1    2  most/session  sessions  least rest\n"
        "Quadriceps  4  4.5             3         1       168 h\n"
        "Chest       2    3             3         1       168 h\n"
    )


def test_bars(club: Path, run: Run) -> None:
    assert run("volume", "pier.plan", "--format", "bars", "--athlete", "Noor").stdout == (
        "Pier, for Noor\n"
        "A bar a week, a group a block; the highest bar is 4.5 sets a week.\n"
        "\n"
        "Quadriceps  ▇█  4-4.5\n"
        "Chest       ▄▅    2-3\n"
    )


def test_one_csv_holds_one_plan(club: Path, run: Run) -> None:
    both = ("--athlete", "Ines", "--athlete", "Noor")
    answer = run("volume", "pier.plan", "--format", "csv", *both)
    assert answer.exit_code == 2
    assert len(json.loads(run("volume", "pier.plan", "--format", "json", *both).stdout)) == 2
    assert run("volume", "pier.plan", *both).stdout.count("Quadriceps") == 2


def test_names_cannot_command_the_terminal(club: Path, run: Run) -> None:
    (club / "moves.plan").write_text((club / "moves.plan").read_text().replace('"Quadriceps"', '"Q\u202eu"'))
    for form in ("table", "bars"):
        assert "Q\\u202eu" in run("volume", "pier.plan", "--format", form).stdout


def test_errors_end_it(club: Path, run: Run) -> None:
    (club / "pier.plan").write_text((club / "pier.plan").read_text().replace("Back Squat: 3", "Bak Squat: 3"))
    answer = run("volume", "pier.plan")
    assert (answer.exit_code, answer.stdout) == (1, "")
    assert "SW0201" in answer.stderr


def test_a_plan_that_trains_nothing(club: Path, run: Run) -> None:
    (club / "rest.plan").write_text('plan "Rest"\n  block Base: 1 week\n    day Mon\n      note "Walk."\n')
    for form in ("table", "bars", "csv", "json"):
        answer = run("volume", "rest.plan", "--format", form)
        assert answer.exit_code == 0, answer.output
