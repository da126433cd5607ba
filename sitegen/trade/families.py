"""A colour -> the family a buyer would look for it in; a length -> its band of size."""

from __future__ import annotations

from functools import cache
from math import inf

from coloraide import Color

from sitegen.trade.figures import figure, table


@cache
def colour_family(hex_colour: str) -> str:
    """The family of a colour `#rrggbb`, such as `blue`."""
    light, chroma, hue = Color(hex_colour).convert("oklch").coords(nans=False)
    for line in table("families")["families"]:
        start, end = line.get("hue", (0, 360))
        turned = hue if hue >= start else hue + 360
        if (
            _within(light, line.get("light"))
            and _within(chroma, line.get("chroma"))
            and start <= turned < end
        ):
            return str(line["name"])
    raise ValueError(f"no colour family takes {hex_colour}")


def lightness(hex_colour: str) -> float:
    """How light a colour `#rrggbb` is in OKLCH, 0 to 1."""
    return float(Color(hex_colour).convert("oklch")["lightness"])


def drawer(hex_colour: str, name: str) -> tuple[int, float, str]:
    """The order of beads of one kind: families side by side, light beads before dark ones, then names."""
    return families().index(colour_family(hex_colour)), -round(lightness(hex_colour), 3), name


def _within(value: float, room: tuple[float, float] | None) -> bool:
    return room is None or room[0] <= value < room[1]


def families() -> tuple[str, ...]:
    """Every colour family, in the order of the table."""
    return tuple(dict.fromkeys(line["name"] for line in table("families")["families"]))


def least_share() -> float:
    """The share of a piece's beads from which on a family counts."""
    return figure(table("families")["least_share"]).value


def size_bands() -> tuple[tuple[str, float, float], ...]:
    """(name, from, up to) of each band of size in mm; the last has no end."""
    bands, start = [], 0.0
    for line in table("families")["sizes"]:
        end = float(line.get("up_to", inf))
        bands.append((str(line["name"]), start, end))
        start = end
    return tuple(bands)


def size_band(longest_mm: float) -> str:
    """The band that a piece's longer side falls in; a limit belongs to the band below it."""
    return next(name for name, _, end in size_bands() if longest_mm <= end)
