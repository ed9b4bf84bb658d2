"""What was recorded, written out and read in again, is the same; and the compiler's own parser reads the same sets.

The script's functions run in a page, without the sheet around them.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from pathlib import Path
from typing import Any
from unicodedata import normalize

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Browser, Page

from browser.driver import visit
from setwright.link.done import SetDone, sets_done
from setwright.prescription import Bodyweight, RepsKind, Weight
from setwright.quantities import plain
from setwright.render.html import recording
from setwright.source import Source
from setwright.syntax import LineReader
from setwright.syntax import nodes as n

FOLDER = Path(recording.__file__).parent / "record"
PURE = ("basics", "sets", "lines", "reading", "table")
RUN = """(sessions) => {
  %s
  data = { unit: "kg", decimal: ".", words: {} };
  const text = sessionsText(sessions);
  return { text, lines: readSessions(text), table: readTable(tableText(sessions)) };
}"""
SCRIPT = RUN % "\n".join((FOLDER / f"{name}.js").read_text() for name in PURE)

# Any text as the script keeps it: composed, without control characters, no blanks around.
texts = st.text(
    st.characters(codec="utf-8", categories=["L", "M", "N", "P", "S", "Zs"], exclude_characters="\u00a0\u202f\u2009"),
    max_size=12,
).map(lambda text: normalize("NFC", text).strip())
names = texts.filter(bool) | st.sampled_from(["Back Squat", "T-Bar Row", "Farmer's Carry", "Mon", "RPE 8", "note"])
numbers = st.decimals("0.25", "300", places=2).map(lambda number: plain(Fraction(number)))
efforts = st.sampled_from(["", "6", "7.5", "8", "9"])


@st.composite
def done_sets(draw: st.DrawFn) -> dict[str, Any]:
    body = draw(st.integers(0, 1))
    load = draw(st.just("") | numbers)
    kind = draw(st.sampled_from(["", "", "s", "m"]))
    count = st.integers(0, 60).map(str) | st.just("1+2+1")
    return {
        "load": f"-{load}" if body and load and draw(st.booleans()) else load,
        "body": body,
        "unit": draw(st.sampled_from(["kg", "lb"])) if load else "kg",
        "reps": draw(numbers if kind else count),
        "kind": kind,
        "side": draw(st.integers(0, 1)),
        "effort": (effort := draw(efforts)),
        "scale": draw(st.sampled_from(["RPE", "RIR"])) if effort else "RPE",
    }


entries = st.fixed_dictionaries({"name": names, "label": texts, "sets": st.lists(done_sets(), min_size=1, max_size=25)})
sessions = st.fixed_dictionaries(
    {
        "date": st.dates(min_value=date(2020, 1, 1)).map(lambda day: day.isoformat()),
        "week": st.just(3),
        "slot": st.sampled_from(["Mon", "2"]),
        "named": st.just(True),
        "note": texts,
        "entries": st.lists(entries, min_size=1, max_size=4, unique_by=lambda entry: (entry["name"], entry["label"])),
    }
)


@pytest.fixture(scope="module")
def page(browser: Browser) -> Iterator[Page]:
    with visit(browser) as seen:
        yield seen.open("about:blank")


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
@given(made=st.lists(sessions, min_size=1, max_size=3, unique_by=lambda one: one["date"]))
def test_written_out_and_read_in_is_the_same(page: Page, made: list[dict[str, Any]]) -> None:
    got = page.evaluate(SCRIPT, made)
    assert joined(got["lines"]["sessions"]) == joined(made)
    assert joined(got["table"]["sessions"]) == joined(made)
    assert got["lines"]["unread"] == got["table"]["unread"] == []
    parsed = LineReader().read(Source("log.plan", got["text"]))
    assert not parsed.diagnostics, got["text"]
    assert [compiled(statement) for statement in parsed.statements] == [expected(one) for one in made]


def joined(made: list[dict[str, Any]]) -> list[Any]:
    """Sessions with the sets of a movement in one list; a unit counts where there is a load, a scale with an effort."""
    return [expected(one) for one in made]


def grouped(session: dict[str, Any]) -> list[tuple[tuple[str, str], list[Any]]]:
    found: dict[tuple[str, str], list[Any]] = {}
    for entry in session["entries"]:
        found.setdefault((entry["name"], entry["label"]), []).extend(alike(one) for one in entry["sets"])
    return list(found.items())


def alike(one: dict[str, Any]) -> dict[str, Any]:
    return {**one, "unit": one["unit"] if one["load"] else "", "scale": one["scale"] if one["effort"] else ""}


def expected(session: dict[str, Any]) -> Any:
    return session["date"], session["week"], session["slot"], session["note"], grouped(session)


def compiled(statement: n.Statement) -> Any:
    """What the compiler makes of a session, in the script's terms."""
    head = statement.node
    assert isinstance(head, n.SessionHead)
    assert head.day is not None
    assert head.slot is not None
    found: dict[tuple[str, str], list[Any]] = {}
    notes = [line.node.text for line in statement.body if isinstance(line.node, n.NoteLine)]
    for line in statement.body:
        if isinstance(line.node, n.Entry):
            sets = sets_done(line.node.prescription)
            assert sets is not None
            key = (line.node.movement.name.text, line.node.movement.label or "")
            found.setdefault(key, []).extend(scripted(one) for one in sets)
    return head.day.isoformat(), head.week, head.slot.text, "\n".join(notes), list(found.items())


def scripted(one: SetDone) -> dict[str, Any]:
    mass = one.load.mass if isinstance(one.load, Weight) else one.load.added if one.load else None
    reps = "+".join(map(str, one.reps.parts)) if one.reps.kind is RepsKind.CLUSTER else plain(one.reps.low, 3)
    effort = one.effort
    return {
        "load": plain(mass.amount, 3) if mass else "",
        "body": int(isinstance(one.load, Bodyweight)),
        "unit": mass.unit.value if mass else "",
        "reps": reps,
        "kind": {RepsKind.SECONDS: "s", RepsKind.METRES: "m"}.get(one.reps.kind, ""),
        "side": int(one.reps.per_side),
        "effort": plain(10 - effort.high if effort.as_reserve else effort.high) if effort else "",
        "scale": ("RIR" if effort.as_reserve else "RPE") if effort else "",
    }
