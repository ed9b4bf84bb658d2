"""Numbers, dates, lists and plurals of each language, and what is said of a language that there is not."""

from __future__ import annotations

import builtins
from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from types import ModuleType

import pytest

from setwright.message import Phrase, counted, message
from setwright.quantities import Mass, Unit
from setwright.render import words
from setwright.render.language import ENGLISH, LANGUAGES, Language, LanguageError, language


def plainly(text: str) -> str:
    """No-break and thin spaces as ordinary ones, so that the tests can be read."""
    return text.translate({0xA0: " ", 0x202F: " ", 0x2009: " "})


def test_each_language_is_there_under_its_tag() -> None:
    assert [language(tag).tag for tag in LANGUAGES] == list(LANGUAGES)
    assert language("en") is ENGLISH
    assert language("DE") is language("DE")


@pytest.mark.parametrize(
    ("tag", "found"), [("de-AT", "de"), ("DE_at", "de"), ("fr-Latn-CA", "fr"), ("en-GB", "en"), ("de-CH-1996", "de")]
)
def test_a_longer_tag_is_looked_up_by_its_beginning(tag: str, found: str) -> None:
    """RFC 4647, 3.4: subtags are taken off the end until a tag is known."""
    assert language(tag).tag == found


@pytest.mark.parametrize(
    ("tag", "said"),
    [
        ("xx", "there is no language `xx`; there are `en`, `de` and `fr`"),
        ("german", "there is no language `german`; did you mean `de`? there are `en`, `de` and `fr`"),
        ("Français", "there is no language `Français`; did you mean `fr`? there are `en`, `de` and `fr`"),
        ("x-de", "there is no language `x-de`; there are `en`, `de` and `fr`"),
    ],
)
def test_unknown_tag(tag: str, said: str) -> None:
    with pytest.raises(LanguageError) as raised:
        language(tag)
    assert str(raised.value) == said


@pytest.fixture
def without_babel(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """As if the extra was not installed."""
    real = builtins.__import__

    def importing(name: str, *rest: object, **others: object) -> ModuleType:
        if name == "setwright.render.catalogued":
            raise ModuleNotFoundError("No module named 'babel'", name="babel")
        return real(name, *rest, **others)  # type: ignore[arg-type]

    language.cache_clear()
    monkeypatch.setattr(builtins, "__import__", importing)
    yield
    language.cache_clear()


@pytest.mark.usefixtures("without_babel")
def test_english_needs_no_library_and_others_say_which() -> None:
    assert language("en") is ENGLISH
    with pytest.raises(LanguageError) as raised:
        language("fr")
    assert str(raised.value) == "the language `fr` needs `pip install 'setwright[languages]'`"


# Unicode CLDR, cldr-json: numbers of de and fr have "decimal": ",", percentFormats "#,##0 %"; lists end in "und" and
# "et" without a comma (listPattern-type-standard).
@pytest.mark.parametrize(
    ("tag", "number", "percent", "listed"),
    [
        ("en", "82.5", "82.5%", "a, b and c"),
        ("de", "82,5", "82,5 %", "a, b und c"),
        ("fr", "82,5", "82,5 %", "a, b et c"),
    ],
)
def test_numbers_and_lists(tag: str, number: str, percent: str, listed: str) -> None:
    speaking = language(tag)
    value = Fraction("82.5")
    assert (speaking.number(value), plainly(speaking.percent(value))) == (number, percent)
    assert speaking.listed(["a", "b", "c"]) == listed
    assert (speaking.listed(["a"]), speaking.listed([])) == ("a", "")
    assert " " not in speaking.percent(value)  # held together


def test_halves_round_up_and_thousands_stand_ungrouped_in_each_language() -> None:
    assert {language(tag).number(Fraction("1.125")).replace(",", ".") for tag in LANGUAGES} == {"1.13"}
    assert {language(tag).number(Fraction(12500)) for tag in LANGUAGES} == {"12500"}
    assert {language(tag).number(Fraction("-2.5")).replace(",", ".") for tag in LANGUAGES} == {"-2.5"}


# Unicode CLDR, cldr-json, ca-gregorian of de: dateFormats long "d. MMMM y", availableFormats MMMMd "d. MMMM",
# intervalFormats yMMMd "d.-d. MMM y", "d. MMM - d. MMM y", "d. MMM y - d. MMM y" (with an en dash; the month is long
# here); of fr: "d MMMM y", "d MMMM", "d-d MMM y" and so on. English is dated by this project's own rule.
@pytest.mark.parametrize(
    ("tag", "day", "short", "stretches"),
    [
        (
            "en",
            "4 January 2027",
            "4 January",
            ("4–10 January 2027", "25 January – 7 February 2027", "28 December 2026 – 3 January 2027"),
        ),
        (
            "de",
            "4. Januar 2027",
            "4. Januar",
            ("4.–10. Januar 2027", "25. Januar – 7. Februar 2027", "28. Dezember 2026 – 3. Januar 2027"),
        ),
        (
            "fr",
            "4 janvier 2027",
            "4 janvier",
            ("4–10 janvier 2027", "25 janvier – 7 février 2027", "28 décembre 2026 – 3 janvier 2027"),
        ),
    ],
)
def test_dates(tag: str, day: str, short: str, stretches: tuple[str, str, str]) -> None:
    speaking = language(tag)
    assert plainly(speaking.day(date(2027, 1, 4))) == day
    assert plainly(speaking.day(date(2027, 1, 4), year=False)) == short
    spans = (
        (date(2027, 1, 4), date(2027, 1, 10)),
        (date(2027, 1, 25), date(2027, 2, 7)),
        (date(2026, 12, 28), date(2027, 1, 3)),
    )
    assert tuple(plainly(speaking.days(first, last)) for first, last in spans) == stretches
    assert "\u00a0" in speaking.day(date(2027, 1, 4), year=False)  # day and month stay on one line


# Unicode CLDR, cldr-json, ca-gregorian, days, format, wide.
@pytest.mark.parametrize(
    ("tag", "within", "heading"), [("en", "Monday", "Monday"), ("de", "Montag", "Montag"), ("fr", "lundi", "Lundi")]
)
def test_weekdays(tag: str, within: str, heading: str) -> None:
    assert language(tag).weekday(0) == within
    assert words.slot_within("Mon", language(tag)) == within
    assert words.slot("mon", language(tag)) == heading
    assert len({language(tag).weekday(index) for index in range(7)}) == 7


@pytest.mark.parametrize("tag", LANGUAGES)
def test_direction_is_that_of_the_script(tag: str) -> None:
    assert language(tag).direction == "ltr"


# Unicode CLDR, plurals: de "one: i = 1 and v = 0", fr "one: i = 0,1".
@pytest.mark.parametrize(
    ("tag", "none", "one", "two"),
    [
        ("en", "0 sets", "1 set", "2 sets"),
        ("de", "0 Sätze", "1 Satz", "2 Sätze"),
        ("fr", "0 série", "1 série", "2 séries"),
    ],
)
def test_plurals(tag: str, none: str, one: str, two: str) -> None:
    assert tuple(plainly(words.sets(number, language(tag))) for number in (0, 1, 2)) == (none, one, two)


def test_what_is_no_message_comes_back_as_it_is() -> None:
    assert {language(tag).text("Oda's own muscle") for tag in LANGUAGES} == {"Oda's own muscle"}
    assert {language(tag).text("") for tag in LANGUAGES} == {""}


def test_a_phrase_is_english_and_is_said_in_another_language() -> None:
    phrase = Phrase(
        message("When {condition}: {does}."),
        condition=Phrase(
            message("every set has {what}"),
            what=counted("{number} repetition", "{number} repetitions", number=Fraction(8)),
        ),
        does=(Phrase(message("{amount} more"), amount=Mass(Fraction("2.5"), Unit.KG)), "Oda"),
    )
    assert phrase == "When every set has 8 repetitions: 2.5 kg more and Oda."
    assert ENGLISH.said(phrase) == phrase
    assert language("de").said(phrase) == "Wenn jeder Satz 8 Wiederholungen hat: 2,5 kg mehr und Oda."
    assert plainly(language("fr").said(phrase)) == "Quand chaque série compte 8 répétitions : 2,5 kg de plus et Oda."


def test_a_persons_own_words_are_never_translated() -> None:
    said: Language = language("de")
    assert said.said("Cautions") == "Cautions"


# Unicode Standard Annex 9, 2.4: FSI U+2068 to PDI U+2069 keeps what stands between them from its surroundings. Without
# it "... of NAME 5" would show the 5 on the far side of a name that runs from right to left.
def test_a_name_that_runs_the_other_way_is_kept_apart() -> None:
    assert (
        ENGLISH.name("\u05e1\u05e7\u05d5\u05d5\u05d0\u05d8 2") == "\u2068\u05e1\u05e7\u05d5\u05d5\u05d0\u05d8 2\u2069"
    )
    assert ENGLISH.name("Back Squat") == "Back Squat"
    assert words.instead_of("\u0636\u063a\u0637", ENGLISH) == "instead of \u2068\u0636\u063a\u0637\u2069"


class FromRightToLeft(Language):
    direction = "rtl"


def test_in_a_language_from_right_to_left_it_is_the_latin_name() -> None:
    assert FromRightToLeft().name("Back Squat") == "\u2068Back Squat\u2069"
    assert FromRightToLeft().name("\u0636\u063a\u0637") == "\u0636\u063a\u0637"
