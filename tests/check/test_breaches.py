"""How a breach is told: merged weeks, spans, related lines, severity, waivers, and rules that cannot be held."""

from fractions import Fraction

import pytest

from build_plans import (
    BENCH,
    CURL,
    PUSHDOWN,
    SQUAT,
    day,
    deload,
    line,
    movement,
    percent,
    plan,
    promise,
    reps,
    rpe,
    rule,
    segment,
    stands,
    waiver,
    week,
)
from setwright.check import breaches, rule_faults
from setwright.check.figures.sets import WHOLE_PLAN
from setwright.check.measure import Figure, Measure
from setwright.check.measures import MEASURES
from setwright.diagnostics import Related, Severity
from setwright.diagnostics.catalogue import measures
from setwright.diagnostics.catalogue import rules as codes
from setwright.prescription import RepsKind
from setwright.record import replace
from setwright.rules import BoundUnit, Scope


def messages(made, *rules, waivers=(), **how):
    return [found.message for found in breaches(made, promise(*rules, waivers=waivers, **how))]


def benching(*sets):
    return plan(*(week(day("Mon", line(BENCH, count))) for count in sets))


TWO_DAYS = week(day("Mon", line(SQUAT, 6)), day("Tue", line(SQUAT, 4)))


@pytest.mark.parametrize(
    ("made", "held", "message"),
    [
        (
            benching(8, 9, 9, 10, 8),
            rule("weekly-sets", "chest", 10, 20),
            "8 to 9 weekly sets for Chest in weeks 1-3 and 5, outside the 10-20 that the rule set house asks for",
        ),
        (
            benching(1, 10),
            rule("weekly-sets", "chest", 2),
            "1 weekly set for Chest in week 1, outside the >= 2 that the rule set house asks for",
        ),
        (
            benching(12, 12),
            rule("weekly-sets", "", high=10),
            "12 weekly sets in weeks 1-2, outside the <= 10 that the rule set house asks for",
        ),
        (
            benching(9, 25, 25),
            rule("session-sets", "triceps", high=11),
            "Mon of weeks 2-3: 12.5 sets for Triceps, outside the <= 11 that the rule set house asks for",
        ),
        (
            benching(4),
            rule("frequency", "every muscle", 2),
            "1 session a week for Chest in week 1, outside the >= 2 that the rule set house asks for",
        ),
        (
            plan(TWO_DAYS, TWO_DAYS),
            rule("recovery", "quads", 48, unit=BoundUnit.HOURS),
            "Tue of weeks 1-2: 24 h since the last session for Quads, "
            "outside the >= 48 h that the rule set house asks for",
        ),
        (
            plan(week(day("3", line(BENCH, segment(3, 5, rpe(9)))))),
            rule("effort", "", high=8, unit=BoundUnit.RPE),
            "day 3 of week 1: RPE 9, outside the <= RPE 8 that the rule set house asks for",
        ),
        (
            benching(3, 4),
            rule("weekly-rise", "chest", high=30, unit=BoundUnit.PERCENT),
            "a weekly rise of 33.3% for Chest in week 2, outside the <= 30% that the rule set house asks for",
        ),
        (
            plan(week(day("Mon", line(BENCH, 4))), deload(day("Mon", line(BENCH, 3)))),
            rule("deload-cut", "", 40, unit=BoundUnit.PERCENT),
            "the deload in week 2 cuts 25% of the sets, outside the >= 40% that the rule set house asks for",
        ),
        (
            benching(2),  # 2 x 5 x 4 s and one rest of 120 s
            rule("session-time", "", high=2, unit=BoundUnit.MINUTES),
            "Mon of week 1: 2.7 min, outside the <= 2 min that the rule set house asks for",
        ),
        (
            benching(2),
            rule("weekly-time", "", high=2, unit=BoundUnit.MINUTES),
            "2.7 min a week in week 1, outside the <= 2 min that the rule set house asks for",
        ),
        (
            plan(week(day("Mon", line(SQUAT, segment(3, 3, percent(87.5)))))),
            rule("intensity", "quads", high=85, unit=BoundUnit.PERCENT),
            "Mon of week 1: 87.5% of a best for Quads, outside the <= 85% that the rule set house asks for",
        ),
        (
            plan(week(day("Mon", line(SQUAT, segment(5, 5, percent(75)), segment(2, 2, percent(90)))))),
            rule("lifts-in-zone", "", 0, 100, unit=BoundUnit.PERCENT),
            "Mon of week 1: 25 lifts (108%) for Back Squat at 70-80%, where the table has 12-24; "
            "outside the 0-100% of that range that the rule set house asks for",
        ),
        (
            plan(week(day("Mon", line(BENCH, 8), line(SQUAT, 4))), week(day("Mon", line(BENCH, 9)))),
            rule("balance", "chest : quads", 0.5, 1.5),
            "a balance of 9 : 0 and 2 for chest : quads in weeks 1-2, "
            "outside the 0.5-1.5 that the rule set house asks for",
        ),
        (
            # 2 min at RPE 8 on one day of seven: the mean is 16/7, the deviation 16 / root 7.
            plan(week(day("Mon", line(BENCH, segment(1, reps(120, kind=RepsKind.SECONDS), rpe(8)))))),
            rule("monotony", "", high=0.25),
            "a monotony of 0.38 (sample deviation, n - 1) in week 1, "
            "outside the <= 0.25 that the rule set house asks for",
        ),
        (
            plan(week(day("Mon", line(BENCH, segment(1, reps(120, kind=RepsKind.SECONDS), rpe(8)))))),
            rule("strain", "", high=6),  # 16 / root 7
            "a strain of 6.05 (sample deviation, n - 1) in week 1, outside the <= 6 that the rule set house asks for",
        ),
    ],
)
def test_the_message_of_each_measure(made, held, message):
    assert messages(made, held) == [message]


def test_each_subject_and_each_slot_is_one_diagnostic_in_the_order_of_rules():
    made = plan(week(day("Mon", line(BENCH, 12)), day("Thu", line(BENCH, 13))))
    found = messages(made, rule("session-sets", "chest", high=11), rule("weekly-sets", "chest, quads", 1, 20))
    assert [text.split(",")[0] for text in found] == [
        "Mon of week 1: 12 sets for Chest",
        "Thu of week 1: 13 sets for Chest",
        "25 weekly sets for Chest in week 1",
        "0 weekly sets for Quads in week 1",
    ]


def test_a_plan_that_keeps_its_rules_has_nothing_to_tell():
    assert breaches(benching(10, 12), promise(rule("weekly-sets", "chest", 10, 20))) == ()


def test_severity_reason_and_code_come_from_the_rule_and_its_measure():
    held = rule("weekly-sets", "chest", 10, severity=Severity.ERROR, reason="Less is little.")
    (found,) = breaches(benching(8), promise(held))
    assert (found.severity, found.help, found.code) == (Severity.ERROR, "Less is little.", measures.WEEKLY_SETS)


def test_the_greatest_contributor_is_pointed_at_and_the_others_follow_once_each():
    presses = [line(movement(f"Press {sets}", chest=1), sets) for sets in range(1, 10)]
    made = plan(week(day("Mon", *presses)), week(day("Mon", *presses)))
    (found,) = breaches(made, promise(rule("weekly-sets", "chest", high=20)))
    assert found.span.text == "Press 9"
    assert [(place.span.text, place.text) for place in found.related] == [
        ("Press 8", "adds 8 sets"),
        ("Press 7", "adds 7 sets"),
        ("Press 6", "adds 6 sets"),
        ("Press 5", "adds 5 sets"),
        ("Press 4", "adds 4 sets"),
        ("Press 3", "adds 3 sets"),
        ("Press 2", "and 2 more lines"),
        ("rule weekly-sets", "the rule stands here, in the rules `house`"),
    ]


def test_what_a_line_adds_may_change_over_the_weeks():
    days = [day("Mon", line(BENCH, 8), line(PUSHDOWN, count)) for count in (1, 3)]
    (found,) = breaches(plan(*map(week, days)), promise(rule("weekly-sets", "triceps", 10, ruleset=None)))
    assert [place.text for place in found.related] == ["adds 1 to 3 sets", "the rule stands here"]


def test_numbers_in_words_stand_once_and_only_the_first_of_many():
    made = [line(SQUAT, segment(sets, 5, percent(75))) for sets in (5, 6, 6, 7, 8)]
    held = rule("lifts-in-zone", "", 0, 100, unit=BoundUnit.PERCENT)
    (found,) = messages(plan(*(week(day("Mon", each)) for each in made)), held)
    assert found.startswith(
        "Mon of weeks 1-5: 25 lifts (108%), 30 lifts (150%), 35 lifts (192%) and more for Back Squat"
    )


def test_an_inherited_line_says_once_how_it_came():
    came = Related(stands("like Settle"), "came to block Build through this `like`")
    lines = [line(BENCH, 6, inherited=(came,)), line(movement("Dip", chest=1), 5, inherited=(came,))]
    (found,) = breaches(plan(week(day("Mon", *lines))), promise(rule("weekly-sets", "chest", high=10)))
    assert [place.text for place in found.related] == ["adds 5 sets", came.text, found.related[-1].text]


@pytest.mark.parametrize(
    ("made", "text"),
    [
        (plan(week(day("Mon", line(BENCH, 3)))), "block Base"),
        (plan(week(day("Mon", line(BENCH, 3))), week(day("Mon", line(BENCH, 3)), block="Build")), "plan"),
    ],
)
def test_a_muscle_that_nothing_trains_is_told_at_its_block_or_at_the_plan(made, text):
    (found,) = breaches(made, promise(rule("weekly-sets", "quads", 4)))
    assert found.span.text == text


def test_a_muscle_that_nothing_declares_is_left_to_the_linker():
    assert messages(benching(4), rule("weekly-sets", "wings", 4)) == []


@pytest.mark.parametrize(
    ("given", "left"),
    [
        (waiver("weekly-sets", "chest", weeks=(2,)), ["weeks 1 and 3"]),
        (waiver("weekly-sets", "chest"), []),
        (waiver("weekly-sets"), []),
        (waiver("weekly-sets", "every muscle", weeks=(1, 2)), ["week 3"]),
        (waiver("weekly-sets", "quads"), ["weeks 1-3", "nothing"]),
        (waiver("weekly-sets", "chest", weeks=(4,)), ["weeks 1-3", "nothing"]),
        (waiver("frequency", "chest"), ["weeks 1-3", "nothing"]),
    ],
)
def test_a_waiver_takes_its_weeks_out_and_says_when_it_waives_nothing(given, left):
    found = messages(benching(8, 8, 8, 10), rule("weekly-sets", "chest", 10), waivers=(given,))
    assert len(found) == len(left)
    assert all(part in text for part, text in zip(left, found, strict=True))


def test_a_waiver_of_a_group_covers_its_members_and_no_other():
    made = plan(week(day("Mon", line(CURL, 2), line(SQUAT, 2))))
    found = messages(made, rule("weekly-sets", "biceps, quads", 4), waivers=(waiver("weekly-sets", "arms"),))
    assert [("Biceps" in text, "Quads" in text) for text in found] == [(False, True)]


def test_a_waiver_of_what_is_not_measured_is_not_called_idle():
    assert messages(benching(10), waivers=(waiver("xyzzy"),)) == []


def test_an_idle_waiver_is_a_warning_where_it_stands():
    (found,) = breaches(benching(10), promise(waivers=(waiver("weekly-sets", "chest"),)))
    assert (found.code, found.severity, found.span.text) == (
        codes.UNUSED_WAIVER,
        Severity.WARNING,
        "waive weekly-sets",
    )


@pytest.mark.parametrize(
    ("held", "code", "word"),
    [
        (rule("weekly-set", "chest", 4), codes.UNKNOWN_MEASURE, "weekly-sets"),
        (rule("recovery", "chest", 2), codes.BOUND_UNIT, "hours"),
        (rule("effort", "", high=8), codes.BOUND_UNIT, "RPE"),
        (rule("weekly-sets", "chest", 8, unit=BoundUnit.HOURS), codes.BOUND_UNIT, "plain number"),
        (rule("weekly-rise", "chest", 8), codes.BOUND_UNIT, "percent"),
        (rule("session-time", "", 8), codes.BOUND_UNIT, "minutes"),
        (rule("session-time", "chest", 8, unit=BoundUnit.MINUTES), codes.RULE_SUBJECT, "without `for`"),
        (rule("weekly-sets", "chest : quads", 1, 2), codes.RULE_SUBJECT, "muscles or groups"),
        (rule("balance", "", 1, 2), codes.RULE_SUBJECT, "two words with a colon"),
        (rule("balance", "chest, quads", 1, 2), codes.RULE_SUBJECT, "two words with a colon"),
        (rule("monotony", "chest", high=2), codes.RULE_SUBJECT, "without `for`"),
        (rule("lifts-in-zone", "", 12, 24), codes.BOUND_UNIT, "percent"),
        (rule("weekly-time", "", high=90), codes.BOUND_UNIT, "minutes"),
        (rule("intensity", "", high=85), codes.BOUND_UNIT, "percent"),
        (rule("frequency", "chest", 1, after_sets=6), codes.RULE_AFTER_SETS, "after"),
    ],
)
def test_a_rule_that_cannot_be_held_says_so_once_and_holds_nothing(held, code, word):
    (found,) = rule_faults(promise(held))
    assert (found.code, found.span) == (code, held.span)
    assert word in found.message + (found.help or "")
    assert breaches(benching(0), promise(held)) == ()


def test_sound_rules_have_no_faults_and_all_faults_of_a_promise_are_told():
    assert rule_faults(promise(rule("weekly-sets", "chest", 4), waivers=(waiver("strain"),))) == ()
    bad = promise(rule("wekly-sets", "chest", 4), rule("xyzzy", "", 1), waivers=(waiver("recovry", "chest"),))
    found = rule_faults(bad)
    assert [fault.code.name for fault in found] == ["unknown-measure"] * 3
    assert [fault.fix and fault.fix.replacement for fault in found] == ["weekly-sets", None, "recovery"]
    assert [fault.fix.span.text for fault in found if fault.fix] == ["wekly-sets", "recovry"]
    assert "The measures are weekly-sets, " in (found[1].help or "")


def test_a_measure_of_ones_own_is_passed_in():
    def figures(ledger, rule):
        for each in ledger.plan.weeks:
            yield Figure(WHOLE_PLAN, each, None, Fraction(len(each.sessions)), ())

    own = Measure(
        name="weekly-sessions",
        unit=BoundUnit.NUMBER,
        code=replace(measures.FREQUENCY, name="weekly-sessions"),
        figures=figures,
        scopes=frozenset({Scope.PLAN}),
        part="",
        about="Sessions a week.",
        weeks="All weeks.",
        example="should weekly-sessions >= 2",
    )
    held = promise(rule("weekly-sessions", "", 2))
    assert rule_faults(held, (*MEASURES, own)) == ()
    (found,) = breaches(benching(4, 4), held, (*MEASURES, own))
    assert found.message == "1 session a week in weeks 1-2, outside the >= 2 that the rule set house asks for"
    assert found.code.name == "weekly-sessions"


@pytest.mark.parametrize("measure", MEASURES, ids=lambda measure: measure.name)
def test_every_measure_tells_people_what_it_is(measure):
    assert measure.code.name == measure.name
    assert measure.about.endswith(".")
    assert measure.weeks.endswith(".")
    assert measure.example.split()[:2] in (["should", measure.name], ["must", measure.name])


def test_no_message_calls_a_figure_safe_or_unsafe():
    assert not [code for code in codes.CODES if "safe" in f"{code.message} {code.title} {code.text}".lower()]


def test_who_asked_is_said():
    """The plan's own rule is what "you" asked for; a set that it follows asks for itself."""
    made = plan(week(day("Mon", line(BENCH, 3))))
    assert messages(made, rule("weekly-sets", "chest", 4), rule("weekly-sets", "chest", 5, ruleset=None)) == [
        "3 weekly sets for Chest in week 1, outside the >= 4 that the rule set house asks for",
        "3 weekly sets for Chest in week 1, outside the >= 5 you asked for",
    ]


def test_one_breach_of_two_rules_with_one_bound_is_told_once():
    """By the `must` of the two, else by the plan's own; weeks that only one of them is about are told by it."""
    made = plan(week(day("Mon", line(BENCH, 3))), week(day("Mon", line(BENCH, 3))))
    followed, own = rule("weekly-sets", "chest", 4), rule("weekly-sets", "every muscle", 4, ruleset=None, weeks=(2,))
    chest = [text for text in messages(made, followed, own) if "Chest" in text]
    assert chest == [
        "3 weekly sets for Chest in week 1, outside the >= 4 that the rule set house asks for",
        "3 weekly sets for Chest in week 2, outside the >= 4 you asked for",
    ]
    hard = replace(followed, severity=Severity.ERROR)
    (found,) = (each for each in breaches(made, promise(hard, own)) if "Chest" in each.message)
    assert (found.severity, "weeks 1-2" in found.message) == (Severity.ERROR, True)
