"""Keys of round work: `rounds`, `around` and `rope`."""

from __future__ import annotations

import pytest

from tests.weave.round_samples import piece, rounds


def test_a_rope_spells_out_its_stitches():
    part = piece("stitch: spiral rope\nrope: {core: A 2B, outer: C E, stitches: 5}").parts[0]
    rows = ["".join(letter for _, letter in row.cells) for row in part.all_rows]
    assert rows == ["ABBCE", "ACE", "BCE", "BCE", "ACE"]
    assert part.rope is not None
    assert part.rope.stitches == 5


def test_each_bead_of_a_rope_knows_its_letter():
    part = piece("stitch: spiral rope\nrope: {core: A 2B, outer: C E, stitches: 3}").parts[0]
    line = "    rope: {core: A 2B, outer: C E, stitches: 3}"
    row = part.all_rows[1]
    assert [line[row.spot(cell).column - 1] for cell in range(3)] == ["A", "C", "E"]


def test_rounds_are_rows_from_the_middle_outward():
    part = rounds("circular brick", ["3(A B)", "8C"], "around: {ring: 3 mm}").parts[0]
    assert ["".join(letter for _, letter in row.cells) for row in part.all_rows] == ["ABABAB", "CCCCCCCC"]
    assert part.around is not None
    assert part.around.ring_mm == pytest.approx(3.0)
