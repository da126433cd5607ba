"""Contrast by the published formula."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.draw.colour import contrast, ink_on, luminance, mix

COLOUR = st.integers(0, 0xFFFFFF).map(lambda value: f"#{value:06x}")


def test_contrast_of_black_on_white_is_21():
    """WCAG 2.2, definition of contrast ratio: from 1 to 21. https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio"""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#777777") == pytest.approx(1)
    assert luminance("#ffffff") == pytest.approx(1)


@given(COLOUR)
def test_a_letter_can_be_read_on_any_bead(fill):
    assert contrast(ink_on(fill), fill) >= 4.5


@given(COLOUR, COLOUR)
def test_mixing_goes_from_one_to_the_other(one, other):
    assert mix(one, other, 0) == one
    assert mix(one, other, 1) == other
