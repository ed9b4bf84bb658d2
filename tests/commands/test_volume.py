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


# By hand: 80% of Ines' 100 kg are 3 x 5 x 80 = 1200 kg; of her bench press no best is known. Monday has 3 x 20 s of
# work and 2 rests of 120 s, and states no effort. Thursday has 2, then 3 sets of 32 s, with 1 and 2 rests.
LOADS = """\
week,kind,sets,repetitions,open_sets,sets_with_load,known_load,volume_load,mean_load,unit,minutes,density,\
sets_with_effort,planned_load,monotony,strain,coupled_ratio,moving_ratio
1,working,5,31,0,3,1200,,80,kg,8.07,,2,,,,,
2,working,6,39,0,3,1200,,80,kg,10.6,,3,,,,,
"""


def test_loads_as_csv_and_json(club: Path, run: Run) -> None:
    ines = ("--by", "load", "--athlete", "Ines")
    assert run("volume", "pier.plan", *ines, "--format", "csv").stdout.replace("\r\n", "\n") == LOADS
    (plan,) = json.loads(run("volume", "pier.plan", *ines, "--format", "json").stdout)
    assert (plan["plan"], plan["athlete"], plan["unit"]) == ("Pier", "Ines", "kg")
    for row, expected in zip(plan["rows"], csv.DictReader(LOADS.splitlines()), strict=True):
        assert row["planned_load_by_day"] is None
        for name in set(expected) - {"unit", "minutes"}:
            assert ("" if row[name] is None else str(row[name])) == expected[name]


def test_loads_as_a_table(club: Path, run: Run) -> None:
    text = (club / "pier.plan").read_text(encoding="utf-8").replace("@ 80%", "@ RPE 7 -> 8")
    (club / "pier.plan").write_text(text, encoding="utf-8")
    shown = run("volume", "pier.plan", "--by", "load", "--athlete", "Ines").stdout.splitlines()
    # Epley: 5 at RPE 7 are 8 to failure, 78.95 kg, and 5 at RPE 8 are 7, 81.08 kg; in steps of 2.5 kg.
    assert shown[4:7] == [
        "block  week  sets  repetitions  volume load kg  known for  mean kg  minutes    kg/min",
        "Base      1     5           31         >= 1200     3 of 5       80        8  >= 148.8",
        "          2     6           39         >= 1200     3 of 6       80       11  >= 113.2",
    ]
    # 5 min at RPE 7 and 3.07 min at RPE 8; then 5 min and 5.6 min at RPE 8. Monotony by numpy, ddof=1.
    assert "not to be compared" in " ".join(shown)
    assert shown[-2:] == [
        "Base      1            60     5 of 5      0.57      34",
        "          2            85     6 of 6      0.58      50",
    ]


def test_loads_that_nobody_knows_are_blank(club: Path, run: Run) -> None:
    shown = run("volume", "pier.plan", "--by", "load").stdout
    assert "No load is known: most follow from the bests of an athlete, whom `--athlete` names.\n" in shown
    assert "0 of 5" in shown
    assert ">=" not in shown.split("block", 1)[1].split("Planned", 1)[0]


def test_loads_have_no_bars(club: Path, run: Run) -> None:
    answer = run("volume", "pier.plan", "--by", "load", "--format", "bars")
    assert (answer.exit_code, answer.stdout) == (2, "")
    assert "`--by load` comes as `--format table`, `csv` or `json`" in answer.stderr


def test_one_csv_holds_one_plan(club: Path, run: Run) -> None:
    both = ("--athlete", "Ines", "--athlete", "Noor")
    answer = run("volume", "pier.plan", "--format", "csv", *both)
    assert answer.exit_code == 2
    assert run("volume", "pier.plan", "--by", "load", "--format", "csv", *both).exit_code == 2
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
    assert "Nothing in this plan is lifted" in run("volume", "rest.plan", "--by", "load").stdout
    for form in ("csv", "json"):
        assert run("volume", "rest.plan", "--by", "load", "--format", form).exit_code == 0
