"""What people write by habit, and how the language has it.

Comes in: a line, and the place where reading stopped. Goes out: a help sentence for the slips that coaches make most.
"""

from __future__ import annotations

import re
from collections.abc import Collection

from setwright.suggest import Suggestion, either

_SPELLED: dict[str, str] = {
    **dict.fromkeys(("sec", "secs", "second", "seconds"), "s"),
    **dict.fromkeys(("mins", "minute", "minutes"), "min"),
    **dict.fromkeys(("hr", "hrs", "hour", "hours"), "h"),
    **dict.fromkeys(("meter", "meters", "metre", "metres"), "m"),
    **dict.fromkeys(("kgs", "kilo", "kilos", "kilogram", "kilograms"), "kg"),
    **dict.fromkeys(("lbs", "pound", "pounds"), "lb"),
    **dict.fromkeys(("amrap", "failure"), "max"),
    **dict.fromkeys(("bw", "body-weight"), "bodyweight"),
    **dict.fromkeys(("warmup", "warmups", "warm-ups", "warm"), "warm-up"),
    **dict.fromkeys(("else", "default"), "otherwise"),
    "rpe": "RPE",
    "rir": "RIR",
    "kg": "kg",
    "lb": "lb",
    "at": "@",
    "twice": "2 times",
    "–": "-",
    "—": "-",
    "‐": "-",
    "‑": "-",
    ";": ",",
}
_MODIFIERS = ("rest", "tempo", "warm-up", "limit", "test", "optional", "every", "pause", "advance")
_HEADS = (
    "Block",
    "Day",
    "Deload",
    "Plan",
    "Athlete",
    "Template",
    "Rules",
    "Emphasis",
    "Best",
)  # where a name may go on
_RULES = ("must", "should", "waive")
_WORDED = (*_RULES, "avoid", "has", "emphasis", "follow", "pattern", "needs")  # lines that hold words of a library


def spelled(word: str) -> str | None:
    """`Write ...`, where the word is a usual one for something that the language calls otherwise."""
    if joined := re.fullmatch(r"(rpe)(\d+(?:\.\d+)?)|(\d+)(rir)", word, re.IGNORECASE):
        return _in_place_of(word, " ".join(part for part in joined.groups() if part).upper())
    found = _SPELLED.get(word.casefold())
    return _in_place_of(word, found) if found is not None and found != word else None


def _in_place_of(word: str, right: str) -> Suggestion:
    return Suggestion(f"Write `{right}`.", word, [right])


def decimal_comma(line: str, comma: int) -> str | None:
    """`Write 62.5`, where the comma at an index of the line stands between digits without a blank."""
    before, after = re.search(r"\d+$", line[:comma]), re.match(r",(\d+)(?!\d*,\d)", line[comma:])
    return f"Write a decimal point: `{before[0]}.{after[1]}`." if before and after else None


def advice(text: str, start: int, end: int, expected: Collection[str]) -> str | None:
    """Help for the text at `start`, where one of the terminals `expected` should have stood."""
    before, found, rest = text[:start].rstrip(), text[start:end], text[start:]
    return (
        _at_the_start(before, found)
        or _of_dates(rest, expected)
        or _of_times(text)
        or _of_marks(text, start, rest, expected)
        or _of_numbers(before, found, rest, expected)
        or _of_modifiers(rest, expected)
        or _of_words(text, before, found, expected)
    )


def of_early_end(text: str) -> str | None:
    """Help for a line that ends too early, where one of its words is a habit."""
    if time := _of_times(text):
        return time
    if re.match(r"deload\b[^:]*$", text):
        return f"Say how it is lighter: `{text}: sets 50%, load 90%`."
    if re.fullmatch(r"emphasis .*\d\s+sets", text):
        return "Write `per week` at its end."
    return next(filter(None, map(spelled, re.findall(r"[^\W\d_][\w-]*", text))), None)


def _at_the_start(before: str, found: str) -> str | None:
    if before:
        return None
    if found == "/":
        return "A remark begins with `#`."
    return (
        "A line begins with its word or name, without a mark or a number."
        if found in "-*•·+" or found.isdigit()
        else None
    )


def _of_dates(rest: str, expected: Collection[str]) -> str | None:
    """Of a date in another order or with other marks; which of two numbers is the month only the writer knows."""
    if "DATE" not in expected:
        return None
    if ordered := re.match(r"(\d{4})[/.](\d\d?)[/.](\d\d?)\b", rest):
        return _in_place_of(ordered[0], f"{ordered[1]}-{int(ordered[2]):02}-{int(ordered[3]):02}")
    other = re.match(r"(\d\d?)[-/.](\d\d?)[-/.](\d{4})\b", rest)
    if other is None or "00" in other.groups():
        return None
    one, two, year = int(other[1]), int(other[2]), other[3]
    written = [f"{year}-{month:02}-{day:02}" for month, day in ((two, one), (one, two)) if month <= 12 and day <= 31]
    dates = either([f"`{date}`" for date in dict.fromkeys(written)])
    return f"A date is written year, month, day: {dates}." if written else None


def _of_times(text: str) -> str | None:
    """Of a line of an athlete that says when sessions begin: `at 18:30`, `at Sat 10:00`."""
    if not re.match(r"at\b", text):
        return None
    if later := re.match(r"at\s+(\d+:\d\d)\s+(?:on\s+)?(Mon|Tue|Wed|Thu|Fri|Sat|Sun)\b", text):
        return f"Write `at {later[2]} {later[1]}`."
    if spelled_so := re.search(r"\b(\d\d?)(?:[.:h](\d\d))?\s*([ap])?\.?m?\b", text, re.IGNORECASE):
        hour, minutes, half = spelled_so.groups()
        if ":" in spelled_so[0] and not half:
            return None
        first = int(hour) % 12 + (12 if half.casefold() == "p" else 0) if half else int(hour)
        return f"Times go by the day's 24 hours: `{first}:{minutes or '00'}`." if first < 24 else None
    return "Write a time: `at 18:30`, or `at Sat 10:00` for one day."


def _of_marks(text: str, start: int, rest: str, expected: Collection[str]) -> str | None:
    if rest[0] == "," and (help_ := decimal_comma(text, start)):
        return help_
    if re.match(r"->|→", rest) and (slip := re.search(r"@ *(?:RPE +)?(\d+),(\d+) *(?:%|kg|lb|RIR)? *$", text[:start])):
        return f"Write a decimal point: `{slip[1]}.{slip[2]}`."  # the comma passed for one before a modifier
    if rest[0] in "*✕✖" and "X" in expected:
        return _in_place_of(rest[0], "x")
    if clock := re.search(r"(\d+):(\d\d)$", text[: start + 3]):
        return f"Write `{int(clock[1]) * 60 + int(clock[2])} s`."
    if re.match(r"->|→", rest) and "COLON" in expected and (other := re.match(r"\S+\s+([^:]*\w)", rest)):
        return f"Write `swap {text[:start].strip()} for {other[1]}`."
    if re.match(r"/\d", rest):
        listed = f"{text[:start].rpartition(' ')[2]}{rest.split()[0]}".rstrip(",")
        return f"Values that follow each other week by week stand in brackets: `[{listed.replace('/', ', ')}]`."
    return None


def _of_numbers(before: str, found: str, rest: str, expected: Collection[str]) -> str | None:
    last = before.rpartition(" ")[2]
    number = re.search(r"\d+(?:\.\d+)?$", before)
    if found.upper() == "RPE" and number and not re.match(r"\w+\s*\d", rest):
        return f"Write `RPE {number[0]}`."
    if last.upper() == "RIR" and found.isdigit():
        return f"Write `{found} RIR`."
    if re.match(r"\d+(?:\.\d+)?%\s*x", rest):
        return "A comma stands between warm-up sets."
    if "_AT" in expected and (stated := re.match(r"RPE\s*\d+(?:\.\d+)?|\d+(?:\.\d+)?\s*(?:%|kg|lb|RIR)", rest)):
        return f"How hard or heavy stands after `@`: `@ {stated[0]}`."
    if re.match(r"1\s?-?RM\b", rest, re.IGNORECASE):
        return "Leave `1RM` out: a percent is of the athlete's best."
    if (
        ("PER_SIDE" in expected or "_AT" in expected)
        and number
        and re.match(r"(?:each|per)\b(?!\s+week)|/\s*[a-z]|e/s", rest)
    ):
        return f"Write `{last}/side`."
    if found == "to" and number and (top := re.match(r"to\s+(\d+)", rest)):
        return f"Write `{number[0]}-{top[1]}`."
    if "X" in expected and found in ("set", "sets", "rep", "reps", "repetitions"):
        return "Sets and repetitions are written `3 x 5`."
    if "TEMPO" in expected and (tempo := re.match(r"[\dxX]{4}\b", rest)):
        return f"Write `{'-'.join(tempo[0].upper())}`."
    return None


def _of_modifiers(rest: str, expected: Collection[str]) -> str | None:
    word = re.match(r"\(?\s*([a-z-]+)", rest)
    if word is None or "COMMA" not in expected or word[1] not in _MODIFIERS:
        return None
    return f"A comma stands before it: `, {word[1]}`."


def _of_words(text: str, before: str, found: str, expected: Collection[str]) -> str | None:
    first, _, last = text.split()[0], *before.rpartition(" ")[1:]
    if first in _HEADS:
        return f"Write `{first.casefold()}`, in small letters."
    if first == "deload" and found in ("sets", "load", "effort") and "COMMA" in expected:
        return f"A comma stands before it: `, {found}`."
    if found == "-" and "ARROW" in expected:
        return "A number that moves over the weeks is written with `->`."
    if first == "available" and found == "-":
        return "Write each day, with commas: `Mon, Tue, Wed`."
    if "WEEKDAY" in expected and found[:3].casefold() in ("mon", "tue", "wed", "thu", "fri", "sat", "sun"):
        return _in_place_of(found, found[:3].title())
    if found.casefold() in ("rep", "reps", "repetitions"):
        return "Repetitions bear no unit: `3 x 5`."
    if help_ := spelled(found) or spelled(last):
        return help_
    if found in ("day", "days") and (number := re.search(r"\d+$", before)) and first in _RULES:
        return f"Write hours: `{int(number[0]) * 24} h`."
    if found in ("week", "weeks") and last.isdigit() and "RPAR" in expected:
        return f"Write `{last}` alone: the template says what it counts."
    if first == "plates" and "X" in expected:
        return "Write how many there are of each: `2x20, 4x2.5 kg`."
    if " for all " in f"{before} ":
        return "Write `for every muscle`."
    if first in _RULES and " balance for " in before:
        return "`balance` takes its two words without `for`."
    if first in _RULES and last.islower() and before.count(" ") == 2:
        measure = before.split()[1]
        return f"A measure is one word: `{measure}-{last}`." if found == "for" else f"Write `for {last}`."
    if first in _WORDED and last.islower() and found.islower() and last != first:
        return f"A word of two parts takes a hyphen: `{last}-{found}`."
    return _of_small_letters(text, before, expected)


def _of_small_letters(text: str, before: str, expected: Collection[str]) -> str | None:
    name = re.match(r"[^\W\d_][^:\d]*", text)
    if "COLON" not in expected or name is None or not before.islower() or " " in before:
        return None
    capitals = " ".join(word.capitalize() for word in name[0].split())
    return f"The words of a name begin with capitals: `{capitals}`; or it stands in quotes."
