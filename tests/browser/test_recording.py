"""Recording in a real browser: what is typed survives, comes out as lines of the language, and goes in again."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from browser.driver import DESK, PHONE, served, visit
from browser.recorded_sheets import (
    MONDAY,
    PLAN,
    RECORDED_MONDAY,
    THURSDAY,
    built,
    checks,
    exported,
    fill,
    opened,
    read_in,
    record_monday,
    sets_of,
    table,
    tick,
)

Form = Callable[[Page], str]

BLOCKED = 'Object.defineProperty(window, "localStorage", { get() { throw new DOMException("no", "SecurityError"); } })'
NO_STORAGE = 'Object.defineProperty(window, "localStorage", { value: null })'
FULL = 'Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }'


@pytest.fixture(scope="module")
def sheet(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return built(PLAN, tmp_path_factory.mktemp("sheet"))


def test_a_session_survives_reloads_and_rebuilt_sheets(browser: Browser, tmp_path: Path) -> None:
    sheet = built(PLAN, tmp_path)
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        record_monday(page)
        assert exported(page) == RECORDED_MONDAY
        page.reload()
        assert exported(page) == RECORDED_MONDAY
        assert opened(page, MONDAY).locator(".rec-done").count() == 11
        # Moved, dropped and new lines; another load and fewer sets of what stays.
        changed = PLAN.replace("      Loaded Carry: 2 x 40 m\n", "").replace(
            "      Back Squat: 3 x 5 @ RPE 8, rest 2-3 min\n      Pull-Up: 2 x 5 @ bodyweight + 5 kg\n",
            "      Leg Press: 2 x 10 @ RPE 7\n      Pull-Up: 1 x 5 @ bodyweight\n      Back Squat: 2 x 3 @ RPE 9\n",
        )
        rebuilt = built(changed, tmp_path)
        assert rebuilt == sheet
        page.reload()
        session = opened(page, MONDAY)
        assert sets_of(session, 0).locator(".rec-tick[aria-pressed=true]").count() == 0
        assert sets_of(session, 1).locator(".rec-tick[aria-pressed=true]").count() == 2
        assert sets_of(session, 2).count() == 3
        expect(page.locator("#records pre")).to_contain_text("Loaded Carry: 24 kg x 40 m, 40 m")
        assert sorted(exported(page).splitlines()) == sorted(RECORDED_MONDAY.splitlines())
        checks(exported(page), tmp_path)


@pytest.mark.parametrize("form", [exported, table])
def test_exported_cleared_and_read_in_again(browser: Browser, sheet: Path, tmp_path: Path, form: Form) -> None:
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        record_monday(page)
        thursday = opened(page, THURSDAY)
        tick(thursday, 0, 0)
        fill(thursday, 1, 0, reps="14")
        tick(thursday, 1, 0)
        thursday.locator("input[type=date]").fill("2027-01-08")
        text, kept = exported(page), form(page)
        assert text == (
            f"{RECORDED_MONDAY}\nsession 2027-01-08 Fri for week 1 Thu\n"
            '  Bench Press: 60 kg x (1+1+1)\n  Bench Press "back-off": 50 kg x 14\n'
        )
        checks(text, tmp_path)
        page.evaluate("localStorage.clear()")
        page.reload()
        assert exported(page) == ""
        assert "added: 13" in read_in(page, kept)
        assert exported(page) == text
        assert read_in(page, kept) == "Sets added: 0. Here already: 13. Different, to be decided: 0. Lines not read: 0."
        assert exported(page) == text
        page.reload()
        assert exported(page) == text


def test_files_and_loopback_do_the_same(browser: Browser, sheet: Path) -> None:
    with served(sheet.parent) as address, visit(browser, offline=False) as seen:
        page = seen.open(f"{address}/{sheet.name}")
        record_monday(page)
        page.reload()
        assert exported(page) == RECORDED_MONDAY
        assert set(seen.addresses) == {f"{address}/{sheet.name}"}


def test_two_tabs_lose_nothing(browser: Browser, sheet: Path) -> None:
    with visit(browser) as seen:
        one, other = seen.open(sheet.as_uri()), seen.open(sheet.as_uri())
        first, second = opened(one, MONDAY), opened(other, MONDAY)
        tick(first, 0, 0)
        tick(second, 0, 1)
        tick(first, 0, 2)
        tick(second, 2, 0)
        for page in (one, other):
            expect(page.locator(f'article[data-session="{MONDAY}"] .rec-done')).to_have_count(4)
        assert exported(one) == exported(other)
        one.reload()
        assert opened(one, MONDAY).locator(".rec-done").count() == 4


@pytest.mark.parametrize("broken", [BLOCKED, NO_STORAGE, FULL], ids=["blocked", "missing", "full"])
def test_storage_that_fails_is_said_and_the_text_offered(browser: Browser, sheet: Path, broken: str) -> None:
    with visit(browser) as seen:
        seen.context.add_init_script(broken)
        page = seen.open(sheet.as_uri())
        record_monday(page)
        alert = page.get_by_role("alert")
        expect(alert).to_contain_text("full" if broken == FULL else "does not let the page store")
        alert.get_by_role("button", name="Show the text").click()
        assert alert.locator("textarea").input_value() == RECORDED_MONDAY
        asked: list[str] = []
        page.on("dialog", lambda dialog: (asked.append(dialog.type), dialog.accept()))
        page.reload()
        assert asked == ["beforeunload"]


def test_no_warning_where_all_is_stored(browser: Browser, sheet: Path) -> None:
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        tick(opened(page, MONDAY), 0, 0)
        asked: list[str] = []
        page.on("dialog", lambda dialog: (asked.append(dialog.type), dialog.accept()))
        page.reload()
        assert asked == []
        assert page.get_by_role("alert").count() == 0


def test_what_was_stored_and_cannot_be_read_is_put_aside(browser: Browser, sheet: Path) -> None:
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        page.evaluate("""localStorage.setItem('setwright ["Quayside","Ines"]', "{torn")""")
        page.reload()
        expect(page.get_by_role("alert")).to_contain_text("could not be read")
        assert page.evaluate("""localStorage.getItem('setwright ["Quayside","Ines"] unread')""") == "{torn"


def test_the_rest_goes_by_the_clock(browser: Browser, sheet: Path) -> None:
    with visit(browser) as seen:
        page = seen.context.new_page()
        page.clock.install(time="2027-01-04T18:00:00")
        page.goto(sheet.as_uri())
        page.clock.pause_at("2027-01-04T18:01:00")
        tick(opened(page, MONDAY), 0, 0)
        rest = page.locator(".rec-rest")
        expect(rest).to_contain_text("2:00")
        expect(rest).to_contain_text("then up to 1:00 more")
        page.clock.run_for(30_000)
        expect(rest.locator(".rec-time")).to_have_text("1:30")
        rest.get_by_role("button", name="30 s more").click()
        expect(rest.locator(".rec-time")).to_have_text("2:00")
        # The screen was off: no timer ran, and the clock went on.
        page.clock.fast_forward(90_000)
        expect(rest.locator(".rec-time")).to_have_text("0:30")
        page.reload()
        page.clock.run_for(1100)  # the script starts after the first frame
        expect(rest.locator(".rec-time")).to_have_text("0:29")
        page.clock.run_for(30_000)
        expect(rest).to_have_class("rec-rest over")
        expect(page.get_by_role("status").filter(has_text="Rest is over: Back Squat")).to_be_attached()
        rest.get_by_role("button", name="Stop").click()
        expect(rest).to_be_hidden()


def test_the_sound_is_scheduled_for_the_end_of_the_rest(browser: Browser, sheet: Path) -> None:
    with visit(browser) as seen:
        seen.context.add_init_script(
            "window.starts = []; const start = OscillatorNode.prototype.start;"
            "OscillatorNode.prototype.start = function (at) {"
            " starts.push(at - this.context.currentTime); start.call(this, at); }"
        )
        page = seen.open(sheet.as_uri())
        tick(opened(page, MONDAY), 0, 0)
        page.wait_for_function("starts.length >= 2")
        assert page.evaluate("starts.slice(-2)") == [pytest.approx(120, abs=1), pytest.approx(120.3, abs=1)]
        page.get_by_role("button", name="30 s more").click()
        assert page.evaluate("starts.at(-2)") == pytest.approx(150, abs=3)


def test_a_superset_rests_after_its_round(browser: Browser, sheet: Path) -> None:
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        session = opened(page, MONDAY)
        tick(session, 2, 0)
        expect(page.locator(".rec-rest")).to_be_hidden()
        tick(session, 3, 0)
        expect(page.locator(".rec-rest")).to_be_visible()


def test_a_drop_set_follows_without_rest(browser: Browser, sheet: Path) -> None:
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        tick(opened(page, THURSDAY), 2, 0)
        expect(page.locator(".rec-rest")).to_be_hidden()


def test_best_as_it_goes(browser: Browser, sheet: Path) -> None:
    """Wathan: 100 w / (48.8 + 53.8 e^(-0.075 r)); 80 kg at 7 to failure is 99.2, 100 kg at 1 is 100."""
    with visit(browser) as seen:
        session = opened(seen.open(sheet.as_uri()), MONDAY)
        squats = sets_of(session, 0)
        expect(squats.nth(0)).not_to_contain_text("best")
        tick(session, 0, 0)
        expect(squats.nth(0)).to_contain_text("estimated best 99.2\u00a0kg (wathan)")
        fill(session, 0, 0, load="100", reps="1", effort="10")
        expect(squats.nth(0)).to_contain_text("estimated best 100\u00a0kg (wathan)")
        fill(session, 0, 0, effort="")
        expect(squats.nth(0)).to_contain_text("best at least 100\u00a0kg (wathan)")
        fill(session, 0, 0, reps="10", effort="9,5")
        expect(squats.nth(0)).to_contain_text("no estimate past 10 repetitions to failure")
        fill(session, 2, 0, reps="8")
        expect(sets_of(session, 2).nth(0)).to_contain_text("in each hand")
        expect(sets_of(session, 3).nth(0)).not_to_contain_text("best")


def test_what_is_no_number_is_kept_and_not_done(browser: Browser, sheet: Path) -> None:
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        session = opened(page, MONDAY)
        fill(session, 0, 0, load="eighty")
        tick(session, 0, 0)
        load = sets_of(session, 0).nth(0).locator(".rec-load input")
        expect(load).to_have_attribute("aria-invalid", "true")
        expect(load).to_be_focused()
        page.reload()
        expect(opened(page, MONDAY).locator(".rec-load input").first).to_have_value("eighty")
        assert exported(page) == "# not finished: 2027-01-04 Back Squat, set 1: eighty kg x 5 @ RPE 8\n"


@pytest.mark.parametrize(
    ("field", "typed", "why"),
    [
        ("load", "abc", "The load is a number from 0 to 1000 kg."),
        ("load", "-3", "The load is a number from 0 to 1000 kg."),
        ("load", "8000", "The load is a number from 0 to 1000 kg."),
        ("reps", "5.5", "Repetitions are a whole number up to 1000."),
        ("effort", "14", "RPE is a number from 1 to 10."),
    ],
)
def test_a_word_says_why_a_set_is_left_out(browser: Browser, sheet: Path, field: str, typed: str, why: str) -> None:
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        session = opened(page, MONDAY)
        fill(session, 0, 1, **{field: typed})
        row = sets_of(session, 0).nth(1)
        said = f"{why} The set is left out until this is put right."
        expect(row.get_by_role("alert")).to_have_text(said)
        expect(row.locator(f".rec-{field} input")).to_have_accessible_description(said)
        tick(session, 0, 0)
        comment = "# not finished: 2027-01-04 Back Squat, set 2: "
        lines = exported(page).splitlines()
        assert lines[:2] == ["session 2027-01-04 Mon", "  Back Squat: 80 kg x 5 @ RPE 8"]
        assert lines[-1].startswith(comment)
        assert typed in lines[-1]
        assert "Here already: 1. Different, to be decided: 0. Lines not read: 0." in read_in(page, exported(page))
        fill(session, 0, 1, **{field: "8"})
        expect(row.get_by_role("alert")).to_have_count(0)
        expect(row.locator(f".rec-{field} input")).to_have_accessible_description("")
        assert comment not in exported(page)


def test_keyboard_alone(browser: Browser, sheet: Path) -> None:
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        page.locator(f'article[data-session="{MONDAY}"] .rec-open').focus()
        page.keyboard.press("Enter")
        page.keyboard.press("Tab")
        page.keyboard.press("Space")
        for key in ("Tab", "8", "5", "Tab", "3", "Enter"):
            page.keyboard.press(key)
        assert "Back Squat: 85 kg x 3 @ RPE 8" in exported(page)


def test_fields_have_names_and_keys_for_numbers(browser: Browser, sheet: Path) -> None:
    with visit(browser, viewport=PHONE) as seen:
        page = seen.open(f"{sheet.as_uri()}#week-1-1")
        session = opened(page, MONDAY)
        first = session.get_by_role("group", name="Back Squat, set 1")
        expect(first.get_by_role("textbox", name="set 1, load in kg")).to_be_visible()
        assert first.locator("input").evaluate_all("all => all.map(one => one.inputMode)") == [
            "decimal",
            "numeric",
            "decimal",
        ]
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
        small = session.locator("button, input").evaluate_all(
            "all => all.filter(one => one.getBoundingClientRect().height < 44).map(one => one.outerHTML)"
        )
        assert small == []


def test_conflicts_wait_for_a_decision(browser: Browser, sheet: Path) -> None:
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        tick(opened(page, MONDAY), 0, 0, 1)
        other = "session 2027-01-04 Mon\n  Back Squat: 80 kg x 5 @ RPE 8\n  Back Squat: 80 kg x 3 @ RPE 9\n"
        assert "Here already: 1. Different, to be decided: 1" in read_in(page, other)
        assert "to be decided: 0" in read_in(page, other)
        assert "Back Squat: 80 kg x 5, 5 @ RPE 8" in exported(page)
        assert "# undecided: 2027-01-04 Back Squat: 80 kg x 3 @ RPE 9" in exported(page)
        page.reload()
        page.get_by_role("button", name="Take what was read in").click()
        assert exported(page) == other


def test_lines_that_cannot_be_read_are_shown_and_kept(browser: Browser, sheet: Path) -> None:
    text = (
        "session 2027-01-04 Mon\n  Back Squat: 80 kg x 5 @ RPE 8  # easy\n  Back Squat: lots\n"
        "session 2027-02-30\n  Pull-Up: bodyweight x 5\nwhat <b>is</b> this\n"
    )
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        said = read_in(page, text)
        assert "Lines not read: 4" in said
        for line in (
            "Line 3: 2027-01-04 Back Squat: lots",
            "Line 4: session 2027-02-30",
            "Line 6: what <b>is</b> this",
        ):
            assert line in said
        page.reload()
        kept = exported(page)
        assert "# not read: what <b>is</b> this" in kept
        page.evaluate("localStorage.clear()")
        page.reload()
        read_in(page, kept)
        assert exported(page) == kept


def test_sessions_that_the_plan_has_not_are_shown(browser: Browser, sheet: Path) -> None:
    extra = 'session 2027-03-01 Mon\n  Zercher Squat "light": 40.5 lb x 8\n  note "With a friend."\n'
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        assert "Lines not read: 0." in read_in(page, f"language 1\nuse stdlib.exercises\n\n{extra}")
        assert page.locator("#records pre").inner_text().strip() == extra.strip()
        assert exported(page) == extra


def test_sessions_for_a_day_that_the_plan_lost_keep_saying_so(browser: Browser, sheet: Path, tmp_path: Path) -> None:
    lost = "session 2027-01-08 Fri for week 9 Thu\n  Bench Press: 60 kg x 5\n"
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        read_in(page, lost)
        assert exported(page) == lost
        checks(lost, tmp_path)
        kept = table(page)
        for text in (lost, kept):
            assert "Here already: 1" in read_in(page, text)
        page.evaluate("localStorage.clear()")
        page.reload()
        read_in(page, kept)
        assert exported(page) == lost


def test_copied_or_left_to_copy_by_hand(browser: Browser, sheet: Path) -> None:
    for broken in ("", "Object.defineProperty(navigator, 'clipboard', { value: undefined })"):
        with visit(browser, permissions=["clipboard-read", "clipboard-write"]) as seen:
            seen.context.add_init_script(broken)
            page = seen.open(sheet.as_uri())
            record_monday(page)
            session = opened(page, MONDAY)
            session.get_by_role("button", name="Copy this session").click()
            if broken:
                assert session.get_by_role("textbox", name="Text to copy").input_value() == RECORDED_MONDAY
            else:
                expect(session.locator(".rec-told")).to_have_text("Copied.")
                assert page.evaluate("navigator.clipboard.readText()") == RECORDED_MONDAY


def test_a_table_as_a_spreadsheet_may_leave_it(browser: Browser, sheet: Path) -> None:
    cells = "Exercise;Date;load;unit;reps;effort\nBack Squat;2027-01-04;82,5;kg;5;8,5\nBack Squat;soon;1;kg;1;\n"
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        assert "Line 3: Back Squat;soon" in read_in(page, cells)
        assert exported(page).startswith("session 2027-01-04 Mon\n  Back Squat: 82.5 kg x 5 @ RPE 8.5\n\n# not read: ")


def test_another_language_changes_what_is_shown_and_not_what_comes_out(browser: Browser, tmp_path: Path) -> None:
    sheet = built(PLAN, tmp_path, language="de")
    with visit(browser, locale="de-DE") as seen:
        page = seen.open(sheet.as_uri())
        session = opened(page, MONDAY)
        fill(session, 0, 0, load="82.5")
        tick(session, 0, 0)
        load = sets_of(session, 0).nth(0).locator(".rec-load input")
        page.reload()
        expect(load).to_have_value("82,5")
        assert exported(page) == "session 2027-01-04 Mon\n  Back Squat: 82.5 kg x 5 @ RPE 8\n"


def test_sets_come_and_go(browser: Browser, sheet: Path) -> None:
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        session = opened(page, MONDAY)
        line = session.locator(".rec-line").nth(0)
        line.get_by_role("button", name="Add a set").click()
        tick(session, 0, 3)
        line.get_by_role("button", name="Add a set").click()
        line.get_by_role("button", name="Remove the last set").click()
        assert sets_of(session, 0).count() == 4
        page.reload()
        assert sets_of(opened(page, MONDAY), 0).count() == 4
        assert "Back Squat: 80 kg x 5 @ RPE 8\n" in exported(page)


def test_plans_without_dates_are_recorded_by_week_and_day(browser: Browser, tmp_path: Path) -> None:
    sheet = built(PLAN.replace("  start 2027-01-04\n", ""), tmp_path)
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        session = opened(page, "w2-Thu")
        tick(session, 0, 0)
        session.locator("input[type=date]").fill("2027-05-03")
        text = exported(page)
        assert text == "session 2027-05-03 Mon for week 2 Thu\n  Bench Press: 60 kg x (1+1+1)\n"
        checks(text, tmp_path)
        kept = table(page)
        page.evaluate("localStorage.clear()")
        page.reload()
        read_in(page, kept)
        assert exported(page) == text


def test_the_boxes_of_the_sheet_show_what_was_done(browser: Browser, sheet: Path) -> None:
    with visit(browser, viewport=DESK) as seen:
        page = seen.open(sheet.as_uri())
        record_monday(page)
        page.reload()
        page.emulate_media(media="print")
        boxes = page.locator(f'article[data-session="{MONDAY}"] td.done').first.locator("i")
        assert boxes.all_inner_texts() == ["80×5@8", "82.5×5@8.5", "82.5×4@8.5"]
        assert not page.locator(".rec-line").first.is_visible()
        assert not page.locator("#records").is_visible()


def test_a_phone_opens_on_todays_session(browser: Browser, sheet: Path) -> None:
    for size, anchor in ((PHONE, "#week-1-2"), (DESK, "")):
        with visit(browser, viewport=size) as seen:
            page = seen.context.new_page()
            page.clock.install(time=f"{THURSDAY}T07:00:00")
            page.goto(sheet.as_uri())
            assert page.evaluate("location.hash") == anchor


HOSTILE = [
    "</script><script>alert(1)</script>",
    '"quoted" \\ and \\" both',
    "\u202eright to left\u202c: 5, 5",
    "תחתית # no comment",
    "🏋️‍♀️ <!-- <script>",
    "=1+1",
    "__proto__",
]


def test_hostile_names_stay_text(browser: Browser, tmp_path: Path) -> None:
    quoted = ['"' + name.replace("\\", "\\\\").replace('"', '\\"') + '"' for name in HOSTILE]
    movements = "\n".join(f"exercise {name}" for name in quoted)
    lines = "\n".join(f"      {name} {name}: 1 x 5 @ 20 kg" for name in quoted)
    head = f"plan {quoted[0]}\n  start 2027-01-04\n  block Base: 1 week\n    day Mon {quoted[1]}\n{lines}\n"
    sheet = built(f"{movements}\n{head}\nathlete {quoted[4]}\n", tmp_path)
    with visit(browser) as seen:
        page = seen.open(sheet.as_uri())
        session = opened(page, MONDAY)
        for line in range(len(HOSTILE)):
            tick(session, line, 0)
        session.locator(".rec-foot textarea").fill("\n".join(HOSTILE))
        text, cells = exported(page), table(page)
        checks(text, tmp_path, declared=movements)
        for kept in (text, cells):
            page.evaluate("localStorage.clear()")
            page.reload()
            assert f"added: {len(HOSTILE)}." in read_in(page, kept)
            assert exported(page) == text
            assert page.locator("#records pre").count() == 0
    assert all(f"\n  {name} {name}: 20 kg x 5" in text for name in quoted)
