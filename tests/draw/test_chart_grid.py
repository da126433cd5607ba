"""Every chart, drawn to pixels and read again at the middles of its beads, gives back its source.

The colours are far apart and the letters left out, so that what is read is the beads' own fill.
"""

from __future__ import annotations

import math
import re
from collections import Counter
from dataclasses import replace
from itertools import groupby
from pathlib import Path
from xml.etree import ElementTree

import pytest

from sitegen.draw.chart import chart
from sitegen.draw.colour import INK_SAVER, Dye, Palette, channels, contrast
from sitegen.draw.cut import box_of
from sitegen.model.shop import Shop
from sitegen.read.sources import load_pattern
from sitegen.weave import STITCHES, weave
from tests.demo import DEMO_SHOP
from tests.draw.pixels import drawn_outside, picture
from tests.draw.say import SAY

DEMOS = Path(__file__).parents[2] / "content" / "patterns"
STYLES = Path(__file__).parents[2] / "themes" / "linen" / "styles"
GROUNDS = [
    "#ffffff",
    *re.findall(r"--(?:paper|plate): (#[0-9a-f]{6})", (STYLES / "site.css").read_text(encoding="utf-8")),
]
"""What charts are shown on: white paper, and the page and its plates on screen."""
FAR_APART = ("#e6194b", "#3cb44b", "#ffe119", "#4363d8", "#f58231", "#911eb4", "#42d4f4", "#f032e6")
SPREAD = ("herringbone", "netting")
"""Stitches whose text spreads what lies close, or the other way about: read without blanks."""


def load(file):
    """A demo, read and woven."""
    pattern = load_pattern(file, DEMO_SHOP).patterns[0]
    path, problems = weave(pattern, Shop())
    assert path is not None, problems
    return pattern, path


PIECES = {file.stem: load(file) for file in sorted(DEMOS.glob("*.md")) if "." not in file.stem}
PARTS = [
    pytest.param(pattern, path, index, id=f"{name}-{part.stitch}".replace(" ", "-"))
    for name, (pattern, path) in PIECES.items()
    for index, part in enumerate(pattern.parts)
    if part.stitch != "none"
]


def sampled(pattern, path, index):
    """(x, y, letter) of each bead in sight, its letter told by the colour at its middle; and the drawing."""
    drawing = chart(path, pattern, index, SAY)
    letters = [colour.letter for colour in pattern.colours]
    colours = dict(zip(letters, FAR_APART, strict=False))
    assert len(colours) == len(letters)
    bare = replace(
        drawing.dyed(Palette(colours)), calls=tuple(call for call in drawing.calls if call[0] != "letters")
    )
    shown = picture(bare)
    share = shown.width / drawing.width_mm
    found = []
    for x, y, drawn in in_sight(drawing):
        seen = shown.getpixel((int((x - drawing.left) * share), int((y - drawing.top) * share)))
        letter = next(
            (one for one, colour in colours.items() if math.dist(seen, channels(colour)) < 12), f"{seen}"
        )
        assert letter == drawn
        found.append((x, y, letter))
    return found, drawing


def in_sight(drawing):
    """The letters drawn, but for those that a later bead covers."""
    marks = []
    for name, values in drawing.calls:
        if name == "letters":
            marks += values[0]
        elif name == "shapes" and values[1].fill is not None:
            boxes = [box_of(outline) for outline in values[0]]
            marks = [mark for mark in marks if not any(box.has(mark[0], mark[1]) for box in boxes)]
    return marks


def levels(values, apart=0.3):
    """Value -> its rank, values closer than `apart` being one."""
    ranks, last = {}, None
    for value in sorted(values):
        rank = 0 if last is None else ranks[last] + (value - last > apart)
        ranks[value] = rank
        last = value
    return ranks


def as_text(cells):
    """(column, row, letter) -> lines of text; columns and rows by rank."""
    columns, rows = levels(c for c, _, _ in cells), levels(r for _, r, _ in cells)
    grid = {}
    for column, row, letter in cells:
        at = rows[row], columns[column]
        assert at not in grid
        grid[at] = letter
    return [
        "".join(grid.get((row, column), " ") for column in range(max(columns.values()) + 1)).rstrip()
        for row in range(max(rows.values()) + 1)
    ]


def source_text(part):
    rows = part.all_rows
    return as_text([(column, line, letter) for line, row in enumerate(rows) for column, letter in row.cells])


def labels(drawing):
    """Number -> x of the numbers that stand beside strands."""
    texts = [values[0] for name, values in drawing.calls if name == "text"]
    return {int(text.text): text.x for text in texts if text.text.isdigit() and text.anchor == "middle"}


def by_strand(found, drawing):
    """The sampled beads of each strand, from the leftmost."""
    places = sorted(labels(drawing).values())
    strands = [[] for _ in places]
    for bead in found:
        nearest = min(range(len(places)), key=lambda index: abs(places[index] - bead[0]))
        strands[nearest].append(bead)
    return strands


def test_every_stitch_is_among_the_pieces():
    assert {part.stitch for pattern, _ in PIECES.values() for part in pattern.parts} == set(STITCHES)


def those(wanted):
    """The parts for which wanted(part, woven part)."""
    return [
        one for one in PARTS if wanted(one.values[0].parts[one.values[2]], one.values[1].parts[one.values[2]])
    ]


GRIDS = those(lambda part, woven: part.chart and woven.lines != "turns")
CIRCLES = [one for one in GRIDS if "circular" in one.id]
FLAT = [one for one in GRIDS if one not in CIRCLES]


@pytest.mark.parametrize(("pattern", "path", "index"), FLAT)
def test_a_cloth_reads_like_its_source(pattern, path, index):
    found, _ = sampled(pattern, path, index)
    assert len(found) == sum(bead.part == index for bead in path.beads)
    drawn, written = as_text(found), source_text(pattern.parts[index])
    if pattern.parts[index].stitch in SPREAD:
        drawn, written = ([line.replace(" ", "") for line in text] for text in (drawn, written))
    assert drawn == written


@pytest.mark.parametrize(("pattern", "path", "index"), CIRCLES)
def test_a_circle_reads_clockwise_like_its_source(pattern, path, index):
    """Each round from its bold bead on; rounds told by how far out they lie."""
    found, drawing = sampled(pattern, path, index)
    calls = drawing.calls[[call[1][:1] for call in drawing.calls].index(("first-beads",)) + 1]
    boxes = [box_of(outline) for outline in calls[1][0]]
    rings = levels((math.hypot(x, y) for x, y, _ in found), apart=0.05)
    written = [[letter for _, letter in row.cells] for row in pattern.parts[index].all_rows]
    read = []
    for _, ring in groupby(
        sorted(found, key=lambda b: math.hypot(b[0], b[1])), lambda b: rings[math.hypot(b[0], b[1])]
    ):
        beads = sorted(ring, key=lambda bead: math.atan2(bead[1], bead[0]))
        first = next(i for i, bead in enumerate(beads) if any(box.has(*bead[:2]) for box in boxes))
        read.append([letter for _, _, letter in beads[first:] + beads[:first]])
    assert read in (written, written[::-1])


HUNG = those(lambda part, woven: woven.lines in ("strands", "loops"))
BRANCHED = [one for one in HUNG if "branched" in one.id]
STRANDS = [one for one in HUNG if one not in BRANCHED]


@pytest.mark.parametrize(("pattern", "path", "index"), STRANDS)
def test_strands_read_like_their_words(pattern, path, index):
    """Straight strands down, loops from one side to the other; where beads cross or branch, by number."""
    found, drawing = sampled(pattern, path, index)
    part = pattern.parts[index]
    written = ["".join(strand.letters) for strand in part.all_strands]
    for beads, word in zip(by_strand(found, drawing), written, strict=True):
        across = "".join(letter for _, _, letter in sorted(beads))
        down = "".join(letter for _, _, letter in sorted(beads, key=lambda bead: bead[1]))
        if part.stitch == "twisted fringe":  # legs cover each other
            assert not Counter(down) - Counter(word)
            assert len(down) > len(word) / 2
        elif path.parts[index].lines == "loops":
            assert across in (word, word[::-1])
        elif len({round(bead[0], 1) for bead in beads}) == 1:
            assert down == word
        else:
            assert Counter(down) == Counter(word)


@pytest.mark.parametrize(("pattern", "path", "index"), BRANCHED)
def test_branched_strands_read_like_their_words(pattern, path, index):
    """Down the stems; and as many of each letter in all as the words have."""
    found, drawing = sampled(pattern, path, index)
    strands = pattern.parts[index].all_strands
    for x, strand in zip(sorted(labels(drawing).values()), strands, strict=True):
        stem = "".join(letter for at, _, letter in sorted(found, key=lambda b: b[1]) if abs(at - x) < 0.1)
        aside = {place for first, past in strand.branches for place in range(first, past)}
        assert stem == "".join(one for place, one in enumerate(strand.letters) if place not in aside)
    assert Counter(letter for *_, letter in found) == Counter(
        one for strand in strands for one in strand.letters
    )


LINES = those(lambda part, woven: woven.lines in ("edging", "string"))


@pytest.mark.parametrize(("pattern", "path", "index"), LINES)
def test_one_line_reads_like_its_words(pattern, path, index):
    found, _ = sampled(pattern, path, index)
    beads = [bead for bead in path.beads if bead.part == index]
    if path.parts[index].lines == "string":  # round a ring, from the clasp at its top
        found.sort(key=lambda bead: math.atan2(bead[0], bead[1]))
    else:
        found.sort()
    read = "".join(letter for _, _, letter in found)
    written = "".join(letter for strand in pattern.parts[index].all_strands for letter in strand.letters)
    if pattern.parts[index].stitch == "picot edge":  # neighbours share a bead
        assert Counter(read) == Counter(bead.letter for bead in beads)
        assert "".join(letter for letter in read if letter in set(written)) == read
    else:
        assert read in (written, written[::-1], (written * len(read))[: len(read)])


def test_a_rope_shows_its_first_stitches():
    pattern, path = PIECES["bramble-rope"]
    found, _ = sampled(pattern, path, 0)
    rope = pattern.parts[0].rope
    rows = [
        [letter for _, _, letter in sorted(row, reverse=True)]
        for _, row in groupby(sorted(found, key=lambda b: -b[1]), lambda b: round(b[1], 2))
    ]
    core = len(rope.core.letters)
    assert [row[0] for row in rows[:core]] == list(rope.core.letters)
    assert all(row[1:] == list(rope.outer.letters) for row in rows[core - 1 :])


@pytest.mark.parametrize(("pattern", "path", "index"), PARTS)
def test_a_chart_can_be_read_in_colour_and_in_black_and_white(pattern, path, index):
    """Contrast as in WCAG 2.2: 4.5:1 for letters (1.4.3), 3:1 for outlines (1.4.11), on every ground."""
    drawing = chart(path, pattern, index, SAY)
    for shown in (drawing, drawing.dyed(INK_SAVER)):
        used = {mark[2] for name, values in shown.calls if name == "letters" for mark in values[0]}
        assert used == {bead.letter for bead in path.beads if bead.part == index}
        assert all(contrast(shown.palette.ink(one), shown.palette.fill(one)) >= 4.5 for one in used)
        edges = {
            values[1].stroke
            for name, values in shown.calls
            if name == "shapes" and isinstance(values[1].fill, Dye)
        }
        assert edges
        assert all(contrast(edge, ground) >= 3 for edge in edges for ground in GROUNDS)


@pytest.mark.parametrize(("pattern", "path", "index"), PARTS)
def test_a_chart_is_a_whole_file_in_its_box_that_says_what_it_shows(pattern, path, index):
    drawing = chart(path, pattern, index, SAY)
    title, about = list(ElementTree.fromstring(drawing.svg("c")))[:2]
    part = pattern.parts[index]
    assert part.name in title.text
    assert part.stitch in about.text
    assert str(sum(bead.part == index for bead in path.beads)) in about.text
    assert drawn_outside(drawing) < 0.1


def test_every_bead_of_a_chart_has_a_letter_that_tells_it_in_grey():
    """As many letters as beads, and as many different ones as colours; fewer where legs cover each other."""
    for pattern, path in PIECES.values():
        for index, part in enumerate(pattern.parts):
            if part.stitch in ("spiral rope", "none"):
                continue
            drawing = chart(path, pattern, index, SAY)
            marks = [mark[2] for name, values in drawing.calls if name == "letters" for mark in values[0]]
            beads = Counter(bead.letter for bead in path.beads if bead.part == index)
            if part.stitch == "twisted fringe":
                assert not Counter(marks) - beads
                assert len(marks) > beads.total() / 2
                assert set(marks) == set(beads)
            else:
                assert Counter(marks) == beads
