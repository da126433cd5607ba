"""Square stitch and loom work against published counts and sizes."""

from __future__ import annotations

from collections import Counter

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
thread: {thread}
colours:
  A: {{bead: cylinder 11/0, name: dark, hex: "#1f4d3a"}}
  B: {{bead: cylinder 11/0, name: light, hex: "#c9d6a3"}}
parts:
  - name: Piece
    stitch: {stitch}
---

```chart Piece
{chart}
```
"""


def woven(stitch, rows, thread="nylon 0.15 mm"):
    text = HEADER.format(stitch=stitch, chart="\n".join(rows), thread=thread)
    pattern, problems = read_pattern(text, "published.md", Shop())
    assert pattern is not None
    assert not problems
    path, problems = weave(pattern, Shop())
    assert path is not None
    assert not problems
    return path, measure(path, pattern, Shop())


def checkerboard(across, rows):
    return ["".join("AB"[(row + place) % 2] for place in range(across)) for row in range(rows)]


def test_nine_beads_across_need_ten_warps():
    """Sources: http://kingsmerecrafts.info/page82.html [S2]; Stanley-Millner, Authentic American Indian
    Beadwork, at https://litark.com as book 238736 [S2].
    """
    path, measures = woven("loom", ["ABABABABA"] * 3)
    assert len(path.warps) == 10
    assert measures.warps[0].count == 10


@pytest.mark.parametrize("thread", ["nylon 0.10 mm", "nylon 0.15 mm", "nylon 0.20 mm"])
def test_eighteen_cylinders_across_a_loom_are_an_inch_wide(thread):
    """18 to the inch, within 8 %, thread unnamed. Source: http://kingsmerecrafts.info/page82.html [S2]."""
    _, measures = woven("loom", checkerboard(18, 4), thread)
    assert measures.width_mm == pytest.approx(25.4, rel=0.08)


def test_five_square_stitch_panels():
    """8 x 8, two of 4 x 8 and two of 3 x 8, checkered: 176 beads, 88 of each colour.

    Source: https://facetjewelry.com/stitching/projects/2017/02/checkerboard-heart-bracelet [S1].
    """
    letters = Counter()
    for across, rows in ((8, 8), (4, 8), (4, 8), (3, 8), (3, 8)):
        path, _ = woven("square", checkerboard(across, rows))
        letters.update(bead.letter for bead in path.beads)
    assert letters.total() == 176
    assert letters == {"A": 88, "B": 88}


def test_square_stitch_passes_each_bead_twice_as_it_is_sewn():
    """Source: https://marilyngardiner.com/make-jewellery/free-tutorials/marching-cubes-bracelet/ [S2]."""
    path, _ = woven("square", checkerboard(6, 4))
    sewn = [step for step in path.steps if step.motion in ("square-first", "square-next")]
    assert len(sewn) == 18
    for step in sewn:
        moves = path.moves[step.first_move : step.past_move]
        assert [move.bead for move in moves].count(step.picks[0]) == 2
