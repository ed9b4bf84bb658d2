"""A club's colour on the page: as it is where it can be read, darker or lighter where it cannot.

Comes in: a colour. Goes out: style that follows the shipped one. On paper the sheets stay black and white.
"""

from __future__ import annotations

from typing import Final

from setwright.science.contrast import readable

# What stands under text in `style.css`, light and dark; a test holds them to it.
LIGHT: Final = ("#ffffff", "#f5f3ef")
DARK: Final = ("#161512", "#211f1b")


def accent(colour: str) -> str:
    """The accent in light and in dark, each with the contrast that text needs."""
    light, dark = readable(colour, *LIGHT), readable(colour, *DARK)
    return (
        f"@media screen{{:root{{--accent:{light}}}}}"
        f"@media screen and (prefers-color-scheme:dark){{:root{{--accent:{dark}}}}}"
    )
