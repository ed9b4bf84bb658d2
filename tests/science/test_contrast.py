"""Contrast by the formulas of WCAG 2.2, and colours that are moved until they can be read."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.science.contrast import ENOUGH, contrast, luminance, readable

COLOURS = st.integers(0, 0xFFFFFF).map("#{:06x}".format)


def test_the_ends_of_the_scale() -> None:
    """WCAG 2.2, "contrast ratio": from 1 to 21."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#ffffff", "#ffffff") == pytest.approx(1)


@pytest.mark.parametrize(
    ("colour", "share"), [("#ff0000", 0.2126), ("#00ff00", 0.7152), ("#0000ff", 0.0722), ("#ffffff", 1), ("#000000", 0)]
)
def test_luminance_of_the_primaries(colour: str, share: float) -> None:
    """WCAG 2.2, "relative luminance": the weights of red, green and blue."""
    assert luminance(colour) == pytest.approx(share)


def test_the_lightest_grey_on_white() -> None:
    """From memory: #767676 is the lightest grey with 4.5 on white; the next one has less."""
    assert contrast("#767676", "#ffffff") >= ENOUGH > contrast("#777777", "#ffffff")


@given(COLOURS)
def test_every_colour_becomes_readable(colour: str) -> None:
    for papers in (("#ffffff", "#f5f3ef"), ("#161512", "#211f1b")):
        made = readable(colour, *papers)
        assert all(contrast(made, paper) >= ENOUGH for paper in papers)
        if all(contrast(colour, paper) >= ENOUGH for paper in papers):
            assert made == colour
