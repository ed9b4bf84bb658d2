"""The keys that every sheet carries: how to read it, and the cautions.

A language comes in; tuples of text go out. The scale of effort itself is `science.effort.EFFORT_KEY`.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import Final, TypeAlias

from setwright.message import message
from setwright.render.language import Language
from setwright.science.effort import EFFORT_KEY

# A head and a text.
Pair: TypeAlias = tuple[str, str]

# A sign or word, and what it means.
NOTATION: Final = (
    ("4 \u00d7 5", message("Four sets of five repetitions.")),
    ("8\u201310", message("Any number in that range. Stop when the effort asked for is reached.")),
    ("5+", message("At least five, then as many as good form allows.")),
    (
        message("70 kg (67.5\u201375)"),
        message(
            "The load for this effort, and what other published formulas give. Where they differ, let the effort "
            "decide."
        ),
    ),
    (message("max"), message("As many as good form allows.")),
    ("(2+2+2)", message("One set made of small ones, with a short pause between them.")),
    (message("per side"), message("Repetitions for each arm or leg.")),
    ("@ RPE 8", message("How hard the set ends, by the effort scale.")),
    ("@ 2 RIR", message("Repetitions in reserve: how many more you could have done.")),
    (message("@ 80%"), message("Share of your best for one repetition.")),
    (message("warm-up 40% \u00d7 8"), message("Share of the first work set's load, so many times.")),
    (
        message("tempo 3-1-1-0"),
        message("Seconds lowering, at the bottom, lifting, at the top; X is as fast as possible."),
    ),
    (message("drop"), message("Take load off and go on without rest.")),
    (
        message("superset, circuit"),
        message("One set of each in turn, then the rest; repeat until every set is done."),
    ),
    (message("each side"), message("The discs for one end of the bar, heaviest first against the collar.")),
    (message("D, T"), message("A deload week, a test week.")),
    (
        message("projected"),
        message(
            "What follows if every session before goes to plan. If one does not, go by the progression under the "
            "movement."
        ),
    ),
    (message("optional"), message("Leave it out when time or energy is short.")),
)

CAUTIONS: Final = (
    (
        message("Before you start"),
        message(
            "Go through a pre-exercise health screening. Have a doctor clear you first if you have a heart, lung, "
            "metabolic or kidney condition, chest pain, fainting, a recent injury or operation, or take medicines that "
            "matter."
        ),
    ),
    (
        message("Each session"),
        message("Warm up, and build up to heavy sets in steps. Check collars, pins and bench before you load."),
    ),
    (
        message("Heavy and maximal sets"),
        message(
            "Have trained spotters, or safety bars set at the right height, for any lift that could pin you. Never "
            "test a best alone."
        ),
    ),
    (
        message("Stop"),
        message(
            "Stop at sharp or unusual pain, dizziness, pressure in the chest or odd shortness of breath, and have it "
            "looked at. Seek care at once for dark urine or muscle pain far beyond the usual in the days after."
        ),
    ),
    (
        message("Illness"),
        message("Do not train with a fever. Come back lighter after any illness or a long break."),
    ),
    (
        message("Minors"),
        message(
            "Young people train under a qualified adult who is present, learn the movement first and add load slowly."
        ),
    ),
    (
        message("Pregnancy and after birth"),
        message("Train only as agreed with your doctor or midwife, and change what no longer suits."),
    ),
    (
        message("What this is"),
        message(
            "A training plan, not medical advice. What a doctor, physiotherapist or other licensed professional tells "
            "you comes first."
        ),
    ),
)

# For an athlete who may be under age, by the year of birth.
MINOR: Final = (
    message("Under 18"),
    message(
        "{athlete}, born {born}, may be under age when this plan begins. A qualified adult is present at every "
        "session, a movement is learned before load is added, and a best is tried only where coach and parents agree "
        "to it. Ask a doctor or physiotherapist wherever you are in doubt."
    ),
)

# On the sheet of a week.
HARD_DAYS: Final = (
    message("High effort two days in a row"),
    message(
        "{days}, at RPE 9 or more. Where the second day feels harder than it should, leave more in reserve and tell "
        "your coach."
    ),
)

# On a session with a test. The steps of a test of the best for one repetition as Haff GG, Triplett NT (eds.),
# Essentials of Strength Training and Conditioning, 4th ed., Human Kinetics; 2016, in words of our own: the percents,
# not the masses beside them, which are for larger people.
TEST: Final = (
    message("Trying a best"),
    message(
        "Never alone: trained spotters, or safety bars at the right height, for a lift that could pin you; a clean, "
        "snatch or jerk is not spotted. Do 5\u201310 easy repetitions, rest 1 min. Add 5\u201310%, for the lower "
        "body 10\u201320%, and do 3\u20135, rest 2 min. Add as much again and do 2\u20133, rest 2\u20134 min. Add "
        "as much again for one. If it goes, rest 2\u20134 min and add again; if not, rest 2\u20134 min and take half "
        "of that off. Be done within 3\u20135 tries. Loads and rests that the plan names come first."
    ),
)

# On a later session with a test in the same week.
TEST_AGAIN: Final = (TEST[0], message("Never alone; the steps stand with {day}."))

EFFORT_LINE: Final = message(
    "Effort: RPE 10 nothing left, 9 one more repetition, 8 two more, 7 three more, 6 about four more."
)


def translated(pairs: Iterable[Pair], language: Language) -> tuple[Pair, ...]:
    """A key or cautions in a language."""
    return tuple(said(pair, language) for pair in pairs)


def said(pair: Pair, language: Language) -> Pair:
    """One head with its text in a language."""
    return language.text(pair[0]), language.text(pair[1])


def effort_key(language: Language) -> tuple[Pair, ...]:
    """The scale of effort: a point as a number, and what was left."""
    return tuple((language.number(Fraction(rpe)), language.text(meaning)) for rpe, meaning in EFFORT_KEY)
