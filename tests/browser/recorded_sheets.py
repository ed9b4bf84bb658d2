"""Sheets to record on, and what a person does on them."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Locator, Page

from run_command import run_command

PLAN = """use stdlib.exercises

plan "Quayside"
  start 2027-01-04
  block Base: 2 weeks
    day Mon
      Back Squat: 3 x 5 @ RPE 8, rest 2-3 min
      Pull-Up: 2 x 5 @ bodyweight + 5 kg
      superset rest 60 s
        Dumbbell Bench Press: 2 x 8-10 @ 2 RIR
        Side Plank: 2 x 30 s/side
      Loaded Carry: 2 x 40 m
    day Thu
      Bench Press: 2 x (1+1+1) @ 60 kg, every 90 s
      Bench Press "back-off": 1 x max @ 50 kg
      Hammer Curl: 1 x 10 @ 12 kg then drop 1 x 8 @ -30%, rest 60 s

athlete "Ines"
  model wathan
  best Back Squat: 100 kg
  best Dumbbell Bench Press: 20 kg
"""
MONDAY, THURSDAY = "2027-01-04", "2027-01-07"


def built(text: str, folder: Path, *, language: str = "en") -> Path:
    """The sheet of the one plan in a text, for the athlete in it."""
    folder.mkdir(exist_ok=True)
    source = folder / "quayside.plan"
    source.write_text(text)
    for sheet in folder.glob("*.html"):
        sheet.unlink()
    options = ("--athlete", "*", "-o", str(folder), "--format", "html", "--language", language)
    made = run_command("build", str(source), *options)
    assert made.exit_code == 0, made.stdout + made.stderr
    return next(folder.glob("*.html"))


def checks(exported: str, folder: Path, *, declared: str = "use stdlib.exercises\n") -> None:
    """Fails unless the exported lines pass `check` beside movements that are known."""
    log = folder / "log.plan"
    log.write_text(f"{declared}\n{exported}")
    found = run_command("check", str(log))
    said = found.stdout + found.stderr
    assert found.exit_code == 0, said
    assert "error[" not in said, said
    assert "warning[" not in said, said


def opened(page: Page, key: str) -> Locator:
    """A session whose recording is open."""
    session = page.locator(f'article[data-session="{key}"]')
    opener = session.locator(".rec-open")
    if opener.get_attribute("aria-expanded") == "false":
        opener.click()
    return session


def sets_of(session: Locator, line: int) -> Locator:
    """The rows of a line, counted from 0."""
    return session.locator(".rec-line").nth(line).locator(".rec-set")


def tick(session: Locator, line: int, *numbers: int) -> None:
    """Mark sets as done, counted from 0."""
    for number in numbers:
        sets_of(session, line).nth(number).locator(".rec-tick").click()


def fill(session: Locator, line: int, number: int, **values: str) -> None:
    """Type into a set's fields: load, reps, effort."""
    for name, value in values.items():
        sets_of(session, line).nth(number).locator(f".rec-{name} input").fill(value)


def exported(page: Page) -> str:
    """All that is recorded, as the download of plain lines gives it."""
    return _downloaded(page, 1)


def table(page: Page) -> str:
    """All that is recorded, as CSV."""
    return _downloaded(page, 2)


def _downloaded(page: Page, button: int) -> str:
    with page.expect_download() as waiting:
        page.locator("#records > .rec-ways button").nth(button).click()
    return Path(waiting.value.path()).read_bytes().decode()


def read_in(page: Page, text: str) -> str:
    """Paste and read in; what the page said of it."""
    details = page.locator("details.rec-in")
    if details.get_attribute("open") is None:
        details.locator("summary").click()
    page.locator("#rec-paste").fill(text)
    details.locator("button").click()
    return page.locator("#rec-read").inner_text()


def record_monday(page: Page) -> None:
    """A session with changed loads, repetitions and efforts, bodyweight, seconds and metres."""
    session = opened(page, MONDAY)
    tick(session, 0, 0)
    fill(session, 0, 1, load="82,5", effort="8.5")
    tick(session, 0, 1)
    fill(session, 0, 2, load="82.50", reps="4", effort="8,5")
    tick(session, 0, 2)
    tick(session, 1, 0)
    fill(session, 1, 1, load="-10")
    tick(session, 1, 1)
    tick(session, 2, 0, 1)
    tick(session, 3, 0, 1)
    fill(session, 4, 0, load="24")
    tick(session, 4, 0, 1)
    session.locator(".rec-foot textarea").fill('Slept "five" hours.\nBack \\ fine')


RECORDED_MONDAY = """session 2027-01-04 Mon
  Back Squat: 80 kg x 5 @ RPE 8
  Back Squat: 82.5 kg x 5, 4 @ RPE 8.5
  Pull-Up: bodyweight + 5 kg x 5
  Pull-Up: bodyweight - 10 kg x 5
  Dumbbell Bench Press: 15 kg x 10, 10 @ 2 RIR
  Side Plank: 30 s/side, 30 s/side
  Loaded Carry: 24 kg x 40 m, 40 m
  note "Slept \\"five\\" hours."
  note "Back \\\\ fine"
"""
