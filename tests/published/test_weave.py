"""The weave against published row counts, and one piece of common practice."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import pairwise

import pytest

from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.read.pattern import read_pattern
from sitegen.weave import weave

HEADER = """---
title: Published
summary: A published count.
makes: one piece
revision: 1
price: free
thread: nylon 0.3 mm
finding: ear wire
colours:
  D: {{bead: round 11/0, name: dark, hex: "#1f4d3a"}}
parts:
  - name: Piece
    stitch: brick
    begin: {begin}
{parts}---

```chart Piece
{chart}
```
"""


def woven(chart, begin="bottom", parts=""):
    pattern, problems = read_pattern(
        HEADER.format(chart=chart, begin=begin, parts=parts), "published.md", Shop()
    )
    assert pattern is not None
    assert not problems
    path, problems = weave(pattern, Shop())
    assert path is not None
    assert not problems
    return pattern, path


def triangle(widest, narrowest):
    """Rows from the narrowest at the top to the widest, each half a bead further out."""
    return "\n".join(" " * (widest - beads) + " ".join("D" * beads) for beads in range(narrowest, widest + 1))


def rows_in_order_of_working(path):
    return list(Counter(path.beads[bead].row for step in path.steps for bead in step.picks).values())


def test_increase_rows_from_one_bead():
    """1, 2, 3, 4, 5, 6, 7: the counts of a published brick-stitch shamrock's petal.

    Source: https://www.interweave.com/article/beading/how-to-bead-shamrock-brick-stitch/ [S1].
    """
    _, path = woven(triangle(7, 1), begin="top")
    assert rows_in_order_of_working(path) == [1, 2, 3, 4, 5, 6, 7]


def test_decrease_rows_from_a_base_of_seven():
    """7, 6, 5, 4, 3, 2: each row is one bead shorter; 27 beads down to two.

    Source: http://www.angelfire.com/co2/beltana/cheyenne.html [S2], the sum derived [D].
    """
    _, path = woven(triangle(7, 2))
    assert rows_in_order_of_working(path) == [7, 6, 5, 4, 3, 2]
    assert len(path.beads) == 27


def test_a_base_of_six_gives_six_strands_from_its_holes():
    """Hung from bridges a base of six gives five strands (published); from its holes it gives six [D].

    Source: https://www.thesprucecrafts.com/brick-stitch-fringe-earrings-project-339438 [S2].
    """
    fringe = "  - name: Fringe\n    stitch: fringe\n    hang: {from: Piece, edge: bottom}\n"
    _, path = woven(triangle(6, 2), parts=f"{fringe}    strands: [5D, 5D, 5D, 5D, 5D, 5D]\n")
    assert sum(step.motion == "strand" for step in path.steps) == 6
    ladder = path.moves[: path.steps[5].past_move]
    base = [move for move in ladder if move.bead >= 0 and path.beads[move.bead].row == 1]
    bridges = {frozenset((one.bead, other.bead)) for one, other in pairwise(base) if one.bead != other.bead}
    assert len(bridges) == 5


@pytest.mark.parametrize("span", [1500.0, 1600.0, 1700.0])
def test_one_arm_span_of_thread(span):
    """Common practice, no source: one arm span (1.5 to 1.7 m) of 0.3 mm thread with 15 cm tails is used up
    by a ladder row of ten reinforced, brick rows 9 to 2, a finding and about five strands of 27 to 36 beads
    in 11/0 rounds. The shop's usual slack is calibrated on it.
    """
    hang = "    hang: {finding: ear wire, from: top}\n"
    fringe = "  - name: Fringe\n    stitch: fringe\n    hang: {from: Piece, edge: bottom}\n    turn: 3\n"
    strands = "    strands: [27D, 29D, 31D, 33D, 36D, 36D, 33D, 31D, 29D, 27D]\n"
    pattern, path = woven(triangle(10, 2), parts=f"{hang}{fringe}{strands}")
    shop = replace(Shop(), working_length_mm=span, tail_mm=150.0)
    assert 1.1 <= shop.slack <= 1.3
    first = measure(path, pattern, shop).thread.lengths[0]
    last = path.steps[first.last_step - 1]
    assert last.motion == "strand"
    assert last.row in (4, 5, 6)
