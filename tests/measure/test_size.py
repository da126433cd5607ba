"""Size: boxes around beads as they are turned, parts, and the drop below a finding."""

from __future__ import annotations

import math

import pytest

from sitegen.measure.size import bead_box, drop, extent, part_sizes
from sitegen.model.thread import Bead, PlacedFinding, ThreadPath, WovenPart


def bead(x: float, y: float, angle: float = 0.0, part: int = 0) -> Bead:
    """A bead 2 mm across and 1 mm long."""
    return Bead("A", part, 1, 1, x, y, angle, 2.0, 1.0, "round", "round 11/0")


@pytest.mark.parametrize(
    ("angle", "width", "height"),
    [(0, 2, 1), (90, 1, 2), (180, 2, 1), (-90, 1, 2), (45, 3 / math.sqrt(2), 3 / math.sqrt(2))],
)
def test_a_bead_is_width_by_length_turned_as_it_is(angle: float, width: float, height: float) -> None:
    left, top, right, bottom = bead_box(bead(5, 7, angle))
    assert (right - left, bottom - top) == pytest.approx((width, height))
    assert ((left + right) / 2, (top + bottom) / 2) == pytest.approx((5, 7))


def path(*findings: PlacedFinding) -> ThreadPath:
    """A row of two beads and below it a part of one."""
    beads = (bead(0, 0), bead(2, 0), bead(0, 3, part=1))
    parts = (WovenPart("Row", "ladder", 1, 1, 2), WovenPart("Fringe", "fringe", 1, 0, 2))
    return ThreadPath(beads, (), (), parts, findings)


def test_each_part_has_its_own_size() -> None:
    row, fringe = part_sizes(path())
    assert (row.name, row.beads, row.width_mm, row.height_mm) == ("Row", 2, 4, 1)
    assert (fringe.name, fringe.beads, fringe.width_mm, fringe.height_mm) == ("Fringe", 1, 2, 1)


def test_the_whole_spans_all_parts_and_nothing_spans_nothing() -> None:
    assert extent(path().beads) == (4, 4)
    assert extent(()) == (0, 0)


def test_the_drop_runs_from_the_top_of_the_finding_to_the_lowest_bead() -> None:
    """An ear wire rises 19 mm above its loop (common practice, no source)."""
    assert drop(path(PlacedFinding("ear wire", 0, 1, -1.3, "top"))) == pytest.approx(19 + 1.3 + 3.5)


@pytest.mark.parametrize(
    ("kind", "edge"), [("slide clasp", "top"), ("ear wire", "bottom"), ("unheard of", "top")]
)
def test_what_does_not_hang_has_no_drop(kind: str, edge: str) -> None:
    assert drop(path(PlacedFinding(kind, 0, 1, -1.3, edge))) is None
    assert drop(path()) is None
