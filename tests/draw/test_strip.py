"""Row strips: the beads in order of working, counted, with the way they are worked."""

from __future__ import annotations

import pytest

from sitegen.draw.colour import Palette
from sitegen.draw.overlap import overlaps
from sitegen.draw.pens import BoundsPen
from sitegen.draw.strip import strip
from sitegen.model.thread import Bead


def bead(letter, angle=90.0, width=1.6, length=1.3):
    return Bead(letter, 0, 1, 1, 0.0, 0.0, angle, width, length, "cylinder", "cylinder 11/0")


def made(letters, *, leftward=False, angle=90.0):
    return strip(
        [bead(letter, angle) for letter in letters],
        leftward=leftward,
        title="Strip",
        description="d",
        palette=Palette(),
    )


def lines(drawing):
    """Letters of each line from the left, top line first."""
    rows = {}
    for name, values in drawing.calls:
        if name == "letters":
            for x, y, letter in values[0]:
                rows.setdefault(y, []).append((x, letter))
    return ["".join(letter for _, letter in sorted(row)) for _, row in sorted(rows.items())]


def counts(drawing):
    return [(values[0].text, values[0].bold) for name, values in drawing.calls if name == "text"]


@pytest.mark.parametrize("letters", ["A", "ABC", "ABCDEFGHIJKLMNOPQRSTUVWXYZ" * 3])
@pytest.mark.parametrize("leftward", [False, True])
def test_every_bead_stands_once_in_order_of_working(letters, leftward):
    shown = lines(made(letters, leftward=leftward))
    assert "".join(line[::-1] if leftward else line for line in shown) == letters


def test_long_rows_are_wrapped_into_lines_of_multiples_of_five():
    shown = lines(made("AB" * 40))
    assert {len(line) for line in shown} == {20}


def test_every_fifth_bead_is_counted_and_every_tenth_boldly():
    assert counts(made("A" * 17)) == [("5", False), ("10", True), ("15", False)]
    assert [text for text, _ in counts(made("A" * 50))] == [str(n) for n in range(5, 51, 5)]


@pytest.mark.parametrize("leftward", [False, True])
def test_the_dot_is_at_the_first_bead_and_the_arrow_after_the_last(leftward):
    drawing = made("ABC", leftward=leftward)
    shapes, ends = [], False
    for name, values in drawing.calls:
        ends = values[0] == "ends" if name == "begin" else ends
        if name == "shapes" and ends:
            shapes.append(values[0][0])
    dot, arrow = shapes
    assert (dot.start[0] > arrow.start[0]) is leftward


@pytest.mark.parametrize("angle", [0.0, 90.0, 30.0])
def test_nothing_lies_over_anything_or_outside_the_box(angle):
    drawing = made("AWMQ" * 15, angle=angle)
    assert overlaps(drawing) == []
    bounds = BoundsPen()
    drawing.play(bounds)
    assert bounds.left >= drawing.left
    assert bounds.right <= drawing.left + drawing.width_mm


def test_strips_with_and_without_counts_are_equally_high():
    """So that row names beside them stand in step; the counts lie inside the box."""
    short, counted = made("AB"), made("ABABA")
    assert not counts(short)
    assert counts(counted)
    assert short.height_mm == pytest.approx(counted.height_mm, abs=0.001)
    bounds = BoundsPen()
    counted.play(bounds)
    assert bounds.top >= counted.top - 1e-9
