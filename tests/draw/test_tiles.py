"""Large drawings on sheets: nothing is lost, nothing larger than its room, each sheet says where it is."""

from __future__ import annotations

import random
from collections import Counter
from xml.etree import ElementTree

import pytest

from sitegen.draw.chart import chart
from sitegen.draw.colour import INK_SAVER
from sitegen.draw.cut import Box, CuttingPen, box_of
from sitegen.draw.pens import Outline, Paint, Recorder, Text, finish
from sitegen.draw.tiles import tiles
from tests.draw.pixels import drawn_outside
from tests.draw.say import SAY
from tests.weave.round_samples import path_of, piece

ROOM = (44.0, 40.0)
OVERLAP = 4.5


def cloth(stitch, wide, high):
    chance = random.Random(7)
    rows = [" ".join(chance.choice("ABC") for _ in range(wide)) for _ in range(high)]
    if stitch != "square":
        rows = [" " * (number % 2) + row for number, row in enumerate(rows)]
    pattern = piece(f"stitch: {stitch}", "\n".join(rows))
    return chart(path_of(pattern), pattern, 0, SAY)


LARGE = {stitch: cloth(stitch, 22, 30) for stitch in ("square", "peyote", "brick")}
CUT = {stitch: tiles(drawing, ROOM, OVERLAP, SAY) for stitch, drawing in LARGE.items()}


def marks(drawing):
    return {mark for name, values in drawing.calls if name == "letters" for mark in values[0]}


def beads(drawing):
    """The boxes of the beads, for those that the drawing shows whole."""
    found, kind = [], ""
    for name, values in drawing.calls:
        if name == "begin":
            kind = values[0]
        elif name == "shapes" and kind == "beads":
            found += [box_of(outline) for outline in values[0]]
    return found


@pytest.mark.parametrize("stitch", LARGE)
def test_every_bead_is_on_some_sheet_with_its_letter(stitch):
    sheets = CUT[stitch].sheets
    assert len(sheets) > 3
    assert set.union(*(marks(sheet) for sheet in sheets)) == marks(LARGE[stitch])
    for sheet in sheets:
        boxes = beads(sheet)
        assert len(boxes) == len(marks(sheet))
        whole = set(beads(LARGE[stitch]))
        assert set(boxes) <= whole


@pytest.mark.parametrize("stitch", LARGE)
def test_neighbours_share_beads_and_the_later_one_shows_them_pale(stitch):
    """Two beads wide or more is shared; the veil lies over exactly what an earlier sheet has."""
    before: set = set()
    for sheet in CUT[stitch].sheets:
        mine = set(beads(sheet))
        groups = [name for name, values in sheet.calls if name == "begin" and values[0] == "shown-before"]
        assert bool(groups) is bool(mine & before)
        if groups:
            assert len(mine & before) > 20
            at = next(
                i for i, call in enumerate(sheet.calls) if call[0] == "begin" and call[1][0] == "shown-before"
            )
            assert {box_of(outline) for outline in sheet.calls[at + 1][1][0]} == mine & before
        before |= mine


@pytest.mark.parametrize("stitch", LARGE)
def test_no_sheet_is_larger_than_its_room(stitch):
    for sheet in CUT[stitch].sheets:
        assert sheet.width_mm <= ROOM[0]
        assert sheet.height_mm <= ROOM[1]


@pytest.mark.parametrize("stitch", LARGE)
def test_rows_keep_their_numbers_on_every_sheet(stitch):
    """Each row of beads on a sheet has its number beside it, outside of the beads."""
    for sheet in CUT[stitch].sheets:
        numbers = [
            sheet.calls[at + 2][1][0]
            for at, (name, values) in enumerate(sheet.calls)
            if name == "begin" and values[0] == "row-number"
        ]
        rows = {round(mark[1], 2) for mark in marks(sheet)}
        assert {round(text.y, 2) for text in numbers} == rows
        left = min(box.left for box in beads(sheet))
        right = max(box.right for box in beads(sheet))
        assert all(text.x < left or text.x > right for text in numbers)


def test_edges_name_the_sheet_that_goes_on_there():
    """Two columns of sheets: 1 is left of 2 and above 3, and each says so."""
    sheets = CUT["square"].sheets
    named = [
        Counter(
            values[1]["sheet"] for name, values in s.calls if name == "begin" and values[0] == "next-sheet"
        )
        for s in sheets
    ]
    pairs = {(one, int(other)) for one, others in enumerate(named, 1) for other in others}
    assert pairs == {(other, one) for one, other in pairs}
    assert {1: {2, 3}, 2: {1, 4}}.items() <= {
        one: {b for a, b in pairs if a == one} for one in (1, 2)
    }.items()


def test_the_map_marks_one_sheet_of_all():
    for number, key in enumerate(CUT["brick"].keys, 1):
        fills = [values[1].fill for name, values in key.calls if name == "shapes"]
        assert len(fills) == len(CUT["brick"].sheets)
        assert [place for place, fill in enumerate(fills, 1) if fills.count(fill) == 1] == [number]


def test_what_fits_stays_one_drawing():
    whole = LARGE["square"]
    alone = tiles(whole, (whole.width_mm, whole.height_mm), OVERLAP, SAY)
    assert alone.sheets == (whole,)
    assert alone.keys == ()


def test_a_room_smaller_than_its_overlap_is_refused():
    with pytest.raises(ValueError, match="no room"):
        tiles(LARGE["square"], (12.0, 12.0), 9.0, SAY)


@pytest.mark.parametrize("stitch", LARGE)
def test_sheets_and_maps_are_whole_files_that_say_what_they_show(stitch):
    for drawing in (*CUT[stitch].sheets, *CUT[stitch].keys):
        tree = ElementTree.fromstring(drawing.svg("s"))
        title, about = tree[0], tree[1]
        assert title.tag.endswith("title")
        assert about.tag.endswith("desc")
        assert len(title.text) > 5
        assert len(about.text) > 20


def test_nothing_is_drawn_outside_of_a_sheet():
    for sheet in (CUT["peyote"].sheets[0], CUT["peyote"].sheets[-1].dyed(INK_SAVER)):
        assert drawn_outside(sheet) < 0.1


def test_long_lines_end_at_the_edge_and_large_areas_are_cut():
    pen = CuttingPen(Box(0, 0, 10, 10), 2.0)
    pen.shapes([Outline((-5, 5), ((20, 5),), closed=False)], Paint(stroke="#000000", width=0.2))
    pen.shapes(
        [Outline((-5, -5), ((5, -5), (5, 5), (-5, 5)))], Paint(fill="#000000", stroke="#000000", width=1)
    )
    line, area, edge = (values for _, values in pen.recorder.calls)
    assert line[0][0].start == (0, 5)
    assert line[0][0].segments == ((10, 5),)
    assert box_of(area[0][0]) == Box(0, 0, 5, 5)
    assert area[1].stroke is None
    assert all(not outline.closed for outline in edge[0])
    assert edge[1].fill is None


def test_a_curve_cut_at_the_edge_still_meets_it():
    """A half circle of radius 4 round the middle of the edge: cut exactly where it meets the edge."""
    reach = 4 * 4 / 3
    arc = Outline((0, 1), ((reach, 1, reach, 9, 0, 9),), closed=False)
    pen = CuttingPen(Box(2, 0, 10, 10), 1.0)
    pen.shapes([arc], Paint(stroke="#000000", width=0.1))
    (cut,) = pen.recorder.calls[0][1][0]
    points = list(cut.points())
    assert points[0][0] == pytest.approx(2)
    assert points[-1][0] == pytest.approx(2)
    assert max(x for x, _ in points) == pytest.approx(4, abs=0.05)


def test_labels_of_no_row_stay_on_their_own_sheet():
    recorder = Recorder()
    recorder.shapes([Outline((0, 0), ((90, 0), (90, 1), (0, 1)))], Paint(fill="#000000"))
    recorder.text(Text(80, 3, "tail", 2, "#000000"))
    cut = tiles(finish(recorder, "Long", "A long bar.", 0.5), (40, 40), 3, SAY)
    said = [[values[0].text for name, values in sheet.calls if name == "text"] for sheet in cut.sheets]
    assert sum("tail" in texts for texts in said) == 1
