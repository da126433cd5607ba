"""The QR code of an address: its modules, its quiet zone, what it says to those who do not see it."""

from __future__ import annotations

import io
from itertools import product

import cairosvg
import pytest
from PIL import Image

from sitegen.draw.scan_code import MODULE_MM, QUIET_MODULES, dark_modules, scan_code
from tests.draw.say import SAY

ADDRESS = "https://beads.example/shop/patterns/reed-pair/"
DOTS = 4
"""Pixels to a module."""


def picture(address: str) -> Image.Image:
    """The drawing on white, four pixels to a module."""
    drawing = scan_code(address, SAY)
    wide = round(drawing.width_mm / MODULE_MM) * DOTS
    png = cairosvg.svg2png(
        drawing.svg("c").encode(), output_width=wide, output_height=wide, background_color="white"
    )
    return Image.open(io.BytesIO(png)).convert("L")


@pytest.mark.parametrize("address", [ADDRESS, "https://a.example/", ADDRESS + "x" * 150])
def test_the_picture_has_the_modules_of_the_code_and_four_light_ones_round_it(address: str) -> None:
    """ISO/IEC 18004: a quiet zone of four modules; dark is 1."""
    rows, shown = dark_modules(address), picture(address)
    size = len(rows) + 2 * QUIET_MODULES
    assert QUIET_MODULES == 4
    assert shown.size == (size * DOTS, size * DOTS)
    for x, y in product(range(size), repeat=2):
        column, row = x - QUIET_MODULES, y - QUIET_MODULES
        inside = 0 <= column < len(rows) and 0 <= row < len(rows)
        dark = shown.getpixel((x * DOTS + DOTS // 2, y * DOTS + DOTS // 2)) < 128
        assert dark == (inside and rows[row][column]), (x, y)


def test_three_corners_have_the_square_that_readers_look_for() -> None:
    """ISO/IEC 18004: a dark square of 7, a light one of 5 within, a dark one of 3 in the middle."""
    rows = dark_modules(ADDRESS)
    last = len(rows) - 7
    for left, top in ((0, 0), (last, 0), (0, last)):
        for x, y in product(range(7), repeat=2):
            ring = max(abs(x - 3), abs(y - 3))
            assert rows[top + y][left + x] == (ring != 2), (left, top, x, y)


def test_another_address_is_another_code_and_it_is_told_in_words() -> None:
    assert dark_modules(ADDRESS) != dark_modules(ADDRESS.replace("reed", "seed"))
    assert ADDRESS in scan_code(ADDRESS, SAY).svg("c")
