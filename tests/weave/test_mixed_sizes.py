"""Beads of very different sizes in one chart: what cannot be woven is the author's to mend, and says how."""

from __future__ import annotations

import pytest

from sitegen.model.location import NOWHERE
from sitegen.model.shop import Shop
from sitegen.model.source import Chart, ChartRow, Colour, Makes, Part, Pattern
from sitegen.weave import weave
from sitegen.weave.needle import BUG, MIXED_SIZES

CHARTS = {
    "square": ("ABAB", "AAAB", "BABA"),
    "peyote": ("A B A B", " B A B A", "A A A B", " B A B A"),
    "brick": ("A A A B", " A A B A"),
}


def woven(stitch: str, other: str):
    rows = tuple(
        ChartRow(tuple((at, letter) for at, letter in enumerate(line) if letter != " "))
        for line in CHARTS[stitch]
    )
    part = Part("Band", stitch, chart=Chart("Band", rows), at={"": NOWHERE})
    colours = (Colour("A", "round 15/0", "a", "#112233"), Colour("B", other, "b", "#ddeeff"))
    return weave(Pattern("p", "P", "", Makes.ONE, 1, None, colours, (part,)), Shop())


@pytest.mark.parametrize("stitch", CHARTS)
def test_equal_sizes_can_be_woven(stitch: str) -> None:
    path, problems = woven(stitch, "round 15/0")
    assert (path is not None, problems) == (True, [])


@pytest.mark.parametrize("stitch", ["square", "peyote"])
def test_very_different_ones_cannot_and_the_program_does_not_blame_itself(stitch: str) -> None:
    path, problems = woven(stitch, "round 6/0")
    assert path is None
    assert {problem.values["bug"] for problem in problems} == {MIXED_SIZES}
    assert MIXED_SIZES != BUG
