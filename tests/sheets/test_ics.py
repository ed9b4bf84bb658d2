"""Calendars, read by another library (vobject) than wrote them: times, names, folding, and UIDs that stay."""

from __future__ import annotations

from datetime import date, datetime, time, timedelta
from fractions import Fraction
from typing import Any

import pytest
import vobject

from run_command import run_command
from setwright.pipeline import compile
from setwright.plan import Line, Plan, Session, Week
from setwright.record import replace
from setwright.render import ics
from setwright.render.language import ENGLISH
from setwright.render.material import PLAIN, Material
from setwright.render.session_text import session_text
from setwright.render.sheet import sheet
from setwright.report.overview import overview
from setwright.report.volume import volume
from sheets.sample_plans import BENCH, SPAN, count, every_form, hostile, long, rpe, small, work

TEXT = """use stdlib.exercises
plan "Harbour Spring"
  start {start}
{blocks}
athlete "Ines"
  {athlete}
"""
UID = "e32f3d9a-d719-5a1b-be64-0d660cc2a5ef"
BASE = """  block Base: 2 weeks
    day Mon "Squat"
      Back Squat: 3 x 5
    day Thu
      Bench Press: 3 x 5
"""


def content(plan: Plan) -> str:
    return ics.rendered(Material(plan, volume(plan), overview(plan)), PLAIN).decode()


def events(plan: Plan) -> list[Any]:
    return list(vobject.readOne(content(plan)).vevent_list)


def written(start: str = "2027-01-04", blocks: str = BASE, athlete: str = "at 18:30") -> Plan:
    made = compile("spring.plan", text=TEXT.format(start=start, blocks=blocks, athlete=athlete), athletes=("Ines",))
    assert not made.has_errors, made.diagnostics
    return made.compilations[0].plan


def uids(plan: Plan) -> list[str]:
    return [event.uid.value for event in events(plan)]


def at(plan: Plan, hour: int, minute: int = 0) -> Plan:
    def session(made: Session) -> Session:
        return replace(made, at=time(hour, minute))

    return replace(plan, weeks=tuple(replace(week, sessions=tuple(map(session, week.sessions))) for week in plan.weeks))


def moved(plan: Plan, days: int) -> Plan:
    """The plan so many days later, its dates alone."""
    by = timedelta(days=days)

    def session(made: Session) -> Session:
        return replace(made, date=made.date + by if made.date else None)

    def week(made: Week) -> Week:
        return replace(made, start=made.start + by if made.start else None, sessions=tuple(map(session, made.sessions)))

    return replace(plan, start=plan.start + by if plan.start else None, weeks=tuple(map(week, plan.weeks)))


# ---- times ---------------------------------------------------------------------------------------


def test_the_time_of_day_that_the_athlete_says_with_one_for_a_weekday() -> None:
    made = events(written(athlete="at 18:30\n  at Thu 7:05"))
    assert [event.dtstart.value for event in made] == [
        datetime(2027, 1, 4, 18, 30),
        datetime(2027, 1, 7, 7, 5),
        datetime(2027, 1, 11, 18, 30),
        datetime(2027, 1, 14, 7, 5),
    ]
    assert {event.transp.value for event in made} == {"OPAQUE"}


def test_without_a_time_it_is_for_the_whole_day() -> None:
    made = events(written(athlete="at Thu 7:05"))
    assert [event.dtstart.value for event in made][:2] == [date(2027, 1, 4), datetime(2027, 1, 7, 7, 5)]
    assert made[0].dtend.value == date(2027, 1, 5)  # the day after: an end is not part of the event
    assert made[0].transp.value == "TRANSPARENT"


def test_sessions_that_an_athlete_has_on_other_days_take_the_times_of_those() -> None:
    made = events(written(athlete="available Tue, Sat\n  at 18:30\n  at Sat 10:00"))
    assert [event.dtstart.value for event in made][:2] == [datetime(2027, 1, 5, 18, 30), datetime(2027, 1, 9, 10)]


def test_numbered_days_take_the_time_of_the_weekday_that_they_fall_on() -> None:
    blocks = "  microcycle 8 days\n  block Base: 2 weeks\n    day 1\n      Back Squat: 3 x 5\n"
    made = events(written(blocks=blocks, athlete="at 18:30\n  at Tue 6:45"))
    assert [event.dtstart.value for event in made] == [datetime(2027, 1, 4, 18, 30), datetime(2027, 1, 12, 6, 45)]


def test_it_lasts_the_estimated_minutes_rounded_up_to_five() -> None:
    plan = at(small(), 18, 30)
    for event, session in zip(events(plan), (s for week in overview(plan) for s in week.sessions), strict=True):
        minutes = (event.dtend.value - event.dtstart.value) / timedelta(minutes=1)
        assert minutes % 5 == 0
        assert 0 <= minutes - session.minutes < 5
    assert len({event.dtend.value - event.dtstart.value for event in events(plan)}) > 1


def test_a_session_of_notes_alone_still_has_a_length() -> None:
    plan = at(small(), 23, 58)
    weeks = tuple(replace(week, sessions=tuple(replace(s, lines=()) for s in week.sessions)) for week in plan.weeks)
    made = events(replace(plan, weeks=weeks))
    assert {event.dtend.value - event.dtstart.value for event in made} == {timedelta(minutes=5)}
    assert made[0].dtend.value == datetime(2027, 1, 5, 0, 3)


@pytest.mark.parametrize("day", [date(2027, 3, 28), date(2027, 10, 31), date(2027, 3, 14), date(2027, 11, 7)])
def test_times_float_where_the_clocks_change(day: date) -> None:
    # Last Sundays of March and October in Europe, second of March and first of November in the United States; at
    # 02:30 there is no such time there, or two of them.
    plan = at(moved(small(), (day - date(2027, 1, 4)).days), 2, 30)
    text = content(plan)
    assert f"DTSTART:{day:%Y%m%d}T023000\r\n" in text
    assert "TZID" not in text
    assert "VTIMEZONE" not in text
    first = events(plan)[0]
    assert first.dtstart.value.tzinfo is None
    assert first.dtstart.value == datetime.combine(day, time(2, 30))


def test_a_plan_without_dates_is_refused_with_what_to_write(tmp_path: Any) -> None:
    file = tmp_path / "pier.plan"
    file.write_text('use stdlib.exercises\nplan "Pier"\n  block Base: 1 week\n    day Mon\n      Dip: 2 x 8\n')
    done = run_command("build", str(file), "--format", "html,ics", "-o", str(tmp_path / "out"))
    assert done.exit_code == 2
    assert "a calendar needs dates, and Pier has none: write `start 2027-01-04` in the plan" in done.stderr
    assert not (tmp_path / "out").exists()


# ---- events that update ----------------------------------------------------------------------------


def test_the_uids_are_these() -> None:
    # Written down: a change would double every event in every calendar.
    assert ics.uid(small(), 1, 1) == UID
    assert ics.uid(replace(small(), name=small().name.upper()), 1, 1) == UID
    assert ics.uid(replace(small(), athlete="Teo"), 1, 1) != UID
    assert ics.uid(replace(small(), name="Other"), 1, 1) != UID


def test_names_typed_with_other_accents_are_the_same() -> None:
    composed, apart = "Frühjahr", "Fru\u0308hjahr"
    assert ics.uid(replace(small(), name=composed), 1, 1) == ics.uid(replace(small(), name=apart), 1, 1)


def test_no_two_events_share_a_uid() -> None:
    assert len(set(uids(long(52, 5, 1)))) == 52 * 5


def test_a_moved_start_another_time_and_other_contents_keep_the_uids() -> None:
    first = uids(written())
    assert uids(written(start="2027-02-15")) == first
    assert uids(written(athlete="at 6:00")) == first
    assert uids(written(athlete="available Tue, Fri")) == first
    assert uids(written(blocks=BASE.replace("Bench Press", "Dip").replace('"Squat"', '"Legs"'))) == first
    assert uids(written(blocks=BASE.replace("Base", "Start"))) == first


def test_a_block_put_in_between_takes_over_the_events_and_adds_at_the_end() -> None:
    before = written(blocks=BASE + BASE.replace("Base", "Build"))
    after = written(blocks=BASE + BASE.replace("Base", "Ease") + BASE.replace("Base", "Build"))
    assert uids(after)[: len(uids(before))] == uids(before)
    assert [event.categories.value for event in events(after)][4:8] == [["Ease"]] * 4
    shown = {event.uid.value: event.dtstart.value for event in events(after)}
    assert len(shown) == 12
    assert len(set(shown.values())) == 12


def test_a_day_put_in_between_likewise() -> None:
    middle = BASE.replace("    day Thu", "    day Tue\n      Dip: 2 x 8\n    day Thu")
    assert set(uids(written())) < set(uids(written(blocks=middle)))


def test_the_same_plan_makes_the_same_bytes_whatever_the_clock_says() -> None:
    assert content(small()) == content(small())
    text = content(small())
    assert text.count("DTSTAMP:20000101T000000Z\r\n") == text.count("LAST-MODIFIED:20000101T000000Z\r\n") == 4
    assert text.count("SEQUENCE:0\r\n") == 4
    assert "METHOD" not in text


# ---- what is said ------------------------------------------------------------------------------------


def test_the_calendar_is_ours_and_named_for_plan_and_athlete() -> None:
    made = vobject.readOne(content(small()))
    assert made.prodid.value == "-//Setwright//Sheets//EN"
    assert made.contents["x-wr-calname"][0].value == f"{small().name}, {small().athlete}"
    assert "Never test a best alone" in made.contents["description"][0].value


def test_an_event_says_the_session_in_the_sheets_words() -> None:
    event = events(small())[0]
    assert event.summary.value == "Squat lead, Harbour Winter"
    assert event.categories.value == ["Settle"]
    said = event.description.value
    arranged = sheet(small(), overview(small()), ENGLISH).weeks[0].sessions[0]
    assert session_text(arranged, ENGLISH) in said
    assert "1. Back Squat (projected)\n   warm-up: 20 kg × 8, 40 kg × 5, 60 kg × 3\n" in said
    assert "   1 × 3 @ RPE 8: 87.5 kg (each side: 25 + 5 + 2.5 + 1.25)\n" in said
    assert "   then 3 × 5 @ 8% lighter: 80 kg (each side: 25 + 5)\n" in said
    assert "Superset A: 3 and 4 in turn, rest 90 s after each round\n3. Chin-Up\n" in said
    assert "Walking Lunge (optional)\n   3 × 8 per side @ 2 RIR: 17.5 kg (in each hand)\n" in said
    assert "Stop: Stop at sharp or unusual pain" in said
    assert "\u00a0" not in said


def test_a_session_without_a_label_goes_by_its_day() -> None:
    assert events(small())[1].summary.value == "Thursday, Harbour Winter"


def test_lines_are_folded_within_letters() -> None:
    plan = replace(small(), name="Подъём 深蹲 \U0001f3cb\u200d♀\ufe0f " * 12)
    raw = ics.rendered(Material(plan, volume(plan), overview(plan)), PLAIN)
    for line in raw.split(b"\r\n"):
        assert len(line) <= 75  # octets, RFC 5545, 3.1
        line.decode()
    assert b"\n" not in raw.replace(b"\r\n", b"")
    assert vobject.readOne(raw.decode()).contents["x-wr-calname"][0].value.startswith(plan.name.strip())


@pytest.mark.parametrize(
    "name",
    [
        "Ítalía; a,b\\n",
        "חורף בנמל",
        "قوة الشتاء",
        "港の冬",
        "ฤดูหนาว",
        "BEGIN:VEVENT",
        "\U0001f3cb\ufe0f \U0001f1eb\U0001f1f4",
    ],
)
def test_names_in_any_script(name: str) -> None:
    plan = replace(small(), name=name, athlete=name)
    made = vobject.readOne(content(plan))
    assert made.contents["x-wr-calname"][0].value == f"{name}, {name}"
    assert made.vevent_list[0].summary.value == f"Squat lead, {name}"
    assert len(made.vevent_list) == 4


def test_hostile_texts_add_no_line_of_their_own() -> None:
    note = "a\r\nEND:VEVENT\r\nBEGIN:VEVENT\rX:\x00\x07\x85\u2028b;c,d\\e"
    week = replace(hostile().weeks[0], start=date(2027, 1, 4))
    session = replace(week.sessions[0], date=date(2027, 1, 4), notes=(note,), label="x\r\nRRULE:FREQ=DAILY")
    plan = replace(hostile(), start=date(2027, 1, 4), weeks=(replace(week, sessions=(session,)),))
    text = content(plan)
    assert text.count("\r\nBEGIN:VEVENT") == 1
    assert "\r\nRRULE" not in text
    assert "\r\nX:" not in text
    said = events(plan)[0].description.value
    assert "a\nEND:VEVENT\nBEGIN:VEVENT\nX: b;c,d\\e" in said


def test_a_session_of_many_lines() -> None:
    lines = tuple(
        Line(replace(BENCH, name=f"Press {number}"), (work(3, count(5), rpe(7)),), SPAN) for number in range(320)
    )
    plan = small()
    session = replace(plan.weeks[0].sessions[0], lines=lines)
    weeks = (replace(plan.weeks[0], sessions=(session,)), *plan.weeks[1:])
    said = events(at(replace(plan, weeks=weeks), 18))[0].description.value
    assert all(f"{number}. Press {number - 1}\n" in said for number in (1, 100, 320))


def test_every_form_of_a_line_is_said() -> None:
    arranged = sheet(small(), overview(small()), ENGLISH).weeks[0].sessions[0]
    said = session_text(arranged, ENGLISH)
    assert all(line.movement.name in said for line in every_form())
    assert said.count("\n") > 30


def test_a_year_of_five_days_is_read_back_whole() -> None:
    plan = at(long(52, 5, 6), 18, 30)
    assert len(events(plan)) == 260
    assert Fraction(len(content(plan)), 260) < 5000  # characters a session
