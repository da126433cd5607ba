"""`#rrggbb` colours -> paler, darker, and inks that can be read on them; dyes follow a design's letters."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from sitegen.model.source import Pattern

INK = "#2b2622"
"""Outlines and numbers: about 14:1 on white."""
OUTLINE = "#5a5048"
"""The edge of a bead: 7.5:1 on white, so that a white bead is still seen."""
PALE_OUTLINE = "#8b8178"
"""The edge of a bead that is already there: 3.8:1 on white."""
THREAD = "#b0122b"
"""This step's thread."""
WHITE = "#ffffff"


def channels(hex_colour: str) -> tuple[int, int, int]:
    """Red, green and blue, 0 to 255."""
    return int(hex_colour[1:3], 16), int(hex_colour[3:5], 16), int(hex_colour[5:7], 16)


def mix(one: str, other: str, share: float) -> str:
    """A colour between two: `share` of the other, 0 to 1. A half goes up, as in the scripts of pages."""
    pairs = zip(channels(one), channels(other), strict=True)
    return "#" + "".join(f"{int(a + (b - a) * share + 0.5):02x}" for a, b in pairs)


def luminance(hex_colour: str) -> float:
    """Relative luminance, 0 to 1. Formula: WCAG 2.2, https://www.w3.org/TR/WCAG22/#dfn-relative-luminance."""
    red, green, blue = (
        value / 255 / 12.92 if value / 255 <= 0.04045 else ((value / 255 + 0.055) / 1.055) ** 2.4
        for value in channels(hex_colour)
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio, 1 to 21. Formula: WCAG 2.2, https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def ink_on(fill: str) -> str:
    """Black or white, whichever reads better on a fill; never under 4.58:1."""
    return "#000000" if contrast("#000000", fill) >= contrast(WHITE, fill) else WHITE


@dataclass(frozen=True, slots=True)
class Dye:
    """The colour of a letter of the design, whatever that is, mixed with a fixed one."""

    letter: str
    toward: str = WHITE
    share: float = 0.0
    """How much of `toward` is mixed in, 0 to 1."""


Tint = str | Dye
"""A literal `#rrggbb`, or a colour that follows a letter."""


@dataclass(frozen=True, slots=True)
class Palette:
    """The colour of every letter. A drawing shown in another palette is another colourway of it."""

    fills: Mapping[str, str] = field(default_factory=dict)
    """Letter -> `#rrggbb`; a letter without one is white."""

    def fill(self, letter: str) -> str:
        """The colour of a letter."""
        return self.fills.get(letter, WHITE)

    def ink(self, letter: str) -> str:
        """What a letter is written with on its own colour."""
        return ink_on(self.fill(letter))

    def of(self, tint: Tint) -> str:
        """The literal colour of a tint."""
        return tint if isinstance(tint, str) else mix(self.fill(tint.letter), tint.toward, tint.share)


INK_SAVER = Palette()
"""Nothing is filled: letters alone tell the beads apart."""


def palette_of(pattern: Pattern) -> Palette:
    """The author's colours."""
    return Palette({colour.letter: colour.hex for colour in pattern.colours})
