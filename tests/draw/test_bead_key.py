"""The bead key: each bead at its true size, all of a pattern in boxes of one width."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sitegen.draw.bead_key import bead_keys
from sitegen.draw.pens import BoundsPen
from sitegen.model.source import Colour, OwnBead
from sitegen.trade.beads import bead_kind
from tests.draw.outlines import box
from tests.draw.say import SAY

KINDS = ("round 15/0", "round 8/0", "cylinder 11/0", "cube 3 mm", "bugle 6 mm", "drop 3.4 mm", "bicone 4 mm",
         "fire-polished 3 mm", "hedge nut")  # fmt: skip
OWN = {"hedge nut": OwnBead("hedge nut", "round", 5.2, 4.1, 1.3, 6.0)}


def keys(diamond, *kinds):
    pattern, _ = diamond
    colours = tuple(Colour(chr(65 + place), kind, "moss", "#4d6b3a") for place, kind in enumerate(kinds))
    pattern = replace(pattern, colours=colours, bead_kinds=OWN)
    return list(bead_keys(pattern, SAY).values())


def bodies(drawing):
    """The outline from the side, the one from the hole, and the hole."""
    stroked = [values[0][0] for name, values in drawing.calls if name == "shapes" and values[1].stroke]
    assert len(stroked) == 3
    return map(box, stroked)


@pytest.mark.parametrize("name", KINDS)
def test_a_bead_is_as_large_as_its_kind(name, diamond):
    drawing = keys(diamond, name)[0]
    kind = bead_kind(name, OWN)
    side, end, hole = bodies(drawing)
    assert (side[2] - side[0], side[3] - side[1]) == pytest.approx((kind.length_mm, kind.width_mm), rel=0.01)
    assert hole[2] - hole[0] == pytest.approx(kind.hole_mm, rel=0.01)
    across = kind.length_mm if kind.shape == "drop" else kind.width_mm
    assert end[2] - end[0] == pytest.approx(across, rel=0.01)
    assert side[2] < end[0], "the two views stand apart"
    assert end[0] < hole[0] < hole[2] < end[2]
    assert end[1] < hole[1] < hole[3] < end[3]


def test_all_keys_of_a_pattern_are_as_wide(diamond):
    drawings = keys(diamond, *KINDS)
    assert len({round(drawing.width_mm, 6) for drawing in drawings}) == 1


@pytest.mark.parametrize("name", KINDS)
def test_nothing_lies_outside_its_box(name, diamond):
    drawing = keys(diamond, *KINDS)[KINDS.index(name)]
    bounds = BoundsPen()
    drawing.play(bounds)
    assert drawing.left <= bounds.left <= bounds.right <= drawing.left + drawing.width_mm
    assert drawing.top <= bounds.top <= bounds.bottom <= drawing.top + drawing.height_mm


def test_it_says_what_is_seen(diamond):
    drawing = keys(diamond, "round 8/0")[0]
    assert drawing.title == "Bead A: moss"
    assert all(words in drawing.description for words in ("round 8/0", "3 mm", "2.1 mm", "1.1 mm"))


def test_an_unknown_kind_has_no_key(diamond):
    assert keys(diamond, "moon dust") == []
