"""The second piece of a mirrored pair."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from sitegen.model.source import Chart, ChartRow, Colour, Makes, Part, Pattern
from sitegen.weave.mirror import mirrored

FRINGE = """  - name: Fringe
    stitch: fringe
    hang: {from: Piece, edge: bottom}
    strands: [2D, 3D L, 4D L]
"""


def rows(pattern):
    return ["".join(letter for _, letter in row.cells) for row in pattern.parts[0].all_rows]


def test_left_and_right_are_exchanged(sample, woven):
    pattern = sample(" D L L\nD D L L\n D D L L", parts="")
    other = mirrored(pattern)
    assert rows(other) == [row[::-1] for row in rows(pattern)]
    one, two = woven(pattern), woven(other)
    middle = max(bead.x for bead in one.beads)
    assert {(round(middle - bead.x, 6), round(bead.y, 6), bead.letter) for bead in one.beads} == {
        (round(bead.x, 6), round(bead.y, 6), bead.letter) for bead in two.beads
    }
    assert [step.motion for step in one.steps] == [step.motion for step in two.steps]


def test_strands_change_sides(sample):
    other = mirrored(sample(" D L\nD D L", parts=FRINGE))
    assert ["".join(strand.letters) for strand in other.parts[1].all_strands] == ["DDDDL", "DDDL", "DD"]


def test_a_piece_that_is_its_own_mirror_image_has_no_second(sample):
    assert mirrored(sample(" D L D\nD L L D")) is None


@given(st.lists(st.lists(st.sampled_from("AB"), min_size=1, max_size=6), min_size=1, max_size=4))
def test_the_mirror_of_the_mirror_is_the_piece(letters):
    cells = [tuple((2 * place, letter) for place, letter in enumerate(row)) for row in letters]
    chart = Chart("Piece", tuple(ChartRow(row) for row in cells))
    colours = (Colour("A", "round 11/0", "a", "#111111"), Colour("B", "round 11/0", "b", "#eeeeee"))
    pattern = Pattern("p", "P", "s", Makes.ONE, 1, None, colours, (Part("Piece", "square", chart=chart),))
    once = mirrored(pattern)
    twice = mirrored(once) if once is not None else None
    if once is None:
        assert all(row == row[::-1] for row in letters if len(row) == max(map(len, letters)))
    elif twice is not None:
        assert rows(twice) == rows(pattern)
