"""Peyote against published figures."""

from __future__ import annotations

import pytest

from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.read.pattern import read_pattern
from sitegen.weave import weave

SOURCE = """---
title: Published
summary: A published count.
makes: one piece
price: free
colours:
  D: {{bead: round 11/0, name: dark, hex: "#1f4d3a"}}
parts:
  - name: Strip
    stitch: peyote
    begin: top
    repeat: {repeat}
{keys}---

```chart Strip
{chart}
```
"""
FOURTEEN = "D D D D D D D\n D D D D D D D"


def woven(chart, repeat, keys=""):
    text = SOURCE.format(chart=chart, repeat=repeat, keys=keys)
    pattern, problems = read_pattern(text, "strip.md", Shop())
    assert not problems
    path, problems = weave(pattern, Shop())
    assert not problems
    return pattern, path


def test_a_strip_of_eleven_thousand_beads():
    """14 beads across, 14 rows of them to the inch, 59 in long: 11,564 beads.

    A row of 14 across is two rows counted zig-zag, so the author's swatch holds 28 of those to the inch.
    Source: http://time2cre8.blogspot.com/2007/04/freeform-peyote-neckpiece.html [S2], exact arithmetic.
    """
    gauge = "    gauge: {beads: 14, width: 25.4 mm, rows: 28, height: 25.4 mm}\n"
    pattern, path = woven(FOURTEEN, 59 * 14, gauge)
    assert len(path.beads) == 11_564
    assert path.parts[0].rows * path.parts[0].row_pitch == pytest.approx(59 * 25.4)
    assert measure(path, pattern, Shop()).height_mm == pytest.approx(59 * 25.4, rel=0.002)


def test_rows_to_the_inch_by_computed_pitch():
    """About 14 rows to the inch in 11/0 rounds, freeform, against 12 by the diameter: within 15 %.

    Source: as above [S2]; the figure by diameter is derived (11.5-12.7) [D].
    """
    _, path = woven(FOURTEEN, 10)
    stacked = 25.4 / (2 * path.parts[0].row_pitch)
    assert 11.5 <= stacked <= 12.7
    assert stacked == pytest.approx(14, rel=0.15)


def test_columns_to_the_inch():
    """17 columns of 11/0 rounds lie in an inch [D] from 17 strung to the inch.

    Source: http://estherbeadwork.blogspot.com/2013/10/ [S2].
    """
    _, path = woven(FOURTEEN, 10)
    assert 25.4 / path.parts[0].bead_pitch == pytest.approx(17, rel=0.01)


def test_the_first_string_becomes_rows_one_and_two():
    """Rows are counted zig-zag over two neighbouring columns; an edge shows every second row.

    Sources: https://www.myworldofbeads.com/counting-peyote-rows/ [S2],
    http://www.beadwrangler.com/ask-barb-jul2000.htm [S2].
    """
    _, path = woven(FOURTEEN, 3)
    assert {path.beads[bead].row for bead in path.steps[0].picks} == {1, 2}
    left = min(bead.x for bead in path.beads)
    assert sorted(bead.row for bead in path.beads if bead.x == left) == [1, 3, 5]


def test_beads_are_passed_at_least_twice():
    """Source: https://constancescrafts.blogspot.com/2014/01 [S2]."""
    _, path = woven(FOURTEEN, 5)
    passes = [0] * len(path.beads)
    for move in path.moves:
        if move.bead >= 0:
            passes[move.bead] += 1
    assert min(passes) >= 2


def test_thread_for_a_bead_is_two_lengths():
    """Two bead lengths inside beads for each bead [D]: 3.0 mm in 11/0 rounds, without ends and turns."""
    _, path = woven(FOURTEEN, 40)
    inside = sum(path.beads[move.bead].length for move in path.moves if move.bead >= 0)
    assert inside / len(path.beads) == pytest.approx(3.0, rel=0.05)
