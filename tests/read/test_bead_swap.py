"""Bead swaps: words in, the same pattern in other beads out, or a sentence that says what is known."""

from __future__ import annotations

import pytest

from sitegen.model.shop import Shop, StockBead
from sitegen.read.bead_swap import SwapRefused, read_swaps, swap_beads
from tests.read.samples import changed, sound

LENTIL = "{shape: round, width: 3.1 mm, length: 2 mm, hole: 0.9 mm, per_gram: 45}"
OWN = f"bead_kinds:\n  lentil: {LENTIL}\nparts:\n"
SWATCH = "{beads: 10, width: 21 mm, rows: 10, height: 15 mm}"
GAUGE = f"gauge: {SWATCH}\nmeasured: {{width: 9 mm, height: 20 mm}}\nparts:\n"


def test_every_colour_of_the_bead_is_swapped_and_the_weave_stays() -> None:
    pattern = sound(changed())
    swaps = read_swaps(["Round 11/0 = cylinder  11/0"], pattern)
    assert swaps == {"round 11/0": "cylinder 11/0"}
    swapped = swap_beads(pattern, swaps)
    assert {colour.bead for colour in swapped.colours} == {"cylinder 11/0"}
    assert [colour.hex for colour in swapped.colours] == [colour.hex for colour in pattern.colours]
    assert swapped.parts == pattern.parts


def test_swaps_are_made_at_once_not_one_after_the_other() -> None:
    pattern = sound(changed(("{bead: round 11/0, name: foam", "{bead: round 8/0, name: foam")))
    swaps = read_swaps(["round 11/0=round 8/0", "round 8/0=round 11/0"], pattern)
    assert [colour.bead for colour in swap_beads(pattern, swaps).colours] == ["round 8/0", "round 11/0"]


def test_what_was_measured_in_the_former_beads_is_left_out() -> None:
    pattern = sound(changed(("parts:\n", GAUGE)))
    assert pattern.gauge is not None
    swapped = swap_beads(pattern, {"round 11/0": "round 8/0"})
    assert (swapped.gauge, swapped.measured) == (None, None)
    assert swap_beads(pattern, {}) is pattern


def test_an_own_bead_can_be_swapped_in_and_out() -> None:
    pattern = sound(
        changed(("parts:\n", OWN), ("{bead: round 11/0, name: foam", "{bead: lentil, name: foam"))
    )
    out = swap_beads(pattern, read_swaps(["lentil=cube 3mm"], pattern))
    assert [colour.bead for colour in out.colours] == ["round 11/0", "cube 3 mm"]
    assert not out.bead_kinds
    within = swap_beads(pattern, read_swaps(["round 11/0=Lentil"], pattern))
    assert {colour.bead for colour in within.colours} == {"lentil"}


def test_a_swapped_colour_is_no_longer_of_the_stock() -> None:
    stock = {"foam": StockBead("foam", "round 11/0", "foam", "#eef0e6", pack_grams=20)}
    text = changed(('{bead: round 11/0, name: foam, hex: "#eef0e6"}', "{stock: foam}"))
    pattern = sound(text, Shop(stock=stock))
    assert pattern.colours[1].stock == "foam"
    assert swap_beads(pattern, {"round 11/0": "round 8/0"}).colours[1].stock is None


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["round 11/0"], "is no swap"),
        (["=round 8/0"], "is no swap"),
        (["round 11/0="], "is no swap"),
        (["round 8/0=round 11/0"], "it has round 11/0"),
        (["round 11/0=round 99/0"], "known are round 15/0, 14/0"),
        (["round 11/0=round 8/0", "round 11/0=round 6/0"], "swapped twice"),
    ],
)
def test_other_words_are_refused(words: list[str], said: str) -> None:
    with pytest.raises(SwapRefused, match=said):
        read_swaps(words, sound(changed()))
