"""Rounds and ropes against published statements."""

from __future__ import annotations

import pytest

from sitegen.measure import measure
from sitegen.model.shop import Shop
from sitegen.model.thread import End, MoveKind
from tests.weave.round_samples import path_of, piece, rounds


def test_sixteen_stitches_of_spiral_rope():
    """16 stitches with an 11/0 core come to slightly over 1 inch.

    Source: http://mix-me-up.blogspot.com/2012/08/estimating-and-adjusting-part-2.html [S2]. Read as a rope
    begun with four core beads, so that its core has 19; slightly is taken as up to a fifth.
    """
    pattern = piece("stitch: spiral rope\nrope: {core: 4A, outer: 1B 1C 1B, stitches: 16}")
    path = path_of(pattern)
    core = [bead for bead in path.beads if bead.x == 0]
    foot, top = max(bead.mouth(End.BOTTOM)[1] for bead in core), min(bead.mouth(End.TOP)[1] for bead in core)
    inches = (foot - top) / 25.4
    assert 1.0 < inches < 1.2
    assert measure(path, pattern, Shop()).height_mm / 25.4 == pytest.approx(inches, abs=0.05)


@pytest.mark.parametrize(("below", "beads"), [(20, 24), (24, 30), (12, 18), (10, 20)])
def test_circular_brick_uses_some_bridges_twice_spread_evenly(below, beads):
    """Increases use some bridges twice, spread evenly: ways from one such bridge to the next differ by one.

    Source: https://viewer.joomag.com/shine-online-january-2017/0726832001481808685/p11 [S2].
    """
    ring = below * 2.1 / 3.1416 - 1.5
    path = path_of(rounds("circular brick", [f"{below}A", f"{beads}B"], f"around: {{ring: {ring:.1f} mm}}"))
    used: dict[int, int] = {}
    seconds = {bead for step in path.steps if step.row == 2 for bead in step.picks}
    move_row = [
        move for step in path.steps if step.row == 2 for move in path.moves[step.first_move : step.past_move]
    ]
    assert len(seconds) == beads
    for move in move_row:
        if move.kind is MoveKind.UNDER and move.bridge is not None:
            used[move.bridge.left] = used.get(move.bridge.left, 0) + 1
    assert len(used) == below  # every bridge is used, and none more than twice
    assert set(used.values()) <= {1, 2}
    twice = sorted(bridge for bridge, times in used.items() if times == 2)
    assert len(twice) == beads - below
    ways = {
        (after - bridge) % below or below for bridge, after in zip(twice, [*twice[1:], twice[0]], strict=True)
    }
    assert max(ways) - min(ways) <= 1


def test_a_peyote_tube_bead_is_a_beginners_piece():
    """A peyote tube bead fits a beginners' class of two hours [upperdublin S2].

    A small one of 12 columns and 22 rounds in 11/0 cylinders is held against it for a practised maker.
    """
    chart = "\n".join(" " * (row % 2) + "A A A A A A" for row in range(22))
    pattern = piece("stitch: tubular peyote", chart)
    measures = measure(path_of(pattern), pattern, Shop())
    assert measures.minutes_low <= 120
