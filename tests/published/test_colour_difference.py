"""CIEDE2000 against the 34 pairs of its authors, and colour vision against what is published of it.

G. Sharma, W. Wu and E. N. Dalal, The CIEDE2000 color-difference formula: Implementation notes, supplementary
test data, and mathematical observations, Color Research and Application 30 (2005) 21-30, table 1. The numbers
were taken from an independent copy of that table in the wheel of colour-science 0.4.7.
G. M. Machado, M. M. Oliveira and L. A. F. Fernandes, A physiologically-based model for simulation of color
vision deficiency, IEEE Transactions on Visualization and Computer Graphics 15 (2009) 1291-1298.
"""

from __future__ import annotations

import pytest
from coloraide import Color

from sitegen.check.colours_apart import difference

Lab = tuple[float, float, float]

PAIRS: list[tuple[Lab, Lab, float]] = [
    ((50, 2.6772, -79.7751), (50, 0, -82.7485), 2.0425),
    ((50, 3.1571, -77.2803), (50, 0, -82.7485), 2.8615),
    ((50, 2.8361, -74.02), (50, 0, -82.7485), 3.4412),
    ((50, -1.3802, -84.2814), (50, 0, -82.7485), 1.0000),
    ((50, -1.1848, -84.8006), (50, 0, -82.7485), 1.0000),
    ((50, -0.9009, -85.5211), (50, 0, -82.7485), 1.0000),
    ((50, 0, 0), (50, -1, 2), 2.3669),
    ((50, -1, 2), (50, 0, 0), 2.3669),
    ((50, 2.49, -0.001), (50, -2.49, 0.0009), 7.1792),
    ((50, 2.49, -0.001), (50, -2.49, 0.001), 7.1792),
    ((50, 2.49, -0.001), (50, -2.49, 0.0011), 7.2195),
    ((50, 2.49, -0.001), (50, -2.49, 0.0012), 7.2195),
    ((50, -0.001, 2.49), (50, 0.0009, -2.49), 4.8045),
    ((50, -0.001, 2.49), (50, 0.001, -2.49), 4.8045),
    ((50, -0.001, 2.49), (50, 0.0011, -2.49), 4.7461),
    ((50, 2.5, 0), (50, 0, -2.5), 4.3065),
    ((50, 2.5, 0), (73, 25, -18), 27.1492),
    ((50, 2.5, 0), (61, -5, 29), 22.8977),
    ((50, 2.5, 0), (56, -27, -3), 31.9030),
    ((50, 2.5, 0), (58, 24, 15), 19.4535),
    ((50, 2.5, 0), (50, 3.1736, 0.5854), 1.0000),
    ((50, 2.5, 0), (50, 3.2972, 0), 1.0000),
    ((50, 2.5, 0), (50, 1.8634, 0.5757), 1.0000),
    ((50, 2.5, 0), (50, 3.2592, 0.335), 1.0000),
    ((60.2574, -34.0099, 36.2677), (60.4626, -34.1751, 39.4387), 1.2644),
    ((63.0109, -31.0961, -5.8663), (62.8187, -29.7946, -4.0864), 1.2630),
    ((61.2901, 3.7196, -5.3901), (61.4292, 2.248, -4.962), 1.8731),
    ((35.0831, -44.1164, 3.7933), (35.0232, -40.0716, 1.5901), 1.8645),
    ((22.7233, 20.0904, -46.694), (23.0331, 14.973, -42.5619), 2.0373),
    ((36.4612, 47.858, 18.3852), (36.2715, 50.5065, 21.2231), 1.4146),
    ((90.8027, -2.0831, 1.441), (91.1528, -1.6435, 0.0447), 1.4441),
    ((90.9257, -0.5406, -0.9208), (88.6381, -0.8985, -0.7239), 1.5381),
    ((6.7747, -0.2908, -2.4247), (5.8714, -0.0985, -2.2286), 0.6377),
    ((2.0776, 0.0795, -1.135), (0.9033, -0.0636, -0.5514), 0.9082),
]  # fmt: skip
EXACTLY_OPPOSITE = 14
"""Hues 180 degrees apart, where the paper itself notes a jump: the last bit decides which way round the mean
hue lies, and with it between the paper's 4.8045 and 4.7461, the figure of the next pair."""


def test_all_34_are_here() -> None:
    assert len(PAIRS) == 34


@pytest.mark.parametrize("number", range(1, 35))
def test_the_pairs_of_sharma_wu_and_dalal(number: int) -> None:
    """To the four decimals printed, both ways round."""
    one, other, printed = PAIRS[number - 1]
    first, second = Color("lab-d65", one), Color("lab-d65", other)
    found = [a.delta_e(b, method="2000", space="lab-d65") for a, b in ((first, second), (second, first))]
    if number == EXACTLY_OPPOSITE:
        assert all(figure == pytest.approx(printed, abs=1e-4) or figure == pytest.approx(4.7461, abs=1e-4)
                   for figure in found)  # fmt: skip
    else:
        assert found == [pytest.approx(printed, abs=1e-4)] * 2


@pytest.mark.parametrize("vision", ["normal", "protan", "deutan", "tritan"])
def test_greys_stay_apart_in_every_vision(vision: str) -> None:
    """The matrices of Machado, Oliveira and Fernandes map grey to grey: each of their rows adds up to 1."""
    grey = difference("#404040", "#c0c0c0")
    assert difference("#404040", "#c0c0c0", vision) == pytest.approx(grey, abs=0.3)


def test_red_and_green_draw_together_without_their_cones_and_blue_and_green_without_blue() -> None:
    """What protan, deutan and tritan mean (the same paper, section 2)."""
    red_green, blue_green = ("#b05a2a", "#6f7a2a"), ("#2a6f8f", "#2a7f6a")
    assert difference(*red_green, "protan") < difference(*red_green) / 2
    assert difference(*red_green, "deutan") < difference(*red_green) / 2
    assert difference(*red_green, "tritan") > difference(*red_green) * 0.7
    assert difference(*blue_green, "tritan") < difference(*blue_green) / 2
