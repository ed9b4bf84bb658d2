"""Colours that can be read: luminance and contrast, and a colour moved until it has enough.

Colours are `#rrggbb` in sRGB; a contrast is a ratio from 1 to 21.
Source: Web Content Accessibility Guidelines 2.2 (W3C), "relative luminance" and "contrast ratio"; 4.5 is what its
criterion 1.4.3 asks of text.
"""

from __future__ import annotations

from typing import Final

ENOUGH: Final = 4.5
_STEPS: Final = 100


def luminance(colour: str) -> float:
    """How light a colour is, from 0 (black) to 1 (white)."""
    red, green, blue = (_linear(channel / 255) for channel in _channels(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """The ratio of two colours, the same whichever is named first."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def readable(colour: str, *papers: str, enough: float = ENOUGH) -> str:
    """The colour, mixed with as little black (on light papers; white on dark ones) as gives it enough contrast.

    It is mixed in hundredths, in sRGB, which keeps the hue. Black or white itself is the last resort.
    """
    dark_paper = max(map(luminance, papers)) < 0.18  # where white contrasts more than black
    end = "#ffffff" if dark_paper else "#000000"
    for step in range(_STEPS):
        mixed = _mixed(colour, end, step)
        if all(contrast(mixed, paper) >= enough for paper in papers):
            return mixed
    return end


def _mixed(colour: str, end: str, step: int) -> str:
    pairs = zip(_channels(colour), _channels(end), strict=True)
    return "#" + "".join(f"{(a * (_STEPS - step) + b * step + _STEPS // 2) // _STEPS:02x}" for a, b in pairs)


def _channels(colour: str) -> tuple[int, int, int]:
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4
