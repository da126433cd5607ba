"""Outlines of beads: each stays in its box, however it is turned, and looks like what it is."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.draw.pens import Outline
from sitegen.draw.shapes import CORNERS, FACETED, bead_end, bead_outline, moved, scaled
from sitegen.model.thread import Bead
from sitegen.trade.beads import bead_kind, bead_kind_names
from tests.draw.outlines import box, corners

SHAPES = sorted({kind.shape for name in bead_kind_names() if (kind := bead_kind(name))})


def bead(shape: str, angle: float = 0.0, width: float = 3.4, length: float = 2.8) -> Bead:
    return Bead("A", 0, 1, 1, 5.0, 7.0, angle, width, length, shape, "own")


def inward(one: Bead, point: tuple[float, float]) -> tuple[float, float]:
    """Across and along the hole, in halves of the bead's size."""
    turn = math.radians(one.angle)
    x, y = point[0] - one.x, point[1] - one.y
    across, along = x * math.cos(turn) - y * math.sin(turn), x * math.sin(turn) + y * math.cos(turn)
    return across / (one.width / 2), along / (one.length / 2)


def test_every_shape_of_the_trade_has_an_outline_of_its_own() -> None:
    assert set(SHAPES) == {*CORNERS, *FACETED, "drop"}
    assert len({str(corners(bead_outline(bead(shape)))) for shape in SHAPES}) == len(SHAPES)


@pytest.mark.parametrize("shape", SHAPES)
@given(st.floats(0, 360), st.floats(1, 6), st.floats(1, 6))
def test_a_bead_stays_within_its_size(shape: str, angle: float, width: float, length: float) -> None:
    one = bead(shape, angle, width, max(length, width / 2) if shape != "drop" else min(length, width))
    for across, along in (inward(one, point) for point in corners(bead_outline(one, 0.0))):
        assert abs(across) <= 1 + 1e-6
        assert abs(along) <= 1 + 1e-6


def measured(outline: Outline) -> tuple[float, float]:
    left, top, right, bottom = box(outline)
    return right - left, bottom - top


@pytest.mark.parametrize("shape", SHAPES)
def test_a_bead_is_as_large_as_it_says(shape: str) -> None:
    one = bead(shape)
    assert measured(bead_outline(one, 0.0)) == pytest.approx((one.width, one.length), rel=0.01)


@pytest.mark.parametrize("shape", SHAPES)
def test_from_the_hole_a_bead_is_as_wide_as_from_the_side(shape: str) -> None:
    one = bead(shape)
    outline, hole = bead_end(one, 0.9)
    across, tall = measured(outline)
    assert across == pytest.approx(one.length if shape == "drop" else one.width, rel=0.01)
    assert tall <= one.width + 1e-6
    assert measured(hole) == pytest.approx((0.9, 0.9), rel=0.01)


def test_an_outline_can_be_moved_and_drawn_in() -> None:
    outline = bead_outline(bead("round"), 0.0)
    assert box(moved(outline, (2.0, -1.0)))[:2] == pytest.approx((5.0 - 1.7 + 2.0, 7.0 - 1.4 - 1.0))
    assert measured(scaled(outline, 0.5)) == pytest.approx((1.7, 1.4))


def test_a_drop_hangs_by_its_neck() -> None:
    """Its hole across, TOP end at the left, as at the end of a strand: narrow above, round below."""
    one = bead("drop", 90.0)
    outline = corners(bead_outline(one, 0.0))
    top, bottom = min(y for _, y in outline), max(y for _, y in outline)
    assert (top, bottom) == (pytest.approx(7.0 - 1.7), pytest.approx(7.0 + 1.7))
    widest = max(outline, key=lambda point: point[0])
    assert widest[1] > 7.0
