"""Colours that a buyer may take for each other: which pairs, in which vision, where."""

from __future__ import annotations

import pytest

from sitegen.check.colours_apart import VISIONS, colours_apart, difference
from sitegen.model.problem import Problem
from sitegen.model.shop import Shop
from sitegen.trade.rules import rules
from tests.read.samples import changed, codes, read, sound

FOAM = '{bead: round 11/0, name: foam, hex: "#eef0e6"}'


def foam(colour: str, bead: str = "round 11/0") -> tuple[str, str]:
    """The sample's second colour changed."""
    return FOAM, f'{{bead: {bead}, name: foam, hex: "{colour}"}}'


def found(*changes: tuple[str, str]) -> list[Problem]:
    """What the check says to the sample, changed."""
    return colours_apart(sound(changed(*changes)), Shop())


def test_colours_far_apart_are_silent() -> None:
    assert found() == []


def test_both_colours_the_figure_and_the_place_are_named() -> None:
    (problem,) = found(foam("#637f40"))
    assert codes([problem]) == [("colours-alike", 12, 43)]
    assert (problem.values["one"], problem.values["other"]) == ("reed", "foam")
    assert problem.values["vision"] == VISIONS["normal"]
    assert float(str(problem.values["figure"])) == pytest.approx(difference("#5d7a3a", "#637f40"), abs=0.05)


def test_a_pair_that_only_colour_vision_confuses_names_that_vision() -> None:
    reed, rust = "#5d7a3a", "#94602f"
    (problem,) = found(foam(rust))
    assert difference(reed, rust) > rules().colours_apart["normal"]
    visions = {vision: difference(reed, rust, vision) for vision in VISIONS}
    assert problem.values["vision"] == VISIONS[min(visions, key=lambda vision: visions[vision])]


def test_another_kind_of_bead_tells_alike_colours_apart() -> None:
    assert found(foam("#5d7a3a", bead="round 8/0")) == []


def test_equal_colours_are_nothing_apart() -> None:
    (problem,) = found(foam("#5d7a3a"))
    assert problem.values["figure"] == "0"


def test_a_colourway_is_looked_at_as_it_will_be_made() -> None:
    way = 'colourways:\n  - {name: Dusk, W: {name: fern, hex: "#5f7c3c"}}\nparts:\n'
    (problem,) = found(("parts:\n", way))
    assert codes([problem]) == [("colours-alike", 14, 40)]
    assert (problem.values["one"], problem.values["other"]) == ("reed", "fern")


def test_a_colour_that_could_not_be_read_is_left_out() -> None:
    pattern, _ = read(changed(foam("grey"), ("#5d7a3a", "#888889")))
    assert pattern is not None
    assert colours_apart(pattern, Shop()) == []


def test_every_vision_has_its_threshold() -> None:
    assert set(rules().colours_apart) == set(VISIONS)
