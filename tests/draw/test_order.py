"""Numbers in step drawings: each beside its own bead, a bridge's beyond it, none missing."""

from __future__ import annotations

import math

import pytest

from sitegen.draw.colour import INK
from sitegen.draw.order import draw_order
from sitegen.draw.overlap import BEADS
from sitegen.draw.pens import Outline, Paint, Recorder
from sitegen.draw.route import Mark

UP, DOWN = (0.0, -1.0), (0.0, 1.0)


def bead(x, y):
    """A square of 1.6 mm."""
    corners = ((x + 0.8, y - 0.8), (x + 0.8, y + 0.8), (x - 0.8, y + 0.8))
    return Outline((x - 0.8, y - 0.8), corners, closed=True)


def into(number, x, y, heading, lane=0.0):
    """The needle goes into a bead of 1.6 mm at (x, y)."""
    at, leave = (x + lane, y - 0.8 * heading[1]), (x + lane, y + 0.8 * heading[1])
    return Mark(number, at, heading, turns=True, leave=leave, bead=(x, y))


def under(number, x, y, heading):
    return Mark(number, (x, y), heading, turns=True, leave=(x, y))


def placed(marks, kind="beads-there", beads=()):
    """Number -> its place."""
    recorder = Recorder()
    recorder.begin(kind, {})
    recorder.shapes([bead(*at) for at in beads], Paint(fill="#ffffff"))
    recorder.end()
    draw_order(recorder, marks, 1.0)
    labels = [values[0] for name, values in recorder.calls if name == "text"]
    return {int(label.text): (label.x, label.y) for label in labels}


def test_a_bridge_has_its_number_beyond_it_and_the_beads_above_have_theirs_beside_them():
    """Down one bead, under the bridge beneath it, up the same bead, as in a row of brick stitch."""
    marks = [
        into(1, 0.0, 0.0, DOWN, -0.5),
        under(2, 0.0, 1.0, DOWN),
        into(3, 0.0, 0.0, UP, 0.5),
    ]
    spots = placed(marks, "beads-new", [(0.0, 0.0)])
    assert spots[2][1] > 1.0
    assert spots[1][1] < 1.0
    assert spots[3][1] < 1.0


def test_a_number_keeps_off_a_neighbour_that_it_does_not_name():
    spots = placed([into(1, 0.0, 0.0, UP)], beads=[(0.0, 0.0), (1.7, 0.0), (1.7, 1.7)])
    assert not any(math.dist(spots[1], other) < 1.0 for other in [(1.7, 0.0), (1.7, 1.7)])


def test_numbers_side_by_side_do_not_read_as_one():
    spots = placed([into(number, 0.0, 0.0, UP) for number in range(1, 7)], beads=[(0.0, 0.0)])
    assert len(spots) == 6
    for one, (x, y) in spots.items():
        for other, (u, v) in spots.items():
            assert one == other or abs(y - v) > 0.6 or abs(x - u) > 0.9


@pytest.mark.parametrize("kind", BEADS)
def test_a_way_of_ten_places_is_numbered_whole(kind):
    marks = [into(number, number * 1.7, 0.0, UP) for number in range(1, 11)]
    assert set(placed(marks, kind, [(number * 1.7, 0.0) for number in range(1, 11)])) == set(range(1, 11))


def crowded(letter_at=()):
    """Thread on all sides of the bridge at (0, 0), 3 mm far, and letters."""
    recorder = Recorder()
    recorder.begin("thread-line", {})
    lines = [Outline((-3.0, step * 0.4), ((3.0, step * 0.4),), closed=False) for step in range(-7, 8)]
    recorder.shapes(lines, Paint(stroke="#b0122b", width=0.2))
    recorder.end()
    recorder.begin("letters", {})
    recorder.letters([(x, y, "A") for x, y in letter_at], 1.0)
    recorder.end()
    draw_order(recorder, [under(1, 0.0, 0.0, DOWN)], 1.0)
    return recorder.calls


def test_where_nothing_near_is_free_a_line_leads_to_the_number():
    calls = crowded()
    (label,) = [values[0] for name, values in calls if name == "text"]
    assert max(abs(label.x), abs(label.y)) > 3.0
    (leader,) = [values[0][0] for name, values in calls if name == "shapes" and values[1].stroke == INK]
    assert leader.start == (0.0, 0.0)
    assert math.dist(leader.segments[-1], (label.x, label.y)) < 0.6


def test_that_line_crosses_no_letter_and_where_it_would_there_is_no_number():
    """Letters stand all round the place."""
    ring = [(1.5 * math.cos(turn / 9 * math.pi), 1.5 * math.sin(turn / 9 * math.pi)) for turn in range(18)]
    assert not [values for name, values in crowded(ring) if name == "text"]
