"""Words for prescriptions, the same on every sheet. Expected texts are our own wording, so no outside source."""

from __future__ import annotations

import re
from datetime import date
from fractions import Fraction

import pytest

from setwright.plan import Group, GroupKind, Handling, Load, Movement
from setwright.prescription import (
    Bodyweight,
    ChangeByMass,
    ChangeByPercent,
    Intensity,
    PercentOfBest,
    Reps,
    RepsKind,
    Rest,
    Weight,
)
from setwright.record import replace
from setwright.render import keys, words
from setwright.render.language import ENGLISH
from sheets.sample_plans import SPAN, SQUAT, bar, count, kg, rir, rpe, work


def said(text: str | None) -> str | None:
    """No-break spaces as plain ones, so that the tests can be read."""
    return None if text is None else text.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("reps", "text"),
    [
        (count(5), "3 × 5"),
        (count(8, 10), "3 × 8–10"),
        (count(8, per_side=True), "3 × 8 per side"),
        (Reps(RepsKind.AT_LEAST, Fraction(5), Fraction(5)), "3 × 5+"),
        (Reps(RepsKind.MAX), "3 × max"),
        (Reps(RepsKind.SECONDS, Fraction(40), Fraction(40)), "3 × 40 s"),
        (Reps(RepsKind.SECONDS, Fraction(120), Fraction(120), minutes=True), "3 × 2 min"),
        (Reps(RepsKind.CLUSTER, parts=(2, 2, 2)), "3 × (2+2+2)"),
    ],
)
def test_dose(reps: Reps, text: str) -> None:
    assert said(words.dose(work(3, reps), ENGLISH)) == text


@pytest.mark.parametrize(
    ("intensity", "effort", "load"),
    [
        (None, None, None),
        (rpe(7, 8), "RPE 7–8", None),
        (rir(2), "2 RIR", None),
        (PercentOfBest(Fraction("82.5")), "82.5%", None),
        (PercentOfBest(Fraction(80), "Chin-Up 2-3"), "80% of Chin-Up 2-3", None),
        (ChangeByPercent(Fraction(-8)), "8% lighter", None),
        (ChangeByMass(kg("2.5")), "2.5 kg heavier", None),
        (ChangeByPercent(Fraction(0)), "same load", None),
        (Weight(kg(100)), None, "100 kg"),
        (Bodyweight(), None, "bodyweight"),
        (Bodyweight(kg(5)), None, "bodyweight + 5 kg"),
        (Bodyweight(kg(-20)), None, "bodyweight − 20 kg"),
    ],
)
def test_effort_and_load(intensity: Intensity | None, effort: str | None, load: str | None) -> None:
    segment = work(1, count(5), intensity)
    assert (said(words.effort(intensity, ENGLISH)), said(words.load(segment, ENGLISH))) == (effort, load)


def test_a_load_says_how_it_is_meant() -> None:
    assert words.load_aside(work(1, count(5), rpe(8), Load(kg(20), Handling.PAIR)), ENGLISH) == "in each hand"
    assert words.load_aside(work(1, count(5), rpe(8), bar(20)), ENGLISH) == "empty bar"
    assert words.load_aside(work(1, count(5), rpe(8), bar(60, 20)), ENGLISH) is None


def test_a_blank_stands_only_where_a_load_is_wanted() -> None:
    push_up = Movement("Push-Up", SPAN)
    assert words.wants_load(SQUAT, work(1, count(5), rpe(8)))
    assert words.wants_load(push_up, work(1, count(5), PercentOfBest(Fraction(80))))
    assert not words.wants_load(push_up, work(1, count(5), rpe(8)))
    assert not words.wants_load(SQUAT, work(1, count(5), rpe(8), bar(60, 20)))


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [(90, 90, "90 s"), (60, 90, "60–90 s"), (120, 180, "2–3 min"), (150, 150, "2:30 min"), (150, 180, "2:30–3 min")],
)
def test_rest(low: int, high: int, text: str) -> None:
    assert said(words.rest(Rest(Fraction(low), Fraction(high)), ENGLISH)) == text


def test_groups() -> None:
    rest = Rest(Fraction(90), Fraction(90))
    superset = words.together(Group(GroupKind.SUPERSET, "A", rest), (3, 4), ENGLISH)
    circuit = words.together(Group(GroupKind.CIRCUIT, "B", rounds=3), (5, 6, 7), ENGLISH)
    assert said(superset) == "Superset A: 3 and 4 in turn, rest 90 s after each round"
    assert said(circuit) == "Circuit B: 5, 6 and 7 in turn, 3 rounds"


@pytest.mark.parametrize(
    ("first", "last", "text"),
    [
        (date(2027, 1, 4), date(2027, 1, 10), "4–10 January 2027"),
        (date(2027, 1, 25), date(2027, 2, 7), "25 January – 7 February 2027"),
        (date(2026, 12, 28), date(2027, 1, 3), "28 December 2026 – 3 January 2027"),
    ],
)
def test_days(first: date, last: date, text: str) -> None:
    assert said(ENGLISH.days(first, last)) == text


def test_slots() -> None:
    assert (words.slot("Mon", ENGLISH), said(words.slot("3", ENGLISH))) == ("Monday", "Day 3")


# Haff GG, Triplett NT (eds.), Essentials of Strength Training and Conditioning, 4th ed., 2016, testing protocol: 5-10
# repetitions, 1 min; 5-10% more (upper body) or 10-20% (lower body) for 3-5, 2 min; again for 2-3, 2-4 min; again for
# one; rests of 2-4 min after each try; 2.5-5% or 5-10% less after a miss, which is half; within 3-5 sets.
def test_steps_of_a_test_are_the_published_ones() -> None:
    _, steps = keys.TEST
    assert re.findall(r"[\d–]+%?(?: min| tries)?", steps) == [
        *("5–10", "1 min", "5–10%", "10–20%", "3–5", "2 min", "2–3", "2–4 min", "2–4 min", "2–4 min", "3–5 tries"),
    ]
    assert "take half of that off" in steps


@pytest.mark.parametrize(
    ("load", "text"),
    [
        (Load(kg(70), spread=(kg("67.5"), kg(75))), "67.5–75"),
        (Load(kg(70)), None),
        (None, None),
    ],
)
def test_what_other_formulas_give(load: Load | None, text: str | None) -> None:
    assert words.load_spread(work(3, count(5), rpe(8), load), ENGLISH) == text


@pytest.mark.parametrize(
    ("asked", "with_load", "without"),
    [
        (rpe("8.5"), "at most RPE 8.5", "85% of the load for RPE 8.5"),
        (rpe(7, 8), "at most RPE 8", "85% of the load for RPE 7–8"),
        (rir(2), "at least 2 RIR", "85% of the load for 2 RIR"),
        (PercentOfBest(Fraction(68)), "68%", "68%"),
    ],
)
def test_what_a_deload_leaves_of_an_effort(asked: Intensity, with_load: str, without: str) -> None:
    scaled = replace(work(2, count(8), asked), load_factor=Fraction(85, 100))
    assert said(words.asked_effort(scaled, ENGLISH)) == without
    assert said(words.asked_effort(replace(scaled, load=bar(65)), ENGLISH)) == with_load


def test_an_effort_that_a_deload_lowered_is_asked_for() -> None:
    lowered = replace(work(2, count(8), rpe(6)), load_factor=Fraction(85, 100), effort_before=Fraction(9), load=bar(65))
    assert said(words.asked_effort(lowered, ENGLISH)) == "RPE 6"
