"""A number -> the text a reader or an SVG gets: the only place numbers are rounded."""

from __future__ import annotations

import math
from fractions import Fraction

MM_PER_INCH = 25.4
"""Exactly (the international inch, 1959)."""
GRAMS_PER_OUNCE = 28.349523125
"""Exactly (the avoirdupois ounce, 1959)."""


class Plain(str):
    """A number as decimal text with a point: what shows it to readers gives it their decimal sign."""

    __slots__ = ()


def plain(value: float, places: int = 2) -> Plain:
    """Shortest decimal text with at most `places` digits after the point: 2.50 -> `2.5`, -0.0 -> `0`."""
    text = f"{value:.{places}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return Plain("0" if text in ("-0", "") else text)


def sixteenths(mm: float) -> Fraction:
    """Inches to the nearest 1/16."""
    return Fraction(math.floor(mm / MM_PER_INCH * 16 + 0.5), 16)


def inches(mm: float) -> str:
    """Inches to the nearest 1/16 as text without a unit: 30.2 mm -> `1 3/16`."""
    value = sixteenths(mm)
    whole, part = divmod(value, 1)
    if not part:
        return str(whole)
    return f"{whole} {part}" if whole else str(part)
