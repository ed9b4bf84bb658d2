"""`setwright log`: for one athlete, in every format, and a club's folder in the morning."""

from __future__ import annotations

import csv
import json
import re
import shutil
from html.parser import HTMLParser
from io import StringIO
from pathlib import Path

import pytest

from run_command import run_command as run

CLUB = Path(__file__).parents[2] / "examples" / "mill-club-log"
DAY = ("--on", "2027-01-28")


def told(*arguments: str, athlete: str = "aslak") -> str:
    answer = run("log", str(CLUB / "mill-evenings.plan"), "--athlete", str(CLUB / f"{athlete}.plan"), *DAY, *arguments)
    assert answer.exit_code == 0, answer.output
    return answer.stdout


def test_what_one_wants_to_know_first() -> None:
    head = told().splitlines()[:7]
    assert head[0] == "Mill evenings, for Aslak"
    assert re.sub(" +", " ", "\n".join(head[1:5])) == (
        "On Thu 28 January 2027, week 4 of 6 (Grist)\n"
        "Sessions 7 due: 3 done, 1 partly, 3 missed; 5 to come\n"
        "Sets 48 of 92 due, 52%\n"
        "Behind by 3 sessions"
    )
    assert head[6].endswith(
        "week 3, Thu 21 January 2027, due 7 days ago: Hinge and carry (Back Squat, Romanian "
        "Deadlift, Overhead Press, Chin-Up)"
    )


def test_no_word_of_it_judges() -> None:
    words = set(re.findall(r"[a-z]+", (told() + told(athlete="torvi")).casefold()))
    assert not words & {"good", "bad", "poor", "great", "well", "safe", "unsafe", "fail", "failed", "warning", "should"}


def test_bests_with_their_trend() -> None:
    squat = next(line for line in told(athlete="torvi").splitlines() if re.match("Back Squat +epley", line))
    assert "99.3 kg" in squat
    assert "2.72 (1.96 to 3.26)" in squat
    assert "too little: 4 days over 14 days" in told()


def test_json_and_csv_have_the_same_figures() -> None:
    (found,) = json.loads(told("--format", "json"))
    assert found["sessions"] == {"done": 3, "partly": 1, "missed": 3, "away": 0, "coming": 5, "extra": 0, "apart": 0}
    assert found["weeks"][0]["session_load"] == 896  # 6 x 70 + 7 x 68
    rows = list(csv.DictReader(StringIO(told("--format", "csv"))))
    loads = {row["week"]: row["value"] for row in rows if row["figure"] == "session_load"}
    assert loads == {"1": "896", "2": "440", "3": "648"}
    assert {row["of"] for row in rows if row["figure"] == "estimated_best_kg"} == {
        one["movement"] for one in found["bests"]
    }


class _Page(HTMLParser):
    """What a page loads, and drawings without a text."""

    def __init__(self) -> None:
        super().__init__()
        self.loaded: list[str] = []
        self.silent = 0
        self.scripts = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        self.loaded += [
            value for name in ("src", "href") if (value := given.get(name)) and not value.startswith(("#", "data:"))
        ]
        self.scripts += tag == "script" or "style" in given
        if tag == "svg":
            self.silent += not (given.get("aria-hidden") or given.get("aria-label") or given.get("aria-labelledby"))


def test_the_page_needs_nothing_else() -> None:
    text = told("--format", "html", athlete="torvi")
    page = _Page()
    page.feed(text)
    assert (page.loaded, page.silent, page.scripts) == ([], 0, 0)
    assert "default-src &#39;none&#39;" in text
    assert "Estimated best by epley: 2027-01-04" in text


def test_a_log_in_a_file_of_its_own() -> None:
    """Without an athlete it is nobody's, and without a plan there is nothing to hold it against."""
    assert run("log").exit_code == 2
    assert run("log", str(CLUB / "mill-evenings.plan"), "--log", str(CLUB / "nothing.plan")).exit_code == 2


def test_the_morning_list() -> None:
    answer = run("log", "--roster", str(CLUB), *DAY)
    assert answer.exit_code == 0, answer.output
    lines = answer.stdout.splitlines()
    assert lines[0] == "Thu 28 January 2027"
    rows = [re.split(r" {2,}", line) for line in lines if line.startswith(("Aslak", "Torvi"))]
    assert [row[:4] for row in rows] == [
        ["Aslak", "Mill evenings", "19:00 Hinge and carry", "3"],
        ["Torvi", "Mill evenings", "19:00 Hinge and carry", "0"],
    ]
    assert rows[0][-1].startswith("0 weekly sets for Hamstrings in week 3, outside the 4-12 you asked for")
    assert rows[1][-1] == "none"


def test_it_goes_on_past_a_broken_file(tmp_path: Path) -> None:
    shutil.copytree(CLUB, tmp_path / "club")
    club = tmp_path / "club"
    (club / "aslak.plan").write_text(
        (club / "aslak.plan").read_text(encoding="utf-8").replace("best Bench Press:", "best Bench Pres:"),
        encoding="utf-8",
    )
    (club / "bytes.plan").write_bytes(b"\xff\xfe\x00")
    answer = run("log", "--roster", str(club), *DAY)
    assert answer.exit_code == 1
    assert "\nTorvi" in answer.stdout
    assert "Bench Pres" in answer.stderr
    assert "bytes.plan" in answer.stderr


def test_a_roster_as_csv() -> None:
    answer = run("log", "--roster", str(CLUB), *DAY, "--format", "csv")
    rows = list(csv.DictReader(StringIO(answer.stdout)))
    assert [row["athlete"] for row in rows] == ["Aslak", "Torvi"]


def test_an_athlete_whose_plan_is_not_known_is_told(tmp_path: Path) -> None:
    for name in ("one", "two"):
        (tmp_path / f"{name}.plan").write_text(
            f'use stdlib.exercises\nplan "{name}"\n  block A: 1 week\n    day Mon\n      Plank: 3 x 30 s\n',
            encoding="utf-8",
        )
    (tmp_path / "kari.plan").write_text('athlete "Kari"\n', encoding="utf-8")
    answer = run("log", "--roster", str(tmp_path), *DAY)
    assert answer.exit_code == 1
    assert "Kari follows no plan" in answer.stderr
    named = run("log", str(tmp_path / "one.plan"), "--roster", str(tmp_path), *DAY)
    assert named.exit_code == 0, named.output
    assert "\nKari" in named.stdout


@pytest.mark.parametrize("folder", ["nowhere", "empty"])
def test_a_folder_without_athletes(folder: str, tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    assert run("log", "--roster", str(tmp_path / folder)).exit_code == 2
