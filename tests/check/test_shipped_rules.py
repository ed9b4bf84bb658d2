"""What the shipped rule sets ask for, with the sources that stand beside the lines."""

from __future__ import annotations

import re
from importlib.resources import files

import pytest

from setwright.diagnostics import Severity
from setwright.pipeline import compile
from setwright.rules import Promise, Rule

FOLDER = files("setwright.stdlib").joinpath("rules")
SETS = ("hypertrophy-newer", "hypertrophy", "strength-newer", "strength")
MAIN_LIFTS = {"squat", "hinge", "horizontal-push"}

each_set = pytest.mark.parametrize("name", SETS)


def promised(name: str) -> Promise:
    text = f'use stdlib.exercises\nuse stdlib.rules.{name}\nplan "Pier"\n  follow {name}\n  block A: 1 week\n'
    done = compile("pier.plan", text=text + "    day Mon\n      Plank: 2 x 30 s\n")
    assert all(found.severity is not Severity.ERROR for found in done.diagnostics)
    return done.compilations[0].promise


def asked(name: str, measure: str) -> list[Rule]:
    return [rule for rule in promised(name).rules if rule.measure == measure]


@each_set
def test_each_asks_for_sets_days_loads_rest_and_deloads(name: str) -> None:
    measures = {rule.measure for rule in promised(name).rules}
    assert measures >= {
        "weekly-sets",
        "session-sets",
        "frequency",
        "load-rise",
        "rest",
        "deload-cut",
        "effort",
        "recovery",
    }


@pytest.mark.parametrize("name", [*SETS, "balanced"])
def test_each_line_has_its_source_over_it_and_a_reason(name: str) -> None:
    lines = FOLDER.joinpath(f"{name}.plan").read_text(encoding="utf-8").splitlines()
    rules = [number for number, line in enumerate(lines) if re.match(r"  (must|should|count) ", line)]
    assert len(rules) > 5
    for number in rules:
        over = lines[number - 1]
        assert over.startswith("  # "), lines[number]
        if not lines[number].startswith("  count"):
            assert lines[number].endswith('"'), lines[number]
    comments = re.findall(r"(?:^  #.*\n)+", "\n".join(lines), re.MULTILINE)
    for comment in comments:
        assert re.search(r"[Cc]ommon practice|\b(19|20)\d\d\b|FM 21-20", comment), comment


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        ("strength", 2, 5),  # Grgic et al. 2018, more than 2 min for trained people; Haff and Triplett 2016, 2-5 min
        ("strength-newer", 1, None),  # Grgic et al. 2018, 60-120 s for untrained people
        ("hypertrophy", 1, None),  # Grgic et al. 2017, more than 60 s may serve trained people better
        ("hypertrophy-newer", 1, None),  # Ratamess et al. 2009, 1-2 min for smaller lifts
    ],
)
def test_rests_are_those_of_the_sources(name: str, low: float, high: float | None) -> None:
    (rule,) = asked(name, "rest")
    assert (rule.bound.low, rule.bound.high, rule.bound.strict) == (low, high, name == "hypertrophy")
    assert set(rule.subjects) >= MAIN_LIFTS


@each_set
def test_loads_rise_by_ten_percent_at_most(name: str) -> None:
    """Ratamess et al. 2009: 2-10%; US Army FM 21-20: no more than 10%."""
    (rule,) = asked(name, "load-rise")
    assert (rule.bound.low, rule.bound.high) == (None, 10)
    assert set(rule.subjects) >= MAIN_LIFTS


@pytest.mark.parametrize("goal", ["hypertrophy", "strength"])
def test_newer_lifters_are_asked_for_fewer_sets_and_no_more_effort(goal: str) -> None:
    def most(name: str, measure: str) -> list[float]:
        return [float(rule.bound.high) for rule in asked(name, measure) if rule.bound.high is not None]

    for measure in ("weekly-sets", "session-sets", "session-time"):
        assert max(most(f"{goal}-newer", measure)) < max(most(goal, measure)), measure
    assert min(most(f"{goal}-newer", "effort")) <= min(most(goal, "effort"))
