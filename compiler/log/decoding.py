"""The bytes of a table as text, whatever program wrote them.

Comes in: bytes. Goes out: text with LF line ends and the name of its encoding, or why it cannot be read.
"""

from __future__ import annotations

from setwright.record import record

_MARKS = (
    (b"\xff\xfe\x00\x00", None),  # UTF-32, which no spreadsheet writes
    (b"\x00\x00\xfe\xff", None),
    (b"\xef\xbb\xbf", "utf-8-sig"),
    (b"\xff\xfe", "utf-16"),
    (b"\xfe\xff", "utf-16"),
)
WINDOWS = "cp1252"


@record
class Decoded:
    """Text and its encoding by Python's name; `trouble` instead of both, where there is none."""

    text: str = ""
    encoding: str = ""
    trouble: str | None = None


def decoded_table(data: bytes) -> Decoded:
    """UTF-8 with or without a byte-order mark, UTF-16 with one, and what is none of these as Windows-1252."""
    encoding = next((name for mark, name in _MARKS if data.startswith(mark)), "utf-8")
    if encoding is None:
        return Decoded(trouble="it is UTF-32; save it as UTF-8")
    try:
        text = data.decode(encoding)
    except UnicodeDecodeError:
        if encoding != "utf-8":
            return Decoded(trouble="it begins like UTF-16 or UTF-8 and does not go on so; save it as UTF-8")
        encoding = WINDOWS
        try:
            text = data.decode(WINDOWS)
        except UnicodeDecodeError:
            return Decoded(trouble="it is neither UTF-8 nor UTF-16 nor Windows-1252; save it as UTF-8")
    if "\0" in text:
        return Decoded(trouble="it holds zero bytes, as UTF-16 without a mark does; save it as UTF-8")
    return Decoded(text.replace("\r\n", "\n").replace("\r", "\n"), encoding)
