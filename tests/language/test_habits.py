"""What people write by habit is answered with what the language has for it; what follows from one slip is silent."""

from __future__ import annotations

import pytest

from setwright.pipeline import compile

DAY = 'use stdlib.exercises\nplan "Pier"\n  block Base: 2 weeks\n    day Mon\n      '
RULES = "use stdlib.exercises\nrules pier\n  "


@pytest.mark.parametrize(
    ("line", "help_"),
    [
        ("Back Squat: 3 sets x 5 reps", "Sets and repetitions are written `3 x 5`."),
        ("Back Squat: 3 x 5 reps", "Repetitions bear no unit: `3 x 5`."),
        ("Back Squat: 3 x 5 @ RPE8", "Write `RPE 8`."),
        ("Back Squat: 3 x 5 @ 8 RPE", "Write `RPE 8`."),
        ("Back Squat: 3 x 5 @ RIR 2", "Write `2 RIR`."),
        ("Back Squat: 3 x 5 @ RPE 8 rest 2 min", "A comma stands before it: `, rest`."),
        ("Back Squat: 3 x 5 (rest 2 min)", "A comma stands before it: `, rest`."),
        ("Back Squat: 3 x 5 @ 100 lbs", "Write `lb`."),
        ("Back Squat: 3 x 5 80%", "How hard or heavy stands after `@`: `@ 80%`."),
        ("Back Squat: 3 x 5, 80%", "How hard or heavy stands after `@`: `@ 80%`."),
        ("Back Squat: 3 x 5 @ 62,5 kg", "Write a decimal point: `62.5`."),
        ("Back Squat: 3 x 5 @ 72,5% -> 80%", "Write a decimal point: `72.5`."),
        ("Back Squat: 3 x 5 @ RPE 7,5 -> 8", "Write a decimal point: `7.5`."),
        ("Back Squat: 3 x 5, warm-up 40% x 8 60% x 5", "A comma stands between warm-up sets."),
        ("Back Squat: 5/3/1", "Values that follow each other week by week stand in brackets: `[5, 3, 1]`."),
        ("Back Squat: 3 x 5 @ 70% - 80%", "A number that moves over the weeks is written with `->`."),
        (
            "Back Squat: 3 x 5 @ 60%/70%",
            "Values that follow each other week by week stand in brackets: `[60%, 70%]`.",
        ),
        ("Back Squat: 3 x 5 @ 100 kg + 2.5 kg per week", "Here could stand `/week`."),
        ("Back Squat: 3 x AMRAP", "Write `max`."),
        ("Pull-Up: 3 x 5 @ BW + 10 kg", "Write `bodyweight`."),
        ("Plank: 3 x 40 sec", "Write `s`."),
        ("Plank: 3 x 1:30", "Write `90 s`."),
        ("Back Squat: 3 x 5, tempo 31X1", "Write `3-1-X-1`."),
        ("Back Squat: 3 x 5, warmup", "Write `warm-up`."),
        ("Split Squat: 3 x 8-10 each side", "Write `8-10/side`."),
        ("Split Squat: 3 x 8/leg", "Write `8/side`."),
        ("Back Squat: 3 x 5–8", "Write `-`."),
        ("Back Squat: 3 x 5 to 8", "Write `5-8`."),
        ("back squat: 3 x 5", "The words of a name begin with capitals: `Back Squat`; or it stands in quotes."),
        ("1. Back Squat: 3 x 5", "A line begins with its word or name, without a mark or a number."),
        ("Superset rest 60 s", "Write `superset`, in small letters."),
        ("Back Squat -> Front Squat", "Write `swap Back Squat for Front Squat`."),
        ("Farmers Carry: 3 x 20 m", "Did you mean `Farmer's Carry`?"),
    ],
)
def test_a_line_of_a_day(line: str, help_: str) -> None:
    assert helps(DAY + line)[0] == help_


@pytest.mark.parametrize(
    ("line", "help_"),
    [
        ("must session sets for chest <= 8", "A measure is one word: `session-sets`."),
        ("should weekly-sets chest 4-8", "Write `for chest`."),
        ("should frequency for all muscles >= 2", "Write `for every muscle`."),
        ("should recovery for quads >= 2 days", "Write hours: `48 h`."),
        ("should balance for horizontal-push : horizontal-pull 1-2", "`balance` takes its two words without `for`."),
    ],
)
def test_a_rule(line: str, help_: str) -> None:
    assert helps(RULES + line)[0] == help_


def test_where_a_number_is_missing_only_a_number_is_asked_for() -> None:
    assert helps('plan "Pier"\n  block Base: -2 weeks')[0] == "Here could stand a number."


@pytest.mark.parametrize(
    ("line", "help_"),
    [
        ("Block Peak: 3 weeks", "Write `block`, in small letters."),
        ("deload week 4", "Say how it is lighter: `deload week 4: sets 50%, load 90%`."),
        ("deload every 4 weeks: sets 50% load 90%", "A comma stands before it: `, load`."),
        ("emphasis chest +3 sets", "Write `per week` at its end."),
    ],
)
def test_a_line_of_a_plan(line: str, help_: str) -> None:
    assert helps(f'plan "Pier"\n  {line}')[0] == help_


def test_a_range_from_high_to_low() -> None:
    assert helps(DAY + "Bench Press: 3 x 15-12") == ["Write `12-15`, low to high."]
    assert helps(DAY + "Plank: 3 x 60-40 s") == ["Write `40-60 s`, low to high."]
    assert helps(DAY + "Bench Press: 3 x 12-0") == [None]


def test_a_weekday_in_full() -> None:
    assert helps('plan "Pier"\n  block Base: 2 weeks\n    day Monday')[0] == "Write `Mon`."


def test_a_microcycle_that_cannot_be_read_makes_no_numbered_day_wrong() -> None:
    text = 'use stdlib.exercises\nplan "Pier"\n  microcycle 8\n  block Base: 1 week\n    day 3\n      Plank: 2 x 40 s'
    assert codes(text) == ["SW0102"]


def test_a_block_whose_days_have_the_wrong_slots_has_sessions() -> None:
    text = DAY.replace("  block", "  microcycle 8 days\n  block") + "Plank: 2 x 40 s"
    assert codes(text) == ["SW0307"]


def test_equipment_is_found_in_a_longer_word() -> None:
    assert helps('use stdlib.equipment\nathlete "Ina"\n  has squat-rack')[0] == "Did you mean `rack`?"


def test_names_with_the_prefix_of_a_lost_file_are_not_told_again() -> None:
    text = DAY.replace("\n", '\nuse "lost.plan" as club\n', 1) + "club.Log Press: 3 x 5\n      Back Squatt: 2 x 5"
    assert codes(text) == ["SW0001", "SW0201"]
    assert helps(text)[1] == "Did you mean `Back Squat`?"


def test_other_unknown_names_may_stand_in_the_lost_file() -> None:
    text = DAY.replace("\n", '\nuse "lost.plan"\n', 1) + "Keg Throw Over The Wall: 3 x 5"
    assert helps(text)[1] == "Perhaps it stands in `lost.plan`, which could not be read."


def test_two_ways_to_count_in_one_place_are_told() -> None:
    assert codes(RULES + "count direct\n  count total\n  count from RPE 6\n  count required") == ["SW0310"]
    assert (
        codes('plan "Pier"\n  count direct\n  count direct\n  block Base: 1 week\n    day Mon\n      note "Walk."')[0]
        == "SW0310"
    )


def codes(text: str) -> list[str]:
    return [found.code.number for found in compile("pier.plan", text=text).diagnostics]


def helps(text: str) -> list[str | None]:
    return [found.help for found in compile("pier.plan", text=text).diagnostics]


@pytest.mark.parametrize(
    ("line", "help_"),
    [
        ("start 06.09.2027", "A date is written year, month, day: `2027-09-06` or `2027-06-09`."),
        ("start 9/6/2027", "A date is written year, month, day: `2027-06-09` or `2027-09-06`."),
        ("start 31-12-2027", "A date is written year, month, day: `2027-12-31`."),
        ("start 2027/1/4", "Write `2027-01-04`."),
        ("start 2027-13-06", "A date is written year, month, day: `2027-06-13`."),
        ("start 2027-02-30", None),
    ],
)
def test_dates(line: str, help_: str | None) -> None:
    assert helps(f'plan "Pier"\n  {line}\n  block Base: 1 week\n    day Mon\n      note "Walk."')[0] == help_


@pytest.mark.parametrize("line", ["Back Squat: 3 x 5 @ RPE8", "Back Squat: 3 x 5 @ 70% then 1 x 5 @ RPE8"])
def test_an_effort_written_as_one_word_is_no_parameter(line: str) -> None:
    assert codes(DAY + line) == ["SW0101"]
    template = DAY.replace('plan "Pier"', "template pier(top = RPE 8)")
    assert codes(template + line) == ["SW0101"]
    assert codes(RULES + "should effort <= RPE8") == ["SW0101"]


def test_nothing_follows_from_a_day_that_cannot_be_read_but_its_movements_are_known() -> None:
    text = DAY.replace("day Mon", "day Monday") + "Back Squatt: 3 x 5\n    day Fri like Mon\n      drop Plank\n"
    text += "  block Build: 1 week like Base\n    drop day Mon\n    day Sat like Mon\n"
    assert codes(text) == ["SW0101", "SW0201"]
    assert helps(text) == ["Write `Mon`.", "Did you mean `Back Squat`?"]


def test_efforts_go_in_halves() -> None:
    assert helps(DAY + "Back Squat: 3 x 5 @ RPE 8.3") == ["Write `RPE 8` or `RPE 8.5`."]
    assert helps(DAY + "Back Squat: 3 x 5 @ 1.8 RIR") == ["Write `1.5 RIR` or `2 RIR`."]
    assert codes(DAY + "Back Squat: 3 x 5 @ RPE 7 -> 8.3") == ["SW0432"]
    assert codes(DAY + "Back Squat: 3 x 5 @ RPE 7.5-8.5") == []
    felt = 'use stdlib.exercises\nathlete "Ina"\n  best Back Squat: 60 kg x 5 @ RPE 8.3\n'
    assert codes(felt + "session 2027-01-04\n  Back Squat: 60 kg x 5 @ RPE 8.3") == []


def test_a_year_of_birth_is_written_in_full() -> None:
    assert helps('athlete "Ina"\n  born 94') == ["Write the year in full: `born 1994`."]
    assert [codes(f'athlete "Ina"\n  born {year}') for year in (1899, 1900, 2099, 2100)] == [
        ["SW0522"],
        [],
        [],
        ["SW0522"],
    ]


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("  best Back Squat: 1100 kg", "`1100 kg` is out of range for a best's load: above 0, at most 1000 kg"),
        ("  bar 20 kg, collars 2.5", "`2.5` does not fit; this takes a collar's mass (`2.5 kg`, `5 lb`)"),
        ("  bodyweight 2300 lb", "`2300 lb` is out of range for a body weight: above 0, at most 2205 lb"),
    ],
)
def test_a_wrong_size_is_no_wrong_unit(text: str, message: str) -> None:
    (found,) = compile("pier.plan", text=f'use stdlib.exercises\nathlete "Ina"\n{text}').diagnostics
    assert found.message == message


def test_a_bad_value_of_a_template_is_told_once_where_it_is_given() -> None:
    text = (
        "use stdlib.exercises\ntemplate short(lift, top = RPE 8)\n  block Base: 1 week\n    day Mon\n"
        "      lift: 3 x 5 @ RPE top\n    day Thu\n      lift: 2 x 5 @ top\n"
        'plan "Pier" from short(lift: Back Squatt, top: RPE 12)\n'
    )
    found = compile("pier.plan", text=text).diagnostics
    assert [(one.code.number, one.span.line, one.span.text) for one in found] == [
        ("SW0201", 8, "Back Squatt"),
        ("SW0404", 8, "RPE 12"),
    ]
    assert found[0].message == "no movement is called `Back Squatt`"
    assert [place.span.line for place in found[0].related] == [5]
    assert [(fix.span.text, fix.replacement) for fix in found[0].fixes] == [("Back Squatt", "Back Squat")]


def test_a_load_in_the_place_of_sets() -> None:
    assert helps(DAY + "Back Squat: 60 kg x 45") == ["The load stands after `@`: `3 x 5 @ 60 kg`."]
    assert helps('use stdlib.exercises\nathlete "Ina"\n  best Back Squat: 60 kg x 45') == [
        "A best is estimated from at most 30 repetitions."
    ]


def test_a_carry_in_both_hands_has_the_name_that_is_written() -> None:
    (made,) = compile("pier.plan", text=DAY + "Farmer's Carry: 2 x 40 m").compilations
    assert [line.movement.name for line in made.plan.weeks[0].sessions[0].lines] == ["Farmer's Carry"]
