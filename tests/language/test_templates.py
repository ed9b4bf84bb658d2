"""The shipped templates: each keeps its own rules at several settings, and says of itself what it takes."""

from __future__ import annotations

import re
from importlib.resources import files

import pytest

from setwright.pipeline import compile
from setwright.plan import Plan, WeekKind

# Every template at its defaults and at settings that a coach could choose: other lifts, lengths, sets and efforts.
SETTINGS = {
    "two-days-full-body": (
        "",
        "squat-lift: Dumbbell Squat, press-lift: Machine Chest Press, base-sets: 4, top: RPE 9",
        "hinge-lift: Dumbbell Romanian Deadlift, row-lift: Barbell Row, span: 6, base-sets: 2, top: RPE 8",
        "span: 3, top: 1 RIR",
    ),
    "three-days-full-body": (
        "",
        "squat-lift: Front Squat, press-lift: Dumbbell Bench Press, span: 6, top: RPE 9",
        "hinge-lift: Dumbbell Romanian Deadlift, overhead-lift: Push Press, span: 3, peak-sets: 3, top: RPE 8.5",
        "base-sets: 2, peak-sets: 3",
    ),
    "four-days-upper-lower": (
        "",
        "press-lift: Dumbbell Bench Press, pull-lift: Chin-Up, squat-lift: Front Squat, top: RPE 9",
        "hip-lift: Barbell Glute Bridge, span: 6, base-sets: 4",
        "squat-lift: Hack Squat, hip-lift: Machine Hip Thrust, span: 3, top: RPE 8",
    ),
    "five-days": (
        "",
        "press-lift: Dumbbell Bench Press, squat-lift: Front Squat, span: 6, top: RPE 8.5",
        "incline-lift: Machine Incline Press, pull-lift: Chin-Up, span: 3, peak-sets: 4",
        "squat-lift: Low-Bar Squat, pull-lift: Neutral-Grip Pull-Up, span: 5, base-sets: 5, top: 1 RIR",
    ),
    "six-days-push-pull-legs": (
        "",
        "press-lift: Pause Bench Press, second-press: Dumbbell Bench Press, squat-lift: Front Squat, span: 6",
        "pull-lift: Chin-Up, second-pull: Neutral-Grip Pulldown, second-squat: Hack Squat, span: 3, top: RPE 8.5",
        "squat-lift: Low-Bar Squat, base-sets: 5, top: 1 RIR",
    ),
    "first-months": (
        "",
        "squat-lift: Goblet Squat, push-lift: Dumbbell Bench Press, pull-lift: Seated Cable Row, span: 3",
        "hinge-lift: Kettlebell Deadlift, base-sets: 3, more-sets: 4, main-reps: 8-10, span: 5",
        "main-reps: 12-15, more-sets: 2, top: RPE 7.5",
    ),
    "home-dumbbells": (
        "",
        "squat-lift: Dumbbell Squat, press-lift: Push-Up, main-reps: 10-15, short-rest: 2 min, span: 6",
        "hinge-lift: Single-Leg Romanian Deadlift, row-lift: Plank Row, base-sets: 4, span: 3, top: RPE 9",
        "press-lift: Knee Push-Up, main-reps: 12, base-sets: 2, top: 2 RIR",
    ),
    "three-days-first-strength": (
        "",
        "squat-lift: Front Squat, bench-lift: Floor Press, first-load: 60%, last-load: 70%, span: 6",
        "pull-lift: Deadlift, overhead-lift: Pause Overhead Press, span: 3, base-sets: 4, last-load: 70%",
        "squat-lift: Box Squat, overhead-lift: Seated Overhead Press, span: 5, first-load: 67.5%",
    ),
    "strength-with-test-week": (
        "",
        "squat-lift: Low-Bar Squat, pull-lift: Sumo Deadlift, span: 6, base-sets: 5, first-load: 67.5%",
        "squat-lift: Front Squat, bench-lift: Pause Bench Press, span: 3, first-load: 75%, peak-span: 3, top: RPE 8.5",
        "last-load: 82.5%, peak-span: 5, top: 1 RIR, first-try: 90%",
    ),
}
DAYS = {
    "two-days-full-body": 2,
    "three-days-full-body": 3,
    "four-days-upper-lower": 4,
    "five-days": 5,
    "six-days-push-pull-legs": 6,
    "first-months": 2,
    "home-dumbbells": 3,
    "three-days-first-strength": 3,
    "strength-with-test-week": 4,
}
FOLDER = files("setwright.stdlib").joinpath("templates")
TEXTS = {
    file.name.removesuffix(".plan"): file.read_text(encoding="utf-8")
    for file in FOLDER.iterdir()
    if file.name.endswith(".plan")
}

each_setting = pytest.mark.parametrize(
    ("template", "arguments"), [(name, arguments) for name, settings in SETTINGS.items() for arguments in settings]
)


def test_each_stands_in_a_file_of_its_name() -> None:
    assert set(TEXTS) == set(SETTINGS) == set(DAYS)
    assert set(DAYS.values()) == {2, 3, 4, 5, 6}
    for name, text in TEXTS.items():
        assert re.findall(r"^template ([\w-]+)\(", text, re.MULTILINE) == [name]


@pytest.mark.parametrize("template", sorted(SETTINGS))
def test_at_least_three_settings_are_tried(template: str) -> None:
    assert len(set(SETTINGS[template])) >= 3
    assert SETTINGS[template][0] == ""


@each_setting
def test_it_keeps_its_own_rules(template: str, arguments: str) -> None:
    done = compile("mine.plan", text=text_of(template, arguments))
    assert [f"{found.span}: {found.message}" for found in done.diagnostics] == []
    (made,) = done.compilations
    assert made.promise.rules
    assert {len(week.sessions) for week in made.plan.weeks if week.kind is not WeekKind.TEST} == {DAYS[template]}


@pytest.mark.parametrize("template", sorted(SETTINGS))
def test_every_parameter_is_explained_and_changes_something(template: str) -> None:
    head = TEXTS[template].partition("\ntemplate ")[0]
    plain_rows = weeks(template, "")
    for parameter, default in parameters(template):
        assert re.search(rf"^#.*\b{parameter}\b.*: ", head, re.MULTILINE), parameter
        assert weeks(template, f"{parameter}: {other_than(default)}") != plain_rows, parameter


def test_the_test_week_comes_last() -> None:
    plan = plan_of("strength-with-test-week", "")
    assert [week.kind for week in plan.weeks][-2:] == [WeekKind.DELOAD, WeekKind.TEST]
    assert sum(week.kind is WeekKind.TEST for week in plan.weeks) == 1


def test_the_home_plan_needs_dumbbells_only() -> None:
    plan = plan_of("home-dumbbells", "")
    needed = {thing for week in plan.weeks for session in week.sessions for line in session.lines
              for thing in line.movement.needs}  # fmt: skip
    assert needed == {"dumbbells", "dumbbell"}


def test_all_of_them_come_with_one_line() -> None:
    text = "use stdlib.templates\n" + "".join(f'plan "{name}" from {name}\n' for name in SETTINGS)
    done = compile("all.plan", text=text)
    assert done.diagnostics == ()
    assert [made.plan.name for made in done.compilations] == list(SETTINGS)


def text_of(template: str, arguments: str) -> str:
    call = f"({arguments})" if arguments else ""
    return f'use stdlib.templates.{template}\n\nplan "Mine" from {template}{call}\n'


def plan_of(template: str, arguments: str) -> Plan:
    (made,) = compile("mine.plan", text=text_of(template, arguments)).compilations
    return made.plan


def weeks(template: str, arguments: str) -> list[tuple[object, ...]]:
    """What each segment of each week asks for."""
    return [
        (week.number, line.movement.name, line.rest, segment.sets, segment.reps, segment.intensity)
        for week in plan_of(template, arguments).weeks
        for session in week.sessions
        for line in session.lines
        for segment in line.segments
    ]


def parameters(template: str) -> list[tuple[str, str]]:
    """Each parameter with its default, as the file writes them."""
    (inside,) = re.findall(r"^template [\w-]+\((.*)\)$", TEXTS[template], re.MULTILINE)
    return [(name, default) for name, default in (each.split(" = ") for each in inside.split(", "))]


def other_than(default: str) -> str:
    """Another value of the same type."""
    if default[0].isupper() and not default.startswith("RPE"):
        return "Medicine-Ball Slam"
    return re.sub(r"\d+(?:\.\d+)?", lambda found: f"{float(found.group()) + 1:g}", default)


# ---- what is wrong with a call is shown at the call and in the template ---------------------------

SHORT = """\
exercise Squat

template short(lift, top = RPE 9)
  block Base: 1 week
    day Mon
      lift: 3 x 5 @ top

"""


@pytest.mark.parametrize(
    ("call", "code", "at", "also_at"),
    [
        ("short(lift: Squat, top: 80%)", "parameter-type", "80%", ["3:22"]),
        ("short", "missing-parameter", "short", ["3:16"]),
        ("short(lift: Squat, tip: RPE 8)", "unknown-parameter", "tip", ["3:10"]),
        ("short(lift: Squat, lift: Squat)", "parameter-twice", "lift", ["8:24"]),
        # The lift of a call is looked for where the template uses it, and told where it was written.
        ("short(lift: Squatt)", "unknown-movement", "Squatt", ["6:7"]),
    ],
)
def test_both_places_are_shown(call: str, code: str, at: str, also_at: list[str]) -> None:
    (found,) = compile("mine.plan", text=f'{SHORT}plan "Mine" from {call}\n').diagnostics
    assert found.code.name == code
    assert found.span.text == at
    assert [str(related.span).removeprefix("mine.plan:") for related in found.related] == also_at
