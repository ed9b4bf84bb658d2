"""Says in a coach's words why a line cannot be read.

Comes in: what the parser expected and found. Goes out: one diagnostic, at the place where reading stopped.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import Any

from lark.exceptions import UnexpectedCharacters, UnexpectedInput, UnexpectedToken

from setwright.diagnostics import Diagnostic, Fix
from setwright.diagnostics.catalogue import syntax as codes
from setwright.source import Span
from setwright.suggest import Suggestion, did_you_mean, either
from setwright.syntax.habits import advice, of_early_end

# Terminals whose text is no word that could be shown as it is.
PLAIN_WORDS: dict[str, str] = {
    "NAME": "a name (`Back Squat`)",
    "PREFIXED_NAME": "a name with its prefix (`club.Back Squat`)",
    "PREFIXED_WORD": "a word with its prefix (`club.chest`)",
    "STRING": 'text in quotes (`"..."`)',
    "WORD": "a lower-case word",
    "INT": "a number",
    "DECIMAL": "a number",
    "AT_LEAST": "an open rep count (`5+`)",
    "DATE": "a date (`2027-01-04`)",
    "CLOCK": "a time (`2:30`)",
    "TEMPO": "a tempo (`3-1-1-0`)",
    "WEEKDAY": "a weekday (`Mon` to `Sun`)",
    "COMPARE": "`<=`, `>=` or another comparison",
    "PERCENT": "`%`",
    "PER_SIDE": "`/side`",
    "PER_WEEK": "`/week`",
    "ELLIPSIS": "`...`",
    "ARROW": "`->`",
    "PLUS": "`+`",
    "MINUS": "`-`",
    "X": "`x`",
    "_AT": "`@`",
    "COLON": "`:`",
    "COMMA": "`,`",
    "DOT": "`.`",
    "LPAR": "`(`",
    "RPAR": "`)`",
    "LSQB": "`[`",
    "RSQB": "`]`",
    "$END": "the end of the line",
}
_MOST_SHOWN = 6
# Where a number can stand, these can too in some places; they would hide it. What goes on after one is named last.
_OTHER_VALUES = ("AT_LEAST", "DECIMAL", "LPAR", "MAX", "RPE", "WORD")
_NAMED_LAST = ("AFTER", "BEFORE", "ARROW", "PLUS", "MINUS", "PER_SIDE", "PER_WEEK")


def complaint(error: UnexpectedInput, text: str, span_at: Callable[[int, int], Span], parser: Any) -> Diagnostic:
    """The diagnostic for a line that stopped making sense at `error`."""
    words = keyword_texts(parser)
    expected = _expected(error)
    if isinstance(error, UnexpectedCharacters):
        return _bad_character(error, text, span_at, expected, words)
    assert isinstance(error, UnexpectedToken)
    token = error.token
    if token.type == "$END":
        end = len(text)
        slip = _slip_in_first_word(text, parser, span_at, words) if "COLON" in expected else None
        help_ = of_early_end(text) or _help(expected, words)
        return slip or codes.LINE_ENDS_EARLY.at(span_at(max(end - 1, 0), end), help=help_)
    start = token.start_pos or 0
    slip = _slip_in_first_word(text, parser, span_at, words) if "COLON" in expected else None
    if slip is not None:
        return slip
    habit = advice(text, start, token.end_pos or start + 1, expected)
    near = habit or did_you_mean(str(token), (words[name] for name in expected if name in words))
    span = span_at(start, token.end_pos or start + 1)
    if habit is None and "COLON" in expected and token.type in ("INT", "NAME", "X"):
        end = len(text[:start].rstrip())
        return codes.MISSING_COLON.at(span, found=str(token), fix=Fix(span_at(end, end), ":"))
    return codes.UNEXPECTED_WORD.at(span, found=str(token), help=near or _help(expected, words))


def _slip_in_first_word(
    text: str, parser: Any, span_at: Callable[[int, int], Span], words: dict[str, str]
) -> Diagnostic | None:
    """Where a line begins with a word like one of the language (`strat 2027-01-04`), that word is what is wrong."""
    first = text.split(maxsplit=1)[0]
    starts = [words[name] for name in parser.parse_interactive("").accepts() if name in words]
    if first not in starts and first.casefold() in starts:
        help_ = Suggestion(f"Write `{first.casefold()}`, in small letters.", first, [first.casefold()])
        return codes.UNEXPECTED_WORD.at(span_at(0, len(first)), found=first, help=help_)
    near = did_you_mean(first, starts) if first.islower() and first not in starts else None
    return codes.UNEXPECTED_WORD.at(span_at(0, len(first)), found=first, help=near) if near else None


def keyword_texts(parser: Any) -> dict[str, str]:
    """The text of each terminal that is a fixed word."""
    return {
        terminal.name: terminal.pattern.value
        for terminal in parser.terminals
        if terminal.pattern.type == "str" and terminal.pattern.value[0].isalpha()
    }


def _bad_character(
    error: UnexpectedCharacters,
    text: str,
    span_at: Callable[[int, int], Span],
    expected: Iterable[str],
    words: dict[str, str],
) -> Diagnostic:
    start: int = error.pos_in_stream or 0  # type: ignore[redundant-expr]  # lark's stubs leave it untyped
    character = text[start]
    if character in '"“”„«»':
        end = len(text) if character == '"' else start + 1
        if character == '"':
            return codes.OPEN_QUOTE.at(span_at(start, end), found=character, fix=Fix(span_at(end, end), '"'))
        quoted = re.compile('[“”„«»]([^“”„«»"]*)[“”„«»]').match(text, start)
        fix = Fix(span_at(start, quoted.end()), f'"{quoted[1]}"') if quoted else Fix(span_at(start, end), '"')
        return codes.CURLY_QUOTE.at(span_at(start, end), found=character, fix=fix)
    end = start + 1
    while end < len(text) and text[start].isalnum() and text[end].isalnum():
        end += 1
    shown = text[start:end]
    habit = advice(text, start, end, tuple(expected))
    near = habit or did_you_mean(shown, (words[name] for name in expected if name in words))
    return codes.UNEXPECTED_WORD.at(span_at(start, end), found=shown, help=near or _help(expected, words))


def _expected(error: UnexpectedInput) -> list[str]:
    names = getattr(error, "accepts", None) or getattr(error, "expected", None) or getattr(error, "allowed", None)
    return sorted(names or ())


def _help(expected: Iterable[str], words: dict[str, str]) -> str | None:
    names = set(expected)
    if "INT" in names and "MAX" in names:
        names.difference_update(_OTHER_VALUES)
    shown: dict[str, None] = {}
    for name in sorted(names, key=lambda name: (name in _NAMED_LAST, name)):
        if name.startswith("PREFIXED_"):  # where a name with a prefix could stand, one without could
            continue
        shown[PLAIN_WORDS.get(name) or f"`{words.get(name, name)}`"] = None
    if not shown or len(shown) > 14:
        return None
    parts = list(shown)
    more = ", among others" if len(parts) > _MOST_SHOWN else ""
    return f"Here could stand {either(parts[:_MOST_SHOWN])}{more}."
