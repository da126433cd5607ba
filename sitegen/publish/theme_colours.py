"""A theme's colours -> problems where text, outlines or drawings would not stand out enough."""

from __future__ import annotations

from collections.abc import Iterator

from sitegen.draw.colour import contrast
from sitegen.model.location import NOWHERE
from sitegen.model.problem import Problem
from sitegen.model.theme import ThemeFile

TEXT, CONTROL = 4.5, 3.0
"""Least contrast of text and of outlines. Source: WCAG 2.2, success criteria 1.4.3 and 1.4.11."""
PAIRS = (
    *((front, back, TEXT) for front in ("ink", "soft", "accent") for back in ("paper", "plate")),
    *(("edge", back, CONTROL) for back in ("paper", "plate")),
)
ON_GROUND = (("ink", TEXT), ("soft", TEXT), ("accent", TEXT), ("edge", CONTROL))
"""What stands on the ground of drawings, in the colours of light pages on dark pages too."""


def colour_faults(theme: ThemeFile) -> Iterator[Problem]:
    """One fault for each pair of colours too near each other, at the one that the theme names itself."""
    for key, colours in (("colours", theme.colours), ("dark_colours", theme.dark_colours)):
        pairs = [
            (f"{key}.{front}", f"{key}.{back}", colours[front], colours[back], n) for front, back, n in PAIRS
        ]
        pairs += [
            (f"colours.{front}", f"{key}.ground", theme.colours[front], colours["ground"], least)
            for front, least in ON_GROUND
        ]
        for front, back, one, other, least in pairs:
            found = contrast(one, other)
            if found < least:
                if front not in theme.at:  # the theme's own colour is the one to change
                    front, back, one, other = back, front, other, one
                where = theme.at.get(front, NOWHERE)
                values = {"front": front, "back": back, "found": f"{found:.2f}", "least": f"{least:g}"}
                yield Problem("theme-contrast", where, values | {"better": _better(one, other, least)})


def _better(front: str, back: str, least: float) -> str:
    """The first shade of `front`, on the way to black or to white, that stands out enough from `back`."""
    end = max((0, 255), key=lambda level: contrast("#" + f"{level:02x}" * 3, back))
    for hundredth in range(1, 100):
        levels = (int(front[at : at + 2], 16) for at in (1, 3, 5))
        shade = "#" + "".join(f"{round(level + (end - level) * hundredth / 100):02x}" for level in levels)
        if contrast(shade, back) >= least:
            return shade
    return "#" + f"{end:02x}" * 3
