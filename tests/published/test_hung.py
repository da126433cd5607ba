"""Fringe and strings against published counts and lengths."""

from __future__ import annotations

from collections import Counter

import pytest

from sitegen.measure import measure
from sitegen.measure.thread import move_lengths
from sitegen.model.shop import Shop
from sitegen.read.pattern import read_pattern
from sitegen.weave import weave

HEADER = """---
title: Published
summary: A published count.
makes: one piece
price: free
thread: {thread}
colours:
{colours}parts:
{parts}---
{chart}"""
TRIANGLE = "\n```chart Piece\n    A A\n   A A A\n  A A A A\n A A A A A\nA A A A A A\n```\n"


def woven(parts, bead="round 11/0", letters="A", chart=""):
    colours = "".join(f'  {letter}: {{bead: {bead}, name: n, hex: "#112233"}}\n' for letter in letters)
    text = HEADER.format(thread="nylon 0.2 mm", colours=colours, parts=parts, chart=chart)
    pattern, problems = read_pattern(text, "published.md", Shop())
    assert pattern is not None
    assert not problems
    path, problems = weave(pattern, Shop())
    assert path is not None, problems
    return pattern, path


def test_a_base_of_six_gives_five_strands_from_its_bridges():
    """Source: https://www.thesprucecrafts.com/brick-stitch-fringe-earrings-project-339438 [S2]."""
    parts = (
        "  - {name: Piece, stitch: brick}\n"
        "  - {name: Fringe, stitch: fringe, strands: each 9A,"
        " hang: {from: Piece, edge: bottom, at: bridges}}\n"
    )
    _, path = woven(parts, chart=TRIANGLE)
    strands = [step for step in path.steps if step.motion == "strand"]
    assert len(strands) == 5
    bridges = [
        {move.bridge for move in path.moves[s.first_move : s.past_move] if move.bridge} for s in strands
    ]
    assert all(len(bridge) == 1 for bridge in bridges)
    assert len(set.union(*bridges)) == 5


MAPLE = "7A 1B 1C 6A 1E 1C 1E 1B 4C 1F 4C"


def maple(strands):
    ladder = "\n```chart Piece\n" + " ".join("A" * strands) + "\n```\n"
    parts = (
        "  - {name: Piece, stitch: ladder}\n"
        "  - {name: Leaf, stitch: fringe, turn: 9, hang: {from: Piece, edge: bottom}, "
        f"strands: each {MAPLE}}}\n"
    )
    return woven(parts, bead="cylinder 11/0", letters="ABCEF", chart=ladder)


def test_a_published_strand_with_a_drop_in_a_loop():
    """13 A, 2 B, 10 C, 2 E, 1 F, 28 beads; the drop hangs in a loop of 4 + 1 + 4 beads.

    Source: http://beadwork.about.com/od/beadedamuletbags/tp/Maple-Leaf-Amulet-Bag-Fringe-Pattern.htm [S2].
    """
    _, path = maple(2)
    strand = [path.beads[bead] for step in path.steps if step.motion == "strand" for bead in step.picks][:28]
    assert Counter(bead.letter for bead in strand) == {"A": 13, "B": 2, "C": 10, "E": 2, "F": 1}
    passes = Counter(move.bead for move in path.moves)
    loop = [path.beads[index] for index, count in passes.items() if index >= 0 and count == 1]
    assert Counter((bead.row, bead.letter) for bead in loop) == {
        (row, letter): count for row in (1, 2) for letter, count in (("C", 8), ("F", 1))
    }


def test_twenty_nine_such_strands():
    """58 E and 29 F, as the same source lists them [S2]."""
    pattern, path = maple(29)
    counts = {line.letter: line.each for line in measure(path, pattern, Shop()).beads}
    assert (counts["E"], counts["F"]) == (58, 29)


@pytest.mark.parametrize(("bead", "each"), [("cylinder 11/0", 2.6), ("round 11/0", 3.0)])
def test_a_strand_takes_thread_twice_its_length(bead, each):
    """2.6 mm a bead in cylinder 11/0 and 3.0 mm in round 11/0, worked out in the trade notes [D]: twice the
    bead's length, [thebeadgallery S2] and [esther S2]. The few beads of the turn are passed once."""
    parts = (
        "  - {name: Piece, stitch: ladder}\n"
        "  - {name: Fringe, stitch: fringe, hang: {from: Piece, edge: bottom}, strands: each 100A}\n"
    )
    _, path = woven(parts, bead=bead, chart="\n```chart Piece\nA A\n```\n")
    lengths = move_lengths(path, 0.2)
    for step in path.steps:
        if step.motion == "strand":
            used = sum(lengths[step.first_move : step.past_move])
            assert used / len(step.picks) == pytest.approx(each, rel=0.05)


@pytest.mark.parametrize(
    ("bead", "beads", "inches"), [("round 11/0", 17, 1), ("round 11/0", 360, 21), ("round 8/0", 11, 1)]
)
def test_strung_lengths(bead, beads, inches):
    """17 of 11/0 and 11 of 8/0 to the inch [esther S2]; a hank's strand of 360, 4,320 in twelve
    [beadinglife S2], is 21 in at that rate [D]. The tolerance is the trade notes' own."""
    parts = f"  - {{name: String, stitch: strung, clasp: toggle clasp, strands: [{beads}A]}}\n"
    _, path = woven(parts, bead=bead)
    assert path.parts[0].strung_mm == pytest.approx(25.4 * inches, rel=0.15)
