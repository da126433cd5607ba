"""Rounds, tubes and ropes: where beads lie, and how often the thread goes through each.

The mechanics are stated in `weave/brick_round.py`, `peyote_round.py`, `tube.py` and `spiral_rope.py`.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from sitegen.model.shop import Shop
from sitegen.model.thread import Bridge, End, MoveKind
from sitegen.trade.rounds import brick_rounds, gaps, peyote_rounds
from sitegen.weave.brick_round import spread
from sitegen.weave.needle import replay
from tests.weave.round_samples import passes_of, path_of, piece, rounds, staggered

RING = "around: {ring: 12 mm}"
PEYOTE = staggered(["AABAB", "BBBAA", "ABABA", "BABAB"])


@pytest.mark.parametrize("beads", [12, 20, 31])
def test_a_round_on_a_ring(beads):
    """4 for the first bead, which closes the round, 3 for the second, 2 for each other: 2m + 3 in all."""
    path = path_of(rounds("circular brick", [f"{beads}A"], f"around: {{ring: {beads * 0.6:.1f} mm}}"))
    assert passes_of(path, 1) == [4, 3, *[2] * (beads - 2)]
    loops = [move for move in path.moves if move.kind is MoveKind.LOOP]
    assert len(loops) == beads
    assert len({move.at for move in loops}) == beads


def test_holes_of_circular_brick_point_to_the_middle_and_of_peyote_along_the_circle():
    brick = path_of(rounds("circular brick", ["20A", "24B"], RING))
    for bead in brick.beads:
        outer, inner = bead.mouth(End.TOP), bead.mouth(End.BOTTOM)
        assert math.hypot(*outer) - math.hypot(*inner) == pytest.approx(bead.length)
    peyote = path_of(rounds("circular peyote", ["3A", "6B", "6A"]))
    for bead in peyote.beads:
        assert math.hypot(*bead.mouth(End.TOP)) == pytest.approx(math.hypot(*bead.mouth(End.BOTTOM)))


def test_rounds_grow_by_the_row_pitch():
    path = path_of(rounds("circular brick", ["20A", "24B", "28A"], RING))
    radii = sorted({round(math.hypot(bead.x, bead.y), 6) for bead in path.beads})
    assert radii == pytest.approx([6.75, 8.25, 9.75])  # 12 mm across, then 1.5 mm a round


def test_the_last_round_begins_at_the_top():
    path = path_of(rounds("circular brick", ["20A", "24B"], RING))
    last = [bead for bead in path.beads if bead.row == 2]
    assert last[0].x == pytest.approx(-last[-1].x)
    assert last[0].x > 0
    assert last[0].y == pytest.approx(min(bead.y for bead in last))


def test_a_strung_centre_is_gone_through_twice_and_bears_a_brick_round():
    path = path_of(rounds("circular brick", ["6A", "9B"]))
    assert passes_of(path, 1) == [3, 2, 2, 2, 2, 2]
    assert passes_of(path, 2) == [4, 3, *[2] * 7]


@pytest.mark.parametrize(("below", "beads"), [(6, 6), (6, 9), (20, 24), (7, 14), (9, 5), (12, 6)])
def test_bridges_are_spread_evenly(below, beads):
    on = spread(below, beads)
    assert len(on) == beads
    assert on[0] == 0
    assert on[-1] <= below - 1
    uses = [on.count(bridge) for bridge in range(below)]
    assert max(uses) - min(uses) <= 1


@pytest.mark.parametrize(("below", "beads"), [(3, 3), (3, 6), (6, 9), (12, 17)])
def test_gaps_get_one_or_two_beads(below, beads):
    assert sum(gaps(below, beads)) == beads
    assert set(gaps(below, beads)) <= {1, 2}


def test_circular_peyote_passes():
    """2 for each bead but a round's first, which is stepped up through; the last round by going round it."""
    path = path_of(rounds("circular peyote", ["4A", "8B", "8A"]))
    assert passes_of(path, 1) == [4, 3, 3, 3]
    assert passes_of(path, 2) == [4, *[3] * 7]  # 2, and once more when the edge is made firm
    assert passes_of(path, 3) == [3, *[2] * 7]


def test_tubular_peyote_passes_and_size():
    path = path_of(piece("stitch: tubular peyote", PEYOTE))
    assert passes_of(path, 4) == [3, 2, 2, 2, 2]
    assert passes_of(path, 3) == [4, 3, 3, 3, 3]
    part = path.parts[0]
    assert part.around_mm == pytest.approx(10 * 1.5)
    assert part.thick_mm == pytest.approx(15 / math.pi + 2.1)


def test_the_step_up_moves_the_beginning_on_by_one_place():
    path = path_of(piece("stitch: tubular peyote", staggered(["AAAAA"] * 6)))
    first = {}
    for step in path.steps:
        for pick in step.picks:
            first.setdefault(path.beads[pick].row, path.beads[pick].x)
    steps = [(first[row + 1] - first[row]) % path.parts[0].around_mm for row in range(3, 6)]
    assert steps == pytest.approx([1.5] * 3)


def test_tubular_brick_and_herringbone_passes():
    brick = path_of(piece("stitch: tubular brick", PEYOTE))
    assert passes_of(brick, 4) == [4, 3, 2, 2, 2]
    herringbone = path_of(piece("stitch: tubular herringbone", "AABB\nABAB\nBBAA"))
    assert passes_of(herringbone, 2) == [3, 2, 2, 2]
    assert passes_of(herringbone, 3) == [3, 2, 2, 2]  # made firm by going round once more


def test_a_spiral_rope():
    """A core bead: picked up, and gone through as often as a stitch has core beads. An outer bead: once."""
    path = path_of(piece("stitch: spiral rope\nrope: {core: 4A, outer: 1B 1C 1B, stitches: 20}"))
    passes = [sum(move.bead == bead for move in path.moves) for bead in range(len(path.beads))]
    core = [count for bead, count in zip(path.beads, passes, strict=True) if bead.x == 0]
    assert core == [2, 3, 4, *[5] * 17, 4, 3, 2]
    assert {count for bead, count in zip(path.beads, passes, strict=True) if bead.x} == {1}


@pytest.mark.parametrize("stitch", ["circular brick", "tubular brick"])
def test_a_finding_hangs_where_the_last_round_closes(stitch):
    keys = f"stitch: {stitch}\nhang: {{finding: jump ring, from: top}}"
    chart = "" if stitch == "circular brick" else PEYOTE
    words = "\nrounds: [20A, 24A]\naround: {ring: 12 mm}" if not chart else ""
    path = path_of(piece(keys + words, chart))
    loops = [move for move in path.moves if move.kind is MoveKind.LOOP and move.at is None]
    assert len(loops) == Shop().finding_passes
    assert path.findings[-1].y < min(
        bead.y for bead in path.beads if bead.row == max(b.row for b in path.beads)
    )


def test_the_needle_objects_to_a_bridge_on_the_far_side():
    """A bridge that lies, but out of reach, is bare thread; one that does not lie at all is no bridge."""
    pattern = rounds("circular brick", ["20A", "24B"], RING)
    path = path_of(pattern)
    number, move = next((n, m) for n, m in enumerate(path.moves) if m.kind is MoveKind.UNDER)
    for bridge, code in (
        (Bridge(9, 10, End.TOP), "path-bare-thread"),
        (Bridge(0, 5, End.TOP), "path-no-bridge"),
    ):
        moves = (*path.moves[:number], replace(move, bridge=bridge), *path.moves[number + 1 :])
        assert code in {problem.code for problem in replay(replace(path, moves=moves), pattern)}


def test_the_needle_objects_to_a_place_off_the_ring():
    pattern = rounds("circular brick", ["20A"], RING)
    path = path_of(pattern)
    moves = tuple(replace(m, at=(0.0, -5.0)) if m.kind is MoveKind.LOOP else m for m in path.moves)
    assert "path-bare-thread" in {problem.code for problem in replay(replace(path, moves=moves), pattern)}


@pytest.mark.parametrize(
    "pattern",
    [
        piece("stitch: tubular peyote", PEYOTE),
        piece("stitch: spiral rope\nrope: {core: 2A 2B, outer: 1B 1C 1A, stitches: 9}"),
        rounds("circular peyote", ["3A", "3(A B)"]),
    ],
    ids=["tube", "rope", "rounds"],
)
def test_the_needle_reads_what_lies(pattern):
    """Two beads changed for each other are found, though every count stays the same."""
    path = path_of(pattern)
    one = next(n for n, bead in enumerate(path.beads) if bead.letter == "A")
    other = next(n for n, bead in enumerate(path.beads) if bead.letter == "B")
    beads = list(path.beads)
    beads[one], beads[other] = replace(beads[one], letter="B"), replace(beads[other], letter="A")
    codes = {problem.code for problem in replay(replace(path, beads=tuple(beads)), pattern)}
    assert codes == {"path-unlike-chart"}


def test_how_well_rounds_fit():
    """A ring of 12 mm: 20 beads of 2.1 mm take 42 of the 42.4 mm that the first round's circle has."""
    size = (2.1, 1.5)
    first, second = brick_rounds([[size] * 20, [size] * 20], 12.0)
    assert first.room_mm * 20 == pytest.approx(2 * math.pi * 6.75)
    assert first.share == pytest.approx(42.41 / 42, abs=0.001)
    assert second.share == pytest.approx(51.84 / 42, abs=0.001)
    loose = peyote_rounds([[size] * 12, [size] * 12, [size] * 24])
    assert loose[1].radius_mm == pytest.approx(loose[0].radius_mm + 2.1)  # a strung ring has no gaps
    assert loose[2].radius_mm < loose[1].radius_mm + 2.1
    assert loose[2].share < loose[1].share
