"""Colour families against the colour names of CSS Color Module Level 4 (W3C), and the bands of size."""

from __future__ import annotations

from itertools import product

import pytest
from coloraide import Color
from coloraide.css.color_names import name2val_map

from sitegen.trade.families import colour_family, families, size_band

CALLED = {"gray": "grey", "grey": "grey", **{name: name for name in families()}}
"""What a colour's name says -> its family."""

OTHERWISE = {
    "aliceblue": "white",
    "brown": "red",
    "cadetblue": "turquoise",
    "darkslategray": "turquoise",
    "darkslategrey": "turquoise",
    "lightseagreen": "turquoise",
    "lightyellow": "white",
    "navajowhite": "yellow",
    "powderblue": "turquoise",
    "rosybrown": "pink",
    "sandybrown": "orange",
}
"""Names that say another family than an eye sees: tints near white, reds called brown, blue-greens."""


def named() -> list[tuple[str, str]]:
    """Every CSS colour whose name names one family and no other."""
    found = []
    for name in name2val_map:
        said = {family for word, family in CALLED.items() if word in name}
        if len(said) == 1 and "violet" not in name:  # a violet is pink to CSS, and purple to most
            found.append((name, OTHERWISE.get(name, said.pop())))
    return found


def test_there_are_enough_names() -> None:
    assert len(named()) > 60


@pytest.mark.parametrize(("name", "family"), named())
def test_a_colour_is_found_under_its_name(name: str, family: str) -> None:
    assert colour_family(Color(name).to_string(hex=True)) == family


def test_every_colour_has_a_family() -> None:
    steps = range(0, 256, 15)
    found = {
        colour_family(f"#{red:02x}{green:02x}{blue:02x}") for red, green, blue in product(steps, repeat=3)
    }
    assert found == set(families())


def test_a_limit_belongs_to_the_band_below() -> None:
    assert [size_band(mm) for mm in (1, 25, 25.1, 50, 100, 100.1, 900)] == [
        "tiny",
        "tiny",
        "small",
        "small",
        "middling",
        "large",
        "large",
    ]
