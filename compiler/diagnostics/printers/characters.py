"""Text that is safe to show and its width in a terminal's cells.

Comes in: text a user wrote. Goes out: the same with everything invisible or commanding written as an escape.
"""

from __future__ import annotations

from unicodedata import category, combining, east_asian_width

TAB = "    "
_JOINERS = "\u200c\u200d"  # scripts and emoji need them, and they do nothing else
# Control; format, among them the marks that turn the reading direction; lone surrogates; line and paragraph ends.
_ESCAPED = ("Cc", "Cf", "Cs", "Zl", "Zp")


def visible(text: str) -> str:
    """The text with control characters, direction marks and stray bytes written as escapes; a tab is four spaces."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(_visible_character(character) for character in text)


def visible_lines(text: str) -> str:
    """`visible`, for text of several lines."""
    return "\n".join(visible(line) for line in text.replace("\r\n", "\n").split("\n"))


def width(text: str) -> int:
    """How many cells the text takes in a terminal: two for wide characters (UAX #11), none for combining ones."""
    return len(text) if text.isascii() else sum(_width_of_character(character) for character in text)


def cut(text: str, cells: int) -> str:
    """The longest beginning of the text that takes no more than `cells`."""
    taken = 0
    for at, character in enumerate(text):
        taken += _width_of_character(character)
        if taken > cells:
            return text[:at]
    return text


def _visible_character(character: str) -> str:
    if character == "\t":
        return TAB
    if category(character) not in _ESCAPED or character in _JOINERS:
        return character
    number = ord(character)
    if 0xDC80 <= number <= 0xDCFF:  # a byte that was not UTF-8, as `surrogateescape` carries it
        return f"\\x{number - 0xDC00:02x}"
    if number < 0x100:
        return f"\\x{number:02x}"
    return f"\\u{number:04x}" if number < 0x10000 else f"\\U{number:08x}"


def _width_of_character(character: str) -> int:
    if character in _JOINERS or combining(character) or category(character) in ("Mn", "Me"):
        return 0
    if "\u1160" <= character <= "\u11ff":  # vowels and finals of a Hangul syllable written in parts
        return 0
    return 2 if east_asian_width(character) in ("W", "F") else 1
