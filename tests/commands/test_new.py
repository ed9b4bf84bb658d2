"""`new`: a plan written out or from any template compiles, and nothing is overwritten."""

from __future__ import annotations

import os
import re
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from setwright.cli.templates import Template, templates
from setwright.pipeline import compile, library

Run = Callable[..., Result]
TEMPLATES = templates(library())
WRITTEN_OUT: tuple[str, ...] = ()
WAYS = [WRITTEN_OUT, *(("--from", template.name) for template in TEMPLATES)]


@pytest.fixture(autouse=True)
def elsewhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_the_list_says_what_each_is_and_takes(run: Run) -> None:
    lines = run("new", "--list").stdout.splitlines()
    named = [line.split(": ", 1) for line in lines if not line.startswith(" ")]
    assert [name for name, _ in named] == [template.name for template in TEMPLATES]
    assert len(TEMPLATES) >= 8
    assert all(about.endswith(".") and len(about) > 30 for _, about in named)
    after = lines.index("five-days: " + dict(named)["five-days"]) + 1
    assert lines[after : after + 2] == ["  press-lift = Bench Press", "  squat-lift = Back Squat"]
    assert "  top = RPE 9" in lines[after:]


@pytest.mark.parametrize("way", WAYS, ids="".join)
def test_every_way_compiles_with_its_athlete_and_log(way: tuple[str, ...], run: Run) -> None:
    answer = run("new", 'Pier "Nord" \\ 深蹲', *way)
    assert answer.exit_code == 0, answer.output
    folder = Path("pier-nord-深蹲")
    assert sorted(os.listdir(folder)) == ["athlete.plan", "log.plan", "pier-nord-深蹲.plan"]
    for file in folder.iterdir():
        assert file.read_text(encoding="utf-8").startswith("# ")
        checked = run("check", str(file))
        assert checked.exit_code == 0, checked.stdout
    plan, athlete = folder / "pier-nord-深蹲.plan", folder / "athlete.plan"
    assert compile(str(plan)).diagnostics == ()
    built = run("build", str(plan), "--athlete", str(athlete), "--format", "json", "-o", "-")
    assert built.exit_code == 0, built.stderr
    assert '"name": "Pier \\"Nord\\" \\\\ 深蹲"' in built.stdout
    assert '"author": null' in built.stdout


def test_without_a_template_every_line_is_there_to_read(run: Run) -> None:
    run("new", "Pier")
    text = Path("pier/pier.plan").read_text(encoding="utf-8")
    assert 'plan "Pier"\n' in text
    assert len(re.findall(r"^ {6,8}[A-Z][\w -]+: \d", text, re.MULTILINE)) > 10


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda template: template.name)
def test_a_plan_from_a_template_names_every_parameter_and_an_edit(template: Template, run: Run) -> None:
    run("new", "Pier", "--from", template.name)
    text = Path("pier/pier.plan").read_text(encoding="utf-8")
    assert template.parameters
    for parameter in template.parameters:
        assert f"{parameter.name}: {parameter.default}" in text
    plain = compile("pier/pier.plan").compilations[0].plan
    edited = re.sub(r"^  # (block|  day|    add)", r"  \1", text, flags=re.MULTILINE)
    done = compile("pier/pier.plan", text=edited)
    assert done.diagnostics == ()
    before, after = (plan.weeks[0].sessions[0].lines for plan in (plain, done.compilations[0].plan))
    assert [line.movement.name for line in after] == [*(line.movement.name for line in before), "Dead Bug"]


def test_it_says_what_to_do_next(run: Run) -> None:
    answer = run("new", "Pier")
    assert answer.stdout == ""
    last = answer.stderr.splitlines()[-1]
    assert last == "Now: setwright build pier/pier.plan --athlete pier/athlete.plan"
    assert run(*last.split()[2:]).exit_code == 0


def test_nothing_is_overwritten(run: Run) -> None:
    run("new", "Pier")
    Path("pier/pier.plan").unlink()
    Path("pier/log.plan").write_text("mine")
    before = {path: path.read_bytes() for path in Path("pier").iterdir()}
    answer = run("new", "Pier")
    assert answer.exit_code == 2
    assert "is already there" in answer.stderr
    assert {path: path.read_bytes() for path in Path("pier").iterdir()} == before


def test_a_folder_of_ones_own_choice(run: Run) -> None:
    assert run("new", "../Pier", "-o", "plans/spring").exit_code == 0
    assert sorted(os.listdir("plans/spring")) == ["athlete.plan", "log.plan", "pier.plan"]
    assert os.listdir(".") == ["plans"]


@pytest.mark.parametrize("name", ["Athlete", "log"])
def test_a_name_that_another_file_has(name: str, run: Run) -> None:
    assert run("new", name, "-o", "here").exit_code == 0
    assert len(os.listdir("here")) == 3


def test_an_unknown_template_is_met_with_a_near_one(run: Run) -> None:
    answer = run("new", "Pier", "--from", "five-day")
    assert answer.exit_code == 2
    assert "`five-days`" in answer.stderr
    assert os.listdir(".") == []


PACK = ["README.md", "pyproject.toml", "tidewater_lifts/__init__.py", "tidewater_lifts/exercises.plan",
        "tidewater_lifts/rules.plan"]  # fmt: skip


def test_a_pack_to_start_from(run: Run) -> None:
    """Whether pip installs it is asked in tests/packs."""
    answer = run("new", "--pack", "Tidewater Lifts")
    assert answer.exit_code == 0, answer.output
    files = [path for path in Path("tidewater-lifts").rglob("*") if path.is_file()]
    assert sorted(path.relative_to("tidewater-lifts").as_posix() for path in files) == PACK
    for plan in Path("tidewater-lifts").rglob("*.plan"):
        text = plan.read_text(encoding="utf-8")
        assert "use tidewater-lifts." in text.split("\n", 1)[0]
        assert run("check", str(plan)).stdout == "no errors, no warnings\n"
    project = tomllib.loads(Path("tidewater-lifts/pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert project["entry-points"] == {"setwright.library": {"tidewater-lifts": "tidewater_lifts"}}
    assert answer.stderr.splitlines()[-1] == (
        "Now: python -m pip install -e tidewater-lifts, and in a plan: use tidewater-lifts.exercises"
    )


def test_a_pack_overwrites_nothing(run: Run) -> None:
    run("new", "--pack", "Tidewater Lifts")
    Path("tidewater-lifts/README.md").unlink()
    rules = Path("tidewater-lifts/tidewater_lifts/rules.plan")
    rules.write_text("mine")
    assert run("new", "--pack", "tidewater lifts").exit_code == 2
    assert rules.read_text() == "mine"
    assert not Path("tidewater-lifts/README.md").exists()


@pytest.mark.parametrize("name", ["5 Days", "深蹲", "stdlib", "Setwright"])
def test_names_that_no_pack_can_bear(name: str, run: Run) -> None:
    answer = run("new", "--pack", name)
    assert answer.exit_code == 2
    assert "a pack cannot be called" in answer.stderr
    assert os.listdir(".") == []


def test_a_pack_hides_no_module_of_python(run: Run) -> None:
    assert run("new", "--pack", "Calendar").exit_code == 0
    assert sorted(os.listdir("calendar")) == ["README.md", "calendar_plans", "pyproject.toml"]


def test_a_pack_is_not_made_from_a_template(run: Run) -> None:
    assert run("new", "--pack", "Pier", "--from", "five-days").exit_code == 2
    assert os.listdir(".") == []
